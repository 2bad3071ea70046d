"""What labels and cells of sheets mean: whose the toilet's tank is, units between a name and what else is asked."""

import pytest

SHEET = "# Marrowfen Drift\n\n| | Drift 19 | Drift 22 |\n|---|---|---|\n| {length} | 5,41 m | 6,36 m |\n{rows}\n"
TOILETS = [
    ("Length", "| Gray water (l) | 60 | 80 |\n| Waste tank heating | 12 V pad | none |\n"
     "| Toilet | portable | cassette |\n| Toilet holding tank (litres) | 12 | 17 |",
     {"cassette_l": {"Drift 19": 12, "Drift 22": 17}}),
    ("Länge", "| Toilette | Kassette | Festtank |\n| Fäkalientank (l) | 17 | 40 |",
     {"cassette_l": {"Drift 19": 17}, "black_tank_l": {"Drift 22": 40}}),
    ("Length", "| Toilet | fixed | fixed |\n| Toilet holding tank (litres) | 38 | 45 |",
     {"black_tank_l": {"Drift 19": 38, "Drift 22": 45}}),
    ("Length", "| Toilet | cassette | fixed |\n| Toilet holding tank (litres) | none | 45 |",
     {"black_tank_l": {"Drift 19": 0, "Drift 22": 45}}),
]  # fmt: skip


def by_van(facts, field):
    return {f.model: f.value for f in facts if f.field == field and not f.rejected}


@pytest.mark.parametrize(("length", "rows", "expected"), TOILETS)
def test_the_tank_of_a_cassette_or_portable_toilet_is_no_black_tank(facts_of, length, rows, expected):
    facts = facts_of(SHEET.format(length=length, rows=rows), "sheet.md")
    for field in ("cassette_l", "black_tank_l", "black_tank_heat"):
        assert by_van(facts, field) == expected.get(field, {})


@pytest.mark.parametrize("label", ["Fresh water: L / place", "Fresh water L / place", "Fresh water, L / place"])
def test_a_unit_before_a_slash_asks_for_the_first_part(facts_of, label):
    facts = facts_of(SHEET.format(length="Length", rows=f"| {label} | 80 / inside | 100 / under floor |"), "sheet.md")
    assert by_van(facts, "fresh_tank_l") == {"Drift 19": 80, "Drift 22": 100}
    assert by_van(facts, "fresh_tank_location") == {"Drift 19": "interior", "Drift 22": "underbody"}


def test_a_sign_before_a_figure_tells_of_it_where_the_label_has_its_unit(facts_of):
    rows = "| Heated floor | ○ | ● |\n| Solar (W) | ○ 180 | 360 |\n\n● standard; ○ at extra cost."
    facts = facts_of(SHEET.format(length="Length", rows=rows), "sheet.md")
    told = {(f.model, f.value, f.availability) for f in facts if f.field == "solar_w"}
    assert told == {("Drift 19", 180, "optional"), ("Drift 22", 360, "standard")}


@pytest.mark.parametrize(("length", "label", "word"), [
    ("Length", "Lagged jacket for the grey tank", "add"), ("Länge", "Isolierhülle für den Abwassertank", "zubuchbar"),
])  # fmt: skip
def test_add_alone_in_a_cell_makes_an_option_of_the_row(facts_of, length, label, word):
    facts = facts_of(
        SHEET.format(length=length, rows=f"| Solar (W) | 180 | 360 |\n| {label} | {word} | Standard |"), "sheet.md"
    )
    told = {(f.model, f.availability) for f in facts if f.field == "gray_tank_insulated"}
    assert told == {("Drift 19", "optional"), ("Drift 22", "standard")}


LINES = [
    ("UK", "Diesel use at full output (l/h): 0.24", {"heater_consumption_l_h": 0.24}),
    ("UK", "Winter drain kit: bypass valves and low-point drains", {"winterizing_bypass": True}),
    ("UK", "The drain tap for the waste tank sits in a heated compartment.",
     {"dump_valve_protection": "heated_compartment"}),
    ("UK", "90 litres of fresh water ride away from the outside wall.", {"fresh_tank_l": 90}),
    ("UK", "Fresh tank: 90 litres, inside, against the heated wall",
     {"fresh_tank_l": 90, "fresh_tank_location": "interior"}),
    ("UK", "Options:\n- Diesel hydronic heater, takes the place of the air heater",
     {"heater_type": ("option", "hydronic"), "heater_fuel": ("option", "diesel")}),
    ("UK", "The pipes to the taps are insulated.", {"water_lines_insulated": True}),
    ("UK", "Draw is the electricity that the heater needs at full heat.", {}),
    ("US", "Wall RSI: 1.3", {"insulation_r_si": 1.3, "insulated_surfaces": "walls"}),
    ("DE", "Heizung mit Gas und Strom, 4 kW Heizleistung",
     {"heater_output_w": 4000, "heater_fuel": "electric+propane"}),
    ("DE", "Frischwassertank 90 l, weg von der Außenwand", {"fresh_tank_l": 90}),
]  # fmt: skip


@pytest.mark.parametrize(("region", "line", "expected"), LINES)
def test_what_lines_say_and_do_not(states, region, line, expected):
    states(region, line, expected)
