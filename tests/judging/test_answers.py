"""Answers that are tried for missing fields."""

import numpy as np
import pandas as pd
import pytest

from specscan.judging.answers import LIMIT_TOGETHER, answers_of, combinations, missing
from specscan.judging.kinds import column_kinds
from specscan.judging.trials import Trials
from specscan.physics.columns import Columns
from tests.judging.conftest import criterion


@pytest.fixture
def answers(ruleset_of, book):
    ruleset = ruleset_of(
        criterion("x", ("fresh_tank_l >= 80 or propane_tank_l >= 20 or contains(insulated_surfaces, 'floor')", 1))
    )
    return lambda field: answers_of(field, ruleset, column_kinds(book), book)


def tried(table, *answers, without=""):
    """Give the table of the one case tried with every combination of the answers."""
    trials = Trials(Columns(table), {one.field: one for one in answers})
    trials.add([0], [one.field for one in answers], combinations(answers), without)
    return as_table(trials.columns(np.arange(len(trials.rows)), [one.field for one in answers]), *answers)


def as_table(columns, *answers):
    """Give the columns of some fields as a table, a basis where there are several."""
    found = {}
    for one in answers:
        if one.kind.name == "number":
            found |= {name: columns.floats(name) for name in (one.field, f"{one.field}__low", f"{one.field}__high")}
            found[f"{one.field}__basis"] = columns.basis(one.field)
        else:
            found[one.field] = columns.words(one.field)
    return pd.DataFrame(found)


def test_unknown_number_is_tried_over_its_plausible_range_and_at_its_threshold(answers, vans, book):
    values = set(tried(vans({}), answers("fresh_tank_l"))["fresh_tank_l"])
    low, high = book.fields["fresh_tank_l"].range
    assert {0, 80, low, high} <= values and any(79.9 < one < 80 for one in values)


def test_printed_range_is_never_left(answers, vans):
    table = tried(vans({"fresh_tank_l": [70, 75]}), answers("fresh_tank_l"))
    assert table["fresh_tank_l"].between(70, 75).all() and {70, 75} <= set(table["fresh_tank_l"])
    assert (table["fresh_tank_l__low"] == table["fresh_tank_l__high"]).all()


def test_known_tank_keeps_its_size_and_is_tried_with_each_basis(answers, vans):
    table = tried(vans({"propane_tank_l": 40}), answers("propane_tank_l"))
    assert set(table["propane_tank_l"]) == {40}
    assert set(table["propane_tank_l__basis"]) == {"usable", "water_capacity"}


def test_open_set_keeps_what_was_named(answers, vans):
    table = tried(vans({"insulated_surfaces": "walls"}), answers("insulated_surfaces"))
    assert set(table["insulated_surfaces"]) == {"walls", "ceiling+walls", "floor+walls", "doors+walls"}


def test_too_many_combinations_are_thinned_evenly(answers):
    one = answers("fresh_tank_l")
    picks = combinations([one, one, one])
    assert len(picks) == LIMIT_TOGETHER
    assert picks[0].tolist() == [0, 0, 0] and picks[-1].tolist() == [len(one) - 1] * 3
    assert all(len(set(picks[:, place])) == len(one) for place in range(2))


def test_field_left_out_stays_as_it_is(answers, vans):
    parts = [answers("fresh_tank_l"), answers("propane_tank_l")]
    whole, without = (tried(vans({}), *parts, without=name) for name in ("", "propane_tank_l"))
    assert without["propane_tank_l"].isna().all()
    assert without["fresh_tank_l"].tolist() == whole["fresh_tank_l"].tolist()


@pytest.mark.parametrize(
    ("field", "van", "expected"),
    [
        ("fresh_tank_l", {}, True),
        ("fresh_tank_l", {"fresh_tank_l": 80}, False),
        ("fresh_tank_l", {"fresh_tank_l": [70, 90]}, True),
        ("fresh_tank_heat", {"fresh_tank_heat": "unspecified"}, True),
        ("fresh_tank_heat", {"fresh_tank_heat": "none"}, False),
        ("propane_tank_l", {"propane_tank_l": 40}, True),
        ("propane_tank_l", {"propane_tank_l": 0}, False),
        ("propane_mass_kg", {"propane_mass_kg": 11}, False),
        ("insulated_surfaces", {"insulated_surfaces": "walls"}, True),
        ("insulated_surfaces", {"insulated_surfaces": ["ceiling", "doors", "floor", "walls"]}, False),
        ("heater_fuel", {"heater_fuel": "diesel"}, False),
        ("battery_heated", {"battery_heated": False}, False),
    ],
)
def test_what_counts_as_missing(book, vans, field, van, expected):
    assert missing(Columns(vans(van)), field, column_kinds(book)[field], book).tolist() == [expected]


def test_trials_that_are_alike_for_some_fields_are_made_into_one_row(answers, vans):
    parts = {name: answers(name) for name in ("fresh_tank_l", "insulated_surfaces")}
    trials = Trials(Columns(vans({}, {"fresh_tank_l": 80})), parts)
    both = combinations(list(parts.values()))
    trials.add([0, 1], list(parts), both)
    trials.add([0, 1], list(parts), both, "fresh_tank_l")
    first, which = trials.distinct(["insulated_surfaces"])
    assert len(first) == 2 * len(parts["insulated_surfaces"]) < len(which) == len(trials.rows)
    rows = as_table(trials.columns(np.arange(len(which)), parts), *parts.values())
    alike = as_table(trials.columns(first, parts), *parts.values()).iloc[which]
    assert rows["insulated_surfaces"].tolist() == alike["insulated_surfaces"].tolist()
    assert trials.rows.tolist() == trials.rows[first][which].tolist()
    assert trials.changed(["fresh_tank_heat", "fresh_tank_l"]) == ["fresh_tank_l"]
