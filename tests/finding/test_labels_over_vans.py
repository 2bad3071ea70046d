"""Labels that end in a full stop, with sentences behind them that vans head; names of vans that are no signs."""

from tests.finding.two_drifts import two_drifts

HEAD = two_drifts()
CODED = """Marrowfen Vans

# Drift 590-R and Drift 640-A

Model year 2026.

"""


def by_van(facts, field):
    return {(f.model, f.value if f.num is None else round(f.value)) for f in facts if f.field == field}


def test_each_sentence_that_vans_head_has_the_label_before_it(facts_of):
    facts = facts_of(HEAD + "Fuel tank. Drift 19: 71 L. Drift 21: 93 L.\n\nWheelbase. Both types: 3 665 mm.\n")
    assert by_van(facts, "fuel_tank_l") == {("Drift 19", 71), ("Drift 21", 93)}
    assert by_van(facts, "wheelbase_mm") == {("Drift 19", 3665), ("Drift 21", 3665)}


def test_a_unit_with_a_full_stop_ends_the_value_of_the_van_before_the_next(facts_of):
    facts = facts_of(HEAD + "Fresh water tank. Drift 19: 20 gal. Drift 21: 26 gal.\n")
    assert by_van(facts, "fresh_tank_l") == {("Drift 19", 76), ("Drift 21", 98)}


def test_one_paragraph_may_hold_several_such_labels_be_they_known_or_not(facts_of):
    text = "Overall length. Drift 19: 5.94 m. Drift 21: 6.81 m. Zolf. Drift 19: 2.6 m. Drift 21: 2.7 m. Solar. "
    facts = facts_of(HEAD + text + "Drift 19: 220 W. Drift 21: 440 W.\n")
    assert by_van(facts, "length_mm") == {("Drift 19", 5940), ("Drift 21", 6810)}
    assert by_van(facts, "solar_w") == {("Drift 19", 220), ("Drift 21", 440)}


def test_a_thing_before_a_sentence_that_denies_it_states_no_fuel(facts_of):
    facts = facts_of(HEAD + "Solar: 200 W\n\n## Space heating\n\nPropane. Neither type carries propane.\n")
    assert by_van(facts, "heater_fuel") == set()
    assert by_van(facts, "propane_tank_l") == {("Drift 19", 0), ("Drift 21", 0)}


def test_a_line_on_a_thing_that_one_van_cannot_have_is_no_package_over_what_follows(facts_of):
    lines = "- Heated floor. 590-R: not available. 640-A: fitted.\n- Shore power. Both types: 30 A.\n- Solar: 200 W\n"
    lines += "- Fuel tank. 590-R: 71 L. 640-A: 93 L.\n- Fresh water: 100 l\n- GVWR: 3500 kg\n"
    facts = facts_of(CODED + "## Equipment\n\n- Overall length. 590-R: 5 932 mm. 640-A: 6 412 mm.\n" + lines)
    assert {(f.model, f.availability) for f in facts if f.field == "shore_power_a"} == {
        ("Drift 590-R", "standard"), ("Drift 640-A", "standard"),
    }  # fmt: skip
    assert by_van(facts, "length_mm") == {("Drift 590-R", 5932), ("Drift 640-A", 6412)}


def test_the_letter_of_a_van_is_no_sign_of_a_legend(facts_of):
    head = HEAD.replace("Drift 21", "Drift 21 N")
    text = "Rear shades, insulated. Drift 19: option. Drift 21 N: standard.\n\nHeated floor. Drift 19: option. "
    facts = facts_of(head + text + "Drift 21 N: option.\n")
    told = {(f.model, f.availability) for f in facts if f.field == "rear_shades_insulated"}
    assert told == {("Drift 19", "optional"), ("Drift 21 N", "standard")}


def test_the_second_line_of_a_heading_that_is_broken_amid_a_name_is_no_range(vans_of):
    text = "Marrowfen dévoile les Méduse 19 et Méduse\n22 N, année-modèle 2027\n"
    assert not {model for _, model, _ in vans_of(text)} & {"22 N Méduse 19", "22 N Méduse 22 N"}


def test_values_in_turn_amid_what_is_said_of_one_van_are_of_each(facts_of):
    order = "Where two figures are given, the first is the Drift 19 and the second the Drift 21.\n\n"
    text = (
        "Drift 19: an air heater of 4 kW. Drift 21: a hydronic heater of 5 kW. Hot water tank 10 litres / 15 litres.\n"
    )
    assert by_van(facts_of(HEAD + order + text), "water_heater_l") == {("Drift 19", 10), ("Drift 21", 15)}


def test_a_list_that_a_van_ends_is_all_of_it_its_own(facts_of):
    facts = facts_of(HEAD + "Insulated surfaces: walls on the 19; walls, roof, floor and doors on the 21.\n")
    assert by_van(facts, "insulated_surfaces") == {
        ("Drift 19", "walls"), *((("Drift 21", one)) for one in ("walls", "ceiling", "floor", "doors")),
    }  # fmt: skip


def test_grades_of_several_vans_behind_one_label_are_of_none_of_them_alone(facts_of):
    facts = facts_of(HEAD + "Both were graded to EN 1646-1: the Drift 19 is grade 2, the Drift 21 grade 3.\n")
    assert by_van(facts, "en_grade") == set()
