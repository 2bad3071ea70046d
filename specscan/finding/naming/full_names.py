"""The head of a column → the full name of a van: without maker, year and groups, with the name of the range."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Collection, Sequence

from specscan.finding.language.quantities import QuantityReader
from specscan.finding.language.whole_words import any_word, holds, lowered, stands_before, without_first
from specscan.finding.naming.name_forms import VOWEL
from specscan.finding.naming.place import Names, bears, begins_with, without_start
from specscan.records.text import Passage
from specscan.records.years import MODEL_YEAR

CODE = re.compile(r"^\d|^[A-Z0-9]{1,3}$")
AMOUNT = r"(?:\d{1,3}(?:[.,'’ \u00a0\u202f]\d{3})+|\d+)(?:[.,]\d\d)?(?!\d)[ \u00a0\u202f]?"
ABBREVIATED = re.compile(r"[.°º№]$")  # "No. 5": the word before a number is no group
MONEY = "[$€£]|(?:USD|CAD|AUD|EUR|GBP|CHF)"
DASHED = r"\d{1,3}(?:[.'’ \u00a0\u202f]?\d{3})+[,.][ \u00a0]?[-–—]{1,2}"  # "54.900,-": no cents, and no currency
LED = rf"(?<=\.\.\.)\s*{AMOUNT}$"  # behind a row of dots
PRICED_BEHIND = rf"\s?\d{{1,3}}(?:[.,'’]\d{{3}})+(?!\d|\s?(?:{MONEY}))"  # in "540 GBP 58,450" 540 is no price
PRICE = re.compile(rf"(?:{MONEY})\s?{AMOUNT}|{AMOUNT}(?:{MONEY})(?!\w|{PRICED_BEHIND})|(?<![\d.,]){DASHED}(?!\w)|{LED}")
ENDING_YEAR = re.compile(rf"\s+({MODEL_YEAR})$")
LEAST_MASS = 500.0  # kg of a van: "22 LB" is a code
MIN_WORDS = 4  # of a head that goes on with a remark: "Drift Two the one you stand up in"


class BareHeads:
    """Takes from heads what is no part of a name: prices, measures, remarks below it."""

    def __init__(self, price_from: Sequence[str], quantities: QuantityReader):
        self.price = re.compile(rf"(?:(?<![^\W\d_])(?:{any_word(price_from)})\s*)?(?:{PRICE.pattern})", re.IGNORECASE)
        self.quantities = quantities

    def bare(self, head: str) -> str:
        """Give a head without a price, a measure with its unit and a remark in small letters, where more is left."""
        text = self.price.sub(" ", head) if PRICE.search(head) else head
        for quantity in reversed(self.quantities.find(text)):
            light = quantity.dimension == "mass" and quantity.high < LEAST_MASS
            measured = not quantity.bare and quantity.dimension in ("length", "mass") and not light
            if measured and " " in text.strip():
                rest = f"{text[: quantity.start]} {text[quantity.end :]}".strip()
                text = rest if re.search(r"\w", rest) else text
        words = text.split()
        small = next((n for n, word in enumerate(words) if word.islower() and word.isalpha() and len(word) > 2), 0)
        remark = sum(word.islower() for word in words[small:]) > 1
        if small and remark and len(words) >= MIN_WORDS:
            words = words[:small]
        return " ".join(words) or head


def without_groups(heads: list[str], names: Names, text: str, ranges: Collection[str]) -> list[str]:
    """Give heads without the head of a group above them that is no part of a name: "Long body" over "Q22".

    A group is described in small letters, or the text never says group and code in one and says the code alone.
    ``ranges`` are names of ranges in small letters, which stay.
    """
    found = []
    sister = f"{names.series.casefold()} "
    if names.series and any(head.casefold().startswith(sister) for head in heads):
        return heads  # "Dovetail 18" and "Mortise 22" under the title "Dovetail and Mortise" are of two ranges
    low = lowered(text)
    for head in heads:
        words, kept = head.split(), head
        for cut in range(1, len(words)):
            group, code = " ".join(words[:cut]), " ".join(words[cut:])
            if (
                not re.search(r"\d", code)
                or re.search(r"\d", group)
                or ABBREVIATED.search(group)
                or group.casefold() in {names.series.casefold(), *ranges}
            ):
                continue
            described = any(word.isalpha() and word.islower() and len(word) > 2 for word in words[:cut])
            # "K 54" is whole where the text says "K 60 Q": the letter is part of all names that begin with it.
            sisters = [one for one in heads if begins_with(one, group)]
            alone = not described and names.series and _says_alone(text, group, code, names.series)
            if described or (alone and not any(holds(low, lowered(one)) for one in sisters)):
                kept = code
                break
        found.append(kept)
    return found if len({name.casefold() for name in found}) == len(heads) else heads


def _says_alone(text: str, group: str, code: str, series: str) -> bool:
    """Tell whether a text says a code without the words before it: "Q22".

    A mere number behind letters that are no word is said so behind the range alone: in "LS 20" of the Drift the number
    may be any figure elsewhere, "20 gal".
    """
    if code.isdecimal() and not is_series_word(group.split()[-1]):
        return stands_before(text, series, code)
    return holds(text, code)


def columns_beside(heads: Collection[str], own: Sequence[Passage]) -> dict[str, set[str]]:
    """Give for each head those of the other columns in its tables: they name other vans than it."""
    tables: dict[int, set[str]] = defaultdict(set)
    for passage in own:
        if passage.table is not None and passage.column is not None:
            tables[passage.table].add(passage.column.text)
    return {head: set().union(*(one - {head} for one in tables.values() if head in one)) for head in heads}


def full_name(head: str, names: Names, text: str, heads: list[str], elsewhere: Sequence[str]) -> str:
    """Give the full model name of a head: the series of the title stands before a mere code.

    ``elsewhere`` are those of the ``heads`` that stand in no table beside it: one may be its longer form.
    """
    whole = head
    head = _cut_maker(head, names.maker)
    head = head if names.numbered else _cut_year(head)
    series = names.series
    if not series or head.casefold().startswith(series.casefold()) or bears(head, series):
        return head
    others = [h for h in elsewhere if h not in (head, whole) and h.casefold().endswith(" " + head.casefold())]
    if others:
        return others[0]
    for base in (names.title, series):
        if base and stands_before(text, base, head):
            return f"{base} {head}"
    if code := _code_between(series, head, text):
        return f"{series} {code} {head}"
    if CODE.match(head) or not is_series_word(head.split()[0]):
        lettered = not re.search(r"\d", head) and re.search(r"\d", names.title) and begins_with(names.title, series)
        return f"{names.title if lettered else series} {head}"  # "S" and "SL" of the "Drift 21"
    sister = next((h for h in heads if begins_with(head, h) and len(h) < len(head)), "")
    if sister:  # "Duo 4x4" beside "Duo"
        return f"{full_name(sister, names, text, heads, elsewhere)} {without_start(head, sister)}"
    if _is_of_other_range(head, series, heads):
        return head
    if not re.search(r"\d", head):
        base = names.title if re.search(r"\d", names.title) else series
        return f"{base} {head}" if head.casefold() not in base.casefold() else base
    return head


def _code_between(series: str, trim: str, text: str) -> str:
    """Give the one code that a text sets between a range and a trim that is a word: "Drift 600 Snow" for "Snow"."""
    if not is_series_word(trim.split()[0]) or re.search(r"\d", series):
        return ""
    found = re.findall(rf"(?<!\w){re.escape(series)} (\d{{2,3}}\w?) {re.escape(trim)}(?!\w)", text)
    return found[0] if len(set(found)) == 1 else ""


def _is_of_other_range(head: str, series: str, heads: Sequence[str]) -> bool:
    """Tell whether heads are of two ranges, and one of the other: "Gorse S" and "Gorse L" beside "Drift 18".

    ``series`` is the range that the title was taken for; the other must begin two heads.
    """
    first, _, rest = head.partition(" ")
    alike = sum(begins_with(other, first) and other != first for other in heads)
    return bool(rest) and alike > 1 and is_series_word(first) and any(begins_with(other, series) for other in heads)


def _cut_maker(head: str, maker: str) -> str:
    return without_first(head, maker) if maker else head


def are_numbered(heads: Collection[str], year: int | None) -> bool:
    """Tell whether figures that look like years are parts of names: "Drift 1987", "Drift 2001", model year 2026.

    Without them two heads would be one, and the vans are of none of these years, but of the ``year`` that is said.
    """
    ended = [match for head in heads if (match := ENDING_YEAR.search(head)) is not None]
    bare = [match.string[: match.start()] for match in ended]
    return year is not None and len(set(bare)) < len(bare) and all(int(match.group(1)) != year for match in ended)


def _cut_year(head: str) -> str:
    return re.sub(rf"^{MODEL_YEAR}\s+(?=\D)|\s+\(?{MODEL_YEAR}\)?$", "", head).strip() or head


def cased_model(model: str, text: str) -> str:
    """Give a model name without shouting, where its words are written with small letters elsewhere."""
    words = []
    for word in model.split():
        plain = word.capitalize()
        if word.isupper() and word.isalpha() and len(word) > 3 and holds(text, plain):
            word = plain
        words.append(word)
    return " ".join(words)


def is_series_word(word: str) -> bool:
    """Tell whether a word can be the name of a range: it can be spoken, as a code or "No." cannot."""
    word = word.rstrip(".")
    return len(word) >= 3 and word[0].isalpha() and not any(map(str.isdigit, word)) and VOWEL.search(word) is not None
