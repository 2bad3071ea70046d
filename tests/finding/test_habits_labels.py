"""Labels of real pages: several fields in one, abbreviations, regions; each line states what it says and no more."""

import pytest

SIZE = {"length_mm": 6360, "width_mm": 2050, "height_mm": 2590}
SEVERAL = [
    ("FR", "Places / couchages : 4 / 2", {"sleeps": 2}),
    ("FR", "Couchages / places : 3 / 5", {"sleeps": 3}),
    ("UK", "Size: 6.36 m x 2.05 m x 2.59 m (L x W x H)", SIZE),
    ("UK", "Size: 6.36 / 2.05 / 2.59 m (length / width / height)", SIZE),
    ("DE", "Länge/Breite/Höhe 6358/2050/2590 mm", {"length_mm": 6358, "width_mm": 2050, "height_mm": 2590}),
    ("DE", "Länge/Breite/Höhe: 6.358/2.050/2.590 mm", {"length_mm": 6358, "width_mm": 2050, "height_mm": 2590}),
    ("DE", "Breite / Höhe / Länge (mm): 2050 / 2590 / 6358", {"length_mm": 6358, "width_mm": 2050, "height_mm": 2590}),
    ("DE", "L x B x H: 6,36 x 2,05 x 2,59 m", {"length_mm": 6360, "width_mm": 2050, "height_mm": 2590}),
    ("DE", "Frisch-/Abwassertank 100/92 l", {"fresh_tank_l": 100, "gray_tank_l": 92}),
    ("DE", "Frisch-/Abwassertank: 100/92 l", {"fresh_tank_l": 100, "gray_tank_l": 92}),
    ("DE", "Ab-/Frischwasser: 92/100 Liter", {"fresh_tank_l": 100, "gray_tank_l": 92}),
    ("CH", "Frisch- und Abwasser (l): 100 / 92", {"fresh_tank_l": 100, "gray_tank_l": 92}),
    ("US", "GVWR/UVW/OCCC: 9,350/7,600/1,750 lb", {"gvwr_kg": 4241.09}),
    ("US", "UVW / GVWR / OCCC (lb): 7,600 / 9,350 / 1,750", {"gvwr_kg": 4241.09}),
    ("US", "GVWR / GCWR: 9,350 / 13,930 lb", {"gvwr_kg": 4241.09}),
    (
        "US",
        "Length / Height / Width: 20' 11\" / 9' 2\" / 6' 9\"",
        {"length_mm": 6375.4, "height_mm": 2794, "width_mm": 2057.4},
    ),
    (
        "US",
        "Fresh / gray / black: 27 / 20 / 10 gal",
        {"fresh_tank_l": 102.206, "gray_tank_l": 75.708, "black_tank_l": 37.854},
    ),
    ("US", "Gray/Fresh (gal): 20/27", {"fresh_tank_l": 102.206, "gray_tank_l": 75.708}),
    (
        "US",
        "Insulation floor/roof/wall: 1 in / 2 in / 1.5 in",
        {"insulation_thickness_mm": 38.1, "insulated_surfaces": "ceiling+floor+walls"},
    ),
    (
        "DE",
        "Isolierung Boden/Dach/Wand: 30/40/25 mm",
        {"insulation_thickness_mm": 25, "insulated_surfaces": "ceiling+floor+walls"},
    ),
    (
        "FR",
        "Isolation plancher/toit/parois : 30/40/25 mm",
        {"insulation_thickness_mm": 25, "insulated_surfaces": "ceiling+floor+walls"},
    ),
    ("FR", "Long. / larg. / haut. : 6,36 / 2,05 / 2,59 m", {"length_mm": 6360, "width_mm": 2050, "height_mm": 2590}),
    ("FR", "Eau propre / eaux usées : 100 / 90 l", {"fresh_tank_l": 100, "gray_tank_l": 90}),
    ("FR", "Eaux usées / propres (l) : 90 / 100", {"fresh_tank_l": 100, "gray_tank_l": 90}),
    ("UK", "Fresh/waste water: 100/75 litres", {"fresh_tank_l": 100, "gray_tank_l": 75}),
    ("UK", "L x W x H: 6.36 m x 2.05 m x 2.59 m", {"length_mm": 6360, "width_mm": 2050, "height_mm": 2590}),
    ("UK", "Berths / belted seats: 2 / 4", {"sleeps": 2}),
    ("AU", "Fresh / grey water capacity: 110 L / 60 L", {"fresh_tank_l": 110, "gray_tank_l": 60}),
    ("US", "FRESH / GRAY gal: 27 / 20", {"fresh_tank_l": 102.206, "gray_tank_l": 75.708}),
    ("US", "Fresh / black gal: 27 / none", {"fresh_tank_l": 102.206, "black_tank_l": 0}),
]

