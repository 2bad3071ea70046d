"""Tanks said to be in a heated place, covers said not to be insulated, and further ordinary words."""

import pytest

GALLON = 3.785411784  # NIST SP 811 (2008), Appendix B
HEATED_PLACE = {"gray_tank_heat": "heated_compartment", "gray_tank_location": "enclosed"}

LINES = [
    ("US", "Water lines: Inside double floor", {"water_lines_location": "enclosed"}),
    ("US", "• Heat cable on the drain valve", {"dump_valve_protection": "heated"}),
    ("US", "• Gray drain valve with heat cable", {"dump_valve_protection": "heated"}),
    ("UK", "• Insulated pads for rear door windows", {"rear_shades_insulated": True}),
    ("US", "Engine: 2.8 L diesel, 4-cylinder", {"engine_fuel": "diesel"}),
    ("US", "• 2.5 L gasoline-electric hybrid", {"engine_fuel": "hybrid"}),
    ("US", "It burns gasoline in its engine.", {"engine_fuel": "gasoline"}),
    ("US", "Heating\n\n• Heated floor, electric", {"heated_floor": True}),
    ("DE", "Heizung\n\n• Fußbodenheizung, elektrisch", {"heated_floor": True}),
    ("DE", "Motor / Kraftstoff: Hybrid (Benzin/Elektro), 150 kW", {"engine_fuel": "hybrid"}),
    ("US", "The Drift drives on gasoline and fits a parking space.", {"engine_fuel": "gasoline"}),
    ("DE", "• Klasse 3 nach EN 1646-1", {"en_grade": 3}),
    # the place, whatever leads to it
    ("US", "• Gray tank in a heated locker", HEATED_PLACE),
    ("US", "• Gray tank inside the heated locker", HEATED_PLACE),
    ("US", "• Gray tank, in the heated belly", HEATED_PLACE),
    ("US", "Gray tank: heated floor box", HEATED_PLACE),
    ("FR", "• Réservoir d'eaux usées dans un coffre chauffé", HEATED_PLACE),
    ("FR", "• Réservoir d'eaux usées dans le logement chauffé", HEATED_PLACE),
    ("DE", "• Abwassertank im beheizten Fach", HEATED_PLACE),
    ("DE", "• Abwassertank in einem beheizten Kasten", HEATED_PLACE),
    ("US", "• Dump valve inside the heated belly compartment", {"dump_valve_protection": "heated_compartment"}),
    ("US", "Dump valve: in the insulated box", {"dump_valve_protection": "insulated"}),
    ("US", "• Dump valve inside an insulated enclosure", {"dump_valve_protection": "insulated"}),
    ("FR", "• Vanne de vidange dans un caisson isolé", {"dump_valve_protection": "insulated"}),
    ("DE", "• Ablassventil im isolierten Kasten", {"dump_valve_protection": "insulated"}),
    ("US", "• Dump valves inside the heated underbelly", {"dump_valve_protection": "heated_compartment"}),
    ("US", "Water pipes run: in the floor box", {"water_lines_location": "enclosed"}),
    ("US", "• Foam-jacketed gray tank", {"gray_tank_insulated": True}),
    ("US", "• The waste tank rides in a bay that shares the warmth of the cabin", {"gray_tank_location": "enclosed"}),
    ("US", "It has its waste plumbing inside a bay that the heater keeps warm.", {}),
    ("US", "INSIDE HT (in): 75", {"interior_height_mm": 1905}),
    ("UK", "Grey tank heated from the warm-water circuit", {"gray_tank_heat": "hydronic"}),
    ("UK", "Heating: Diesel warm water with radiators", {"heater_type": "hydronic", "heater_fuel": "diesel"}),
    ("FR", "Pont thermique : rompu, liège", {"thermal_break": True}),
    ("US", "Power: Battery electric, 89 kWh traction pack", {"engine_fuel": "electric"}),
    ("UK", "The Drift is our all-year camper; come and see it, we are open all year.", {"season_claim": "all-year"}),
    ("US", "It sat overnight in a freezer warehouse at −10 °F, with two of us inside.", {"rated_min_temp_c": -23.33}),
    # covers that do not insulate
    ("US", "Cab window covers: not insulated", {"cab_shades_insulated": False}),
    ("US", "Cab covers: uninsulated", {"cab_shades_insulated": False}),
    ("UK", "Rear door blinds: not insulated", {"rear_shades_insulated": False}),
    ("FR", "Rideaux de cabine : non isolés", {"cab_shades_insulated": False}),
    ("FR", "Rideaux de cabine : isolants", {"cab_shades_insulated": True}),
    # batteries that warm themselves
    ("US", "House battery: 360 Ah lithium, self-warming",
     {"battery_ah": 360, "battery_chemistry": "lithium", "battery_heated": True}),
    ("US", "House battery: 360 Ah lithium, with its own warming film",
     {"battery_ah": 360, "battery_chemistry": "lithium", "battery_heated": True}),
    ("US", "Options: one 12 V pad for the gray tank; 300 Ah of lithium in all",
     {"gray_tank_heat": ("option", "electric_pad"), "battery_ah": ("option", 300),
      "battery_chemistry": ("option", "lithium")}),
    ("US", "The house batteries: there are two, 210 Ah each at 12.8 V.", {"battery_ah": 420, "battery_wh": 420 * 12.8}),
    # what is not said
    ("US", "Any heater that burns propane needs a clear vent.", {}),
    ("US", "The fresh tank sits inside the insulated and heated cabin.", {"fresh_tank_location": "interior"}),
    ("US", "Supply lines run inside the cabin, and none of it is heated.",
     {"water_lines_location": "interior", "water_lines_heated": False}),
    # heat that reaches the van, fuel by the hour, alarms
    ("US", "Heater: diesel air heater. Heat into the van: 4 kW",
     {"heater_type": "forced_air", "heater_fuel": "diesel", "heater_output_w": 4000}),
    ("US", "Fuel burned: 0.1 gal per hr", {"heater_consumption_l_h": 0.1 * GALLON}),
    ("US", "Heating: diesel air heater; alarms for carbon monoxide, smoke and gas",
     {"heater_type": "forced_air", "heater_fuel": "diesel"}),
    # made for a season
    ("AU", "Category: alpine-ready", {"season_claim": "alpine-ready"}),
    ("US", "It is a snow-ready van.", {"season_claim": "snow-ready"}),
]  # fmt: skip


