"""The headline quantities of winter, under conditions: the default ones of ``rules/conditions.yaml`` if none are given.

``outside`` is the mean outside temperature of the conditions, ``the coldest night`` theirs too.
"""

from __future__ import annotations

from collections.abc import Callable

from specscan.physics import winter_words as words
from specscan.physics.assumptions import HOUR
from specscan.physics.design import at_design
from specscan.physics.electricity import HEATER_DRAW, HELD, PADS
from specscan.physics.envelope import INPUTS as BODY
from specscan.physics.fuel import INPUTS as SUPPLY
from specscan.physics.heater import INPUTS as HEATER
from specscan.physics.quantity import Derived, Ways, ways
from specscan.physics.ranges import Range, pick
from specscan.physics.winter import Winter

BATTERY = (*HELD, "solar_w", HEATER_DRAW)
SIZE_WAYS: Ways = (("length_mm",), ("insulation_r_si",), ("insulation_material", "insulation_thickness_mm"))
OUTPUT_WAYS: Ways = (("heater_output_w",), ("heater_input_w",), ("heater_rating_w",))
ON_BOARD: Ways = (
    ("heater_fuel", "propane_tank_l"), ("heater_fuel", "propane_mass_kg"), ("heater_fuel", "fuel_tank_l"),
)  # fmt: skip
BURNS: Ways = (("heater_consumption_l_h",), ("heater_input_w",), ("heater_output_w",), ("heater_rating_w",))
SIZE, OUTPUT = "the van's length or its walls' insulation", "the heater's output, input or rating"


def _tank(name: str) -> Derived:
    return _quantity(
        f"{name}_tank_freeze_h", f"hours until the {name} tank is at 0 °C outside, while heating and battery last", "h",
        ((f"{name}_tank_l",),), tuple(f"{name}_tank_{part}" for part in ("location", "heat", "insulated")),
        "the tank's capacity", lambda winter: winter.tank_time(name), words.tank(name), HOUR,
    )  # fmt: skip


def _quantity(
    name: str, meaning: str, unit: str, enough: Ways, also: tuple[str, ...], needs: str,
    compute: Callable[[Winter], Range], sentence: words.Sentence, si_units: float = 1.0,
) -> Derived:  # fmt: skip
    return Derived(
        name, meaning, unit, si_units, enough, also, needs,
        lambda columns, values, book: compute(at_design(columns, values)), words.saying(sentence),
    )  # fmt: skip


