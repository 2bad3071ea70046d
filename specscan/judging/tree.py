"""A condition's text, parsed by DuckDB's own parser, as a small tree that holds nothing but what is allowed.

DuckDB says how the text reads (``json_serialize_sql``); this module walks that answer and keeps only kinds of node
that are on its list. Everything else is refused, and later steps write SQL anew from the tree, never from the text.
"""

from __future__ import annotations

import functools
import json
import math
from dataclasses import dataclass
from typing import Any

import duckdb

LIMIT_LENGTH = 2000
LIMIT_DEPTH = 30
LIMIT_NUMBER = 1e12

COMPARISONS = {
    "COMPARE_EQUAL": "=",
    "COMPARE_NOTEQUAL": "<>",
    "COMPARE_LESSTHAN": "<",
    "COMPARE_LESSTHANOREQUALTO": "<=",
    "COMPARE_GREATERTHAN": ">",
    "COMPARE_GREATERTHANOREQUALTO": ">=",
}
ARITHMETIC = {"+", "-", "*", "/"}
FUNCTIONS = {"abs", "contains", "greatest", "least"}
HIDES_UNKNOWN = (
    "{} is refused because it turns what is not known into something known; "
    "write the condition on the value itself, and the band will show what is not known"
)
UNKNOWN_HIDERS = {"coalesce", "ifnull", "nvl", "nullif", "if", "isnull"}


class ConditionError(ValueError):
    """A condition is not one plain yes-or-no question over known columns; the message says what is wrong with it."""


@dataclass(frozen=True, slots=True)
class Node:
    """A part of a condition.

    ``kind`` is ``column`` (``value`` its name), ``literal`` (``value`` a float, str or bool), or an operation:
    ``and``, ``or``, ``not``, a comparison sign, ``between``, ``in``, an arithmetic sign, or a function's name.
    """

    kind: str
    value: float | str | bool | None = None
    parts: tuple[Node, ...] = ()


def parse(text: str) -> Node:
    """Give the tree of a condition.

    Raises:
        ConditionError: the text is too long or too deeply nested, no SQL, more than one expression, or holds
            something that conditions may not use (a sub-query, a cast, a function that is not on the list).
    """
    if len(text) > LIMIT_LENGTH:
        raise ConditionError(f"it has {len(text)} characters; {LIMIT_LENGTH} are allowed")
    if not text.strip():
        raise ConditionError("it is empty")
    if "\0" in text:
        raise ConditionError("it holds a null character")
    for sign in (";", "--", "/*"):
        if sign in text:
            raise ConditionError(f"{sign!r} is not allowed: a condition is one expression without remarks")
    answer = _serialized(f"SELECT (\n{text}\n)")
    if answer.get("error"):
        raise ConditionError(f"no SQL expression: {str(answer.get('error_message')).splitlines()[0]}")
    statements = answer["statements"]
    if len(statements) != 1:
        raise ConditionError("it is more than one statement")
    node = statements[0]["node"]
    chosen = node.get("select_list") or []
    if _frame(node) != _plain_frame() or len(chosen) != 1:
        raise ConditionError("it is more than one expression")
    return _node(chosen[0], 1)


def _frame(node: dict[str, Any]) -> dict[str, Any]:
    """Give all of a statement but its expression: in a condition, that must be what it is in ``SELECT (true)``."""
    return {key: value for key, value in node.items() if key != "select_list"}


@functools.cache
def _plain_frame() -> dict[str, Any]:
    return _frame(_serialized("SELECT (true)")["statements"][0]["node"])


@functools.cache
def _connection() -> duckdb.DuckDBPyConnection:
    return duckdb.connect(":memory:", config={"enable_external_access": False, "threads": 1})


def _serialized(sql: str) -> dict[str, Any]:
    try:
        rows = _connection().cursor().execute("SELECT json_serialize_sql(?::VARCHAR)", [sql]).fetchall()
        return json.loads(rows[0][0])
    except (duckdb.Error, ValueError, RecursionError) as error:
        raise ConditionError(f"no SQL expression: {str(error).splitlines()[0]}") from error


def _node(raw: dict[str, Any], depth: int) -> Node:
    if depth > LIMIT_DEPTH:
        raise ConditionError(f"it is nested more than {LIMIT_DEPTH} deep")
    if raw.get("alias"):
        raise ConditionError(f"the name {raw['alias']!r} for a part of it is not allowed")
    reader = _READERS.get(raw["class"])
    if reader is None:
        raise ConditionError(_refusal(raw))
    return reader(raw, depth + 1)


def _refusal(raw: dict[str, Any]) -> str:
    known = {
        "SUBQUERY": "a query inside it",
        "WINDOW": "a window function",
        "CASE": "'case' (write further steps of the scale instead)",
        "STAR": "'*'",
        "PARAMETER": "a parameter",
        "LAMBDA": "a function of its own ('->')",
        "CAST": "a cast to another type",
    }
    return f"{known.get(raw['class'], raw['class'].lower().replace('_', ' '))} is not allowed"


