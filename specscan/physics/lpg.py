"""Propane as a liquid that must boil to feed a heater. Plain numbers or arrays, SI with temperatures in °C."""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike

from specscan.physics.assumptions import ZERO_CELSIUS
from specscan.physics.ranges import Floats

CRITICAL_TEMPERATURE = 369.89
CRITICAL_PRESSURE = 4.2512e6
VAPOUR = ((-6.7722, 1.0), (1.6938, 1.5), (-1.3341, 2.2), (-3.1876, 4.8), (0.94937, 6.2))


def propane_pressure(celsius: ArrayLike) -> Floats:
    """Give the saturation pressure of pure propane (Pa, absolute), from -100 °C to the critical point at 96.7 °C.

    Commercial propane has lighter and heavier gases in it and differs (rows P04, P05). Source: ancillary equation of
    Lemmon, McLinden and Wagner 2009, coefficients from memory, held against CoolProp in rows P01 to P03.
    """
    kelvin = np.asarray(celsius, dtype=float) + ZERO_CELSIUS
    theta = np.clip(1 - kelvin / CRITICAL_TEMPERATURE, 0.0, None)
    total = sum(factor * theta**power for factor, power in VAPOUR)
    return CRITICAL_PRESSURE * np.exp(CRITICAL_TEMPERATURE / kelvin * total)


def table_value(argument: ArrayLike, at: ArrayLike, values: ArrayLike) -> Floats:
    """Give a table's value, linear between its entries and constant beyond them; ``at`` rises."""
    return np.interp(np.asarray(argument, dtype=float), np.asarray(at, dtype=float), np.asarray(values, dtype=float))


def projected_area(volume: ArrayLike, aspect: ArrayLike) -> Floats:
    """Give diameter × length (m²) of a lying cylinder of a volume (m³) and a length of so many diameters.

    V = π/4 D² L with L = a·D, so D·L = a^⅓ (4V/π)^⅔. Check: row P10, a 84 lb tank has about 560 in² (with a = 3.3).
    """
    return np.asarray(aspect, dtype=float) ** (1 / 3) * (4 * np.asarray(volume, dtype=float) / np.pi) ** (2 / 3)


def tank_draw(area: ArrayLike, k: ArrayLike, factor: ArrayLike) -> Floats:
    """Give the fuel power (W) that a lying tank can vaporize: D × L × K × temperature factor.

    Args:
        area: diameter × length, m².
        k: the rule's K at 0 °F for the filling, W/m².
        factor: for the temperature, 1 at 0 °F.

    Source: LP-gas serviceman's handbook rule, rows P07 to P09. Checks: rows P10 to P13. For continuous draw.
    """
    return np.asarray(area, dtype=float) * np.asarray(k, dtype=float) * np.asarray(factor, dtype=float)


def cylinder_draw(table_draw: ArrayLike, mass: ArrayLike, table_mass: ArrayLike, factor: ArrayLike) -> Floats:
    """Give the fuel power (W) that upright cylinders can vaporize, from the table of one by geometric similarity.

    Wetted surface goes with mass^⅔; several cylinders have more surface than one of their mass, so this errs low.
    Source: row P14 for 100 lb; the scaling is geometry.
    """
    scale = (np.asarray(mass, dtype=float) / np.asarray(table_mass, dtype=float)) ** (2 / 3)
    return np.asarray(table_draw, dtype=float) * scale * np.asarray(factor, dtype=float)


def coldest_for(share: ArrayLike, at: ArrayLike, factors: ArrayLike) -> Floats:
    """Give the temperature (unit of ``at``) below which a table's factor is less than ``share``.

    ``factors`` rise with ``at``, from 0. At least the first entry; beyond the last one the table goes on with its mean
    slope, which is less than its last one: on the cold side, and never better for a lower entry.
    """
    wanted, places, rising = (np.asarray(one, dtype=float) for one in (share, at, factors))
    slope = (places[-1] - places[0]) / rising[-1]
    beyond = places[-1] + slope * (wanted - rising[-1])
    return np.where(wanted > rising[-1], beyond, np.interp(wanted, rising, places))


def factor_at(celsius: ArrayLike, at: ArrayLike, factors: ArrayLike) -> Floats:
    """Give a table's factor at a temperature; beyond its last entry it goes on as in ``coldest_for``."""
    warm, places, rising = (np.asarray(one, dtype=float) for one in (celsius, at, factors))
    beyond = rising[-1] + (warm - places[-1]) * rising[-1] / (places[-1] - places[0])
    return np.where(warm > places[-1], beyond, np.interp(warm, places, rising))


def filling_for(draw: ArrayLike, fillings: ArrayLike, draws: ArrayLike) -> Floats:
    """Give the filling (per cent) below which a table gives less than ``draw``, both rising.

    0 where its least filling still gives it: the table does not tell less from empty. Infinite where no filling does,
    and where ``draw`` is not a number it stays so.
    """
    wanted, places, rising = (np.asarray(one, dtype=float) for one in (draw, fillings, draws))
    found = np.where(wanted <= rising[0], 0.0, np.interp(wanted, rising, places))
    return np.where(wanted > rising[-1], np.inf, np.where(np.isnan(wanted), np.nan, found))
