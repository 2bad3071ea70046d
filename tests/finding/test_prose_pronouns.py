"""Sentences that go on about what the one before begins with, and names that only describe the thing behind them."""

import pytest

LINES = [
    ("US", "The gray tank is slung under the floor. It holds 21 gallons and is warmed by a 12 V pad.",
     {"gray_tank_location": "underbody", "gray_tank_l": 79.49, "gray_tank_heat": "electric_pad"}),
    ("US", "A diesel boiler sends glycol to three fan coils. It makes 6 kW and uses 0.2 gallons an hour and 58 watts.",
     {"heater_type": "hydronic", "heater_fuel": "diesel", "heater_rating_w": 6000, "heater_consumption_l_h": 0.757,
      "heater_power_draw_w": 58}),
    ("UK", "The leisure battery is lithium. It stores 230 Ah, and it warms itself before it takes a charge.",
     {"battery_chemistry": "lithium", "battery_ah": 230, "battery_heated": True}),
    ("DE", "Der Abwassertank hängt unter dem Boden. Er fasst 85 Liter und ist beheizt.",
     {"gray_tank_location": "underbody", "gray_tank_l": 85, "gray_tank_heat": "unspecified"}),
    ("FR", "Le réservoir d'eaux usées est sous le plancher. Il contient 85 litres et il est chauffé.",
     {"gray_tank_location": "underbody", "gray_tank_l": 85, "gray_tank_heat": "unspecified"}),
    ("US", "The toilet has a cassette. It holds 4.8 gallons; empty it when the lamp comes on, at about 4 gallons.",
     {"toilet": "cassette", "cassette_l": 18.17}),
    ("US", "An AGM battery is fitted. Instead of it the van may have a lithium battery (option); it has its own "
     "heater, which draws up to 80 W.",
     {"battery_chemistry": ("option", "lithium"), "battery_heated": ("option", True)}),
    ("US", "The refrigerator stands by the door. It holds 21 gallons and a good deal of cheese, which is plenty.", {}),
    ("US", "There is a step by the gray tank. It holds 300 lb, and it is heated in winter by nothing at all.", {}),
    ("US", "The Drift 21 does not heat the gray tank. It leaves its dump valve exposed below the frame.",
     {"gray_tank_heat": "none", "dump_valve_protection": "exposed"}),
    ("DE", "Der Drift 21 beheizt den Grauwassertank nicht. Er hat ein isoliertes Ablassventil.",
     {"gray_tank_heat": "none", "dump_valve_protection": "insulated"}),
    ("US", "The Drift 21 has walls with 1 in. of glass wool. It meets EN 1646-1 grade 2.",
     {"insulated_surfaces": "walls", "insulation_thickness_mm": 25.4, "insulation_material": "fiberglass",
      "en_grade": 2}),
    ("US", "6-gallon propane water heater", {"water_heater_l": 22.71}),
]  # fmt: skip


@pytest.mark.parametrize(("region", "line", "expected"), LINES)
def test_it_means_what_the_sentence_before_begins_with(states, region, line, expected):
    states(region, line, expected)


def test_a_chassis_that_ends_like_litres_is_a_name(states):
    states("AU", "Base van: Fenmoor Carrier 35 L", {"chassis": "Fenmoor Carrier 35 L"})


SISTERS = (
    "# Marrowfen Drift\n\n{said}\n\n| | Drift 21 | Drift 21 Snow |\n|---|---|---|\n"
    "| Overall length | 6.36 m | 6.36 m |\n| GVM | 3500 kg | 3500 kg |\n"
    "| Fresh water tank | 90 L | 90 L |\n| Sleeps | 2 | 2 |\n"
)


@pytest.mark.parametrize(
    "said",
    [
        "The Drift 21 Snow builds on the Drift 21 and costs more; it is tested down to -18 °C.",
        "The Drift 21 Snow is made for what the Drift 21 was never meant for; it is tested down to -18 °C.",
    ],
)
def test_a_van_that_is_only_compared_with_is_not_the_one_that_the_sentence_goes_on_about(facts_of, said):
    facts = facts_of(SISTERS.format(said=said), "drift.md")
    assert {fact.model for fact in facts if fact.field == "rated_min_temp_c"} == {"Drift 21 Snow"}


def test_two_vans_joined_in_a_list_are_both_gone_on_about(facts_of):
    said = "The Drift 21 and the Drift 21 Snow are built alike; they are tested down to -18 °C."
    facts = facts_of(SISTERS.format(said=said), "drift.md")
    assert {fact.model for fact in facts if fact.field == "rated_min_temp_c"} == {"Drift 21", "Drift 21 Snow"}


def test_the_latter_of_several_vans_is_the_one_named_last(facts_of):
    said = "We build the Drift 21 and the Drift 21 Snow, our pride. The latter has been tested at -18 °C."
    facts = facts_of(SISTERS.format(said=said), "drift.md")
    assert {fact.model for fact in facts if fact.field == "rated_min_temp_c"} == {"Drift 21 Snow"}


def test_prices_at_the_end_of_a_page_say_nothing_of_the_vans_in_the_text_above(facts_of):
    said = (
        "All of them start out as a diesel van with front-wheel drive, and the windows of the cabin are double glazed. "
        "Nobody has had a cold foot yet.\n\nPrices: Drift 21, $91,990; Drift 21 Snow: ask us\n\n# Sizes"
    )
    facts = facts_of(SISTERS.format(said=said), "drift.md")
    assert {fact.model for fact in facts if fact.field == "window_glazing"} == {"Drift 21", "Drift 21 Snow"}
