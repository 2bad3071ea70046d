"""Tables pasted into a text with nothing but a space, or a line, between their cells."""

OPENING = """Marrowfen Vans Page 1
DRIFT 2026
The Drift 19 and the Drift 22 AWD are for people who do not wait for spring.

Marrowfen Vans Page 2
"""

ROWS = """SPECIFICATIONS
Drift 19 Drift 22 AWD
Base vehicle Tarwick 2500 Tarwick 3500
Drive Rear-wheel All-wheel
Exterior length 19 ft 5 in 21 ft 3 in
GVWR 8,550 lb 9,990 lb
Sleeps 2 3
Fresh water tank 22 gal, in cabin 30 gal, in cabin
Gray water tank 20 gal, under floor 26 gal, enclosed heated bay
Gray tank heat None Furnace duct
Black water tank None 10 gal, enclosed heated bay
Toilet Cassette, 5 gal China bowl, fixed
Water heater 2.5 gal 6 gal
"""

COLUMNS = """HEATING AND POWER
Furnace output
Blower draw
LP tank
House battery
Inverter
Wall insulation
Drift 19
9,600 BTU/h
22 W
5.2 gal
110 Ah AGM
1,000 W
Fiberglass, 1 in
Drift 22 AWD
14,400 BTU/h
38 W
8.0 gal
2 x 206 Ah lithium
2,000 W
Spray foam, 2 in
"""


def by_van(facts, field):
    return {fact.model: fact.value for fact in facts if fact.field == field}


def test_rows_with_single_spaces_between_their_cells_are_parted_by_their_figures(facts_of):
    facts = facts_of(OPENING + ROWS)
    assert by_van(facts, "sleeps") == {"Drift 19": 2, "Drift 22 AWD": 3}
    assert by_van(facts, "chassis") == {"Drift 19": "Tarwick 2500", "Drift 22 AWD": "Tarwick 3500"}
    assert by_van(facts, "drive") == {"Drift 19": "rear", "Drift 22 AWD": "all"}
    assert {van: round(value) for van, value in by_van(facts, "gray_tank_l").items()} == {
        "Drift 19": 76, "Drift 22 AWD": 98,
    }  # fmt: skip
    assert by_van(facts, "gray_tank_heat")["Drift 19"] == "none"
    assert by_van(facts, "toilet") == {"Drift 19": "cassette", "Drift 22 AWD": "fixed_tank"}


def test_a_row_of_which_nobody_can_tell_where_a_value_ends_is_left_out(facts_of):
    facts = facts_of(OPENING + ROWS + "Engine Tarwick Diesel\nHouse battery 200 Ah AGM Lithium 300 Ah\n")
    assert by_van(facts, "sleeps") == {"Drift 19": 2, "Drift 22 AWD": 3}
    assert not by_van(facts, "engine_fuel")
    assert not by_van(facts, "battery_ah")


def test_columns_below_one_another_without_blank_lines_are_those_of_the_vans(facts_of):
    facts = facts_of(OPENING + COLUMNS)
    assert by_van(facts, "inverter_w") == {"Drift 19": 1000, "Drift 22 AWD": 2000}
    assert by_van(facts, "battery_ah") == {"Drift 19": 110, "Drift 22 AWD": 412}
    assert by_van(facts, "heater_power_draw_w") == {"Drift 19": 22, "Drift 22 AWD": 38}
    assert by_van(facts, "insulation_material") == {"Drift 19": "fiberglass", "Drift 22 AWD": "spray_foam"}


WRAPPED = """SPECIFICATIONS
Drift 19 Drift 22 AWD
CHASSIS
Base vehicle Tarwick 2500 Tarwick 3500
Driveline RWD AWD
Length 19' 4" 22' 3"
Width (both) 6' 10"
Hitch 3,500 lbs 5,000 lbs
Sleeping 2 2-3
WATER
Fresh 24 gal 31 gal
Black none 11 gal
Toilet
Cassette, 4.7 gal
China bowl, fixed
Water heater 4 gal 6 gal
HOUSE
Coach battery
200 Ah AGM
(two 6 V, 200 Ah
in series)
270 Ah lithium
(12.8 V)
Wall R-value R-5 R-12
Windows dual-pane dual-pane
Rated low
20 °F
0 °F
"""


def test_wrapped_values_below_their_label_and_groups_in_capitals_are_rows_of_a_pasted_table(facts_of):
    facts = facts_of(OPENING + WRAPPED)
    assert by_van(facts, "drive") == {"Drift 19": "rear", "Drift 22 AWD": "all"}
    assert {van: round(value) for van, value in by_van(facts, "length_mm").items()} == {
        "Drift 19": 5893, "Drift 22 AWD": 6782,
    }  # fmt: skip
    assert {van: round(value) for van, value in by_van(facts, "width_mm").items()} == {
        "Drift 19": 2083, "Drift 22 AWD": 2083,
    }  # fmt: skip
    assert by_van(facts, "toilet") == {"Drift 19": "cassette", "Drift 22 AWD": "fixed_tank"}
    assert {van: round(value) for van, value in by_van(facts, "black_tank_l").items()} == {
        "Drift 19": 0, "Drift 22 AWD": 42,
    }  # fmt: skip
    assert by_van(facts, "battery_ah") == {"Drift 19": 200, "Drift 22 AWD": 270}
    assert by_van(facts, "window_glazing") == {"Drift 19": "double", "Drift 22 AWD": "double"}
    assert {van: round(value) for van, value in by_van(facts, "rated_min_temp_c").items()} == {
        "Drift 19": -7, "Drift 22 AWD": -18,
    }  # fmt: skip


def test_a_label_without_values_of_its_own_takes_none_from_the_rows_below_it(facts_of):
    facts = facts_of(OPENING + ROWS.replace("Toilet Cassette", "Inverter\nToilet Cassette"))
    assert by_van(facts, "toilet") == {"Drift 19": "cassette", "Drift 22 AWD": "fixed_tank"}
    assert not by_van(facts, "inverter_w")


LOWER = """Marrowfen Vans
DRIFT 2026

SPECIFICATIONS
Drift 19 Drift 22

CHASSIS
Length overall 19 ft 8 in 23 ft 11 in
Height overall 9 ft 1 in 9 ft 8 in
GVWR 9,350 lb 10,360 lb
Sleeping capacity 2 4

WATER
Fresh tank 22 gal 34 gal
Black tank none 13 gal
Gray tank location under floor heated bay
Grab rail chrome or brass to taste
Toilet cassette, 5 gal fixed, to black tank

HEAT AND POWER
Heater diesel air heater diesel hydronic
Solar 180 W 2 x 180 W
Insulated surfaces walls, ceiling walls, ceiling, floor
"""


def test_known_words_of_one_kind_part_the_values_of_vans(facts_of):
    facts = facts_of(LOWER)
    expected = {
        "gray_tank_location": ("underbody", "enclosed"), "toilet": ("cassette", "fixed_tank"),
        "heater_type": ("forced_air", "hydronic"), "heater_fuel": ("diesel", "diesel"), "solar_w": (180, 360),
    }  # fmt: skip
    for field, values in expected.items():
        assert by_van(facts, field) == dict(zip(("Drift 19", "Drift 22"), values, strict=True)), field
    assert round(by_van(facts, "black_tank_l")["Drift 22"]) == 49
    surfaces = {fact.value for fact in facts if (fact.model, fact.field) == ("Drift 19", "insulated_surfaces")}
    assert surfaces == {"walls", "ceiling"}
