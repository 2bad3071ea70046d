"""Scores: every criterion of every rule set for every case, as points known, lowest and highest.

All conditions of a rule set are evaluated by DuckDB in one query over all cases. From their truth follows at which
steps of its scale each criterion can still end: a set of steps as the bits of a number. The points follow from that.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from specscan.judging.cases import answering, clean_sql, typed
from specscan.judging.kinds import Kinds, column_kinds, uncertain_sql
from specscan.judging.reasons import reason_of, total_reason
from specscan.judging.rulesets import TOTAL, Criterion, RuleSet
from specscan.physics.columns import Columns
from specscan.rulebook.book import Rulebook

BATCH = 100_000
Bits = NDArray[np.int64]
COLUMNS = ["case_id", "ruleset", "criterion", "points", "points_low", "points_high", "points_max", "because", "reached"]


@dataclass(frozen=True)
class Judged:
    """One criterion over all cases.

    ``ends`` are the steps at which the scale can still end, as bits (the last: no step holds); ``unclear`` the columns
    for want of which it is not settled, two bits each: not known at all, known only in part.
    """

    criterion: Criterion
    ends: Bits
    unclear: Bits
    low: NDArray[np.float64]
    high: NDArray[np.float64]


def score(table: pd.DataFrame, rulesets: Sequence[RuleSet], book: Rulebook) -> pd.DataFrame:
    """Score every case by every rule set.

    Args:
        table: one row per case: ``case_id``, the columns of the fields (see ``physics.columns``) and, where they were
            derived already, the derived quantities; those that a rule set uses and ``table`` lacks are derived here.

    Returns:
        One row per case, rule set and criterion, in that order, the sum as criterion ``total``, with the columns
        ``case_id``, ``ruleset``, ``criterion``, ``points``, ``points_low``, ``points_high``, ``points_max``,
        ``because`` and ``reached``. ``points`` is what is certain: the award where it is settled, else the low end of
        the band. ``reached`` is the number of the step that counts (from 0; the number of steps where none holds),
        missing where it is not settled and for the total. Bands of criteria add up as if they were independent, so
        the band of a total may be too wide, never too narrow.
    """
    parts = list(score_in_batches(table, rulesets, book))
    return pd.concat(parts, ignore_index=True) if parts else _long([], [], "", 0.0)


def score_in_batches(
    table: pd.DataFrame, rulesets: Sequence[RuleSet], book: Rulebook, rows: int = BATCH
) -> Iterator[pd.DataFrame]:
    """Give what ``score`` gives, for ``rows`` cases and one rule set at a time, so that memory stays bounded."""
    for start in range(0, len(table), rows):
        batch = table.iloc[start : start + rows]
        cases, columns = batch["case_id"].tolist(), Columns(batch)
        for ruleset in rulesets:
            yield _long(cases, judge(columns, ruleset, book), ruleset.name, ruleset.points_max)


def judge(columns: Columns, ruleset: RuleSet, book: Rulebook, why: bool = True) -> list[Judged]:
    """Evaluate the criteria of a rule set over all cases; without ``why`` nothing is said to be ``unclear``."""
    kinds = column_kinds(book)
    cases = typed(columns, ruleset.columns, kinds, book)
    with answering(cases, _query(ruleset, kinds, why)) as answers:
        answer = answers.fetchnumpy()
    wanting = {
        name: [_truth(answer[f"u_{place}_{bit}"]) == 1 for bit in range(2)]
        for place, name in enumerate(ruleset.columns)
        if why
    }
    judged = []
    for number, criterion in enumerate(ruleset.criteria):
        steps = [_truth(answer[f"t_{number}_{step}"]) for step in range(len(criterion.conditions))]
        ends, undecided = _ends(steps, len(cases))
        unclear = _unclear(criterion, undecided, wanting) if why else np.zeros(len(cases), dtype=np.int64)
        low, high = _bounds(ends, criterion)
        judged.append(Judged(criterion, ends, unclear, low, high))
    return judged


def _query(ruleset: RuleSet, kinds: Kinds, why: bool) -> str:
    """Give the query that evaluates a rule set: the truth of each condition, and which columns are not fully known.

    What follows from these is worked out on arrays: a query of all that takes four times as long to plan, which is
    most of its time for some thousand cases.
    """
    clean = clean_sql(ruleset.columns, kinds)
    asked = ["row_number"]
    for number, criterion in enumerate(ruleset.criteria):
        asked += [f"{one.sql} AS t_{number}_{step}" for step, one in enumerate(criterion.conditions)]
    for place, column in enumerate(ruleset.columns if why else ()):
        asked += [f"{test} AS u_{place}_{bit}" for bit, test in enumerate(uncertain_sql(column, kinds[column]))]
    return (
        f"WITH clean AS (SELECT {', '.join(clean)} FROM cases) SELECT {', '.join(asked)} FROM clean ORDER BY row_number"
    )


def _truth(column: NDArray) -> NDArray[np.int8]:
    """Give 1 for yes, 0 for no and -1 for unknown of a column of booleans as the engine gives it."""
    return np.where(np.ma.getmaskarray(column), np.int8(-1), np.ma.getdata(column).astype(np.int8))


def _ends(steps: list[NDArray[np.int8]], size: int) -> tuple[Bits, list[NDArray[np.bool_]]]:
    """Give where a scale can end, as bits, and for each step where it is undecided and can still matter.

    A scale can end at a step that may hold where none before it surely does; at none where no step surely holds.
    """
    ends, still = np.zeros(size, dtype=np.int64), np.ones(size, dtype=bool)
    undecided = []
    for number, step in enumerate(steps):
        undecided.append(still & (step == -1))
        ends += (still & (step != 0)).astype(np.int64) << number
        still = still & (step != 1)
    return ends + (still.astype(np.int64) << len(steps)), undecided


def _unclear(
    criterion: Criterion, undecided: list[NDArray[np.bool_]], wanting: Mapping[str, list[NDArray[np.bool_]]]
) -> Bits:
    """A column is wanting where it is not (fully) known and a step that uses it is undecided and can still matter."""
    bits = np.zeros(len(undecided[0]), dtype=np.int64)
    for place, column in enumerate(criterion.columns):
        using = [one for one, step in zip(undecided, criterion.conditions, strict=True) if column in step.columns]
        either = np.logical_or.reduce(using)
        for bit, test in enumerate(wanting[column]):
            bits += (either & test).astype(np.int64) << (2 * place + bit)
    return bits


def _bounds(ends: Bits, criterion: Criterion) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    different, which = np.unique(ends, return_inverse=True)
    points = criterion.points
    open_ends = [[points[step] for step in range(len(points)) if bits >> step & 1] for bits in different.tolist()]
    low = np.array([min(one) for one in open_ends], dtype=float)
    high = np.array([max(one) for one in open_ends], dtype=float)
    return low[which], high[which]


def _long(cases: list[str], judged: list[Judged], ruleset: str, points_max: float) -> pd.DataFrame:
    """Give one row per case and criterion, the total last."""
    size, height = len(cases), len(judged) + 1
    if not size:
        return pd.DataFrame(columns=COLUMNS).astype({"reached": "Int64"})
    low = np.column_stack([one.low for one in judged])
    high = np.column_stack([one.high for one in judged])
    low = np.column_stack([low, low.sum(axis=1)]).round(6)
    high = np.column_stack([high, high.sum(axis=1)]).round(6)
    because = np.empty((size, height), dtype=object)
    reached = np.full((size, height), -1, dtype=np.int64)
    for place, one in enumerate(judged):
        because[:, place], reached[:, place] = _told(one)
    because[:, -1] = _told_total(judged, points_max, low[:, -1], high[:, -1])
    names = [one.criterion.name for one in judged] + [TOTAL]
    weights = [one.criterion.weight for one in judged] + [points_max]
    return pd.DataFrame(
        {
            "case_id": np.repeat(np.array(cases, dtype=object), height),
            "ruleset": np.full(size * height, ruleset, dtype=object),
            "criterion": np.tile(np.array(names, dtype=object), size),
            "points": low.ravel(),
            "points_low": low.ravel(),
            "points_high": high.ravel(),
            "points_max": np.tile(np.array(weights, dtype=float), size),
            "because": because.ravel(),
            "reached": pd.array(reached.ravel(), dtype="Int64"),
        },
        columns=COLUMNS,
    ).assign(reached=lambda frame: frame["reached"].where(frame["reached"] >= 0))


def _told(one: Judged) -> tuple[NDArray[np.object_], Bits]:
    """Give the reason and the step reached of each case; each different situation is put into words once."""
    pairs, which = np.unique(np.column_stack([one.ends, one.unclear]), axis=0, return_inverse=True)
    texts = np.array([reason_of(one.criterion, ends, unclear) for ends, unclear in pairs.tolist()], dtype=object)
    steps = [ends.bit_length() - 1 if ends & (ends - 1) == 0 else -1 for ends in pairs[:, 0].tolist()]
    return texts[which.ravel()], np.array(steps, dtype=np.int64)[which.ravel()]


def _told_total(judged: list[Judged], points_max: float, low: NDArray, high: NDArray) -> NDArray[np.object_]:
    unsettled = np.column_stack([one.low < one.high for one in judged])
    situations, which = np.unique(np.column_stack([unsettled, low, high]), axis=0, return_inverse=True)
    titles = [one.criterion.title for one in judged]
    texts = [
        total_reason([title for title, flag in zip(titles, row, strict=False) if flag], row[-2], row[-1], points_max)
        for row in situations.tolist()
    ]
    return np.array(texts, dtype=object)[which.ravel()]
