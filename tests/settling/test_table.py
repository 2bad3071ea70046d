"""Settled values as cases: ranges where they are doubts, single values where the range is what the part can do."""

import pandas as pd

from specscan.settling.preferences import load_preferences
from specscan.settling.settle import settle
from specscan.settling.table import case_table, split_case
from tests.settling.made import document, fact


def case_of(book, *facts):
    table = case_table(settle([document(*facts)], book, load_preferences(book)).settled, book)
    assert [split_case(case)[1] for case in table["case_id"]] == ["standard", "optioned"]
    return table.iloc[0]


def test_a_printed_range_is_carried_on(book):
    case = case_of(book, fact("insulation_thickness_mm", 50.0, low=40.0, high=50.0))
    assert (case["insulation_thickness_mm__low"], case["insulation_thickness_mm__high"]) == (40.0, 50.0)


def test_what_a_heater_can_be_turned_down_to_is_no_doubt(book):
    case = case_of(book, fact("heater_output_w", 6000.0, low=2000.0, high=6000.0))
    assert (case["heater_output_w__low"], case["heater_output_w__high"]) == (6000.0, 6000.0)


def test_a_conflict_is_a_range_or_unknown(book):
    case = case_of(
        book,
        fact("heater_output_w", 4000.0),
        fact("heater_output_w", 6000.0, passage=2),
        fact("heated_floor", True),
        fact("heated_floor", False, passage=2),
        fact("gray_tank_heat", "none"),
        fact("gray_tank_heat", "hydronic", passage=2),
    )
    assert (case["heater_output_w__low"], case["heater_output_w__high"]) == (4000.0, 6000.0)
    assert pd.isna(case["heated_floor"])
    assert case["gray_tank_heat"] is None


def test_silence_is_unknown(book):
    case = case_of(book, fact("solar_w", 100.0))
    assert pd.isna(case["fresh_tank_l"])
    assert pd.isna(case["heated_floor"])
    assert case["toilet"] is None
