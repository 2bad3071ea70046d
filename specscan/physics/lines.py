"""How long standing water in lines and dump valves takes to 0 °C, and to a plug of ice.

The time is for water that does not move; it ignores latent heat up to 0 °C (row G19). Lines inside the living space
are as warm as the floor of a cupboard.
"""

from __future__ import annotations

import numpy as np

from specscan.physics.assumptions import Assumptions
from specscan.physics.columns import Columns, by_flag, by_word
from specscan.physics.freezing import film_resistance, pipe_time, plank_time, sleeve_resistance
from specscan.physics.ranges import Floats, Range, hull, monotone, pick

NONE = Range.of(0.0)


def line_times(
    columns: Columns, values: Assumptions, inside: float, outside: Floats, *, to_plug: bool = False
) -> Range:
    """Give the time (s) until standing water in the coldest water line is at 0 °C; at most the freezing horizon.

    ``outside`` in °C: one figure or an array (vans × temperatures). With ``to_plug`` until it is frozen through, by
    Plank's cylinder (row G07) after the time to 0 °C. Checks: rows G11, G15 to G18.
    """
    indoors, fed, cold = (values[f"{one}_share"] for one in ("interior_shelter", "heated_enclosure", "cold_enclosure"))
    heated = columns.is_word("water_lines_heated", "True")
    unheated = columns.is_word("water_lines_heated", "False")
    enclosed = pick(heated, fed, pick(unheated, cold, hull(cold, fed)))
    places = {"exterior": NONE, "mixed": NONE, "enclosed": enclosed, "interior": indoors}
    shelter = by_word(columns, "water_lines_location", places, NONE)
    sleeve = _sleeve(values)
    lagging = by_flag(columns, "water_lines_insulated", sleeve, NONE)
    power = by_flag(columns, "water_lines_heated", values["pipe_trace_power"], NONE)
    return _times(values, values["pipe_bore"], shelter, lagging, power, inside, outside, to_plug)


def valve_times(columns: Columns, values: Assumptions, inside: float, outside: Floats) -> Range:
    """Give the time (s) until the waste water that stands behind a dump valve is at 0 °C."""
    shelters = {
        "exposed": NONE, "insulated": NONE, "heated": NONE, "heated_compartment": values["heated_enclosure_share"],
    }  # fmt: skip
    shelter = by_word(columns, "dump_valve_protection", shelters, NONE)
    sleeve = _sleeve(values)
    laggings = {"exposed": NONE, "insulated": sleeve, "heated": NONE, "heated_compartment": NONE}
    lagging = by_word(columns, "dump_valve_protection", laggings, NONE)
    powers = {
        "exposed": NONE, "insulated": NONE, "heated": values["valve_heat_power"], "heated_compartment": NONE,
    }  # fmt: skip
    power = by_word(columns, "dump_valve_protection", powers, NONE)
    return _times(values, values["valve_bore"], shelter, lagging, power, inside, outside)


def _sleeve(values: Assumptions) -> Range:
    """Give the resistance that a foam sleeve adds to a line (m·K/W)."""

    def added(bore: Floats, wall: Floats, sleeve: Floats, conductivity: Floats) -> Floats:
        outer = bore + 2 * wall
        return sleeve_resistance(outer, outer + 2 * sleeve, conductivity)

    return monotone(
        added, {"sleeve": values["pipe_sleeve"]},
        {"bore": values["pipe_bore"], "wall": values["pipe_wall"], "conductivity": values["pipe_sleeve_conductivity"]},
    )  # fmt: skip


def _times(values: Assumptions, bore: Range, shelter: Range, lagging: Range, power: Range, inside: float,
           outside: Floats, to_plug: bool = False) -> Range:  # fmt: skip
    film, wall = values["pipe_still_film"], values["pipe_wall"]
    conductivity = float(values["ice_conductivity"].typical)  # known to 1 %, and a hundredth of the way heat goes
    bare = monotone(
        lambda bore, wall, film: film_resistance(bore + 2 * wall, film), {}, {"bore": bore, "wall": wall, "film": film}
    )

    def time(bore: Floats, resistance: Floats, shelter: Floats, power: Floats, start: Floats, density: Floats,
             heat: Floats, latent: Floats) -> Floats:  # fmt: skip
        cold = np.asarray(outside, dtype=float)
        around = cold + shelter * (inside - cold) + power * resistance
        first = pipe_time(bore, resistance, start, around, density, heat)
        if not to_plug:
            return first
        # What lies around the pipe counts as a film on the ice, so that lagging makes this slower too.
        frost, film = np.where(around < 0, -around, np.nan), 1 / (np.pi * bore * resistance)
        plug = plank_time("cylinder", density, latent, frost, bore, film, conductivity)
        return first + np.where(around < 0, plug, np.inf)

    up = {
        "bore": bore, "resistance": bare + lagging, "shelter": shelter, "power": power,
        "start": values.celsius("pipe_start_temperature"), "density": values["water_density"],
        "heat": values["water_heat_capacity"], "latent": values["ice_latent_heat"],
    }  # fmt: skip
    if np.ndim(outside):
        up = {key: one.lifted() if one.typical.ndim else one for key, one in up.items()}
    return monotone(time, up, {}, most=float(values["freezing_horizon"].typical))
