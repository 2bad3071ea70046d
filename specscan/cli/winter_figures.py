"""Figures of winter in words: a value with its range, times in the unit that suits them, temperatures in °C and °F."""

from __future__ import annotations

from typing import Any

import numpy as np

from specscan.physics.words import figure
from specscan.reports.conditions_words import both_units, celsius, fahrenheit

YEAR, COLD_SPELL = 365 * 24.0, 60 * 24.0
"""The horizons of the rules, in hours: what goes beyond a year of stay, or two months of cold, is no figure."""
NOTHING = 1 / 60
DAYS_FROM, HOURS_FROM = 25.0, 2.0


def value_words(row: Any) -> str:
    """Give a figure with its unit and range, or that it is not known."""
    return span_words(row, row["unit"]) if np.isfinite(row["value"]) else "not known"


def span_words(row: Any, unit: str) -> str:
    """Give ``value`` with its range and unit; what lies beyond what is told of, in words; °C in °F, too.

    Times (``d``, ``h``) are told in minutes, hours or days, each end in the unit that suits it.
    """
    value, low, high = (float(row[name]) for name in ("value", "low", "high"))
    if unit == "°C":
        if celsius(low) == celsius(high):
            return both_units(value)
        spread = f"{celsius(low)} to {celsius(high)} °C / {fahrenheit(low)} to {fahrenheit(high)} °F"
        return f"{both_units(value)} ({spread})"
    if unit in ("d", "h"):
        return _times([one * (24.0 if unit == "d" else 1.0) for one in (value, low, high)], unit)
    parts = ["no end" if np.isinf(one) else figure(one) for one in (value, low, high)]
    text = parts[0] if parts[1] == parts[2] else f"{parts[0]} ({parts[1]} to {parts[2]})"
    return f"{text} {unit}"


def _times(hours: list[float], unit: str) -> str:
    parts = [_time(one, unit) for one in hours]
    units = {word for _, word in parts}
    if len(units) > 1:  # each end with its own
        parts = [(f"{number} {word}".strip(), "") for number, word in parts]
    value, low, high = (number for number, _ in parts)
    text = value if low == high else f"{value} ({low} to {high})"
    return f"{text} {units.pop()}".strip() if len(units) == 1 else text


def _time(hours: float, unit: str) -> tuple[str, str]:
    """Give a time as number and unit, or as words and no unit."""
    if unit == "d" and hours >= YEAR:
        return "no end", ""
    if unit == "h" and hours >= COLD_SPELL:
        return "never", ""
    if hours < NOTHING:
        return "at once", ""
    if hours >= DAYS_FROM:
        return figure(hours / 24), "days"
    if hours >= HOURS_FROM:
        return figure(hours), "h"
    return f"{hours * 60:.0f}", "min"
