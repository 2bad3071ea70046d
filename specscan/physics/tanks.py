"""How long the water in a van's tanks takes to 0 °C and to ice, and how cold it may be for a pad to hold it.

A tank is mixed water (lumped) behind its wall, lagging and the air around it. Around it is the air outside, or air
that is warmer by a share of the difference to the living space, as far as the tank stands inside. Heat given to the
tank counts as a higher temperature around it. All holds while the heating and the battery last.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from specscan.physics.assumptions import DAY, LITRE, Assumptions
from specscan.physics.columns import Columns, by_flag, by_word
from specscan.physics.convection import outside_film
from specscan.physics.freezing import cooling_time, held_by_heat, ice_time
from specscan.physics.ranges import Floats, Range, hull, monotone, pick

TANKS = ("fresh", "gray", "black")
FED = ("warm_air", "hydronic", "heated_compartment")
"""Ways in which the van's own heating warms the place of a tank."""
NONE = Range.of(0.0)


@dataclass(frozen=True, slots=True)
class Tank:
    """What decides how fast a tank freezes, one value a van.

    ``volume`` (m³), ``resistance`` from water to the air around (m²·K/W), ``shelter`` (0: as cold as outside, 1: as
    warm as inside), ``power`` given to it (W).
    """

    volume: Range
    resistance: Range
    shelter: Range
    power: Range


def tank_of(columns: Columns, values: Assumptions, name: str, wind: float) -> Tank:
    """Give the tank called ``fresh``, ``gray`` or ``black`` in wind (m/s) beside the van."""
    heat, place = f"{name}_tank_heat", f"{name}_tank_location"
    pad, loop = values["tank_pad_power"], values["tank_loop_power"]
    heats = {"none": NONE, "electric_pad": pad, "hydronic": loop, "warm_air": loop, "heated_compartment": NONE}
    power = by_word(columns, heat, heats, NONE)
    power = pick(columns.is_word(heat, "unspecified"), hull(pad, loop, NONE), power)
    return Tank(
        columns.number(f"{name}_tank_l").times(LITRE), _resistance(columns, values, name, wind),
        _shelter(columns, values, heat, place), power,
    )  # fmt: skip


def _shelter(columns: Columns, values: Assumptions, heat: str, place: str) -> Range:
    inside, fed, cold = (values[f"{one}_share"] for one in ("interior_shelter", "heated_enclosure", "cold_enclosure"))
    fed_by_heating = columns.is_word(heat, *FED)
    maybe_fed = ~columns.known(heat) | columns.is_word(heat, "unspecified")
    enclosed = pick(fed_by_heating, fed, pick(maybe_fed, hull(cold, fed), cold))
    in_compartment = columns.is_word(heat, "heated_compartment")
    under = pick(in_compartment, fed, pick(maybe_fed, hull(NONE, fed), NONE))
    places = {"underbody": under, "enclosed": enclosed, "interior": inside}
    return by_word(columns, place, places, pick(in_compartment, fed, enclosed))


def _resistance(columns: Columns, values: Assumptions, name: str, wind: float) -> Range:
    lagging = by_flag(columns, f"{name}_tank_insulated", values["tank_lagging_resistance"], NONE)
    films = {"share": values["underbody_wind_share"], "radiative": values["exterior_radiative_film"]}
    outside = monotone(lambda share, radiative: 1 / outside_film(wind * share, radiative), {}, films)
    still = values["inside_film_wall"]
    places = {"underbody": outside, "enclosed": still + values["compartment_resistance"], "interior": still}
    around = by_word(columns, f"{name}_tank_location", places, outside)
    wall = monotone(lambda film, wall: wall + 1 / film, {"wall": values["tank_wall_resistance"]},
                    {"film": values["tank_water_film"]})  # fmt: skip
    return wall + lagging + around


def area_of(volume: Floats, shape: Floats) -> Floats:
    """Give the surface (m²) of a tank: shape × V^⅔, 6 for a cube. Check: row G14, 100 l have 1.4 m² with 6.5."""
    return shape * volume ** (2 / 3)


def around_tank(
    outside: ArrayLike, inside: float, shelter: Floats, power: Floats, resistance: Floats, area: Floats
) -> Floats:
    """Give the temperature (°C) that the water tends to: between outside and inside, raised by power over U·A."""
    cold = np.asarray(outside, dtype=float)
    return cold + shelter * (inside - cold) + power * resistance / area


def freezing_times(tank: Tank, values: Assumptions, inside: float, outside: Floats, *, to_ice: bool = False) -> Range:
    """Give the time (s) until the water is at 0 °C, or with ``to_ice`` until so much is ice that outlets block.

    ``outside`` in °C: one figure, or an array of them for a sweep (vans × temperatures). What stays above 0 °C at that
    temperature is given as the horizon of ``freezing_horizon``. Check: row G14.
    """
    swept = bool(np.ndim(outside))
    mass = tank.volume * values["tank_fill"] * values["water_density"]

    def time(mass: Floats, room: Floats, shape: Floats, resistance: Floats, shelter: Floats, power: Floats,
             start: Floats, heat: Floats, fusion: Floats, fraction: Floats) -> Floats:  # fmt: skip
        area = area_of(room, shape)
        around = around_tank(outside, inside, shelter, power, resistance, area)
        first = cooling_time(start, 0.0, around, mass * heat * resistance / area)
        return first + (ice_time(mass * fusion * fraction, area / resistance, around) if to_ice else 0.0)

    up = {
        "mass": mass, "resistance": tank.resistance, "shelter": tank.shelter, "power": tank.power,
        "start": values.celsius("water_start_temperature"), "heat": values["water_heat_capacity"],
        "fusion": values["ice_latent_heat"], "fraction": values["blocking_ice_fraction"],
    }  # fmt: skip
    down = {"room": tank.volume, "shape": values["tank_shape"]}
    if swept:
        up, down = ({key: _lift(one) for key, one in part.items()} for part in (up, down))
    result = monotone(time, up, down, most=float(values["freezing_horizon"].typical))
    there = tank.volume.low > 0
    return pick(there[:, np.newaxis] if swept else there, result, Range.of(np.full_like(result.typical, np.nan)))


def coldest_for_pad(tank: Tank, values: Assumptions) -> Range:
    """Give the lowest temperature around the tank (°C) at which an assumed pad holds the water: Tw - P·R/A."""

    def coldest(water: Floats, power: Floats, resistance: Floats, room: Floats, shape: Floats) -> Floats:
        return held_by_heat(water, power, area_of(room, shape) / resistance)

    return monotone(
        coldest, {"water": values.celsius("pad_hold_temperature"), "room": tank.volume, "shape": values["tank_shape"]},
        {"power": values["tank_pad_power"], "resistance": tank.resistance},
    )  # fmt: skip


def days_or_never(time: Range, values: Assumptions) -> Range:
    """Give a time to freezing (s) in days; what never freezes (the freezing horizon) gets the horizon of stays."""
    never, most = float(values["freezing_horizon"].typical), float(values["stay_horizon"].typical) / DAY
    parts = (np.where(part >= never, most, part / DAY) for part in (time.low, time.typical, time.high))
    return Range.of(*parts)


def _lift(one: Range) -> Range:
    return one.lifted() if one.typical.ndim else one
