"""A figure with its unit, as printed and in the canonical unit."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Quantity:
    """A quantity as printed.

    ``low`` and ``high`` are in the canonical unit of ``dimension``; they differ for a range. For a
    bare figure the dimension is ``count``. ``count`` is a multiple printed before it ("2 ×"), already
    multiplied into ``low`` and ``high``; ``each`` is the single amount. ``chain`` numbers the members of
    "a × b × c unit" and "a/b unit", whose unit stands behind the last.
    """

    low: float
    high: float
    dimension: str
    printed_unit: str
    start: int
    end: int
    count: int = 1
    each: float = 0.0
    chain: int = 0
    bare: bool = False
    worded: bool = False
    joined: bool = False

    @property
    def is_range(self) -> bool:
        return self.high != self.low
