"""Labels in brackets, pairs of batteries in series, rows that say no more than "tank", warnings in notes."""

import pytest

GALLON = 3.785411784  # NIST SP 811 (2008), Appendix B
BTU_H = 0.29307107  # the same, IT BTU
POUND = 0.45359237

LINES = [
    # a label of its own in brackets
    ("US", "GVWR: 9,350 lb (dry weight: 7,400 lb)", {"gvwr_kg": 9350 * POUND}),
    ("UK", "MTPLM: 3,500 kg (unladen: 2,900 kg)", {"gvwr_kg": 3500}),
    ("FR", "PTAC : 3 500 kg (à vide : 2 960 kg)", {"gvwr_kg": 3500}),
    ("DE", "Zulässiges Gesamtgewicht: 3.500 kg (fahrbereit: 2.960 kg)", {"gvwr_kg": 3500}),
    ("US", "Fresh water: 30 gal (gray: 20 gal)", {"fresh_tank_l": 30 * GALLON, "gray_tank_l": 20 * GALLON}),
    ("US", "Furnace: 16,000 BTU/h (output: 12,800 BTU/h)",
     {"heater_rating_w": 16000 * BTU_H, "heater_output_w": 12800 * BTU_H, "heater_type": "forced_air"}),
    ("US", "Furnace, input: 16,000 BTU/h (output: 12,800 BTU/h)",
     {"heater_input_w": 16000 * BTU_H, "heater_output_w": 12800 * BTU_H, "heater_type": "forced_air"}),
    # two and two in series: half of them add up (reference rows U24, U25: series adds volts, parallel charge)
    ("US", "House battery: four 6-volt, 210 Ah, two pairs in series", {"battery_ah": 420, "battery_wh": 5040}),
    ("US", "House batteries: 4 x 6 V 210 Ah (2 series pairs in parallel)", {"battery_ah": 420, "battery_wh": 5040}),
    ("US", "Our four 6-volt batteries of 210 Ah are wired as two pairs in series.",
     {"battery_ah": 420, "battery_wh": 5040}),
    ("DE", "Aufbaubatterie: 4 x 6 V, 210 Ah, paarweise in Reihe", {"battery_ah": 420, "battery_wh": 5040}),
    ("FR", "Batterie cellule : 4 x 6 V, 210 Ah, deux par deux en série", {"battery_ah": 420, "battery_wh": 5040}),
    ("US", "House battery: 2 x 6 V, 220 Ah in series, option 2 x 150 Ah AGM",
     {"battery_ah": ("option", 300), "battery_wh": 2640, "battery_chemistry": ("option", "agm")}),
    ("US", "House battery: AGM, 2 x 6 V, 220 Ah in series (gel, 3 x 120 Ah optional)",
     {"battery_ah": ("option", 360), "battery_wh": 2640, "battery_chemistry": ("option", "gel")}),
    ("US", "It has an insulated gray tank and makes hot water in a 12-liter tank.",
     {"gray_tank_insulated": True, "water_heater_l": 12}),
    # a letter with its unit is a label, "jacketed" insulated, a break between ribs and lining thermal
    ("UK", "W (m): 2.05", {"width_mm": 2050}),
    ("UK", "H (mm): 2640", {"height_mm": 2640}),
    ("UK", "Driven: front", {"drive": "front"}),
    ("UK", "Grey tank jacketed: no", {"gray_tank_insulated": False}),
    ("US", "Break between ribs and paneling: yes", {"thermal_break": True}),
    # what a label names of several kinds is none of them; "self-heating: no" denies the heating alone
    ("US", "Portable / cassette waste: 2.6 gal", {"cassette_l": 2.6 * GALLON}),
    ("US", "House battery self-heating: no", {"battery_heated": False}),
    ("DE", "Bordbatterie, Selbstheizung: nein", {"battery_heated": False}),
    ("US", "Gray water tank, heating: electric pad, 12 V, 60 W", {"gray_tank_heat": "electric_pad"}),
    ("US", "House battery: 6 V, 210 Ah, pairs in series", {}),  # how many pairs is not printed
]  # fmt: skip


@pytest.mark.parametrize(("region", "line", "expected"), LINES)
def test_a_label_in_brackets_has_its_own_figure_and_pairs_in_series_add_up(states, region, line, expected):
    states(region, line, expected)


FRESH, GRAY = "Fresh water: 30 gal\n", "Gray water: 20 gal\n"
TANKS = {"fresh_tank_l": 30 * GALLON, "gray_tank_l": 20 * GALLON}

ROWS = [
    # below rows of several tanks nobody knows of which "tank" is said
    (FRESH + GRAY + "Tank heating: electric pads", TANKS),
    (FRESH + GRAY + "Black water: 10 gal\nTank heating pads: Standard", {**TANKS, "black_tank_l": 10 * GALLON}),
    ("Fresh water: 30 gal\nTank heating: 12 V pad\nGray water: 20 gal\nTank heating: 12 V pad",
     {**TANKS, "fresh_tank_heat": "electric_pad", "gray_tank_heat": "electric_pad"}),
    # of any tank is of all that the van has, and of no line that the heading names
    ("Plumbing\n\n" + FRESH + GRAY + "Heat on any tank: none, see W1",
     {**TANKS, "fresh_tank_heat": "none", "gray_tank_heat": "none"}),
]  # fmt: skip


@pytest.mark.parametrize(("rows", "expected"), ROWS)
def test_a_row_about_a_tank_is_of_the_one_above_it_or_of_nobody_knows_which(states, rows, expected):
    states("US", rows, expected)


def test_a_note_that_work_is_for_licensed_trades_states_no_fuel(states):
    states(
        "US",
        "Furnace: LP, forced air\nSolar: 200 W¹\n\n"
        "¹ On the roof. LP, furnace and 120 V work belongs to licensed trades and follows local code.",
        {"heater_type": "forced_air", "heater_fuel": "propane", "solar_w": 200},
    )
