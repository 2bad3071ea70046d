"""Places in a text that name vans of the document."""

from __future__ import annotations

import functools
import itertools
import re
from collections.abc import Iterable
from dataclasses import dataclass

from specscan.finding.language.whole_words import Names, any_word, lowered
from specscan.finding.naming.cast import Cast

LIST_JOINT = re.compile(r"\s*[,;:&|]\s*|\s+(?:and|et|und)\s+")
BETWEEN = re.compile(r"\b(?:and|et|und|or|ou|oder|models?)\b|[&,/+]", re.IGNORECASE)  # names that head one column
KEPT_PATTERNS = 16  # lists of words, one a language
# before a number that ends an item of a list, and behind it
CLOSING = re.compile(r"[^\W\d_]{3}[^:]*,\s*(?:\d{2,3}\s*(?:,|&|and|et|und)\s*)*$")
CLOSED = re.compile(r"\s*(?:(?:,|&|and|et|und)\s*\d{2,3}\s*)*\.?\s*$")
LONGEST_ITEM = 110  # letters
LABEL_END = re.compile(r"\s*(?::|(?:,|and|et|und|&)\s*[\w ]{1,12}:)")
Named = tuple[tuple[int, int, frozenset[str]], ...]  # start, end and vans of the places of a text that name vans

FIGURED = re.compile(r"[^\W\d_]{3,}.* \d[\w.,-]*.*")  # names with a word before a figure


@dataclass(frozen=True, slots=True)
class Restricted:
    """Patterns of words such as "only" beside bare numbers: "20, 25 only", "only 20, 25"."""

    word: re.Pattern[str]
    next: re.Pattern[str]
    behind: re.Pattern[str]
    before: re.Pattern[str]


