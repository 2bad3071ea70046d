"""Wet windows as a table: at which humidity they go wet, how moist the air gets, and what drying it costs."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from specscan.physics.assumptions import LITRE
from specscan.physics.condensation import air_humidity, air_to_stay_dry, glass_humidity, heat_of_air, moisture, per_day
from specscan.physics.ranges import Range
from specscan.physics.winter import Winter

PANES = {"windows": "window_glazing", "cab_glass": ""}
"""What has glass, and the field that must be known for a figure; the cab's glass is single in every van."""
PER_CENT = 100.0


def glass_rows(winter: Winter, ids: Sequence[str]) -> Iterator[dict[str, object]]:
    """Give a row for each van, pane and figure: ``van_id``, ``pane``, ``what``, ``unit``, ``value``, ``low``, ``high``.

    Of the air: the water that people bring (kg/day) and the humidity that sets in at the assumed air change (%). Of
    panes: the humidity at which one goes wet (%), the fresh air that keeps it dry (l/s) and the heat that costs (W).
    """
    values, people = winter.values, winter.conditions.people
    inside, outside = winter.inside, winter.outside
    water = per_day(moisture(values, people))
    humid = air_humidity(values, people, winter.envelope.space.air, inside, outside)
    for case, van in enumerate(ids):
        yield {"van_id": van, "pane": "air", "what": "water that people bring", "unit": "kg/day", **_row(water, case)}
        settles = _row(humid.times(PER_CENT), case)
        yield {
            "van_id": van,
            "pane": "air",
            "what": "relative humidity that sets in at the assumed air change",
            "unit": "%",
            **settles,
        }
    for pane, field in PANES.items():
        wet = glass_humidity(winter.envelope.u_values[pane], values, inside, outside)
        air = air_to_stay_dry(wet, values, people, inside, outside)
        heat = heat_of_air(values, air, inside, outside)
        found = (
            ("wet from a relative humidity of", "%", wet, PER_CENT),
            ("fresh air that keeps the glass dry", "l/s", air, 1 / LITRE),
            ("heat for that air", "W", heat, 1.0),
        )
        for case, van in enumerate(ids):
            if field and not winter.columns.known(field)[case]:
                continue
            for what, unit, one, scale in found:
                yield {"van_id": van, "pane": pane, "what": what, "unit": unit, **_row(one.times(scale), case)}


def _row(one: Range, case: int) -> dict[str, float]:
    parts = {"value": one.typical, "low": one.low, "high": one.high}
    return {name: float(part[case] if part.ndim else part) for name, part in parts.items()}
