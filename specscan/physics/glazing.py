"""U values of panes and of double glazing with air between. Plain numbers or arrays, SI."""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike

from specscan.physics.ranges import Floats

INSIDE_FILM = 7.7
OUTSIDE_FILM = 25.0
STEFAN_BOLTZMANN = 5.670374419e-8
GRAVITY = 9.81
GAP_MEAN = 283.15
GAP_DIFFERENCE = 15.0
AIR_CONDUCTIVITY = 0.02496
AIR_DENSITY = 1.232
AIR_VISCOSITY = 1.761e-5
AIR_HEAT = 1008.0
# Reference conditions of EN 673: films, 10 °C mean and 15 K across the gap, air at 10 °C. From memory, not verified
# (head of section 5 of the reference values).


def pane_u(thickness: ArrayLike, conductivity: ArrayLike) -> Floats:
    """Give the U (W/(m²·K)) of a single pane of a thickness (m) and conductivity (W/(m·K)), by EN 673's films.

    Check: row W07, 4 mm of glass at 1.0 W/(m·K): 5.75.
    """
    layer = np.asarray(thickness, dtype=float) / np.asarray(conductivity, dtype=float)
    return 1 / (1 / INSIDE_FILM + layer + 1 / OUTSIDE_FILM)


def gap_conductance(gap: ArrayLike, emissivity: ArrayLike) -> Floats:
    """Give the conductance (W/(m²·K)) of an upright air gap (m) between faces of one emissivity (0 to 1).

    Source: EN 673, radiation and Nu = max(1, 0.035 (Gr·Pr)^0.38); for gaps up to about 20 mm.
    """
    width, shine = np.asarray(gap, dtype=float), np.asarray(emissivity, dtype=float)
    radiation = 4 * STEFAN_BOLTZMANN * GAP_MEAN**3 / (2 / shine - 1)
    grashof = GRAVITY * width**3 * GAP_DIFFERENCE * AIR_DENSITY**2 / (GAP_MEAN * AIR_VISCOSITY**2)
    prandtl = AIR_VISCOSITY * AIR_HEAT / AIR_CONDUCTIVITY
    nusselt = np.maximum(1.0, 0.035 * (grashof * prandtl) ** 0.38)
    return radiation + nusselt * AIR_CONDUCTIVITY / width


def double_u(gap: ArrayLike, pane: ArrayLike, conductivity: ArrayLike, emissivity: ArrayLike) -> Floats:
    """Give the U (W/(m²·K)) of two equal panes (thickness in m) with an air gap (m) between.

    Source: EN 673. Checks: rows W08 (4 mm glass, emissivity 0.837; 3 mm acrylic, 0.90). Frames are not counted.
    """
    panes = 2 * np.asarray(pane, dtype=float) / np.asarray(conductivity, dtype=float)
    return 1 / (1 / INSIDE_FILM + panes + 1 / gap_conductance(gap, emissivity) + 1 / OUTSIDE_FILM)
