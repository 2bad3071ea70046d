"""Conditions of rule files: checked against what columns hold, and turned into SQL that knows yes, no and unknown.

A number is a range, so a numeric expression becomes two SQL expressions, its low and its high end; a comparison is
yes or no only where the whole range agrees, else NULL. AND, OR and NOT are SQL's own, which are Kleene's (ISO/IEC
9075; S. C. Kleene, *Introduction to Metamathematics*, 1952, section 64). A column that stands twice counts as two
independent ranges: an answer may be unknown that could be known, but none is wrong.
"""

from __future__ import annotations

import difflib
from collections.abc import Iterator
from dataclasses import dataclass, field

from specscan.judging.kinds import Kind, Kinds, quoted, text
from specscan.judging.tree import ARITHMETIC, COMPARISONS, ConditionError, Node, parse

LIMIT_SQL = 40_000
SIGNS = frozenset(COMPARISONS.values())
FLIPPED = {"<": ">", "<=": ">=", ">": "<", ">=": "<=", "=": "=", "<>": "<>"}


@dataclass(frozen=True, slots=True)
class Condition:
    """A condition that was checked.

    ``sql`` is a boolean expression, NULL where it is unknown, over the columns ``f__low`` and ``f__high`` of numbers
    (DOUBLE, NULL where unknown) and ``f`` of all others. ``columns`` are those that it uses; ``thresholds`` the
    numbers with which a column is compared; ``literals`` the texts with which a text column is compared.
    """

    text: str
    sql: str
    columns: tuple[str, ...]
    thresholds: dict[str, tuple[float, ...]] = field(default_factory=dict)
    literals: dict[str, tuple[str, ...]] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class _Ends:
    """A numeric expression: SQL of its low and high end, and whether arithmetic could have made it not finite."""

    low: str
    high: str
    computed: bool = False


def compile_condition(source: str, kinds: Kinds) -> Condition:
    """Check a condition and turn it into three-valued SQL.

    Raises:
        ConditionError: it is not one plain boolean expression over the columns of ``kinds``, or it compares what
            cannot be compared, such as a choice with a word that it can never hold.
    """
    tree = parse(source)
    writer = _Writer(kinds)
    sql = writer.truth(tree)
    if len(sql) > LIMIT_SQL:
        raise ConditionError("it is too complex: use fewer products and quotients of columns")
    columns = tuple(dict.fromkeys(str(node.value) for node in _all(tree) if node.kind == "column"))
    return Condition(
        " ".join(source.split()),
        sql,
        columns,
        {name: tuple(sorted(values)) for name, values in writer.thresholds.items()},
        {name: tuple(sorted(values)) for name, values in writer.literals.items()},
    )


def _all(node: Node) -> Iterator[Node]:
    yield node
    for part in node.parts:
        yield from _all(part)


