"""Ranges of numbers, many at once: a low, a typical and a high value for each case, NaN where unknown.

Interval arithmetic: the low and high of a result are the least and the greatest value that the operation can give
for operands anywhere in their ranges. Source: R. E. Moore, *Interval Analysis* (1966); the operations are those of
IEEE Std 1788-2015, without its outward rounding of the last bit. An operand that stands twice in a formula counts
as two independent ones, so a result may be too wide but never too narrow.

One exception: where independent parts are added up (the faces of a van, the loads of a battery), the spreads of the
assumptions behind them are combined by ``independent_sum`` as the root of the sum of their squares.
"""

from __future__ import annotations

import functools
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

Floats = NDArray[np.float64]
Mask = NDArray[np.bool_]


@dataclass(frozen=True, slots=True)
class Range:
    """Low, typical and high values: arrays of one shape, in one unit. A case is known in all three or in none."""

    low: Floats
    typical: Floats
    high: Floats

    @classmethod
    def of(cls, low: ArrayLike, typical: ArrayLike | None = None, high: ArrayLike | None = None) -> Range:
        """Give a range; a single argument gives plain values. What is not finite in any of the three is unknown.

        Bounds that do not enclose the typical value, or run backwards, are widened until they do.
        """
        first = np.asarray(low, dtype=float)
        second = first if typical is None else np.asarray(typical, dtype=float)
        third = second if high is None else np.asarray(high, dtype=float)
        least = np.minimum(np.minimum(first, third), second)
        greatest = np.maximum(np.maximum(first, third), second)
        # NaN goes through both ends; what is infinite shows in one of them
        known = np.isfinite(least) & np.isfinite(greatest)
        if known.all():
            typical_values = second if second.shape == known.shape else np.broadcast_to(second, known.shape)
            return cls(np.asarray(least), typical_values, np.asarray(greatest))
        return cls(*(np.where(known, values, np.nan) for values in (least, second, greatest)))

    @classmethod
    def unknown(cls, size: int) -> Range:
        """Give ``size`` unknown values."""
        nothing = np.full(size, np.nan)
        return cls(nothing, nothing, nothing)

    @property
    def known(self) -> Mask:
        """Tell where there is a value."""
        return np.isfinite(self.typical)

    @property
    def exact(self) -> Mask:
        """Tell where the value is known without a spread."""
        return self.known & (self.low == self.high)

    def __add__(self, other: Range) -> Range:
        return Range(self.low + other.low, self.typical + other.typical, self.high + other.high)

    def __mul__(self, other: Range) -> Range:
        corners = [one * two for one in (self.low, self.high) for two in (other.low, other.high)]
        return Range(_least(corners), self.typical * other.typical, _greatest(corners))

    def __sub__(self, other: Range) -> Range:
        return Range(self.low - other.high, self.typical - other.typical, self.high - other.low)

    def __truediv__(self, other: Range) -> Range:
        """Divide; unknown where the divisor can be zero, or is so small that the result is not finite."""
        fit = (other.low > 0) | (other.high < 0)
        divisor = [np.where(fit, part, np.nan) for part in (other.low, other.typical, other.high)]
        with np.errstate(over="ignore"):
            corners = [one / two for one in (self.low, self.high) for two in (divisor[0], divisor[2])]
            return Range.of(_least(corners), self.typical / divisor[1], _greatest(corners))

    def times(self, factor: float) -> Range:
        """Multiply by a plain number that is not negative, as in a change of unit."""
        return Range(self.low * factor, self.typical * factor, self.high * factor)

    def rest(self) -> Range:
        """Give 1 minus a share."""
        return Range(1 - self.high, 1 - self.typical, 1 - self.low)

    def clipped(self, least: float = -np.inf, most: float = np.inf) -> Range:
        """Give the range with every value moved to the nearest one between two limits."""
        return Range(*(np.clip(part, least, most) for part in (self.low, self.typical, self.high)))

    def lifted(self) -> Range:
        """Give the range with one more axis at the end, so that it meets every value of a sweep."""
        return Range(*(np.asarray(part)[..., np.newaxis] for part in (self.low, self.typical, self.high)))

    def at(self, typical: Floats) -> Range:
        """Give the same bounds with another typical value inside them."""
        return Range(self.low, np.clip(typical, self.low, self.high), self.high)


def hull(*ranges: Range) -> Range:
    """Give the least range around all, with the typical value of the first. Unknown where any is unknown."""
    low = _least([one.low for one in ranges])
    high = _greatest([one.high for one in ranges])
    return Range(low, np.where(np.isnan(low), np.nan, ranges[0].typical), high)


def independent_sum(certain: Sequence[Range], whole: Sequence[Range]) -> Range:
    """Give the sum of parts whose assumptions have nothing to do with one another.

    ``certain`` has each part with every assumption at its typical value, so that its range is what documents leave
    open; ``whole`` has the same parts with the assumptions' ranges too. What documents leave open adds up bound on
    bound; what the assumptions add beyond it is taken as root of the sum of squares, for it would be odd if all erred
    to one side. Source: ISO/IEC Guide 98-3 (GUM) 5.1.2; S. J. Kline and F. A. McClintock (1953). A further open
    question and a wider assumption never make the sum narrower. Check by hand: 10 ± 3 and 20 ± 4 give 30 ± 5.
    """
    low = _total([one.low for one in certain]) - _root_of_squares(
        [one.low - wide.low for one, wide in zip(certain, whole, strict=True)]
    )
    high = _total([one.high for one in certain]) + _root_of_squares(
        [wide.high - one.high for one, wide in zip(certain, whole, strict=True)]
    )
    return Range.of(low, _total([one.typical for one in whole]), high)


def monotone(
    formula: Callable[..., Floats], rising: Mapping[str, Range], falling: Mapping[str, Range], most: float = np.inf
) -> Range:
    """Give the exact range of a formula that only rises with some arguments and only falls with the others.

    The formula is worked out three times: with what makes it least, with typical values, with what makes it greatest.
    Unlike a chain of operations this is exact however often an argument stands in the formula. ``most`` is put in
    place of greater values, so that what never happens has an end. Unknown where an argument is.
    """
    ends = (
        {**{name: one.low for name, one in rising.items()}, **{name: one.high for name, one in falling.items()}},
        {name: one.typical for name, one in {**rising, **falling}.items()},
        {**{name: one.high for name, one in rising.items()}, **{name: one.low for name, one in falling.items()}},
    )
    with np.errstate(invalid="ignore", divide="ignore", over="ignore"):
        return Range.of(*(np.minimum(formula(**end), most) for end in ends))


def pick(where: Mask, yes: Range, no: Range) -> Range:
    """Give ``yes`` where the mask is true, else ``no``."""
    return Range(
        np.where(where, yes.low, no.low),
        np.where(where, yes.typical, no.typical),
        np.where(where, yes.high, no.high),
    )


def first_known(*ranges: Range) -> Range:
    """Give for each case the first of the ranges that is known there."""
    result = ranges[-1]
    for one in reversed(ranges[:-1]):
        result = pick(one.known, one, result)
    return result


def _total(arrays: list[Floats]) -> Floats:
    return np.asarray(sum(arrays), dtype=float)


def _root_of_squares(arrays: list[Floats]) -> Floats:
    return np.sqrt(_total([np.maximum(one, 0.0) ** 2 for one in arrays]))


def _least(arrays: list[Floats]) -> Floats:
    return functools.reduce(np.minimum, arrays)


def _greatest(arrays: list[Floats]) -> Floats:
    return functools.reduce(np.maximum, arrays)
