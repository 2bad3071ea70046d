"""Notes that add something to the one cell that refers to them, and small signs, names and words beside answers."""

import pytest

NOTED = """<h1>Marrowfen Drift 2026</h1>
<table><tr><th></th><th>Drift 19</th><th>Drift 21</th></tr>
<tr><td>Overall length</td><td>5.41 m</td><td>6.36 m</td></tr>
<tr><td>External height</td><td>2,610 mm</td><td>2,840 mm<sup>1</sup></td></tr>
<tr><td>MTPLM</td><td>3,500 kg<sup>2</sup></td><td>4,250 kg</td></tr>
<tr><td>Solar panel</td><td>100 W</td><td>150 W<sup>3</sup></td></tr></table>
<p>¹ With roof rack (option) 2,990 mm.</p><p>² Uprated to 3,850 kg at extra cost.</p><p>³ 300 W as an option.</p>"""

SIGNED = """<html><body><h1>Marrowfen Drift 2026</h1>
<p><span>✔ standard</span><span>+ at extra cost</span><span>✘ not available</span></p>
<table><tr><th></th><th>Drift 19</th><th>Drift 21</th></tr>
<tr><td>Overall length</td><td>5.41 m</td><td>6.36 m</td></tr>
<tr><td>GVWR</td><td>3500 kg</td><td>4250 kg</td></tr>
<tr><td>Heated floor</td><td>✘</td><td>✔</td></tr>
<tr><td>12 V heating pad on the gray tank</td><td>+</td><td>✔</td></tr></table></body></html>"""

NAMED = """Marrowfen Drift 2026

|  | Drift | Drift 4x4 |
|---|---|---|
| Overall length | 5.41 m | 5.41 m |
| GVWR | 3500 kg | 4250 kg |
| Driven wheels | Rear | 4x4, on demand |
"""


def stated(facts, field):
    """Give availability and value by van."""
    found = [fact for fact in facts if fact.field == field and not fact.rejected]
    return {(fact.model.split()[-1], fact.availability): fact.value for fact in found}


def test_an_option_in_a_note_leaves_what_its_cell_says(facts_of):
    facts = facts_of(NOTED, "page.html")
    assert stated(facts, "height_mm")[("21", "standard")] == 2840
    assert stated(facts, "height_mm")[("21", "optional")] == 2990
    assert stated(facts, "solar_w") == {("19", "standard"): 100, ("21", "standard"): 150, ("21", "optional"): 300}
    assert ("21", "optional") not in stated(facts, "gvwr_kg")


def test_signs_of_a_legend_set_apart_by_style_alone_and_a_plus_among_them(facts_of):
    facts = facts_of(SIGNED, "page.html")
    assert stated(facts, "gray_tank_heat") == {("19", "optional"): "electric_pad", ("21", "standard"): "electric_pad"}
    assert stated(facts, "heated_floor") == {("19", "not_available"): True, ("21", "standard"): True}


def test_a_word_that_answers_its_label_names_no_van_there(facts_of):
    assert stated(facts_of(NAMED, "table.md"), "drive") == {("Drift", "standard"): "rear", ("4x4", "standard"): "all"}


@pytest.mark.parametrize(
    ("region", "line", "expected"),
    [
        ("US", "Dump valve: with small electric heater", {"dump_valve_protection": "heated"}),
        ("DE", "Beheizung Abwassertank: Warmluft aus der Heizung", {"gray_tank_heat": "warm_air"}),
        ("UK", "Six metres five, two berths and a stove.", {"sleeps": 2}),
        ("US", "Gas: no gas installation", {"propane_tank_l": 0}),
        ("US", "Drain set for winter: included", {"winterizing_bypass": True}),
        ("AU", "Grey outlet valve sits out in the open", {"dump_valve_protection": "exposed"}),
        ("AU", "* Diesel air-and-water combi", {"heater_type": "combined", "heater_fuel": "diesel"}),
        ("AU", "HASN'T GOT\n\n* Floor heating\n* Awning", {"heated_floor": False}),
        ("DE", "Isolierung der Leitungen: nein", {"water_lines_insulated": False}),
        ("DE", "Eigenstrombedarf der Heizung: 38 W", {"heater_power_draw_w": 38}),
        ("DE", "Tiefste Prüftemperatur außen: −18 °C", {"rated_min_temp_c": -18}),
    ],
)
def test_words_beside_an_answer(states, region, line, expected):
    states(region, line, expected)


INSTEAD = """<h1>Marrowfen Drift 2026</h1>
<table><tr><th></th><th>Drift 19</th><th>Drift 21</th></tr>
<tr><td>Overall length</td><td>5.41 m</td><td>6.36 m</td></tr>
<tr><td>GVWR</td><td>3500 kg</td><td>4250 kg</td></tr>
<tr><td>Sleeps</td><td>2</td><td>3</td></tr></table>
<ul><li>Propane furnace, 4.1 kW<sup>1</sup></li></ul>
<p>¹ Input; 3.3 kW output. Drift 21 instead: diesel hydronic heater, 4.8 kW output.</p>"""


