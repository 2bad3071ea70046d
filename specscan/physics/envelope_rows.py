"""Where a van's heat goes, part by part, with the arithmetic of each."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from specscan.physics.assumptions import HOUR
from specscan.physics.envelope import layers
from specscan.physics.ranges import Range
from specscan.physics.winter import Winter
from specscan.physics.words import figure

WORDS = {
    "walls": "walls and rear", "ceiling": "ceiling", "floor": "floor", "windows": "windows of the living space",
    "cab_glass": "cab glass", "cab_shell": "cab shell", "air": "air change",
}  # fmt: skip


def envelope_rows(winter: Winter, ids: Sequence[str]) -> Iterator[dict[str, object]]:
    """Give a row for each van of which size or walls are known, and each part that loses heat.

    ``van_id``, ``part``, ``words``, ``area_m2`` and ``u_value`` (W/(m²·K), both typical; None for the air), what is
    lost per kelvin in W/K (``value``, ``low``, ``high``), and ``how``: the arithmetic with typical values.
    """
    envelope = winter.envelope
    walls = layers(winter.columns, winter.values, winter.materials, winter.conditions.wind_m_s)
    share = _typical(winter.values["rib_share"], 0)
    for case, van in enumerate(ids):
        if not winter.sized[case]:
            continue
        for name, lost in envelope.parts.items():
            area = u = None
            if name == "air":
                how = _air(winter, case)
            else:
                area, u = _typical(envelope.areas[name], case), _typical(envelope.u_values[name], case)
                how = f"{figure(area)} m² × {figure(u)} W/(m²·K)"
            if name in walls:
                how += f", U = {_layers(walls[name], share, case)}"
            if name == "floor":
                space = envelope.space
                how += f"; {figure(_typical(space.length, case))} m × {figure(_typical(space.width, case))} m"
            if name == "walls":
                height = figure(_typical(envelope.space.height, case))
                how += f"; both sides and the rear, {height} m high, less the windows"
            yield {
                "van_id": van, "part": name, "words": WORDS[name], "area_m2": area, "u_value": u,
                "value": _typical(lost, case), "low": float(_of(lost.low, case)), "high": float(_of(lost.high, case)),
                "how": how,
            }  # fmt: skip


def _layers(one: dict[str, Range], share: float, case: int) -> str:
    """Tell a face's U value: layers in series between the ribs, and at the ribs what lies over them."""
    part = {name: _typical(value, case) for name, value in one.items()}
    between = " + ".join(figure(part[name]) for name in ("inner", "insulation", "lining", "outer"))
    over = min(part["over_rib"], part["insulation"] + part["lining"])
    rib = " + ".join(figure(value) for value in (part["inner"], over, part["outer"]) if value)
    return f"{figure(1 - share)}/({between}) + {figure(share)}/({rib})"


def _air(winter: Winter, case: int) -> str:
    changes = _typical(winter.values["air_changes_parked"], case) * HOUR
    heat = _typical(winter.values["air_heat_capacity"], case) / HOUR
    volume = _typical(winter.envelope.space.air, case)
    return f"the air changes {figure(changes)} × an hour × {figure(volume)} m³ × {figure(heat)} Wh/(m³·K)"


def _typical(one: Range, case: int) -> float:
    return float(_of(one.typical, case))


def _of(part, case: int):  # type: ignore[no-untyped-def]
    return part[case] if part.ndim else part
