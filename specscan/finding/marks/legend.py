"""What the signs of a document mean: its own legend of marks for standard, optional, not offered."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.language.mentions import NAMING, Mention
from specscan.finding.language.whole_words import any_word
from specscan.finding.marks.legend_entries import (
    BRACKETED,
    COLONED,
    LONGEST_OPENING,
    QUOTED,
    REMARK,
    apart_from_names,
    entries_of,
    opening_of,
    sentence_within,
    texts_of,
)
from specscan.finding.marks.signs_in_order import order_of_signs
from specscan.finding.naming.van_mentions import VanMentions
from specscan.finding.things.found import Availability
from specscan.finding.things.items import Item
from specscan.records.text import SIGN_JOINT, Passage
from specscan.rulebook.book import General
from specscan.rulebook.models import WordFile

LONGEST_CODE = 3  # letters
LEAD = 2  # words before the availability, at most; more behind a quoted sign, of which a sentence speaks
LEAD_OF_SENTENCE = 7
PRICE_IN_BRACKET = re.compile(r"\s*\([^()]*\d[^()]*\)\s*$")  # "in the Winter Package ($1,890)"
PACKAGE_WORDS = 7  # behind a sign: "only in the Winter Package"
SENTENCE_WORDS = 4  # behind a legend: fewer tell nothing of a van
DASH_SIGNS = {"-", "–", "—", "−"}


@dataclass(slots=True)
class Meaning:
    """What a sign says: an availability for all vans, or one for each van that is named."""

    default: Availability | None = None
    by_van: dict[str, Availability] = field(default_factory=dict)

    def of(self, van: str) -> Availability | None:
        """Give what the sign says of a van."""
        return self.by_van.get(van, self.default)


class Legend:
    """The signs of one document."""

    def __init__(self, general: General):
        self.signs: dict[str, Meaning] = {}
        self.checks = set(general.checks)
        self.passages: set[int] = set()
        self.goes_on: dict[int, int] = {}  # where what is no legend begins, in a passage that goes on behind it
        self.absent: dict[str, str] = {}
        self.inapplicable: set[str] = set()  # signs that say nothing of a van
        self.amounts = False  # a bare figure is what an option costs
        self.order: tuple[str, ...] = ()  # the vans of signs that stand side by side before an item

    def meaning(self, text: str) -> Meaning | None:
        """Give what a cell or bullet sign means, or ``None`` where it is no sign of the legend."""
        plain = text.strip()
        if SIGN_JOINT in plain:
            return self._of_each(plain.split(SIGN_JOINT))
        found = self.signs.get(plain) or self.signs.get(_dash(plain))
        if found is not None:
            return found
        if plain in self.checks:
            return Meaning(Availability.STANDARD)
        return None

    def _of_each(self, signs: list[str]) -> Meaning | None:
        """Give what signs side by side say, each of its van; where nobody tells whose they are, they must agree."""
        meanings = [self.meaning(sign) for sign in signs]
        said = [meaning.default for meaning in meanings if meaning is not None and meaning.default is not None]
        if len(said) < len(signs):
            return None
        if len(self.order) == len(signs):
            return Meaning(None, dict(zip(self.order, said, strict=True)))
        return Meaning(said[0]) if len(set(said)) == 1 else None

    def absence(self, text: str) -> str:
        """Give the words by which a sign says that a thing is absent ("– not fitted"), or an empty text."""
        return self.absent.get(_dash(text.strip()), "")


AVAILABILITIES = {
    "standard": Availability.STANDARD,
    "optional": Availability.OPTIONAL,
    "if_equipped": Availability.OPTIONAL,
    "not_available": Availability.NOT_AVAILABLE,
}
# "F fitted   X not available", "a tick (✓) means that it is in the price"
EXPLAINING = {**AVAILABILITIES, "yes": Availability.STANDARD, "in_price": Availability.STANDARD}


def said_by(cues: Sequence[Item]) -> Availability:
    """Give the availability that the longest of some words for one says."""
    longest = max(cues, key=lambda c: c.end - c.start)
    order = ("not_available", "optional", "if_equipped", "standard")
    return AVAILABILITIES[next(name for name in order if longest.has("cue", name))]


def longest_cue(cues: Iterable[Mention]) -> str:
    """Give the name of the longest of some cues for an availability; of two as long the one that denies it."""
    return max(cues, key=lambda m: (m.last - m.first, m.concept.name == "not_available")).concept.name


def read_legend(
    passages: list[Passage], lexicon: Lexicon, vans: VanMentions, general: General, corners: Sequence[str] = ()
) -> Legend:
    """Read the legends of a document; a sign without a legend stays without meaning.

    ``corners`` are what stands over the labels of its tables, where some print the legend.
    """
    legend = Legend(general)
    for corner in corners:
        explained = _explained([(corner, found)], lexicon, vans) if (found := entries_of(corner)) else None
        if explained is not None and len(explained[1]) > 1:
            legend.signs.update((_dash(sign), meaning) for sign, meaning in explained[1])
    run: list[tuple[Passage, str, list[tuple[str, Meaning]]]] = []
    lettered = frozenset(name.upper() for name in vans.table if name.isalpha() and len(name) <= LONGEST_CODE)
    names = frozenset() if vans.single else lettered
    for passage in passages:
        told = ((text, entries_of(text, names)) for text in texts_of(passage))
        signed = [(text, own) for text, found in told if found and (own := apart_from_names(text, found, vans))]
        entries = _explained(signed, lexicon, vans) if signed else None
        if signed and not entries:
            _read_absences(legend, passage, signed, lexicon)
        if run and (not entries or passage.number - run[-1][0].number > 1):
            _accept(legend, run, lexicon)
            run = []
        if entries:
            run.append((passage, entries[0], entries[1]))
    _accept(legend, run, lexicon)
    legend.order = order_of_signs(passages, lexicon.words, vans)
    figures = {*lexicon.words.amount_words, *(sign.casefold() for sign in general.currency)}
    legend.amounts = any(
        sign.casefold() in figures and meaning.default is Availability.OPTIONAL
        for sign, meaning in legend.signs.items()
    )
    explaining = (p.text for p in passages if p.number in legend.passages or p.number in legend.goes_on)
    legend.amounts = legend.amounts or any(_figures_cost(text, lexicon.words) for text in explaining)
    legend.amounts = legend.amounts or _else_cost(passages, lexicon.words)
    return legend


def _figures_cost(text: str, words: WordFile) -> bool:
    """Tell whether a legend says what a bare figure is: "A figure is the price in pounds.", "Prices in euros."."""
    figures, costs = any_word(set(words.amount_words) - set(words.amount_costs)), any_word(words.amount_costs)
    told = rf"(?:{figures})\s[^.;:]{{0,24}}(?<!\w)(?:{costs})|(?:{any_word(words.prices_in)})\s+(?:{figures})"
    return re.search(rf"(?<!\w)(?:{told})(?!\w)", text, re.IGNORECASE) is not None


def _else_cost(passages: Iterable[Passage], words: WordFile) -> bool:
    """Tell whether a short line or cell says that what is no sign is a price: "otherwise the price of the option"."""
    otherwise, costs = any_word(words.amount_else), any_word(words.amount_costs)
    told = re.compile(rf"(?:{otherwise})\W+(?:\w+\W+){{0,3}}(?:{costs})(?!\w)", re.IGNORECASE)
    return any(len(p.text) <= LONGEST_OPENING and told.match(p.text.strip()) is not None for p in passages)


def _explained(
    signed: list[tuple[str, list[tuple[str, str]]]], lexicon: Lexicon, vans: VanMentions
) -> tuple[str, list[tuple[str, Meaning]]] | None:
    """Give the signs that a passage explains, with the text that does; ``signed`` are its texts with signs in them."""
    for text, entries in signed:
        if len(text) > 420:
            continue
        coloned = {match.group(1) for match in COLONED.finditer(text)}
        entries = [(s, w) for s, w in entries if s not in coloned or s.isupper() or _says_offer(s, lexicon)]
        quoted = {match.group(1) for match in (*QUOTED.finditer(text), *BRACKETED.finditer(text))}
        meanings = [
            (sign, _meaning(words, lexicon, vans, LEAD_OF_SENTENCE if sign in quoted else LEAD))
            for sign, words in entries
        ]
        if sum(meaning is not None for _, meaning in meanings) >= 2:
            # "✓ on both, ★ on the Summit only": beside signs that are explained, "on" a van is enough.
            meanings = [(s, m or _on_vans(w, lexicon, vans)) for (s, m), (_, w) in zip(meanings, entries, strict=True)]
        if any(meaning is not None for _, meaning in meanings):
            meanings = [(s, m or _in_package(w, lexicon)) for (s, m), (_, w) in zip(meanings, entries, strict=True)]
        sound = [(sign, meaning) for sign, meaning in meanings if meaning is not None]
        if sound:
            return text, sound
    return None


def _says_offer(sign: str, lexicon: Lexicon) -> bool:
    """Tell whether a short word says by itself whether a thing is standard or an option."""
    analysis = lexicon.analyse(sign)
    return any(m.last - m.first == len(analysis.tokens) for m in lexicon.cues(analysis, *AVAILABILITIES))


def _read_absences(
    legend: Legend, passage: Passage, signed: list[tuple[str, list[tuple[str, str]]]], lexicon: Lexicon
) -> None:
    """Note signs explained as "not fitted" or "none"."""
    for text, entries in signed:
        if len(text) > 60:
            continue
        for sign, words in entries:
            analysis = lexicon.analyse(words)
            cues = [
                m for m in analysis.mentions if m.concept.kind == "cue" and m.concept.name in ("not_fitted", "none")
            ]
            if any(m.concept.kind in NAMING for m in analysis.mentions):
                continue  # "- No inverter" is an item of a list
            if any(m.first == 0 and m.last >= len(analysis.tokens) - 1 for m in cues) and not sign.isalnum():
                legend.absent[_dash(sign)] = words
                legend.passages.add(passage.number)


def _accept(legend: Legend, run: list[tuple[Passage, str, list[tuple[str, Meaning]]]], lexicon: Lexicon) -> None:
    """Take in a legend that stands in one passage or in several that follow each other."""
    together = [pair for _, _, sound in run for pair in sound]
    for passage, text, sound in run:
        lettered = any(sign.isalpha() for sign, _ in sound)
        if lettered and len(together) < 2:
            continue
        if len(sound) == 1 and not _is_bare_legend(text, sound[0][0], lexicon):
            continue
        for sign, meaning in sound:
            legend.signs[_dash(sign)] = meaning
        if text in passage.sections:
            continue  # what stands under a legend is not part of it
        if text in sentence_within(passage.text):
            legend.goes_on[passage.number] = 0  # the paragraph says other things too
            continue
        opening = text == opening_of(passage.text)
        whole = passage.text if opening else text
        rest = _behind(text, {sign for sign, _ in sound}) if text == passage.text else len(text)
        if len(whole[rest:].split()) >= SENTENCE_WORDS:
            legend.goes_on[passage.number] = rest
        else:
            legend.passages.add(passage.number)


def _behind(text: str, signs: set[str]) -> int:
    """Give where the sentences behind a legend begin, in a text that explains signs."""
    place = 0
    for sign, words in entries_of(text):
        if sign in signs:
            place = text.find(words, place) + len(words)
    remark = REMARK.search(text, place)
    return remark.end() if remark is not None else len(text)


def _dash(sign: str) -> str:
    return "–" if sign in DASH_SIGNS else sign


def _meaning(words: str, lexicon: Lexicon, vans: VanMentions, most: int = LEAD) -> Meaning | None:
    """Give what the words behind a sign say; they must begin with an availability, after ``most`` words at most."""
    if not words or len(words) > 90:
        return None
    meaning = Meaning()
    alone: list[str] = []
    for part in re.split(r"[,;]", words):
        analysis = lexicon.analyse(part)
        cues = [m for m in analysis.mentions if m.concept.kind == "cue" and m.concept.name in EXPLAINING]
        if not cues:
            named = [van for _, _, models in vans.find(part) for van in models]
            if named and lexicon.cues(analysis, "negation"):  # "Summit standard, not for Traverse"
                meaning.by_van |= dict.fromkeys(named, Availability.NOT_AVAILABLE)
            elif named and meaning.default is not None and not meaning.by_van:  # "option, Summit and Traverse"
                meaning = Meaning(None, dict.fromkeys(named, meaning.default))
            else:
                alone.extend(named)
            continue
        lead = [m for m in cues if m.first <= most]
        if not lead and (meaning.default is not None or meaning.by_van):
            break  # "not available; prices in euros, VAT included"
        if not lead:
            return None
        first = min(lead, key=lambda m: (m.first, -m.last))  # "standard Opt extra cost": "Opt" tells of itself
        same = [m for m in lead if m.first < first.last]
        availability = EXPLAINING[longest_cue(same)]
        if availability is Availability.STANDARD and lexicon.cues(analysis, "package"):
            availability = Availability.OPTIONAL  # "comes with the Winter Package"
        named = [van for _, _, models in vans.find(part) for van in models]
        if named:
            for van in named:
                meaning.by_van[van] = availability
        elif meaning.default is None:
            meaning.default = availability
    if meaning.default is None and not meaning.by_van:
        return None
    for van in alone:  # "on Summit; option on Traverse"
        meaning.by_van.setdefault(van, Availability.STANDARD)
    return meaning


def _on_vans(words: str, lexicon: Lexicon, vans: VanMentions) -> Meaning | None:
    named = [van for _, _, models in vans.find(words) for van in models]
    if not named or len(words) > 60:
        return None
    denied = lexicon.cues(lexicon.analyse(words), "negation")
    return Meaning(None, dict.fromkeys(named, Availability.NOT_AVAILABLE if denied else Availability.STANDARD))


def _in_package(words: str, lexicon: Lexicon) -> Meaning | None:
    """Give an option for "only in the Winter Package", "part of the Solar Pack": beside signs that are explained."""
    analysis = lexicon.analyse(PRICE_IN_BRACKET.sub("", words))
    short = len(analysis.tokens) <= PACKAGE_WORDS and not any(m.concept.kind == "thing" for m in analysis.mentions)
    named = any(m.concept.kind == "masked" for m in analysis.mentions)  # "part of the Cold Weather Package"
    told = lexicon.cues(analysis, "package") or (named and lexicon.cues(analysis, "in_package"))
    return Meaning(Availability.OPTIONAL) if short and told else None


def _is_bare_legend(text: str, sign: str, lexicon: Lexicon) -> bool:
    """Tell whether a text of one sign is a legend and not an item of a list that begins with the sign."""
    before, _, behind = text.partition(sign)
    if sign in DASH_SIGNS and before.rstrip()[-1:].isalnum():
        return False  # "Catalog - floorplans, options": it joins the parts of a title
    opens = r"\s*[=:]" if sign.isalnum() else r"\s"  # "— not available. Values are for the wall."
    explained = re.match(rf"{re.escape(sign)}{opens}", text) is not None
    rest = f"{before}{behind}".strip(" =:")
    rest = REMARK.split(rest)[0] if explained else rest  # "– : not available. Options add to the mass."
    analysis = lexicon.analyse(rest)
    told = [m for m in analysis.mentions if m.concept.kind in ("thing", "value", "term")]
    return "=" in text or f"({sign})" in text or (not told and len(analysis.tokens) <= 10)
