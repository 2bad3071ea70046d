"""Every habit of real spec pages that was asked for, by its name: lines of several regions and what they state.

A line states what is said here and nothing else. Factors: NIST SP 811 (2008), Appendix B.
"""

import pytest

GALLON, IMPERIAL, POUND, BTU, R_VALUE = 3.785411784, 4.54609, 0.45359237, 0.29307107, 0.1761
SIZE = {"length_mm": 6358, "width_mm": 2050, "height_mm": 2590}
SURFACES = "ceiling+floor+walls"
NEITHER = {"gray_tank_insulated": False, "gray_tank_heat": "none"}
LITHIUM = {"battery_ah": 400, "battery_chemistry": "lithium"}

NAMED = {
    "length/width/height": [
        ("DE", "Länge/Breite/Höhe 6358/2050/2590 mm", SIZE),
        ("DE", "Maße (L x B x H): 6358 x 2050 x 2590 mm", SIZE),
        ("DE", "Höhe/Breite/Länge: 2590/2050/6358 mm", SIZE),
        ("US", "Dimensions (L/W/H): 250 / 81 / 110 in", {"length_mm": 6350, "width_mm": 2057.4, "height_mm": 2794}),
        ("UK", "L/W/H: 6.36 m x 2.05 m x 2.59 m", {"length_mm": 6360, "width_mm": 2050, "height_mm": 2590}),
        ("FR", "Dimensions extérieures (L x l x h) : 6358 x 2050 x 2590 mm", SIZE),
    ],
    "fresh/waste tank": [
        ("DE", "Frisch-/Abwassertank 100/92 l", {"fresh_tank_l": 100, "gray_tank_l": 92}),
        ("DE", "Tankvolumen Frisch-/Abwasser: 100/92 l", {"fresh_tank_l": 100, "gray_tank_l": 92}),
        ("UK", "Waste/fresh water: 75/100 litres", {"fresh_tank_l": 100, "gray_tank_l": 75}),
        ("US", "Holding tanks (fresh/gray/black): 27 / 20 / 10 gal",
         {"fresh_tank_l": 27 * GALLON, "gray_tank_l": 20 * GALLON, "black_tank_l": 10 * GALLON}),
        ("FR", "Eaux usées / eau propre : 90 / 100 l", {"fresh_tank_l": 100, "gray_tank_l": 90}),
    ],
    "GVWR/UVW/OCCC": [
        ("US", "GVWR/UVW/OCCC: 9,350/7,600/1,750 lb", {"gvwr_kg": 9350 * POUND}),
        ("US", "GVWR / GAWR front / GAWR rear: 9,350 / 4,410 / 5,515 lb", {"gvwr_kg": 9350 * POUND}),
        ("AU", "Tare/ATM/GVM: 3300/3500/4490 kg", {"gvwr_kg": 4490}),
        ("FR", "PTAC / PV / CU : 3 500 / 2 850 / 650 kg", {"gvwr_kg": 3500}),
        ("DE", "Leergewicht/zGG: 2850/3500 kg", {"gvwr_kg": 3500}),
    ],
    "insulation floor/roof/wall": [
        ("US", "Insulation roof/wall/floor (in): 2/1.5/1",
         {"insulation_thickness_mm": 38.1, "insulated_surfaces": SURFACES}),
        ("US", "Insulation R-value wall/roof/floor: R-7 / R-11 / R-9",
         {"insulation_r_si": 7 * R_VALUE, "insulated_surfaces": SURFACES}),
        ("DE", "Isolierung Wand/Dach/Boden: 25/40/30 mm",
         {"insulation_thickness_mm": 25, "insulated_surfaces": SURFACES}),
    ],
    "other pairs": [
        ("DE", "Schlaf-/Sitzplätze: 2/4", {"sleeps": 2}),
        ("US", "Furnace input/output (BTU/h): 16,000/13,500",
         {"heater_input_w": 16000 * BTU, "heater_output_w": 13500 * BTU}),
        ("DE", "Breite ohne/mit Spiegel: 2.050 / 2.508 mm", {"width_mm": 2050}),
        ("UK", "Width (excl./incl. mirrors): 2.05 m / 2.49 m", {"width_mm": 2050}),
    ],
    "fresh water capacity w/heater": [
        ("US", "Fresh water capacity w/heater: 33 gal", {"fresh_tank_l": 33 * GALLON}),
        ("DE", "Frischwasservorrat inkl. Warmwasserboiler: 110 l", {"fresh_tank_l": 110}),
        ("FR", "Eau propre (chauffe-eau compris) : 110 l", {"fresh_tank_l": 110}),
    ],
    "filling while driving / full": [
        ("DE", "Frischwassertank: 10 / 100 l", {"fresh_tank_l": 100}),
        ("DE", "Frischwassertank: 20 l (Fahrstellung) / 100 l (voll)", {"fresh_tank_l": 100}),
        ("DE", "Frischwasser Fahrt/voll: 20/100 l", {"fresh_tank_l": 100}),
        ("FR", "Eau propre (route/plein) : 20 / 100 l", {"fresh_tank_l": 100}),
        ("UK", "Fresh water: 100 litres (20 litres travelling)", {"fresh_tank_l": 100}),
    ],
    "in series": [
        ("US", "House battery: 2 x 6 V, 220 Ah in series", {"battery_ah": 220, "battery_wh": 2640}),
        ("DE", "Bordbatterien: 2 x 6 V, 220 Ah in Reihe", {"battery_ah": 220, "battery_wh": 2640}),
        ("FR", "Batteries cellule : 2 x 6 V, 220 Ah en série", {"battery_ah": 220, "battery_wh": 2640}),
        ("FR", "Batterie cellule 2 x 95 Ah de série", {"battery_ah": 190}),
    ],
    "multiples": [
        ("US", "House batteries: (2) 100 Ah", {"battery_ah": 200}),
        ("US", "House batteries: 100 Ah x 2", {"battery_ah": 200}),
        ("US", "House batteries: 2 pcs. 100 Ah", {"battery_ah": 200}),
        ("US", "House batteries: pair of 100 Ah AGM", {"battery_ah": 200, "battery_chemistry": "agm"}),
        ("AU", "Fresh water: 2 x 55 L", {"fresh_tank_l": 110}),
        ("US", "Solar: 2 x 165 W", {"solar_w": 330}),
        ("US", "Solar: 165 W (x2)", {"solar_w": 330}),
        ("US", "Solar: 165 W (2)", {"solar_w": 165}),  # the sign of a note, it may be
    ],
    "sleeps 2 + 1, 2–3": [
        ("US", "Sleeps 2 + 1", {"sleeps": 3}),
        ("US", "Sleeps: 2–3", {"sleeps": 3}),
        ("FR", "Couchages : 2/3", {"sleeps": 3}),
        ("DE", "Schlafplätze: 2 bis 3", {"sleeps": 3}),
    ],
    "a model number is no rating": [
        ("US", "Inverter: Voltmoor 3000", {}),
        ("DE", "Heizung: Brimstow 4000 Diesel", {"heater_fuel": "diesel"}),
    ],
    "GCWR, GAWR, UVW, payload, tare": [
        ("US", "Gross combination weight rating: 13,930 lb", {}),
        ("US", "Rear axle capacity: 5,515 lb", {}),
        ("UK", "Mass in running order: 2850 kg", {}),
        ("AU", "Tare mass: 2900 kg", {}),
        ("DE", "Max. Zuladung: 2.650 kg", {}),
        ("FR", "Charge utile maximale : 2 650 kg", {}),
    ],
    "DEF": [
        ("US", "Diesel exhaust fluid tank: 8 gal", {}),
        ("DE", "AdBlue Tankinhalt: 40 l", {}),
        ("DE", "Tankinhalt AdBlue: 40 l", {}),
        ("DE", "Tankinhalt: 90 l", {"fuel_tank_l": 90}),
        ("US", "Fuel / DEF tank: 24.5 / 5.8 gal", {"fuel_tank_l": 24.5 * GALLON}),
    ],
    "tow rating": [("US", "Towing capacity: 5,000 lb", {}), ("DE", "Anhängelast gebremst: 2.500 kg", {})],
    "air-conditioner BTU": [("US", "Rooftop A/C: 13,500 BTU", {}), ("DE", "Dachklimaanlage: 2.400 W", {})],
    "DC charger amperes": [("US", "DC to DC charger: 40A", {}), ("FR", "Chargeur CC-CC : 40 A", {})],
    "drive battery": [
        ("US", "High-voltage battery: 113 kWh", {}),
        ("UK", "EV battery: 35 kWh", {}),
        ("DE", "Fahrzeugbatterie: 95 Ah", {}),
    ],
    "mirror and interior width": [
        ("DE", "Breite inkl. Außenspiegel: 2.508 mm", {}),
        ("US", "Living area width: 70 in", {}),
    ],
    "fridge litres": [("UK", "Fridge/freezer: 130 litres", {}), ("DE", "Kühlschrank/Gefrierfach: 84/6 l", {})],
    "another model's card": [
        ("US", "Related models\n\n- Fellow 24, sleeps 4, 40 gal fresh water, 400 W solar", {}),
        ("FR", "Vous aimerez aussi\n\nFellow 630 : 4 couchages, 120 l d'eau propre", {}),
        ("US", "You may like this one too\n\nFellow 23 Shore: 11030 lb GVWR, sleeps 3, 19 gal fresh water", {}),
    ],
    "a reader's comment": [
        ("US", "3 Comments\n\nSam says: Ours has 400 W of solar.\n\nRob says: My gray tank is not heated.", {}),
        ("DE", "Kommentare\n\nSven: Mein Abwassertank ist nicht beheizt und fasst 60 l.", {}),
    ],
    "last year's model": [
        ("US", "Solar: 400 W (was 200 W)", {"solar_w": 400}),
        ("DE", "Frischwasser: 100 l (Vorjahr: 80 l)", {"fresh_tank_l": 100}),
        ("FR", "Eau propre : 100 l (auparavant 80 l)", {"fresh_tank_l": 100}),
        ("UK", "The old model carried 70 litres of fresh water.", {}),
        ("US", "Solar: 400 W\n\nThe 2025 model had 200 W of solar.", {"solar_w": 400}),
    ],
    "a stock part an owner has replaced": [
        ("US", "A 400 Ah lithium battery replaced the stock 100 Ah AGM.", LITHIUM),
        ("US", "House battery: 400 Ah lithium (stock: 100 Ah AGM)", LITHIUM),
        ("US", "Owner upgrade: the stock 100 Ah AGM was swapped for a 400 Ah lithium battery.", LITHIUM),
        ("DE", "Bordbatterie: 400 Ah Lithium (ersetzt die serienmäßige 100-Ah-AGM-Batterie)", LITHIUM),
    ],
    "an owner's coldest night": [
        ("US", "Coldest night so far: -12 °F", {}),
        ("FR", "Nuit la plus froide : -24 °C", {}),
    ],
    "standard and option": [
        ("DE", "Solaranlage 120 W: Mehrpreis 990 €", {"solar_w": ("option", 120)}),
        ("DE", "Solaranlage 120 W: gegen Aufpreis", {"solar_w": ("option", 120)}),
        ("FR", "Panneau solaire : 120 W (de série)", {"solar_w": 120}),
        ("DE", "Serienausstattung\n\n- Solaranlage 120 W\n\nSonderausstattung\n\n- Wechselrichter 1500 W",
         {"solar_w": 120, "inverter_w": ("option", 1500)}),
    ],
    "numbers": [
        ("FR", "Longueur : 5 m 99", {"length_mm": 5990}),
        ("DE", "Länge in mm: 5998", {"length_mm": 5998}),
        ("US", "Length (ft-in): 20-11", {"length_mm": 6375.4}),
        ("US", "Furnace: 16,000 B.T.U.", {"heater_type": "forced_air", "heater_rating_w": 16000 * BTU}),
        ("US", "- Two 20 lb propane cylinders", {"propane_mass_kg": 40 * POUND}),
    ],
    "gas and gallons": [
        ("US", "Engine fuel: gas", {"engine_fuel": "gasoline"}),
        ("US", "Engine fuel: 25 gal", {"fuel_tank_l": 25 * GALLON}),
        ("AU", "Engine fuel: petrol", {"engine_fuel": "gasoline"}),
        (
            "AU",
            "Engine: petrol, 2.5 L\nFurnace: propane\nGas: 40 L",
            {"engine_fuel": "gasoline", "heater_fuel": "propane", "heater_type": "forced_air", "propane_tank_l": 40},
        ),
        ("QC", "Chauffage : au gaz propane", {"heater_fuel": "propane"}),
        ("US", "Fuel type: Gas", {"engine_fuel": "gasoline"}),
        ("UK", "Waste water: 15 gal", {"gray_tank_l": 15 * IMPERIAL}),
    ],
    "neither insulated nor heated": [
        ("US", "Gray tank: not heated or insulated", NEITHER),
        ("FR", "Réservoir d'eaux usées : ni isolé, ni chauffé", NEITHER),
        ("DE", "Weder Frisch- noch Abwassertank sind beheizt.", {"fresh_tank_heat": "none", "gray_tank_heat": "none"}),
        ("US", "Neither the fresh nor the gray tank is heated.", {"fresh_tank_heat": "none", "gray_tank_heat": "none"}),
        ("US", "The gray tank has no heater.", {"gray_tank_heat": "none"}),
    ],
    "prepared for, available soon": [
        ("US", "Solar: pre-wired, 400 W", {}),
        ("US", "Solar: 200 W (coming soon)", {}),
        ("US", "Solar ready: 200 W", {}),
        ("US", "There is room for a second battery of 100 Ah.", {}),
        ("DE", "Solaranlage 120 W: demnächst verfügbar", {}),
        ("FR", "- Prééquipement pour panneau solaire 120 W", {}),
    ],
    "if equipped": [
        ("US", "Solar, if equipped: 200 W", {"solar_w": ("option", 200)}),
        ("DE", "Solaranlage (falls vorhanden): 120 W", {"solar_w": ("option", 120)}),
    ],
    "winterized as a state": [
        ("US", "It has been winterized.", {}),
        ("US", "Status: winterized", {}),
        ("US", "We winterized it last fall.", {}),
        ("UK", "- Fully winterised", {"season_claim": "Fully winterised"}),
    ],
    "battery heating: no": [
        ("US", "Battery heating: No", {"battery_heated": False}),
        ("US", "Self-heating batteries: yes", {"battery_heated": True}),
        ("US", "Heated battery: 200 Ah", {"battery_heated": True, "battery_ah": 200}),
        ("DE", "Batterieheizung: nein", {"battery_heated": False}),
        ("FR", "Chauffage de la batterie : non", {"battery_heated": False}),
        ("FR", "La batterie n'est pas chauffée.", {"battery_heated": False}),
    ],
    "surfaces by label": [
        ("US", "Roof: hemp wool", {"insulation_material": "natural_fiber", "insulated_surfaces": "ceiling"}),
        ("DE", "Dach: Hanfwolle", {"insulation_material": "natural_fiber", "insulated_surfaces": "ceiling"}),
        ("FR", "Parois et toit : liège", {"insulation_material": "cork", "insulated_surfaces": "ceiling+walls"}),
        ("US", "Floor: cork", {}),
        ("UK", "Roof: fibreglass", {}),
        ("US", "Walls: cedar", {}),
        ("UK", "Curtains: wool", {}),
    ],
}  # fmt: skip


@pytest.mark.parametrize("name", NAMED)
def test_a_habit_of_real_pages_is_read_right(states, name):
    for region, line, expected in NAMED[name]:
        states(region, line, expected)
