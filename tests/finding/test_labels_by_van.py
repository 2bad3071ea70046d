"""Labels that name the vans of their values, one of them or several between slashes."""

import pytest

from tests.finding.two_drifts import two_drifts

HEAD = two_drifts()


def by_van(facts, field):
    return {(f.model, f.value if f.num is None else round(f.value)) for f in facts if f.field == field}


@pytest.mark.parametrize(
    "line",
    [
        "Overall length, Drift 19 / Drift 21: 19 ft 6 in / 22 ft 8 in",
        "Overall length (Drift 19 / Drift 21): 19 ft 6 in / 22 ft 8 in",
        "Drift 19 / Drift 21, overall length: 19 ft 6 in / 22 ft 8 in",
    ],
)
def test_values_between_slashes_belong_to_the_vans_between_slashes_of_their_label(facts_of, line):
    assert by_van(facts_of(HEAD + line + "\n"), "length_mm") == {("Drift 19", 5944), ("Drift 21", 6909)}


def test_the_unit_behind_the_last_value_is_that_of_all(facts_of):
    facts = facts_of(HEAD + "Fresh tank, Drift 19 / Drift 21: 70 / 110 L\n\nBerths, Drift 19 / Drift 21: 2 / 4\n")
    assert by_van(facts, "fresh_tank_l") == {("Drift 19", 70), ("Drift 21", 110)}
    assert by_van(facts, "sleeps") == {("Drift 19", 2), ("Drift 21", 4)}


def test_words_between_slashes_belong_to_the_vans_of_their_label_too(facts_of):
    facts = facts_of(HEAD + "Driven wheels, Drift 19 / Drift 21: front / rear\n")
    assert by_van(facts, "drive") == {("Drift 19", "front"), ("Drift 21", "rear")}


def test_one_amount_in_two_units_is_of_both_vans(facts_of):
    facts = facts_of(HEAD + "Gray tank, Drift 19 / Drift 21: 20 gal / 76 L\n")
    assert by_van(facts, "gray_tank_l") == {("Drift 19", 76), ("Drift 21", 76)}


def test_a_base_vehicle_is_that_of_the_van_named_behind_its_label(facts_of):
    facts = facts_of(HEAD + "Chassis, Drift 19: Garrowby Carrier 250\n\nChassis, Drift 21: Garrowby Carrier 350 Long\n")
    assert by_van(facts, "chassis") == {
        ("Drift 19", "Garrowby Carrier 250"),
        ("Drift 21", "Garrowby Carrier 350 Long"),
    }


def test_the_words_of_such_a_statement_are_the_printed_ones(facts_of):
    facts = facts_of(HEAD + "Wheelbase, Drift 19 / Drift 21: 144 in / 170 in\n\nHeated floor, Drift 21: optional\n")
    words = {f.printed for f in facts if f.field == "wheelbase_mm"}
    assert words == {"Wheelbase, Drift 19 / Drift 21: 144 in", "Wheelbase, Drift 19 / Drift 21: 170 in"}
    assert "Heated floor, Drift 21: optional" in {f.printed for f in facts if f.field == "heated_floor"}


@pytest.mark.parametrize("label", ["Starting battery", "Start battery"])
def test_the_battery_that_starts_the_engine_is_not_that_of_the_house(facts_of, label):
    assert by_van(facts_of(HEAD + f"{label}: 95 Ah flooded\n"), "battery_ah") == set()
