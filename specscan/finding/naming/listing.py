"""Several makers' vans in one text, each under a line: "2025 OSSVANE TAMARSK 21" or "Stand 12: Ossvane Tamarsk".

A dealer's have a stock number and a price there: "#4471  OSSVANE TAMARSK 21  $94,500".
"""

from __future__ import annotations

import functools
import re
from dataclasses import dataclass

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.naming.full_names import PRICE
from specscan.finding.naming.houses import House
from specscan.finding.naming.labelled_sheets import labelled
from specscan.finding.naming.names import NameReader
from specscan.finding.naming.place import Place, without_start
from specscan.finding.naming.years import YEAR
from specscan.records.text import Passage
from specscan.records.years import MODEL_YEAR

NAME = r"(?:[A-ZÀ-Þ][\w’'-]*|\d[\w.-]*)(?:[ \u00a0](?:[A-ZÀ-Þ][\w’'-]*|\d[\w.-]*)){1,4}"
YEAR_FIRST = re.compile(rf"(?P<year>{MODEL_YEAR})[ \u00a0](?P<name>{NAME})(?=$|[\s,;(–-])")
YEAR_LAST = re.compile(rf"(?P<name>{NAME})(?:,?[ \u00a0]\(?)(?P<year>{MODEL_YEAR})\)?(?=$|[\s,;.])")
WHOLE_NAME = re.compile(r"[A-ZÀ-Þ][\w’'-]+(?: (?:[A-ZÀ-Þ][\w’'-]*|\d[\w.-]*)){0,4}")
BEHIND_NAME = re.compile(r",? [(–—|·-]|, |: | {3}")  # between a name and what a line says of it
BARE_YEAR = re.compile(rf"[\s,(–—|·-]+({MODEL_YEAR})\)?(?=$|\s*[,;–—|·])")
WORD = r"(?:[A-ZÀ-Þ][\w’'-]*|\d[\w.-]*)"
STOCKED = rf"(?P<name>{WORD}(?:[ \u00a0](?:[&+] )?{WORD}){{1,5}})(?:\s*[–—|·,:]\s*|\s+)(?P<price>\S.*)"
JOINTS = {"&", "+"}  # between the two names of a company
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
    return _read_dated(own, names, lexicon) or _read_stocked(own, names, lexicon)


def _read_dated(own: list[Passage], names: NameReader, lexicon: Lexicon) -> list[Listed]:
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


def _read_stocked(own: list[Passage], names: NameReader, lexicon: Lexicon) -> list[Listed]:
    """Give the vans of a list in which each stands under a line of stock number, name and price, and no more."""
    line = _stocked(names.houses.stock)
    heads: list[tuple[Passage, str]] = []
    for passage in own:
        priced = passage.table is None and len(passage.text.split()) <= MAX_WORDS and PRICE.search(passage.text)
        match = line.fullmatch(passage.text) if priced else None
        if match is not None and PRICE.fullmatch(match.group("price").strip(" .")):
            heads.append((passage, match.group("name")))
    if len({name.casefold() for _, name in heads}) < 2:
        return []
    found = []
    for (passage, name), end in zip(heads, _ends([passage.number for passage, _ in heads], own), strict=True):
        if not _tells(own, passage.number, end, lexicon):
            return []
        maker, model = _parted(name, own, names)
        year, year_place = year_of([p for p in own if passage.number <= p.number < end], names)
        found.append(Listed(maker, model, Place(passage, passage.page, name), year, year_place, passage.number, end))
    return found


@functools.lru_cache(maxsize=8)
def _stocked(stock: str) -> re.Pattern[str]:
    """Give what finds a line of stock number, name and price; ``stock`` is the text of a pattern for the first."""
    return re.compile(f"{stock}{STOCKED}")


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
        behind = passage.text.rpartition(house[0])[2]
        if year is None and (match := BARE_YEAR.match(behind)) is not None:  # "Drift 21 by Marrowfen (2023)"
            year, year_place = int(match.group(1)), Place(passage, passage.page, match.group(1))
        place = Place(passage, passage.page, passage.text)
        found.append(Listed(maker, model, place, year, year_place, passage.number, end))
    return found


def read_made(own: list[Passage], names: NameReader, lexicon: Lexicon) -> list[tuple[Listed, Place]]:
    """Give the vans of sheets that each open with the name and have a label for the maker, and where they are named.

    Beside the name, in a line or in the first row of a table, stands the model year or a price: "Drift 60, model year
    2025" above "Maker: Marrowfen".
    """
    openers = [(passage, name) for passage in own if (name := _opening_name(passage, names, lexicon))]
    if not 1 < len({name.casefold() for _, name in openers}) == len(openers):
        return []
    wanted = {label.casefold() for label in names.words.maker_labels}
    found = []
    for (opener, name), end in zip(openers, _ends([passage.number for passage, _ in openers], own), strict=True):
        sheet = [passage for passage in own if opener.number <= passage.number < end]
        makers = [(told, passage) for passage in sheet for label, told in (labelled(passage),) if label in wanted]
        if len(makers) != 1 or not _tells(own, opener.number, end, lexicon):
            return []
        (maker, passage), *_ = makers
        year, year_place = year_of(sheet, names)
        model = names.cased(without_start(name, maker) or name, own)
        own_maker = Place(passage, passage.page, maker)
        van = Listed(maker, model, own_maker, year, year_place, opener.number, end)
        found.append((van, Place(opener, opener.page, name)))
    return found


def _opening_name(passage: Passage, names: NameReader, lexicon: Lexicon) -> str:
    """Give the name beside which a line, or a row, has a model year or a price; else an empty text."""
    if passage.table is not None:
        single = passage.row is not None and (passage.column is None or not passage.column.text)
        label, told = (passage.row.text, passage.text) if single and passage.row is not None else ("", "")
        match = WHOLE_NAME.fullmatch(label)
    else:
        match = WHOLE_NAME.match(passage.text)
        told = passage.text[match.end() :] if match is not None else ""
        match = match if BEHIND_NAME.match(told) else None
    if match is None or len(passage.text.split()) > MAX_WORDS:
        return ""
    dated = any(
        names.right_behind.match(told, year.end()) or names.right_before.search(told[: year.start()])
        for year in YEAR.finditer(told)
    )
    said = dated or PRICE.search(told) is not None
    return match.group() if said and not lexicon.knows_label(match.group()) else ""


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
    """Part "OSSVANE TAMARSK 21" into maker and model; of two words both are the model.

    A maker's two names are joined: "OSSVANE & HOLT TAMARSK 21".
    """
    words = name.split()
    cut = 1 if len(words) >= 3 and words[0].isalpha() else 0
    cut = 3 if len(words) > 3 and words[1] in JOINTS else cut
    return names.cased(" ".join(words[:cut]), own), " ".join(names.cased(word, own) for word in words[cut:])


def _tells(own: list[Passage], start: int, end: int, lexicon: Lexicon) -> bool:
    things: set[str] = set()
    for passage in own:
        if start < passage.number < end:
            things |= lexicon.things_told(passage)
    return len(things) >= MIN_THINGS