class _Writer:
    def __init__(self, kinds: Kinds):
        self.kinds = kinds
        self.thresholds: dict[str, set[float]] = {}
        self.literals: dict[str, set[str]] = {}

    def truth(self, node: Node) -> str:
        """Give SQL for a part that must be yes, no or unknown."""
        if node.kind in ("and", "or"):
            return "(" + f" {node.kind.upper()} ".join(self.truth(part) for part in node.parts) + ")"
        if node.kind == "not":
            return f"(NOT {self.truth(node.parts[0])})"
        if node.kind == "literal" and isinstance(node.value, bool):
            return str(node.value).upper()
        if node.kind == "column":
            if self.kind_of(node).name != "flag":
                raise ConditionError(
                    f"{node.value} is {_a(self.kind_of(node))}, not yes or no: compare it with something"
                )
            return quoted(str(node.value))
        if node.kind in SIGNS:
            return self.compared(node.kind, *node.parts)
        if node.kind == "between":
            value, low, high = node.parts
            return f"({self.compared('>=', value, low)} AND {self.compared('<=', value, high)})"
        if node.kind == "in":
            return self.member(node)
        if node.kind == "contains":
            return self.contained(node)
        raise ConditionError(f"{_shown(node)} is not yes or no: compare it with something")

    def kind_of(self, node: Node) -> Kind:
        """Give what a column holds; refuse one that is not known."""
        name = str(node.value)
        if name not in self.kinds:
            near = difflib.get_close_matches(name, self.kinds, n=1)
            raise ConditionError(f"unknown column {name!r}" + (f": did you mean {near[0]}?" if near else ""))
        return self.kinds[name]

    def numeric(self, node: Node) -> bool:
        """Tell whether a part is a number."""
        if node.kind == "column":
            return self.kind_of(node).name == "number"
        if node.kind == "literal":
            return isinstance(node.value, float)
        return node.kind in ARITHMETIC or node.kind in ("abs", "least", "greatest")

    def compared(self, sign: str, left: Node, right: Node) -> str:
        """Give SQL for a comparison of two numbers, or of a word or flag with a constant."""
        if left.kind == "literal" and right.kind != "literal":
            left, right, sign = right, left, FLIPPED[sign]
        if self.numeric(left) and self.numeric(right):
            self.note(left, right)
            self.note(right, left)
            return _compared_ends(sign, self.ends(left), self.ends(right))
        if left.kind != "column":
            raise ConditionError(f"{_shown(left)} cannot be compared with {_shown(right)}")
        kind = self.kind_of(left)
        if sign not in ("=", "<>") and kind.name != "number":
            raise ConditionError(f"{sign!r} compares numbers; {left.value} is {_a(kind)}")
        if kind.name == "flag" and right.kind == "literal" and isinstance(right.value, bool):
            sql = quoted(str(left.value)) if right.value else f"(NOT {quoted(str(left.value))})"
        elif kind.name in ("choice", "text"):
            sql = self.word_in(left, [right])
        elif kind.name == "set":
            sql = self.whole_set(left, right)
        else:
            raise ConditionError(f"{left.value} is {_a(kind)} and cannot be compared with {_shown(right)}")
        return sql if sign == "=" else f"(NOT {sql})"

    def note(self, column: Node, constant: Node) -> None:
        """Remember that a column is compared with a constant."""
        value = _constant(constant)
        if column.kind == "column" and value is not None:
            self.thresholds.setdefault(str(column.value), set()).add(value)

    def member(self, node: Node) -> str:
        """Give SQL for ``in``: a choice or text among words, a number among numbers."""
        value, *options = node.parts
        if self.numeric(value):
            return "(" + " OR ".join(self.compared("=", value, option) for option in options) + ")"
        if value.kind != "column" or self.kind_of(value).name not in ("choice", "text"):
            raise ConditionError(f"{_shown(value)}: 'in' asks for a choice, text or number before it")
        return self.word_in(value, options)

    def word_in(self, column: Node, options: list[Node]) -> str:
        """Give SQL for a choice or text being one of some words."""
        name, kind = str(column.value), self.kind_of(column)
        words = [self.word(column, option) for option in options]
        among = f"({quoted(name)} IN ({', '.join(text(word) for word in words)}))"
        if kind.name == "text":
            self.literals.setdefault(name, set()).update(words)
        if not kind.vague:
            return among
        if kind.vague in words or kind.any_of <= set(words):
            answer = "TRUE"
        else:
            answer = "CAST(NULL AS BOOLEAN)" if kind.any_of & set(words) else "FALSE"
        return f"(CASE WHEN {quoted(name)} = {text(kind.vague)} THEN {answer} ELSE {among} END)"

    def word(self, column: Node, option: Node) -> str:
        """Give the word with which a column is compared; refuse one that it can never hold."""
        kind = self.kind_of(column)
        if option.kind != "literal" or not isinstance(option.value, str):
            raise ConditionError(f"{column.value} is {_a(kind)} and cannot be compared with {_shown(option)}")
        if kind.words and option.value not in kind.words:
            raise ConditionError(f"{column.value} is never {option.value!r}: it is one of {', '.join(kind.words)}")
        return option.value

    def contained(self, node: Node) -> str:
        """Give SQL for ``contains(set, 'word')``."""
        if len(node.parts) != 2 or node.parts[0].kind != "column":
            raise ConditionError("write contains(column, 'word')")
        column = node.parts[0]
        if self.kind_of(column).name != "set":
            raise ConditionError(f"contains asks for a set; {column.value} is {_a(self.kind_of(column))}")
        word = self.word(column, node.parts[1])
        found = f"list_contains(string_split({quoted(str(column.value))}, '+'), {text(word)})"
        if self.kind_of(column).open:
            return f"(CASE WHEN {found} THEN TRUE END)"
        return f"({found})"

    def whole_set(self, column: Node, option: Node) -> str:
        """Give SQL for a set being just the words of ``'a+b'``."""
        kind = self.kind_of(column)
        if kind.open:
            raise ConditionError(f"{column.value} holds what documents name: ask with contains({column.value}, 'word')")
        if option.kind != "literal" or not isinstance(option.value, str):
            raise ConditionError(f"{column.value} is {_a(kind)} and cannot be compared with {_shown(option)}")
        words = option.value.split("+")
        for word in words:
            self.word(column, Node("literal", word))
        if words != sorted(set(words)):
            raise ConditionError(f"{option.value!r}: write the words of a set once each, in alphabetical order")
        return f"({quoted(str(column.value))} = {text(option.value)})"

    def ends(self, node: Node) -> _Ends:
        """Give the low and high end of a numeric expression."""
        if node.kind == "literal" and isinstance(node.value, float):
            number = f"CAST({node.value!r} AS DOUBLE)"
            return _Ends(number, number)
        if node.kind == "column" and self.kind_of(node).name == "number":
            return _Ends(quoted(f"{node.value}__low"), quoted(f"{node.value}__high"))
        if node.kind in ARITHMETIC or node.kind in ("abs", "least", "greatest"):
            return _arithmetic(node.kind, [self.ends(part) for part in node.parts])
        raise ConditionError(f"{_shown(node)} is no number")


