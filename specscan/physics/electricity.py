"""What the house battery holds in the cold, what draws on it, and for how many days it lasts.

Lithium iron phosphate is not charged below 0 °C: what the sun or the alternator could give is then lost.
"""

from __future__ import annotations

import numpy as np

from specscan.physics.assumptions import DAY, HOUR, Assumptions
from specscan.physics.columns import Columns, by_flag
from specscan.physics.conditions import Conditions
from specscan.physics.heater import FUELS, burns
from specscan.physics.lpg import table_value
from specscan.physics.ranges import Floats, Range, first_known, hull, pick
from specscan.physics.water_days import CASSETTE, DRY

LEAD = ("agm", "gel", "flooded")
TANKS = ("fresh", "gray", "black")
NONE = Range.of(0.0)
HELD = ("battery_wh", "battery_ah", "battery_chemistry", "battery_heated")
CHARGED = ("solar_w", "battery_chemistry", "battery_heated")
HEATER_DRAW = "heater_power_draw_w"
PADS = (*(f"{tank}_tank_{part}" for tank in ("fresh", "gray", "black") for part in ("heat", "l")), "toilet")
"""Fields on which the energy of the battery depends, what is put back, what heating takes, what pads take."""


def capacity(columns: Columns, values: Assumptions) -> Range:
    """Give the nominal energy (J) of the battery bank: printed, else charge × voltage. Rows U24, U25, B09."""
    voltage = _by_chemistry(columns, values["lithium_voltage"], values["lead_voltage"])
    return first_known(columns.number("battery_wh"), columns.number("battery_ah") * voltage).times(HOUR)


def battery_temperature(columns: Columns, values: Assumptions, inside: float, outside: Floats) -> Range:
    """Give the temperature of the battery (°C) between ``outside`` (one figure or a sweep) and inside."""
    kept = by_flag(columns, "battery_heated", values["heated_battery_shelter_share"], values["battery_shelter_share"])
    share = kept.lifted() if np.ndim(outside) else kept
    parts = (share.low, share.typical, share.high)
    return Range.of(*(outside + part * (inside - outside) for part in parts))


def usable(columns: Columns, values: Assumptions, temperature: Range, filled: float = 1.0) -> Range:
    """Give the energy (J) that can be drawn: nominal × depth of discharge × share that the cold leaves × charge.

    Checks: rows B03, B04, B08, B09.
    """
    nominal = capacity(columns, values)
    depth = _by_chemistry(columns, values["lithium_usable_share"], values["lead_usable_share"])
    swept = temperature.typical.ndim > 1
    lead, lithium = (_cold_share(values, f"{kind}_capacity", temperature) for kind in ("lead", "lithium"))
    is_lead, is_lithium = (_column(mask, swept) for mask in _chemistry(columns))
    left = pick(is_lithium, lithium, pick(is_lead, lead, hull(lithium, lead)))
    energy = (nominal * depth).times(filled)
    return (energy.lifted() if swept else energy) * left


def heater_draw(columns: Columns, values: Assumptions) -> Range:
    """Give the electricity (W) a burning heater takes for fan and pumps: printed, else by its fuel (R12 to R15)."""
    what = burns(columns)
    assumed = {fuel: values[f"{fuel}_heater_draw"] for fuel in FUELS}
    usual = hull(*assumed.values())
    for fuel in reversed(FUELS):
        usual = pick(what.by_fuel[fuel], assumed[fuel], usual)
    several = np.sum([mask.astype(int) for mask in what.by_fuel.values()], axis=0) > 1
    return first_known(columns.number("heater_power_draw_w"), pick(several, hull(*assumed.values()), usual))


