"""What a cell or line says in one go: tanks in two units each, a kind with its option, two tanks with figures."""

import pytest

GALLON = 3.785411784  # NIST SP 811 (2008), Appendix B
BTU_H = 0.29307107  # NIST SP 811 (2008), Appendix B, BTU (IT) an hour
THREE_TANKS = {"fresh_tank_l": 36 * GALLON, "gray_tank_l": 29 * GALLON, "black_tank_l": 8 * GALLON}
TWO_TANKS = {"fresh_tank_l": 120, "gray_tank_l": 100, "fresh_tank_insulated": True, "gray_tank_insulated": True}


@pytest.mark.parametrize(
    ("region", "line", "expected"),
    [
        ("US", "Tanks: fresh / gray / black: 36 gal / 136 L / 29 gal / 110 L / 8 gal / 30.3 L", THREE_TANKS),
        ("US", "Tanks (gal) fresh / gray / black: 36 / 29 / 8", THREE_TANKS),
        ("US", "Tanks (gal) fresh / gray / black: 36 / 29 / none", {**THREE_TANKS, "black_tank_l": 0}),
        ("US", "Tanks (gal) fresh / gray / black: 36 / 29 / –",
         {"fresh_tank_l": 36 * GALLON, "gray_tank_l": 29 * GALLON}),
        ("QC", "Réservoirs : eau propre / eaux usées : 36 gal / 136 L / 29 gal / 110 L",
         {"fresh_tank_l": 36 * GALLON, "gray_tank_l": 29 * GALLON}),
        ("QC", "Chauffage, Puissance utile / débit calorifique : 17 000 BTU/h (5,0 kW) / 21 500 BTU/h (6,3 kW)",
         {"heater_output_w": 17000 * BTU_H, "heater_input_w": 21500 * BTU_H}),
    ],
)  # fmt: skip
def test_figures_each_go_with_the_parts_of_a_label_in_order(states, region, line, expected):
    states(region, line, expected)


@pytest.mark.parametrize(
    ("region", "line", "expected"),
    [
        ("DE", "Aufbaubatterie: Gel 200 Ah, 12 V gegen Aufpreis",
         {"battery_ah": ("option", 200), "battery_chemistry": ("option", "gel"), "battery_wh": ("option", 2400)}),
        ("DE", "Aufbaubatterie: 200 Ah, AGM (Option)",
         {"battery_ah": ("option", 200), "battery_chemistry": ("option", "agm")}),
        ("DE", "Aufbaubatterie: Gel, 2 x 150 Ah (Option)",
         {"battery_ah": ("option", 300.0), "battery_chemistry": ("option", "gel")}),
        ("UK", "Leisure battery: AGM, 90 Ah, 150 Ah (option)",
         {"battery_ah": ("option", 150.0), "battery_chemistry": "agm"}),
        ("US", "House battery: 100 Ah AGM, lithium (option)",
         {"battery_ah": 100, "battery_chemistry": ("option", "lithium")}),
        ("US", "House battery: 200 Ah lithium, heated (option)",
         {"battery_ah": 200, "battery_chemistry": "lithium", "battery_heated": ("option", True)}),
        ("US", "House battery: 150 Ah gel (two 150 Ah flooded lead-acid, 12 V optional)",
         {"battery_ah": ("option", 300), "battery_chemistry": ("option", "flooded"), "battery_wh": ("option", 3600)}),
    ],
)  # fmt: skip
def test_an_option_behind_what_only_describes_a_thing_is_all_of_it(states, region, line, expected):
    states(region, line, expected)


PLAIN = "Marrowfen Drift 21\n\nOverall length: 6.36 m\n\nGray tank: 80 l\n\nSleeps: 2\n"


def test_what_stands_in_place_of_another_heater_is_no_input(facts_of):
    text = f"{PLAIN}\nOptions\n\n- Bike rack\n- Heater, 7,000 BTU in place of the standard one\n"
    facts = [fact for fact in facts_of(text, "drift.md") if fact.field.startswith("heater_")]
    assert {(fact.field, fact.availability) for fact in facts} == {("heater_rating_w", "optional")}


