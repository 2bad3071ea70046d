"""Numbers as real pages print them: units, multiples, words, signs. Factors: NIST SP 811 (2008), Appendix B."""

import pytest

from tests.finding.conftest import HEADS

NUMBERS = [
    ("FR", "PTAC : 3 450 kg", {"gvwr_kg": 3450}),
    ("DE", "Gesamtlänge: 5.998 mm", {"length_mm": 5998}),
    ("DE", "zulässige Gesamtmasse: 3,5 t", {"gvwr_kg": 3500}),
    ("US", "Length: 20' 11\"", {"length_mm": 6375.4}),
    ("UK", "Length × width × height: 5.63 × 2.00 × 2.61 m", {"length_mm": 5630, "width_mm": 2000, "height_mm": 2610}),
    ("DE", "Länge x Breite x Höhe: 5,63 x 2,00 x 2,61 m", {"length_mm": 5630, "width_mm": 2000, "height_mm": 2610}),
    ("US", "Heat output / input: 16,000 / 20,000 BTU/h", {"heater_output_w": 4689, "heater_input_w": 5861}),
    ("US", "Length: 20’ 11”", {"length_mm": 6375.4}),
    ("US", "Propane: Two 11 lb (5 kg) cylinders", {"propane_mass_kg": 10}),  # the bracket tells of each
    ("US", "Propane: Two 11 lb (10 kg) cylinders", {"propane_mass_kg": 10}),  # the bracket tells of both
    ("AU", "Fresh water: 2 x 55 L (14.5 gal)", {"fresh_tank_l": 110}),
    ("US", 'Length: 263.9"', {"length_mm": 6703.06}),
    ("US", "Interior height: 6'3\"", {"interior_height_mm": 1905}),
    ("QC", "Longueur hors tout : 20 pi 11 po", {"length_mm": 6375.4}),
    ("QC", "Hauteur intérieure : 6 pi 3 po", {"interior_height_mm": 1905}),
    ("UK", "Leisure battery: 12V/100Ah", {"battery_ah": 100, "battery_wh": 1200}),
    ("DE", "Bordbatterie: 12V/100Ah", {"battery_ah": 100, "battery_wh": 1200}),
    ("FR", "Batterie auxiliaire : 1,2 kWh", {"battery_wh": 1200}),
    ("DE", "Bordbatterie: Lithium, 1,2 kWh", {"battery_wh": 1200, "battery_chemistry": "lithium"}),
    ("US", "It is rated for use to –15 °F", {"rated_min_temp_c": -26.11}),
    ("US", "Tested to −20 °F", {"rated_min_temp_c": -28.89}),
    ("US", "Tested to -20°F", {"rated_min_temp_c": -28.89}),
    ("UK", "Tested to minus 15 degrees", {"rated_min_temp_c": -15}),
    ("UK", "Tested down to minus 15 degrees Celsius", {"rated_min_temp_c": -15}),
    ("DE", "Getestet bis minus 20 Grad", {"rated_min_temp_c": -20}),
    ("FR", "Testé jusqu'à moins 20 degrés", {"rated_min_temp_c": -20}),
    ("US", "Wall insulation: 1 ½ in", {"insulation_thickness_mm": 38.1, "insulated_surfaces": "walls"}),
    ("US", 'Wall insulation thickness: 1½"', {"insulation_thickness_mm": 38.1, "insulated_surfaces": "walls"}),
    ("US", "Wall insulation thickness: ½ in", {"insulation_thickness_mm": 12.7, "insulated_surfaces": "walls"}),
    ("US", 'Wall insulation thickness: 1/2"', {"insulation_thickness_mm": 12.7, "insulated_surfaces": "walls"}),
    ("US", "Fresh water tank: 27½ gal", {"fresh_tank_l": 104.099}),
    ("FR", "PTAC : 3\u202f450\u00a0kg", {"gvwr_kg": 3450}),
    ("DE", "zGG: 3\u2009450\u2009kg", {"gvwr_kg": 3450}),
    ("US", "Propane: two 20-lb cylinders", {"propane_mass_kg": 18.144}),
    ("US", "Propane: (2) 20-lb. cylinders", {"propane_mass_kg": 18.144}),
    ("AU", "Gas bottles: two 9 kg", {"propane_mass_kg": 18}),
    ("DE", "Gasflaschen: zwei 11-kg-Flaschen", {"propane_mass_kg": 22}),
    ("DE", "Gasflaschenkasten: 2 x 11 kg", {"propane_mass_kg": 22}),
    ("FR", "Bouteilles de gaz : deux de 13 kg", {"propane_mass_kg": 26}),
    ("FR", "Coffre à gaz : 2 x 13 kg", {"propane_mass_kg": 26}),
]

