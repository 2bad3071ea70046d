"""Figures in the sentences that say how a quantity comes about."""

from __future__ import annotations

from specscan.physics.ranges import Range


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
