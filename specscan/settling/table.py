"""Settled values as a table of cases: one row per van and equipment, the form in which physics and rules see them."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TypeVar

import numpy as np
import pandas as pd

from specscan.records.facts import Settled
from specscan.rulebook.book import Rulebook

CASE_SEPARATOR = "|"
Value = TypeVar("Value")


def case_id(van_id: str, equipment: str) -> str:
    """Give the name of a case: a van as delivered (``standard``) or with its options (``optioned``)."""
    return f"{van_id}{CASE_SEPARATOR}{equipment}"


def split_case(case: str) -> tuple[str, str]:
    """Give van and equipment of a case."""
    van_id, _, equipment = case.rpartition(CASE_SEPARATOR)
    return van_id, equipment


def case_table(settled: Iterable[Settled], book: Rulebook) -> pd.DataFrame:
    """Give the table of the cases of vans, as ``table_of_cases`` has it."""
    return table_of_cases(((row.van_id, row) for row in settled), book)


def table_of_cases(named: Iterable[tuple[str, Settled]], book: Rulebook) -> pd.DataFrame:
    """Give one row per case with the columns ``case_id`` and, for each field, what is known of it.

    ``named`` are settled rows, each with the name of the van, or of the evidence, of which it is a case.
    A number or integer has ``f``, ``f__low``, ``f__high`` (floats in the canonical unit, NaN where unknown) and
    ``f__basis`` (str or None); a flag is a nullable boolean; a choice, set or text is str or None.

    The low and high of a *stated* range are kept, except for fields whose range is what the part can do (a heater
    from 2 to 6 kW can deliver 6): those declare ``several`` in their field file, and their value counts alone.
    """
    cases: dict[str, dict[str, Settled]] = {}
    for name, row in named:
        if row.field in book.fields:
            cases.setdefault(case_id(name, row.equipment), {})[row.field] = row
    rows = list(cases.values())
    columns: dict[str, object] = {"case_id": pd.Series(list(cases), dtype="object")}
    for name, spec in book.fields.items():
        own = [row.get(name) for row in rows]
        if spec.type in ("number", "integer"):
            bounds = np.array([_bounds(row, bool(spec.several)) for row in own], dtype=float).reshape(-1, 3)
            columns[name], columns[f"{name}__low"], columns[f"{name}__high"] = bounds.T
            columns[f"{name}__basis"] = _texts([row.basis or None if row is not None else None for row in own])
        elif spec.type == "flag":
            flags = [_unless_conflicting(row, row.flag) if row else None for row in own]
            columns[name] = pd.array(flags, dtype="boolean")
        else:
            columns[name] = _texts([_unless_conflicting(row, row.text) if row else None for row in own])
    return pd.DataFrame(columns)


def _bounds(row: Settled | None, capability: bool) -> tuple[float, float, float]:
    if row is None or row.num is None:
        return np.nan, np.nan, np.nan
    if capability and row.status != "conflicting":
        return row.num, row.num, row.num
    low = row.low if row.low is not None else row.num
    high = row.high if row.high is not None else row.num
    return row.num, min(low, row.num), max(high, row.num)


def _unless_conflicting(row: Settled, value: Value) -> Value | None:
    """Give a value; a word or flag on which documents disagree is not known, so no rule may rest on it."""
    return None if row.status == "conflicting" else value


def _texts(values: Sequence[str | None]) -> pd.Series:
    return pd.Series(values, dtype="object")
