"""Which quantities are derived, from which fields, and their columns for a table of cases.

The registry is code and not data because a name without a formula would be an empty promise: who adds a quantity
writes its function, and what it needs stands beside it. Its constants are data, under ``rules/values``.
"""

from __future__ import annotations

from collections.abc import Collection

import numpy as np
import pandas as pd

from specscan.physics import fuel, heater, wall
from specscan.physics.assumptions import HOUR, LITRE, Assumptions
from specscan.physics.columns import Columns
from specscan.physics.conditions import Conditions
from specscan.physics.design import reckon_under
from specscan.physics.quantity import Derived, Ways, ways
from specscan.physics.ranges import Floats, Range
from specscan.physics.winter_derived import WINTER
from specscan.rulebook.book import Rulebook

__all__ = ["DERIVED", "Derived", "derive", "derive_ends", "derive_numbers"]

BURN_WAYS: Ways = (
    ("heater_consumption_l_h",),
    ("heater_fuel", "heater_input_w"),
    ("heater_fuel", "heater_output_w"),
    ("heater_fuel", "heater_rating_w"),
)
SUPPLY_WAYS: Ways = (
    ("heater_fuel", "propane_tank_l"),
    ("heater_fuel", "propane_mass_kg"),
    ("heater_fuel", "fuel_tank_l"),
)
HEAT_WAYS: Ways = ways(BURN_WAYS, SUPPLY_WAYS)

DERIVED: dict[str, Derived] = {
    one.name: one
    for one in (
        Derived(
            "burned_fuels",
            "how many fuels the heater burns; 0: it is electric and needs shore power",
            "",
            1.0,
            (("heater_fuel",),),
            ("heater_type",),
            "the heater's fuel",
            lambda columns, values, book: heater.burned_fuels(columns),
            heater.say_burned,
        ),
        Derived(
            "heater_fuel_l_h",
            "fuel that the heater burns per hour at full output, litres of liquid",
            "l/h",
            LITRE / HOUR,
            BURN_WAYS,
            ("heater_type",),
            "the heater's consumption, or its fuel and a rating",
            lambda columns, values, book: heater.fuel_flow(columns, values),
            heater.say_flow,
        ),
        Derived(
            "heat_output_w",
            "heat that the heater gives at full output",
            "W",
            1.0,
            (("heater_output_w",), ("heater_input_w",), ("heater_rating_w",)),
            ("heater_fuel", "heater_type"),
            "the heater's output, or its input or rating",
            lambda columns, values, book: heater.heat_output(columns, values),
            heater.say_output,
        ),
        Derived(
            "usable_fuel_l",
            "fuel on board that the heater can use, litres of liquid, tanks full",
            "l",
            LITRE,
            SUPPLY_WAYS,
            ("heater_type", "engine_fuel"),
            "the heater's fuel, and the propane on board or the vehicle's tank",
            lambda columns, values, book: fuel.usable_fuel(columns, values),
            fuel.say_usable,
        ),
        Derived(
            "heat_days",
            "days of heat from the fuel on board at the rule-of-thumb duty",
            "d",
            1.0,
            HEAT_WAYS,
            ("heater_type", "engine_fuel"),
            "the heater's fuel, its consumption or a rating, and the fuel on board",
            lambda columns, values, book: fuel.heat_days(columns, values),
            fuel.say_days,
        ),
        Derived(
            "wall_r_si",
            "thermal resistance of the walls' insulation, without films, lining and steel ribs",
            "m²·K/W",
            1.0,
            (("insulation_r_si",), ("insulation_material", "insulation_thickness_mm")),
            (),
            "the walls' resistance, or the material and thickness of their insulation",
            lambda columns, values, book: wall.wall_resistance(columns, values, book.choices_of("insulation_material")),
            wall.say_wall,
        ),
        *WINTER,
    )
}


def derive_ends(
    columns: Columns, book: Rulebook, conditions: Conditions | None = None, only: Collection[str] | None = None
) -> dict[str, Floats]:
    """Give ``q``, ``q__low`` and ``q__high`` for each derived quantity, in its unit, one number a case.

    NaN where a quantity cannot be computed. Columns that are not there count as unknown. ``conditions`` stand in
    place of the default ones of the rules; ``only`` names the quantities that are wanted, by default all.

    Raises:
        RuleError: a constant is missing under ``rules/values`` or has no unit that is known.
    """
    values, result = Assumptions(book), dict[str, Floats]()
    if conditions is not None:
        reckon_under(columns, values, conditions)
    for name in (one for one in DERIVED if only is None or one in only):
        result.update(_ends(columns, DERIVED[name], DERIVED[name].compute(columns, values, book)))
    return result


def derive_numbers(
    table: pd.DataFrame, book: Rulebook, conditions: Conditions | None = None, only: Collection[str] | None = None
) -> pd.DataFrame:
    """Give the numbers of ``derive_ends`` as columns on the index of ``table``.

    Raises:
        RuleError: as for ``derive_ends``.
    """
    return pd.DataFrame(derive_ends(Columns(table), book, conditions, only), index=table.index)


def derive(
    table: pd.DataFrame, book: Rulebook, conditions: Conditions | None = None, only: Collection[str] | None = None
) -> pd.DataFrame:
    """Give the columns of ``derive_numbers`` and ``q__how``: a sentence by which a reader can redo the arithmetic.

    ``q__how`` names inputs and assumptions. Where the quantity is unknown it is ``None``; where it has no meaning for
    the van (fuel of a heater that burns none), it says why.

    Raises:
        RuleError: as for ``derive_ends``.
    """
    columns, values = Columns(table), Assumptions(book)
    if conditions is not None:
        reckon_under(columns, values, conditions)
    result: dict[str, object] = {}
    for name in (one for one in DERIVED if only is None or one in only):
        quantity = DERIVED[name]
        found = quantity.compute(columns, values, book)
        result.update(_ends(columns, quantity, found))
        result[f"{name}__how"] = pd.Series(quantity.say(columns, values, found), dtype=object, index=table.index)
    return pd.DataFrame(result, index=table.index)


def _ends(columns: Columns, quantity: Derived, found: Range) -> dict[str, Floats]:
    shown = found.times(1 / quantity.si_units)
    ends = {"": shown.typical, "__low": shown.low, "__high": shown.high}
    return {f"{quantity.name}{end}": np.broadcast_to(part, columns.size) for end, part in ends.items()}