LABELS = [
    ("US", "W.B. in: 159", {"wheelbase_mm": 4038.6}),
    ("US", "GVWR lb: 9,350", {"gvwr_kg": 4241.09}),
    ("UK", "Solar W: 200", {"solar_w": 200}),
    ("US", "Inverter W: none", {"inverter_w": 0}),
    ("FR", "Place du réservoir d’eau propre : à l’intérieur", {"fresh_tank_location": "interior"}),
    (
        "UK",
        "Diesel heating and hot water in one unit, 4 kW output",
        {"heater_fuel": "diesel", "heater_type": "combined", "heater_output_w": 4000},
    ),
    ("DE", "zul. Gesamtmasse: 3.500 kg (leer 2.850 kg)", {"gvwr_kg": 3500}),
    ("US", "Toilet waste: black (gal): No black tank", {"black_tank_l": 0}),
    ("UK", "Grey tank warmed by ducted heater air: yes", {"gray_tank_heat": "warm_air"}),
    ("DE", "Frischwasser l: 100", {"fresh_tank_l": 100}),
    ("FR", "Empattement mm : 3 450", {"wheelbase_mm": 3450}),
    ("UK", "MTPLM: 3,650 kg", {"gvwr_kg": 3650}),
    ("AU", "GVM: 4,495 kg", {"gvwr_kg": 4495}),
    ("UK", "Headroom: 1.90 m", {"interior_height_mm": 1900}),
    ("UK", "Berths: 4", {"sleeps": 4}),
    ("UK", "Grey water: 70 litres", {"gray_tank_l": 70}),
    ("UK", "Waste water tank: 70 ltrs", {"gray_tank_l": 70}),
    ("UK", "Waste: 70 L", {"gray_tank_l": 70}),
    ("US", "LP: 20 lb", {"propane_mass_kg": 9.072}),
    ("US", "LPG tank: 10 gal", {"propane_tank_l": 37.854}),
    ("AU", "Gas: 2 x 9 kg", {"propane_mass_kg": 18}),
    ("UK", "Gas locker: 2 x 6 kg", {"propane_mass_kg": 12}),
    ("DE", "tzGm: 3.500 kg", {"gvwr_kg": 3500}),
    ("DE", "zGG: 3,5 t", {"gvwr_kg": 3500}),
    ("DE", "Innenstehhöhe: 1,90 m", {"interior_height_mm": 1900}),
    ("DE", "Frischwasser: 100 l", {"fresh_tank_l": 100}),
    ("DE", "Abwasser: 90 l", {"gray_tank_l": 90}),
    ("DE", "Kraftstofftank: 90 l", {"fuel_tank_l": 90}),
    ("DE", "Solaranlage 120 W: Serie", {"solar_w": 120}),
    ("DE", "Solaranlage 120 W: Sonderausstattung", {"solar_w": ("option", 120)}),
    ("FR", "PTAC : 3 500 kg", {"gvwr_kg": 3500}),
    ("QC", "PNBV : 9 350 lb", {"gvwr_kg": 4241.09}),
    ("FR", "Porteur : Corrow 35", {"chassis": "Corrow 35"}),
    ("FR", "Transmission : traction", {"drive": "front"}),
    ("FR", "Transmission : propulsion", {"drive": "rear"}),
    ("FR", "Couchages : 4", {"sleeps": 4}),
    ("FR", "Eaux usées : 90 l", {"gray_tank_l": 90}),
    ("QC", "Eaux grises : 20 gal", {"gray_tank_l": 75.708}),
    ("QC", "Fournaise : 16 000 BTU", {"heater_type": "forced_air", "heater_rating_w": 4689.14}),
    ("FR", "Panneau solaire 120 W : de série", {"solar_w": 120}),
    ("FR", "Panneau solaire 120 W : en option", {"solar_w": ("option", 120)}),
    ("UK", "Water: 2 x 55 L, in two tanks", {}),
    ("US", "50-amp shore power", {"shore_power_a": 50}),
    ("US", "30A shore power inlet", {"shore_power_a": 30}),
    ("UK", "16 A mains hook-up", {"shore_power_a": 16}),
    ("US", "Solar: three hundred watts", {"solar_w": 300}),
    ("FR", "Deux batteries lithium de 100 Ah", {"battery_ah": 200, "battery_chemistry": "lithium"}),
    ("DE", "Zwei Lithiumbatterien mit je 100 Ah", {"battery_ah": 200, "battery_chemistry": "lithium"}),
    ("US", "12 V fridge, 115 L compressor", {}),
    ("US", "Water pump: 3.0 gpm", {}),
    ("US", "Fuel: 24 gal diesel", {"fuel_tank_l": 90.85}),
    ("US", "Fuel: Diesel", {"engine_fuel": "diesel"}),
    ("DE", "Kraftstoff / Antrieb: Benzin / Heckantrieb", {"engine_fuel": "gasoline", "drive": "rear"}),
    ("FR", "Carburant : gazole", {"engine_fuel": "diesel"}),
    (
        "DE",
        "Dämmmatten aus geschlossenzelligem Schaumstoff, 12 mm, in Wänden und Decke",
        {"insulation_material": "foam_sheet", "insulation_thickness_mm": 12, "insulated_surfaces": "ceiling+walls"},
    ),
    (
        "DE",
        "Schafwolldämmung 40 mm in den Wänden",
        {"insulation_material": "sheep_wool", "insulation_thickness_mm": 40, "insulated_surfaces": "walls"},
    ),
    (
        "US",
        "House battery: 3 × 110 Ah lithium (12.8 V)",
        {"battery_ah": 330, "battery_chemistry": "lithium", "battery_wh": 4224},
    ),
    ("US", "All-season tires on steel wheels", {}),
    ("FR", "Pneus toutes saisons", {}),
    ("DE", "Ganzjahresreifen", {}),
    (
        "FR",
        "Le réservoir d'eau propre et les tuyaux restent dans la cellule chauffée.",
        {"fresh_tank_location": "interior", "water_lines_location": "interior"},
    ),
    ("US", "Power used by heater: 34 W", {"heater_power_draw_w": 34}),
    ("UK", "Electric power of the heater: 58 W", {"heater_power_draw_w": 58}),
    (
        "UK",
        "Wall insulation: Recycled polyester wool, 25 mm",
        {"insulation_material": "synthetic_fiber", "insulation_thickness_mm": 25, "insulated_surfaces": "walls"},
    ),
    ("AU", "Diesel tank: 90 L", {"fuel_tank_l": 90}),
    ("AU", "Grey water: nil", {"gray_tank_l": 0}),
    ("UK", "Fresh water 90 litres, waste water 70 litres", {"fresh_tank_l": 90, "gray_tank_l": 70}),
    (
        "DE",
        "Frischwasser 100 l, Abwasser 90 l, Warmwasser 10 l",
        {"fresh_tank_l": 100, "gray_tank_l": 90, "water_heater_l": 10},
    ),
    ("FR", "Chauffe-eau : 10 l", {"water_heater_l": 10}),
    ("QC", "Réservoir d'eau potable : 27 gal (102 L)", {"fresh_tank_l": 102}),
    ("QC", "Propane : deux bonbonnes de 20 lb", {"propane_mass_kg": 18.144}),
    (
        "QC",
        "Batterie : 200 Ah au lithium, chauffante",
        {"battery_ah": 200, "battery_chemistry": "lithium", "battery_heated": True},
    ),
    ("QC", "Isolation des murs : R-7", {"insulation_r_si": 1.233, "insulated_surfaces": "walls"}),
    ("FR", "Isolation des parois : R = 1,0", {"insulation_r_si": 1, "insulated_surfaces": "walls"}),
    ("QC", "Isolation : RSI 1,2", {"insulation_r_si": 1.2}),
    ("US", "Tested at −22 °F (−30 °C) in the cold chamber", {"rated_min_temp_c": -30}),
    ("US", "Heater: 13,500 BTU/h output, 16,000 BTU/h input", {"heater_output_w": 3956.46, "heater_input_w": 4689.14}),
    (
        "UK",
        "Heating: 4 kW diesel blown air",
        {"heater_type": "forced_air", "heater_fuel": "diesel", "heater_rating_w": 4000},
    ),
    (
        "DE",
        "Heizung: Diesel-Warmluftheizung 4 kW",
        {"heater_type": "forced_air", "heater_fuel": "diesel", "heater_rating_w": 4000},
    ),
    (
        "FR",
        "Chauffage au gazole, 4 kW, à air pulsé",
        {"heater_type": "forced_air", "heater_fuel": "diesel", "heater_rating_w": 4000},
    ),
    ("US", "Heater draw: 84 W of electricity", {"heater_power_draw_w": 84}),
    ("US", "Electric heating pad on the gray tank", {"gray_tank_heat": "electric_pad"}),
    ("US", "Hydronic heating of the gray tank", {"gray_tank_heat": "hydronic"}),
    ("US", "Gray tank heat: hydronic", {"gray_tank_heat": "hydronic"}),
    ("US", "Drain valve of waste tank: heated", {"dump_valve_protection": "heated"}),
    ("DE", "Ablasshahn Abwasser: isoliert", {"dump_valve_protection": "insulated"}),
    ("FR", "Robinet de vidange des eaux usées : isolé", {"dump_valve_protection": "insulated"}),
    ("US", "Water tank, gray: 17 gal", {"gray_tank_l": 64.352}),
    ("US", "Main heater: propane furnace", {"heater_type": "forced_air", "heater_fuel": "propane"}),
    ("FR", "Réservoir de carburant du porteur : 90 l", {"fuel_tank_l": 90}),
    ("FR", "Empattement du porteur : 3,45 m", {"wheelbase_mm": 3450}),
    ("FR", "Hauteur : 2,59 m", {"height_mm": 2590}),
    ("FR", "Hauteur libre intérieure : 1,92 m", {"interior_height_mm": 1920}),
    ("DE", "Grundfahrzeug: Corrow 35", {"chassis": "Corrow 35"}),
    ("DE", "Außenhöhe: 2,59 m", {"height_mm": 2590}),
    ("US", "Fuel tank (engine): 24 gal", {"fuel_tank_l": 90.85}),
    ("US", "Gray and black tanks: heated", {"gray_tank_heat": "unspecified", "black_tank_heat": "unspecified"}),
    ("US", "Sleeps: 2 (+1)", {"sleeps": 3}),
    ("US", "It has a 50 amp shore power inlet, not one of 70 amp.", {"shore_power_a": 50}),
    (
        "US",
        "It has 190 W of solar on the roof and plugs into 30 amp shore power and not into 50 amp.",
        {"solar_w": 190, "shore_power_a": 30},
    ),
    (
        "DE",
        "Der 21 hat einen Landstromanschluss mit 16 A und nicht mit 36 A und hat eine Solaranlage mit 200 W.",
        {"shore_power_a": 16, "solar_w": 200},
    ),
    ("FR", "Il se branche sur une prise extérieure de 16 A et non de 32 A.", {"shore_power_a": 16}),
    ("DE", "Wasserleitungen: teilweise unterflur", {"water_lines_location": "mixed"}),
    ("US", "Water lines: in heated duct", {"water_lines_location": "enclosed"}),
    ("US", "Insulated cab shades: no", {"cab_shades_insulated": False}),
    ("US", "Heated water lines No", {"water_lines_heated": False}),
    ("FR", "Fenêtres : double vitrage, simple aux portes arrière", {"window_glazing": "mixed"}),
    ("DE", "Fenster: seitlich doppelt, hinten einfach verglast", {"window_glazing": "mixed"}),
    ("US", "Gray and black tank: 20 gal", {}),
    ("US", "Interior ceiling height: 75 in", {"interior_height_mm": 1905}),
    ("US", "Lowest outside temperature: 20 F", {"rated_min_temp_c": -6.67}),
    ("DE", "Erwärmung Abwassertank: Warmluft aus der Heizung", {"gray_tank_heat": "warm_air"}),
    ("DE", "Wasserleitungen mit Rohrisolierung: Serie", {"water_lines_insulated": True}),
    ("DE", "Isoliertes Faltrollo im Fahrerhaus", {"cab_shades_insulated": True}),
    ("DE", "Keine thermische Trennung an den Spanten", {"thermal_break": False}),
    ("FR", "Chauffage : puissance délivrée 4,0 kW", {"heater_output_w": 4000}),
    (
        "US",
        "Gray tank location: sealed underbody housing",
        {"gray_tank_location": "enclosed"},
    ),
    ("US", "The van has a furnace that burns LP gas.", {"heater_type": "forced_air", "heater_fuel": "propane"}),
    ("FR", "Chauffage du réservoir d'eaux usées : air chaud du chauffage", {"gray_tank_heat": "warm_air"}),
    ("US", "Gray tank heater: Warm-air duct", {"gray_tank_heat": "warm_air"}),
    ("US", "Power: Diesel, 2.8 L four", {}),
    ("DE", "Leistung: Diesel, 125 kW", {}),
    ("FR", "Puissance : électrique, 110 kW", {}),
]


