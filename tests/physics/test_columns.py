"""The table of cases: what examples say, and what is not said stays unknown."""

import numpy as np
import pandas as pd
import pytest

from specscan.physics.columns import Columns, table_of


def test_example_fills_its_columns_and_no_others(book):
    table = table_of([{"fresh_tank_l": 80, "heater_fuel": ["propane", "diesel"], "battery_heated": True}], book)
    row = table.iloc[0]
    assert (row["fresh_tank_l"], row["fresh_tank_l__low"], row["fresh_tank_l__high"]) == (80, 80, 80)
    assert row["heater_fuel"] == "diesel+propane"
    assert row["battery_heated"] is np.True_ or row["battery_heated"] is True
    assert np.isnan(row["gray_tank_l"]) and row["toilet"] is None and pd.isna(row["heated_floor"])


def test_range_has_its_middle_or_its_own_value(book):
    table = table_of([{"fresh_tank_l": [60, 100]}, {"fresh_tank_l": [60, 70, 100]}], book)
    assert table["fresh_tank_l"].tolist() == [80, 70]
    assert table["fresh_tank_l__high"].tolist() == [100, 100]


@pytest.mark.parametrize(
    ("example", "reason"),
    [
        ({"fresh_tank_ltr": 80}, "no such field"),
        ({"fresh_tank_l": "big"}, "is no number"),
        ({"fresh_tank_l": True}, "is no number"),
        ({"fresh_tank_l": [90, 60]}, "ascending"),
        ({"battery_heated": "perhaps"}, "neither yes nor no"),
        ({"toilet": "marble"}, "'marble' is not one of fixed_tank"),
        ({"toilet": ["dry", "portable"]}, "is no word"),
        ({"heater_fuel": "peat"}, "'peat' is not one of propane"),
        ({"propane_tank_l__basis": "roughly"}, "not one of usable, water_capacity, unstated"),
    ],
)
def test_example_that_does_not_fit_is_refused(book, example, reason):
    with pytest.raises(ValueError, match=reason):
        table_of([example], book)


def test_column_that_is_not_there_is_unknown():
    columns = Columns(pd.DataFrame({"case_id": ["a", "b"]}))
    assert not columns.number("fresh_tank_l").known.any()
    assert not columns.known("toilet").any() and not columns.holds("heater_fuel", "diesel").any()


def test_set_holds_whole_words_only():
    columns = Columns(pd.DataFrame({"s": ["rigid_foam+cork", "foam", None]}))
    assert columns.holds("s", "cork").tolist() == [True, False, False]
    assert columns.holds("s", "rigid").tolist() == [False, False, False]


def test_missing_bounds_are_the_value_itself():
    one = Columns(pd.DataFrame({"f": [3.0], "f__low": [np.nan]})).number("f")
    assert (one.low[0], one.high[0]) == (3.0, 3.0)
