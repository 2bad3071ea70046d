"""What the tests of judging share: the built-in rules, and rule sets written for a test."""

from pathlib import Path

import duckdb
import pytest

from specscan.judging.conditions import compile_condition
from specscan.judging.kinds import Kind
from specscan.judging.rulesets import load_ruleset, load_rulesets
from specscan.physics.columns import table_of
from specscan.physics.derived import DERIVED
from specscan.rulebook.book import load_rulebook

RULES = Path(__file__).parent.parent.parent / "rules"
KINDS = {
    "a": Kind("number"),
    "b": Kind("number"),
    "c": Kind("number"),
    "f": Kind("flag"),
    "g": Kind("flag"),
    "heat": Kind("choice", ("pad", "loop", "none", "some"), denies="none", vague="some"),
    "drive": Kind("choice", ("rear", "front", "all")),
    "fuels": Kind("set", ("diesel", "electric", "propane")),
    "faces": Kind("set", ("floor", "roof", "walls"), open=True),
    "maker": Kind("text"),
}
_CONNECTION = duckdb.connect(":memory:")


def answer(condition, **values):
    """Give what a condition over ``KINDS`` says of one case: True, False or None.

    A number is a value or (low, high); what is not given is unknown.
    """
    columns = []
    for name, kind in KINDS.items():
        value = values.get(name)
        if kind.name == "number":
            low, high = value if isinstance(value, tuple) else (value, value)
            columns += [f"{_sql(low)}::DOUBLE AS {name}__low", f"{_sql(high)}::DOUBLE AS {name}__high"]
        else:
            columns.append(f"{_sql(value)}::{'BOOLEAN' if kind.name == 'flag' else 'VARCHAR'} AS {name}")
    sql = compile_condition(condition, KINDS).sql
    return _CONNECTION.execute(f"SELECT {sql} FROM (SELECT {', '.join(columns)})").fetchall()[0][0]


def _sql(value):
    if value is None:
        return "NULL"
    return f"'{value}'" if isinstance(value, str) else str(value)


@pytest.fixture(scope="session")
def book():
    return load_rulebook(RULES)


@pytest.fixture(scope="session")
def rulesets(book):
    return load_rulesets(RULES / "winter", book)


@pytest.fixture(scope="session")
def vans(book):
    """Give a function that makes the table of cases of some vans."""
    return lambda *cases: table_of(cases, book, DERIVED)


HEAD = """name: trial
title: A trial
meaning: to try things out
criteria:
"""


@pytest.fixture
def ruleset_of(book, tmp_path):
    """Give a function that loads a rule set from the text of its criteria."""

    def load(criteria: str, more: str = ""):
        path = tmp_path / "trial.yaml"
        path.write_text(HEAD + criteria + more, encoding="utf-8")
        return load_ruleset(path, book)

    return load


def criterion(name, *steps, weight=10, otherwise=0):
    """Give the text of a criterion from its steps: (condition, award)."""
    lines = [
        f"  {name}:",
        f"    title: {name}",
        "    question: is it?",
        f"    weight: {weight}",
        "    source: none",
        "    scale:",
    ]
    for number, (when, award) in enumerate(steps):
        lines += [f'      - when: "{when}"', f"        award: {award}", f"        because: step {number}"]
    lines += ["    else:", f"      award: {otherwise}", "      because: none of them"]
    return "\n".join(lines) + "\n"
