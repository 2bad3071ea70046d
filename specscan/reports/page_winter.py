"""Winter on the comparison page: days of heat over outside temperature as curves, and what ends the stay."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from dataclasses import field as made
from typing import Any

import numpy as np
import pandas as pd

from specscan.physics.winter import LOWEST
from specscan.physics.words import earliest
from specscan.reports.conditions_words import both_units, conditions_words
from specscan.reports.page_words import Shown, Wording
from specscan.reports.winter import Outlook

LEFT, RIGHT, TOP, BOTTOM = 30.0, 312.0, 8.0, 132.0
"""The edges of the plot in its picture of 320 × 160."""
DAYS = (0.5, 50.0)
"""Ends of the axis of days, which is logarithmic."""
DAY_TICKS = (0.5, 1, 2, 5, 10, 20, 50)
COLD = (-40.0, 0.0)
"""Ends of the axis of outside temperature (°C)."""
TICKS = {"metric": range(-40, 1, 10), "us": range(-40, 33, 20)}
TOLD = (0, -10, -20, -30, -40)
"""Outside temperatures (°C) at which a curve is told in words."""
LASTS = {"yes": "nothing that is known ends the stay before", "no": "the stay ends before", "unknown": "not certain"}


@dataclass(frozen=True, slots=True)
class LimitShown:
    """A limit of the stay: its words, its days (``None``: not known), whether it never binds, and else the earliest."""

    words: str
    days: Shown | None
    never: bool
    earliest: str = ""


@dataclass(frozen=True, slots=True)
class CurveShown:
    """A curve as paths of a picture: the range, the typical line, where the heater no longer holds; and in words.

    ``lost_to`` is the place left of which the heater certainly no longer holds the inside, ``doubtful_to`` the one left
    of which it may not.
    """

    band: str
    line: str
    lost_to: float
    doubtful_to: float
    summary: str


@dataclass(slots=True)
class VanWinter:
    """The winter of one van with one equipment; ``points`` are those of the curve: ``outside_c`` and days of heat.

    ``without`` says why a figure has no meaning for the van: days of fuel where the heater burns none.
    """

    limits: list[LimitShown]
    lasts: str
    holds: Shown
    curve: CurveShown | None
    points: list[dict[str, float]] = made(default_factory=list)
    without: dict[str, str] = made(default_factory=dict)

    @property
    def first(self) -> str:
        """Give the limit that binds first, in words."""
        return next((one.words for one in self.limits if one.days is not None and not one.never), "")


@dataclass(slots=True)
class WinterShown:
    """The winter of all vans, by equipment and van, and under which conditions. ``same``: vans alike with options."""

    conditions: str
    outside: Shown
    inside: Shown
    nights: int
    vans: dict[str, dict[str, VanWinter]]
    cautions: list[str]
    same: set[str] = made(default_factory=set)
    day_ticks: Sequence[tuple[float, str]] = ()
    cold_ticks: Mapping[str, Sequence[tuple[float, str]]] = made(default_factory=dict)


def show_winter(outlooks: Mapping[str, Outlook], wording: Wording) -> WinterShown:
    """Give the winter of vans for the page; ``outlooks`` are by equipment, under the same conditions."""
    under = next(iter(outlooks.values())).conditions
    vans = {equipment: _vans(outlook, wording) for equipment, outlook in outlooks.items()}
    first, *others = vans.values()
    same = {van for van, winter in first.items() if all(other.get(van) == winter for other in others)}
    cautions = list(dict.fromkeys(text for outlook in outlooks.values() for text in outlook.cautions))
    return WinterShown(
        conditions_words(under), _temperature(under.outside_c), _temperature(under.inside_c), under.nights, vans,
        cautions, same, [(_y(days), f"{days:g}") for days in DAY_TICKS],
        {
            "metric": [(_x(mark), f"{mark}") for mark in TICKS["metric"]],
            "us": [(_x((mark - 32) / 1.8), f"{mark}") for mark in TICKS["us"]],
        },
    )  # fmt: skip


def _vans(outlook: Outlook, wording: Wording) -> dict[str, VanWinter]:
    limits = dict(list(outlook.tables.limits.groupby("van_id"))) if len(outlook.tables.limits) else {}
    curves = dict(list(outlook.tables.curve.groupby("van_id")))
    figures = outlook.tables.figures
    holds = figures[figures["figure"] == "lowest_outside_c"].set_index("van_id")
    silent = figures[~np.isfinite(figures["value"]) & figures["how"].notna()]
    without = {van: dict(zip(rows["figure"], rows["how"], strict=True)) for van, rows in silent.groupby("van_id")}
    found = {}
    for van, lasts in zip(outlook.vans["van_id"], outlook.vans["lasts"], strict=True):
        end = holds.loc[van]
        rows = limits.get(van)
        found[van] = VanWinter(
            [_limit(row, wording) for _, row in rows.iterrows()] if rows is not None else [],
            LASTS[lasts], _holds(end, outlook.conditions.inside_c), _curve(curves.get(van), end, wording),
            _points(curves.get(van)), without.get(van, {}),
        )  # fmt: skip
    return found


def _limit(row: Any, wording: Wording) -> LimitShown:
    if not row["known"]:
        return LimitShown(row["words"], None, False, earliest(row["low"]))
    days = wording.number("stay_days", row["value"], row["low"], row["high"], "d")
    return LimitShown(row["words"], days, bool(row["never"]))


def _holds(end: Any, inside: float) -> Shown:
    """Tell in words down to which outside temperature the heater holds the inside, and below which it no longer does.

    What holds at the lowest temperature that is told of (see ``physics.winter.LOWEST``) is not told apart below it.
    """
    if not np.isfinite(end["value"]):
        return Shown(
            *[f"Down to which outside temperature the heater holds the inside is not known: {end['needs']}."] * 2
        )
    texts = []
    for warm, cold, wanted in (
        (_degrees(end["high"]), _degrees(end["low"]), _degrees(inside)),
        (_degrees(end["high"], us=True), _degrees(end["low"], us=True), _degrees(inside, us=True)),
    ):
        text = f"The heater holds {wanted} inside for certain down to {warm} outside"
        lowest = end["low"] <= LOWEST
        texts.append(
            f"{text}, and no longer below {cold}." if not lowest else f"{text}; where it no longer does is not certain."
        )
    return Shown(*texts)


def _curve(rows: pd.DataFrame | None, end: Any, wording: Wording) -> CurveShown | None:
    if rows is None:
        return None
    rows = rows[np.isfinite(rows["heat_days"])].sort_values("outside_c")
    if len(rows) < 2:
        return None
    places = [_x(one) for one in rows["outside_c"]]
    low, typical, high = (
        [f"{x:.1f} {_y(days):.1f}" for x, days in zip(places, rows[name], strict=True)]
        for name in ("heat_days_low", "heat_days", "heat_days_high")
    )
    told = []
    for _, row in rows[rows["outside_c"].isin(TOLD)].iloc[::-1].iterrows():
        days = wording.number("heat_days", row["heat_days"], row["heat_days_low"], row["heat_days_high"], "d")
        told.append(f"at {both_units(row['outside_c'])} {days.metric}")
    known = np.isfinite(end["value"])
    return CurveShown(
        f"M{'L'.join(low)}L{'L'.join(reversed(high))}Z", f"M{'L'.join(typical)}",
        _x(end["low"]) if known else LEFT, _x(end["high"]) if known else LEFT,
        f"Days of heat by outside temperature: {'; '.join(told)}.",
    )  # fmt: skip


def _points(rows: pd.DataFrame | None) -> list[dict[str, float]]:
    if rows is None:
        return []
    names = ["outside_c", "heat_days", "heat_days_low", "heat_days_high"]
    known = rows[np.isfinite(rows["heat_days"])][names].round(3)
    return [{str(name): float(value) for name, value in row.items()} for row in known.to_dict("records")]


def _x(outside: float) -> float:
    share = (min(max(outside, COLD[0]), COLD[1]) - COLD[0]) / (COLD[1] - COLD[0])
    return round(LEFT + share * (RIGHT - LEFT), 1)


def _y(days: float) -> float:
    """Give the height of a number of days; what lies beyond the axis is drawn at its end."""
    least, most = DAYS
    share = math.log(min(max(days, least), most) / least) / math.log(most / least)
    return round(BOTTOM - share * (BOTTOM - TOP), 1)


def _degrees(value: float, us: bool = False) -> str:
    return f"{value * 1.8 + 32:.0f} °F" if us else f"{round(value):d} °C"


def _temperature(value: float) -> Shown:
    return Shown(_degrees(value), _degrees(value, us=True))