WINTER = (
    _quantity(
        "heat_loss_w", "heat that the heater must give in the coldest night of the conditions", "W",
        SIZE_WAYS, BODY, SIZE, lambda winter: winter.design_loss, words.loss,
    ),
    _quantity(
        "heater_margin_w", "the heater's output less the loss in the coldest night; below 0 it is not enough", "W",
        ways(OUTPUT_WAYS, SIZE_WAYS), (*BODY, *HEATER), f"{OUTPUT}, and {SIZE}",
        lambda winter: winter.margin, words.margin,
    ),
    _quantity(
        "lowest_outside_c", "lowest outside temperature, -60 or more, at which the heater holds the inside", "°C",
        ways(OUTPUT_WAYS, SIZE_WAYS), (*BODY, *HEATER), f"{OUTPUT}, and {SIZE}",
        lambda winter: winter.lowest_outside, words.lowest,
    ),
    _quantity(
        "held_inside_c", "temperature that the heater holds inside in the coldest night, at most the wanted one", "°C",
        ways(OUTPUT_WAYS, SIZE_WAYS), (*BODY, *HEATER), f"{OUTPUT}, and {SIZE}",
        lambda winter: winter.held_inside, words.held,
    ),
    _quantity(
        "heat_days_at_loss", "days of heat from the fuel on board at the duty that the loss of heat gives", "d",
        ways(ON_BOARD, SIZE_WAYS), (*BODY, *HEATER, *SUPPLY), f"the heater's fuel, the fuel on board, and {SIZE}",
        lambda winter: winter.heat_days, words.days,
    ),
    _quantity(
        "propane_vapor_lowest_c", "outside temperature below which propane vaporizes too slowly for the heater", "°C",
        ways((("heater_fuel",),), BURNS, (("propane_tank_l",), ("propane_mass_kg",))), (*HEATER, "propane_tank_l"),
        "a heater for propane, its consumption or rating, and the propane on board",
        lambda winter: winter.vapour_lowest, words.vapour,
    ),
    _quantity(
        "propane_vapor_days", "days until propane vaporizes too slowly for the heater, as tank or cylinders empty", "d",
        ways((("heater_fuel",),), (("propane_tank_l",), ("propane_mass_kg",)), SIZE_WAYS),
        (*HEATER, *BODY, "propane_tank_l"), f"a heater for propane, the propane on board, and {SIZE}",
        lambda winter: winter.burned_vapour_days, words.vapour_days,
    ),
    _quantity(
        "battery_days", "days until the house battery is empty, without shore power", "d",
        (("battery_wh",), ("battery_ah",)), (*BATTERY, *BODY, *HEATER, *PADS), "the battery's capacity",
        lambda winter: winter.battery_days, words.battery,
    ),
    _tank("fresh"),
    _tank("gray"),
    _tank("black"),
    _quantity(
        "water_lines_freeze_h", "hours until standing water in the coldest line is at 0 °C", "h",
        (("water_lines_location",),), ("water_lines_insulated", "water_lines_heated"), "where the water lines run",
        lambda winter: _if_known(winter, "water_lines_location", winter.line_time), words.lines, HOUR,
    ),
    _quantity(
        "dump_valve_freeze_h", "hours until waste water behind a dump valve is at 0 °C", "h",
        (("dump_valve_protection",),), (), "how the dump valves are protected",
        lambda winter: _if_known(winter, "dump_valve_protection", winter.valve_time), words.valve, HOUR,
    ),
    _quantity(
        "wet_glass_humidity_pct", "relative humidity inside at which living-space windows go wet", "%",
        (("window_glazing",),), ("rear_shades_insulated",), "the glazing of the windows",
        lambda winter: _if_known(winter, "window_glazing", winter.wet_glass), words.wet, 0.01,
    ),
    _quantity(
        "fresh_water_days", "days that the fresh water lasts", "d", (("fresh_tank_l",),), (), "the tank's capacity",
        lambda winter: winter.fresh_days, words.fresh,
    ),
    _quantity(
        "gray_tank_days", "days until the gray tank is full", "d", (("gray_tank_l",),), (), "the tank's capacity",
        lambda winter: winter.gray_days, words.gray,
    ),
    _quantity(
        "heating_days", "days until the heating ends: fuel, vapour or battery, whichever is first", "d",
        ways(ON_BOARD, SIZE_WAYS), (*BODY, *HEATER, *SUPPLY, *BATTERY, *PADS),
        f"the heater's fuel, the fuel on board, and {SIZE}", lambda winter: winter.heating_stay, words.heating_ends,
    ),
    _quantity(
        "stay_days", "days until the first limit binds: fuel, vapour, battery, water, frost", "d",
        ways(ON_BOARD, SIZE_WAYS),
        (
            *BODY, *HEATER, *SUPPLY, *BATTERY, *PADS, "cassette_l", "water_lines_location",
            "water_lines_insulated", "water_lines_heated",
            *(f"{tank}_tank_{part}" for tank in ("fresh", "gray") for part in ("location", "insulated")),
        ),
        f"the heater's fuel, the fuel on board, and {SIZE}", lambda winter: winter.stay, words.ends,
    ),
)  # fmt: skip


def _if_known(winter: Winter, field: str, found: Range) -> Range:
    """Give a range where a field is known, else nothing."""
    return pick(winter.columns.known(field), found, Range.unknown(winter.columns.size))