def _column(raw: dict[str, Any], depth: int) -> Node:
    names = raw["column_names"]
    if len(names) != 1:
        raise ConditionError(f"{'.'.join(names)!r}: a column is one plain name")
    return Node("column", names[0])


def _literal(raw: dict[str, Any], depth: int) -> Node:
    """Read a constant: DuckDB 2 gives its text as written, DuckDB 1 its value with a type."""
    if "literal" in raw:
        kind, text = raw["literal"]["kind"], raw["literal"]["text"]
    else:
        value = raw["value"]
        kind, text = ("NULL_LITERAL" if value["is_null"] else value["type"]["id"]), value.get("value")
        if kind == "DECIMAL":
            text = int(text) / 10 ** value["type"]["type_info"]["scale"]
    if kind == "NULL_LITERAL":
        raise ConditionError(HIDES_UNKNOWN.format("'null'"))
    if kind in ("STRING", "VARCHAR"):
        return Node("literal", str(text))
    if kind == "BOOLEAN":
        return Node("literal", str(text).lower() == "true")
    if kind in ("INTEGER", "NUMERIC", "DECIMAL", "DOUBLE", "BIGINT", "HUGEINT"):
        try:
            number = float(str(text).replace("_", ""))
        except ValueError as error:
            raise ConditionError(f"{text!r} is no plain number") from error
        if not math.isfinite(number) or abs(number) > LIMIT_NUMBER:
            raise ConditionError(f"the number {text} is too large")
        return Node("literal", number)
    raise ConditionError(f"a constant of the type {kind.lower()} is not allowed")


def _cast(raw: dict[str, Any], depth: int) -> Node:
    """Take ``true`` and ``false``, which DuckDB 1 gives as a cast of a letter; refuse every other cast."""
    child, target = raw["child"], raw.get("cast_type", {}).get("id")
    if child["class"] == "CONSTANT" and "value" in child and target == "BOOLEAN":
        letter = child["value"].get("value")
        if letter in ("t", "f"):
            return Node("literal", letter == "t")
    raise ConditionError(_refusal(raw))


def _comparison(raw: dict[str, Any], depth: int) -> Node:
    sign = COMPARISONS.get(raw["type"])
    if sign is None:
        raise ConditionError(HIDES_UNKNOWN.format("'is true', 'is false' or 'is distinct from'"))
    return Node(sign, None, (_node(raw["left"], depth), _node(raw["right"], depth)))


def _between(raw: dict[str, Any], depth: int) -> Node:
    return Node("between", None, tuple(_node(raw[part], depth) for part in ("input", "lower", "upper")))


def _conjunction(raw: dict[str, Any], depth: int) -> Node:
    kind = "and" if raw["type"] == "CONJUNCTION_AND" else "or"
    return Node(kind, None, tuple(_node(child, depth) for child in raw["children"]))


def _operator(raw: dict[str, Any], depth: int) -> Node:
    kind = {"OPERATOR_NOT": "not", "COMPARE_IN": "in"}.get(raw["type"])
    if raw["type"] in ("OPERATOR_IS_NULL", "OPERATOR_IS_NOT_NULL", "OPERATOR_COALESCE"):
        name = raw["type"].removeprefix("OPERATOR_").replace("_", " ").lower()
        raise ConditionError(HIDES_UNKNOWN.format(f"'{name}'"))
    if raw["type"] == "COMPARE_NOT_IN":
        return Node("not", None, (_operator({**raw, "type": "COMPARE_IN"}, depth),))
    if kind is None:
        raise ConditionError(f"{raw['type'].lower().replace('_', ' ')} is not allowed")
    return Node(kind, None, tuple(_node(child, depth) for child in raw["children"]))


def _function(raw: dict[str, Any], depth: int) -> Node:
    name = raw["function_name"]
    if name in UNKNOWN_HIDERS:
        raise ConditionError(HIDES_UNKNOWN.format(f"{name!r}"))
    if name not in FUNCTIONS | ARITHMETIC:
        raise ConditionError(
            f"the function or sign {name!r} is not allowed; allowed are {', '.join(sorted(FUNCTIONS))}"
        )
    odd = [raw.get(key) for key in ("filter", "distinct", "export_state", "catalog")]
    if any(odd) or raw.get("schema") not in ("", "main") or (raw.get("order_bys") or {}).get("orders"):
        raise ConditionError(f"{name!r} is allowed in its plain form only")
    arguments = raw.get("arguments")
    if arguments is None:
        children = raw["children"]
    elif any(argument["name"] for argument in arguments):
        raise ConditionError(f"{name!r}: its arguments may not be named")
    else:
        children = [argument["expression"] for argument in arguments]
    parts = tuple(_node(child, depth) for child in children)
    return parts[0] if name == "+" and len(parts) == 1 else Node(name, None, parts)


_READERS = {
    "COLUMN_REF": _column,
    "CONSTANT": _literal,
    "CAST": _cast,
    "COMPARISON": _comparison,
    "BETWEEN": _between,
    "CONJUNCTION": _conjunction,
    "OPERATOR": _operator,
    "FUNCTION": _function,
}