def test_an_input_closes_its_part(states):
    figures = {"heater_input_w": 16000 * BTU_H, "heater_output_w": 12800 * BTU_H}
    states("US", "Furnace: 16,000 BTU/h in, 12,800 BTU/h out", {"heater_type": "forced_air", **figures})


def test_one_tank_is_insulated_and_another_heated(states):
    line = "Der Drift hat einen isolierten Trinkwassertank und beheizt den Abwassertank über einen Warmluftkanal."
    states("DE", line, {"fresh_tank_insulated": True, "gray_tank_heat": "warm_air"})


@pytest.mark.parametrize(
    ("region", "line"),
    [
        ("DE", "- Frischwassertank mit 120 Litern und Abwassertank mit 100 Litern, beide isoliert"),
        ("UK", "- Fresh tank with 120 litres and waste tank with 100 litres, both insulated"),
        ("FR", "- Réservoir d'eau propre avec 120 l et d'eaux usées avec 100 l, tous deux isolés"),
    ],
)
def test_both_of_two_tanks_that_have_a_figure_each(states, region, line):
    states(region, line, TWO_TANKS)


ASKED = """Marrowfen
Drift: the 2026 model year
Drift 21

Q: How big is the Drift 21?

A: It is built on a long van and has a length of 6.36 m. It sleeps 2.

Q: How much water does the Drift 21 carry?

A: It has a fresh tank of 90 l and a gray tank of 70 l.

Marrowfen takes orders until spring.
"""


def test_the_letter_of_a_question_is_no_maker(vans_of):
    assert vans_of(ASKED, "answers.txt") == {("Marrowfen", "Drift 21", 2026)}


@pytest.mark.parametrize(
    ("region", "line", "watts"),
    [
        ("US", "- Combination heater (air and hot water), 7,000 BTU/h", 7000 * BTU_H),
        ("DE", "- Kombiheizung für Luft und Warmwasser, 4 kW", 4000),
        ("FR", "- Chauffage combiné air et eau chaude, 4 kW", 4000),
    ],
)
def test_the_hot_water_of_a_combined_heater_does_not_take_its_power(states, region, line, watts):
    states(region, line, {"heater_type": "combined", "heater_rating_w": watts})


def test_what_a_heater_gives_off_is_its_output(states):
    states("DE", "Die Luftheizung gibt Ruhe: eine Dieselheizung, die 2,0 kW an die Luft abgibt.",
           {"heater_fuel": "diesel", "heater_output_w": 2000, "heater_type": "forced_air"})  # fmt: skip


def test_a_part_of_its_own_under_the_label_of_another_thing_is_there(printed):
    lines = {"water_lines_location": "interior"}
    assert printed("US", "Plumbing: lines inside the cabin; winterizing bypass") == lines | {"winterizing_bypass": True}
    denied = printed("US", "Plumbing: lines inside the cabin; no winterizing bypass")
    assert denied.get("winterizing_bypass") is not True


@pytest.mark.parametrize("line", ["Trinkwassertank in Ltr.: 84", "Frischwasser, Ltr.: 84", "Frischwasser Inh.: 84 l"])
def test_the_point_of_an_abbreviation_at_the_end_of_a_label_ends_no_sentence(states, line):
    states("DE", line, {"fresh_tank_l": 84})


def test_each_part_of_a_cell_may_say_what_it_is(settled_of):
    rows = settled_of(
        "Marrowfen Vans\nMarrowfen Drift 21\nModel year 2026\n\nOverall length: 21 ft\nGVWR: 9,350 lb\n"
        "Wheelbase: 159 in\nWidth: 81 in\nSolar: 400 W: Std. 520 W: No\n"
        "House batteries: 400 Ah lithium, 12.8 V (5,120 Wh); 600 Ah (7,680 Wh): Opt\n"
    )
    told = {(field, row.num): row.availability for (_, field, _), row in rows.items()}
    assert told["solar_w", 400] == told["battery_ah", 400] == told["battery_wh", 5120] == "standard"
    assert told["battery_ah", 600] == told["battery_wh", 7680] == "optional"
    assert told.get(("solar_w", 520)) != "standard"
