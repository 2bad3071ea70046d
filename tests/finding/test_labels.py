"""Labels and what stands with them: several things in one label, words that answer it, notes that qualify it."""

import pytest

HEAD = "Marrowfen Drift 21\nModel year 2026\n\nOverall length: 6.40 m\nWheelbase: 4.04 m\nSleeps: 2\n"
RANGE = """Marrowfen Drift 2026

| Model | Overall length (m) | Wheelbase (mm) | Berths | {label} |
|---|---|---|---|---|
| Drift 19 | 5.90 | 3450 | 2 | {short} |
| Drift 21 | 6.40 | 4040 | 3 | {long} |
"""


def stated(facts, field):
    return [fact.value for fact in facts if fact.field == field]


def by_van(facts, field):
    return {fact.model: fact.value for fact in facts if fact.field == field}


@pytest.mark.parametrize("value", ["80 / nil / 55 L", "80 / none / 55 L"])
def test_a_tank_said_to_be_absent_in_a_row_of_three_is_zero(facts_of, value):
    facts = facts_of(HEAD + f"Fresh / black / gray: {value}\n")
    assert stated(facts, "fresh_tank_l") == [80]
    assert stated(facts, "black_tank_l") == [0]
    assert stated(facts, "gray_tank_l") == [55]


def test_the_unit_in_brackets_is_no_part_of_the_label(facts_of):
    facts = facts_of(RANGE.format(label="Fresh / grey / black (L)", short="80 / 50 / nil", long="110 / 80 / 40"))
    assert by_van(facts, "fresh_tank_l") == {"Drift 19": 80, "Drift 21": 110}
    assert by_van(facts, "black_tank_l") == {"Drift 19": 0, "Drift 21": 40}


def test_the_heater_that_warms_a_tank_does_not_take_the_tanks_answer(facts_of):
    facts = facts_of(HEAD + "Gray tank warming: warm air off the heater\n")
    assert stated(facts, "gray_tank_heat") == ["warm_air"]
    assert stated(facts, "heater_type") == []


def test_all_four_wheels_of_one_van_are_not_all_four_vans(facts_of):
    facts = facts_of(RANGE.format(label="Driven wheels", short="front", long="all four"))
    assert by_van(facts, "drive") == {"Drift 19": "front", "Drift 21": "all"}


def test_a_note_says_input_of_the_van_it_names_and_output_of_the_others(facts_of):
    note = "\n* Heat output; Drift 21: gas input, upper stage.\n"
    facts = facts_of(RANGE.format(label="Heater (kW)*", short="2.0", long="6.4") + note)
    assert by_van(facts, "heater_output_w") == {"Drift 19": 2000}
    assert by_van(facts, "heater_input_w") == {"Drift 21": 6400}


def test_a_note_that_says_the_figure_again_of_one_van_takes_it_from_the_other(facts_of):
    note = "\n* Drift 19 23 gal; on Drift 21 20 gal.\n"
    facts = facts_of(RANGE.format(label="GVWR (kg)", short="3500", long="4250") + "\n- Gray tank, 23 gal*\n" + note)
    sizes = {(f.model, round(f.value)) for f in facts if f.field == "gray_tank_l" and not f.rejected}
    assert sizes == {("Drift 19", 87), ("Drift 21", 76)}


def test_never_in_the_middle_of_a_sentence_is_no_warning(facts_of):
    facts = facts_of(
        HEAD + "\nWe never regretted the 400 W of solar panels on the roof of this van, and nor will you.\n"
    )
    assert stated(facts, "solar_w") == [400]


def test_a_sentence_that_begins_with_never_states_nothing(facts_of):
    facts = facts_of(
        HEAD + "\nNever cover the 400 W solar panels of the van while the batteries are being charged up.\n"
    )
    assert stated(facts, "solar_w") == []


@pytest.mark.parametrize(
    "line",
    [
        "Solar: 100 W (option: 200 W)",
        "Solar: 100 W; optional: 200 W",
        "Solar: 100 W (200 W optional)",
        "Solar: standard: 100 W, option: 200 W",
    ],
)
def test_what_stands_behind_the_word_option_is_the_option(facts_of, line):
    facts = [fact for fact in facts_of(HEAD + line + "\n") if fact.field == "solar_w"]
    assert {fact.value: fact.availability for fact in facts} == {100: "standard", 200: "optional"}


@pytest.mark.parametrize(("heading", "stated_as"), [("Extras you can order", ["optional"]), ("Equipment", [])])
def test_a_box_left_open_is_an_option_only_where_options_are_listed(facts_of, heading, stated_as):
    listing = f"# {heading}\n\n- [x] solar panel 200 W\n- [ ] inverter 2000 W\n- [x] shore power 30 A\n"
    facts = [fact for fact in facts_of(HEAD + "\n" + listing, "listing.md") if fact.field == "inverter_w"]
    assert [fact.availability for fact in facts] == stated_as


def test_a_figure_that_says_under_which_condition_a_value_holds_is_no_value(facts_of):
    facts = facts_of(HEAD + "Heater: diesel\nFuel burnt at 4 kW: 0.50 l/h\n")
    assert stated(facts, "heater_consumption_l_h") == [0.5] and stated(facts, "heater_rating_w") == []


