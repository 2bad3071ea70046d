"""What conditions say of cases: yes and no only where everything that is possible agrees."""

import itertools
import operator

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from specscan.judging.conditions import compile_condition
from specscan.judging.kinds import column_kinds
from specscan.judging.tree import ConditionError
from specscan.records.truth import Truth
from tests.judging.conftest import KINDS, answer


@pytest.mark.parametrize(
    ("condition", "value", "expected"),
    [
        ("a >= 7", 7, True),
        ("a >= 7", (7, 9), True),
        ("a >= 7", (6, 9), None),
        ("a >= 7", (3, 6.9), False),
        ("a > 7", (7, 9), None),
        ("a > 7", (3, 7), False),
        ("a < 7", (3, 7), None),
        ("a <= 7", (3, 7), True),
        ("a = 7", 7, True),
        ("a = 7", (6, 8), None),
        ("a = 7", (8, 9), False),
        ("a <> 7", (8, 9), True),
        ("7 <= a", (6, 9), None),
        ("a between 3 and 7", (4, 5), True),
        ("a between 3 and 7", (6, 8), None),
        ("a between 3 and 7", (8, 9), False),
        ("a not between 3 and 7", (8, 9), True),
        ("a in (3, 7)", 7, True),
        ("a in (3, 7)", (4, 5), False),
        ("a in (3, 7)", (6, 8), None),
        ("a / 2 >= 3", (6, 8), True),
        ("10 / a > 0", (-1, 1), None),
        ("abs(a) <= 2", (-2, 1), True),
        ("abs(a) > 0", (-1, 1), None),
        ("least(a, 3) <= 3", (1, 9), True),
        ("greatest(a, 3) >= 3", (1, 9), True),
    ],
)
def test_comparison_of_a_range_needs_the_whole_range(condition, value, expected):
    assert answer(condition, a=value) is expected


@pytest.mark.parametrize(
    "condition",
    [
        "a > 1",
        "a = a",
        "a - a = 0",
        "least(a, 3) <= 3",
        "greatest(a, 3) >= 3",
        "abs(a) >= 0",
        "a * 0 = 0",
        "a in (1, 2)",
    ],
)
def test_unknown_number_stays_unknown(condition):
    assert answer(condition) is None


OPERATORS = {
    "<": operator.lt,
    "<=": operator.le,
    ">": operator.gt,
    ">=": operator.ge,
    "=": operator.eq,
    "<>": operator.ne,
}
EXPRESSIONS = {
    "a": lambda a, b, c: a,
    "a + b": lambda a, b, c: a + b,
    "a - b": lambda a, b, c: a - b,
    "a * b": lambda a, b, c: a * b,
    "-a + 2 * b": lambda a, b, c: -a + 2 * b,
    "least(a, b)": lambda a, b, c: min(a, b),
    "greatest(a, b) - 1": lambda a, b, c: max(a, b) - 1,
    "abs(a)": lambda a, b, c: abs(a),
    "abs(a - b)": lambda a, b, c: abs(a - b),
    "(a - 2) * (b + 1)": lambda a, b, c: (a - 2) * (b + 1),
    "a / 4": lambda a, b, c: a / 4,
}
# Whole numbers, so that sums and products in floating point are exact and a boundary is one.
ENDS = st.tuples(st.integers(-6, 6), st.integers(-6, 6)).map(lambda pair: tuple(sorted(pair)))


def possible(one):
    """Corner values, and zero where it lies inside: there the least of abs is taken."""
    return {one[0], one[1], *([0] if one[0] < 0 < one[1] else []), (one[0] + one[1]) / 2}


@settings(max_examples=300, deadline=None)
@given(st.sampled_from(sorted(EXPRESSIONS)), st.sampled_from(sorted(OPERATORS)), ENDS, ENDS, ENDS)
def test_interval_comparison_agrees_with_brute_force(expression, sign, a, b, c):
    outcomes = {
        OPERATORS[sign](EXPRESSIONS[expression](x, y, z), z)
        for x, y, z in itertools.product(possible(a), possible(b), possible(c))
    }
    verdict = answer(f"{expression} {sign} c", a=a, b=b, c=c)
    if verdict is not None:
        assert outcomes == {verdict}
    elif sign in ("<", "<=", ">", ">=") and expression != "abs(a - b)":
        # Each column stands once, so the range of the expression is exact and its ends are reached at corners.
        assert outcomes == {True, False}


@settings(max_examples=150, deadline=None)
@given(st.sampled_from(sorted(EXPRESSIONS)), st.sampled_from(sorted(OPERATORS)), ENDS, ENDS, ENDS)
def test_wider_range_never_decides_more(expression, sign, a, b, inner):
    assume(a[0] <= inner[0] and inner[1] <= a[1])
    wide = answer(f"{expression} {sign} 2", a=a, b=b)
    assert wide is None or answer(f"{expression} {sign} 2", a=inner, b=b) is wide


@st.composite
def logic(draw, depth=3):
    kind = draw(st.sampled_from(["f", "g", "a > 1", "b > 1", *(["and", "or", "not"] if depth else [])]))
    if kind == "not":
        inner, truth = draw(logic(depth - 1))
        return f"(not {inner})", lambda known: ~truth(known)
    if kind in ("and", "or"):
        (one, first), (two, second) = draw(logic(depth - 1)), draw(logic(depth - 1))
        join = operator.and_ if kind == "and" else operator.or_
        return f"({one} {kind} {two})", lambda known: join(first(known), second(known))
    return kind, lambda known: known[kind]


