"""Propylene glycol for a plumbing that stands drained: how much fluid brings what stays behind to which strength."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np

from specscan.physics.antifreeze import fluid_needed, share_needed
from specscan.physics.assumptions import LITRE, Assumptions
from specscan.physics.ranges import Floats, Range, monotone
from specscan.physics.tanks import TANKS
from specscan.physics.winter import Winter

PURPOSES = {
    "glycol_freeze_share": "no ice at all",
    "glycol_burst_share": "ice that does not burst pipes (slush, nothing flows)",
}
PER_CENT = 100.0


def left_behind(winter: Winter) -> Range:
    """Give the water (m³) that stays in drained tanks (not the water heater) and plumbing; unknown without tanks."""
    columns, share = winter.columns, winter.values["tank_residual_share"]
    found, any_known = winter.values["plumbing_residual"], np.zeros(columns.size, dtype=bool)
    for name in TANKS:
        litres = columns.number(f"{name}_tank_l")
        there = Range(*(np.nan_to_num(part) for part in (litres.low, litres.typical, litres.high)))
        found, any_known = found + there.times(LITRE) * share, any_known | litres.known
    return Range.of(*(np.where(any_known, part, np.nan) for part in (found.low, found.typical, found.high)))


def strength(values: Assumptions, table: str, celsius: Floats) -> Range:
    """Give the share of glycol (0 to 1) that a temperature (°C) asks for; unknown below the table (row C05)."""
    fahrenheit, shares = values.table(table)
    places = (fahrenheit - 32.0) / 1.8
    return Range.of(*(share_needed(celsius, places, part) for part in (shares.low, shares.typical, shares.high)))


def fluid_rows(winter: Winter, ids: Sequence[str]) -> Iterator[dict[str, object]]:
    """Give rows: ``van_id``, ``purpose``, ``fluid``, ``strength`` (per cent by volume needed), litres of fluid.

    ``value``, ``low``, ``high`` are litres, infinite where that fluid is too weak; ``too_weak`` says so of ``value``.
    ``share``, ``share_low``, ``share_high`` are the glycol in the fluid (per cent by volume).
    For the coldest night of the conditions. Propylene glycol only (rows V10, C05 to C11); follow the fluid's label.
    """
    values = winter.values
    water, coldest = left_behind(winter), winter.coldest
    fluids = {"pure propylene glycol": Range.of(1.0), "ready-mixed fluid": values["ready_mixed_share"]}
    for table, purpose in PURPOSES.items():
        wanted = strength(values, table, coldest)
        if not wanted.known:
            continue
        for fluid, share in fluids.items():
            litres = monotone(fluid_needed, {"water": water, "wanted": wanted}, {"share": share}, most=1e6)
            for case, van in enumerate(ids):
                if not litres.known[case]:
                    continue
                parts = {"value": litres.typical, "low": litres.low, "high": litres.high}
                weak = {name: float(part[case]) >= 1e6 for name, part in parts.items()}
                yield {
                    "van_id": van, "purpose": purpose, "fluid": fluid, "strength": float(wanted.typical) * PER_CENT,
                    "too_weak": weak["value"], "share": float(share.typical) * PER_CENT,
                    "share_low": float(share.low) * PER_CENT, "share_high": float(share.high) * PER_CENT,
                    **{name: np.inf if weak[name] else float(part[case]) / LITRE for name, part in parts.items()},
                }  # fmt: skip
