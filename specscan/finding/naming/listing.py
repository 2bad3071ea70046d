"""Several makers' vans in one text, each under a line: "2025 OSSVANE TAMARSK 21" or "Stand 12: Ossvane Tamarsk"."""

from __future__ import annotations

import re
from dataclasses import dataclass

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.naming.houses import House
from specscan.finding.naming.labelled_sheets import labelled
from specscan.finding.naming.names import NameReader
from specscan.finding.naming.place import Place
from specscan.finding.naming.years import YEAR
from specscan.records.text import Passage
from specscan.records.years import MODEL_YEAR

NAME = r"(?:[A-ZÀ-Þ][\w’'-]*|\d[\w.-]*)(?:[ \u00a0](?:[A-ZÀ-Þ][\w’'-]*|\d[\w.-]*)){1,4}"
YEAR_FIRST = re.compile(rf"(?P<year>{MODEL_YEAR})[ \u00a0](?P<name>{NAME})(?=$|[\s,;(–-])")
YEAR_LAST = re.compile(rf"(?P<name>{NAME})(?:,?[ \u00a0]\(?)(?P<year>{MODEL_YEAR})\)?(?=$|[\s,;.])")
MAX_WORDS = 14
MIN_THINGS = 4  # different things spoken of under each line


@dataclass(frozen=True, slots=True)
class Listed:
    """A van with a maker of its own and the passages, from ``start`` to before ``end``, that speak of it alone.

    A van that heads a column has none.
    """

    maker: str
    model: str
    place: Place
    year: int | None = None
    year_place: Place | None = None
    start: int = 0
    end: int = 0


def read_listing(own: list[Passage], names: NameReader, lexicon: Lexicon) -> list[Listed]:
    """Give the vans of a listing, none where a document is no listing of two or more."""
    heads: list[tuple[int, re.Match[str], Passage]] = []
    for passage in own:
        text = passage.row.text if passage.row is not None and passage.row.text else passage.text
        if len(text.split()) > MAX_WORDS:
            continue
        match = YEAR_FIRST.match(text) or YEAR_LAST.match(text)
        if match is not None and lexicon.knows_label(match.group("name")):
            continue  # "2000 W Inverter"
        if match is not None and (not heads or heads[-1][1].group() != match.group()):
            heads.append((passage.number, match, passage))
    if len({match.group("name").casefold() for _, match, _ in heads}) < 2 or _are_of_range(heads):
        return []
    found = []
    for (start, match, passage), end in zip(heads, _ends([number for number, _, _ in heads], own), strict=True):
        if not _tells(own, start, end, lexicon):
            return []
        maker, model = _parted(match.group("name"), own, names)
        place = Place(passage, passage.page, match.group())
        found.append(Listed(maker, model, place, int(match.group("year")), place, start, end))
    return found


def read_described(
    lines: list[tuple[Passage, House]], own: list[Passage], names: NameReader, lexicon: Lexicon
) -> list[Listed]:
    """Give the vans of makers of their own that are described one after another, each below the line that names it."""
    found = []
    for (passage, house), end in zip(lines, _ends([passage.number for passage, _ in lines], own), strict=True):
        if not _tells(own, passage.number, end, lexicon):
            return []
        maker, model = (names.cased(name, own) for name in house)
        year, year_place = year_of([p for p in own if passage.number <= p.number < end], names)
        place = Place(passage, passage.page, passage.text)
        found.append(Listed(maker, model, place, year, year_place, passage.number, end))
    return found


def year_of(passages: list[Passage], names: NameReader) -> tuple[int | None, Place | None]:
    """Give the year that passages call the model year, and where: "model year 2027", "the 2027 model year"."""
    labels = _year_labels(names)
    for passage in passages:
        label, told = labelled(passage)
        if label in labels and (year := YEAR.search(told)) is not None:
            return int(year.group(1)), Place(passage, passage.page, year.group(1))
        for match in YEAR.finditer(passage.text):
            behind = names.right_behind.match(passage.text, match.end())
            if behind is not None or names.right_before.search(passage.text[: match.start()]):
                return int(match.group(1)), Place(passage, passage.page, match.group(1))
    return None, None


def year_of_head(head: str, own: list[Passage], names: NameReader) -> tuple[int | None, Place | None]:
    """Give the year that a cell of the column or row of a van says to be that of its model, and where."""
    labels = _year_labels(names)
    for passage in own:
        for label, of in ((passage.row, passage.column), (passage.column, passage.row)):
            if label is not None and of is not None and of.text == head and label.text.casefold().strip(" :") in labels:
                if (match := YEAR.fullmatch(passage.text.strip())) is not None:
                    return int(match.group(1)), Place(passage, passage.page, match.group(1))
    return None, None


def _year_labels(names: NameReader) -> set[str]:
    return {label.casefold() for label in (*names.words.model_year, *names.words.year_labels)}


def _ends(starts: list[int], own: list[Passage]) -> list[int]:
    return [*starts[1:], own[-1].number + 1] if starts else []


def _are_of_range(heads: list[tuple[int, re.Match[str], Passage]]) -> bool:
    """Tell whether lines name vans of one range and year: "2027 Drift 21", "2027 Drift 21 Crew" have no makers."""
    words = [match.group("name").split() for _, match, _ in heads]
    one = len({(match.group("year"), *parts[:1]) for (_, match, _), parts in zip(heads, words, strict=True)}) == 1
    return one and any(parts[1][0].isdigit() for parts in words)


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
