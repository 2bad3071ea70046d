"""What a document says of whose it is, and where that is printed."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import dataclass, field

from specscan.finding.language.whole_words import holds, lowered
from specscan.records.text import Document, Passage

PARTED = re.compile(r"\s(?:[|–—]|-{1,3})\s|[|•·∙:]|\s{3,}")  # the parts of a title
SHORTEST = 3  # letters of a range that stands behind other words of a name
PAGE_NUMBER = re.compile(r"(?:\s+(?:[Pp]age|[Ss]eite))?\s+\d{1,3}$")


@dataclass(frozen=True, slots=True)
class Place:
    """Where a name is printed."""

    passage: Passage | None
    page: int
    text: str


@dataclass(slots=True)
class Names:
    """What a document says of whose it is."""

    maker: str = ""
    maker_place: Place | None = None
    maker_weak: bool = False  # a company that the text names: it may be a dealer's
    series: str = ""
    confirmed: bool = False  # corners, margins or a title with a figure name this range, and a maker beside it is known
    year: int | None = None
    year_place: Place | None = None
    title: str = ""
    title_place: Place | None = None
    used: bool = False
    numbered: bool = False  # figures that look like years are parts of the vans' names
    labelled: frozenset[str] = frozenset()  # headings that a label says to be names of vans
    other: set[int] = field(default_factory=set)  # numbers of passages that speak of other vans


def begins_with(name: str, start: str) -> bool:
    """Tell whether a name is another one, that of its range say, or goes on from it."""
    return bool(start) and f"{name} ".casefold().startswith(f"{start} ".casefold())


def bears(name: str, series: str) -> bool:
    """Tell whether a name has that of its range in it, wherever: "Little Drift" and "Great Drift" of the Drift."""
    longer = len(name) > len(series) >= SHORTEST
    return begins_with(name, series) or (longer and holds(lowered(name), lowered(series)))


def without_start(name: str, start: str) -> str:
    """Give a name without the one with which it begins; nothing is left of that name itself."""
    return name[len(start) :].strip() if begins_with(name, start) else name


def of_range(series: str, code: str) -> str:
    """Give the name of a van with that of its range before it, once.

    A code that begins with the range's letters has them already: "V54" of the "V", "QF-31" of the "QF".
    """
    behind = code[len(series) : len(series) + 1]
    goes_on = series[-1:].isalpha() and (behind == "-" or behind.isdigit())
    if code.startswith(series) and (goes_on or (len(series) == 1 and not behind.isalpha())):
        return code
    if bears(code, series) and not begins_with(code, series):
        return code
    return f"{series} {without_start(code, series)}".strip()


def running_lines(document: Document) -> list[tuple[str, Place]]:
    """Give the texts at the head and the foot of all pages, each once, without the number of the page."""
    lines = [title for title in document.titles if title.origin == "page" and title.size == 0]
    stems = Counter(PAGE_NUMBER.sub("", title.text) for title in lines)
    found: dict[str, Place] = {}
    for title in lines:
        stem = PAGE_NUMBER.sub("", title.text)
        text = stem if stems[stem] > 1 else title.text
        found.setdefault(text, Place(None, title.page, title.text))
    return list(found.items())
