"""Scores: what is certain, what is possible, and why."""

import numpy as np
import pandas as pd
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specscan.judging.rulesets import load_rulesets
from specscan.judging.scoring import score, score_in_batches
from specscan.physics import derive
from specscan.physics.columns import table_of
from specscan.physics.derived import DERIVED
from specscan.rulebook.book import load_rulebook
from tests.judging.conftest import RULES, criterion

SIZE = criterion("size", ("fresh_tank_l >= 80", 1), ("fresh_tank_l >= 40", 0.5))


@pytest.fixture
def judged(ruleset_of, vans, book):
    """Give a function that judges one van by some criteria: rows by name of the criterion."""

    def judge(criteria, **van):
        return score(vans(van), [ruleset_of(criteria)], book).set_index("criterion")

    return judge


@pytest.mark.parametrize(
    ("litres", "low", "high", "reached"),
    [
        (80, 10, 10, 0),
        (79.9, 5, 5, 1),
        (40, 5, 5, 1),
        (39.9, 0, 0, 2),
        ([60, 100], 5, 10, None),
        ([20, 60], 0, 5, None),
        ([20, 100], 0, 10, None),
        (None, 0, 10, None),
    ],
)
def test_first_step_that_holds_counts_and_a_range_ends_where_it_can(judged, litres, low, high, reached):
    row = judged(SIZE, **({} if litres is None else {"fresh_tank_l": litres})).loc["size"]
    assert (row["points_low"], row["points_high"], row["points"], row["points_max"]) == (low, high, low, 10)
    assert (None if pd.isna(row["reached"]) else row["reached"]) == reached


def test_scale_with_an_unknown_first_step_can_end_there_or_at_the_next_that_holds(judged):
    scale = criterion("x", ("battery_heated", 0.2), ("drive = 'all'", 0.9), ("toilet = 'dry'", 0.5), otherwise=0)
    row = judged(scale, drive="all").loc["x"]
    # Neither the third step nor the last one can be reached: the second surely holds.
    assert (row["points_low"], row["points_high"]) == (2, 9)


def test_award_further_down_may_be_the_higher_one(judged):
    row = judged(criterion("x", ("battery_heated", 0.1), otherwise=0.7)).loc["x"]
    assert (row["points_low"], row["points_high"]) == (1, 7)


def test_unknown_steps_with_the_same_award_are_certain_points(judged):
    row = judged(criterion("x", ("battery_heated", 0.5), otherwise=0.5)).loc["x"]
    assert row["points"] == row["points_high"] == 5 and pd.isna(row["reached"])


def test_total_adds_up_bands(judged):
    rows = judged(SIZE + criterion("snow", ("drive = 'all'", 1), weight=4), drive="all", fresh_tank_l=[60, 100])
    total = rows.loc["total"]
    assert (total["points_low"], total["points_high"], total["points_max"]) == (9, 14, 14)
    assert total["because"] == "9 to 14 of 14 points; not settled: size."


def test_settled_criterion_has_the_words_of_its_step(judged):
    rows = judged(SIZE, fresh_tank_l=50)
    assert rows.loc["size", "because"] == "step 1"
    assert rows.loc["total", "because"] == "5 of 10 points; every criterion is settled."


def test_unsettled_criterion_says_what_is_not_known_and_what_it_could_be(judged):
    scale = criterion("x", ("fresh_tank_l >= 80 and battery_heated", 1), ("fresh_tank_l >= 40", 0.5))
    text = judged(scale, fresh_tank_l=[60, 100]).loc["x", "because"]
    assert "Not known: battery_heated." in text
    assert "Known only in part: fresh_tank_l." in text
    assert "It could be: 10 points: step 0; 5 points: step 1." in text


def test_what_cannot_matter_is_not_called_unknown(judged):
    scale = criterion("x", ("drive = 'all'", 1), ("fresh_tank_l >= 40 or battery_heated", 0.5), ("toilet = 'dry'", 0.1))
    text = judged(scale, fresh_tank_l=50).loc["x", "because"]
    assert "drive" in text and "battery_heated" not in text and "toilet" not in text


def test_unknown_derived_quantity_says_what_it_needs(judged):
    text = judged(criterion("x", ("heat_days >= 7", 1))).loc["x", "because"]
    assert "heat_days (it needs the heater's fuel, its consumption or a rating, and the fuel on board)" in text


