"""Interval arithmetic: the result encloses every value that the operands allow, and unknown stays unknown."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from specscan.physics.ranges import Range, first_known, hull, independent_sum, pick

NUMBER = st.floats(-1e4, 1e4, allow_nan=False)
SHARE = st.floats(0, 1)


@st.composite
def ranges(draw):
    low, typical, high = sorted(draw(st.tuples(NUMBER, NUMBER, NUMBER)))
    return Range.of([low], [typical], [high])


def inside(value, one, slack=1e-9):
    margin = slack * max(1.0, abs(value))
    return one.low[0] - margin <= value <= one.high[0] + margin


def at(one, share):
    return float(one.low[0] + share * (one.high[0] - one.low[0]))


@given(ranges(), ranges(), SHARE, SHARE)
def test_result_encloses_every_pair_of_values(one, two, first, second):
    x, y = at(one, first), at(two, second)
    assert inside(x + y, one + two)
    assert inside(x * y, one * two)
    assert inside(x, hull(one, two)) and inside(y, hull(one, two))
    quotient = one / two
    if two.low[0] > 1e-3 or two.high[0] < -1e-3:
        assert inside(x / y, quotient)


@given(ranges(), ranges())
def test_typical_value_lies_within_its_bounds(one, two):
    for result in (one + two, one * two, hull(one, two)):
        assert inside(float(result.typical[0]), result)


@given(ranges(), ranges(), NUMBER)
def test_wider_operand_never_gives_a_narrower_result(one, two, further):
    wide = Range.of(np.minimum(one.low, further), one.typical, np.maximum(one.high, further))
    for narrow_result, wide_result in ((one * two, wide * two), (one + two, wide + two), (two / one, two / wide)):
        if not wide_result.known[0]:
            continue
        assert wide_result.low[0] <= narrow_result.low[0] + 1e-9 * abs(narrow_result.low[0])
        assert wide_result.high[0] >= narrow_result.high[0] - 1e-9 * abs(narrow_result.high[0])


def test_divisor_that_can_be_zero_gives_unknown():
    result = Range.of([1.0, 1.0]) / Range.of([0.0, 1.0], [1.0, 1.5], [2.0, 2.0])
    assert result.known.tolist() == [False, True]
    assert (result.low[1], result.high[1]) == (0.5, 1.0)


@pytest.mark.parametrize("operation", [lambda a, b: a + b, lambda a, b: a * b, lambda a, b: a / b, hull])
def test_unknown_operand_gives_unknown(operation):
    assert not operation(Range.of([2.0]), Range.unknown(1)).known[0]
    assert not operation(Range.unknown(1), Range.of([2.0])).known[0]


def test_not_finite_in_one_part_is_unknown_in_all():
    one = Range.of([1.0, np.inf], [2.0, 2.0], [np.nan, 3.0])
    assert not one.known.any() and np.isnan(one.low).all() and np.isnan(one.high).all()


def test_backward_bounds_are_widened_around_the_value():
    one = Range.of([5.0], [1.0], [3.0])
    assert (one.low[0], one.typical[0], one.high[0]) == (1.0, 1.0, 5.0)


def test_first_known_and_pick_choose_case_by_case():
    one, two = Range.of([np.nan, 1.0]), Range.of([7.0, 8.0])
    assert first_known(one, two).typical.tolist() == [7.0, 1.0]
    assert pick(np.array([True, False]), one, two).typical[1] == 8.0


def test_independent_spreads_add_up_as_root_of_squares_and_open_questions_bound_on_bound():
    # By hand: 10 ± 3 and 20 ± 4 are 30 ± 5; with 8 to 10 left open in the first, 28 - 5 to 30 + 5.
    parts = [Range.of(7, 10, 13), Range.of(16, 20, 24)]
    plain = independent_sum([Range.of(10), Range.of(20)], parts)
    assert (plain.low, plain.typical, plain.high) == (25, 30, 35)
    opened = independent_sum([Range.of(8, 10, 10), Range.of(20)], [Range.of(5, 10, 13), parts[1]])
    assert (opened.low, opened.high) == (23, 35)


def test_independent_sum_holds_nearly_all_of_seeded_draws():
    # Monte Carlo, GUM Supplement 1: triangular draws (a usual choice for low, typical, high), seed 7.
    draw = np.random.default_rng(7)
    parts = [(6.0, 13.8, 28.0), (2.3, 5.7, 14.0), (1.1, 5.7, 9.8), (3.3, 4.8, 8.0), (16.4, 38.0, 56.9)]
    total = sum(draw.triangular(*part, 100_000) for part in parts)
    found = independent_sum([Range.of(part[1]) for part in parts], [Range.of(*part) for part in parts])
    assert np.mean((total >= found.low) & (total <= found.high)) > 0.98
    assert found.high - found.low < 0.6 * sum(part[2] - part[0] for part in parts)
