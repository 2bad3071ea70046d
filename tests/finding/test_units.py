"""Factors against NIST Special Publication 811 (2008), Appendix B, and the definitions it rests on."""

import pytest

from specscan.finding.language.units import Units


@pytest.fixture(scope="module")
def units(book):
    return Units(book.units)


@pytest.mark.parametrize(
    ("spelling", "amount", "expected", "tolerance"),
    [
        # NIST SP 811 B.8: 1 US gallon = 3.785 411 784 L
        ("gal", 1, 3.785411784, 1e-9),
        # NIST SP 811 B.8: 1 Btu_IT/h = 0.293 071 1 W
        ("BTU/h", 1, 0.2930710702, 1e-6),
        # NIST SP 811 B.8: 1 lb = 0.453 592 37 kg, exact
        ("lb", 1, 0.45359237, 1e-9),
        # (°F - 32) / 1.8, exact
        ("°F", -40, -40.0, 1e-9),
        ("°F", 0, -17.7777778, 1e-6),
    ],
)
def test_converts_as_the_handbook_does(units, spelling, amount, expected, tolerance):
    assert units.named(spelling).convert(amount) == pytest.approx(expected, rel=tolerance)


def test_imperial_gallon_is_the_british_one(units):
    # UK Weights and Measures Act 1985: 4.546 09 L, exact
    assert units.named("gal").convert(1, imperial=True) == pytest.approx(4.54609, rel=1e-9)


def test_r_value_of_north_america(units):
    # NIST SP 811 B.8: 1 h·ft²·°F/Btu_IT = 0.176 110 2 m²·K/W
    assert units.r_value == pytest.approx(0.1761101837, rel=1e-6)
