"""Answers as people write them become values of the vocabulary, or are refused with the reason."""

import pytest

from specscan.observing.answers import AnswerError

GALLON = 3.785411784  # litres; NIST SP 811, B.8
IMPERIAL_GALLON = 4.54609  # litres; NIST SP 811, B.8


@pytest.mark.parametrize(
    ("field", "answer", "unit", "value"),
    [
        ("fresh_tank_l", "27 gal", "", 27 * GALLON),
        ("fresh_tank_l", "27", "gal", 27 * GALLON),
        ("fresh_tank_l", "22 imp gal", "", 22 * IMPERIAL_GALLON),
        ("insulation_thickness_mm", "12 mm", "", 12.0),
        ("insulation_thickness_mm", "1/2 in", "", 12.7),  # 1 in = 25.4 mm exactly; NIST SP 811, B.8
        ("length_mm", "19 ft 7 in", "", 235 * 25.4),
        ("rated_min_temp_c", "-4", "°F", -20.0),  # (−4 − 32) / 1.8
        ("rated_min_temp_c", "−20 °C", "", -20.0),
        ("sleeps", "3", "", 3.0),
        ("black_tank_l", "none", "", 0.0),
        ("heated_floor", "Yes", "", True),
        ("heated_floor", "nein", "", False),
        ("fresh_tank_heat", "electric pad", "", "electric_pad"),
        ("fresh_tank_heat", "None", "", "none"),
        ("heater_fuel", "propane; electric", "", "electric+propane"),
        ("season_claim", "four-season", "", "four-season"),
    ],
)
def test_an_answer_becomes_a_value_in_the_canonical_unit(answer_reader, field, answer, unit, value):
    read = answer_reader.read(field, answer, unit).value
    assert read == (pytest.approx(value, abs=1e-6) if isinstance(value, float) else value)


def test_a_range_keeps_both_ends_and_a_tank_says_what_its_figure_counts(answer_reader):
    length = answer_reader.read("fresh_tank_l", "100 to 110 l")
    assert (length.low, length.high) == (100.0, 110.0)
    assert answer_reader.read("propane_tank_l", "38 l water capacity").basis == "water_capacity"


@pytest.mark.parametrize(
    ("field", "answer", "unit", "reason"),
    [
        ("colour", "red", "", "no field 'colour'"),
        ("fresh_tank_l", "27", "", "unit is missing"),
        ("fresh_tank_l", "27 V", "", "27 V is no volume"),
        ("fresh_tank_l", "2700 gal", "", "implausible.*5 to 600 l"),
        ("fresh_tank_l", "big", "", "no figure"),
        ("fresh_tank_l", "27 gal and 30 gal", "", "more than one figure"),
        ("fresh_tank_l", "27 gal, I think", "", "'I think' beside the figure"),
        ("length_mm", "6,400 mm", "", "read in two ways"),
        ("sleeps", "2.5", "", "no whole number"),
        ("heated_floor", "maybe", "", "neither yes nor no"),
        ("heated_floor", "yes", "l", "has no unit"),
        ("fresh_tank_heat", "warm", "", "none of the words: .*electric_pad"),
        ("heater_fuel", "propane+wood", "", "'wood' is none of the words"),
        ("season_claim", "x" * 400, "", "longer than"),
    ],
)
def test_an_answer_that_the_field_cannot_have_is_refused_with_the_reason(answer_reader, field, answer, unit, reason):
    with pytest.raises(AnswerError, match=reason):
        answer_reader.read(field, answer, unit)


def test_a_bare_gallon_is_refused_where_the_documents_print_imperial_ones(answer_reader):
    with pytest.raises(AnswerError, match="US gal or imp gal"):
        answer_reader.read("fresh_tank_l", "20 gal", imperial=True)
    assert answer_reader.read("fresh_tank_l", "20 US gal", imperial=True).num == pytest.approx(20 * GALLON)
    assert answer_reader.read("fresh_tank_l", "20 l", imperial=True).num == 20.0


@pytest.mark.parametrize("answer", ["", "  ", "?", "don't know", "Not known"])
def test_not_knowing_is_no_answer(answer_reader, answer):
    assert answer_reader.is_none(answer)
