"""What winter does to vans under stated conditions, as tables: figures, limits, curves, tanks, glass, grades, draining.

Every table has ``van_id`` and, for numbers, the columns ``value`` (typical), ``low`` and ``high``.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
import pandas as pd

from specscan.physics import stay, tanks
from specscan.physics.assumptions import HOUR, Assumptions
from specscan.physics.balance import cooling_curve
from specscan.physics.columns import Columns
from specscan.physics.conditions import Conditions
from specscan.physics.derived import DERIVED, derive
from specscan.physics.drying import glass_rows
from specscan.physics.envelope_rows import envelope_rows
from specscan.physics.freezing import cooling_time, time_constant
from specscan.physics.grades import grade_views
from specscan.physics.heater import burns
from specscan.physics.ranges import Floats, Range, monotone
from specscan.physics.winter import LOWEST, Winter
from specscan.physics.winterizing import fluid_rows
from specscan.rulebook.book import Rulebook

COLDEST, WARMEST = -40.0, 0.0
"""Ends of the curve over outside temperature (°C)."""
HOURS = np.arange(0.0, 24.25, 0.25)
"""Times of the curve of inside temperature, hours after the heating stopped."""
MARKS = (10.0, 5.0, 0.0)
"""Inside temperatures (°C) of which it is told when they are reached."""
Rows = Iterator[dict[str, object]]


@dataclass(frozen=True)
class Tables:
    """The tables of an outlook.

    ``figures``: every derived quantity with unit and arithmetic (``how``). ``envelope``: where the heat goes, by part.
    ``limits``: what could end the stay, in order, in days. ``curve``: days of heat and of stay, and the temperature
    that the heater holds inside, by outside temperature. ``cooling``: temperature inside by hours
    after the heating stopped. ``reached``: hours until it is down to some temperatures. ``tanks``: hours to 0 °C and to
    ice, parked and on the road, and what a pad holds. ``glass``: humidity and drying. ``grades``: an estimate against
    the temperature pairs of EN 1646-1. ``draining``: glycol fluid for what stays behind when drained.
    """

    figures: pd.DataFrame
    envelope: pd.DataFrame
    limits: pd.DataFrame
    curve: pd.DataFrame
    cooling: pd.DataFrame
    reached: pd.DataFrame
    tanks: pd.DataFrame
    glass: pd.DataFrame
    grades: pd.DataFrame
    draining: pd.DataFrame


def tables(table: pd.DataFrame, ids: Sequence[str], book: Rulebook, conditions: Conditions) -> Tables:
    """Give all tables for the cases of ``table``, called ``ids``, under the conditions.

    Raises:
        RuleError: a value is missing under ``rules/values``.
    """
    columns, values = Columns(table), Assumptions(book)
    winter = Winter(columns, values, conditions)
    return Tables(
        _figures(table, ids, book, conditions), pd.DataFrame(envelope_rows(winter, ids), columns=ENVELOPE),
        pd.DataFrame(_limits(winter, ids), columns=LIMITS),
        curve(columns, values, ids, conditions), _cooling(winter, ids),
        pd.DataFrame(_reached(winter, ids), columns=["van_id", "inside_c", *VALUES]),
        pd.DataFrame(_tanks(winter, ids), columns=TANKS), pd.DataFrame(glass_rows(winter, ids)),
        pd.DataFrame(_grades(winter, ids), columns=GRADES), pd.DataFrame(fluid_rows(winter, ids)),
    )  # fmt: skip


VALUES = ("value", "low", "high")
ENVELOPE = ["van_id", "part", "words", "area_m2", "u_value", *VALUES, "how"]
LIMITS = ["van_id", "limit", "words", "known", "never", *VALUES]
TANKS = ["van_id", "tank", "what", "unit", "never", *VALUES]
GRADES = ["van_id", "grade", "outside_c", "inside_c", "fares", "warm_up_h", "warm_up_h_low", "warm_up_h_high",
          "allowed_h_low", "allowed_h_high", "mean_u", "mean_u_low", "mean_u_high", "mean_u_limit"]  # fmt: skip


def _figures(table: pd.DataFrame, ids: Sequence[str], book: Rulebook, conditions: Conditions) -> pd.DataFrame:
    derived = derive(table, book, conditions)
    parts = []
    for name, spec in DERIVED.items():
        parts.append(
            pd.DataFrame(
                {
                    "van_id": list(ids),
                    "figure": name,
                    "meaning": spec.meaning,
                    "value": derived[name].to_numpy(),
                    "low": derived[f"{name}__low"].to_numpy(),
                    "high": derived[f"{name}__high"].to_numpy(),
                    "unit": spec.unit,
                    "how": derived[f"{name}__how"].to_numpy(),
                    "needs": spec.needs,
                }
            )  # fmt: skip
        )
    whole = pd.concat(parts, ignore_index=True)
    place = {van: number for number, van in enumerate(ids)}
    return whole.sort_values("van_id", key=lambda column: column.map(place), kind="stable", ignore_index=True)


def _limits(winter: Winter, ids: Sequence[str]) -> Rows:
    """Give the limits, the first to bind first; those that are not known last, ``low`` the earliest they could come."""
    never = float(np.max(winter.endless.typical, initial=0.0))
    electric = burns(winter.columns).nothing
    for case, van in enumerate(ids):
        for name, typical, low, high in stay.order(winter.shaped_limits, (case,)):
            if name in ("fuel", "vapour") and (electric[case] or low >= never):
                continue
            yield {
                "van_id": van, "limit": name, "words": stay.WORDS[name], "known": True, "never": low >= never,
                "value": typical, "low": low, "high": high,
            }  # fmt: skip
        for name in stay.unknown(winter.shaped_limits, (case,)):
            yield {
                "van_id": van, "limit": name, "words": stay.WORDS[name], "known": False, "never": False,
                "low": winter.soonest(name, case),
            }  # fmt: skip


def curve(
    columns: Columns, values: Assumptions, ids: Sequence[str], conditions: Conditions, at: Floats | None = None
) -> pd.DataFrame:
    """Give days of heat and of stay over outside temperatures (°C; by default -40 to 0, at most below inside).

    Columns ``van_id``, ``outside_c``, ``heat_days``, ``stay_days`` and ``held_inside_c`` (what full output holds
    inside, at most the wanted temperature) with ``_low`` and ``_high``. All vans and temperatures are worked out in
    one call.
    """
    if at is None:
        at = np.arange(COLDEST, min(WARMEST, conditions.inside_c - 1.0) + 0.5)
    winter = Winter(columns, values, conditions, at)
    found: dict[str, object] = {"van_id": np.repeat(np.asarray(ids, dtype=object), at.size)}
    found["outside_c"] = np.tile(at, len(ids))
    columns_of = (("heat_days", winter.heat_days), ("stay_days", winter.stay), ("held_inside_c", winter.held_inside))
    for name, one in columns_of:
        found |= {name: one.typical.ravel(), f"{name}_low": one.low.ravel(), f"{name}_high": one.high.ravel()}
    return pd.DataFrame(found)


def _cooling(winter: Winter, ids: Sequence[str]) -> pd.DataFrame:
    held = winter.sized
    total, capacity = winter.envelope.total, winter.values["van_heat_capacity"]
    found = cooling_curve(total.lifted(), capacity, winter.inside, winter.outside, HOURS * HOUR)
    shown = (np.where(held[:, np.newaxis], part, np.nan) for part in _parts(found))
    parts = dict(zip(VALUES, shown, strict=True))
    return pd.DataFrame(
        {
            "van_id": np.repeat(np.asarray(ids, dtype=object), HOURS.size), "hours": np.tile(HOURS, len(ids)),
            **{name: part.ravel() for name, part in parts.items()},
        }
    )  # fmt: skip


def _reached(winter: Winter, ids: Sequence[str]) -> Rows:
    for mark in MARKS:
        if not winter.outside < mark < winter.inside:
            continue
        found = monotone(
            lambda capacity, conductance, mark=mark: cooling_time(
                winter.inside, mark, winter.outside, time_constant(capacity, conductance)
            ),
            {"capacity": winter.values["van_heat_capacity"]}, {"conductance": winter.envelope.total},
        ).times(1 / HOUR)  # fmt: skip
        for case, van in enumerate(ids):
            if winter.sized[case]:
                yield {"van_id": van, "inside_c": mark, **_values(found, case)}


def _tanks(winter: Winter, ids: Sequence[str]) -> Rows:
    """Give hours to 0 °C and to ice that blocks the outlet, parked and on the road, and what a pad of its own holds."""
    never = float(winter.values["freezing_horizon"].typical) / HOUR
    speed = winter.conditions.driving_km_h / 3.6 or float(winter.values["road_speed"].typical)
    road = f"{speed * 3.6:.0f} km/h"
    for name in tanks.TANKS:
        found = {
            ("to 0 °C, parked", "h"): winter.tank_time(name).times(1 / HOUR),
            ("to ice that blocks, parked", "h"): winter.tank_time(name, to_ice=True).times(1 / HOUR),
            (f"to 0 °C, at {road}", "h"): winter.tank_time(name, wind=speed).times(1 / HOUR),
        }
        pad = winter.columns.is_word(f"{name}_tank_heat", "electric_pad")
        holds = tanks.coldest_for_pad(winter.tank(name), winter.values).clipped(least=LOWEST)
        for case, van in enumerate(ids):
            for (what, unit), one in found.items():
                if one.known[case]:
                    row = {"van_id": van, "tank": name, "what": what, "unit": unit, "never": one.low[case] >= never}
                    yield {**row, **_values(one, case)}
            if pad[case] and holds.known[case]:
                what = "lowest air around it that its pad holds off"
                yield {"van_id": van, "tank": name, "what": what, "unit": "°C", "never": False, **_values(holds, case)}


def _grades(winter: Winter, ids: Sequence[str]) -> Rows:
    for view in grade_views(winter.envelope, winter.output, winter.values):
        for case, van in enumerate(ids):
            if not (winter.sized[case] and winter.output.known[case]):
                continue
            warm = _values(view.warm_up.times(1 / HOUR), case)
            mean = _values(view.mean_u, case)
            yield {
                "van_id": van, "grade": view.grade, "outside_c": view.outside, "inside_c": view.inside,
                "fares": view.fares[case].value, "warm_up_h": warm["value"], "warm_up_h_low": warm["low"],
                "warm_up_h_high": warm["high"], "allowed_h_low": float(view.allowed.low) / HOUR,
                "allowed_h_high": float(view.allowed.high) / HOUR, "mean_u": mean["value"],
                "mean_u_low": mean["low"], "mean_u_high": mean["high"], "mean_u_limit": view.mean_u_limit,
            }  # fmt: skip


def _values(one: Range, case: int) -> dict[str, float]:
    return {name: float(part[case]) for name, part in zip(VALUES, _parts(one), strict=True)}


def _parts(one: Range) -> tuple[Floats, Floats, Floats]:
    return one.typical, one.low, one.high
