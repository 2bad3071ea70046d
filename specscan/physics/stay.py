"""What ends a stay: every limit in days, and the first of them.

A limit that is not known could come first: the low end of the stay then goes down to the earliest that it could come,
at once where nothing bounds it, and the high end is the least of the limits that are known.
"""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from specscan.physics.ranges import Floats, Range

WORDS = {
    "fuel": "the fuel for heat",
    "vapour": "propane that no longer vaporizes fast enough",
    "battery": "the battery",
    "fresh_water": "fresh water",
    "gray_tank": "a full gray tank",
    "toilet": "a full toilet tank",
    "fresh_freezes": "ice that blocks the fresh tank",
    "gray_freezes": "ice that blocks the gray tank",
    "lines_freeze": "a water line that is frozen through",
}
"""The limits, in words."""
HEATING = ("fuel", "vapour", "battery")
"""The limits of the heating; the others are those of water."""


def first_limit(limits: Mapping[str, Range], earliest: Mapping[str, Range] | None = None) -> Range:
    """Give the days until the first limit binds.

    Low: the least of all lows; of a limit that is unknown the low of ``earliest``, 0 where that is not known either.
    Typical and high: the least of those that are known; unknown where none is.
    """
    ranges = list(limits.values())
    bounds = {name: np.nan_to_num(one.low) for name, one in (earliest or {}).items()}
    low = _least([np.where(one.known, one.low, bounds.get(name, 0.0)) for name, one in limits.items()])
    typical, high = (_least([np.where(one.known, part(one), np.inf) for one in ranges]) for part in _PARTS)
    return Range.of(low, typical, high)


def order(limits: Mapping[str, Range], case: tuple[int, ...]) -> list[tuple[str, float, float, float]]:
    """Give the limits of one case that are known, the first to bind first: name, typical, low and high days."""
    found = [
        (name, float(one.typical[case]), float(one.low[case]), float(one.high[case]))
        for name, one in limits.items()
        if one.known[case]
    ]
    return sorted(found, key=lambda limit: limit[1:])


def unknown(limits: Mapping[str, Range], case: tuple[int, ...]) -> list[str]:
    """Give the limits of one case that are not known."""
    return [name for name, one in limits.items() if not one.known[case]]


_PARTS = (lambda one: one.typical, lambda one: one.high)


def _least(arrays: list[Floats]) -> Floats:
    return np.minimum.reduce(np.broadcast_arrays(*arrays))
