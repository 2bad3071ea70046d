"""Which field of a heater a figure fills, where several are named beside it."""

import pytest


@pytest.mark.parametrize("line", [
    "Furnace: input is 19,000 BTU/h and output is 15,200 BTU/h", "Furnace: 19,000 BTU/h input and 15,200 BTU/h output",
    "Our furnace burns LP gas. Its input is 19,000 BTU/h and its output 15,200 BTU/h.",
])  # fmt: skip
def test_figures_and_what_they_are_take_turns(printed, line):
    stated = printed("US", line, ("heater_input_w",))
    assert stated["heater_input_w"] == pytest.approx(5568, rel=0.01)
    assert stated["heater_output_w"] == pytest.approx(4455, rel=0.01)


@pytest.mark.parametrize(("region", "kind", "line"), [
    ("UK", "Heating: diesel air heater", "Heater current: 46 W at full output"),
    ("UK", "Heating: diesel air heater", "Electrical input of heater, maximum: 46 W"),
    ("DE", "Heizung: Luftheizung, Diesel", "Stromaufnahme der Heizung bei höchster Stufe: 46 W"),
])  # fmt: skip
def test_what_a_heater_draws_is_no_heat_whatever_it_gives_meanwhile(printed, region, kind, line):
    stated = printed(region, f"{kind}\n{line}")
    assert stated["heater_power_draw_w"] == 46
    assert stated["heater_fuel"] == "diesel"
    assert "heater_output_w" not in stated and "heater_rating_w" not in stated
