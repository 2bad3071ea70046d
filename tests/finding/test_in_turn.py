"""Values of several vans between strokes, where a document tells in which order they stand."""

import pytest

VALUES = (
    "Length: 5.41 m / 5.99 m\nWidth: 2.05 m\nFresh tank: 70/90 l, inside\nHeater: diesel / propane, 4 kW / 6 kW\n"
    "Sleeps: 2 / 4\nGVWR: 3500 kg / 3900 kg\n\nSolar is 200 watts / 400 watts on them. The Wendle is light.\n"
)
FIRST = {"length_mm": 5410, "fresh_tank_l": 70, "heater_fuel": "diesel", "sleeps": 2, "gvwr_kg": 3500, "solar_w": 200}
LAST = {"length_mm": 5990, "fresh_tank_l": 90, "heater_fuel": "propane", "sleeps": 4, "gvwr_kg": 3900, "solar_w": 400}


def told(facts):
    """Give the values of each field by van."""
    values = {}
    for fact in facts:
        values.setdefault((fact.model, fact.field), set()).add(fact.value)
    return values


@pytest.mark.parametrize(
    ("said", "one", "two"),
    [
        ("Figures for the Wendle come first, those for the Sorrel second.", "Wendle", "Sorrel"),
        ("I give the Sorrel first and the Wendle second, with a slash between.", "Sorrel", "Wendle"),
        ("Where there are two values, the second is the Sorrel's.", "Wendle", "Sorrel"),
        ("The figure behind the slash is the Sorrel's, the one before it the Wendle's.", "Wendle", "Sorrel"),
        ("Values: Sorrel / Wendle.", "Sorrel", "Wendle"),
    ],
)
def test_values_between_strokes_go_to_the_vans_in_the_order_told(facts_of, said, one, two):
    text = (
        f"Hollinbeck Vans, Inc.\n\nModel year 2026\n\nWe make two vans, the Wendle and the Sorrel. {said}\n\n{VALUES}"
    )
    values = told(facts_of(text))
    assert {field: values[one, field] for field in FIRST} == {field: {value} for field, value in FIRST.items()}
    assert {field: values[two, field] for field in LAST} == {field: {value} for field, value in LAST.items()}
    assert values[one, "width_mm"] == values[two, "width_mm"] == {2050}
    assert values[one, "fresh_tank_location"] == values[two, "fresh_tank_location"] == {"interior"}


def test_a_column_of_two_vans_has_the_values_of_both_in_turn(facts_of):
    rows = "".join(f"| {row.replace(': ', ' | ')} |\n" for row in VALUES.split("\n\n")[0].splitlines())
    values = told(
        facts_of(f"# Hollinbeck Vans\n\n2026 camper vans\n\n| Item | Wendle / Sorrel |\n|---|---|\n{rows}", "a.md")
    )
    assert values["Wendle", "length_mm"] == {5410} and values["Sorrel", "length_mm"] == {5990}
    assert values["Wendle", "width_mm"] == values["Sorrel", "width_mm"] == {2050}


def test_one_amount_in_two_units_is_of_all_vans(facts_of):
    said = (
        "We make two vans, the Wendle and the Sorrel. Figures for the Wendle come first, those for the Sorrel second."
    )
    text = f"Hollinbeck Vans, Inc.\n\nModel year 2026\n\n{said}\n\nHeight: 2.74 m / 108 in\n{VALUES}"
    values = told(facts_of(text))
    assert values["Wendle", "height_mm"] == values["Sorrel", "height_mm"]
