"""How the quantities of winter come about, in sentences by which a reader can redo the arithmetic."""

from __future__ import annotations

from collections.abc import Callable

from specscan.physics import stay
from specscan.physics.assumptions import DAY, HOUR, LITRE, Assumptions
from specscan.physics.columns import Columns
from specscan.physics.design import at_design
from specscan.physics.heater import FUELS, burns
from specscan.physics.propane_supply import demand, draw_at_zero_f
from specscan.physics.ranges import Range
from specscan.physics.winter import Winter
from specscan.physics.words import earliest, figure, per, span, time_span

Sentence = Callable[[Winter, Range, int], str | None]
PART_WORDS = {
    "walls": "walls", "ceiling": "ceiling", "floor": "floor", "windows": "windows", "cab_glass": "cab glass",
    "cab_shell": "cab shell", "air": "air change",
}  # fmt: skip
ASSUMED = {
    "length_mm": "length", "insulation_r_si": "insulation", "insulated_surfaces": "which faces are insulated",
    "thermal_break": "thermal break", "window_glazing": "glazing", "cab_shades_insulated": "covers of the cab glass",
}  # fmt: skip


def saying(sentence: Sentence) -> Callable[[Columns, Assumptions, Range], list[str | None]]:
    """Turn a sentence for one case into what the registry wants: a sentence a case, ``None`` where it is unknown."""

    def say(columns: Columns, values: Assumptions, result: Range) -> list[str | None]:
        winter = at_design(columns, values)
        return [sentence(winter, result, case) for case in range(columns.size)]

    return say


def loss(winter: Winter, result: Range, case: int) -> str | None:
    """Tell how the loss in the coldest night comes about."""
    if not result.known[case]:
        return None
    envelope, conditions = winter.envelope, winter.conditions
    parts = ", ".join(f"{PART_WORDS[name]} {_span(one, case)}" for name, one in envelope.parts.items())
    kelvin = conditions.inside_c - conditions.coldest_c
    return (
        f"{figure(kelvin)} K between {figure(conditions.inside_c)} °C inside and {figure(conditions.coldest_c)} °C "
        f"outside × {_span(envelope.total, case)} W/K ({parts}), less {per(winter.gains)} W from "
        f"{conditions.people} people = {_span(result, case)} W.{_assumed(winter.columns, case)}"
    )


def margin(winter: Winter, result: Range, case: int) -> str | None:
    """Tell the margin of the heater in the coldest night."""
    if not result.known[case]:
        return None
    return (
        f"{_span(winter.output, case)} W of heat less {_span(winter.design_loss, case)} W lost at "
        f"{figure(winter.conditions.coldest_c)} °C = {_span(result, case)} W; below 0 the van gets colder than wanted."
    )


def lowest(winter: Winter, result: Range, case: int) -> str | None:
    """Tell the lowest outside temperature that the heater holds."""
    if not result.known[case]:
        return None
    return (
        f"{figure(winter.conditions.inside_c)} °C inside less ({_span(winter.output, case)} W of heat + "
        f"{per(winter.gains)} W from people) over {_span(winter.envelope.total, case)} W/K = {_span(result, case)} °C "
        "outside; what is lower counts as -60 °C."
    )


def held(winter: Winter, result: Range, case: int) -> str | None:
    """Tell which temperature the heater holds inside in the coldest night."""
    if not result.known[case]:
        return None
    return (
        f"{figure(winter.conditions.coldest_c)} °C outside + ({_span(winter.output, case)} W of heat + "
        f"{per(winter.gains)} W from people) over {_span(winter.envelope.total, case)} W/K, at most "
        f"{figure(winter.conditions.inside_c)} °C = {_span(result, case)} °C inside."
    )


def days(winter: Winter, result: Range, case: int) -> str | None:
    """Tell the days of heat at the duty that the loss gives."""
    what = burns(winter.columns)
    if what.nothing[case]:
        return "The heater burns no fuel: how long it can heat hangs on electricity."
    if not result.known[case]:
        return None
    parts = []
    for fuel in FUELS:
        if what.by_fuel[fuel][case]:
            heat = per(winter.values[f"{fuel}_higher_heating_value"], 1e9)
            parts.append(
                f"{_span(winter.supply[fuel].times(1 / LITRE), case)} l of {fuel} over "
                f"{_span(winter.fuel_per_day[fuel].times(1 / LITRE), case)} l a day ({_span(winter.loss, case)} W lost "
                f"at {figure(winter.conditions.outside_c)} °C over an efficiency of "
                f"{_span(winter.efficiency(fuel), case)} and {heat} MJ a litre, higher heating value; at most full "
                "output)"
            )
    return f"{' or '.join(parts)} = {_span(result, case)} days.{_assumed(winter.columns, case)}"


