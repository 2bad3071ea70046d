"""How long water takes to 0 °C and to ice: lumped cooling, latent heat, Plank's equation, pipes.

Plain numbers or arrays, SI with temperatures in °C. Times are in seconds; infinite where it never happens. Wind makes
heat pass faster; it never takes a thing below the temperature of the air ("wind chill" is about skin).
"""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike

from specscan.physics.ranges import Floats

FREEZING = 0.0
PLANK = {"slab": (1 / 2, 1 / 8), "cylinder": (1 / 4, 1 / 16), "sphere": (1 / 6, 1 / 24)}
"""Plank's shape factors P and R for a full thickness or diameter (Plank 1913, row G07)."""


def time_constant(heat_capacity: ArrayLike, conductance: ArrayLike) -> Floats:
    """Give m·cp/(U·A) in seconds from a heat capacity (J/K) and a conductance (W/K). Check: row G14, 16.6 h."""
    return np.asarray(heat_capacity, dtype=float) / np.asarray(conductance, dtype=float)


def cooling_time(start: ArrayLike, end: ArrayLike, around: ArrayLike, constant: ArrayLike) -> Floats:
    """Give the time (s) of lumped cooling from ``start`` to ``end`` (°C) in surroundings of ``around`` (°C).

    t = τ ln((T0 - Ta)/(T1 - Ta)) with τ = ``constant`` (s). 0 where it starts at or below the end, infinite where the
    surroundings are not below the end. Valid where the inside is well mixed (Biot number below about 0.1; a tank of
    water in still air). Source: Incropera ch. 5. Checks: rows G12, G13, G14.
    """
    first, last, air, tau = (np.asarray(one, dtype=float) for one in (start, end, around, constant))
    never, at_once = air >= last, first <= last
    gap = np.where(never, 1.0, last - air)
    time = tau * np.log(np.where(never | at_once, 1.0, (first - air) / gap))
    return np.where(at_once, 0.0, np.where(never, np.inf, time))


def ice_time(latent: ArrayLike, conductance: ArrayLike, around: ArrayLike) -> Floats:
    """Give the time (s) to draw a latent heat (J) from water at 0 °C at a fixed conductance (W/K).

    ``latent`` is mass × share that becomes ice × heat of fusion. The resistance of the ice itself is not counted, so
    the time is a lower bound. Infinite where the surroundings are not below 0 °C. Check: row G14, 132.36 h.
    """
    heat, ua, air = (np.asarray(one, dtype=float) for one in (latent, conductance, around))
    cold = air < FREEZING
    return np.where(cold, heat / (ua * np.where(cold, FREEZING - air, 1.0)), np.inf)


def plank_time(
    shape: str, density: ArrayLike, latent: ArrayLike, difference: ArrayLike, size: ArrayLike, film: ArrayLike,
    conductivity: ArrayLike,
) -> Floats:  # fmt: skip
    """Give the time (s) to freeze a body that is at its freezing point: ρL/ΔT · (P·D/h + R·D²/k).

    Args:
        shape: ``slab`` (cooled on both faces), ``cylinder`` or ``sphere``.
        density: kg/m³; ``latent``: J/kg; ``difference``: freezing point less surroundings, K, above 0.
        size: full thickness or diameter, m; ``film``: W/(m²·K); ``conductivity``: of the frozen part, W/(m·K).

    Raises:
        KeyError: no such shape.

    Sensible heat is left out. Source: Plank 1913. Checks: rows G08 to G11.
    """
    surface, core = PLANK[shape]
    length = np.asarray(size, dtype=float)
    path = surface * length / np.asarray(film, dtype=float) + core * length**2 / np.asarray(conductivity, dtype=float)
    return (
        np.asarray(density, dtype=float) * np.asarray(latent, dtype=float) / np.asarray(difference, dtype=float) * path
    )


def sleeve_resistance(inner: ArrayLike, outer: ArrayLike, conductivity: ArrayLike) -> Floats:
    """Give the resistance (m·K/W, per metre of pipe) of a sleeve from inner to outer diameter: ln(D3/D2)/(2πk).

    Source: ASHRAE Handbook of Fundamentals 2019 ch. 23, row G15.
    """
    ratio = np.asarray(outer, dtype=float) / np.asarray(inner, dtype=float)
    return np.log(ratio) / (2 * np.pi * np.asarray(conductivity, dtype=float))


def film_resistance(diameter: ArrayLike, film: ArrayLike) -> Floats:
    """Give the resistance (m·K/W, per metre of pipe) of the air around it: 1/(π D h)."""
    return 1 / (np.pi * np.asarray(diameter, dtype=float) * np.asarray(film, dtype=float))


def pipe_time(
    bore: ArrayLike, resistance: ArrayLike, start: ArrayLike, around: ArrayLike, density: ArrayLike, heat: ArrayLike
) -> Floats:
    """Give the time (s) until standing water in a pipe is at 0 °C: ρ cp π (D1/2)² R ln[(ti - ta)/(tf - ta)].

    Args:
        bore: inner diameter, m; ``resistance``: from water to air, m·K/W.
        start, around: temperature of the water and of the air, °C.
        density, heat: kg/m³ and J/(kg·K) of water.

    Latent heat is left out (row G19): it is the time to first ice, not to a plug. Source: ASHRAE Handbook of
    Fundamentals 2019 ch. 23 Eq. 1. Checks: rows G16 to G18.
    """
    area = np.pi * (np.asarray(bore, dtype=float) / 2) ** 2
    tau = np.asarray(density, dtype=float) * np.asarray(heat, dtype=float) * area * np.asarray(resistance, dtype=float)
    return cooling_time(start, FREEZING, around, tau)


def held_by_heat(water: ArrayLike, power: ArrayLike, conductance: ArrayLike) -> Floats:
    """Give the lowest temperature around (°C) at which a power (W) holds water at a temperature (°C): Tw - P/(U·A)."""
    return np.asarray(water, dtype=float) - np.asarray(power, dtype=float) / np.asarray(conductance, dtype=float)
