"""Heat given against heat lost: duty, margin, the cold that a heater can hold, and what follows when it stops."""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike

from specscan.physics.assumptions import DAY
from specscan.physics.ranges import Floats, Range, monotone


def net_loss(conductance: Floats, inside: ArrayLike, outside: ArrayLike, gains: Floats) -> Floats:
    """Give the heat (W) that the heater must give: conductance (W/K) × difference (K) less gains (W), at least 0."""
    difference = np.asarray(inside, dtype=float) - np.asarray(outside, dtype=float)
    return np.maximum(conductance * difference - gains, 0.0)


def duty_of(loss: Floats, output: Floats) -> Floats:
    """Give the share of the time at full output: loss over output (W), at most 1. Check: row R17, one third."""
    return np.minimum(np.where(output > 0, loss / np.where(output > 0, output, 1.0), 1.0), 1.0)


def lowest_outside(conductance: Floats, inside: ArrayLike, output: Floats, gains: Floats) -> Floats:
    """Give the lowest outside temperature (°C) at which full output (W) holds the inside: Ti - (Q + gains)/H."""
    return np.asarray(inside, dtype=float) - (output + gains) / conductance


def held_inside(conductance: Floats, inside: ArrayLike, outside: ArrayLike, output: Floats, gains: Floats) -> Floats:
    """Give the temperature (°C) to which a van falls when full output (W) is not enough; at most the wanted one."""
    reached = np.asarray(outside, dtype=float) + (output + gains) / conductance
    return np.minimum(reached, np.asarray(inside, dtype=float))


def efficiency_of(output: Floats, flow: Floats, heat: Floats) -> Floats:
    """Give heat given off (W) over what is burned: flow (m³/s) × heat content (J/m³), higher or lower as given.

    Check: 17,000 Btu/h from 0.16 US gal/h of diesel is 0.77 on the higher and 0.83 on the lower heating value.
    """
    return output / (flow * heat)


def burned_per_day(loss: Floats, efficiency: Floats, heat: Floats, flow: Floats, share: float = 1.0) -> Floats:
    """Give the fuel for a day (m³): loss over efficiency and heat content, at most what full output burns.

    Args:
        loss: W; ``efficiency``: over the same heating value as ``heat`` (J/m³).
        flow: at full output, m³/s; infinite where it is not known.
        share: of the day in which the heater serves (not while the engine heats).
    """
    return np.minimum(loss / (efficiency * heat), flow) * DAY * share


def lasting(supply: Floats, per_day: Floats) -> Floats:
    """Give for how many days a supply lasts; infinite where nothing is used (same unit for both)."""
    return np.where(per_day > 0, supply / np.where(per_day > 0, per_day, 1.0), np.inf)


def cooling_curve(conductance: Range, capacity: Range, inside: float, outside: ArrayLike, seconds: ArrayLike) -> Range:
    """Give the temperature inside (°C) so many seconds after the heating stopped: lumped, time constant C/H.

    Args:
        conductance: W/K, one value a van; ``capacity``: of what follows the air, J/K.
        outside: °C; ``seconds``: array of times; they must broadcast with the others.

    Source: lumped capacitance, Incropera ch. 5 (rows G12, G13). Cupboards and tanks lag behind the air.
    """
    cold, time = np.asarray(outside, dtype=float), np.asarray(seconds, dtype=float)

    def curve(conductance: Floats, capacity: Floats) -> Floats:
        return cold + (inside - cold) * np.exp(-time * conductance / capacity)

    return monotone(curve, {"capacity": capacity}, {"conductance": conductance})


def warming_time(
    conductance: Floats, capacity: Floats, output: Floats, start: ArrayLike, wanted: ArrayLike, outside: ArrayLike
) -> Floats:
    """Give the time (s) in which full output (W) warms a van from ``start`` to ``wanted`` (°C); infinite if never.

    C/H ln((Tend - T0)/(Tend - T1)) with Tend = Te + Q/H; lumped, so a cold wall makes it longer.
    """
    first, last, cold = (np.asarray(one, dtype=float) for one in (start, wanted, outside))
    end = cold + output / conductance
    enough = end > last
    ratio = np.where(enough, (end - first) / np.where(enough, end - last, 1.0), 1.0)
    return np.where(enough, capacity / conductance * np.log(np.maximum(ratio, 1.0)), np.inf)
