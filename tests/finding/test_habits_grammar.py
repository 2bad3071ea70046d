"""How words and figures hang together in a line: lists, denials, figures in words, what is only not offered."""

import pytest

READ = [
    ("US", "Gray tank: under the floor, not insulated",
     {"gray_tank_location": "underbody", "gray_tank_insulated": False}),
    ("UK", "Waste tank: not insulated", {"gray_tank_insulated": False}),
    ("FR", "Réservoir d’eaux usées : sous le plancher, non isolé",
     {"gray_tank_location": "underbody", "gray_tank_insulated": False}),
    ("DE", "Abwassertank: unterflur, nicht isoliert",
     {"gray_tank_location": "underbody", "gray_tank_insulated": False}),
    ("US", "Wall insulation: two and a half inches", {"insulation_thickness_mm": 63.5, "insulated_surfaces": "walls"}),
    ("US", "It is twenty feet and four inches from bumper to bumper.", {"length_mm": 6197.6}),
    ("US", "Heat pads on the gray and black tanks, heat tape on water lines, and the dump valve in an insulated box.",
     {"gray_tank_heat": "electric_pad", "black_tank_heat": "electric_pad", "water_lines_heated": True,
      "dump_valve_protection": "insulated"}),
    ("US", "The tour takes an hour and the coffee is free of charge. Underfloor heating: no.", {"heated_floor": False}),
    ("US", "Heated floor: dealer-installed option", {"heated_floor": ("option", True)}),
    ("UK", "External width: 2.05 m (2.49 m over mirrors)", {"width_mm": 2050}),
    ("US", "Insulated rear-door covers: included", {"rear_shades_insulated": True}),
    ("DE", "Prüfung nach EN 1646\u20101: Klasse 2", {"en_grade": 2}),
]  # fmt: skip


@pytest.mark.parametrize("region, line, expected", READ, ids=[line[:50] for _, line, _ in READ])
def test_a_line_states_this_and_no_more(states, region, line, expected):
    states(region, line, expected)


def test_what_is_not_offered_says_nothing_against_what_the_van_has(facts_of):
    text = (
        "Marrowfen Vans\nDrift 21\nModel year 2026\n\nOverall length: 20 ft\nSleeps: 2\nGVWR: 9,350 lb\n\n"
        "Gasoline air heater, 2 kW: standard\nGasoline hydronic heater, 5 kW: not available\n"
    )
    fuels = [(f.value, f.availability) for f in facts_of(text) if f.field == "heater_fuel" and not f.rejected]
    assert set(fuels) == {("gasoline", "standard")}


def test_a_van_called_a_is_no_ampere(facts_of):
    rows = [("Length (mm)", "5380", "5980"), ("GVM (kg)", "3500", "4000"), ("Fresh water (L)", "80", "130")]
    table = "\n".join(f"| {label} | {a} | {b} |" for label, a, b in rows)
    facts = facts_of(f"# Drift\n\n| | A | B |\n|---|---|---|\n{table}\n", "drift.md")
    assert {f.model: f.value for f in facts if f.field == "length_mm"} == {"Drift A": 5380, "Drift B": 5980}


def test_a_short_heading_says_whose_capacity_place_and_heat_the_rows_give(facts_of):
    rows = [("Gallons", "16"), ("Where", "Indoors, under the bench"), ("Heat", "None")]
    table = "\n".join(f"| {label} | {value} |" for label, value in rows)
    head = "# Marrowfen Drift 21\n\nModel year 2026\n\nOverall length: 20 ft\n\nGVWR: 9,350 lb\n\nSleeps: 2\n"
    facts = facts_of(f"{head}\n## Fresh\n\n| | Drift 21 |\n|---|---|\n{table}\n", "drift.md")
    found = {f.field: f.value for f in facts if not f.rejected}
    assert found["fresh_tank_l"] == pytest.approx(60.6, rel=0.01)
    assert (found["fresh_tank_location"], found["fresh_tank_heat"]) == ("interior", "none")


def test_the_name_of_the_base_vehicle_stands_behind_on(states):
    states("US", "The Marrowfen Drift 21 rides on a 159-inch wheelbase.", {"wheelbase_mm": 4038.6})
    states("US", "It is based on the Ostrand Hauler 250.", {"chassis": "Ostrand Hauler 250"})


@pytest.mark.parametrize(
    "line",
    [
        "- Insulated screens for the cab; insulated curtains for the rear doors",
        "- Insulated curtains for the rear doors; insulated screens for the cab",
    ],
)
def test_words_that_tell_of_one_thing_are_taken_from_its_own_part_of_a_list(states, line):
    states("UK", line, {"cab_shades_insulated": True, "rear_shades_insulated": True})
