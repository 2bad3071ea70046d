"""Bare figures take the unit that their label or the document's region says."""

import pytest

METRIC = """Marrowfen Drift 21
Model year 2026

Overall length: 6.40 m
Berths: 2
MTPLM: 3500 kg
Tyre size: 225/75 R16
Fresh water: 100 litres
"""
AMERICAN = """Marrowfen Drift 21
Model year 2026

Overall length: 21 ft
Sleeps: 2
GVWR: 9,350 lb
Propane: 20 lb
Gasoline tank: 24 gal
"""


def stated(facts, field):
    return [fact.value for fact in facts if fact.field == field]


def test_a_minus_sign_before_a_bare_figure_counts_where_the_label_has_the_degrees(facts_of):
    facts = facts_of(AMERICAN + "Tested to (°F): -22\n")
    assert stated(facts, "rated_min_temp_c") == [pytest.approx(-30)]


def test_a_bare_r_value_is_north_american_or_metric_as_its_document(facts_of):
    # NIST SP 811 (2008) B.8: 1 h·ft²·°F/Btu = 0.176 110 2 m²·K/W
    assert stated(facts_of(AMERICAN + "Wall R-value: 7\n"), "insulation_r_si") == [pytest.approx(1.2328, rel=1e-3)]
    assert stated(facts_of(METRIC + "Wall R-value: 0.9\n"), "insulation_r_si") == [pytest.approx(0.9)]
