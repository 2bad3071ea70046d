"""Which question would narrow the winter of a van most: how far the range of a result shrinks with an answer.

A rule set weighs answers by points (``stakes``); this weighs them by what they tell about heat and time, whichever
rules one judges by. Each missing field is filled with the answers it can have, one field at a time; what it is worth
is the share of a result's range that goes away, on average over the answers (the greatest would be that of an absurd
one: a tank of no size ends every stay at once). A result that comes to be known at all counts as a range that is gone.
Where a result needs several fields that are all missing, each of them has an equal share in making it known.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from itertools import groupby

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from specscan.finding.language.units import conversion
from specscan.judging.answers import Answers, answers_of, combinations, missing
from specscan.judging.kinds import column_kinds
from specscan.judging.trials import Trials
from specscan.physics.columns import Columns
from specscan.physics.conditions import Conditions
from specscan.physics.derived import DERIVED, derive_ends
from specscan.rulebook.book import Rulebook

HEADLINES = ("stay_days", "heating_days", "heat_days_at_loss", "heater_margin_w")
"""Results that the questions are to narrow, the one that counts first where several gain as much."""
CASES = 200
NEGLIGIBLE = 0.005
COLUMNS = ["case_id", "field", "narrows", "narrows_what"]
Derive = Callable[[Columns, Sequence[str]], dict[str, NDArray]]  # what derives some quantities of some cases


def narrowing(table: pd.DataFrame, book: Rulebook, conditions: Conditions | None = None) -> pd.DataFrame:
    """Give what the answer to each missing field could do to the results of winter.

    Args:
        table: the table of cases (see ``physics.columns``).
        conditions: those under which the results are worked out, by default those of the rules.

    Returns:
        ``case_id``, ``field``, ``narrows`` (0 to 1: the share of a result's range that answers take away on average)
        and ``narrows_what`` (the result), for fields worth more than half a per cent; most first in each case.
    """

    def derive(columns: Columns, names: Sequence[str]) -> dict[str, NDArray]:
        return derive_ends(columns, book, conditions, names)

    inputs = dict.fromkeys(name for one in HEADLINES for name in DERIVED[one].inputs)
    fields = [name for name in inputs if name in book.fields]
    full, short = ({name: _answers(name, book, some) for name in fields} for some in (False, True))
    parts = [
        _work(table.iloc[start : start + CASES], full, short, book, derive) for start in range(0, len(table), CASES)
    ]
    whole = pd.concat(parts, ignore_index=True) if parts else pd.DataFrame(columns=COLUMNS)
    return whole.sort_values(["case_id", "narrows"], ascending=[True, False], kind="stable", ignore_index=True)


def _answers(name: str, book: Rulebook, short: bool = False) -> Answers:
    """Give the answers that are tried: of a number for which the rules have assumptions, from their low to their high.

    The plausible range of a field holds for every kind of van; what is assumed of this one is nearer to what will come.
    """
    found = answers_of(name, None, column_kinds(book), book, short)
    assumed = [one for one in book.values.values() if one.stands_for == name]
    if not assumed:
        return found
    ends = []
    for one in assumed:
        factor, offset = conversion(one.unit, book.units.dimensions[book.fields[name].dimension].pint)
        ends += [one.low * factor + offset, one.high * factor + offset]
    return replace(found, range=(min(ends), max(ends)))


def alternatives(name: str, what: str) -> set[str]:
    """Give the fields any of which does for a result what ``name`` does: they take its place in a way to it."""
    found: set[str] = set()
    ways = [set(way) for way in DERIVED[what].ways]
    for way in (one for one in ways if name in one):
        rest = way - {name}
        found |= {other for one in ways if rest < one and len(one) == len(way) for other in one - rest}
    return found - {name}


def _work(
    table: pd.DataFrame, answers: dict[str, Answers], short: dict[str, Answers], book: Rulebook, derive: Derive
) -> pd.DataFrame:
    fields, cases = list(answers), table["case_id"].tolist()
    columns, kinds = Columns(table), column_kinds(book)
    lacking = {name: missing(columns, name, kinds[name], book) for name in fields}
    trials = Trials(columns, answers)
    trials.add(np.arange(len(table)))  # first the cases as they are
    todo: list[tuple[str, NDArray]] = []
    for name in fields:
        rows = np.flatnonzero(lacking[name])
        if len(rows) and len(answers[name]):
            picks = combinations([answers[name]])
            trials.add(rows, [name], picks)
            todo.append((name, np.repeat(rows, len(picks))))
    if not todo:
        return pd.DataFrame(columns=COLUMNS)
    after = _widths(derive(trials.columns(np.arange(len(trials.rows)), fields), HEADLINES))
    before = {one: width[: len(table)] for one, width in after.items()}
    found, start = _together(cases, before, columns, lacking, short, derive), len(table)
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
                found.append((cases[row], name, round(float(worth[most, place]), 4), HEADLINES[most]))
    whole = pd.DataFrame(found, columns=COLUMNS).sort_values("narrows", ascending=False, kind="stable")
    return whole.drop_duplicates(["case_id", "field"])


def _together(
    cases: Sequence[str], before: dict[str, NDArray], columns: Columns, lacking: Mapping[str, NDArray],
    answers: Mapping[str, Answers], derive: Derive,
) -> list[tuple[str, str, float, str]]:  # fmt: skip
    """Give rows for results that no single answer makes known: the fewest missing fields that do so together.

    A set of fields counts where at least one combination of answers to all of them makes the result known, and it has
    no more fields than any other that does.
    """
    found: dict[str, list[tuple[str, str, float, str]]] = {one: [] for one in HEADLINES}
    fewest = {one: np.full(len(cases), np.inf) for one in HEADLINES}
    sets: dict[tuple[str, frozenset[str]], list[int]] = {}
    for one in HEADLINES:
        for way in DERIVED[one].ways:
            for row in np.flatnonzero(np.isinf(before[one])):
                key = (one, frozenset(name for name in way if lacking[name][row]))
                sets.setdefault(key, []).append(int(row))
    ordered = sorted(sets.items(), key=lambda item: (len(item[0][1]), HEADLINES.index(item[0][0]), sorted(item[0][1])))
    for size, alike in groupby(ordered, key=lambda item: len(item[0][1])):
        trials, tried = Trials(columns, answers), []
        for (one, names), whence in alike:
            rows = np.array([row for row in dict.fromkeys(whence) if size <= fewest[one][row]], dtype=int)
            if names and len(rows):
                trials.add(rows, sorted(names), combinations([answers[name] for name in sorted(names)]))
                tried.append((one, sorted(names), rows))
        for (one, fields, rows), known in zip(
            tried, _made_known(trials, [one for one, *_ in tried], derive), strict=True
        ):
            for row in rows[known.reshape(len(rows), -1).any(axis=1)]:
                fewest[one][row] = size
                if size > 1:
                    found[one] += [(cases[row], name, round(1 / size, 4), one) for name in fields]
    return [row for one in HEADLINES for row in found[one]]


def _made_known(trials: Trials, results: Sequence[str], derive: Derive) -> list[NDArray]:
    """Tell for each lot of trials which of them make its result known."""
    if not trials.sizes:
        return []
    asked = list(dict.fromkeys(results))
    inputs = list(dict.fromkeys(name for one in asked for name in DERIVED[one].inputs))
    first, which = trials.distinct(inputs)
    derived = derive(trials.columns(first, inputs), asked)
    known = {one: np.isfinite(derived[one]) for one in asked}
    lots = np.split(which, np.cumsum(trials.sizes)[:-1])
    return [known[one][lot] for one, lot in zip(results, lots, strict=True)]


def _widths(derived: Mapping[str, NDArray]) -> dict[str, NDArray]:
    """Give the width of each result's range, infinite where it is not known."""
    widths = {one: derived[f"{one}__high"] - derived[f"{one}__low"] for one in HEADLINES}
    return {one: np.where(np.isnan(width), np.inf, width) for one, width in widths.items()}


def _share(before: NDArray, after: NDArray) -> NDArray:
    """Give the share of a width that went away; 1 where a result came to be known, 0 where it grew."""
    with np.errstate(invalid="ignore", divide="ignore"):
        share = np.where(before > 0, 1 - after / before, 0.0)
    return np.clip(np.where(np.isinf(before), np.isfinite(after).astype(float), share), 0.0, 1.0)