@settings(max_examples=200, deadline=None)
@given(logic(), *[st.sampled_from([True, False, None])] * 4)
def test_and_or_not_are_kleenes(expression, f, g, a, b):
    text, truth = expression
    known = dict(zip(("f", "g", "a > 1", "b > 1"), map(Truth.of, (f, g, a, b)), strict=True))
    numbers = {name: None if value is None else 2 if value else 1 for name, value in (("a", a), ("b", b))}
    assert Truth.of(answer(text, f=f, g=g, **numbers)) is truth(known)


@pytest.mark.parametrize(
    ("condition", "heat", "expected"),
    [
        ("heat = 'pad'", "pad", True),
        ("heat = 'pad'", "loop", False),
        ("heat = 'pad'", None, None),
        ("heat = 'pad'", "some", None),
        ("heat <> 'none'", "some", True),
        ("heat = 'none'", "some", False),
        ("heat <> 'pad'", "some", None),
        ("heat in ('pad', 'loop')", "some", True),
        ("heat in ('pad', 'none')", "some", None),
        ("heat in ('pad', 'some')", "some", True),
        ("heat not in ('pad', 'loop')", "some", False),
    ],
)
def test_heated_but_not_said_how_may_be_any_way_of_heating(condition, heat, expected):
    assert answer(condition, heat=heat) is expected


@pytest.mark.parametrize(
    ("condition", "values", "expected"),
    [
        ("contains(fuels, 'diesel')", {"fuels": "diesel+electric"}, True),
        ("contains(fuels, 'propane')", {"fuels": "diesel+electric"}, False),
        ("contains(fuels, 'propane')", {}, None),
        ("fuels = 'diesel'", {"fuels": "diesel+electric"}, False),
        ("fuels = 'diesel+electric'", {"fuels": "diesel+electric"}, True),
        ("fuels <> 'diesel'", {"fuels": "diesel"}, False),
        ("contains(faces, 'walls')", {"faces": "roof+walls"}, True),
        # What a list of insulated surfaces does not name is not said to be bare.
        ("contains(faces, 'floor')", {"faces": "roof+walls"}, None),
        ("f", {"f": True}, True),
        ("not f", {"f": True}, False),
        ("f = false", {"f": False}, True),
        ("f <> true", {}, None),
        ("maker = 'Brackmere'", {"maker": "Brackmere"}, True),
        ("maker in ('Brackmere', 'Ossvane')", {"maker": "Tarnsted"}, False),
    ],
)
def test_words_sets_and_flags(condition, values, expected):
    assert answer(condition, **values) is expected


@pytest.mark.parametrize(
    ("condition", "reason"),
    [
        ("heat = 'steam'", "heat is never 'steam': it is one of pad, loop, none, some"),
        ("heat in ('pad', 'steam')", "never 'steam'"),
        ("drive > 'all'", "'>' compares numbers; drive is a choice"),
        ("drive = 4", "drive is a choice and cannot be compared with the number 4"),
        ("drive = heat", "cannot be compared with heat"),
        ("drive", "drive is a choice, not yes or no"),
        ("a", "a is a number, not yes or no"),
        ("a + 1", "not yes or no"),
        ("3", "the number 3 is not yes or no"),
        ("a and f", "a is a number, not yes or no"),
        ("a = 'big'", "a is a number and cannot be compared with the text 'big'"),
        ("a + 'x' > 1", "the text 'x' is no number"),
        ("a > f", "cannot be compared|is no number"),
        ("f = 1", "f is yes or no and cannot be compared with the number 1"),
        ("f > 0", "'>' compares numbers"),
        ("contains(drive, 'all')", "contains asks for a set; drive is a choice"),
        ("contains(fuels, 'peat')", "fuels is never 'peat'"),
        ("contains(fuels, a)", "cannot be compared"),
        ("contains('diesel', fuels)", "write contains"),
        ("fuels = 'electric+diesel'", "in alphabetical order"),
        ("fuels in ('diesel')", "'in' asks for a choice, text or number"),
        ("faces = 'floor'", "ask with contains"),
        ("litres > 3", "unknown column 'litres'"),
        ("heats = 'pad'", "did you mean heat"),
        ("least(a) > 1", "does not take 1"),
        ("abs(a, b) > 1", "does not take 2"),
        ("'x' = 'x'", "cannot be compared"),
        ("a * b * a * b * a * b * a * b * a > 1", "too complex"),
    ],
)
def test_what_cannot_be_compared_is_refused_with_the_reason(condition, reason):
    with pytest.raises(ConditionError, match=reason):
        compile_condition(condition, KINDS)


def test_condition_tells_its_columns_and_thresholds():
    one = compile_condition("a >= 7 or (4 < a and b between 1 and 2 / 4) or maker = 'Ossvane'", KINDS)
    assert one.columns == ("a", "b", "maker")
    assert one.thresholds == {"a": (4.0, 7.0), "b": (0.5, 1.0)}
    assert one.literals == {"maker": ("Ossvane",)}


def test_overflow_and_division_of_nothing_are_unknown_and_not_the_greatest_number():
    assert answer("a / (b - b) > 1", a=1, b=1) is None
    assert answer("a * 1000000000000 * 1000000000000 - a * 1000000000000 > b", a=1e300, b=1) is None


def test_kinds_follow_the_field_files(book):
    kinds = column_kinds(book)
    assert kinds["fresh_tank_heat"].vague == "unspecified" and kinds["fresh_tank_heat"].denies == "none"
    assert kinds["insulated_surfaces"].open and not kinds["heater_fuel"].open
    assert kinds["heat_days"].name == "number" and kinds["en_grade"].name == "number"
    assert set(book.fields) <= set(kinds)
