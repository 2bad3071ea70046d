"""Which question narrows the winter of a van most."""

import pytest

from specscan.judging.narrowing import alternatives, narrowing
from specscan.physics.columns import table_of
from specscan.rulebook.book import load_rulebook
from tests.judging.conftest import RULES

BOOK = load_rulebook(RULES)
KNOWN = {
    "length_mm": 5990, "width_mm": 2050, "height_mm": 2650, "interior_height_mm": 1900, "insulation_r_si": 1.2,
    "insulation_material": "rigid_foam", "insulation_thickness_mm": 40, "thermal_break": True,
    "insulated_surfaces": ["walls", "ceiling", "floor", "doors"], "window_glazing": "double",
    "cab_shades_insulated": True, "rear_shades_insulated": True, "heater_type": "forced_air", "heater_fuel": "diesel",
    "heater_output_w": 4000, "heater_input_w": 4900, "heater_rating_w": 4000, "heater_consumption_l_h": 0.5,
    "heater_power_draw_w": 30, "fuel_tank_l": 90, "engine_fuel": "diesel", "propane_tank_l": 0, "propane_mass_kg": 0,
    "battery_wh": 4000, "battery_ah": 300, "battery_chemistry": "lithium", "battery_heated": True, "solar_w": 0,
    "toilet": "cassette", "cassette_l": 18, "black_tank_l": 0, "water_lines_location": "interior",
    "water_lines_insulated": True, "water_lines_heated": True,
    **{f"{tank}_tank_{part}": figure for tank in ("fresh", "gray") for part, figure in
       (("l", 90), ("location", "interior"), ("heat", "none"), ("insulated", False))},
}  # fmt: skip


def asked(*gone, **changed):
    case = {name: figure for name, figure in {**KNOWN, **changed}.items() if name not in gone}
    found = narrowing(table_of([case], BOOK), BOOK)
    return {row["field"]: (row["narrows"], row["narrows_what"]) for row in found.to_dict("records")}


def test_nothing_is_asked_where_all_is_known():
    assert asked() == {}


def test_covers_of_the_cab_narrow_the_loss_and_a_thing_that_is_not_there_does_not():
    found = asked("cab_shades_insulated", "black_tank_heat", "black_tank_location")
    assert found["cab_shades_insulated"][0] > 0.05
    assert not any(name.startswith("black_tank") for name in found)


def test_what_moves_the_result_more_is_asked_first():
    found = asked("insulation_r_si", "insulation_material", "insulation_thickness_mm", "rear_shades_insulated")
    assert list(found)[0] == "insulation_r_si"
    assert found["insulation_r_si"][0] > found["rear_shades_insulated"][0]


def test_one_field_that_makes_a_result_known_is_worth_all_of_it():
    assert asked("fuel_tank_l")["fuel_tank_l"] == (1.0, "stay_days")


def test_fields_that_make_a_result_known_only_together_share_it():
    size = ("length_mm", "insulation_r_si", "insulation_material", "insulation_thickness_mm")
    found = asked(
        *size, "heater_output_w", "heater_input_w", "heater_rating_w", "heater_consumption_l_h", "fuel_tank_l"
    )
    assert found["length_mm"] == (0.5, "stay_days") and found["fuel_tank_l"] == (0.5, "stay_days")
    assert found["heater_output_w"] == (0.5, "heater_margin_w")
    assert "propane_mass_kg" not in found  # a diesel heater does not run on it


@pytest.mark.parametrize(
    ("field", "what", "others"),
    [
        ("heater_output_w", "heater_margin_w", {"heater_input_w", "heater_rating_w"}),
        ("propane_tank_l", "heat_days_at_loss", {"propane_mass_kg", "fuel_tank_l"}),
        ("window_glazing", "heater_margin_w", set()),
    ],
)
def test_alternatives_are_fields_that_do_the_same(field, what, others):
    assert alternatives(field, what) == others


def test_draw_of_a_heater_is_tried_within_what_is_assumed_of_heaters():
    # The field's plausible range goes up to 3.5 kW, for heat pumps; with it the answer would seem to tell nearly all.
    assert 0 < asked("heater_power_draw_w")["heater_power_draw_w"][0] < 0.7
