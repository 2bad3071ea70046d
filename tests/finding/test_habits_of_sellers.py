"""How sellers of used vans and writers of letters put things: what was done last year, what stands in the weather."""

import pytest

SAID = [
    # what was done to this van is said of this van
    ("UK", "90 Ah AGM leisure battery, new last year", {"battery_ah": 90, "battery_chemistry": "agm"}),
    ("UK", "Solar panel 120 W fitted last year", {"solar_w": 120}),
    ("FR", "Batterie cellule gel 100 Ah, changée l'an dernier", {"battery_ah": 100, "battery_chemistry": "gel"}),
    ("DE", "Aufbaubatterie 80 Ah, im Vorjahr erneuert", {"battery_ah": 80}),
    ("UK", "Leisure battery 100 Ah (last year 90 Ah)", {"battery_ah": 100}),
    # what a maker claims is no hedge, what is announced is one
    ("FR", "Le constructeur annonce un fourgon « quatre saisons ».", {"season_claim": "quatre saisons"}),
    ("FR", "Panneau solaire de 200 W annoncé pour 2027", {}),
    # bottles are counted by weight
    ("FR", "2 bouteilles de 13 kg, dont une pleine", {"propane_mass_kg": 26}),
    ("UK", "Two bottles of 6 kg", {"propane_mass_kg": 12}),
    ("FR", "2 bouteilles de 1,5 l de cidre offertes", {}),
    # what it tows is not what it weighs
    ("AU", "GVM is 3,900 kg. It'll tow 2,500 kg braked.", {"gvwr_kg": 3900}),
    ("AU", "10 A inlet on the left side, 240 V", {"shore_power_a": 10}),
    ("UK", "Inside there is 1.95 m to stand up in.", {"interior_height_mm": 1950}),
    ("UK", "We had one up in the hills testing at minus 9 degrees.", {"rated_min_temp_c": -9}),
    ("UK", "The drain valve hangs out in the weather.", {"dump_valve_protection": "exposed"}),
    # one word for the wheels and what the engine burns, places behind other things, nights in the cold
    ("UK", "It is a rear-wheel drive petrol.", {"drive": "rear", "engine_fuel": "gasoline"}),
    (
        "US",
        "30 gal fresh tank behind the passenger’s seat, inside the cabin",
        {"fresh_tank_l": 113.56, "fresh_tank_location": "interior"},
    ),
    ("US", "Ribs isolated from the lining: no", {"thermal_break": False}),
    ("DE", "Holme thermisch vom Blech getrennt", {"thermal_break": True}),
    ("DE", "Ein Wagen stand drei Nächte bei −21 °C auf dem Hof.", {"rated_min_temp_c": -21}),
    # what leaves for longer is no base vehicle
    ("FR", "La grande part plus loin et plus haut.", {}),
]


@pytest.mark.parametrize("region, line, expected", SAID, ids=[line for _, line, _ in SAID])
def test_what_a_seller_says(states, region, line, expected):
    states(region, line, expected)


RANGE = """# Marrowfen

## Drift and Gorse – campervans for the 2026 season

The Drift is the short one and comes with two berths or four; the Gorse is our long one.

| | Drift 2 | Drift 4 | Gorse 6 |
|---|---|---|---|
| Length | 5.40 m | 5.40 m | 6.36 m |
| GVM | 3300 kg | 3300 kg | 4100 kg |
| Sleeps | 2 | 4 | 6 |
"""


def test_two_numbers_of_a_range_are_those_of_its_vans_and_nobody_says_which(facts_of):
    found = [(f.model, f.value) for f in facts_of(RANGE, "range.md") if f.field == "sleeps" and not f.rejected]
    assert sorted(found) == [("Drift 2", 2), ("Drift 4", 4), ("Gorse 6", 6)]


def test_a_legend_goes_on_in_the_next_line(facts_of):
    text = (
        "# Marrowfen Drift 2026\n\n✓ serienmäßig P gegen Aufpreis\n\nx nicht erhältlich\n\n"
        "| | Drift 54 | Drift 60 |\n|---|---|---|\n| Länge | 5,40 m | 5,99 m |\n"
        "| Gesamtgewicht | 3.300 kg | 3.500 kg |\n"
        "| Fußbodenheizung | P | ✓ |\n| Wechselrichter 900 W | x | P |\n"
    )
    said = {(f.model, f.field): f.availability for f in facts_of(text, "drift.md") if not f.rejected}
    assert said["Drift 54", "heated_floor"] == "optional"
    assert said["Drift 60", "inverter_w"] == "optional"
    assert said["Drift 54", "inverter_w"] == "not_available"


def test_the_voltage_of_another_thing_heats_nothing(facts_of):
    text = """# Marrowfen Drift 21

Marrowfen Campers, MY2026. Overall length: 6.36 m. GVM: 3500 kg. Sleeps 2.

## Heat and power

- Diesel air heater, 2 kW output
- 10 A inlet for the campsite, 240 V
"""
    assert [fact.value for fact in facts_of(text, "drift.md") if fact.field == "heater_fuel"] == ["diesel"]