def test_advice_on_an_unheated_tank_does_not_say_that_this_one_is(facts_of):
    facts = facts_of(HEAD + "Treat an unheated gray tank only with antifreeze made for drinking water.\n")
    assert stated(facts, "gray_tank_heat") == []


def test_the_floors_thickness_is_not_the_walls(facts_of):
    lines = "Insulation\n- Walls: sheep's wool, 50 mm\n- Floor: cork, 12 mm\n"
    strong = [fact for fact in facts_of(HEAD + lines) if not fact.weak]
    assert stated(strong, "insulation_thickness_mm") == [50]


def test_a_van_named_at_the_end_of_a_priced_line_owns_all_of_it(facts_of):
    text = RANGE.format(label="Fresh (L)", short="80", long="110") + "\n## Options\n\n"
    facts = facts_of(text + "- Lithium bank, 300 Ah, in place of the AGM bank, Drift 21: $3,950\n", "options.md")
    assert by_van(facts, "battery_ah") == {"Drift 21": 300}
    assert set(by_van(facts, "battery_chemistry")) == {"Drift 21"}


def test_a_valve_of_gray_water_and_what_fan_and_controls_take(facts_of):
    facts = facts_of(HEAD + "Heater: Diesel forced air\nFan and controls: 34 W\nGray valve: In the heated box\n")
    assert stated(facts, "heater_power_draw_w") == [34]
    assert "heated_compartment" in stated(facts, "dump_valve_protection")
    assert stated(facts, "gray_tank_heat") == []


def test_a_unit_with_a_word_behind_it_in_the_brackets_of_a_label(facts_of):
    facts = facts_of(HEAD + "Furnace (Btu/hr input): 12,000\nIn-floor electric heat: Yes\nWindows: Thermal-pane\n")
    assert stated(facts, "heater_input_w") == [pytest.approx(3517, rel=1e-3)]
    assert stated(facts, "heated_floor")[0] is True
    assert stated(facts, "window_glazing") == ["double"]


ONE_FOR_ALL = """Marrowfen Drift 2026

{remark}

| | Drift 19 | Drift 21 |
|---|---|---|
| Overall length | 5.90 m | 6.40 m |
| Wheelbase | 3.45 m | 4.04 m |
| Shore power | 30 A | |
| Solar | | 200 W |
"""


def test_a_figure_alone_in_its_row_holds_for_all_vans_where_the_document_says_so(facts_of):
    said = facts_of(ONE_FOR_ALL.format(remark="A single figure is true for both."), "table.md")
    assert by_van(said, "shore_power_a") == {"Drift 19": 30, "Drift 21": 30}
    assert by_van(said, "solar_w") == {"Drift 19": 200, "Drift 21": 200}
    silent = facts_of(ONE_FOR_ALL.format(remark="Both are a single design."), "table.md")
    assert by_van(silent, "shore_power_a") == {"Drift 19": 30}


def test_fuel_is_the_engines_among_its_data_and_the_heaters_under_a_heading_for_heat(facts_of):
    facts = facts_of(
        HEAD + "\n## Chassis\n\nFuel: Gasoline\n\n## Heating\n\nFuel: Diesel\nHeat output: 4 kW\n", "van.md"
    )
    found = {f.field: f.value for f in facts}
    assert (found["engine_fuel"], found["heater_fuel"]) == ("gasoline", "diesel")
    assert not any(f.field == "chassis" and "Gasoline" in str(f.value) for f in facts)


def test_a_head_may_name_the_unit_and_what_stands_behind_the_figure(facts_of):
    text = RANGE.format(label="Fresh tank (L / place)", short="80 / inside", long="110 / under the floor")
    facts = facts_of(text)
    assert by_van(facts, "fresh_tank_l") == {"Drift 19": 80, "Drift 21": 110}
    assert by_van(facts, "fresh_tank_location") == {"Drift 19": "interior", "Drift 21": "underbody"}


def test_what_a_gallon_of_propane_weighs_is_not_what_is_carried(facts_of):
    facts = facts_of(HEAD + "\nFill the bottle to 80 percent. Propane weighs 4.2 lb. per gallon and smells.\n")
    assert stated(facts, "propane_mass_kg") == []


@pytest.mark.parametrize(
    ("region", "line", "expected"),
    [
        ("US", "Insulated shades, cab / rear: standard / option",
         {"cab_shades_insulated": True, "rear_shades_insulated": ("option", True)}),
        ("US", "Insulated shades (cab / rear): option / no",
         {"cab_shades_insulated": ("option", True), "rear_shades_insulated": False}),
        ("DE", "Isolierte Verdunkelung, Fahrerhaus / Heck: Serie / Option",
         {"cab_shades_insulated": True, "rear_shades_insulated": ("option", True)}),
        ("FR", "Volets isolants cabine / arrière : de série / en option",
         {"cab_shades_insulated": True, "rear_shades_insulated": ("option", True)}),
    ],
)  # fmt: skip
def test_two_places_in_a_label_have_an_answer_each(states, region, line, expected):
    states(region, line, expected)
