"""Figures that look like a field and are none, and other vans than this one."""

import pytest

LOOKALIKES = [
    ("US", "GCWR: 13,930 lb", {}),
    ("US", "Inverter 2,000 W: N/A", {}),
    ("US", "Tyres: 225/75 R16 C", {}),  # no thermal resistance
    ("US", "GAWR front / rear: 4,410 / 5,514 lb", {}),
    ("US", "UVW: 7,600 lb", {}),
    ("US", "Payload: 1,750 lb", {}),
    ("US", "DEF tank: 5 gal", {}),
    ("AU", "Tare: 2,900 kg", {}),
    ("AU", "GCM: 6,000 kg", {}),
    ("US", "Tow rating: 5,000 lb", {}),
    ("US", "Roof air conditioner: 13,500 BTU", {}),
    ("US", "Air conditioner 13,500 BTU/h with heat strip", {}),
    ("US", "DC-DC charger: 60 A", {}),
    ("US", "Alternator: 280 A", {}),
    ("US", "Drive battery: 113 kWh", {}),
    ("US", "Width with mirrors: 95 in", {}),
    ("US", "Interior width: 70 in", {}),
    ("US", "Fridge: 90 L", {}),
    ("US", "Refrigerator: 3.1 cu ft, 12 V, 65 L", {}),
    ("DE", "Kühlschrank: 90 l", {}),
    ("DE", "Anhängelast: 2.500 kg", {}),
    ("DE", "AdBlue-Tank: 20 l", {}),
    ("DE", "Breite mit Spiegeln: 2.508 mm", {}),
    ("DE", "Zuggesamtgewicht: 6.000 kg", {}),
    ("DE", "Masse in fahrbereitem Zustand: 2.900 kg", {}),
    ("FR", "PTRA : 6 000 kg", {}),
    ("FR", "Réfrigérateur : 90 l", {}),
    ("FR", "Réservoir d'AdBlue : 20 l", {}),
    ("FR", "Charge utile : 600 kg", {}),
    ("FR", "Masse en ordre de marche : 2 900 kg", {}),
    ("QC", "Climatiseur de toit : 13 500 BTU", {}),
    ("QC", "PNBC : 13 930 lb", {}),
    ("UK", "MIRO: 2900 kg", {}),
    ("UK", "Fridge: 84 litres", {}),
]

OTHERS = [
    ("US", "Comments\n\nSam: I slept in mine at -15 °F with two dogs.\nRob: my tank holds 40 gal of fresh water.", {}),
    ("US", "You may also like\n\nFellow 24: 9,900 lb GVWR, sleeps 4, 40 gal fresh water", {}),
    ("US", "Fellow 24: 9,900 lb GVWR, sleeps 4, 40 gal fresh water", {}),
    (
        "US",
        "Last year's model had a 20 gal fresh water tank; the tank now holds 27 gal of fresh water.",
        {"fresh_tank_l": 102.206},
    ),
    ("UK", "Last year's model had a 70 litre fresh water tank.", {}),
    ("DE", "Das Vorjahresmodell hatte 80 l Frischwasser.", {}),
    ("FR", "Le modèle de l'an dernier avait un réservoir d'eau propre de 80 l.", {}),
    (
        "US",
        "The lithium bank of 400 Ah replaces the stock 100 Ah AGM battery.",
        {"battery_ah": 400, "battery_chemistry": "lithium"},
    ),
    (
        "US",
        "Battery: 200 Ah lithium (replaces the stock 100 Ah AGM)",
        {"battery_ah": 200, "battery_chemistry": "lithium"},
    ),
    ("US", "Our coldest night in it was -12 °F, and the pipes held.", {}),
    ("US", "Owner's coldest night: -12 °F", {}),
    ("FR", "Ma nuit la plus froide à bord : -24 °C.", {}),
    ("DE", "Meine kälteste Nacht im Wagen: -24 °C.", {}),
]


@pytest.mark.parametrize(("region", "line", "expected"), LOOKALIKES)
def test_a_figure_of_something_else_is_no_value_of_the_van(states, region, line, expected):
    states(region, line, expected)


@pytest.mark.parametrize(("region", "line", "expected"), OTHERS)
def test_what_is_said_of_another_van_or_by_a_reader_is_not_said_of_this_van(states, region, line, expected):
    states(region, line, expected)


def test_the_engines_warmth_in_the_boiler_is_not_the_engine(printed):
    assert "engine_fuel" not in printed("US", "Water heater: 3 gal, electric, warmed by the engine loop")


def test_a_heating_cord_on_a_tank_warms_the_tank(printed):
    stated = printed("FR", "Cordon chauffant 12 V sur le réservoir d'eaux grises")
    assert (stated["gray_tank_heat"], "water_lines_heated" in stated) == ("electric_pad", False)


def test_what_is_to_be_done_with_any_tank_says_nothing_of_this_van(printed):
    assert printed("DE", "Vor dem ersten Frost ist ein unbeheizter Abwassertank zu leeren.") == {}
    assert printed("US", "An unheated gray tank should be drained before the first frost.") == {}


def test_the_exhaust_of_a_heater_is_no_gas_that_it_burns(printed):
    assert "heater_fuel" not in printed("US", "Exhaust gas can kill: keep snow away from the heater exhaust.")
    assert "heater_fuel" not in printed("FR", "Les gaz d'échappement du chauffage sont dangereux.")


def test_an_alarm_for_carbon_monoxide_in_a_list_of_equipment_warns_of_nothing(printed):
    said = {"shore_power_a": 16, "window_glazing": "double"}
    assert printed("UK", "Standard: double-glazed windows; 16 A hook-up; smoke and carbon monoxide detectors.") == said
    french = "De série : baies en double vitrage ; prise extérieure 16 A ; détecteur de monoxyde de carbone."
    assert printed("FR", french) == said


@pytest.mark.parametrize(
    "line", ["Ask to sleep in one before you order.", "Open the dump valve before you store the van."]
)
def test_what_a_reader_is_to_do_is_not_how_the_van_is(printed, line):
    assert printed("US", line) == {}


@pytest.mark.parametrize(
    ("region", "line"),
    [
        ("US", "Each van leaves us with one of Mabel's wool blankets and hemp curtains."),
        ("FR", "Chaque fourgon part avec une couverture en laine de mouton."),
        ("DE", "Zu jedem Fahrzeug gehört eine Decke aus Schafwolle."),
    ],
)
def test_wool_that_keeps_people_warm_insulates_no_wall(printed, region, line):
    assert printed(region, line) == {}
    assert "insulation_material" in printed("US", "The walls are insulated with wool, 40 mm.")


def test_the_furnace_whose_loop_warms_the_water_is_not_told_by_it(printed):
    said = printed("US", "Water heater: 2.5 gal, heated by the furnace loop or by 120 V")
    assert said.keys() == {"water_heater_l"}


@pytest.mark.parametrize(
    ("region", "line"),
    [("US", "Furnace fan: 36 W"), ("DE", "Heizung: Dieselheizung, Gebläse und Steuerung 36 W"),
     ("FR", "Chauffage : à air pulsé, ventilateur et commande 36 W")],
)  # fmt: skip
def test_the_fan_of_the_heater_is_what_it_draws(printed, region, line):
    assert printed(region, line)["heater_power_draw_w"] == 36
    assert printed("US", "Roof fan: 36 W") == {}
