"""The thermal resistance of the walls' insulation."""

from __future__ import annotations

import numpy as np

from specscan.physics.assumptions import MILLIMETRE, Assumptions
from specscan.physics.columns import BETWEEN_WORDS, Columns
from specscan.physics.ranges import Range, first_known, pick
from specscan.physics.words import figure, per, span

FOIL = "reflective_foil"


def layer(thickness: Range, conductivity: Range) -> Range:
    """Give the resistance of a layer: thickness (m) over conductivity (W/(m·K)), in m²·K/W.

    Source: ISO 6946, thermal resistance of homogeneous layers. Check: 38 mm at 0.029 W/(m·K) are 1.31 (row H07).
    """
    return thickness / conductivity


def wall_resistance(columns: Columns, values: Assumptions, materials: list[str]) -> Range:
    """Give the resistance of the walls' insulation, in m²·K/W: the printed one, else from material and thickness.

    ``materials`` are the words that the field may hold. Where several are named, which of them is in the walls is not
    known: the range goes over all. Foil adds up to what it gives beside an air space, and needs no thickness where it
    is alone. Films, lining and steel ribs are not counted, so the whole wall is worse than this layer.
    """
    printed = columns.number("insulation_r_si")
    thickness = columns.number("insulation_thickness_mm").times(MILLIMETRE)
    low, typical, high = (np.full(columns.size, start) for start in (np.inf, np.inf, -np.inf))
    solid = np.zeros(columns.size, dtype=bool)
    for material in materials:
        if material == FOIL:
            continue
        there = columns.holds("insulation_material", material)
        one = layer(thickness, values[f"{material}_conductivity"])
        low = np.minimum(low, np.where(there, one.low, np.inf))
        typical = np.minimum(typical, np.where(there, one.typical, np.inf))
        high = np.maximum(high, np.where(there, one.high, -np.inf))
        solid |= there
    foil, there = values[f"{FOIL}_resistance"], columns.holds("insulation_material", FOIL)
    alone = pick(there, foil, Range.unknown(columns.size))
    beside = Range.of(low, typical, high + np.where(there, foil.high, 0.0))
    return first_known(printed, pick(solid, beside, alone))


def say_wall(columns: Columns, values: Assumptions, result: Range) -> list[str | None]:
    """Give for each case in words how its wall resistance comes about, ``None`` where it is unknown."""
    printed, thickness = columns.number("insulation_r_si"), columns.number("insulation_thickness_mm")
    materials = columns.words("insulation_material")
    out: list[str | None] = []
    for case in range(columns.size):
        if not result.known[case]:
            out.append(None)
            continue
        end = f" = {span(result, case)} m²·K/W, without ribs, lining and films."
        if printed.known[case]:
            out.append(f"The printed resistance{end}")
            continue
        named = str(materials[case]).split(BETWEEN_WORDS)
        layers = [
            f"{span(thickness, case)} mm of {material} at {per(values[f'{material}_conductivity'])} W/(m·K)"
            for material in named
            if material != FOIL
        ]
        text, foil = " or ".join(layers), values[f"{FOIL}_resistance"]
        if FOIL in named:
            text = (
                f"{text}, with foil beside it up to {figure(float(foil.high))} more" if text else f"Foil: {per(foil)}"
            )
        out.append(text + end)
    return out
