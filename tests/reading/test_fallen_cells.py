"""Tables whose cells came below each other when they were copied into a text."""

import pytest

TWO_VANS = """Marrowfen Vans   2026 Drift specifications

Marrowfen Vans
DRIFT
Model year 2026

Drift 20
Drift 23 Frost
BASE VEHICLE
Engine
3.6 L V6 gasoline
3.0 L diesel
Drive
Rear-wheel drive
All-wheel drive
Wheelbase
144 in
170 in
Seat belts
4
2
PLUMBING
Fresh tank
21 gal
31 gal
Gray tank location
Under floor
Heated enclosure

-- 1 of 2 --

Marrowfen Vans   2026 Drift specifications

LP tank
6.1 gal
No LP on board
House batteries
2 x 100 Ah AGM
3 x 130 Ah lithium, self-
heating
Shore power
30 A
Inverter
1,000 W
3,000 W
Solar
200 W
420 W

Options
• Lifting roof with bed, sleeps 4
"""

ONE_VAN = """Marrowfen Vans
Drift 21
Model year 2026

Water
Fresh water

90 l

Waste water

80 l

Power

Solar

200 W

Inverter

1,000 W

Sleeping and driving

Berths

2

Wheelbase

3,800 mm
"""


def test_each_van_has_its_value_below_the_label(found_in):
    found = found_in(TWO_VANS)
    assert found["engine_fuel"] == {"Drift 20": {"gasoline"}, "Drift 23 Frost": {"diesel"}}
    assert found["drive"] == {"Drift 20": {"rear"}, "Drift 23 Frost": {"all"}}
    assert [*found["wheelbase_mm"]["Drift 20"]] == pytest.approx([3657.6])
    assert found["gray_tank_location"] == {"Drift 20": {"underbody"}, "Drift 23 Frost": {"enclosed"}}


def test_the_table_goes_on_behind_the_foot_and_head_of_a_page(found_in):
    found = found_in(TWO_VANS)
    assert found["propane_tank_l"]["Drift 23 Frost"] == {0}
    assert found["battery_heated"] == {"Drift 23 Frost": {True}}
    assert found["solar_w"] == {"Drift 20": {200}, "Drift 23 Frost": {420}}


def test_a_row_that_lacks_a_value_is_left_out_and_shifts_nothing(found_in):
    found = found_in(TWO_VANS)
    assert "shore_power_a" not in found
    assert found["inverter_w"] == {"Drift 20": {1000}, "Drift 23 Frost": {3000}}


def test_what_follows_the_table_is_read_as_it_stands(found_in):
    assert found_in(TWO_VANS)["sleeps"] == {"Drift 20": {4}, "Drift 23 Frost": {4}}


def test_labels_and_values_of_one_van_between_blank_lines(found_in):
    found = found_in(ONE_VAN)
    assert found["fresh_tank_l"] == {"Drift 21": {90}}
    assert found["gray_tank_l"] == {"Drift 21": {80}}
    assert found["solar_w"] == {"Drift 21": {200}}
    assert found["sleeps"] == {"Drift 21": {2}}
    assert found["wheelbase_mm"] == {"Drift 21": {3800}}


def test_a_list_of_features_line_by_line_is_no_table(found_in):
    features = ["Diesel heater", "Solar panel 200 W", "Cassette toilet", "Rear-wheel drive", "Inverter 1,000 W"]
    features += [
        "Fresh water tank 90 l",
        "Shore power",
        "Insulated cab blinds",
        "Double glazed windows",
        "Heated floor",
    ]
    found = found_in("Marrowfen Vans\nDrift 21\nModel year 2026\n\nBerths: 2\nLength: 6.4 m\n\n" + "\n".join(features))
    assert found["toilet"] == {"Drift 21": {"cassette"}}
    assert found["drive"] == {"Drift 21": {"rear"}}
    assert found["fresh_tank_l"] == {"Drift 21": {90}}
    assert found["inverter_w"] == {"Drift 21": {1000}}