@pytest.mark.parametrize(("region", "line", "expected"), SEVERAL)
def test_the_order_of_the_values_is_that_of_the_label(states, region, line, expected):
    states(region, line, expected)


@pytest.mark.parametrize(("region", "line", "expected"), LABELS)
def test_labels_of_six_regions_name_their_fields(states, region, line, expected):
    states(region, line, expected)


def test_a_consumption_that_is_not_had_names_no_fuel(facts_of):
    facts = facts_of(
        "Marrowfen Drift 540\nTechnische Daten, Modelljahr 2026\n\nRadstand: 4040 mm\nLänge: 5990 mm\n"
        "Heizung: Luftheizung, Gas\nDieselverbrauch bei Volllast: entfällt\n"
    )
    assert {fact.value for fact in facts if fact.field == "heater_fuel"} == {"propane"}


def test_a_unit_that_ends_a_label_counts_where_the_label_names_only_what_is_measured(facts_of):
    table = "| | Drift 19 |\n|---|---|\n| Overall length | 5.90 m |\n| GVWR | 3500 kg |\n| Sleeps | 2 |\n"
    facts = facts_of(f"# Marrowfen Drift 19\n\n{table}| Heat output kW | 3.5 |\n| Fuel use L/h | 0.4 |\n", "heat.md")
    values = {fact.field: fact.value for fact in facts if not fact.rejected}
    assert (values["heater_output_w"], values["heater_consumption_l_h"]) == (3500, 0.4)


def test_lines_in_a_heated_chase_are_enclosed_and_not_themselves_heated(facts_of):
    facts = facts_of("Marrowfen Drift 590\n\nOverall length: 5990 mm\nWater lines run: in heated chase\nSleeps: 2\n")
    said = {fact.field: fact.value for fact in facts}
    assert said["water_lines_location"] == "enclosed"
    assert "water_lines_heated" not in said