@pytest.mark.parametrize(("region", "line", "expected"), LINES)
def test_a_line_states(states, region, line, expected):
    states(region, line, expected)


SHEET = (
    "Marrowfen Drift, model year 2026\n\n| | Drift 19 | Drift 21 | Drift 23 Fell |\n|---|---|---|---|\n"
    "| Overall length | 19 ft 4 in | 21 ft 2 in | 23 ft |\n| GVWR | 8,550 lb | 9,900 lb | 11,000 lb |\n"
    "| Sleeps | 2 | 2 | 3 |\n\n"
)


def by_van(facts, field):
    return {(fact.model, fact.value) for fact in facts if fact.field == field}


def test_the_rest_of_the_line_is_all_but_the_van_named(facts_of):
    text = "We call the Drift 23 Fell a four-season van and the rest of the line three-season.\n"
    claims = by_van(facts_of(SHEET + text), "season_claim")
    assert claims == {("Drift 19", "three-season"), ("Drift 21", "three-season"), ("Drift 23 Fell", "four-season")}


def test_what_the_others_have_is_not_said_of_the_van_before(facts_of):
    facts = facts_of(SHEET + "The 19 has 200 W of solar; the others have 400 W of solar.\n")
    assert by_van(facts, "solar_w") == {("Drift 19", 200), ("Drift 21", 400), ("Drift 23 Fell", 400)}


def test_what_a_van_has_like_the_others_is_not_said_of_these_alone(facts_of):
    facts = facts_of(SHEET + "The Drift 21 has a heated floor and, like the others, 200 W of solar.\n")
    assert ("Drift 21", 200) in by_van(facts, "solar_w")
    assert by_van(facts, "heated_floor") == {("Drift 21", True)}


def test_the_van_that_ends_a_line_owns_all_of_it(facts_of):
    text = (
        "• Furnace, propane, forced air, 18,000 BTU/h input on the 19\n"
        "• Hydronic heater, diesel, 16,400 BTU/h output, on the 21 and the 23 Fell\n"
    )
    found = by_van(facts_of(SHEET + text), "heater_fuel")
    assert found == {("Drift 19", "propane"), ("Drift 21", "diesel"), ("Drift 23 Fell", "diesel")}


def test_a_narrow_column_calls_the_inverter_inv(settled_of):
    heads, rule = "| Model | Length (ft) | GVWR (lb) | Sleeps | Inv. (W) |\n", "|---|---|---|---|---|\n"
    rows = settled_of(
        f"# Marrowfen Drift 2026\n\n{heads}{rule}| Drift 19 | 19 | 9,070 | 2 | 1,000 |\n", name="drift.md"
    )
    assert [row.num for (_, field, _), row in rows.items() if field == "inverter_w"] == [1000, 1000]
