"""Advertisements of used vans, codes of places that a sentence explains, zeros, and what stands behind a comma."""

import pytest

GALLON = 3.785411784  # NIST SP 811 (2008), Appendix B
LINES = [
    ("US", "Propane (kg): 0", {"propane_tank_l": 0}),
    ("AU", "LPG: 0 kg", {"propane_tank_l": 0}),
    ("FR", "Propane : 0 kg", {"propane_tank_l": 0}),
    ("DE", "Gasvorrat: 0 kg", {"propane_tank_l": 0}),
    ("US", "Insulated lines: yes", {"water_lines_insulated": True}),
    ("UK", "Insulated pipes: option", {"water_lines_insulated": ("option", True)}),
    ("US", "House battery: 200 Ah\nCells: LiFePO4", {"battery_ah": 200, "battery_chemistry": "lithium"}),
    ("DE", "Batterie: 200 Ah\nZellen: LiFePO4", {"battery_ah": 200, "battery_chemistry": "lithium"}),
    ("UK", "4 berth (2 in the roof)", {"sleeps": 4}),
    ("FR", "Couchages : 4 (2 dans le toit)", {"sleeps": 4}),
    ("DE", "Schlafplätze: 2 (3)", {"sleeps": 3}),
    ("UK", "• 12 V heating mat on the waste tank, insulated cab screens",
     {"gray_tank_heat": "electric_pad", "cab_shades_insulated": True}),
    ("US", "• Heated gray tank, insulated water lines",
     {"gray_tank_heat": "unspecified", "water_lines_insulated": True}),
    ("US", "• 31-gallon gray tank and 13-gallon black tank, both with a glycol loop off the heater",
     {"gray_tank_l": 31 * GALLON, "black_tank_l": 13 * GALLON, "gray_tank_heat": "hydronic",
      "black_tank_heat": "hydronic"}),
    ("US", "Hydronic heater, diesel plus an electric element for shore power. It has two ducts and a long hose.",
     {"heater_type": "hydronic", "heater_fuel": "diesel+electric"}),
    ("US", "• 600 Ah of 12.8 V lithium with built-in cell heaters, replaces AGM: $8,300",
     {"battery_ah": ("option", 600), "battery_wh": ("option", 7680), "battery_chemistry": ("option", "lithium"),
      "battery_heated": ("option", True)}),
    ("US", "Options\n\n• Bigger bank, 840 Ah, $3,900", {"battery_ah": ("option", 840)}),
    ("AU", "Options\n\n• Third house battery, 360 Ah all up", {"battery_ah": ("option", 360)}),
    ("US", "The van has been through our cold box at 5 °F and came out asking for breakfast.",
     {"rated_min_temp_c": -15}),
    ("US", "Factory options. Second solar panel (200 W in total); 1,000 W inverter. A roof rack.",
     {"solar_w": ("option", 200), "inverter_w": ("option", 1000)}),
    ("US", "Lines: all inside; dump valve in a heated box",
     {"water_lines_location": "interior", "dump_valve_protection": "heated_compartment"}),
    ("DE", "Wasserleitungen: innen; Ablassventil im isolierten Kasten",
     {"water_lines_location": "interior", "dump_valve_protection": "insulated"}),
    ("US", "Water lines run: Heated duct under floor", {"water_lines_location": "enclosed"}),
    ("US", "We call it a three-and-a-half-season van, because we own a calendar.",
     {"season_claim": "three-and-a-half-season"}),
    ("US", "Options\n\n• Insulated quilts for the rear doors", {"rear_shades_insulated": ("option", True)}),
    ("US", "Both are diesel, both are plumbed with a winter-\nizing bypass, and both keep warm.",
     {"engine_fuel": "diesel", "winterizing_bypass": True}),
    ("AU", "Each of the four runs on diesel and leaves us with a 15 A mains inlet.",
     {"engine_fuel": "diesel", "shore_power_a": 15}),
    ("FR", "Eaux usées : 92 l, dans le double plancher chauffé",
     {"gray_tank_l": 92, "gray_tank_heat": "heated_compartment", "gray_tank_location": "enclosed"}),
    ("FR", "Conduites d'eau : dans le double plancher chauffé", {"water_lines_location": "enclosed"}),
    ("FR", "Tous deux roulent au gazole et gardent leurs deux places.", {"engine_fuel": "diesel"}),
    ("DE", "Sonderausstattung. Zweites Solarmodul (200 W insgesamt); Wechselrichter 1000 W. Ein Dachträger.",
     {"solar_w": ("option", 200), "inverter_w": ("option", 1000)}),
]  # fmt: skip

