"""What a text says of tanks and batteries in general, names that are no answers, and parts of what is counted."""

import pytest


@pytest.mark.parametrize("line", [
    "If your gray tank is unheated, empty it before a hard frost.",
    "If your water lines are not heated, drain them.",
    "If you want to sleep in one, tell us a week ahead.",
])  # fmt: skip
def test_what_a_reader_may_have_or_want_is_not_said_of_the_van(states, line):
    states("US", line, {})


@pytest.mark.parametrize(
    "region, line",
    [
        ("DE", "Wasser im nicht beheizten Abwassertank friert in einer einzigen Nacht."),
        ("US", "Unheated waste tanks freeze in a single night."),
        ("FR", "Un réservoir d'eaux usées non chauffé gèle dès la première nuit."),
        ("US", "LiFePO4 batteries are rated at 12.8 V."),
        ("US", "Lithium batteries must not be charged below freezing."),
    ],
)
def test_what_is_said_of_any_tank_or_battery_says_nothing_of_the_van(states, region, line):
    states(region, line, {})


def test_a_tank_of_the_van_that_is_not_heated_is_still_told(states):
    states("US", "The gray tank is not heated and will freeze.", {"gray_tank_heat": "none"})


def test_a_heated_insulated_place_insulates_no_tank(states):
    enclosed = {"gray_tank_heat": "heated_compartment", "gray_tank_location": "enclosed"}
    states("US", "Gray tank: 31 gal, in a heated and lagged rear locker", enclosed | {"gray_tank_l": 117.35})
    states("US", "Gray tank: 31 gal, in a warmed, insulated underfloor tray", enclosed | {"gray_tank_l": 117.35})


@pytest.mark.parametrize(
    "region, line, expected",
    [
        ("US", "Furnace: gasoline hydronic", {"heater_type": "hydronic", "heater_fuel": "gasoline"}),
        ("US", "Furnace: gasoline", {"heater_type": "forced_air", "heater_fuel": "gasoline"}),
        ("FR", "Cuve d'eaux usées tempérée par gaine d'air : de série", {"gray_tank_heat": "warm_air"}),
        ("DE", "Abwassertank im Warmluftstrom der Heizung: Serie", {"gray_tank_heat": "warm_air"}),
    ],
)
def test_words_that_name_a_thing_or_a_way_of_heating(states, region, line, expected):
    states(region, line, expected)


@pytest.mark.parametrize(
    "region, line, expected",
    [
        ("FR", "Puissance utile du chauffage : de 3 à 8 kW", {"heater_output_w": 8000}),
        ("FR", "Batteries : 2 à 95 Ah", {"battery_ah": 190}),
        ("FR", "Couchages : 4 ou 5", {"sleeps": 5}),
        ("US", "Sleeps: Five, two of them in the roof", {"sleeps": 5}),
        ("DE", "Schlafplätze: 4, zwei davon oben", {"sleeps": 4}),
    ],
)
def test_ranges_alternatives_and_parts_are_no_second_value(states, region, line, expected):
    states(region, line, expected)


@pytest.mark.parametrize(
    "region, line, expected",
    [
        ("US", "The electric mat in the aisle works on shore power and takes 8 A.", {}),
        ("US", "The cabin has one diesel heater. The heating pad uses 55 W.", {"heater_fuel": "diesel"}),
        ("US", "Out and about in all weathers.", {}),
        ("FR", "Sur la dune, on se promène en toute saison.", {}),
    ],
)
def test_figures_and_seasons_of_something_else_than_what_stands_beside_them(states, region, line, expected):
    states(region, line, expected)