def vapour(winter: Winter, result: Range, case: int) -> str | None:
    """Tell below which temperature propane vaporizes too slowly."""
    what = burns(winter.columns)
    if what.known[case] and not what.by_fuel["propane"][case]:
        return "The heater burns no propane."
    if not result.known[case]:
        return None
    need, draw = demand(winter.columns, winter.values), draw_at_zero_f(winter.columns, winter.values)
    return (
        f"The heater draws {_span(need, case)} W of fuel; tank or cylinders vaporize {_span(draw, case)} W at 0 °F "
        f"(-17.8 °C), by how full they are; the table of temperature factors gives as much as is drawn down to "
        f"{_span(result, case)} °C. A mixture with butane gives out near 0 °C."
    )


def vapour_days(winter: Winter, result: Range, case: int) -> str | None:
    """Tell after how many days propane vaporizes too slowly."""
    what = burns(winter.columns)
    if what.known[case] and not what.by_fuel["propane"][case]:
        return "The heater burns no propane."
    if not result.known[case]:
        return None
    return (
        f"At {figure(winter.conditions.outside_c)} °C the heater draws {_span(winter.propane_draw, case)} W of fuel on "
        f"average; filled to less than {_span(winter.propane_kept_back, case)} of what is "
        f"full, tank or cylinders vaporize less than that. {_span(winter.heat_days, case)} days of heat, down to that "
        f"filling = {_span(result, case)} days; {figure(float(winter.endless.typical.flat[0]))} stands for no end."
    )


def battery(winter: Winter, result: Range, case: int) -> str | None:
    """Tell the days of the house battery."""
    if not result.known[case]:
        return None
    watt_hours = 1 / HOUR
    return (
        f"{_span(winter.energy.times(watt_hours), case)} Wh that can be drawn at a battery temperature of "
        f"{_span(winter.battery_temperature, case)} °C over {_span(winter.energy_use.times(watt_hours), case)} Wh a "
        f"day ({_span(winter.heating_power, case)} W for heating at a duty of {_span(winter.duty, case)}, the rest "
        "standby, refrigerator, household, tank pads) less "
        f"{_span(winter.energy_charge.times(watt_hours), case)} Wh a day put back = "
        f"{_span(result, case)} days; {figure(float(winter.endless.typical.flat[0]))} stands for no end."
    )


def tank(name: str) -> Sentence:
    """Give the sentence on the freezing of a tank."""

    def sentence(winter: Winter, result: Range, case: int) -> str | None:
        litres = winter.columns.number(f"{name}_tank_l")
        if litres.known[case] and litres.high[case] == 0:
            return f"There is no {name} tank."
        if not result.known[case]:
            return None
        one = winter.tank(name)
        return (
            f"{_span(litres, case)} l, filled to {per(winter.values['tank_fill'])} of it, behind "
            f"{_span(one.resistance, case)} m²·K/W from water to air, where the air is warmer than "
            f"{figure(winter.conditions.outside_c)} °C by {_span(one.shelter, case)} of the difference to the living "
            f"space, with {_span(one.power, case)} W given to it: {_span(result.times(1 / HOUR), case)} h to 0 °C; "
            f"{_never(winter)} h stands for never. Wind makes it faster, never colder than the air."
        )

    return sentence


def lines(winter: Winter, result: Range, case: int) -> str | None:
    """Tell the freezing of water lines."""
    return _standing(winter, result, case, "Standing water in a line")


def valve(winter: Winter, result: Range, case: int) -> str | None:
    """Tell the freezing of dump valves."""
    return _standing(winter, result, case, "Waste water behind a valve")


