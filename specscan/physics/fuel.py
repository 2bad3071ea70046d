"""Fuel on board for the heater, and for how many days it lasts.

Propane: a fixed tank may be filled to about 80 % of its water capacity; a figure that is already the usable content,
and propane given by weight, have that limit in them, and it is never taken off twice (rows F25 to F33 and the trap
below them). Vehicle fuel: the heater's pick-up stops above a reserve.
"""

from __future__ import annotations

import numpy as np

from specscan.physics.assumptions import DAY, HOUR, LITRE, Assumptions
from specscan.physics.columns import Columns
from specscan.physics.heater import FUELS, Burns, burns, flow, over_fuels
from specscan.physics.ranges import Mask, Range, first_known, hull, pick
from specscan.physics.words import per, span

INPUTS = ("propane_tank_l", "propane_mass_kg", "fuel_tank_l", "engine_fuel")
"""Fields on which the fuel on board depends."""


def propane_in_tank(columns: Columns, values: Assumptions) -> Range:
    """Give the propane (m³ of liquid) in a full fixed tank.

    ``water_capacity`` is filled to the limit; ``usable`` is taken as it is; without a stated basis the range covers
    both and the typical value is the filled share.
    """
    tank = columns.number("propane_tank_l").times(LITRE)
    filled = tank * values["propane_fill_share"]
    basis = columns.basis("propane_tank_l")
    usable, water = basis == "usable", basis == "water_capacity"
    either = hull(filled, tank)
    return pick(usable, tank, pick(water, filled, either))


def propane_by_weight(columns: Columns, values: Assumptions) -> Range:
    """Give the propane (m³ of liquid) that cylinders hold: net weight over density, with no further fill limit.

    Check: 20 lb are 4.72 US gal (row F30).
    """
    return columns.number("propane_mass_kg") / values["propane_density"]


def propane(columns: Columns, values: Assumptions) -> Range:
    """Give the propane on board (m³ of liquid) from the fixed tank, from cylinders, or from both.

    A tank of 0 says that there is no fixed tank, so cylinders count alone, and without any it is 0. Where both are
    printed they may be the same propane given twice: the range goes from the lesser of them to their sum.
    """
    tank, cylinders = propane_in_tank(columns, values), propane_by_weight(columns, values)
    total = tank + cylinders
    either = Range.of(np.minimum(tank.low, cylinders.low), np.maximum(tank.typical, cylinders.typical), total.high)
    one_is_none = (tank.high == 0) | (cylinders.high == 0)
    return first_known(pick(one_is_none, total, either), tank, cylinders)


def vehicle_fuel(columns: Columns, fuel: str, values: Assumptions, filled: float = 1.0) -> Range:
    """Give what a heater for ``fuel`` can draw (m³) from a vehicle tank ``filled`` to a share, above the reserve.

    Unknown where the engine runs on another fuel: the heater then has a tank of its own that no field holds.
    """
    share = (Range.of(filled) - values["fuel_reserve_share"]).clipped(least=0.0)
    reach = columns.number("fuel_tank_l").times(LITRE) * share
    return pick(_other_engine(columns, fuel), Range.unknown(columns.size), reach)


def fuel_for(columns: Columns, fuel: str, values: Assumptions, filled: float = 1.0) -> Range:
    """Give the fuel on board (m³) that a heater for ``fuel`` can use, its tanks ``filled`` to a share of full."""
    if fuel == "propane":
        return propane(columns, values).times(filled)
    return vehicle_fuel(columns, fuel, values, filled)


def usable_fuel(columns: Columns, values: Assumptions) -> Range:
    """Give the fuel on board (m³ of liquid) that the heater can use, unknown where its fuel is."""
    return over_fuels(burns(columns), {fuel: fuel_for(columns, fuel, values) for fuel in FUELS})


def days(usable: Range, per_second: Range, duty: Range) -> Range:
    """Give the days that fuel lasts: usable fuel (m³) over consumption at full output (m³/s) × duty × a day.

    ``duty`` is the share of the time at full output. Check, common practice without source: 12 US gal at 1.28 US gal
    a day last 9.4 days.
    """
    return usable / (per_second * duty).times(DAY)


