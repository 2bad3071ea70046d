"""All derived quantities together: the registry tells the truth, and uncertainty is never lost on the way."""

import numpy as np
import pandas as pd
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specscan.physics import DERIVED, derive, derive_numbers
from specscan.physics.columns import table_of
from specscan.rulebook.book import load_rulebook
from tests.physics.conftest import RULES

BOOK = load_rulebook(RULES)
EXAMPLE = {
    "heater_fuel": "propane",
    "heater_type": "forced_air",
    "engine_fuel": "gasoline",
    "heater_consumption_l_h": 0.6,
    "heater_input_w": 4700,
    "heater_output_w": 3700,
    "heater_rating_w": 4700,
    "propane_tank_l": 40,
    "propane_mass_kg": 20,
    "fuel_tank_l": 90,
    "insulation_r_si": 1.1,
    "insulation_material": "cork",
    "insulation_thickness_mm": 40,
    "insulated_surfaces": "walls",
    "thermal_break": False,
    "window_glazing": "double",
    "cab_shades_insulated": True,
    "rear_shades_insulated": False,
    "length_mm": 5990,
    "width_mm": 2050,
    "height_mm": 2550,
    "interior_height_mm": 1880,
    "fresh_tank_l": 100,
    "fresh_tank_location": "interior",
    "fresh_tank_heat": "none",
    "fresh_tank_insulated": False,
    "gray_tank_l": 80,
    "gray_tank_location": "underbody",
    "gray_tank_heat": "electric_pad",
    "gray_tank_insulated": True,
    "black_tank_l": 40,
    "black_tank_location": "enclosed",
    "black_tank_heat": "warm_air",
    "black_tank_insulated": False,
    "toilet": "fixed_tank",
    "cassette_l": 18,
    "water_lines_location": "exterior",
    "water_lines_insulated": True,
    "water_lines_heated": False,
    "dump_valve_protection": "exposed",
    "battery_ah": 200,
    "battery_wh": 2560,
    "battery_chemistry": "lithium",
    "battery_heated": False,
    "solar_w": 200,
    "heater_power_draw_w": 40,
}
SPREAD = {"heater_consumption_l_h", "heater_input_w", "heater_output_w", "heater_rating_w", "propane_tank_l"}
SPREAD |= {"propane_mass_kg", "fuel_tank_l", "insulation_r_si", "insulation_thickness_mm", "length_mm", "width_mm"}
SPREAD |= {"height_mm", "interior_height_mm", "fresh_tank_l", "gray_tank_l", "black_tank_l", "battery_ah", "battery_wh"}
SPREAD |= {"solar_w", "heater_power_draw_w"}
FUEL = {"propane_tank_l": "propane", "propane_mass_kg": "propane", "fuel_tank_l": "diesel"}


def test_table_keeps_its_index_and_has_four_columns_a_quantity():
    table = table_of([EXAMPLE, {}], BOOK).set_index(pd.Index([7, 9]))
    result = derive(table, BOOK)
    assert list(result.index) == [7, 9]
    for name in DERIVED:
        assert {name, f"{name}__low", f"{name}__high", f"{name}__how"} <= set(result.columns)
        assert result[f"{name}__low"].iloc[0] <= result[name].iloc[0] <= result[f"{name}__high"].iloc[0], name
        assert np.isnan(result[name].iloc[1]) and result[f"{name}__how"].iloc[1] is None


def test_empty_table_gives_an_empty_one():
    assert derive(table_of([], BOOK), BOOK).empty


@pytest.mark.parametrize(
    ("name", "way"),
    [(name, way) for name, quantity in DERIVED.items() for way in quantity.ways],
    ids=lambda part: part if isinstance(part, str) else "+".join(part),
)
def test_each_way_is_enough_and_none_of_its_fields_can_be_missed(name, way):
    fuel = next((FUEL[field] for field in way if field in FUEL), "propane")
    given = {field: EXAMPLE[field] for field in way} | ({"heater_fuel": fuel} if "heater_fuel" in way else {})
    without = [{field: value for field, value in given.items() if field != gone} for gone in way]
    found = derive_numbers(table_of([given, *without], BOOK), BOOK)[name]
    assert np.isfinite(found.iloc[0])
    assert found.iloc[1:].isna().all()