def wet(winter: Winter, result: Range, case: int) -> str | None:
    """Tell at which humidity windows go wet."""
    if not result.known[case]:
        return None
    u = winter.envelope.u_values["windows"]
    conditions = winter.conditions
    return (
        f"Windows of {_span(u, case)} W/(m²·K) have {figure(conditions.inside_c)} - U × "
        f"{per(winter.values['inside_film_wall'])} × {figure(conditions.inside_c - conditions.outside_c)} K on the "
        f"inside; saturation there over saturation in the room = {_span(result.times(100), case)} % relative humidity."
    )


def fresh(winter: Winter, result: Range, case: int) -> str | None:
    """Tell the days of fresh water."""
    return _water(winter, winter.fresh_days, case, "fresh", "")


def gray(winter: Winter, result: Range, case: int) -> str | None:
    """Tell the days until the gray tank is full."""
    share = f" × {per(winter.values['gray_per_fresh'])} of it that drains"
    return _water(winter, winter.gray_days, case, "gray", share)


def ends(winter: Winter, result: Range, case: int) -> str | None:
    """Tell what ends the stay first, what comes next, and which limits are not known."""
    return _ends(winter, winter.shaped_limits, result, case)


def heating_ends(winter: Winter, result: Range, case: int) -> str | None:
    """Tell what ends the heating first, what comes next, and which limits are not known."""
    return _ends(winter, {name: winter.shaped_limits[name] for name in stay.HEATING}, result, case)


def _ends(winter: Winter, shaped: dict[str, Range], result: Range, case: int) -> str | None:
    if not result.known[case]:
        return None
    known = stay.order(shaped, (case,))
    never = float(winter.endless.typical.flat[0])
    said = [
        f"{stay.WORDS[name]} after {time_span(typical, low, high, 'd')}"
        for name, typical, low, high in known
        if typical < never
    ]
    lacking = [f"{stay.WORDS[name]} ({earliest(winter.soonest(name, case))})" for name in stay.unknown(shaped, (case,))]
    first = f"First {said[0]}" if said else "No limit that is known"
    then = f"; then {'; '.join(said[1:4])}" if len(said) > 1 else ""
    open_ends = f" Not known, and could come first: {', '.join(lacking)}." if lacking else ""
    return f"{first}{then} = {_lasting(result, case)}.{open_ends}"


def _standing(winter: Winter, result: Range, case: int, what: str) -> str | None:
    if not result.known[case]:
        return None
    start = per(winter.values.celsius("pipe_start_temperature"))
    return (
        f"{what}, from {start} °C in air of {figure(winter.conditions.outside_c)} °C, or warmer as far as it is "
        f"inside: {_span(result.times(1 / HOUR), case)} h to 0 °C (latent heat left out); "
        f"{_never(winter)} h stands for never."
    )


def _water(winter: Winter, result: Range, case: int, name: str, share: str) -> str | None:
    litres = winter.columns.number(f"{name}_tank_l")
    if litres.known[case] and litres.high[case] == 0:
        return f"There is no {name} tank."
    if not result.known[case]:
        return None
    use = per(winter.values["water_per_person"], LITRE / DAY)
    return (
        f"{_span(litres, case)} l over {use} l a day and person{share} × {winter.conditions.people} people "
        f"= {_span(result, case)} days."
    )


def _lasting(result: Range, case: int) -> str:
    return time_span(float(result.typical[case]), float(result.low[case]), float(result.high[case]), "d")


def _never(winter: Winter) -> str:
    return figure(float(winter.values["freezing_horizon"].typical) / HOUR)


def _assumed(columns: Columns, case: int) -> str:
    """Name what is assumed because nothing is printed."""
    silent = [words for name, words in ASSUMED.items() if not _there(columns, name, case)]
    return f" Assumed, as nothing is printed: {', '.join(silent)}." if silent else ""


def _there(columns: Columns, name: str, case: int) -> bool:
    if name == "insulation_r_si":
        both = columns.number("insulation_thickness_mm").known & columns.known("insulation_material")
        return bool((columns.number(name).known | both)[case])
    if name.endswith("_mm"):
        return bool(columns.number(name).known[case])
    return bool(columns.known(name)[case])


def _span(one: Range, case: int) -> str:
    """Give the value of one case; an assumption that is the same for all has no cases."""
    return span(one, case) if one.typical.ndim else per(one)
