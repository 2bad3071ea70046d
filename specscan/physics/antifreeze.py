"""Propylene glycol for plumbing that stands unused: how much, for which temperature. Shares are by volume, 0 to 1.

Three temperatures are kept apart: freezing (first crystals), slush (it no longer flows, but does not push), burst
(ice that breaks pipes). Only propylene glycol: ethylene glycol is poisonous and never belongs in drinking-water
plumbing (rows V10, V11). Follow the fluid's label and local codes.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike

from specscan.physics.ranges import Floats


def diluted(share: ArrayLike, fluid: ArrayLike, water: ArrayLike) -> Floats:
    """Give the share of glycol after a fluid (volume, any unit) with a share of it met water (same unit).

    Volumes are taken to add up. Source: volume balance. Checks: rows C08 and C10.
    """
    volume = np.asarray(fluid, dtype=float)
    return np.asarray(share, dtype=float) * volume / (volume + np.asarray(water, dtype=float))


def fluid_needed(water: ArrayLike, wanted: ArrayLike, share: ArrayLike) -> Floats:
    """Give the fluid (unit of ``water``) with a share of glycol that brings trapped water to a wanted share.

    V = Vw φ/(φf - φ); infinite where the fluid is not stronger than what is wanted. Pure glycol has share 1.
    Check: row C09, 0.667 l for 1 l of water to 40 %.
    """
    target, fluid = np.asarray(wanted, dtype=float), np.asarray(share, dtype=float)
    strong = fluid > target
    return np.where(strong, np.asarray(water, dtype=float) * target / np.where(strong, fluid - target, 1.0), np.inf)


def freezing_point(share: ArrayLike, at: ArrayLike, depression: ArrayLike) -> Floats:
    """Give the freezing point (°C) of a share of glycol from a table of shares and depressions (K).

    0 °C without glycol; NaN beyond the table, where nothing is known.
    """
    shares = np.concatenate([[0.0], np.asarray(at, dtype=float)])
    below = np.concatenate([[0.0], np.asarray(depression, dtype=float)])
    return -np.interp(np.asarray(share, dtype=float), shares, below, right=np.nan)


def share_needed(celsius: ArrayLike, at: ArrayLike, shares: ArrayLike) -> Floats:
    """Give the share of glycol that a temperature (°C) asks for, from a table by rising temperature (°C).

    0 at and above 0 °C; NaN below the table, where nothing is known.
    """
    temperatures = np.concatenate([np.asarray(at, dtype=float), [0.0]])
    wanted = np.concatenate([np.asarray(shares, dtype=float), [0.0]])
    return np.interp(np.asarray(celsius, dtype=float), temperatures, wanted, left=np.nan, right=0.0)