def test_derived_quantities_are_worked_out_or_taken_from_the_table(ruleset_of, vans, book):
    ruleset = ruleset_of(criterion("x", ("heat_days >= 9.99 and heat_days <= 10.01", 1)))
    van = {"heater_fuel": "diesel", "heater_consumption_l_h": [0.5], "fuel_tank_l": 100}
    table = vans(van)
    alone = score(table, [ruleset], book)
    joined = score(pd.concat([table, derive(table, book)], axis=1), [ruleset], book)
    pd.testing.assert_frame_equal(alone, joined)
    given = score(vans({**van, "heat_days": 10}), [ruleset], book)
    assert given["points"].tolist() == [10, 10]


def test_rows_come_in_order_of_cases_rule_sets_and_criteria(rulesets, vans, book):
    table = vans({"drive": "all"}, {"drive": "rear"}, {})
    table["case_id"] = ["z", "a", "m"]
    rows = score(table, rulesets, book)
    per_set = [[one.name for one in ruleset.criteria] + ["total"] for ruleset in rulesets]
    expected = [(r.name, c, n) for r, names in zip(rulesets, per_set, strict=True) for c in "zam" for n in names]
    assert list(zip(rows["ruleset"], rows["case_id"], rows["criterion"], strict=True)) == expected


def test_batches_give_what_one_go_gives(rulesets, vans, book):
    table = vans(*[{"drive": drive, "fresh_tank_l": 10.0 * n} for n, drive in enumerate(["all", "rear", "front"] * 3)])
    together = score(table, rulesets[:1], book)
    parts = list(score_in_batches(table, rulesets[:1], book, rows=2))
    assert len(parts) == 5
    pd.testing.assert_frame_equal(pd.concat(parts, ignore_index=True), together)


def test_no_cases_give_no_rows(rulesets, vans, book):
    assert score(vans(), rulesets, book).empty
    assert score(vans({}), [], book).empty


def test_values_that_are_not_finite_or_not_there_are_unknown(ruleset_of, vans, book):
    table = vans({}, {}, {})
    table["fresh_tank_l"] = table["fresh_tank_l__low"] = table["fresh_tank_l__high"] = [np.inf, np.nan, 90]
    rows = score(table, [ruleset_of(SIZE)], book)
    assert rows.loc[rows["criterion"] == "size", "points_low"].tolist() == [0, 0, 10]
    without = score(pd.DataFrame({"case_id": ["x"]}), [ruleset_of(SIZE)], book)
    assert without["points_high"].tolist() == [10, 10]


def test_hostile_words_in_the_data_are_data(ruleset_of, vans, book):
    table = vans({"maker": "x'); drop table cases; --"}, {"maker": "Ossvane"})
    rows = score(table, [ruleset_of(criterion("x", ("maker = 'Ossvane'", 1)))], book)
    assert rows.loc[rows["criterion"] == "x", "points"].tolist() == [0, 10]


BOOK = load_rulebook(RULES)
RULESETS = load_rulesets(RULES / "winter", BOOK)


@st.composite
def van_parts(draw):
    """Draw a van's values for the fields that the rule sets use directly."""
    van = {}
    for name in dict.fromkeys(field for ruleset in RULESETS for field in ruleset.columns):
        spec = BOOK.fields.get(name)
        if spec is None:
            van[name] = draw(st.floats(0, 12))
        elif spec.type == "flag":
            van[name] = draw(st.booleans())
        elif spec.type in ("choice", "set"):
            van[name] = draw(st.sampled_from(BOOK.choices_of(name)))
        else:
            van[name] = draw(st.sampled_from([0, 50.0]))
    return van


@settings(max_examples=15, deadline=None)
@given(van_parts(), st.data())
def test_knowing_less_never_narrows_a_band(van, data):
    gone = data.draw(st.sets(st.sampled_from(sorted(van))))
    less = {name: value for name, value in van.items() if name not in gone}
    blurred = dict(van)
    for name in gone:
        if isinstance(van[name], float):
            blurred[name] = [van[name] / 2, van[name], van[name] * 2]
    rows = score(
        table_of([van, less, blurred], BOOK, DERIVED),
        RULESETS,
        BOOK,
    )
    low, high = (
        rows.pivot(index=["ruleset", "criterion"], columns="case_id", values=c) for c in ("points_low", "points_high")
    )
    for wider in ("1", "2"):
        assert (low[wider] <= low["0"] + 1e-9).all() and (high[wider] >= high["0"] - 1e-9).all()


@settings(max_examples=15, deadline=None)
@given(van_parts())
def test_bands_lie_within_the_weights_and_points_are_the_low_end(van):
    rows = score(table_of([van, {}], BOOK, DERIVED), RULESETS, BOOK)
    assert (rows["points"] == rows["points_low"]).all()
    assert ((0 <= rows["points_low"]) & (rows["points_low"] <= rows["points_high"])).all()
    assert (rows["points_high"] <= rows["points_max"] + 1e-9).all()
