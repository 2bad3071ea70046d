"""Which question would narrow the winter of a van most: how far the range of a result shrinks with an answer.

A rule set weighs answers by points (``stakes``); this weighs them by what they tell about heat and time, whichever
rules one judges by. Each missing field is filled with the answers it can have, one field at a time; what it is worth
is the share of a result's range that goes away, on average over the answers (the greatest would be that of an absurd
one: a tank of no size ends every stay at once). A result that comes to be known at all counts as a range that is gone.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from specscan.judging.answers import Answers, answers_of, combinations, filled, missing
from specscan.judging.kinds import column_kinds
from specscan.physics.columns import BASIS, Columns
from specscan.physics.derived import DERIVED, derive_numbers
from specscan.rulebook.book import Rulebook

HEADLINES = ("stay_days", "heating_days", "heat_days_at_loss", "heater_margin_w")
"""Results that the questions are to narrow, the one that counts first where several gain as much."""
CASES = 50
NEGLIGIBLE = 0.005
COLUMNS = ["case_id", "field", "narrows", "narrows_what"]
Derive = Callable[[pd.DataFrame, Rulebook], pd.DataFrame]


def narrowing(table: pd.DataFrame, book: Rulebook, derive: Derive = derive_numbers) -> pd.DataFrame:
    """Give what the answer to each missing field could do to the results of winter.

    Args:
        table: the table of cases (see ``physics.columns``).
        derive: what derives the results, under whichever conditions.

    Returns:
        ``case_id``, ``field``, ``narrows`` (0 to 1: the share of a result's range that answers take away on average)
        and ``narrows_what`` (the result), for fields worth more than half a per cent; most first in each case.
    """
    inputs = dict.fromkeys(name for one in HEADLINES for name in DERIVED[one].inputs)
    fields = [name for name in inputs if name in book.fields]
    kinds = column_kinds(book)
    answers = {name: answers_of(name, None, kinds, book) for name in fields}
    parts = [
        _work(table.iloc[start : start + CASES], fields, answers, book, derive)
        for start in range(0, len(table), CASES)
    ]  # fmt: skip
    whole = pd.concat(parts, ignore_index=True) if parts else pd.DataFrame(columns=COLUMNS)
    return whole.sort_values(["case_id", "narrows"], ascending=[True, False], kind="stable", ignore_index=True)


def _work(
    table: pd.DataFrame, fields: Sequence[str], answers: dict[str, Answers], book: Rulebook, derive: Derive
) -> pd.DataFrame:
    names = [c for f in fields for c in (f, f"{f}__low", f"{f}__high", f + BASIS) if c in table]
    base = table[["case_id", *names]].reset_index(drop=True)
    columns, kinds = Columns(base), column_kinds(book)
    before = _widths(derive(base, book))
    tables: list[pd.DataFrame] = []
    todo: list[tuple[str, NDArray]] = []
    for name in fields:
        rows = np.flatnonzero(missing(columns, name, kinds[name], book))
        if len(rows) and len(answers[name]):
            picks = combinations([answers[name]])
            tables.append(filled(base, rows, [answers[name]], picks))
            todo.append((name, np.repeat(rows, len(picks))))
    if not tables:
        return pd.DataFrame(columns=COLUMNS)
    after = _widths(derive(pd.concat(tables, ignore_index=True), book))
    found, start = [], 0
    for name, whence in todo:
        shares = np.stack([
            _share(before[one][whence], after[one][start : start + len(whence)]) for one in HEADLINES
        ])  # fmt: skip
        start += len(whence)
        per_row = len(answers[name])
        worth = shares.reshape(len(HEADLINES), -1, per_row).mean(axis=2)
        for place, row in enumerate(whence[::per_row]):
            most = int(np.argmax(worth[:, place]))
            if worth[most, place] > NEGLIGIBLE:
                found.append((base["case_id"].iloc[row], name, round(float(worth[most, place]), 4), HEADLINES[most]))
    return pd.DataFrame(found, columns=COLUMNS)


def _widths(derived: pd.DataFrame) -> dict[str, NDArray]:
    """Give the width of each result's range, infinite where it is not known."""
    widths = {one: (derived[f"{one}__high"] - derived[f"{one}__low"]).to_numpy(dtype=float) for one in HEADLINES}
    return {one: np.where(np.isnan(width), np.inf, width) for one, width in widths.items()}


def _share(before: NDArray, after: NDArray) -> NDArray:
    """Give the share of a width that went away; 1 where a result came to be known, 0 where it grew."""
    with np.errstate(invalid="ignore", divide="ignore"):
        share = np.where(before > 0, 1 - after / before, 0.0)
    return np.clip(np.where(np.isinf(before), np.isfinite(after).astype(float), share), 0.0, 1.0)
