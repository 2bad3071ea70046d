"""What a reading of one statement gives, before vans and availability are settled."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from dataclasses import field as listed
from enum import Enum

from specscan.finding.things.items import Item


class How(Enum):
    """In which form a statement stands in the document."""

    CELL = "table_cell"
    PAIR = "label_value"
    LIST = "list_item"
    MARKED = "mark_row"
    NOTE = "footnote"
    PROSE = "prose"
    HEADING = "heading"


class Availability(Enum):
    """Whether what is stated comes with the van."""

    STANDARD = "standard"
    OPTIONAL = "optional"
    NOT_AVAILABLE = "not_available"
    UNSTATED = "unstated"


@dataclass(slots=True)
class Value:
    """A value: a number as an interval, a word, or a yes or no."""

    num: float | None = None
    low: float | None = None
    high: float | None = None
    text: str | None = None
    flag: bool | None = None

    def key(self) -> tuple[object, ...]:
        """Give what makes two values the same."""
        number = None if self.num is None else round(self.num, 6)
        return (number, self.text, self.flag)


@dataclass(slots=True)
class Found:
    """One value found in a statement: characters ``start`` to ``end`` of its combined text say it."""

    field: str
    value: Value
    start: int
    end: int
    pattern: str
    item: Item | None = None
    unit: str = ""
    basis: str = ""
    availability: Availability | None = None
    weak: bool = False
    from_label: bool = False
    vans: frozenset[str] | None = None
    rejected: str = ""
    things: list[str] = listed(default_factory=list)
    chunk: int = 0
    sentence: int = 0


def found_at(item: Item, field: str, value: Value, how: str, things: Iterable[str] = ()) -> Found:
    """Give a value of a field that a word of a statement says of some things; ``how`` tells by what it was found."""
    return Found(
        field, value, item.start, item.end, f"{field}:{how}", item,
        things=[*things], chunk=item.chunk, sentence=item.sentence,
    )  # fmt: skip