@pytest.mark.parametrize("name", DERIVED)
def test_only_registered_inputs_change_a_quantity(name):
    other = {
        "heater_fuel": "diesel",
        "heater_type": "electric",
        "engine_fuel": "diesel",
        "insulation_material": "sheep_wool",
        "insulated_surfaces": "ceiling+floor",
        "window_glazing": "single",
        "battery_chemistry": "agm",
        "toilet": "dry",
        "water_lines_location": "interior",
        "dump_valve_protection": "heated",
        **{f"{tank}_tank_location": "interior" for tank in ("gray", "black")},
        **{f"{tank}_tank_heat": "hydronic" for tank in ("fresh", "gray", "black")},
        "fresh_tank_location": "underbody",
    }
    others = [field for field in EXAMPLE if field not in DERIVED[name].inputs]
    changed = [
        {**EXAMPLE, field: other[field] if isinstance(EXAMPLE[field], str) else _changed(EXAMPLE[field])}
        for field in others
    ]
    base, *found = derive_numbers(table_of([EXAMPLE, *changed], BOOK), BOOK)[name]
    assert {field for field, one in zip(others, found, strict=True) if one != base} == set()


def _changed(value):
    return not value if isinstance(value, bool) else value * 1.5


@settings(max_examples=60, deadline=None)
@given(
    st.sampled_from(sorted(SPREAD)),
    st.floats(0.5, 1.0),
    st.floats(1.0, 2.0),
    st.sampled_from(["propane", "diesel", "gasoline", "diesel+propane"]),
    st.sets(st.sampled_from(sorted(SPREAD)), max_size=6),
)
def test_wider_input_never_gives_a_narrower_answer(field, down, up, fuel, gone):
    case = {name: value for name, value in EXAMPLE.items() if name not in gone - {field} and name != "engine_fuel"}
    case["heater_fuel"] = fuel
    wide = {**case, field: [case[field] * down, case[field], case[field] * up]}
    found = derive_numbers(table_of([case, wide], BOOK), BOOK)
    for name in DERIVED:
        if np.isnan(found[name].iloc[0]):
            continue
        low, high = found[f"{name}__low"], found[f"{name}__high"]
        assert low.iloc[1] <= low.iloc[0] + 1e-9 * abs(low.iloc[0]), name
        assert high.iloc[1] >= high.iloc[0] - 1e-9 * abs(high.iloc[0]), name


@settings(max_examples=40, deadline=None)
@given(st.floats(5, 200), st.floats(1.0, 3.0), st.floats(1500, 15000))
def test_more_fuel_never_lasts_shorter_and_more_power_never_longer(litres, more, watts):
    case = {"heater_fuel": "diesel", "heater_output_w": watts, "fuel_tank_l": litres}
    rows = [case, {**case, "fuel_tank_l": litres * more}, {**case, "heater_output_w": watts * more}]
    found = derive_numbers(table_of(rows, BOOK), BOOK)
    for part in ("heat_days", "heat_days__low", "heat_days__high"):
        base, fuller, stronger = found[part]
        assert fuller >= base * (1 - 1e-12) and stronger <= base * (1 + 1e-12)


def test_many_cases_give_what_each_gives_alone():
    cases = [EXAMPLE, {**EXAMPLE, "heater_fuel": "diesel", "engine_fuel": "diesel"}, {"insulation_r_si": 0.4}]
    together = derive(table_of(cases, BOOK), BOOK)
    for number, case in enumerate(cases):
        alone = derive(table_of([case], BOOK), BOOK)
        pd.testing.assert_series_equal(together.iloc[number], alone.iloc[0], check_names=False, check_dtype=False)
