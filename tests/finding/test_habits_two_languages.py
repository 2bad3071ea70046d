"""Figures, answers and headings of documents in two languages or with titles that list what is in them."""

import pytest

SHEET = """# Drift 21

2026 catalog - floorplans, specifications, options

Marrowfen Vans

| | Drift 21 | Drift 24 |
|---|---|---|
| Length | 236" | 273" |
| GVWR (lb) | 9,350 | 11,030 |
| Sleeps | 2 | 4 |
| Fresh tank | 26 gal | 35 gal |

## Options

| | Drift 21 | Drift 24 |
|---|---|---|
| Insulated gray tank | Opt | — |
| Electric floor heat | — | Std |

Std: in the base price. Opt: at extra cost. A dash means that we cannot build it on that floorplan.
"""


@pytest.mark.parametrize(
    "region, line, expected",
    [
        ("UK", "Wheelbase: 4.035 mm", {"wheelbase_mm": 4035}),
        ("UK", "Inverter: 1.000 W", {"inverter_w": 1000}),
        ("FR", "PTAC : 3,500 kg", {"gvwr_kg": 3500}),
        ("UK", "Length × width × height: 5.990 × 2.050 × 2.650 mm",
         {"length_mm": 5990, "width_mm": 2050, "height_mm": 2650}),
        ("UK", "External length: 5.990 m", {"length_mm": 5990}),
    ],
)  # fmt: skip
def test_a_mark_before_three_digits_parts_thousands_where_the_unit_is_printed_whole(states, region, line, expected):
    states(region, line, expected)


@pytest.mark.parametrize(
    "region, line, expected",
    [
        ("UK", "Floor heating: Serie / standard", {"heated_floor": True}),
        ("UK", "Thermal break on ribs: nein / no", {"thermal_break": False}),
        ("UK", "Thermal break on ribs: oui / ja / yes", {"thermal_break": True}),
        ("UK", "Gas cylinders: keine, gasfrei / none, gas-free", {"propane_tank_l": 0}),
        ("DE", "Fußbodenheizung: yes / ja", {"heated_floor": True}),
        ("FR", "Batterie chauffée : no | non", {"battery_heated": False}),
        ("UK", "Floor heating: ja / option", {}),  # one says yes, the other something else
    ],
)
def test_an_answer_in_two_languages_is_one(states, region, line, expected):
    states(region, line, expected)


@pytest.mark.parametrize(
    "region, line, expected",
    [
        ("UK", "Thermal break: On all ribs", {"thermal_break": True}),
        ("UK", "Battery heating: Built in", {"battery_heated": True}),
        ("UK", "Drain-down valves for winter: two, fitted", {"winterizing_bypass": True}),
        ("DE", "Thermische Trennung: an allen Spriegeln", {"thermal_break": True}),
        ("FR", "Bris thermique : sur tous les montants", {"thermal_break": True}),
        ("FR", "Garantie de base : 3 ans ou 60 000 km.", {}),
        ("FR", "PTAC 3 500 kg (en ordre de marche : 2 905 kg)", {"gvwr_kg": 3500}),
        ("UK", "Hot water: 10 litre storage heater, gas and 230 V", {"water_heater_l": 10}),
        ("UK", "Current drawn by heating fan: 1.2 A, about 14 W", {"heater_power_draw_w": 14}),
        ("UK", "Grey water: 90 L, in heated underfloor locker",
         {"gray_tank_l": 90, "gray_tank_location": "enclosed", "gray_tank_heat": "heated_compartment"}),
        ("UK", "Wall insulation: cork, 40 mm\n\nAlso insulated: roof, floor",
         {"insulated_surfaces": "ceiling+floor+walls", "insulation_material": "cork", "insulation_thickness_mm": 40}),
        ("UK", "Wall insulation: cork, 40 mm\n\nInsulated: roof, floor",
         {"insulated_surfaces": "ceiling+floor", "insulation_material": "cork", "insulation_thickness_mm": 40}),
    ],
)  # fmt: skip
def test_ordinary_answers_and_labels(states, region, line, expected):
    states(region, line, expected)


def test_the_prices_of_base_vans_name_no_base_vehicle(states):
    states("UK", "Base prices: Drift 21 £118,500, Drift 21 XL £139,900.", {})


def test_a_title_that_lists_what_is_in_the_catalog_makes_nothing_an_option(facts_of):
    stated = {(f.model, f.field): f.availability for f in facts_of(SHEET, "catalog.md")}
    assert stated["Drift 21", "fresh_tank_l"] == stated["Drift 24", "fresh_tank_l"] == "standard"
    assert stated["Drift 21", "gray_tank_insulated"] == "optional"
    assert stated["Drift 24", "gray_tank_insulated"] == "not_available"
    assert stated["Drift 21", "heated_floor"] == "not_available"
    assert stated["Drift 24", "heated_floor"] == "standard"


def test_short_forms_that_a_note_explains_stand_for_its_words(facts_of):
    rows = "| BTU/h* | 12,000 in | 13,650 out |\n| Waste tank | 60 L, u/f | 90 L, int |\n"
    text = SHEET.replace("| Fresh tank", f"{rows}| Fresh tank")
    text = text.replace("| Sleeps", "| Main heater | Propane furnace | Diesel heater |\n| Sleeps")
    facts = facts_of(f"{text}\n* in = input rating; out = output.\n\nu/f = underfloor; int = inside.\n", "catalog.md")
    stated = {(f.model, f.field): f.value for f in facts}
    assert stated["Drift 21", "heater_input_w"] == pytest.approx(3517, rel=0.001)
    assert stated["Drift 24", "heater_output_w"] == pytest.approx(4000, rel=0.001)
    assert ("Drift 21", "heater_output_w") not in stated
    assert stated["Drift 21", "gray_tank_location"] == "underbody"
    assert stated["Drift 24", "gray_tank_location"] == "interior"


def test_the_whole_family_is_every_van_though_one_is_named_behind(facts_of):
    text = SHEET + "\nWe call the whole family all-season; for ice fishing, ask us about the Drift 24.\n"
    found = {f.model for f in facts_of(text, "catalog.md") if f.field == "season_claim"}
    assert found == {"Drift 21", "Drift 24"}
