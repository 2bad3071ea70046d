"""A statement on its way: as cut from a passage, as parsed and read; and what the headings above it say."""

from __future__ import annotations

from dataclasses import dataclass, field

from specscan.finding.language.units import Unit
from specscan.finding.marks.scope import Scope
from specscan.finding.things.found import Availability, Found, How
from specscan.finding.things.items import Parsed
from specscan.finding.wording import ReadStatement
from specscan.records.text import Passage


@dataclass(slots=True)
class Draft:
    """A statement before it is parsed: its texts, where they come from and what holds for it."""

    passage: Passage
    label: str
    body: str
    how: How
    scope: Scope
    body_at: int = 0
    label_from: str = ""  # row, column or inline
    hint: Unit | None = None
    notes: tuple[str, ...] = ()
    not_fitted: bool = False
    by_owner: bool = False
    asked: bool = False  # running text that answers a question
    leads: bool = False  # the first statement under a heading
    headed: bool = False  # behind the name of its van and a colon
    shown: str = ""  # the letters printed, where the body is what they stand for
    label_shown: str = ""  # the label printed, where what it says of the value does not hold for this van


@dataclass(slots=True)
class SectionSense:
    """What the headings above a passage say."""

    availability: Availability | None = None
    by_van: dict[str, Availability] = field(default_factory=dict)
    vans: frozenset[str] | None = None
    shared: bool = False  # a heading says that all vans are meant
    not_fitted: bool = False
    by_owner: bool = False
    things: list[str] = field(default_factory=list)
    option: str = ""


@dataclass(slots=True)
class Reading:
    """A statement with all that came of it."""

    draft: Draft
    read: ReadStatement

    @property
    def parsed(self) -> Parsed:
        return self.read.parsed

    @property
    def split(self) -> int:
        return self.read.split

    @property
    def found(self) -> list[Found]:
        return self.read.found

    @property
    def things(self) -> list[str]:
        return self.read.things
