"""Answers and sentences in which each of two vans has what is said beside it, of what was asked or named before."""

from tests.finding.two_drifts import two_drifts

ROWS = ("| Overall length | 5.95 m | 6.40 m |", "| Wheelbase | 3.60 m | 4.04 m |", "| Fresh water | 90 l | 110 l |")
HEAD = "# Marrowfen Vans\n\n" + two_drifts(*ROWS).split("\n", 1)[1]


def told(facts, field):
    return {(f.model, round(f.value) if isinstance(f.value, float) else f.value, f.availability) for f in facts
            if f.field == field}  # fmt: skip


def ask(question, answer):
    return f"{HEAD}## {question}\n\n{answer}\n\n## And so on\n\nThat is all there is to say about it.\n"


def test_figures_beside_vans_answer_for_each_of_them(facts_of):
    facts = facts_of(ask("How much hot water is there?", "4 gallons in the 19, 6 gallons in the 21."), "x.md")
    assert told(facts, "water_heater_l") == {("Drift 19", 15, "standard"), ("Drift 21", 23, "standard")}
    facts = facts_of(ask("How many of us can sleep?", "Two in the 19. The beds are made up."), "x.md")
    assert told(facts, "sleeps") == {("Drift 19", 2, "standard")}


def test_the_name_of_a_base_vehicle_is_no_figure_for_each_van(facts_of):
    question = "What are they built on?"
    facts = facts_of(ask(question, "The Drift 19 on the Fenmoor Carrier 30, the Drift 21 on its sister."), "x.md")
    assert not any("Drift" in value for _, value, _ in told(facts, "chassis"))


def test_a_pronoun_that_says_how_it_is_offered_means_what_was_asked(facts_of):
    facts = facts_of(ask("Can I have a heated floor?", "It is standard in the 21 and optional in the 19."), "x.md")
    assert told(facts, "heated_floor") == {("Drift 19", True, "optional"), ("Drift 21", True, "standard")}


def test_a_pronoun_behind_the_van_means_what_was_asked_too(facts_of):
    answer = "On the 19 it is exposed, so it may. On the 21 it sits in a heated compartment."
    facts = facts_of(ask("Is the dump valve going to freeze?", answer), "x.md")
    assert {(m, v) for m, v, _ in told(facts, "dump_valve_protection")} == {
        ("Drift 19", "exposed"),
        ("Drift 21", "heated_compartment"),
    }


def test_a_sentence_that_only_says_how_it_is_offered_goes_on_with_the_one_before(facts_of):
    facts = facts_of(HEAD + "A 2,000-watt inverter is standard in the 21. It is optional in the 19.\n", "x.md")
    assert told(facts, "inverter_w") == {("Drift 19", 2000, "optional"), ("Drift 21", 2000, "standard")}


def test_what_is_not_offered_of_one_thing_says_nothing_of_others_in_the_paragraph(facts_of):
    text = (
        "The heater of the 19 has 3.2 kW of output, that of the 21 has 6 kW. It burns diesel in both of the vans. "
        "Underfloor heating is an option in the 21; we do not offer it in the 19.\n"
    )
    facts = facts_of(HEAD + text, "x.md")
    assert told(facts, "heater_output_w") == {("Drift 19", 3200, "unstated"), ("Drift 21", 6000, "unstated")}
    assert told(facts, "heated_floor") == {("Drift 19", True, "not_available"), ("Drift 21", True, "optional")}


def test_offers_and_vans_by_turns_behind_a_label_are_each_vans_own(facts_of):
    facts = facts_of(HEAD + "- Heated floor: standard in the 21 and optional in the 19\n", "x.md")
    assert told(facts, "heated_floor") == {("Drift 19", True, "optional"), ("Drift 21", True, "standard")}


def test_the_figure_of_a_name_is_not_part_of_the_figure_behind_it(facts_of):
    facts = facts_of(HEAD + "We rate the Drift 19 to 15 °F and the Drift 21 to -10 °F.\n", "x.md")
    assert {(m, v) for m, v, _ in told(facts, "rated_min_temp_c")} == {("Drift 19", -9), ("Drift 21", -23)}


def test_an_article_before_the_van_that_heads_a_sentence_makes_it_no_strangers(facts_of):
    text = "The 19: 25 mm of foam sheet in the walls and roof. The 21: 50 mm of hemp in the walls, roof and floor.\n"
    facts = facts_of(HEAD + text, "x.md")
    assert {(m, v) for m, v, _ in told(facts, "insulation_thickness_mm")} == {("Drift 19", 25), ("Drift 21", 50)}


