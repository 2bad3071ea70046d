"""Cases as conditions see them: one plain type a column, and the truth of conditions over all cases at once."""

from __future__ import annotations

import functools
from collections.abc import Iterator, Sequence
from contextlib import contextmanager

import duckdb
import numpy as np
import pandas as pd

from specscan.judging.conditions import Condition
from specscan.judging.kinds import Kinds, quoted
from specscan.physics.columns import Columns
from specscan.physics.derived import DERIVED, derive_ends
from specscan.records.truth import Truth
from specscan.rulebook.book import Rulebook

FEW = 20_000
"""Cases that one thread of the engine answers for as fast as several."""


def typed(given: Columns, names: Sequence[str], kinds: Kinds, book: Rulebook) -> pd.DataFrame:
    """Give the columns of these names, each of one plain type; what is not there is unknown, or derived here."""
    lacking = [name for name in names if name in DERIVED and not given.has(name)]
    columns = given.with_columns(derive_ends(given, book, only=lacking), {}) if lacking else given
    found: dict[str, object] = {"row_number": np.arange(columns.size, dtype=np.int64)}
    for name in names:
        if kinds[name].name == "number":
            values = columns.number(name)
            found[f"{name}__low"], found[f"{name}__high"] = values.low, values.high
            continue
        codes, words = columns.coded(name)
        if kinds[name].name == "flag":
            found[name] = np.array([*(float(word) for word in words), np.nan], dtype=float)[codes]
        elif len(words):
            found[name] = pd.Categorical.from_codes(codes, categories=words)
        else:
            found[name] = columns.words(name)
    return pd.DataFrame(found, copy=False)


@functools.cache
def _engine(few: bool) -> duckdb.DuckDBPyConnection:
    """Give an engine without a way to files, opened once: that takes longer than most queries here.

    For ``few`` cases it has one thread: others are woken for nothing.
    """
    threads: dict[str, str | int] = {"threads": 1} if few else {}
    return duckdb.connect(":memory:", config={"enable_external_access": False, **threads})


@contextmanager
def answering(cases: pd.DataFrame, query: str) -> Iterator[duckdb.DuckDBPyConnection]:
    """Give what a query answers that names a table as ``cases``."""
    with _engine(len(cases) <= FEW).cursor() as cursor:
        cursor.register("cases", cases)
        yield cursor.execute(query)


def clean_sql(names: Sequence[str], kinds: Kinds) -> list[str]:
    """Give the SELECT list that turns what ``typed`` gives into clean SQL types, ``row_number`` first."""
    clean = ["row_number"]
    for name in names:
        if kinds[name].name == "number":
            ends = (quoted(f"{name}__low"), quoted(f"{name}__high"))
            clean += [f"CASE WHEN isfinite({end}) THEN CAST({end} AS DOUBLE) END AS {end}" for end in ends]
        elif kinds[name].name == "flag":
            clean.append(f"CASE WHEN isfinite({quoted(name)}) THEN {quoted(name)} > 0.5 END AS {quoted(name)}")
        else:
            clean.append(f"CAST({quoted(name)} AS VARCHAR) AS {quoted(name)}")
    return clean


def truths(
    table: pd.DataFrame, conditions: Sequence[Condition], kinds: Kinds, book: Rulebook
) -> dict[str, list[Truth]]:
    """Give for each condition, by its text, its truth in every row of a table."""
    different = {one.text: one for one in conditions}
    if not different or not len(table):
        return {text: [] for text in different}
    names = list(dict.fromkeys(name for one in different.values() for name in one.columns))
    cases = typed(Columns(table), names, kinds, book)
    asked = [f"{one.sql} AS t_{number}" for number, one in enumerate(different.values())]
    query = (
        f"WITH clean AS (SELECT {', '.join(clean_sql(names, kinds))} FROM cases) "
        f"SELECT {', '.join(asked)} FROM clean ORDER BY row_number"
    )
    with answering(cases, query) as answers:
        answer = answers.fetchall()
    columns = list(zip(*answer, strict=True))
    return {text: [Truth.of(one) for one in column] for text, column in zip(different, columns, strict=True)}
