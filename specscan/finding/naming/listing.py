"""Listings of several makers' vans in one text: lines such as "2025 OSSVANE TAMARSK 21" and what stands under them."""

from __future__ import annotations

import re
from dataclasses import dataclass

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.naming.names import NameReader
from specscan.finding.naming.place import Place
from specscan.records.text import Passage

NAME = r"(?:[A-ZÀ-Þ][\w’'-]*|\d[\w.-]*)(?:[ \u00a0](?:[A-ZÀ-Þ][\w’'-]*|\d[\w.-]*)){1,4}"
YEAR_FIRST = re.compile(rf"(?P<year>(?:19|20)\d\d)[ \u00a0](?P<name>{NAME})(?=$|[\s,;(–-])")
YEAR_LAST = re.compile(rf"(?P<name>{NAME})(?:,?[ \u00a0]\(?)(?P<year>(?:19|20)\d\d)\)?(?=$|[\s,;.])")
MAX_WORDS = 14
MIN_THINGS = 4  # different things spoken of under each line


@dataclass(frozen=True, slots=True)
class Listed:
    """A van of a listing and the passages, from ``start`` to before ``end``, that speak of it."""

    maker: str
    model: str
    year: int
    place: Place
    start: int
    end: int


def read_listing(own: list[Passage], names: NameReader, lexicon: Lexicon) -> list[Listed]:
    """Give the vans of a listing, none where a document is no listing of two or more."""
    heads: list[tuple[int, re.Match[str], Passage]] = []
    for passage in own:
        text = passage.row.text if passage.row is not None and passage.row.text else passage.text
        if len(text.split()) > MAX_WORDS:
            continue
        match = YEAR_FIRST.match(text) or YEAR_LAST.match(text)
        if match is not None and (not heads or heads[-1][1].group() != match.group()):
            heads.append((passage.number, match, passage))
    if len({match.group("name").casefold() for _, match, _ in heads}) < 2:
        return []
    ends = [number for number, _, _ in heads[1:]] + [own[-1].number + 1]
    found = []
    for (start, match, passage), end in zip(heads, ends, strict=True):
        if not _tells(own, start, end, lexicon):
            return []
        maker, model = _parted(match.group("name"), own, names)
        place = Place(passage, passage.page, match.group())
        found.append(Listed(maker, model, int(match.group("year")), place, start, end))
    return found


def _parted(name: str, own: list[Passage], names: NameReader) -> tuple[str, str]:
    """Part "OSSVANE TAMARSK 21" into maker and model; of two words both are the model."""
    words = name.split()
    cut = 1 if len(words) >= 3 and words[0].isalpha() else 0
    return names.cased(" ".join(words[:cut]), own), " ".join(names.cased(word, own) for word in words[cut:])


def _tells(own: list[Passage], start: int, end: int, lexicon: Lexicon) -> bool:
    things: set[str] = set()
    for passage in own:
        if start < passage.number < end:
            things |= lexicon.things_told(passage)
    return len(things) >= MIN_THINGS
