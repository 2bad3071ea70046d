"""Ordinary wordings of brochures and listings: pairs in one line, upper bounds, things denied, places of valves."""

import pytest

GALLON, INCH = 3.785411784, 25.4  # NIST SP 811 (2008), Appendix B

LINES = [
    # short names, each with a colon and its figure
    ("US", "Fresh: 31 gal / Gray: 22 gal / Black: 11 gal",
     {"fresh_tank_l": 31 * GALLON, "gray_tank_l": 22 * GALLON, "black_tank_l": 11 * GALLON}),
    ("US", "Gray: 22 gal, Black: 11 gal", {"gray_tank_l": 22 * GALLON, "black_tank_l": 11 * GALLON}),
    ("UK", "Fresh: 95 L; Waste: 70 L", {"fresh_tank_l": 95, "gray_tank_l": 70}),
    ("FR", "Propre : 95 l / Usées : 70 l", {"fresh_tank_l": 95, "gray_tank_l": 70}),
    ("US", "L: 236 in / W: 80 in / H: 112 in",
     {"length_mm": 236 * INCH, "width_mm": 80 * INCH, "height_mm": 112 * INCH}),
    # berths up to a number
    ("US", "Sleeps up to five", {"sleeps": 5}),
    ("US", "It sleeps up to 3.", {"sleeps": 3}),
    ("FR", "Jusqu'à 3 couchages", {"sleeps": 3}),
    ("FR", "Couchages : jusqu'à 3", {"sleeps": 3}),
    ("DE", "Schlafplätze: bis zu 3", {"sleeps": 3}),
    # what is said of a thing that is denied
    ("US", "No fresh tank is heated.", {"fresh_tank_heat": "none"}),
    ("US", "No fresh water tank is heated.", {"fresh_tank_heat": "none"}),
    ("DE", "Kein Frischwassertank ist beheizt.", {"fresh_tank_heat": "none"}),
    ("US", "No gray tank is heated or insulated.", {"gray_tank_heat": "none", "gray_tank_insulated": False}),
    ("US", "No water line runs outside the heated space.", {}),
    ("US", "600 Ah battery with internal heating", {"battery_ah": 600, "battery_heated": True}),
    ("US", "Double-pane glass all round", {"window_glazing": "double"}),
    # drained for the winter, warmed by air of the heater, one boiler for air and water
    ("DE", "Ein Ablasshahn zum Einwintern ist immer dabei.", {"winterizing_bypass": True}),
    ("FR", "Une vanne de vidange pour l’hivernage est montée sur tous les modèles.", {"winterizing_bypass": True}),
    ("DE", "Abwassertank 90 l, Warmluft aus der Heizung", {"gray_tank_l": 90, "gray_tank_heat": "warm_air"}),
    ("DE", "Ablassventil in der beheizten Wanne", {"dump_valve_protection": "heated_compartment"}),
    ("UK", "Space heating: Diesel combined boiler and blown air", {"heater_type": "combined", "heater_fuel": "diesel"}),
    ("US", "Space heat: Gasoline hydronic", {"heater_type": "hydronic", "heater_fuel": "gasoline"}),
    ("US", "4.2-gallon electric and engine-heat water heater", {"water_heater_l": 4.2 * GALLON}),
    ("UK", "Diesel heater that burns 0.31 litres/hr", {"heater_consumption_l_h": 0.31, "heater_fuel": "diesel"}),
    ("US", "The heater burns 0.2 gal of gasoline an hour flat out.",
     {"heater_consumption_l_h": 0.2 * GALLON, "heater_fuel": "gasoline"}),
    ("UK", "Water pipes inside, unlagged", {"water_lines_location": "interior", "water_lines_insulated": False}),
    ("DE", "Wasserrohre in Schaumstoff eingepackt", {"water_lines_insulated": True}),
    ("DE", "Bordbatterie mit Selbstheizung", {"battery_heated": True}),
    ("DE", "Abwassertank durch Warmluft aus der Heizung temperiert", {"gray_tank_heat": "warm_air"}),
    ("UK", "Seating / sleeping: 4 / 3", {"sleeps": 3}),
    # where a valve is
    ("DE", "Ablassventil in einer beheizten Wanne", {"dump_valve_protection": "heated_compartment"}),
    ("US", "Dump valve in a heated, enclosed bay", {"dump_valve_protection": "heated_compartment"}),
    ("UK", "Drain valve: in heated cellar", {"dump_valve_protection": "heated_compartment"}),
    ("US", "Dump valve: in heated service area", {"dump_valve_protection": "heated_compartment"}),
    ("US", "The gray tank hangs below the floor.", {"gray_tank_location": "underbody"}),
    ("UK", "14L gas/electric hot water service", {"water_heater_l": 14}),
    ("UK", "14 litre gas and electric water heater", {"water_heater_l": 14}),
    ("US", "The fresh tank stands beside the rear bed, inside the cabin.", {"fresh_tank_location": "interior"}),
    # what is poured in, and what something is added to, is no tank
    ("US", "Close the taps, turn the valves and pump about 3 gal of drinking-water-safe antifreeze through.", {}),
    ("US", "Add a spoon of bleach to every 15 gal of fresh water.", {}),
    ("FR", "Ajouter un bouchon par 20 litres d'eau propre.", {}),
    ("DE", "Ein Teelöffel pro 20 Liter Frischwasser genügt.", {}),
    ("US", "Second solar panel (option), together: 340 W", {"solar_w": ("option", 340)}),
    ("US", "Below 10 °F the van should not be used with water in the tanks.", {"rated_min_temp_c": -12.2}),
    # a further berth: told by its number or by the total
    ("US", "Third sleeping place on the jump seat (option)", {"sleeps": ("option", 3)}),
    ("DE", "Dritter Schlafplatz (Option)", {"sleeps": ("option", 3)}),
    ("FR", "Troisième couchage (option)", {"sleeps": ("option", 3)}),
    ("US", "Gray tank in an insulated jacket", {"gray_tank_insulated": True}),
    ("UK", "Leisure battery, 105 Ah, in heated cupboard", {"battery_ah": 105, "battery_heated": True}),
    # what heats a tank, and what is no heat of the van
    ("FR", "Eaux usées chauffées par résistance 12 V", {"gray_tank_heat": "electric_pad"}),
    ("FR", "Cuve d'eaux usées chauffée par l'air du chauffage", {"gray_tank_heat": "warm_air"}),
    ("FR", "Demande électrique du chauffage : 46 W", {"heater_power_draw_w": 46}),
    ("US", "Heat pump air conditioner", {}),
    ("US", "All water lines run inside the heated living space", {"water_lines_location": "interior"}),
    # the tank of a toilet, and panels that are not installed
    ("UK", "Cassette toilet with 18 litre waste tank", {"toilet": "cassette", "cassette_l": 18}),
    ("DE", "Kassettentoilette mit 18-Liter-Fäkaltank", {"toilet": "cassette", "cassette_l": 18}),
    ("US", "Portable solar panel, 110 W", {}),
    ("DE", "Faltbares Solarmodul, 110 W", {}),
    # cautions tell no heater, and the heater of a tank burns nothing
    ("FR", "Gaz, chauffage et 230 V : montage et contrôle par des professionnels.", {}),
    ("DE", "Gas, Heizung und 230 V: Einbau und Wartung nur durch Fachbetriebe.", {}),
    ("US", "Keep furnace and heater vents clear of snow", {}),
    ("DE", "Abwassertankheizung: elektrisch, 12 V", {"gray_tank_heat": "electric_pad"}),
    ("DE", "Umluftgebläse mit 5 Ausströmern", {}),
    # base vehicles
    ("DE", "Fahrgestell: Corrow Hauler 3,5 t", {"chassis": "Corrow Hauler 3,5 t"}),
    ("US", "The Corrow Hauler 2500 with the 2.8-liter diesel",
     {"chassis": "Corrow Hauler 2500", "engine_fuel": "diesel"}),
    # a lining is no insulated wall
    ("UK", "Thermal break behind the wall lining", {"thermal_break": True}),
    # drains for winter, an empty mass in brackets, a jacket of foam
    ("FR", "Robinets de purge pour l'hiver : de série", {"winterizing_bypass": True}),
    ("FR", "PTAC : 3 300 kg (à vide environ 2 650 kg)", {"gvwr_kg": 3300}),
    ("US", "Dump valve: foam jacket", {"dump_valve_protection": "insulated"}),
    # a word that is not the toilet's, nor the heater's; what a height is measured in; folded mirrors
    ("US", "Dual-pane awning windows with cassette blinds", {"window_glazing": "double"}),
    ("US", "Insulation: foil-faced reflective layer", {"insulation_material": "reflective_foil"}),
    ("DE", "Dämmung: Alu-Reflexfolie", {"insulation_material": "reflective_foil"}),
    ("US", "A spare cassette: $95", {}),
    ("US", "A van of few words: gasoline chassis, propane heat, one bench.",
     {"engine_fuel": "gasoline", "heater_fuel": "propane"}),
    ("US", "21 ft 4 in long, 9 ft 5 in tall; 6 ft 3 in inside",
     {"length_mm": 6502.4, "height_mm": 2870.2, "interior_height_mm": 1905}),
    ("US", "74 in wide inside, 6 ft 3 in tall inside", {"interior_height_mm": 1905}),
    ("US", "Body width is 6 ft 7 in with the mirrors folded", {"width_mm": 2006.6}),
    # what is insulated or heated is the place, not what is in it
    ("US", "Gray tank: 20 gal, in the insulated under-floor bay",
     {"gray_tank_l": 75.708, "gray_tank_location": "enclosed"}),
    ("US", "All water lines inside the heated coach", {"water_lines_location": "interior"}),
    # other words for a pad, for a kit that drains, for fiber and breaks; what the roof is like when it is measured
    ("US", "Dump valve: 12 V heat blanket", {"dump_valve_protection": "heated"}),
    ("DE", "Ablasshahn: frei unter dem Wagen", {"dump_valve_protection": "exposed"}),
    ("DE", "Frost-Entleersatz für den Winter: Serie", {"winterizing_bypass": True}),
    ("DE", "Gedämmte Leitungen: Serie", {"water_lines_insulated": True}),
    ("UK", "Insulation: recycled bottle wool", {"insulation_material": "synthetic_fiber"}),
    ("UK", "Thermal barrier behind the panels: standard", {"thermal_break": True}),
    ("US", "Height, roof fan closed: 9 ft 5 in", {"height_mm": 2870.2}),
    ("FR", "Quatorze personnes, dont six ont déjà couché dans un fourgon", {}),
]  # fmt: skip


@pytest.mark.parametrize(("region", "line", "expected"), LINES)
def test_a_line_states_this_and_nothing_else(states, region, line, expected):
    states(region, line, expected)
