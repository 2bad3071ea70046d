"""What items of lists tell by the words and figures that stand beside each other."""

import pytest

CASES = [
    ("US", "- Diesel air heater, 2 kW output, 0.07 gal/h and 29 watts at full power", {"heater_power_draw_w": 29}),
    ("DE", "- Dieselheizung, 4 kW Leistung, 0,51 l/h, 38 W", {"heater_power_draw_w": 38}),
    ("US", "- Half an inch of xps board under the floor", {"insulated_surfaces": "floor"}),
    ("DE", "- Sprühschaum in den Türen und unter dem Boden", {"insulated_surfaces": "doors+floor"}),
    ("US", "- Gray tank, insulated, under the floor", {"insulated_surfaces": None, "gray_tank_location": "underbody"}),
    ("US", "- Insulated magnetic covers for windshield, cab doors, and both of the rear door windows",
     {"cab_shades_insulated": True, "rear_shades_insulated": True}),
    ("US", "- Water heating: 4 gal propane/electric tank", {"water_heater_l": 15, "heater_fuel": None}),
    ("DE", "- Hecktüren isoliert verdunkelt", {"rear_shades_insulated": True, "insulated_surfaces": None}),
    ("UK", "The van is not suitable for use below −10 °C.", {"rated_min_temp_c": -10}),
    ("US", "You can stand up in it if you are under 6 feet 3, which is what the tape says from floor to ceiling.",
     {"interior_height_mm": 1905}),
    ("FR", "- Base Quarnell Portant 42, moteur diesel 2,3 litres", {"chassis": "Quarnell Portant 42"}),
    ("US", "The van is built on the 2025 Quarnell Hauler 25 with all-wheel drive.", {"chassis": "Quarnell Hauler 25"}),
    ("US", "- LP furnace with two floor outlets, 16,000 BTU/h input", {"heater_input_w": 4689}),
]  # fmt: skip


@pytest.mark.parametrize(("region", "item", "stated"), CASES)
def test_an_item_tells_all_that_stands_in_it(printed, region, item, stated):
    told = printed(region, f"Das Fahrzeug / equipment\n\n{item}\n")
    found = {field: told.get(field) for field in stated}
    assert {field: round(value) if isinstance(value, float) else value for field, value in found.items()} == stated


@pytest.mark.parametrize(
    "walls", ["- Wall insulation: recycled polyester, 25 mm\n", "The walls are insulated with recycled polyester.\n"]
)
def test_an_item_on_one_surface_leaves_what_is_told_of_others(printed, walls):
    assert printed("UK", f"\n{walls}\n- Insulated floor: yes\n")["insulated_surfaces"] == "floor+walls"


def test_what_the_base_always_is_holds_for_all_vans_though_one_was_spoken_of(facts_of):
    text = (
        "Marrowfen Drift 2026\n\nDrift 54 · Drift 60\n\nDrift 54: Länge 5,41 m, Gesamtgewicht 3.500 kg. "
        "Drift 60: Länge 5,99 m, Gesamtgewicht 3.500 kg.\n\n"
        "Der Drift 60 wurde bei −25 °C in der Klimahalle geprüft. Basis ist immer ein Quarnell Porter mit Dieselmotor, "
        "die Wände sind mit 20 mm Kautschukschaum gedämmt.\n"
    )
    told = {(fact.model, fact.field) for fact in facts_of(text)}
    for van in ("Drift 54", "Drift 60"):
        assert {(van, "engine_fuel"), (van, "insulation_thickness_mm")} <= told
    assert ("Drift 54", "rated_min_temp_c") not in told


def test_a_note_on_the_berths_may_be_no_more_than_their_number_and_the_van(facts_of):
    text = (
        "# Marrowfen Drift\n\n| | Drift 19 | Drift 22 |\n|---|---|---|\n| Length | 5.4 m | 6.0 m |\n"
        "| GVWR | 3,300 kg | 3,500 kg |\n\n- Two berths*\n- Solar panel, 200 W\n\n"
        "* Three on the Drift 22, which adds a bunk.\n"
    )
    told = {(fact.model, fact.value) for fact in facts_of(text, "sheet.md") if fact.field == "sleeps"}
    assert told == {("Drift 19", 2), ("Drift 22", 3)}
