"""Figures in sentences: three significant digits, never an exponent."""

import pytest

from specscan.physics.ranges import Range
from specscan.physics.words import figure, per, span, time_range


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (0, "0"),
        (0.6624, "0.662"),
        (36.34, "36.3"),
        (4689.1, "4690"),
        (123456, "123000"),
        (0.0000123, "0.000012"),
        (-5.5, "-5.5"),
    ],
)
def test_figure(value, text):
    assert figure(value) == text


def test_range_is_shown_with_its_value_and_a_plain_value_alone():
    one = Range.of([1.0, 2.0], [1.5, 2.0], [3.0, 2.0])
    assert (span(one, 0), span(one, 1)) == ("1.5 (1 to 3)", "2")
    assert per(Range.of(25e9), 1e9) == "25"


def test_what_has_no_end_in_words_is_what_the_rules_give_for_it(book):
    days = book.values["stay_horizon"].typical
    hours = book.values["freezing_horizon"].typical * 24
    assert time_range(days, days, "d") == "no end"
    assert time_range(0.99 * days, 0.99 * days, "d") != "no end"
    assert time_range(hours, hours, "h") == "never"
    assert time_range(0.99 * hours, 0.99 * hours, "h") != "never"
