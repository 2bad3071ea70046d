"""Constants and assumptions: each has a unit that is known, a source, and the published value."""

from dataclasses import replace

import pytest

from specscan.physics.assumptions import Assumptions
from specscan.records.errors import RuleError


def test_every_value_turns_into_si(book, values):
    for name in book.values:
        one = values[name]
        assert one.low <= one.typical <= one.high, name


@pytest.mark.parametrize(
    ("name", "value", "tolerance", "source"),
    [
        ("propane_higher_heating_value", 91452 * 0.0002787162699e9, 1e-8, "EIA, row F01, with U17"),
        ("diesel_higher_heating_value", 38.29e9, 5e-4, "EIA as printed in MJ/L, row F15"),
        ("propane_lower_heating_value", 46.34e6 * 506.69, 0.005, "heat of formation × density, rows F06 and F11"),
        ("propane_density", 506.69, 1e-4, "CoolProp at 60 °F, row F11"),
        ("diesel_lower_heating_value", 9.905 * 3.6e9, 1e-3, "UK DESNZ 9.905 kWh/L, row F19"),
        ("heater_duty", 1 / 3, 1e-12, "8 h a day, row R02"),
        ("propane_fill_share", 0.80, 1e-12, "rows F25 and F26"),
    ],
)
def test_typical_value_in_si_is_the_published_one(values, name, value, tolerance, source):
    assert float(values[name].typical) == pytest.approx(value, rel=tolerance), source


@pytest.mark.parametrize(
    ("material", "r_per_inch", "row"),
    [("sheep_wool", 3.7, "K08"), ("cork", 3.65, "K10"), ("mineral_wool", 4.1, "K06"), ("spray_foam", 6.0, "K01")],
)
def test_conductivity_agrees_with_the_r_per_inch_in_use(values, material, r_per_inch, row):
    # Row U14: k in W/(m·K) is 0.1442278889 over R per inch; the rows allow 10 %.
    assert float(values[f"{material}_conductivity"].typical) == pytest.approx(0.1442278889 / r_per_inch, rel=0.10), row


def test_every_insulation_material_has_a_value(book, values):
    for word in book.choices_of("insulation_material"):
        assert values[f"{word}_resistance" if word == "reflective_foil" else f"{word}_conductivity"].known


def test_what_has_no_source_or_comes_from_memory_says_so(book):
    for name, value in book.values.items():
        for words in ("common practice, no source", "from memory, not verified"):
            if value.source.endswith(words):
                assert value.evidence == words, name


def test_missing_value_is_named(book):
    with pytest.raises(RuleError, match="'no_such_value' is missing"):
        Assumptions(book)["no_such_value"]


def test_unit_that_is_none_is_named(book):
    odd = next(iter(book.values.values())).model_copy(update={"unit": "furlongs per gallop"})
    broken = replace(book, values={"odd": odd})
    with pytest.raises(RuleError, match=r"values\.odd: 'furlongs per gallop' is no unit"):
        Assumptions(broken)["odd"]