def pads(columns: Columns, values: Assumptions) -> Range:
    """Give the electricity (W) that pads of tanks take on average; a tank that is heated somehow may have one.

    A tank of 0 litres has none, nor has a black tank beside a toilet that needs no such tank.
    """
    one = values["tank_pad_power"] * values["pad_on_share"]
    total = Range.of(np.zeros(columns.size))
    for tank in TANKS:
        heat = f"{tank}_tank_heat"
        there, maybe = columns.is_word(heat, "electric_pad"), columns.is_word(heat, "unspecified")
        maybe = maybe | ~columns.known(heat) & columns.number(f"{tank}_tank_l").known
        gone = columns.number(f"{tank}_tank_l").high == 0
        if tank == "black":
            gone |= columns.is_word("toilet", *CASSETTE, *DRY)
        total = total + pick(gone, NONE, pick(there, one, pick(maybe, hull(NONE, one), NONE)))
    return total


def uses(columns: Columns, values: Assumptions, heating: Range, *, wet: bool = True) -> dict[str, Range]:
    """Give the electricity used in a day (J) by part: ``heating`` (W, on average), standby, pads, refrigerator, rest.

    Pads are on only where there is water in the tanks (``wet``). Check: row B10, 3 A for 8 h at 12 V are 288 Wh.
    """
    steady = {"standby": values["standby_draw"], "pads": pads(columns, values) if wet else NONE}
    steady |= {"refrigerator": values["refrigerator_energy"], "household": values["household_energy"]}
    swept = heating.typical.ndim > 1
    lifted = {name: one.lifted() if swept and one.typical.ndim else one for name, one in steady.items()}
    return {name: one.times(DAY) for name, one in {"heating": heating, **lifted}.items()}


def charge(columns: Columns, values: Assumptions, conditions: Conditions, temperature: Range) -> Range:
    """Give the energy that sun and alternator put back in a day (J); nothing while lithium is below its limit.

    Solar of which nothing is printed counts as none.
    """
    panel = first_known(columns.number("solar_w"), Range.of(np.zeros(columns.size)))
    sun = panel * values["solar_yield"].times(DAY)
    driven = Range.of(conditions.alternator_w * conditions.driving_h_day * HOUR)
    given = sun + driven
    swept = temperature.typical.ndim > 1
    given = given.lifted() if swept else given
    limit = values.celsius("lithium_charge_limit")
    is_lead, is_lithium = (_column(mask, swept) for mask in _chemistry(columns))
    frozen = Range(
        np.where(temperature.low < limit.high, 0.0, given.low),
        np.where(temperature.typical < limit.typical, 0.0, given.typical),
        np.where(temperature.high < limit.low, 0.0, given.high),
    )
    maybe = Range(frozen.low, given.typical, np.broadcast_to(given.high, frozen.low.shape))
    return pick(is_lead, given, pick(is_lithium, frozen, maybe))


def lasting(energy: Range, used: Range, charged: Range, horizon: Range) -> Range:
    """Give the days until the battery is empty: energy over use less charge (J a day), at most the horizon (s)."""
    most = float(horizon.typical) / DAY

    def days(left: Floats, per_day: Floats, back: Floats) -> Floats:
        net = per_day - back
        with np.errstate(over="ignore"):
            return np.minimum(np.where(net > 0, left / np.where(net > 0, net, 1.0), np.inf), most)

    return Range.of(
        days(energy.low, used.high, charged.low),
        days(energy.typical, used.typical, charged.typical),
        days(energy.high, used.low, charged.high),
    )


def _chemistry(columns: Columns) -> tuple[np.ndarray, np.ndarray]:
    return columns.is_word("battery_chemistry", *LEAD), columns.is_word("battery_chemistry", "lithium")


def _by_chemistry(columns: Columns, lithium: Range, lead: Range) -> Range:
    is_lead, is_lithium = _chemistry(columns)
    return pick(is_lithium, lithium, pick(is_lead, lead, hull(lithium, lead)))


def _cold_share(values: Assumptions, name: str, temperature: Range) -> Range:
    places, share = values.table(name)
    return Range.of(
        table_value(temperature.low, places, share.low),
        table_value(temperature.typical, places, share.typical),
        table_value(temperature.high, places, share.high),
    )


def _column(mask: np.ndarray, swept: bool) -> np.ndarray:
    return mask[:, np.newaxis] if swept else mask
