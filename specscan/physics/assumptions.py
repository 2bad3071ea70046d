"""The values of ``rules/values`` in SI units."""

from __future__ import annotations

import functools

from specscan.physics.ranges import Range
from specscan.records.errors import RuleError, at
from specscan.rulebook.book import Rulebook

LITRE = 1e-3
"""Cubic metres in a litre."""
MILLIMETRE = 1e-3
"""Metres in a millimetre."""
HOUR = 3600.0
"""Seconds in an hour."""
DAY = 86400.0
"""Seconds in a day."""


class Assumptions:
    """Named constants and assumptions of a rulebook: low, typical and high in SI units."""

    def __init__(self, book: Rulebook):
        self.book = book

    def __getitem__(self, name: str) -> Range:
        """Give a value in SI base units, as a range without axes that spreads over any number of cases.

        Raises:
            RuleError: no file under ``rules/values`` has the value, or its unit is none that pint knows.
        """
        spec = self.book.values.get(name)
        folder = self.book.folder / "values"
        if spec is None:
            raise RuleError([at(folder, None, f"the value {name!r} is missing")])
        try:
            factor = _to_si(spec.unit)
        except Exception as error:  # pint has a class of its own for each way to be wrong
            raise RuleError([at(folder, None, f"values.{name}: {spec.unit!r} is no unit ({error})")]) from error
        return Range.of(spec.low * factor, spec.typical * factor, spec.high * factor)


@functools.cache
def _to_si(unit: str) -> float:
    """Give the factor that turns a unit into SI base units. Source: pint's registry (NIST SP 811, rows U01 to U20)."""
    return float(_registry().parse_expression(unit).to_base_units().magnitude) if unit != "1" else 1.0


@functools.cache
def _registry():  # type: ignore[no-untyped-def]
    import pint

    return pint.UnitRegistry()
