"""What a condition may be made of, and that everything else is refused with its reason."""

import pytest

from specscan.judging.tree import LIMIT_LENGTH, ConditionError, Node, parse


def column(name):
    return Node("column", name)


def number(value):
    return Node("literal", float(value))


@pytest.mark.parametrize(
    ("text", "tree"),
    [
        ("a", column("a")),
        ("((a))", column("a")),
        ("a > -1.5", Node(">", None, (column("a"), number(-1.5)))),
        ("a != 3", Node("<>", None, (column("a"), number(3)))),
        ("a = 1e3", Node("=", None, (column("a"), number(1000)))),
        ("not a and b", Node("and", None, (Node("not", None, (column("a"),)), column("b")))),
        ("a between 1 and 2", Node("between", None, (column("a"), number(1), number(2)))),
        ("a in ('x')", Node("in", None, (column("a"), Node("literal", "x")))),
        ("a = 'it''s'", Node("=", None, (column("a"), Node("literal", "it's")))),
        ("contains(a, 'x')", Node("contains", None, (column("a"), Node("literal", "x")))),
        ("a = true", Node("=", None, (column("a"), Node("literal", True)))),
        ("abs(-a)", Node("abs", None, (Node("-", None, (column("a"),)),))),
        ("a not in (1)", Node("not", None, (Node("in", None, (column("a"), number(1))),))),
    ],
)
def test_plain_sql_becomes_a_tree(text, tree):
    assert parse(text) == tree


@pytest.mark.parametrize(
    "text",
    [
        "(select 1)",
        "select 1",
        "exists(select 1)",
        "a in (select 1)",
        "a > all (select 1)",
        "(from documents)",
        "values (1)",
        "true) from read_csv('/etc/passwd') where (true",
        "a > 3) union select (true",
        "true), (true",
        "read_csv('/etc/passwd')",
        "read_text('/etc/passwd') = 'x'",
        "getenv('HOME') = 'x'",
        "getvariable('x')",
        "current_setting('memory_limit') = 'x'",
        "nextval('x') = 1",
        "random() > 0.5",
        "now() > a",
        "count(*) > 1",
        "row_number() over () = 1",
        "a; drop table vans",
        "a -- and b",
        "a /* and b */",
        "a::varchar = '1'",
        "cast(a as integer) = 1",
        "try_cast(a as integer) = 1",
        "date '2020-01-01' = a",
        "interval 1 day = a",
        "a like '%x%'",
        "a similar to 'x'",
        "regexp_matches(a, 'x')",
        "a ** 2 > 1",
        "a % 2 = 1",
        "a || 'x' = 'y'",
        "[a, b]",
        "{'k': a}",
        "a[1]",
        "[x for x in a]",
        "list_transform(a, x -> x)",
        "v.a",
        "main.v.a",
        "a.contains('x')",
        "contains(distinct a, 'x')",
        "$1",
        "?",
        "#1",
        "*",
        "columns('a')",
        "a collate nocase = 'x'",
        "a as b",
        "a = $$x",
        "a = 'x",
        "a >",
        "a b",
        "",
        "   ",
        "a\0",
        "1e400 > a",
        "a > 99999999999999999999999999",
    ],
)
def test_anything_else_is_refused(text):
    with pytest.raises(ConditionError):
        parse(text)


@pytest.mark.parametrize(
    "text",
    [
        "a is null",
        "a is not null",
        "coalesce(a, 1) = 1",
        "ifnull(a, 1) = 1",
        "nullif(a, 1) = 1",
        "a = null",
        "a is true",
        "a is not false",
        "a is distinct from 1",
        "a in (1, null)",
    ],
)
def test_what_would_hide_that_a_value_is_unknown_is_refused_with_the_reason(text):
    with pytest.raises(ConditionError, match="turns what is not known into something known"):
        parse(text)


def test_case_points_to_the_scale():
    with pytest.raises(ConditionError, match="further steps of the scale"):
        parse("case when a then b end")


def test_refused_function_is_named_with_those_allowed():
    with pytest.raises(ConditionError, match="'getenv' is not allowed; allowed are abs, contains, greatest, least"):
        parse("getenv('HOME') = 'x'")


@pytest.mark.parametrize(
    "text", ["not " * 300 + "a", "-" + "(-" * 200 + "a" + ")" * 200, "abs(" * 100 + "a" + ")" * 100]
)
def test_deep_nesting_is_refused(text):
    with pytest.raises(ConditionError, match="nested|depth"):
        parse(text)


def test_length_is_bounded():
    with pytest.raises(ConditionError, match="characters"):
        parse("a or " * LIMIT_LENGTH + "a")
    assert parse(" or ".join(["a"] * 300)).kind == "or"
