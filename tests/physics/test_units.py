"""Units at the border: to SI and back is what it was, in the rules, the conditions' flags and the US views."""

import pint
import pytest
from click.exceptions import BadParameter
from hypothesis import given
from hypothesis import strategies as st

from specscan.cli.conditions import ROAD, SHARE, TEMPERATURE, WIND
from specscan.physics.assumptions import Assumptions
from specscan.rulebook.book import load_rulebook
from tests.physics.conftest import RULES

BOOK = load_rulebook(RULES)
PINT = pint.UnitRegistry()
FIGURES = st.floats(-60, 60).map(lambda value: round(value, 2))
POSITIVE = st.floats(0, 120).map(lambda value: round(value, 2))


@pytest.mark.parametrize("unit", sorted({spec.unit for spec in BOOK.values.values()} - {"1"}))
def test_value_of_the_rules_comes_back_from_si(unit):
    name, spec = next((name, spec) for name, spec in BOOK.values.items() if spec.unit == unit)
    si = PINT.Quantity(float(Assumptions(BOOK)[name].typical), PINT.parse_expression(unit).to_base_units().units)
    assert si.to(unit).magnitude == pytest.approx(spec.typical, rel=1e-12)


@given(FIGURES)
def test_temperature_in_fahrenheit_is_the_one_in_celsius(celsius):
    fahrenheit = PINT.Quantity(celsius, "degC").to("degF").magnitude
    assert TEMPERATURE.convert(f"{fahrenheit!r}F", None, None) == pytest.approx(celsius, abs=1e-9)
    assert TEMPERATURE.convert(f"{celsius:.2f} °C", None, None) == celsius


@given(POSITIVE, st.sampled_from([("mph", "mile / hour"), ("km/h", "km / hour"), ("m/s", "m / s")]))
def test_wind_in_any_unit_is_the_same_wind(speed, unit):
    written, of_pint = unit
    text = f"{PINT.Quantity(speed, 'm / s').to(of_pint).magnitude!r}{written}"
    assert "e" in text or WIND.convert(text, None, None) == pytest.approx(speed, abs=1e-9)


@given(POSITIVE)
def test_speed_on_the_road_in_miles_is_the_one_in_kilometres(speed):
    text = f"{PINT.Quantity(speed, 'km / hour').to('mile / hour').magnitude!r}mph"
    assert "e" in text or ROAD.convert(text, None, None) == pytest.approx(speed, abs=1e-9)


@pytest.mark.parametrize(("text", "share"), [("50%", 0.5), ("0.5", 0.5), ("12,5 %", 0.125), ("100%", 1.0)])
def test_share_in_per_cent_is_the_share(text, share):
    assert SHARE.convert(text, None, None) == share


@pytest.mark.parametrize(
    ("text", "celsius"), [("-20", -20), ("−20 °C", -20), ("-4F", -20), ("+5c", 5), ("-12,5C", -12.5)]
)
def test_temperature_is_read_as_people_write_it(text, celsius):
    assert TEMPERATURE.convert(text, None, None) == pytest.approx(celsius)


@pytest.mark.parametrize("text", ["cold", "-20K", "", "20 below", "--20"])
def test_what_is_no_temperature_says_how_to_write_one(text):
    with pytest.raises(BadParameter, match="write it like -20C or -4F"):
        TEMPERATURE.convert(text, None, None)
