"""What can end the stay of vans under conditions, in days, and when what is not known could come at the earliest."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from specscan.physics import tanks, water_days
from specscan.physics.columns import Coded, Columns
from specscan.physics.heater import burns
from specscan.physics.ranges import Range, pick

if TYPE_CHECKING:
    from specscan.physics.winter import Winter

PLAUSIBLE = ("fresh_tank_l", "gray_tank_l", "black_tank_l", "cassette_l", "battery_wh")
"""Fields that lie somewhere in their plausible range where no document gives them."""
APART = (
    "heat_days", "vapour_days", "heating_power", "energy_use", "energy_charge", "battery_temperature", "line_plug_time",
)  # fmt: skip
"""What does not hang on those fields, and need not be worked out again."""


def limits_of(winter: Winter) -> dict[str, Range]:
    """Give every limit of the stay in days; those of water only where water runs."""
    columns, values, conditions = winter.columns, winter.values, winter.conditions
    electric = winter.where(burns(columns).nothing)
    found = {
        "fuel": pick(electric, winter.endless, winter.heat_days),
        "vapour": winter.vapour_days,
        "battery": winter.battery_days,
    }
    if not conditions.running_water:
        return found
    found["fresh_water"] = winter.lift(winter.fresh_days)
    found["gray_tank"] = winter.lift(winter.gray_days)
    found["toilet"] = winter.lift(water_days.toilet_days(columns, values, conditions))
    for name in ("fresh", "gray"):
        none = winter.where(columns.number(f"{name}_tank_l").high == 0)
        found[f"{name}_freezes"] = pick(
            none, winter.endless, tanks.days_or_never(winter.tank_time(name, to_ice=True), values)
        )
    known = winter.where(columns.known("water_lines_location"))
    found["lines_freeze"] = pick(known, tanks.days_or_never(winter.line_plug_time, values), winter.nothing)
    return found


def earliest_of(winter: Winter) -> dict[str, Range]:
    """Give the limits of water and battery as if what no document gives were anywhere that it plausibly can.

    Low ends are what they are for: when a limit that is not known could come at the earliest. Those of fuel and vapour
    are not told of: they rest on too much. Nothing where every limit is known.
    """
    if all(one.known.all() for one in winter.limits.values()):
        return {}
    anywhere = type(winter)(
        _with_plausible(winter), winter.values, winter.conditions, winter.outside if winter.swept else None
    )
    for name in APART:
        setattr(anywhere, name, getattr(winter, name))
    found = {name: one for name, one in anywhere.shaped_limits.items() if name not in ("fuel", "vapour")}
    if "lines_freeze" in found:
        found["lines_freeze"] = winter.shaped(tanks.days_or_never(winter.line_plug_time, winter.values))
    return found


def _with_plausible(winter: Winter) -> Columns:
    """Give columns with what is not known filled: numbers by their plausible range, the toilet by one with a tank."""
    columns, fields = winter.columns, winter.values.book.fields
    no_black = columns.number("black_tank_l").high == 0
    codes, words = columns.coded("toilet")
    assumed = np.where(no_black, len(words), len(words) + 1)
    toilet = Coded(np.where(codes >= 0, codes, assumed), np.array([*words, "cassette", "fixed_tank"], dtype=object))
    numbers: dict[str, np.ndarray] = {}
    for name in PLAUSIBLE:
        one, (low, high) = columns.number(name), fields[name].range or (0.0, 0.0)
        numbers[f"{name}__low"] = np.where(one.known, one.low, low)
        numbers[name] = np.where(one.known, one.typical, low)
        numbers[f"{name}__high"] = np.where(one.known, one.high, high)
    return columns.with_columns(numbers, {"toilet": toilet})
