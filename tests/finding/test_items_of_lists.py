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
]  # fmt: skip


@pytest.mark.parametrize(("region", "item", "stated"), CASES)
def test_an_item_tells_all_that_stands_in_it(printed, region, item, stated):
    told = printed(region, f"Das Fahrzeug / equipment\n\n{item}\n")
    assert {field: told.get(field) for field in stated} == stated
