"""Running text: what it carries, whom it speaks of, and what a later paragraph goes on about."""

import pytest

SHEET = """
| Model | Overall length | Wheelbase | Berths | {tank} |
|---|---|---|---|---|
| Drift 19 | 5.90 m | 3.45 m | 2 | 80 |
| Drift 21 | 6.40 m | 4.04 m | 3 | 100 |
"""
EN = "Marrowfen Drift 2026\n" + SHEET.format(tank="Fresh water (L)")


def by_van(facts, field):
    return {(fact.model, fact.value) for fact in facts if fact.field == field}


def test_litres_of_water_that_a_van_carries_are_its_fresh_water(facts_of):
    facts = facts_of(
        EN + "\nThe Drift 21 carries one hundred and twenty litres of water and is in no hurry to spend it.\n"
    )
    assert by_van(facts, "fresh_tank_l") == {("Drift 19", 80), ("Drift 21", 100), ("Drift 21", 120)}


def test_litres_of_water_that_a_shower_uses_are_not(facts_of):
    facts = facts_of(
        EN + "\nOn the Drift 21 a shower needs 20 litres of water, and a careful one needs a good deal less.\n"
    )
    assert by_van(facts, "fresh_tank_l") == {("Drift 19", 80), ("Drift 21", 100)}


def test_a_paragraph_that_begins_with_it_goes_on_about_the_van_before(facts_of):
    text = (
        "\nThe Drift 19 is a van for summer. The Drift 21 is our van for winter, and never came home early.\n"
        "\nIt was held at −22 °C in the climate chamber at Orsenby for a Sunday, with full tanks and a cat on board.\n"
    )
    assert by_van(facts_of(EN + text), "rated_min_temp_c") == {("Drift 21", -22)}


def test_what_is_said_of_one_and_of_the_other_is_said_of_neither(facts_of):
    text = (
        "\nThe Drift 19 and the Drift 21 are winter-ready with double-glazed windows: one has a diesel air heater, the "
        "other is plugged in on the quay.\n"
    )
    facts = facts_of(EN + text)
    assert by_van(facts, "heater_fuel") == by_van(facts, "heater_type") == set()
    # What stands before is said of both.
    assert by_van(facts, "window_glazing") == {
        ("Drift 19", "double"),
        ("Drift 21", "double"),
    }


def test_both_of_two_vans_that_one_sentence_names_have_what_it_says(facts_of):
    facts = facts_of(EN + "\nThe Drift 19 and the Drift 21 have a diesel air heater, one tank and no gas.\n")
    assert by_van(facts, "heater_fuel") == {
        ("Drift 19", "diesel"),
        ("Drift 21", "diesel"),
    }


@pytest.mark.parametrize(
    ("region", "line"),
    [("UK", "Heater: Heat pump with fan coils"), ("DE", "Heizung: Wärmepumpe"), ("FR", "Chauffage : pompe à chaleur")],
)
def test_heat_pump_runs_on_electricity(states, region, line):
    states(region, line, {"heater_type": "heat_pump", "heater_fuel": "electric"})


def test_things_with_prices_in_one_paragraph_are_options_of_the_vans_in_brackets(facts_of):
    text = (
        "\nOptions by van. Lithium batteries, 300 Ah (Drift 21): $2,900. All-wheel drive (Drift 19): $7,400. "
        "Solar panels, 450 W in all (Drift 19, Drift 21): $1,200. Bike rack: $480.\n"
    )
    facts = [fact for fact in facts_of(EN + text) if fact.availability == "optional" and not fact.rejected]
    found = {(fact.field, fact.model, fact.value) for fact in facts}
    assert ("battery_ah", "Drift 21", 300) in found and ("battery_ah", "Drift 19", 300) not in found
    assert ("drive", "Drift 19", "all") in found
    assert {("solar_w", "Drift 19", 450), ("solar_w", "Drift 21", 450)} <= found


@pytest.mark.parametrize(
    ("region", "line", "expected"),
    [
        ("US", "Every window behind the cab is double-glazed.", {"window_glazing": "double"}),
        ("UK", "The cab windows are single-glazed.", {}),
        ("DE", "Die Fenster hinter dem Fahrerhaus sind doppelt verglast.", {"window_glazing": "double"}),
        ("FR", "Les baies derrière la cabine sont à double vitrage.", {"window_glazing": "double"}),
        ("FR", "Le vitrage de la cabine est simple.", {}),
    ],
)
def test_windows_behind_the_cab_are_those_of_the_living_space(states, region, line, expected):
    states(region, line, expected)


@pytest.mark.parametrize(
    ("region", "line", "expected"),
    [
        ("US", "A heated floor is not fitted.", {"heated_floor": False}),
        ("UK", "The van is not equipped with a thermal break.", {"thermal_break": False}),
        ("US", "Not included: heated floor, awning.", {"heated_floor": False}),
        ("US", "The awning is not included; a heated floor is.", {"heated_floor": True}),
        ("DE", "Eine Fußbodenheizung ist nicht verbaut.", {"heated_floor": False}),
        ("FR", "Le plancher chauffant n'est pas inclus.", {"heated_floor": False}),
        ("FR", "## Absent de ce fourgon\n\n- Rupture de pont thermique", {"thermal_break": False}),
    ],
)
def test_what_is_said_to_be_not_fitted_is_not_there(states, region, line, expected):
    states(region, line, expected)


def test_how_cold_a_van_may_stand_without_heat_is_no_rating(facts_of):
    head = "Marrowfen Drift 21\nModel year 2026\n\nLength: 6.40 m\nWheelbase: 4.04 m\nHeight: 2.6 m\n\n"
    line = "If you leave the van for more than a night below 28 °F without heat, open the drains and run the pump dry."
    assert not [f for f in facts_of(head + line) if f.field == "rated_min_temp_c"]
    tested = facts_of(head + "We tested it for a night at 5 °F, with the heater on.")
    assert [round(f.value) for f in tested if f.field == "rated_min_temp_c"] == [-15]


def test_what_is_fitted_is_no_part_of_a_total_that_may_be_ordered(facts_of):
    head = "Marrowfen Drift 21\nModel year 2026\n\nLength: 6.40 m\nWheelbase: 4.04 m\nHeight: 2.6 m\n\n"
    facts = facts_of(head + "Solar panel: 130 W; second panel optional, 260 W in total")
    assert {(f.value, f.availability) for f in facts if f.field == "solar_w"} == {(130, "standard"), (260, "optional")}


@pytest.mark.parametrize(
    ("region", "line"),
    [
        ("DE", "Der Drift 21 passt in jede Gasse und bringt trotzdem ein Bett, einen Herd und einen Schrank mit."),
        ("FR", "Le Drift 21 ajoute une salle d'eau et un vrai couchage transversal à ce que l'on connaît."),
    ],
)
def test_a_bed_of_which_running_text_speaks_is_no_number_of_berths(states, region, line):
    states(region, line, {})