def test_in_and_out_of_a_heater(facts_of):
    facts = facts_of(HEAD + "The furnace of the 21 takes in 20,000 BTU/h and puts out 16,000 BTU/h.\n", "x.md")
    assert {v for _, v, _ in told(facts, "heater_input_w")} == {5861}
    assert {v for _, v, _ in told(facts, "heater_output_w")} == {4689}


def test_a_leak_test_and_a_members_night_are_no_ratings(facts_of):
    text = (
        "Each van is held at +5 °C for four hours with 2 bar in the water lines before it leaves us.\n\n"
        "One of our members spent a night at −9 °C in hers and wore everything.\n"
    )
    assert not told(facts_of(HEAD + text, "x.md"), "rated_min_temp_c")


def test_a_base_vehicle_stands_before_fuel_and_driven_wheels_behind_the_name_of_its_van(facts_of):
    text = (
        "Drift 19: Fenmoor Carrier 30, gasoline engine, rear-wheel drive.\n\n"
        "Drift 21: Fenmoor Carrier 35 XL, diesel, all-wheel drive. The diesel heater is warm.\n"
    )
    facts = facts_of(HEAD + text, "x.md")
    assert {(m, v) for m, v, _ in told(facts, "chassis")} == {
        ("Drift 19", "Fenmoor Carrier 30"),
        ("Drift 21", "Fenmoor Carrier 35 XL"),
    }
    assert {(m, v) for m, v, _ in told(facts, "engine_fuel")} == {("Drift 19", "gasoline"), ("Drift 21", "diesel")}


def test_a_name_before_fuel_and_driven_wheels_is_no_base_where_no_van_of_ours_heads_it(facts_of):
    facts = facts_of(HEAD + "We also tried a few others.\n\n- Osterby Wren 6, diesel, front-wheel drive\n", "x.md")
    assert not told(facts, "chassis")


def test_two_kinds_of_a_thing_in_a_sentence_about_no_van_are_left_out(facts_of):
    facts = facts_of(HEAD + "The numbers M10 with front-wheel drive, M30 with all-wheel drive. They go well.\n", "x.md")
    assert not told(facts, "drive")


def test_the_head_of_a_list_with_dots_may_come_again_for_the_next_van(facts_of):
    text = (
        "Pay a little more, Drift 19: second solar panel (380 W in total) · double-pane cabin windows · bike rack "
        "Pay a little more, Drift 21: third solar panel (570 W in total) · insulated shades for the rear doors · step\n"
    )
    facts = facts_of(HEAD + text, "x.md")
    assert told(facts, "solar_w") == {("Drift 19", 380, "optional"), ("Drift 21", 570, "optional")}
    assert told(facts, "rear_shades_insulated") == {("Drift 21", True, "optional")}
    assert told(facts, "window_glazing") == {("Drift 19", "double", "optional")}


def test_a_van_that_cooks_is_no_number_of_cooks(facts_of):
    text = "The 21 has no gas on board. The 19 cooks on gas and carries one 6 kg cylinder.\n"
    facts = facts_of(HEAD + text, "x.md")
    assert {(m, v) for m, v, _ in told(facts, "propane_mass_kg")} == {("Drift 19", 6)}


def test_advice_to_have_the_gas_looked_at_names_no_fuel(facts_of):
    text = "Have the gas and the heater looked at every year by those who built the van, and keep the vents open.\n"
    assert not told(facts_of(HEAD + text, "x.md"), "heater_fuel")


def test_what_is_said_of_one_van_and_not_of_the_other_is_not_the_others(facts_of):
    facts = facts_of(HEAD + 'We advertise the 21, not the 19, as "four-season" in all that we print.\n', "x.md")
    assert {m for m, _, _ in told(facts, "season_claim")} == {"Drift 21"}


def test_heating_before_the_tank_in_a_label_is_the_tanks(facts_of):
    rows = ("| Heating, gray tank | not heated | 12 V electric pad |", "| Heater | propane furnace | propane furnace |")
    facts = facts_of(two_drifts(*ROWS, *rows))
    assert {v for _, v, _ in told(facts, "heater_fuel")} == {"propane"}
    assert {(m, v) for m, v, _ in told(facts, "gray_tank_heat")} == {("Drift 19", "none"), ("Drift 21", "electric_pad")}


def test_lines_that_are_part_inside_and_part_below_are_in_both_places(facts_of):
    facts = facts_of(HEAD + "Water lines: part inside the body and part beneath it, insulated throughout.\n", "x.md")
    assert {v for _, v, _ in told(facts, "water_lines_location")} == {"mixed"}
