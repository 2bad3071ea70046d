"""Figures in the sentences that say how a quantity comes about."""

from __future__ import annotations

from collections.abc import Callable

from specscan.physics.ranges import Range

YEAR, COLD_SPELL = 365 * 24.0, 60 * 24.0
"""The horizons of the rules, in hours: what goes beyond a year of stay, or two months of cold, is no figure."""
NOTHING = 1 / 60
DAYS_FROM, HOURS_FROM = 25.0, 2.0


def figure(value: float) -> str:
    """Give a figure with three significant digits, without an exponent: ``36.3``, ``4690``, ``0.662``."""
    if value == 0:
        return "0"
    text = f"{value:.3g}"
    if "e" in text:
        text = f"{float(text):.0f}" if abs(value) >= 1 else f"{float(text):.6f}".rstrip("0")
    return text


def span(values: Range, case: int) -> str:
    """Give the value of one case, and its range where it has one: ``6.86 (3.06 to 9.14)``."""
    low, typical, high = (figure(float(part[case])) for part in (values.low, values.typical, values.high))
    return typical if low == high else f"{typical} ({low} to {high})"


def per(value: Range, unit: float = 1.0) -> str:
    """Give an assumption in a unit of so many SI units: ``25.5 (25.5 to 25.6)``."""
    low, typical, high = (figure(float(part) / unit) for part in (value.low, value.typical, value.high))
    return typical if low == high else f"{typical} ({low} to {high})"


def time_span(value: float, low: float, high: float, unit: str, say: Callable[[float], str] = figure) -> str:
    """Give a time (``d`` or ``h``) and its range, each in minutes, hours or days: ``6 h (29 min to 7 days)``.

    ``say`` puts a figure into words.
    """
    parts, joined = _in_one_unit([value, low, high], unit, say)
    first, least, most = parts
    return f"{first if least == most else f'{first} ({least} to {most})'} {joined}".strip()


def time_range(low: float, high: float, unit: str, say: Callable[[float], str] = figure) -> str:
    """Give a range of times alone: ``29 min to 7 days``."""
    (least, most), joined = _in_one_unit([low, high], unit, say)
    return f"{least if least == most else f'{least} to {most}'} {joined}".strip()


def earliest(days: float) -> str:
    """Give when something can come at the earliest: ``at the earliest after 75 min``, or ``perhaps at once``."""
    said = time_range(days, days, "d")
    return "perhaps at once" if said == "at once" else f"at the earliest after {said}"


def _in_one_unit(times: list[float], unit: str, say: Callable[[float], str]) -> tuple[list[str], str]:
    """Give times in words without their unit, and that unit; each with its own where they are not the same."""
    told = [_time(one * (24.0 if unit == "d" else 1.0), unit, say) for one in times]
    units = {word for _, word in told}
    if len(units) == 1:
        return [number for number, _ in told], units.pop()
    return [f"{number} {word}".strip() for number, word in told], ""


def _time(hours: float, unit: str, say: Callable[[float], str]) -> tuple[str, str]:
    """Give a time as number and unit, or as words and no unit."""
    if unit == "d" and hours >= YEAR:
        return "no end", ""
    if unit == "h" and hours >= COLD_SPELL:
        return "never", ""
    if hours < NOTHING:
        return "at once", ""
    if hours >= DAYS_FROM:
        return say(hours / 24), "days"
    if hours >= HOURS_FROM:
        return say(hours), "h"
    return f"{hours * 60:.0f}", "min"
