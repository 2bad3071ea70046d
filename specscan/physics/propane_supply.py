"""Whether a van's propane turns to vapour as fast as its heater burns it: down to which cold and which filling.

The rule for tanks is for continuous draw with the liquid cooled to -20 °F (-29 °C); sources disagree on what is left
there (0 by its own basis, 0.125 in a printed table): the range covers both. The locker is taken to be as cold as
outside. A mixture with butane gives out far earlier: butane boils at -0.5 °C (row P06).
"""

from __future__ import annotations

import numpy as np

from specscan.physics.assumptions import LITRE, Assumptions
from specscan.physics.columns import Columns
from specscan.physics.heater import burns, flow
from specscan.physics.lpg import (
    coldest_for,
    cylinder_draw,
    factor_at,
    filling_for,
    projected_area,
    table_value,
    tank_draw,
)
from specscan.physics.ranges import Floats, Range, hull, pick

PER_CENT = 100.0


def draw_at_zero_f(columns: Columns, values: Assumptions) -> Range:
    """Give the fuel power (W) that tank or cylinders can vaporize at 0 °F (-17.8 °C), by how full they may be.

    A fixed tank by the rule D × L × K (rows P07, P12), cylinders by the table of a large one (row P14).
    """
    tank, volume = columns.number("propane_tank_l"), _tank_volume(columns, values)
    level, aspect = values["propane_level"], values["propane_tank_aspect"]
    places, k = values.table("vaporization_k")
    lying = Range.of(*(
        tank_draw(projected_area(size, long), table_value(full * PER_CENT, places, part), 1.0)
        for size, long, full, part in zip(_parts(volume), _parts(aspect), _parts(level), _parts(k), strict=True)
    ))  # fmt: skip
    filled_at, draw = values.table("cylinder_draw")
    mass, of_table = columns.number("propane_mass_kg"), values["cylinder_of_the_table"]
    upright = Range.of(*(
        cylinder_draw(table_value(full * PER_CENT, filled_at, part), kilos, one, 1.0)
        for kilos, one, full, part in zip(
            _parts(mass), _parts(of_table)[::-1], _parts(level), _parts(draw), strict=True
        )
    ))  # fmt: skip  # the larger the cylinder of the table, the less a given one draws
    return pick(tank.known & (tank.high > 0), lying, upright)


def demand(columns: Columns, values: Assumptions) -> Range:
    """Give the fuel power (W, higher heating value) that a propane heater draws, from its average to full output."""
    full = flow(columns, "propane", values) * values["propane_higher_heating_value"]
    return full * values["heater_demand_share"]


def coldest_for_vapour(columns: Columns, values: Assumptions) -> Range:
    """Give the outside temperature (°C) below which the propane vaporizes more slowly than the heater burns it.

    Unknown for a heater that burns no propane, or where heater or propane are not known. Three evaluations: with the
    least demand on the greatest draw, typical values, and the other way round.
    """
    need, draw = demand(columns, values), draw_at_zero_f(columns, values)
    places, factor = values.table("vaporization_factor")
    celsius = (places - 32.0) / 1.8
    with np.errstate(divide="ignore", invalid="ignore"):
        found = Range.of(
            coldest_for(need.low / draw.high, celsius, factor.high),
            coldest_for(need.typical / draw.typical, celsius, factor.typical),
            coldest_for(need.high / draw.low, celsius, factor.low),
        )
    return pick(burns(columns).by_fuel["propane"], found, Range.unknown(columns.size))


def kept_back(columns: Columns, values: Assumptions, need: Range, outside: Floats) -> Range:
    """Give the share of a full tank, or of full cylinders, that cold keeps back: with less they vaporize too slowly.

    ``need`` (W, higher heating value) is what the heater draws at ``outside`` (°C, one figure or a sweep). 0 where the
    draw is there until the tables end at a tenth full, 1 where it is not even when full. Rows P07 to P14.
    """
    swept = bool(np.ndim(outside))
    volume, aspect = _tank_volume(columns, values), values["propane_tank_aspect"]
    mass, of_table = columns.number("propane_mass_kg"), values["cylinder_of_the_table"]
    levels, k = values.table("vaporization_k")
    filled_at, draws = values.table("cylinder_draw")
    places, factors = values.table("vaporization_factor")
    full = values["propane_fill_share"]
    there = volume.known & (volume.high > 0)

    def share(need: Floats, volume: Floats, aspect: Floats, mass: Floats, of_table: Floats, factor: Floats,
              k: Floats, draws: Floats, full: Floats) -> Floats:  # fmt: skip
        warm = factor_at(outside, (places - 32.0) / 1.8, factor)
        area, scale = projected_area(volume, aspect), (mass / of_table) ** (2 / 3)
        if swept:
            area, scale = area[:, np.newaxis], scale[:, np.newaxis]
        with np.errstate(divide="ignore", invalid="ignore"):
            lying = filling_for(need / (area * warm), levels, k) / (full * PER_CENT)
            upright = filling_for(need / (scale * warm), filled_at, draws) / PER_CENT
        return np.minimum(np.where(there[:, np.newaxis] if swept else there, lying, upright), 1.0)

    ends = [
        share(
            part(need), against(volume), against(aspect), against(mass), part(of_table), against(factors),
            against(k), against(draws), against(full),
        )
        for part, against in ((_low, _high), (_typical, _typical), (_high, _low))
    ]  # fmt: skip  # the least need on the greatest draw, and the other way round
    return Range.of(*ends)


def _tank_volume(columns: Columns, values: Assumptions) -> Range:
    """Give the water capacity (m³) of a fixed tank, whatever of it a document printed."""
    tank = columns.number("propane_tank_l").times(LITRE)
    filled = tank / values["propane_fill_share"]
    basis = columns.basis("propane_tank_l")
    return pick(basis == "usable", filled, pick(basis == "water_capacity", tank, hull(tank, filled)))


def _low(one: Range) -> Floats:
    return one.low


def _typical(one: Range) -> Floats:
    return one.typical


def _high(one: Range) -> Floats:
    return one.high


def _parts(one: Range) -> tuple[Floats, Floats, Floats]:
    return one.low, one.typical, one.high
