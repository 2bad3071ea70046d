"""The heater: which fuel it burns, how much of it per hour at full output, and how much heat it gives.

Brochures mix input and output ratings, and higher and lower heating values. Where a document does not say which one
it prints, the result is a range over both. A printed figure is preferred to a computed one.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from specscan.physics.assumptions import HOUR, LITRE, Assumptions
from specscan.physics.columns import Columns
from specscan.physics.ranges import Mask, Range, first_known, hull, pick
from specscan.physics.words import per, span

INPUTS = (
    "heater_fuel", "heater_type", "heater_output_w", "heater_input_w", "heater_rating_w", "heater_consumption_l_h",
)  # fmt: skip
"""Fields on which the heat that it gives and the fuel that it burns depend."""
FUELS = ("propane", "diesel", "gasoline")
ELECTRIC = ("electric", "heat_pump")


@dataclass(frozen=True, slots=True)
class Burns:
    """What the heaters burn: a mask per fuel; ``known`` where the fuel is known; ``nothing`` where none is burned.

    A heater with two energies counts by the one it burns: without shore power its electric element is of no use.
    """

    by_fuel: dict[str, Mask]
    known: Mask
    nothing: Mask


def burns(columns: Columns) -> Burns:
    """Give what each heater burns, from its fuels; an electric heater or heat pump of unnamed fuel burns nothing."""
    by_fuel = {fuel: columns.holds("heater_fuel", fuel) for fuel in FUELS}
    named = columns.known("heater_fuel")
    electric = ~named & columns.is_word("heater_type", *ELECTRIC)
    return Burns(by_fuel, named | electric, (named | electric) & ~np.logical_or.reduce(list(by_fuel.values())))


def burned_fuels(columns: Columns) -> Range:
    """Give how many fuels the heater can burn: 0 for one that needs electricity, unknown where its fuel is."""
    what = burns(columns)
    count = np.sum([mask.astype(float) for mask in what.by_fuel.values()], axis=0)
    return Range.of(np.where(what.known, count, np.nan))


def over_fuels(what: Burns, of_fuel: dict[str, Range]) -> Range:
    """Give a quantity of the fuel that is burned; over all of them where a heater can burn several.

    Unknown where no fuel is burned, or where the quantity is unknown for one that is.
    """
    low, typical, high = (np.full(what.known.shape, end) for end in (np.inf, np.inf, -np.inf))
    for fuel, mask in what.by_fuel.items():
        one = of_fuel[fuel]
        low = np.minimum(low, np.where(mask, one.low, np.inf))
        typical = np.minimum(typical, np.where(mask, one.typical, np.inf))
        high = np.maximum(high, np.where(mask, one.high, -np.inf))
    return Range.of(low, typical, high)


def flow_from_input(power: Range, fuel: str, values: Assumptions) -> Range:
    """Give the fuel that a rated input burns: power over heat content.

    Args:
        power: input in W.
        fuel: one of ``FUELS``.

    Returns:
        Volume flow of liquid fuel in m³/s. The typical value rests on the higher heating value; the range also covers
        a rating against the lower one. Check: 16,000 Btu/h of propane is 0.175 US gal/h (row R01).
    """
    heat = hull(values[f"{fuel}_higher_heating_value"], values[f"{fuel}_lower_heating_value"])
    return power / heat


def flow_from_output(power: Range, fuel: str, values: Assumptions) -> Range:
    """Give the fuel burned for a rated output (W): power over efficiency and higher heating value, in m³/s."""
    return power / values[f"{fuel}_heater_efficiency"] / values[f"{fuel}_higher_heating_value"]


def flow_from_rating(power: Range, fuel: str, values: Assumptions) -> Range:
    """Give the fuel burned (m³/s) for a rating (W) of which it is not said whether it is input or output.

    The range covers both; the typical value is what makers of heaters for that fuel usually mean.
    """
    as_input, as_output = flow_from_input(power, fuel, values), flow_from_output(power, fuel, values)
    share = values[f"{fuel}_rating_is_output"].typical
    return hull(as_input, as_output).at(as_input.typical * (1 - share) + as_output.typical * share)


def flow(columns: Columns, fuel: str, values: Assumptions) -> Range:
    """Give the fuel that the heater burns at full output, were it for ``fuel``: m³/s of liquid.

    In this order: the printed consumption; from the rated input; from the rated output; from the rating as either.
    """
    return first_known(
        columns.number("heater_consumption_l_h").times(LITRE / HOUR),
        flow_from_input(columns.number("heater_input_w"), fuel, values),
        flow_from_output(columns.number("heater_output_w"), fuel, values),
        flow_from_rating(columns.number("heater_rating_w"), fuel, values),
    )


def fuel_flow(columns: Columns, values: Assumptions) -> Range:
    """Give the fuel that the heater burns at full output: m³/s of liquid, unknown where its fuel is.

    A printed consumption is good without the fuel being known, unless the heater burns none.
    """
    what = burns(columns)
    printed = columns.number("heater_consumption_l_h").times(LITRE / HOUR)
    result = over_fuels(what, {fuel: flow(columns, fuel, values) for fuel in FUELS})
    return pick(what.known, result, printed)


def heat_output(columns: Columns, values: Assumptions) -> Range:
    """Give the heat that the heater gives at most, in W: the printed output, else from input, else from the rating.

    Where the fuel is unknown, the efficiency ranges over all of them, up to 1 for an electric heater. A heat pump's
    rating without basis stays unknown: input and output are far apart there.
    """
    what = burns(columns)
    whole = Range.of(1.0)
    efficiency = {fuel: values[f"{fuel}_heater_efficiency"] for fuel in FUELS}
    spread = {name: pick(mask, efficiency[name], Range.unknown(columns.size)) for name, mask in what.by_fuel.items()}
    share = over_fuels(what, spread)
    share = pick(what.nothing, whole, pick(what.known, share, hull(*efficiency.values(), whole)))
    rating = columns.number("heater_rating_w")
    usual = sum(
        (np.where(mask, values[f"{fuel}_rating_is_output"].typical, 0.0) for fuel, mask in what.by_fuel.items()),
        np.where(what.nothing, 1.0, 0.0),
    )
    as_input = rating * share
    from_rating = hull(rating, as_input).at(rating.typical * usual + as_input.typical * (1 - np.minimum(usual, 1)))
    pump = columns.is_word("heater_type", "heat_pump")
    return first_known(
        columns.number("heater_output_w"),
        pick(pump, Range.unknown(columns.size), first_known(columns.number("heater_input_w") * share, from_rating)),
    )


def say_burned(columns: Columns, values: Assumptions, result: Range) -> list[str | None]:
    """Give for each case which fuels are burned in words, ``None`` where that is unknown."""
    what = burns(columns)
    named = [[fuel for fuel in FUELS if what.by_fuel[fuel][case]] for case in range(columns.size)]
    return [
        (f"The heater burns {' and '.join(fuels)}." if fuels else "The heater burns no fuel.") if known else None
        for fuels, known in zip(named, what.known, strict=True)
    ]


def say_flow(columns: Columns, values: Assumptions, result: Range) -> list[str | None]:
    """Give for each case in words how its fuel consumption comes about, ``None`` where it is unknown."""
    what = burns(columns)
    routes = [(name, columns.number(name)) for name in ("heater_consumption_l_h", "heater_input_w", "heater_output_w")]
    routes.append(("heater_rating_w", columns.number("heater_rating_w")))
    out: list[str | None] = []
    for case in range(columns.size):
        if what.nothing[case]:
            out.append("The heater burns no fuel: how long it can heat hangs on shore power, not on a tank.")
            continue
        if not result.known[case]:
            out.append(None)
            continue
        name, figure = next((name, figure) for name, figure in routes if figure.known[case])
        end = f" = {span(result.times(HOUR / LITRE), case)} l/h at full output."
        if name == "heater_consumption_l_h":
            out.append(f"The printed consumption{end}")
            continue
        fuels = [fuel for fuel in FUELS if what.by_fuel[fuel][case]]
        heats = [_heat_text(fuel, name, values) for fuel in fuels]
        out.append(f"{_ROUTE_WORDS[name]} {span(figure, case)} W over {' or '.join(heats)}{end}")
    return out


_ROUTE_WORDS = {
    "heater_input_w": "The rated input of",
    "heater_output_w": "The rated output of",
    "heater_rating_w": "The rating, taken as input or as output, of",
}


def _heat_text(fuel: str, route: str, values: Assumptions) -> str:
    higher, lower = values[f"{fuel}_higher_heating_value"], values[f"{fuel}_lower_heating_value"]
    heat = f"{per(higher, 1e9)} MJ per litre of {fuel} (higher heating value"
    heat += f"; lower: {per(lower, 1e9)})" if route != "heater_output_w" else ")"
    if route == "heater_input_w":
        return heat
    return f"{heat} and an efficiency of {per(values[f'{fuel}_heater_efficiency'])}"


def say_output(columns: Columns, values: Assumptions, result: Range) -> list[str | None]:
    """Give for each case in words how its heat output comes about, ``None`` where it is unknown."""
    printed, given = columns.number("heater_output_w"), columns.number("heater_input_w")
    rating, what = columns.number("heater_rating_w"), burns(columns)
    out: list[str | None] = []
    for case in range(columns.size):
        if not result.known[case]:
            out.append(None)
            continue
        end = f" = {span(result, case)} W of heat."
        fuels = [fuel for fuel in FUELS if what.by_fuel[fuel][case]] or ([] if what.nothing[case] else list(FUELS))
        shares = " or ".join(f"{per(values[f'{fuel}_heater_efficiency'])} ({fuel})" for fuel in fuels) or "1 (electric)"
        way = f"times an efficiency of {shares}{end}"
        if printed.known[case]:
            out.append(f"The printed output{end}")
        elif given.known[case]:
            out.append(f"The rated input of {span(given, case)} W {way}")
        else:
            out.append(f"The rating of {span(rating, case)} W, taken as output, or as input {way}")
    return out