def _constant(node: Node) -> float | None:
    """Give the value of an expression without columns that rule files are likely to hold, else ``None``."""
    if node.kind == "literal" and isinstance(node.value, float):
        return node.value
    parts = [_constant(part) for part in node.parts]
    if node.kind not in ARITHMETIC or any(part is None for part in parts):
        return None
    first, second = float(parts[0] or 0.0), float(parts[-1] or 0.0)
    if node.kind == "-":
        return -first if len(parts) == 1 else first - second
    if node.kind == "/":
        return first / second if second else None
    return first + second if node.kind == "+" else first * second


def _arithmetic(sign: str, parts: list[_Ends]) -> _Ends:
    one = parts[0] if parts else _Ends("NULL", "NULL")
    if sign == "abs" and len(parts) == 1:
        low = f"(CASE WHEN {one.low} > 0 THEN {one.low} WHEN {one.high} < 0 THEN -{one.high} ELSE 0 END)"
        return _Ends(_if_known(one, low), _if_known(one, f"greatest(-{one.low}, {one.high})"), True)
    if sign == "-" and len(parts) == 1:
        return _Ends(f"(-{one.high})", f"(-{one.low})", True)
    if sign in ("least", "greatest") and len(parts) > 1:
        # DuckDB's least and greatest pass over NULL: that would turn unknown into known.
        known = " AND ".join(f"{part.low} IS NOT NULL" for part in parts)
        low, high = (f"{sign}({', '.join(end)})" for end in ([p.low for p in parts], [p.high for p in parts]))
        return _Ends(f"(CASE WHEN {known} THEN {low} END)", f"(CASE WHEN {known} THEN {high} END)", True)
    if len(parts) != 2 or sign not in ARITHMETIC:
        raise ConditionError(f"{sign!r} does not take {len(parts)} numbers")
    two = parts[1]
    if sign == "+":
        return _Ends(f"({one.low} + {two.low})", f"({one.high} + {two.high})", True)
    if sign == "-":
        return _Ends(f"({one.low} - {two.high})", f"({one.high} - {two.low})", True)
    corners = ", ".join(f"{a} {sign} {b}" for a in (one.low, one.high) for b in (two.low, two.high))
    low, high = f"least({corners})", f"greatest({corners})"
    if sign == "/":
        fit = f"{two.low} > 0 OR {two.high} < 0"
        return _Ends(f"(CASE WHEN {fit} THEN {low} END)", f"(CASE WHEN {fit} THEN {high} END)", True)
    return _Ends(low, high, True)


def _if_known(one: _Ends, sql: str) -> str:
    return f"(CASE WHEN {one.low} IS NOT NULL THEN {sql} END)"


def _compared_ends(sign: str, one: _Ends, two: _Ends) -> str:
    """Give SQL for a comparison of two ranges: yes where every pair of values agrees, no where none does."""
    if sign in (">", ">="):
        return _compared_ends(FLIPPED[sign], two, one)
    if sign == "<>":
        return f"(NOT {_compared_ends('=', one, two)})"
    if sign == "=":
        yes = f"{one.low} = {one.high} AND {two.low} = {two.high} AND {one.low} = {two.low}"
        no = f"{one.high} < {two.low} OR {two.high} < {one.low}"
    elif sign == "<":
        yes, no = f"{one.high} < {two.low}", f"{one.low} >= {two.high}"
    else:
        yes, no = f"{one.high} <= {two.low}", f"{one.low} > {two.high}"
    answer = f"CASE WHEN {yes} THEN TRUE WHEN {no} THEN FALSE END"
    # What overflowed or has no value would compare as the greatest number of all.
    finite = [f"isfinite({end})" for part in (one, two) if part.computed for end in (part.low, part.high)]
    return f"(CASE WHEN {' AND '.join(finite)} THEN {answer} END)" if finite else f"({answer})"


def _a(kind: Kind) -> str:
    return {"number": "a number", "flag": "yes or no", "choice": "a choice", "set": "a set", "text": "a text"}[
        kind.name
    ]


def _shown(node: Node) -> str:
    if node.kind == "column":
        return str(node.value)
    if node.kind != "literal":
        return f"'{node.kind}(…)'"
    if isinstance(node.value, bool):
        return "yes" if node.value else "no"
    return f"the text {node.value!r}" if isinstance(node.value, str) else f"the number {node.value:g}"
