"""One table of vans under stated conditions: everything that winter physics says of them, worked out once.

Ranges are interval arithmetic and not Monte Carlo: a rule that says "yes" must hold whatever an open question's answer
is, nobody has distributions for what brochures leave out, and the same call gives the same answer. Formulas that rise
or fall with each argument are worked out at their ends (``ranges.monotone``), so that bounds are exact for them; where
ranges meet again later (loss over output) the result may be too wide, never too narrow. Only where independent parts
are added (faces of the van, loads of the battery) do the assumptions' spreads combine as root of the sum of squares,
for a dozen guesses that all err to one side would make every range say nothing (``ranges.independent_sum``).
"""

from __future__ import annotations

from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from specscan.physics import balance, condensation, electricity, limits, lines, stay, tanks, water_days
from specscan.physics.assumptions import DAY, Assumptions
from specscan.physics.columns import Columns
from specscan.physics.conditions import Conditions
from specscan.physics.electricity import CHARGED, HEATER_DRAW, HELD, PADS
from specscan.physics.envelope import INPUTS as BODY
from specscan.physics.envelope import Envelope, envelope, has_size_or_wall
from specscan.physics.fuel import INPUTS as SUPPLY
from specscan.physics.fuel import fuel_for
from specscan.physics.heater import FUELS, Burns, burns, flow, heat_output, over_fuels
from specscan.physics.heater import INPUTS as HEATER
from specscan.physics.propane_supply import coldest_for_vapour, kept_back
from specscan.physics.ranges import Floats, Mask, Range, first_known, hull, independent_sum, monotone, pick
from specscan.physics.resting import resting_on

NONE = Range.of(0.0)
LOWEST = -60.0
"""Lowest outside temperature (°C) that is told of; what holds there holds in every winter that is asked about."""


