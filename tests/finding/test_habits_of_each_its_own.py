"""What one sentence or legend says of several things or vans, each its own."""

import pytest

from tests.finding.two_drifts import two_drifts

LEGEND = "Inc = included in the price. A figure is the price in pounds. x = not available on this Drift.\n"


def offers(facts, field):
    return {fact.model: fact.availability for fact in facts if fact.field == field}


@pytest.mark.parametrize(
    ("region", "line"),
    [("UK", "It carries 90 litres of fresh water, and a grey tank that you can empty without unpacking the van."),
     ("DE", "Der Wagen hat einen Frischwassertank mit 90 Liter und einen Abwassertank, der sich leicht leeren lässt.")],
)  # fmt: skip
def test_a_thing_with_an_article_of_its_own_has_no_part_in_the_figure_before(printed, region, line):
    rows = printed(region, line)
    assert "gray_tank_l" not in rows
    assert rows["fresh_tank_l"] == 90


def test_insulation_in_the_walls_is_not_that_of_the_tank_named_before(states):
    states("UK", "It has a heated waste tank and 30 mm of insulation in the walls, and that is worth a good deal.",
           {"gray_tank_heat": "unspecified", "insulated_surfaces": "walls", "insulation_thickness_mm": 30})  # fmt: skip


@pytest.mark.parametrize(
    "line",
    ["Shades for the rear doors, insulated, are standard on the Drift 21 and an option on the Drift 19.",
     "Insulated shades for the rear doors are standard on the Drift 21 and $240 on the Drift 19."],
)  # fmt: skip
def test_vans_of_one_sentence_have_their_own_offers_and_prices(facts_of, line):
    facts = facts_of(two_drifts("| Sleeps | 2 | 3 |") + line + "\n", "leaflet.md")
    assert offers(facts, "rear_shades_insulated") == {"Drift 19": "optional", "Drift 21": "standard"}


def test_a_legend_may_say_in_a_sentence_that_figures_are_prices(facts_of):
    rows = ["| Inverter 1500 W | x | 890 |", "| Solar panel 200 W | 420 | Inc |", "| Heated floor | x | 990 |"]
    facts = facts_of(
        two_drifts("| Sleeps | 2 | 3 |")
        + LEGEND
        + "\n| Prices | Drift 19 | Drift 21 |\n|---|---|---|\n"
        + "\n".join(rows),
        "a.md",
    )
    assert offers(facts, "inverter_w") == {"Drift 19": "not_available", "Drift 21": "optional"}
    assert offers(facts, "solar_w") == {"Drift 19": "optional", "Drift 21": "standard"}


FRENCH = [
    ("Quatre personnes y voyagent, deux y dorment.", {"sleeps": 2}),
    ("Couchages / cartes grises : 3 / 4", {"sleeps": 3}),
    ("C'est un fourgon hivernable, prévu pour une température extérieure de -15 °C.",
     {"season_claim": "hivernable", "rated_min_temp_c": -15}),
    ("Le réservoir d'eau propre est dans la cellule, celui des eaux grises sous le plancher. Ce dernier est isolé.",
     {"fresh_tank_location": "interior", "gray_tank_location": "underbody", "gray_tank_insulated": True}),
    ("Il reçoit des baies à double vitrage et une prise 16 A.", {"window_glazing": "double", "shore_power_a": 16}),
]  # fmt: skip


@pytest.mark.parametrize(("line", "expected"), FRENCH)
def test_french_letters_say_who_sleeps_there_for_what_cold_and_which_was_named_last(states, line, expected):
    states("FR", line, expected)


def test_an_r_value_behind_a_thickness_speaks_for_itself(states):
    states("US", "Wall thickness / value: 1.5 in / R-9",
           {"insulation_thickness_mm": 38.1, "insulation_r_si": 1.585, "insulated_surfaces": "walls"})  # fmt: skip


def test_from_end_to_end_is_no_length(states):
    states("UK", "The van has pipework that stays inboard from end to end.", {"water_lines_location": "interior"})


def test_a_line_beside_a_legend_says_that_all_but_its_signs_are_prices(facts_of):
    legend = "Std : in the base price. NA : cannot be had on it.\n\nOtherwise the price of the option in US dollars.\n"
    rows = "| Solar panel 200 W | 420 | Std |\n| Insulated gray tank | NA | 290 |\n| Heated floor | NA | 1,480 |\n"
    table = f"\n| Equipment | Drift 19 | Drift 21 |\n|---|---|---|\n{rows}"
    facts = facts_of(two_drifts("| Sleeps | 2 | 3 |") + legend + table, "a.md")
    assert offers(facts, "solar_w") == {"Drift 19": "optional", "Drift 21": "standard"}
    assert offers(facts, "gray_tank_insulated") == {"Drift 19": "not_available", "Drift 21": "optional"}
