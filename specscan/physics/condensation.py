"""When a van's windows go wet, how moist people make its air, and what drying it by fresh air costs in heat."""

from __future__ import annotations

import numpy as np

from specscan.physics.assumptions import DAY, Assumptions
from specscan.physics.conduction import inner_surface
from specscan.physics.humidity import carried_out, drying_air, humidity_of, vapour_density, wetting_humidity
from specscan.physics.ranges import Floats, Range, monotone


def glass_humidity(u: Range, values: Assumptions, inside: float, outside: Floats) -> Range:
    """Give the relative humidity inside (0 to 1) at which glass of a U value (W/(m²·K)) goes wet on the inside.

    Rows D04 to D07 and ISO 13788; the coldest edge of a pane goes wet before.
    """
    film = values["inside_film_wall"]

    def wets(u: Floats, film: Floats) -> Floats:
        return wetting_humidity(inside, inner_surface(inside, outside, u, film))

    return monotone(wets, {}, {"u": u, "film": film})


def moisture(values: Assumptions, people: int) -> Range:
    """Give the water that people breathe, sweat and cook into the air (kg/s, on average). Rows D08 to D13."""
    return values["moisture_from_person"].times(people) + values["moisture_from_cooking"]


def air_humidity(values: Assumptions, people: int, air: Range, inside: float, outside: Floats) -> Range:
    """Give the relative humidity (0 to 1, at most 1) that sets in at the assumed air change.

    Args:
        air: volume of air in the van, m³.
        inside, outside: °C. No unvented burner: each kg of propane would add 1.63 kg of water (row F34).
    """

    def settles(water: Floats, damp: Floats, changes: Floats, volume: Floats) -> Floats:
        density = vapour_density(outside, damp) + water / (changes * volume)
        return np.minimum(1.0, humidity_of(inside, density))

    return monotone(
        settles, {"water": moisture(values, people), "damp": values["outside_relative_humidity"]},
        {"changes": values["air_changes_parked"], "volume": air},
    )  # fmt: skip


def air_to_stay_dry(
    wet_at: Range, values: Assumptions, people: int, inside: float, outside: Floats, horizon: float = 1.0
) -> Range:
    """Give the fresh air (m³/s) that keeps the humidity below ``wet_at`` (0 to 1); at most ``horizon``.

    What cannot be reached, for the air outside is as moist, is given as the horizon of 1 m³/s.
    """

    def needed(water: Floats, damp: Floats, wet: Floats) -> Floats:
        return drying_air(water, carried_out(inside, wet, outside, damp))

    return monotone(
        needed, {"water": moisture(values, people), "damp": values["outside_relative_humidity"]}, {"wet": wet_at},
        most=horizon,
    )  # fmt: skip


def heat_of_air(values: Assumptions, flow: Range, inside: float, outside: Floats) -> Range:
    """Give the heat (W) that warming a flow of fresh air (m³/s) takes."""
    return monotone(
        lambda heat, flow: heat * flow * (inside - np.asarray(outside, dtype=float)),
        {"heat": values["air_heat_capacity"], "flow": flow}, {},
    )  # fmt: skip


def per_day(rate: Range) -> Range:
    """Give a rate (kg/s) in kg a day."""
    return rate.times(DAY)
