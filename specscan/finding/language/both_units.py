"""An amount that is printed in two units: "27 gal (102 L)", "8 ft / 2.4 m", "two 11 lb (5 kg) cylinders"."""

from __future__ import annotations

import re
from dataclasses import replace

from specscan.finding.language.quantity import Quantity

BETWEEN = re.compile(r"\s*[(/=|–-]\s*[-−–]?\s*|\s*,\s*|\s*\(=\s*")
CLOSES = re.compile(r"\s*\)")
METRIC = {"mm", "cm", "m", "kg", "l", "L", "W", "kW", "°C", "litre", "litres", "liters", "liter", "L/h", "l/h"}
ROUNDED = 0.04  # by which amounts in two units differ at most
ROUNDED_DEGREES = 1.5


def joined(text: str, found: list[Quantity]) -> list[Quantity]:
    """Join a quantity with the same amount in another unit behind it; the metric one counts.

    Behind several things the other unit may tell of each: "two 11 lb (5 kg) cylinders" hold 10 kg.
    """
    result: list[Quantity] = []
    for quantity in found:
        last = result[-1] if result else None
        between = text[last.end : quantity.start] if last is not None else ""
        if last is None or BETWEEN.fullmatch(between) is None:
            result.append(quantity)
            continue
        if last.count > 1 and quantity.count == 1 and _same(_one_of(last), quantity):
            low, high = quantity.low * last.count, quantity.high * last.count
            quantity = replace(quantity, low=low, high=high, count=last.count, each=quantity.low)
        if not _same(last, quantity):
            result.append(quantity)
            continue
        close = CLOSES.match(text[quantity.end :])
        end = quantity.end + (close.end() if close and "(" in between else 0)
        metric = quantity.printed_unit in METRIC and last.printed_unit not in METRIC
        metric = metric and quantity.dimension != "temperature"  # rounded degrees differ by too much
        kept = quantity if metric and not last.is_range else last
        count = max(last.count, quantity.count)
        result[-1] = replace(kept, start=last.start, end=end, joined=True, count=count)
    return result


def _one_of(several: Quantity) -> Quantity:
    """Give what each of several things has."""
    return replace(several, low=several.each, high=several.each, count=1)


def _same(one: Quantity, two: Quantity) -> bool:
    if one.dimension != two.dimension or one.bare or two.bare:
        return False
    if one.printed_unit == two.printed_unit and one.count == two.count:
        return False
    if one.dimension == "temperature":
        return abs(one.low - two.low) <= ROUNDED_DEGREES
    return abs(one.high - two.high) <= ROUNDED * max(abs(one.high), abs(two.high), 1e-9)