def heat_days(columns: Columns, values: Assumptions) -> Range:
    """Give the days of heat from the fuel on board at the rule-of-thumb duty; unknown for heaters that burn none."""
    duty = values["heater_duty"]
    supply = {fuel: fuel_for(columns, fuel, values) for fuel in FUELS}
    lasts = {fuel: days(supply[fuel], flow(columns, fuel, values), duty) for fuel in FUELS}
    return over_fuels(burns(columns), lasts)


def _other_engine(columns: Columns, fuel: str) -> Mask:
    engines = columns.words("engine_fuel")
    return columns.known("engine_fuel") & (engines != fuel) & (engines != "hybrid")


def say_usable(columns: Columns, values: Assumptions, result: Range) -> list[str | None]:
    """Give for each case in words how its usable fuel comes about.

    ``None`` where an input is unknown; where the quantity has no meaning for the van, the reason.
    """
    what = burns(columns)
    tank, mass, vehicle = (columns.number(name) for name in ("propane_tank_l", "propane_mass_kg", "fuel_tank_l"))
    bases, mass_bases = columns.basis("propane_tank_l"), columns.basis("propane_mass_kg")
    out: list[str | None] = []
    for case in range(columns.size):
        if not result.known[case]:
            out.append(_why_no_fuel(columns, what, case))
            continue
        gas = []
        if what.by_fuel["propane"][case]:
            if tank.known[case] and not (tank.high[case] == 0 and mass.known[case]):
                gas.append(_tank_words(span(tank, case), bases[case], per(values["propane_fill_share"])))
            if mass.known[case]:
                gas.append(_mass_words(span(mass, case), mass_bases[case], per(values["propane_density"])))
        doubt = " (whether that is the same propane printed twice is not known)" if len(gas) > 1 else ""
        supplies = [" and ".join(gas) + doubt] if gas else []
        for fuel in FUELS[1:]:
            if what.by_fuel[fuel][case]:
                share = per(values["fuel_reserve_share"])
                supplies.append(f"a full {fuel} tank of {span(vehicle, case)} l less a reserve of {share} of it")
        together = " or ".join(supplies)
        out.append(f"{together[0].upper()}{together[1:]} = {span(result.times(1 / LITRE), case)} l of usable fuel.")
    return out


def _tank_words(tank: str, basis: str | None, share: str) -> str:
    if basis == "usable":
        return f"a propane tank with {tank} l usable"
    if basis == "water_capacity":
        return f"a propane tank of {tank} l water capacity filled to {share} of it"
    return f"a propane tank of {tank} l, usable or filled to {share} of it (which one is not printed)"


def _mass_words(mass: str, basis: str | None, density: str) -> str:
    carried = f"cylinders with {mass} kg of propane at {density} kg/m³, full"
    return f"{carried}, which the locker is made for" if basis == "locker" else carried


def _why_no_fuel(columns: Columns, what: Burns, case: int) -> str | None:
    if what.nothing[case]:
        return "The heater burns no fuel: no tank feeds it; without shore power or a battery it gives no heat."
    for fuel in FUELS[1:]:
        if what.by_fuel[fuel][case] and _other_engine(columns, fuel)[case]:
            engine = columns.words("engine_fuel")[case]
            if engine == "electric":
                return f"An electric vehicle has no tank for a {fuel} heater; the heater's own tank is not printed."
            return f"A heater for {fuel} cannot draw on the tank of a {engine} engine; its own tank is not printed."
    return None


def say_days(columns: Columns, values: Assumptions, result: Range) -> list[str | None]:
    """Give for each case in words how its days of heat come about, or why the quantity has no meaning for the van."""
    what, duty = burns(columns), values["heater_duty"]
    usable = usable_fuel(columns, values).times(1 / LITRE)
    burned = over_fuels(what, {fuel: flow(columns, fuel, values) for fuel in FUELS}).times(HOUR / LITRE)
    hours = per(duty, HOUR / DAY)
    return [
        f"{span(usable, case)} l of usable fuel over {span(burned, case)} l/h × {hours} hours a day at full output "
        f"= {span(result, case)} days."
        if result.known[case]
        else _why_no_fuel(columns, what, case)
        for case in range(columns.size)
    ]
