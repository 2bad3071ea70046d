"""What a document says of whose it is, and where that is printed."""

from __future__ import annotations

from dataclasses import dataclass, field

from specscan.records.text import Passage


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
    series: str = ""
    year: int | None = None
    year_place: Place | None = None
    title: str = ""
    title_place: Place | None = None
    used: bool = False
    other: set[int] = field(default_factory=set)  # numbers of passages that speak of other vans