class VanMentions:
    """Finds the names of a cast in texts: full names anywhere, bare numbers only where they name."""

    def __init__(
        self,
        cast: Cast,
        verbs: Iterable[str] = (),
        articles: Iterable[str] = (),
        restricting: Iterable[str] = (),
        likening: Iterable[str] = (),
        by_length: tuple[Iterable[str], Iterable[str]] = ((), ()),
    ):
        """Take the names of a cast, and the words that can stand beside a bare number which names a van.

        ``verbs`` are words such as "carries" behind it, ``articles`` words such as "the" before it, ``restricting``
        words such as "only" on either side; ``likening`` words such as "is a" between a van and the one that it is
        likened to, of which nothing more is said: "The 21 is a 19 for people who ski"; ``by_length`` words for vans,
        and those for the unit of a length by which some are called: "the 21-foot vans" beside "21 QB" and "21 TW".
        """
        self.by_length = _of_length(*(tuple(sorted(words)) for words in by_length))
        self.likened = re.compile(rf"\s+(?:{any_word(likening)})\s+", re.IGNORECASE)
        self.article = _before_name(tuple(articles))
        self.only = _restricted(tuple(sorted(restricting)))
        self.verbs = {verb.casefold() for verb in verbs}
        self.table: dict[str, frozenset[str]] = {}
        plain: list[str] = []
        numbers: list[str] = []
        for player in cast.players:
            for alias in player.aliases:
                key = alias.strip(" *†:").casefold()
                self.table[key] = self.table.get(key, frozenset()) | {player.model}
        for name, models in cast.families.items():
            self.table.setdefault(name.casefold(), models)
        for head, models in cast.heads.items():
            self.table.setdefault(head.strip(" *†").casefold(), models)
        for key in self.table:
            (numbers if re.fullmatch(r"\d+", key) else plain).append(key)
        self.plain, self.numbers = Names(plain), Names(numbers)
        self.figured = Names([key for key in plain if FIGURED.fullmatch(key)])
        self.single = len(cast.players) <= 1
        self.everyone = cast.models
        self.small = {model for model in cast.models if model.islower() and " " in model}
        self.listed_at = cast.listed_at
        # Heads of tables are asked for with each of their cells. What a text names rests on the cast alone, which does
        # not change; the texts are those of one document.
        self._found: dict[str, Named] = {}
        self._wholes: dict[str, frozenset[str] | None] = {}

    def called(self, text: str) -> Named:
        """Give where the name of the only van stands whose figure could be taken for a value: "The Drift 5 sleeps 2".

        All that is said is of that van: the places name none.
        """
        if not self.single:
            return self.find(text)
        return tuple((start, end, frozenset()) for start, end in self.figured.find(text))

    def find(self, text: str) -> Named:
        """Give start, end and vans of each mention, without overlaps, in order."""
        if self.single:
            return ()
        if text not in self._found:
            self._found[text] = self._find(text)
        return self._found[text]

    def named_in(self, text: str) -> frozenset[str]:
        """Give all vans that a text names."""
        return frozenset().union(*(vans for _, _, vans in self.find(text)))

    def _find(self, text: str) -> Named:
        found: list[tuple[int, int, frozenset[str]]] = []
        low = lowered(text)
        for names, bare in ((self.plain, False), (self.numbers, True)):
            for start, end in names.find_lowered(low):
                if any(a < end and start < b for a, b, _ in found):
                    continue
                if bare and not self._names(text, start, end):
                    continue
                if not bare and not (self._cased(text[start:end]) and self._is_no_sign(text, start, end)):
                    continue
                found.append((start, end, self._named(text[start:end])))
        for match in self.by_length.finditer(text) if self.by_length is not None else ():
            figure = match.group(1) or match.group(2)
            called = frozenset(model for model in self.everyone if figure in model.split())
            free = not any(start < match.end() and match.start() < end for start, end, _ in found)
            if free and called and called != self.everyone:
                found.append((*match.span(), called))
        found.sort()
        likened = {
            later for former, later in itertools.pairwise(found) if self.likened.fullmatch(text, former[1], later[0])
        }
        return tuple(place for place in found if place not in likened)

    def _named(self, printed: str) -> frozenset[str]:
        """Give the vans that words as printed name."""
        return self.table[re.sub(r"\s+", " ", printed).casefold()]

    def _cased(self, printed: str) -> bool:
        """Tell whether a word that can also be a common one is written as a name, or as a name in small letters is."""
        return any(letter.isupper() or letter.isdigit() for letter in printed) or printed in self.small

    @staticmethod
    def _is_no_sign(text: str, start: int, end: int) -> bool:
        """Tell whether a single letter is no sign for a measure or unit: "L × B × H", "90 L"."""
        if end - start > 1:
            return True
        before, after = text[:start].rstrip(), text[end:].lstrip()
        return not (before[-1:].isdigit() or before.endswith(("×", " x", "/")) or after.startswith(("×", "x ", "/")))

    def _names(self, text: str, start: int, end: int) -> bool:
        """Tell whether a bare number stands for a van: in brackets, behind an article, before a colon."""
        before, after = text[:start], text[end:]
        if re.match(r"\s*(?:(?:mm|cm|m|kg|lb|l|L|W|Ah|A|V|gal|ft|in)(?![^\W\d_])|°|%|[.,]\d|€|\$|x\s?\d|×)", after):
            return False
        if re.search(r"\(\s*(?:[^()]{0,24}(?:,|&|and|et|und)\s*)?$", before) and re.match(r"[^()]{0,30}\)", after):
            return True
        plural = re.match(r"\s+([a-zà-ÿ]*(?:s|en))\b", after)  # "the 19 windows"
        counted = plural is not None and plural.group(1) not in self.verbs
        if self.article.search(before) and not counted:
            return True
        if re.match(r":\s", after):
            return True
        if not before.strip() and (self.only.next.match(after) or LABEL_END.match(after)):
            return True
        if end - start > 1 and len(text) <= LONGEST_ITEM and CLOSING.search(before) and CLOSED.match(after):
            return True  # "Solar, 380 W in all, 19"
        if self.only.before.search(before) and re.match(r"\s*(?:$|[,;.)&]|(?:and|et|und)\b)", after):
            return True
        return bool(re.search(r"(?:,|^|\band|\bet|\bund|&)\s*$", before) and self.only.behind.match(after))

    def in_list(self, text: str) -> frozenset[str]:
        """Give the vans that a heading names, also by bare numbers between commas: "Range: 540, 600 and 636"."""
        found = [vans for _, _, vans in self.find(text)]
        found += [self.table[part] for part in LIST_JOINT.split(text.casefold().strip(" .")) if part in self.table]
        return frozenset().union(*found)

    def is_name(self, text: str) -> bool:
        """Tell whether a text, a heading say, is as a whole one of the names."""
        return text.strip(" *†:").casefold() in self.table

    def whole(self, text: str) -> frozenset[str] | None:
        """Give the vans if the text, a table head say, is nothing but names of vans."""
        if text not in self._wholes:
            self._wholes[text] = self._whole(text)
        return self._wholes[text]

    def _whole(self, text: str) -> frozenset[str] | None:
        plain = text.strip(" *†:")
        if plain.casefold() in self.table:
            return self.table[plain.casefold()]
        found: list[tuple[int, int, frozenset[str]]] = []
        for names in (self.plain, self.numbers):
            for start, end in names.find(plain):
                if not any(a < end and start < b for a, b, _ in found):
                    found.append((start, end, self._named(plain[start:end])))
        if not found:
            return None
        rest = plain
        for start, end, _ in sorted(found, reverse=True):
            rest = rest[:start] + rest[end:]
        rest = BETWEEN.sub("", self.only.word.sub("", rest))
        return frozenset().union(*(vans for _, _, vans in found)) if not rest.strip() else None


@functools.lru_cache(maxsize=KEPT_PATTERNS)
def _before_name(articles: tuple[str, ...]) -> re.Pattern[str]:
    return re.compile(rf"(?<!\w)(?:{any_word(articles)})\s+$", re.IGNORECASE)


@functools.lru_cache(maxsize=KEPT_PATTERNS)
def _of_length(vans: tuple[str, ...], units: tuple[str, ...]) -> re.Pattern[str] | None:
    """Give the pattern of "21-foot vans" and « fourgons de 21 pieds », none without words for the units."""
    if not vans or not units:
        return None
    van, unit = any_word(vans), any_word(units)
    return re.compile(
        rf"(?<!\w)(?:(\d{{2}})[- ](?:{unit})[- ](?:{van})|(?:{van}) \w{{1,3}} (\d{{2}}) (?:{unit}))(?!\w)",
        re.IGNORECASE,
    )


@functools.lru_cache(maxsize=KEPT_PATTERNS)
def _restricted(words: tuple[str, ...]) -> Restricted:
    word = rf"\b(?:{any_word(words)})\b"
    return Restricted(
        re.compile(word, re.IGNORECASE),
        re.compile(rf"\s*{word}"),
        re.compile(rf"(?:\s*(?:,|&|\band\b|\bet\b|\bund\b)\s*\d{{1,3}})*\s+{word}"),
        re.compile(rf"{word}\s+(?:\d{{1,3}}\s*(?:,|&|and|et|und)\s*)*$"),
    )