SHEET = """# Marrowfen Drift 2026

| Model | Length (m) | Fresh: place | Gray (L) | Gray: place / heat | Sleeps |
|---|---|---|---|---|---|
| Drift 540 | 5.41 | in | 90 | uf / none | 2 |
| Drift 600 | 5.99 | bx | 95 | bx / pad | 4 |

Places: in = inside the heated cabin; uf = under the floor, outside; bx = closed insulated box. Heat: pad = 12 V pad.
"""

ADVERT = """{opening}
--------------------------------------------------------------------
18,900 miles | 1 owner | full history | cream over grey

Size: 5.99m long x 2.05m wide x 2.68m high, wheelbase 4,035mm
Max weight 3,500kg, payload 520kg
Fresh tank 90 litres
Solar 120 W

Driftwell Leisure Ltd. 3 months' warranty. Also on the yard: a Drift 64 with 140L fresh.
"""
OPENINGS = [
    "** JUST IN **   DRIFTWELL LEISURE, Withy Bank     Ref 33\n\n"
    "2023 model  MARROWFEN DRIFT 58      reg'd Jan 2024     £52,450",
    "*** DRIFTWELL LEISURE ***\n\n"
    "JUST IN >> Marrowfen Drift 58 << 2 berth, 1st reg. Sept 2023 (2023 model year)\nGBP 58,750",
]  # fmt: skip


@pytest.mark.parametrize(("region", "line", "expected"), LINES)
def test_a_line_states_what_it_says_and_nothing_else(states, region, line, expected):
    states(region, line, expected)


def test_codes_of_places_are_explained_behind_a_colon_and_read_part_by_part(facts_of):
    found = {(f.model, f.field, f.value) for f in facts_of(SHEET)}
    assert {
        ("Drift 540", "fresh_tank_location", "interior"), ("Drift 600", "fresh_tank_location", "enclosed"),
        ("Drift 540", "gray_tank_location", "underbody"), ("Drift 540", "gray_tank_heat", "none"),
        ("Drift 600", "gray_tank_location", "enclosed"), ("Drift 600", "gray_tank_heat", "electric_pad"),
    } <= found  # fmt: skip


TILES = """<html lang="en-US"><head><title>2027 Drift 24 | Marrowfen</title></head><body><h1>2027 Drift 24</h1>
<div><div><b>3</b>sleeps</div><div><b>38 gal</b>fresh water</div><div><b>-15 &deg;F</b>tested to</div></div>
<table><tr><td>Length</td><td>20 ft</td></tr><tr><td>Width</td><td>82 in</td></tr></table></body></html>"""

PACK = """<html lang="en-GB"><body><h1>Marrowfen Drift 2026</h1><p>• standard ◦ option at extra cost</p>
<p>W part of the optional Winter Pack (£1,850)</p><p>– not available on this model</p>
<table><tr><th></th><th>Drift 540</th><th>Drift 600</th></tr>
<tr><td>Length (m)</td><td>5.41</td><td>5.99</td></tr><tr><td>Sleeps</td><td>2</td><td>4</td></tr>
<tr><td>Insulated waste tank</td><td>◦</td><td>W</td></tr><tr><td>Lagged water pipes</td><td>–</td><td>W</td></tr>
<tr><td>Winter drain-down kit</td><td>•</td><td>•</td></tr></table></body></html>"""


NOTED = """# Marrowfen Drift 2026

| | Drift 540 | Drift 600 |
|---|---|---|
| Length (m) | 5.41 | 5.99 |
| House battery | 95 Ah gel | 110 Ah AGM |
| Roof vent | S | O ¹ |

S standard, O option.

¹ Only with the lithium battery.
"""


def test_under_which_condition_a_thing_is_to_be_had_tells_nothing_else(facts_of):
    found = {f.value for f in facts_of(NOTED, "sheet.md") if f.field == "battery_chemistry"}
    assert found == {"gel", "agm"}


def test_figures_over_what_they_are_of_are_read_as_labels_and_values(facts_of):
    found = {f.field: f.value for f in facts_of(TILES, "page.html")}
    assert (found["sleeps"], round(found["fresh_tank_l"]), round(found["rated_min_temp_c"], 1)) == (3, 144, -26.1)


def test_a_letter_that_stands_for_a_package_is_an_option(facts_of):
    found = {(f.model, f.field): f.availability for f in facts_of(PACK, "sheet.html")}
    assert found["Drift 600", "gray_tank_insulated"] == found["Drift 600", "water_lines_insulated"] == "optional"


@pytest.mark.parametrize("opening", OPENINGS)
def test_who_sells_a_used_van_is_not_its_maker(vans_in, opening):
    assert vans_in(ADVERT.format(opening=opening), "advert.txt") == {("Marrowfen", "Drift 58")}


def test_a_price_behind_the_name_and_a_year_is_that_of_the_van(facts_of):
    facts = facts_of(ADVERT.format(opening=OPENINGS[0]), "advert.txt")
    assert {f.availability for f in facts if f.field == "solar_w"} == {"standard"}
