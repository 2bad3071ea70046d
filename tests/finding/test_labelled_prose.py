"""Paragraphs whose sentences open with labels or names of vans; what is said of vans in the order of their names."""

import pytest

from tests.finding.test_prose import EN, by_van

GALLON = 3.785411784  # litres; NIST SP 811 (2008), Appendix B.8


def amounts(facts, field):
    return {(fact.model, round(fact.value)) for fact in facts if fact.field == field and not fact.rejected}


def test_each_label_in_a_paragraph_has_its_own_value(facts_of):
    facts = facts_of(
        EN + "\nGray: 60 litres (Drift 19), 80 litres (Drift 21). Black: none (Drift 19), 45 litres (Drift 21). "
        "Cab blinds come as a set. Drain valves: exposed on the Drift 19, in a heated box on the Drift 21. Heated "
        "floor: Drift 21 only.\n"
    )
    assert amounts(facts, "gray_tank_l") == {("Drift 19", 60), ("Drift 21", 80)}
    assert amounts(facts, "black_tank_l") == {("Drift 19", 0), ("Drift 21", 45)}
    valves = {(f.model, f.value) for f in facts if f.field == "dump_valve_protection" and not f.rejected}
    assert valves == {("Drift 19", "exposed"), ("Drift 21", "heated_compartment")}
    assert by_van(facts, "heated_floor") == {("Drift 21", True)}


def test_a_van_named_before_a_colon_has_all_up_to_the_next(facts_of):
    facts = facts_of(
        EN + "\nDrift 19: hemp mats, 30 mm, walls and roof. Single-pane windows. Drift 21: sheep's wool, 60 mm, walls, "
        "roof and floor. Diesel air heater of 4 kW. Solar panels of 210 W on both.\n"
    )
    assert amounts(facts, "insulation_thickness_mm") == {("Drift 19", 30), ("Drift 21", 60)}
    assert by_van(facts, "window_glazing") == {("Drift 19", "single")}
    assert by_van(facts, "heater_fuel") == {("Drift 21", "diesel")}
    assert amounts(facts, "solar_w") == {("Drift 19", 210), ("Drift 21", 210)}


@pytest.mark.parametrize("joint", ["respectively", "in that order"])
def test_figures_in_the_order_of_the_vans_go_to_each(facts_of, joint):
    facts = facts_of(EN + f"\nThe Drift 19 and the Drift 21 have house batteries of 100 and 300 Ah {joint}.\n")
    assert amounts(facts, "battery_ah") == {("Drift 19", 100), ("Drift 21", 300)}


def test_as_many_figures_as_vans_go_to_each_without_a_word_for_it(facts_of):
    facts = facts_of(
        EN + "\nThe Drift 19 and the Drift 21 come with 150 and 400 W of solar, and have a diesel heater.\n"
    )
    assert amounts(facts, "solar_w") == {("Drift 19", 150), ("Drift 21", 400)}
    assert by_van(facts, "heater_fuel") == {("Drift 19", "diesel"), ("Drift 21", "diesel")}


def test_figures_in_an_order_of_vans_that_nobody_named_are_nobodys(facts_of):
    facts = facts_of(EN + "\nThe house batteries hold 100 and 300 Ah respectively, which is a good deal of energy.\n")
    assert amounts(facts, "battery_ah") == set()


def test_what_one_van_comes_with_can_be_ordered_for_the_other(facts_of):
    facts = facts_of(
        EN + "\nInsulated cab blinds come with the Drift 21 and can be ordered for the Drift 19, and both look well.\n"
    )
    found = {(f.model, f.availability) for f in facts if f.field == "cab_shades_insulated" and not f.rejected}
    assert found == {("Drift 19", "optional"), ("Drift 21", "standard")}


def test_both_tanks_are_not_both_vans(facts_of):
    facts = facts_of(
        EN + "\nThe Drift 21 has a fresh tank and a gray tank, with a 12 V pad on both. It is a fine van.\n"
    )
    assert {f.model for f in facts if f.field in ("gray_tank_heat", "fresh_tank_heat")} <= {"Drift 21"}


def test_a_statement_before_a_colon_is_no_label(facts_of):
    facts = facts_of(EN + "\nBoth vans are dry inside. There is no black tank: the toilet is a 17 litre cassette.\n")
    assert amounts(facts, "black_tank_l") == {("Drift 19", 0), ("Drift 21", 0)}
    assert amounts(facts, "cassette_l") == {("Drift 19", 17), ("Drift 21", 17)}


def test_what_is_standard_on_one_says_nothing_of_other_sentences(facts_of):
    facts = facts_of(
        EN + "\nThe Drift 19 has 25 mm of cork in the walls. Insulated cab blinds come with the Drift 21 and can be "
        "ordered for the Drift 19.\n"
    )
    assert {f.availability for f in facts if f.field == "insulation_thickness_mm"} == {"unstated"}