COUNTED = [
    ("US", "Fresh water capacity w/heater: 33 gal", {"fresh_tank_l": 124.919}),
    ("US", "Fresh water capacity (w/ water heater): 33 gal", {"fresh_tank_l": 124.919}),
    ("US", "Fresh water capacity with heater: 33 gal", {"fresh_tank_l": 124.919}),
    ("US", "Fresh water (incl. water heater): 33 gal", {"fresh_tank_l": 124.919}),
    ("DE", "Frischwassertank: 10 / 100 l", {"fresh_tank_l": 100}),
    ("US", "Fresh water, on the road / full (gals): 10/19", {"fresh_tank_l": 71.923}),
    ("DE", "Frischwasser (Fahrt/voll): 10/100 l", {"fresh_tank_l": 100}),
    ("DE", "Frischwasser 100 l (20 l in Fahrstellung)", {"fresh_tank_l": 100}),
    ("FR", "Réservoir d'eau propre : 10 / 100 l", {"fresh_tank_l": 100}),
    ("US", "House battery: 2 x 6 V, 220 Ah in series", {"battery_ah": 220, "battery_wh": 2640}),
    ("US", "House batteries: (2) 100 Ah lithium", {"battery_ah": 200, "battery_chemistry": "lithium"}),
    (
        "US",
        "House batteries: (2) 6 V 220 Ah AGM in series",
        {"battery_ah": 220, "battery_chemistry": "agm", "battery_wh": 2640},
    ),
    ("US", "Batteries: 2 lithium batteries, 100 Ah each", {"battery_ah": 200, "battery_chemistry": "lithium"}),
    ("US", "Batteries: two LiFePO4 batteries, 100 Ah each", {"battery_ah": 200, "battery_chemistry": "lithium"}),
    ("US", "Batteries: LiFePO4 batteries, 100 Ah each", {"battery_ah": 100, "battery_chemistry": "lithium"}),
    ("US", "Propane tanks (2), 20 lb each", {"propane_mass_kg": pytest.approx(18.14, abs=0.01)}),
    ("UK", "Gas: two cylinders, 11 kg apiece", {"propane_mass_kg": 22}),
    ("UK", "Gas: two cylinders, 11 kg in all", {"propane_mass_kg": 11}),
    ("DE", "Gas: 2 Flaschen, je 11 kg", {"propane_mass_kg": 22}),
    ("FR", "Gaz : 2 bouteilles, 13 kg chacune", {"propane_mass_kg": 26}),
    ("US", "Batteries: twin 100 Ah AGM", {"battery_ah": 200, "battery_chemistry": "agm"}),
    ("UK", "Leisure battery: 2 x 95 Ah", {"battery_ah": 190}),
    ("AU", "Fresh water: 2 x 55 L", {"fresh_tank_l": 110}),
    ("AU", "Water tanks: 2 x 55 L fresh, 1 x 40 L grey", {"fresh_tank_l": 110, "gray_tank_l": 40}),
    ("US", "Solar: 2 x 165 W", {"solar_w": 330}),
    ("US", "Solar: (2) 165W panels", {"solar_w": 330}),
    ("US", "Solar: 330 W (2 x 165 W)", {"solar_w": 330}),
    ("US", "Sleeps 2 + 1", {"sleeps": 3}),
    ("US", "Sleeps: 2–3", {"sleeps": 3}),
    ("UK", "Berths: 2+2", {"sleeps": 4}),
    ("FR", "Couchages : 2 + 1", {"sleeps": 3}),
    ("DE", "Schlafplätze: 2-3", {"sleeps": 3}),
    ("US", "Furnace: Brimstow 4000 forced air, propane", {"heater_type": "forced_air", "heater_fuel": "propane"}),
    ("US", "Heater: Brimstow D2 diesel air heater", {"heater_type": "forced_air", "heater_fuel": "diesel"}),
    ("DE", "Heizung: Brimstow 6 Gasheizung", {"heater_fuel": "propane"}),
    ("US", "Inverter: Voltmoor 3000", {}),
    ("US", "Chassis: Corrow 3500 cutaway", {"chassis": "Corrow 3500 cutaway"}),
]

