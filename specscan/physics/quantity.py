"""What a derived quantity is: its name, unit, the fields it comes from, and the function that gives it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from itertools import product

from specscan.physics.assumptions import Assumptions
from specscan.physics.columns import Columns
from specscan.physics.ranges import Range
from specscan.rulebook.book import Rulebook

Ways = tuple[tuple[str, ...], ...]
Compute = Callable[[Columns, Assumptions, Rulebook], Range]
Say = Callable[[Columns, Assumptions, Range], list[str | None]]


@dataclass(frozen=True)
class Derived:
    """A derived quantity.

    ``ways`` are least sets of fields, each of which is enough to compute it; ``also`` are fields that can change it
    besides.
    ``needs`` says the same in words. ``compute`` gives it in SI units, of which ``unit`` holds ``si_units``.
    """

    name: str
    meaning: str
    unit: str
    si_units: float
    ways: Ways
    also: tuple[str, ...]
    needs: str
    compute: Compute
    say: Say

    @property
    def inputs(self) -> tuple[str, ...]:
        """Give every field on which the quantity can depend."""
        return tuple(dict.fromkeys([*(name for way in self.ways for name in way), *self.also]))


def ways(*parts: Ways) -> Ways:
    """Give the least sets of fields that are enough for a quantity that needs one of each of the parts."""
    return tuple(tuple(dict.fromkeys(name for one in way for name in one)) for way in product(*parts))
