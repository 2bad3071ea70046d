"""Rule sets' own examples are run, and a wrong expectation is told."""

import pytest

from specscan.judging.examples import run_cases
from specscan.judging.rulesets import load_rulesets
from specscan.rulebook.book import load_rulebook
from tests.judging.conftest import RULES, criterion

BOOK = load_rulebook(RULES)
BUILT_IN = load_rulesets(RULES / "winter", BOOK)
RESULTS = [result for ruleset in BUILT_IN for result in run_cases(ruleset, BOOK)]
SIZE = criterion("size", ("fresh_tank_l >= 80", 1))


@pytest.mark.parametrize("result", RESULTS, ids=lambda result: f"{result.ruleset}: {result.case}")
def test_example_of_a_built_in_rule_set(result):
    assert result.failures == ()


def example(van, expect):
    return f"cases:\n  - case: trial\n    van: {van}\n    expect: {expect}\n"


def test_wrong_expectation_is_told_in_words(ruleset_of, book):
    wrong = run_cases(ruleset_of(SIZE, example("{fresh_tank_l: [60, 90]}", "{size: 10, total: [0, 9]}")), book)[0]
    assert not wrong.passed
    assert wrong.failures == ("size: expected 10, got 0 to 10", "total: expected 0 to 9, got 0 to 10")


def test_expected_band_must_be_met_on_both_sides(ruleset_of, book):
    assert run_cases(ruleset_of(SIZE, example("{}", "{size: [0, 10]}")), book)[0].passed
    assert not run_cases(ruleset_of(SIZE, example("{}", "{size: 0}")), book)[0].passed


def test_derived_quantity_given_in_an_example_stands_for_the_computed_one(ruleset_of, book):
    days = criterion("days", ("heat_days >= 7", 1))
    cases = "{heat_days: 7, heater_fuel: diesel, heater_consumption_l_h: 1, fuel_tank_l: 40}"
    assert run_cases(ruleset_of(days, example(cases, "{days: 10}")), book)[0].passed
    computed = "{heater_fuel: diesel, heater_consumption_l_h: 1, fuel_tank_l: 40}"
    assert run_cases(ruleset_of(days, example(computed, "{days: 0}")), book)[0].passed


def test_mixed_examples_keep_their_own_values(ruleset_of, book):
    days = criterion("days", ("heat_days >= 7", 1))
    more = example("{heat_days: 9}", "{days: 10}") + (
        "  - case: computed\n    van: {heater_fuel: diesel, heater_consumption_l_h: 1, fuel_tank_l: 40}\n"
        "    expect: {days: 0}\n  - case: nothing\n    van: {}\n    expect: {days: [0, 10]}\n"
    )
    assert [result.passed for result in run_cases(ruleset_of(days, more), book)] == [True, True, True]


def test_rule_set_without_examples_has_no_results(ruleset_of, book):
    assert run_cases(ruleset_of(SIZE), book) == []
