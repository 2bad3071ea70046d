"""Figures of winter in words: a value with its range, times in the unit that suits them, temperatures in °C and °F."""

from __future__ import annotations

from typing import Any

import numpy as np

from specscan.physics.words import figure, time_span
from specscan.reports.conditions_words import both_units, celsius, fahrenheit


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
        return time_span(value, low, high, unit)
    parts = ["no end" if np.isinf(one) else figure(one) for one in (value, low, high)]
    text = parts[0] if parts[1] == parts[2] else f"{parts[0]} ({parts[1]} to {parts[2]})"
    return f"{text} {unit}"
