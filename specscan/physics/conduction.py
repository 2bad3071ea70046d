"""Heat through layers: resistances in series, paths side by side, surface temperatures. Plain numbers or arrays, SI."""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike

from specscan.physics.ranges import Floats


def resistance_of(thickness: ArrayLike, conductivity: ArrayLike) -> Floats:
    """Give the resistance (m²·K/W) of a layer from thickness (m) and conductivity (W/(m·K)), which is above 0.

    Source: ISO 6946, homogeneous layers.
    """
    return np.asarray(thickness, dtype=float) / np.asarray(conductivity, dtype=float)


def transmittance(*resistances: ArrayLike) -> Floats:
    """Give the U value (W/(m²·K)) of resistances in series (m²·K/W), films included; their sum is above 0.

    Source: ISO 6946. Check: row H07, 0.6551 W/(m²·K).
    """
    return 1.0 / np.asarray(sum(np.asarray(one, dtype=float) for one in resistances))


def bridged(clear: ArrayLike, bridge: ArrayLike, share: ArrayLike) -> Floats:
    """Give the mean U of a face of which a share (0 to 1) is a bridge: paths side by side, weighted by area.

    An estimate: ISO 6946 excludes insulation that metal bridges, for heat also flows sideways into the rib.
    Check: row H08, 1.1777 W/(m²·K).
    """
    part = np.asarray(share, dtype=float)
    return (1 - part) * np.asarray(clear, dtype=float) + part * np.asarray(bridge, dtype=float)


def flow_through(u: ArrayLike, area: ArrayLike, difference: ArrayLike) -> Floats:
    """Give the heat (W) through an area (m²) at a U value (W/(m²·K)) and a difference of temperature (K)."""
    return np.asarray(u, dtype=float) * np.asarray(area, dtype=float) * np.asarray(difference, dtype=float)


def covered(u: ArrayLike, cover: ArrayLike) -> Floats:
    """Give the U of a window with a cover of a resistance (m²·K/W, its air gap included) in series.

    Source: ISO 6946 series law; ISO 10077-1 for shutters. Checks: rows W12 and W13.
    """
    return 1.0 / (1.0 / np.asarray(u, dtype=float) + np.asarray(cover, dtype=float))


def inner_surface(inside: ArrayLike, outside: ArrayLike, u: ArrayLike, inner_film: ArrayLike) -> Floats:
    """Give the temperature (°C) of an inner surface: Ti - U · Rsi · (Ti - Te), ``inner_film`` Rsi in m²·K/W.

    Source: ISO 13788. Checks: rows D04 to D07.
    """
    warm, cold = np.asarray(inside, dtype=float), np.asarray(outside, dtype=float)
    return warm - np.asarray(u, dtype=float) * np.asarray(inner_film, dtype=float) * (warm - cold)


def ventilation_flow(heat_capacity: ArrayLike, changes: ArrayLike, volume: ArrayLike) -> Floats:
    """Give the heat that changing the air takes per kelvin (W/K).

    Args:
        heat_capacity: of air by volume, J/(m³·K); 0.33 Wh/(m³·K) is 1188.
        changes: air changes per second.
        volume: m³.

    Source: CIBSE Guide A, Q = 0.33 n V ΔT (row A13). Checks: rows A14 and A16.
    """
    return np.asarray(heat_capacity, dtype=float) * np.asarray(changes, dtype=float) * np.asarray(volume, dtype=float)