GAS = [
    ("US", "Gas tank: 25 gal", {"fuel_tank_l": 94.635}),
    ("US", "Gas: 25 gal", {"fuel_tank_l": 94.635}),
    ("US", "Engine: 3.5L V6 gas", {"engine_fuel": "gasoline"}),
    ("UK", "Gas tank: 25 litres", {"propane_tank_l": 25}),
    (
        "US",
        "Heater: 12,000 BTU gas furnace",
        {"heater_type": "forced_air", "heater_fuel": "propane", "heater_rating_w": 3516.85},
    ),
    ("UK", "Heating: gas blown air", {"heater_type": "forced_air", "heater_fuel": "propane"}),
    ("UK", "Fresh water: 20 gallons", {"fresh_tank_l": 90.922}),
    ("US", "Fresh water: 20 gals", {"fresh_tank_l": 75.708}),
    ("US", "Fresh water: 20 imp. gal.", {"fresh_tank_l": 90.922}),
    ("UK", "Fresh water: 20 US gallons", {"fresh_tank_l": 75.708}),
    ("US", "Fresh water: 76 liters", {"fresh_tank_l": 76}),
    ("US", "Furnace: 16,000 BTU/h", {"heater_type": "forced_air", "heater_rating_w": 4689.14}),
    ("US", "Furnace: 16,000 Btu", {"heater_type": "forced_air", "heater_rating_w": 4689.14}),
    ("US", "Furnace: 16 000 BTUs per hour", {"heater_type": "forced_air", "heater_rating_w": 4689.14}),
]


@pytest.mark.parametrize(("region", "line", "expected"), NUMBERS)
def test_a_number_is_what_a_reader_of_that_region_takes_it_for(states, region, line, expected):
    states(region, line, expected)


@pytest.mark.parametrize(("region", "line", "expected"), COUNTED)
def test_multiples_parts_and_model_numbers(states, region, line, expected):
    states(region, line, expected)


@pytest.mark.parametrize(("region", "line", "expected"), GAS)
def test_gas_and_gallons_mean_what_they_mean_in_their_region(states, region, line, expected):
    states(region, line, expected)


@pytest.mark.parametrize(
    ("region", "line"),
    [
        ("US", "Sleeps: 2 (+ 1 option)"),
        ("UK", "Berths: 2 (+1 with front bunk, optional)"),
        ("FR", "Couchages : 2 (+ 1 en option)"),
        ("DE", "Schlafplätze: 2 (+ 1 optional)"),
    ],
)
def test_a_berth_more_as_an_option_leaves_what_there_is_without(facts_of, region, line):
    text = "\n".join(HEADS[region].values()) + f"\n\n{line}\n"
    said = {(fact.value, fact.availability) for fact in facts_of(text, "sheet.txt") if fact.field == "sleeps"}
    assert said == {(2, "standard"), (3, "optional")}


@pytest.mark.parametrize(
    ("region", "line", "expected"),
    [
        ("FR", "Les quatre couchages supposent une banquette.", {"sleeps": 4}),
        ("FR", "Ses couchages demandent une échelle.", {}),
        ("FR", "Il est une traction avant. Il a quatre couchages.", {"drive": "front", "sleeps": 4}),
        ("DE", "Die vier Schlafplätze setzen eine Sitzbank voraus.", {"sleeps": 4}),
        ("DE", "Die Schlafplätze verlangen einen Handgriff.", {}),
        ("US", "It sleeps one.", {"sleeps": 1}),
        ("FR", "Deux places au lit, quatre à table.", {"sleeps": 2}),
        ("FR", "Deux couchages, quatre places avec ceinture.", {"sleeps": 2}),
    ],
)
def test_an_article_behind_the_word_for_berths_counts_none(states, region, line, expected):
    states(region, line, expected)


@pytest.mark.parametrize(("amount", "litres"), [(".18 gal/h", 0.681), ("about .2 gal/h", 0.757)])
def test_a_figure_without_its_nought_is_a_part_of_one(states, amount, litres):
    states("US", f"Furnace consumption: {amount}", {"heater_consumption_l_h": litres, "heater_type": "forced_air"})


def test_a_row_of_dots_makes_no_part_of_one(states):
    states("US", "Fresh water tank ........30 gal", {"fresh_tank_l": 113.6})


@pytest.mark.parametrize(
    ("region", "line", "expected"),
    [
        ("US", "Pop-top with bed for two (sleeps four in all)", {"sleeps": 4}),
        ("DE", "Aufstelldach mit Bett für zwei (insgesamt 4 Schlafplätze)", {"sleeps": 4}),
        ("US", "All our vans run on gasoline and plug in with a 30-amp shore cord.",
         {"engine_fuel": "gasoline", "shore_power_a": 30}),
    ],
)  # fmt: skip
def test_berths_in_all_and_what_all_vans_run_on(states, region, line, expected):
    states(region, line, expected)
