"""Air that blows along plates and across pipes, and the film of air outside a van. Plain numbers or arrays, SI.

Coefficients of correlations belong to their formula and stand here with their source; correlations are good to ±25 %.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from specscan.physics.assumptions import ZERO_CELSIUS
from specscan.physics.ranges import Floats

ATMOSPHERE = 101325.0
AIR_GAS_CONSTANT = 287.05
AIR_SPECIFIC_HEAT = 1006.0
TRANSITION = 5e5
"""Reynolds number at which the layer along a plate turns turbulent (Çengel, *Heat and Mass Transfer*, ch. 7)."""


@dataclass(frozen=True, slots=True)
class Air:
    """Dry air at sea level: density (kg/m³), kinematic viscosity (m²/s), conductivity (W/(m·K)), Prandtl number."""

    density: Floats
    viscosity: Floats
    conductivity: Floats
    prandtl: Floats


def air_at(celsius: ArrayLike) -> Air:
    """Give properties of air at a temperature (°C, valid from -60 to 60) and 101.325 kPa.

    Source: Sutherland's formula with the coefficients of the U.S. Standard Atmosphere 1976 (from memory) for the
    viscosity; a power law fitted to CoolProp 8.0.0 for the conductivity; ideal gas. Checks: rows A11 and A12.
    """
    kelvin = np.asarray(celsius, dtype=float) + ZERO_CELSIUS
    density = ATMOSPHERE / (AIR_GAS_CONSTANT * kelvin)
    dynamic = 1.458e-6 * kelvin**1.5 / (kelvin + 110.4)
    conductivity = 0.02433 * (kelvin / ZERO_CELSIUS) ** 0.862
    return Air(density, dynamic / density, conductivity, AIR_SPECIFIC_HEAT * dynamic / conductivity)


def plate_laminar(reynolds: ArrayLike, prandtl: ArrayLike) -> Floats:
    """Give the mean Nusselt number of a laminar layer along a plate: 0.664 Re^½ Pr^⅓, Re below 5·10⁵, Pr above 0.6.

    Source: Çengel ch. 7. Checks: rows G24 and G25.
    """
    return 0.664 * np.asarray(reynolds, dtype=float) ** 0.5 * np.asarray(prandtl, dtype=float) ** (1 / 3)


def plate_mixed(reynolds: ArrayLike, prandtl: ArrayLike) -> Floats:
    """Give the mean Nusselt number where the layer turns turbulent on the way: (0.037 Re^0.8 - 871) Pr^⅓.

    Valid for Re from 5·10⁵ to 10⁷. Source: Çengel Ex. 7-2(a). Checks: rows G23 and G27.
    """
    return (0.037 * np.asarray(reynolds, dtype=float) ** 0.8 - 871) * np.asarray(prandtl, dtype=float) ** (1 / 3)


def plate_turbulent(reynolds: ArrayLike, prandtl: ArrayLike) -> Floats:
    """Give the mean Nusselt number of a plate that is rough or tripped from its edge on; Re from 10⁵ to 10⁷.

    Source: VDI Heat Atlas, Schlichting's form. Checks: rows G26 and G27.
    """
    re, pr = np.asarray(reynolds, dtype=float), np.asarray(prandtl, dtype=float)
    return 0.037 * re**0.8 * pr / (1 + 2.443 * re**-0.1 * (pr ** (2 / 3) - 1))


def plate_film(speed: ArrayLike, length: ArrayLike, celsius: ArrayLike) -> Floats:
    """Give the film (W/(m²·K)) of wind (m/s) along a smooth plate of a length (m) in air of a temperature (°C)."""
    air = air_at(celsius)
    reynolds = np.asarray(speed, dtype=float) * np.asarray(length, dtype=float) / air.viscosity
    turns = reynolds >= TRANSITION
    mixed = plate_mixed(np.where(turns, reynolds, TRANSITION), air.prandtl)
    nusselt = np.where(turns, mixed, plate_laminar(reynolds, air.prandtl))
    return nusselt * air.conductivity / np.asarray(length, dtype=float)


def cylinder_nusselt(reynolds: ArrayLike, prandtl: ArrayLike) -> Floats:
    """Give the mean Nusselt number of a cylinder across a stream; Re · Pr above 0.2.

    Source: Churchill and Bernstein 1977. Checks: rows G20, G21, G22.
    """
    re, pr = np.asarray(reynolds, dtype=float), np.asarray(prandtl, dtype=float)
    first = 0.62 * re**0.5 * pr ** (1 / 3) / (1 + (0.4 / pr) ** (2 / 3)) ** 0.25
    return 0.3 + first * (1 + (re / 282000) ** 0.625) ** 0.8


def pipe_film(speed: ArrayLike, diameter: ArrayLike, celsius: ArrayLike) -> Floats:
    """Give the film (W/(m²·K)) of wind (m/s) across a pipe of a diameter (m) in air of a temperature (°C).

    Check: rows G27.
    """
    air = air_at(celsius)
    reynolds = np.asarray(speed, dtype=float) * np.asarray(diameter, dtype=float) / air.viscosity
    return cylinder_nusselt(reynolds, air.prandtl) * air.conductivity / np.asarray(diameter, dtype=float)


def outside_film(wind: ArrayLike, radiative: ArrayLike) -> Floats:
    """Give the outside film (W/(m²·K)) by wind (m/s): 4 + 4 v, and a radiative part.

    Source: ISO 6946 Annex A (2007), from memory, not verified (row W06). Differs from the smooth plate: it stands for
    rough faces in gusts; at 6.7 m/s it gives about 35 where the handbook has 34.0 and a smooth plate 17.9 (row G28).
    """
    return 4.0 + 4.0 * np.asarray(wind, dtype=float) + np.asarray(radiative, dtype=float)