def test_what_a_van_has_instead_takes_the_place_of_all_that_the_item_says(facts_of):
    facts = facts_of(INSTEAD, "page.html")
    assert {van for van, _ in stated(facts, "heater_type")} == {"19"}
    assert {van for van, _ in stated(facts, "heater_input_w")} == {"19"}
    assert {van: value for (van, _), value in stated(facts, "heater_output_w").items()} == {"19": 3300, "21": 4800}


def test_a_short_line_above_a_list_says_whether_its_items_are_fitted(facts_of):
    page = (
        "<h1>Marrowfen Drift 21</h1><p>Model year 2026</p><p>GVWR: 9,350 lb</p><p>Length: 21 ft</p><p>Sleeps: 2</p>"
        "<h2>Make it yours</h2><p>Options, at extra cost:</p><ul><li>3,000 W inverter</li></ul>"
        "<p>Not offered on the Drift 21:</p><ul><li>Heated floor</li></ul>"
        "<p>In every van we deliver, with our compliments:</p><ul><li>200 W solar</li></ul>"
    )
    facts = facts_of(page, "page.html")
    assert stated(facts, "inverter_w") == {("21", "optional"): 3000}
    assert stated(facts, "heated_floor") == {("21", "not_available"): True}
    assert stated(facts, "solar_w") == {("21", "standard"): 200}


def test_an_insulated_floor_is_a_surface_of_the_body_and_no_tank_in_it_is_insulated(facts_of):
    page = (
        "<h1>Marrowfen Drift 21</h1><p>Model year 2026</p><p>GVWR: 9,350 lb</p><p>Length: 21 ft</p><p>Sleeps: 2</p>"
        "<ul><li>Insulated floor and roof</li><li>Gray tank, 20 gal, above the insulated floor</li></ul>"
    )
    facts = facts_of(page, "page.html")
    found = {fact.value for fact in facts if fact.field == "insulated_surfaces" and not fact.rejected}
    assert found == {"floor", "ceiling"}
    assert not stated(facts, "gray_tank_insulated")


TRIMMED = """<h1>Marrowfen Drift 22</h1><h2>Dusk and Polar trims, 2026</h2>
<table><tr><th></th><th>Drift 22 Dusk</th><th>Drift 22 Polar</th></tr>
<tr><td>Overall length</td><td>22 ft</td><td>22 ft</td></tr>
<tr><td>GVWR</td><td>9,350 lb</td><td>9,350 lb</td></tr><tr><td>Sleeps</td><td>2</td><td>2</td></tr></table>
<h2>Standard in both trims</h2><ul><li>Overall height 9 ft 5 in<sup>1</sup></li>
<li>Closed-cell foam on walls and ceiling, 1 in³</li></ul>
<h2>Optional</h2><ul><li>280 Ah lithium battery<sup>2</sup></li></ul>
<p>¹ Polar, on its taller tires, 9 ft 11 in.</p><p>² Polar only; on the Dusk this option is not available.</p>
<p>³ Polar: 1.5 in on the walls; floor and doors are insulated as well.</p>"""


@pytest.fixture
def trimmed(facts_of):
    return facts_of(TRIMMED, "page.html")


def test_a_note_with_a_value_of_its_own_for_one_van_leaves_the_other_what_its_item_says(trimmed):
    found = stated(trimmed, "height_mm")
    assert {van: round(value) for (van, _), value in found.items()} == {"Dusk": 2870, "Polar": 3023}


def test_a_raised_figure_behind_a_unit_is_the_sign_of_a_note_that_nothing_else_refers_to(trimmed):
    found = stated(trimmed, "insulation_thickness_mm")
    assert {van: round(value, 1) for (van, _), value in found.items()} == {"Dusk": 25.4, "Polar": 38.1}


def test_what_a_note_adds_for_a_van_takes_nothing_from_it(facts_of):
    facts = facts_of(TRIMMED.replace("1 in³", "1 in<sup>3</sup>"), "page.html")
    found = {(f.model.split()[-1], f.value) for f in facts if f.field == "insulated_surfaces" and not f.rejected}
    both = {(van, place) for van in ("Dusk", "Polar") for place in ("walls", "ceiling")}
    assert found == both | {("Polar", "floor"), ("Polar", "doors")}


def test_an_option_that_a_note_keeps_from_a_van_is_not_available_there(trimmed):
    assert stated(trimmed, "battery_ah") == {("Polar", "optional"): 280, ("Dusk", "not_available"): 280}


def test_a_note_with_one_figure_of_a_van_takes_nothing_else_from_its_sister(facts_of):
    page = TRIMMED.replace("height 9 ft 5 in", "height 9 ft 5 in; standing room 6 ft 3 in")
    found = stated(facts_of(page, "page.html"), "interior_height_mm")
    assert {van: round(value) for (van, _), value in found.items()} == {"Dusk": 1905, "Polar": 1905}
