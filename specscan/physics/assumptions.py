"""The values of ``rules/values`` in SI units."""

from __future__ import annotations

import functools
from collections.abc import Mapping

import numpy as np

from specscan.physics.ranges import Floats, Range
from specscan.records.errors import RuleError, at
from specscan.rulebook.book import Rulebook
from specscan.rulebook.unit_registry import unit_registry

LITRE = 1e-3
"""Cubic metres in a litre."""
MILLIMETRE = 1e-3
"""Metres in a millimetre."""
HOUR = 3600.0
"""Seconds in an hour."""
DAY = 86400.0
"""Seconds in a day."""


ZERO_CELSIUS = 273.15
"""Kelvin at 0 °C."""
KEPT_RANGES = 2_000
TABLE = "_at_"
"""Between the name of a table and its argument in names of values; ``m`` before a figure is a minus sign."""


class Assumptions:
    """Named constants and assumptions of a rulebook: low, typical and high in SI units.

    ``fixed`` puts other ranges (in SI units) in place of some, as a user's figure or to find out what one moves.
    ``used`` collects the names that were asked for. ``certain`` gives every assumption its typical value alone, but
    for those that stand in for a field which nothing printed: they keep their range.
    """

    def __init__(self, book: Rulebook, fixed: Mapping[str, Range] | None = None, certain: bool = False):
        self.book = book
        self.fixed = dict(fixed or {})
        self.certain = certain
        self.used: dict[str, None] = {}

    def __getitem__(self, name: str) -> Range:
        """Give a value in SI base units, as a range without axes that spreads over any number of cases.

        Raises:
            RuleError: no file under ``rules/values`` has the value, or its unit is none that pint knows.
        """
        self.used[name] = None
        if name in self.fixed:
            one = self.fixed[name]
            return Range.of(one.typical) if self.certain and not self._stands_in(name) else one
        spec = self.book.values.get(name)
        if spec is None:
            raise RuleError([at(self.book.folder / "values", None, f"the value {name!r} is missing")])
        try:
            factor = _to_si(spec.unit)
        except Exception as error:  # pint has a class of its own for each way to be wrong
            where = at(self.book.folder / "values", None, f"values.{name}: {spec.unit!r} is no unit ({error})")
            raise RuleError([where]) from error
        if self.certain and not spec.stands_for:
            return _range(spec.typical * factor, spec.typical * factor, spec.typical * factor)
        return _range(spec.low * factor, spec.typical * factor, spec.high * factor)

    def _stands_in(self, name: str) -> bool:
        return name in self.book.values and bool(self.book.values[name].stands_for)

    def celsius(self, name: str) -> Range:
        """Give a temperature, which the file has in kelvin, in °C.

        Raises:
            RuleError: as for any value.
        """
        return self[name] - Range.of(ZERO_CELSIUS)

    def table(self, name: str) -> tuple[Floats, Range]:
        """Give a table: its arguments in rising order, as they stand in the names, and its values in SI units.

        Raises:
            RuleError: there is no entry ``<name>_at_<figure>``, or one is wrong.
        """
        entries = [one for one in self.book.values if one.startswith(name + TABLE)]
        if not entries:
            raise RuleError([at(self.book.folder / "values", None, f"the table {name!r} is missing")])
        places = {one: float(one.removeprefix(name + TABLE).replace("m", "-").replace("_", ".")) for one in entries}
        entries.sort(key=places.__getitem__)
        found = [self[one] for one in entries]
        parts = ([float(getattr(one, part)) for one in found] for part in ("low", "typical", "high"))
        return np.array([places[one] for one in entries]), Range.of(*parts)


@functools.lru_cache(maxsize=KEPT_RANGES)
def _range(low: float, typical: float, high: float) -> Range:
    """Give a range of plain numbers, which are asked for over and over; it is shared, and never changed."""
    made = Range.of(low, typical, high)
    for part in (made.low, made.typical, made.high):
        part.flags.writeable = False
    return made


@functools.cache
def _to_si(unit: str) -> float:
    """Give the factor that turns a unit into SI base units. Source: pint's registry (NIST SP 811, rows U01 to U20)."""
    return float(unit_registry().parse_expression(unit).to_base_units().magnitude) if unit != "1" else 1.0