class Winter:
    """Vans under conditions. Ranges have one value a van, or vans × temperatures where ``sweep`` (°C) is given.

    Everything is worked out when it is asked for, and once.
    """

    def __init__(self, columns: Columns, values: Assumptions, conditions: Conditions, sweep: Floats | None = None):
        self.columns, self.conditions = columns, conditions
        reserve = conditions.fuel_reserve_share
        fixed = {} if reserve is None else {"fuel_reserve_share": Range.of(reserve)}
        self.values = Assumptions(values.book, {**values.fixed, **fixed}, certain=values.certain)
        self.values.used = values.used
        self.swept = sweep is not None
        self.outside: Floats = np.asarray(conditions.outside_c if sweep is None else sweep, dtype=float)
        self.coldest: Floats = np.asarray(conditions.coldest_c if sweep is None else sweep, dtype=float)
        self.inside = conditions.inside_c
        self.materials = values.book.choices_of("insulation_material")
        self._alike: dict[tuple[str, ...], tuple[Winter, NDArray[np.int64]] | None] = {}
        self._tanks: dict[tuple[str, float], tanks.Tank] = {}

    def lift(self, one: Range) -> Range:
        """Give a range of one value a van in the shape of the results."""
        return one.lifted() if self.swept and one.typical.ndim else one

    def where(self, mask: Mask) -> Mask:
        """Give a mask of vans in the shape of the results."""
        return mask[:, np.newaxis] if self.swept else mask

    @cached_property
    def certain(self) -> Winter:
        """Give the same vans with every assumption at its typical value: what only documents leave open."""
        values = Assumptions(self.values.book, self.values.fixed, certain=True)
        return Winter(self.columns, values, self.conditions, self.outside if self.swept else None)

    def alike(self, fields: tuple[str, ...]) -> tuple[Winter, NDArray[np.int64]] | None:
        """Give fewer vans, and which of these each is like in some fields; ``None`` where none are known to be."""
        if fields not in self._alike:
            found = None if self.swept else self.columns.alike(fields)
            self._alike[fields] = found and (Winter(found[0], self.values, self.conditions), found[1])
        return self._alike[fields]

    # heat

    @cached_property
    def envelope(self) -> Envelope:
        """Give what is lost per kelvin, by part."""
        return envelope(self.columns, self.values, self.materials, self.conditions.wind_m_s)

    @resting_on(*BODY)
    def conductance(self) -> Range:
        """Give what is lost per kelvin (W/K)."""
        return self.envelope.total

    @resting_on(*BODY)
    def sized(self) -> Mask:
        """Tell where size or walls are known; elsewhere a loss would rest on assumptions alone."""
        return has_size_or_wall(self.columns, self.values, self.materials)

    @cached_property
    def gains(self) -> Range:
        """Give the heat that people give (W)."""
        return self.values["heat_from_person"].times(self.conditions.people)

    @resting_on(*HEATER)
    def output(self) -> Range:
        """Give the heater's full output (W)."""
        return heat_output(self.columns, self.values)

    def loss_at(self, outside: Floats) -> Range:
        """Give what the heater must give (W) at outside temperatures (°C)."""
        return monotone(
            lambda conductance, gains: balance.net_loss(conductance, self.inside, outside, gains),
            {"conductance": self.lift(self.conductance)}, {"gains": self.gains},
        )  # fmt: skip

    @resting_on(*BODY)
    def loss(self) -> Range:
        """Give what the heater must give (W) at the mean outside temperature."""
        return self.loss_at(self.outside)

    @resting_on(*BODY)
    def design_loss(self) -> Range:
        """Give what the heater must give (W) in the coldest night; unknown where neither size nor walls are known."""
        return pick(self.where(self.sized), self.loss_at(self.coldest), self.nothing)

    @cached_property
    def nothing(self) -> Range:
        """Give an unknown value for every result."""
        shape = (self.columns.size, self.outside.size) if self.swept else (self.columns.size,)
        return Range.of(np.full(shape, np.nan))

    @cached_property
    def margin(self) -> Range:
        """Give output less loss in the coldest night (W); below 0 the van gets colder than wanted."""
        return self.lift(self.output) - self.design_loss

    @cached_property
    def lowest_outside(self) -> Range:
        """Give the lowest outside temperature (°C, -60 or more) at which full output holds the inside, one a van."""
        found = monotone(
            lambda conductance, output, gains: balance.lowest_outside(conductance, self.inside, output, gains),
            {"conductance": self.conductance}, {"output": self.output, "gains": self.gains},
        ).clipped(least=LOWEST)  # fmt: skip
        return pick(self.sized, found, Range.unknown(self.columns.size))

    @cached_property
    def held_inside(self) -> Range:
        """Give the temperature (°C) that full output holds in the coldest night, at most the wanted one."""
        found = monotone(
            lambda conductance, output, gains: balance.held_inside(
                conductance, self.inside, self.coldest, output, gains
            ),
            {"output": self.lift(self.output), "gains": self.gains},
            {"conductance": self.lift(self.conductance)},
        )  # fmt: skip
        return pick(self.where(self.sized), found, self.nothing)

    @resting_on(*BODY, *HEATER)
    def duty(self) -> Range:
        """Give the share of the time at full output at the mean outside temperature; anything where it is unknown."""
        found = monotone(balance.duty_of, {"loss": self.loss}, {"output": self.lift(self.output)})
        usual = Range.of(0.0, float(self.values["heater_duty"].typical), 1.0)
        return first_known(found, usual)

    # fuel

    def efficiency(self, fuel: str) -> Range:
        """Give heat given over the higher heating value burned: from two printed figures that agree, else assumed.

        Two figures agree where they give an efficiency within ``heater_efficiency_plausible``.
        """
        columns, values = self.columns, self.values
        heat = values[f"{fuel}_higher_heating_value"]
        output, given = columns.number("heater_output_w"), columns.number("heater_input_w")
        burned = columns.number("heater_consumption_l_h").times(1e-3 / 3600.0)
        plausible = values["heater_efficiency_plausible"]
        assumed = values[f"{fuel}_heater_efficiency"]
        result = Range(*(np.broadcast_to(part, columns.size) for part in (assumed.low, assumed.typical, assumed.high)))
        for printed in (output / given, output / (burned * heat)):
            fits = (printed.typical >= plausible.low) & (printed.typical <= plausible.high)
            result = pick(fits, printed, result)
        return result

    @resting_on(*SUPPLY)
    def supply(self) -> dict[str, Range]:
        """Give the fuel on board that the heater can use at the start (m³), by fuel."""
        parts = {fuel: self.conditions.vehicle_fuel_share for fuel in FUELS} | {
            "propane": self.conditions.propane_share
        }
        return {fuel: fuel_for(self.columns, fuel, self.values, parts[fuel]) for fuel in FUELS}

    @resting_on(*BODY, *HEATER)
    def fuel_per_day(self) -> dict[str, Range]:
        """Give the fuel for a day (m³) at the duty that the heat loss gives, by fuel, were the heater for it."""
        driving = 1 - self.conditions.driving_h_day / 24
        endless = Range(*(np.full(self.columns.size, np.inf) for _ in range(3)))
        found = {}
        for fuel in FUELS:
            printed = flow(self.columns, fuel, self.values)
            full = pick(printed.known, printed, endless)
            found[fuel] = monotone(
                lambda loss, efficiency, heat, flow: balance.burned_per_day(loss, efficiency, heat, flow, driving),
                {"loss": self.loss, "flow": self.lift(full)},
                {
                    "efficiency": self.lift(self.efficiency(fuel)),
                    "heat": self.values[f"{fuel}_higher_heating_value"],
                },
            )  # fmt: skip
        return found

    @cached_property
    def heat_days(self) -> Range:
        """Give the days of heat at the duty that the heat loss gives; unknown for heaters that burn nothing."""
        most = float(self.values["stay_horizon"].typical) / DAY
        lasts = {
            fuel: monotone(
                balance.lasting, {"supply": self.lift(self.supply[fuel])}, {"per_day": self.fuel_per_day[fuel]}, most
            )
            for fuel in FUELS
        }
        what = burns(self.columns)
        if self.swept:
            masks = {fuel: mask[:, np.newaxis] for fuel, mask in what.by_fuel.items()}
            what = type(what)(masks, what.known[:, np.newaxis], what.nothing[:, np.newaxis])
        return pick(self.where(self.sized), _over(what.by_fuel, lasts, self.nothing), self.nothing)

    @cached_property
    def vapour_lowest(self) -> Range:
        """Give the outside temperature (°C) below which propane vaporizes too slowly (one value a van)."""
        return coldest_for_vapour(self.columns, self.values)

    @cached_property
    def propane_draw(self) -> Range:
        """Give the fuel power (W) drawn from the propane on average: what the loss takes, at most full output.

        The handbook's rules are for continuous draw; liquid and steel even out the minutes and hours of on and off.
        """
        heat = self.values["propane_higher_heating_value"]
        return (self.fuel_per_day["propane"] * heat).times(1 / DAY)

    @cached_property
    def propane_kept_back(self) -> Range:
        """Give the share of a full tank or cylinder that the cold keeps back: with less, vapour comes too slowly."""
        return kept_back(self.columns, self.values, self.propane_draw, self.outside)

    @cached_property
    def vapour_days(self) -> Range:
        """Give the days until propane no longer vaporizes fast enough; no end where nothing burns propane."""
        what = burns(self.columns)
        burned = pick(self.where(what.by_fuel["propane"]), self.burned_vapour_days, self.endless)
        return pick(self.where(what.known), burned, self.nothing)

    @cached_property
    def burned_vapour_days(self) -> Range:
        """Give the days until a heater has burned its propane down to where too little vaporizes.

        No end where it does so until the tank is empty, 0 where it is too slow from the start; unknown where nothing
        burns propane.
        """
        most = float(self.values["stay_horizon"].typical) / DAY
        start, kept, fuel = self.conditions.propane_share, self.propane_kept_back, self.heat_days

        def days(lasts: Floats, kept: Floats) -> Floats:
            left = lasts * np.clip(1 - kept / start, 0.0, 1.0) if start > 0 else np.zeros_like(kept)
            return np.where(kept <= 0, most, np.where(kept >= start, 0.0, left))

        found = Range.of(days(fuel.low, kept.high), days(fuel.typical, kept.typical), days(fuel.high, kept.low))
        return pick(self.where(burns(self.columns).by_fuel["propane"]), found, self.nothing)

    # electricity

    @cached_property
    def battery_temperature(self) -> Range:
        """Give the temperature of the house battery (°C)."""
        return electricity.battery_temperature(self.columns, self.values, self.inside, self.outside)

    @resting_on(*BODY, *HEATER, HEATER_DRAW)
    def heating_power(self) -> Range:
        """Give the electricity that heating takes on average (W): fan and pumps, or all of it in an electric heater."""
        fan = self.lift(electricity.heater_draw(self.columns, self.values))
        burning = self.duty * fan
        pump = self.columns.is_word("heater_type", "heat_pump")
        share = pick(self.where(pump), self.values["heat_pump_power_share"], Range.of(1.0))
        direct = self.loss * share
        what = burns(self.columns)
        electric, unsure = self.where(what.nothing), self.where(~what.known)
        return pick(electric, direct, pick(unsure, hull(burning, direct), burning))

    @resting_on(*HELD)
    def energy(self) -> Range:
        """Give the energy of the house battery that can be drawn (J)."""
        return electricity.usable(self.columns, self.values, self.battery_temperature, self.conditions.battery_share)

    @resting_on(*BODY, *HEATER, HEATER_DRAW, *PADS)
    def energy_use(self) -> Range:
        """Give the electricity used in a day (J); its parts have nothing to do with one another."""
        wet = self.conditions.running_water
        parts = electricity.uses(self.columns, self.values, self.heating_power, wet=wet)
        known = electricity.uses(self.columns, self.certain.values, self.certain.heating_power, wet=wet)
        return independent_sum(list(known.values()), list(parts.values()))

    @resting_on(*CHARGED)
    def energy_charge(self) -> Range:
        """Give the electricity put back in a day (J)."""
        return electricity.charge(self.columns, self.values, self.conditions, self.battery_temperature)

    @cached_property
    def battery_days(self) -> Range:
        """Give the days until the house battery is empty; the horizon with shore power."""
        if self.conditions.shore_power:
            return self.endless
        return electricity.lasting(self.energy, self.energy_use, self.energy_charge, self.values["stay_horizon"])

    @cached_property
    def endless(self) -> Range:
        """Give the horizon of stays (d) for every result."""
        return Range.of(np.full_like(self.nothing.typical, float(self.values["stay_horizon"].typical) / DAY))

    # water

    def tank(self, name: str, wind: float | None = None) -> tanks.Tank:
        """Give a tank (``fresh``, ``gray``, ``black``) in the conditions' wind, or another (m/s)."""
        key = name, self.conditions.wind_m_s if wind is None else wind
        if key not in self._tanks:
            self._tanks[key] = tanks.tank_of(self.columns, self.values, *key)
        return self._tanks[key]

    @cached_property
    def fresh_days(self) -> Range:
        """Give the days that the fresh water lasts, one value a van."""
        return water_days.fresh_days(self.columns, self.values, self.conditions)

    @cached_property
    def gray_days(self) -> Range:
        """Give the days until the gray tank is full, one value a van."""
        return water_days.gray_days(self.columns, self.values, self.conditions)

    def tank_time(self, name: str, *, to_ice: bool = False, wind: float | None = None) -> Range:
        """Give the time (s) until a tank is at 0 °C, or so far frozen that its outlet blocks."""
        tank = self.tank(name, wind)
        return tanks.freezing_times(tank, self.values, self.inside, self.outside, to_ice=to_ice)

    @cached_property
    def line_time(self) -> Range:
        """Give the time (s) until standing water in the coldest line is at 0 °C."""
        return lines.line_times(self.columns, self.values, self.inside, self.outside)

    @cached_property
    def line_plug_time(self) -> Range:
        """Give the time (s) until standing water in the coldest line is frozen through."""
        return lines.line_times(self.columns, self.values, self.inside, self.outside, to_plug=True)

    @cached_property
    def valve_time(self) -> Range:
        """Give the time (s) until waste behind a dump valve is at 0 °C."""
        return lines.valve_times(self.columns, self.values, self.inside, self.outside)

    @cached_property
    def wet_glass(self) -> Range:
        """Give the relative humidity inside (0 to 1) at which living-space windows go wet."""
        u = self.envelope.u_values["windows"]
        return condensation.glass_humidity(self.lift(u), self.values, self.inside, self.outside)

    # what ends the stay

    @cached_property
    def limits(self) -> dict[str, Range]:
        """Give every limit of the stay in days; those of water only where water runs."""
        return limits.limits_of(self)

    @cached_property
    def stay(self) -> Range:
        """Give the days until the first limit binds; unknown where the fuel's limit is."""
        found = stay.first_limit(self.shaped_limits, self.earliest)
        return pick(self.shaped_limits["fuel"].known, found, self.nothing)

    @cached_property
    def heating_stay(self) -> Range:
        """Give the days until the heating ends, for want of fuel, vapour or electricity; unknown where fuel's are."""
        limits = {name: self.shaped_limits[name] for name in stay.HEATING}
        return pick(limits["fuel"].known, stay.first_limit(limits), self.nothing)

    @cached_property
    def earliest(self) -> dict[str, Range]:
        """Give when limits that are not known could come at the earliest (the low ends), where that can be told."""
        return limits.earliest_of(self)

    def soonest(self, limit: str, case: int) -> float:
        """Give the days after which a limit that is not known could come at the earliest in one case; 0 is at once."""
        one = self.earliest.get(limit)
        return float(one.low[case]) if one is not None and one.known[case] else 0.0

    @cached_property
    def shaped_limits(self) -> dict[str, Range]:
        """Give the limits with a value for every result."""
        return {name: self.shaped(one) for name, one in self.limits.items()}

    def shaped(self, one: Range) -> Range:
        """Give a range with a value for every result."""
        shape = self.nothing.typical.shape
        return Range(*(np.broadcast_to(part, shape) for part in (one.low, one.typical, one.high)))


def _over(masks: dict[str, Mask], of_fuel: dict[str, Range], nothing: Range) -> Range:
    """Give what holds for the fuel that is burned; over all of them where it can be several."""
    shape = nothing.typical.shape
    spread = {fuel: np.broadcast_to(mask, shape) for fuel, mask in masks.items()}
    some = np.logical_or.reduce(list(spread.values()))
    return over_fuels(Burns(spread, some, ~some), of_fuel)
