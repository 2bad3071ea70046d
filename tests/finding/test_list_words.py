"""Lines of lists in few words: what a battery's kind brings in, counts of beds, extras, what a bottle is for."""

import pytest

LINES = [
    ("1 x 95 Ah AGM", {"battery_ah": 95, "battery_chemistry": "agm"}),
    ("2 x 110 Ah gel, 140 W solar", {"battery_ah": 220, "battery_chemistry": "gel", "solar_w": 140}),
    ("Starter: 70 Ah AGM", {}),
    ("Beds: 3", {"sleeps": 3}),
    ("Beds: 2, or 4 with the pop-top (extra)", {"sleeps": ("option", 4)}),
    ("Bed: 1950 x 1350 mm", {}),
    ("Gas: one 9 kg bottle for the hob", {"propane_mass_kg": 9}),
    ("Gas: none at all, induction hob", {"propane_tank_l": 0}),
    ("Solar was an extra: 130 W", {"solar_w": ("option", 130)}),
    ("Barn-door blinds, insulated: standard", {"rear_shades_insulated": True}),
    ("Donor's fuel: 75 L", {}),
    ("Filled: walls, roof and floor", {"insulated_surfaces": "ceiling+floor+walls"}),
    ("Height, air conditioner fitted: 2,840 mm", {"height_mm": 2840}),
    ("Grey tank, where: underneath, in the open, clad in foam",
     {"gray_tank_location": "underbody", "gray_tank_insulated": True}),
    ("Coldest test: -14 °C", {"rated_min_temp_c": -14}),
    ("A diesel heater keeps it warm. It uses 0.45 litres of diesel an hour.",
     {"heater_fuel": "diesel", "heater_consumption_l_h": 0.45}),
    ("Wall filling: hemp batts, 35 mm",
     {"insulation_material": "natural_fiber", "insulation_thickness_mm": 35, "insulated_surfaces": "walls"}),
]  # fmt: skip


@pytest.mark.parametrize(("line", "expected"), LINES)
def test_a_short_line_says_what_it_says_and_no_more(states, line, expected):
    states("AU", line, expected)
