"""Moist air: saturation, dew point, the humidity at which a pane goes wet, and drying by air. Arrays, °C, Pa, kg/m³."""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike

from specscan.physics.assumptions import ZERO_CELSIUS
from specscan.physics.ranges import Floats

VAPOUR_GAS_CONSTANT = 461.5
ICE = (-5.6745359e3, 6.3925247, -9.6778430e-3, 6.2215701e-7, 2.0747825e-9, -9.4840240e-13, 4.1635019)
WATER = (-5.8002206e3, 1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8, 0.0, 6.5459673)
MAGNUS = (17.62, 243.12)


def saturation_pressure(celsius: ArrayLike) -> Floats:
    """Give the saturation pressure of water vapour (Pa) over ice below 0 °C and water above, -100 to 200 °C.

    Source: Hyland and Wexler, ASHRAE Handbook of Fundamentals 2017 ch. 1 Eq. 5 and 6. Checks: row D03.
    """
    kelvin = np.asarray(celsius, dtype=float) + ZERO_CELSIUS
    return np.where(kelvin < ZERO_CELSIUS, _hyland_wexler(kelvin, ICE), _hyland_wexler(kelvin, WATER))


def _hyland_wexler(kelvin: Floats, c: tuple[float, ...]) -> Floats:
    powers = c[0] / kelvin + c[1] + kelvin * (c[2] + kelvin * (c[3] + kelvin * (c[4] + kelvin * c[5])))
    return np.exp(powers + c[6] * np.log(kelvin))


def dew_point(celsius: ArrayLike, humidity: ArrayLike) -> Floats:
    """Give the dew point (°C) of air at a temperature (°C, -45 to 60) and relative humidity (above 0, to 1).

    Source: Magnus formula with WMO constants 17.62 and 243.12 (row D02). Checks: rows D01.
    """
    warm = np.asarray(celsius, dtype=float)
    a, b = MAGNUS
    gamma = np.log(np.asarray(humidity, dtype=float)) + a * warm / (b + warm)
    return b * gamma / (a - gamma)


def vapour_density(celsius: ArrayLike, humidity: ArrayLike) -> Floats:
    """Give the water in air (kg/m³) at a temperature (°C) and relative humidity (0 to 1): ideal gas. Check: row D14."""
    kelvin = np.asarray(celsius, dtype=float) + ZERO_CELSIUS
    return np.asarray(humidity, dtype=float) * saturation_pressure(celsius) / (VAPOUR_GAS_CONSTANT * kelvin)


def humidity_of(celsius: ArrayLike, density: ArrayLike) -> Floats:
    """Give the relative humidity of air that holds so much water (kg/m³); above 1 it condenses."""
    return np.asarray(density, dtype=float) / vapour_density(celsius, 1.0)


def wetting_humidity(inside: ArrayLike, surface: ArrayLike) -> Floats:
    """Give the relative humidity inside (at ``inside``, °C) at which a surface (°C) goes wet, at most 1.

    Source: ISO 13788. Check: row D06, between 40 and 50 % for double acrylic at -10 °C.
    """
    return np.minimum(1.0, saturation_pressure(surface) / saturation_pressure(inside))


def carried_out(inside: ArrayLike, humidity: ArrayLike, outside: ArrayLike, outside_humidity: ArrayLike) -> Floats:
    """Give the water (kg) that a cubic metre of exchanged air takes along. Source: IEA handbook Eq. 10.2, row D14."""
    return vapour_density(inside, humidity) - vapour_density(outside, outside_humidity)


def drying_air(moisture: ArrayLike, per_volume: ArrayLike) -> Floats:
    """Give the air (m³/s) that removes a moisture (kg/s) when each m³ takes so much along (kg/m³).

    Infinite where the air outside takes nothing along.
    """
    taken = np.asarray(per_volume, dtype=float)
    return np.where(taken > 0, np.asarray(moisture, dtype=float) / np.where(taken > 0, taken, 1.0), np.inf)
