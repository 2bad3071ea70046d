"""What an answer is worth: how far the band of a total would shrink if a missing field were known.

The stake of a field is the greatest shrink over the answers it can have: the most that asking can settle. Fields that
tell something only together (the size of a tank and the heater's consumption) would each get nothing that way, so the
missing fields of every *way* to a derived quantity (a least set of fields that is enough for it) are also filled
together, and a field has the greatest shrink that they reach jointly with answers of which its own one makes a
difference. Where a criterion stays unsettled and none of its own fields has a stake, its missing fields are filled
together in the same manner. Joint stakes are not shares: those of several fields may add up to more than the band.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from specscan.judging.answers import Answers, answers_of, combinations, missing, ways_of
from specscan.judging.kinds import column_kinds
from specscan.judging.rulesets import RuleSet
from specscan.judging.scoring import judge
from specscan.judging.trials import Trials
from specscan.physics.columns import Columns
from specscan.physics.conditions import Conditions
from specscan.physics.derived import DERIVED, derive_ends
from specscan.rulebook.book import Rulebook

Groups = dict[frozenset[str], NDArray]
"""Sets of fields, and the rows of the cases in which they are filled together."""
Known = dict[tuple[object, ...], dict[str, list[NDArray]]]
"""What was derived for some trials of the same cases, by what makes them the same."""
Todo = list[tuple[list[str], NDArray]]
"""Fields that are filled together, and the row of the case of each of their trials, in the order of these."""
Bands = dict[str, tuple[NDArray, NDArray]]
"""The least and the most points of each trial, by criterion."""
NEGLIGIBLE = 1e-9
CASES = 100
"""How many cases are worked on at once: each is tried with some hundreds of answers."""
COLUMNS = ["case_id", "ruleset", "field", "points_at_stake"]


def stakes(
    table: pd.DataFrame, rulesets: Sequence[RuleSet], book: Rulebook, conditions: Conditions | None = None
) -> pd.DataFrame:
    """Give what each missing field is worth in each case and rule set.

    Args:
        table: the table of cases (see ``physics.columns``); its derived quantities are worked out anew.
        conditions: those under which they are, by default those of the rules.

    Returns:
        ``case_id``, ``ruleset``, ``field``, ``points_at_stake``: one row for every field that the rule set's
        conditions use, directly or through a derived quantity, and that is not known or known only in part (a range,
        a conflict, a vague word, some words of a set). 0 where no answer would move the total's band. Between 0 and
        the width of that band; the module says how it is reckoned.
    """
    parts: dict[str, list[pd.DataFrame]] = {ruleset.name: [] for ruleset in rulesets}
    workers = [_Worker(ruleset, book, conditions) for ruleset in rulesets]
    for start in range(0, len(table), CASES):
        known: Known = {}
        for worker in workers:
            parts[worker.ruleset.name].append(worker.work(table.iloc[start : start + CASES], known))
    whole = [one for some in parts.values() for one in some]
    return pd.concat(whole, ignore_index=True) if whole else pd.DataFrame(columns=COLUMNS)


class _Worker:
    def __init__(self, ruleset: RuleSet, book: Rulebook, conditions: Conditions | None):
        self.ruleset, self.book, self.conditions = ruleset, book, conditions
        self.kinds = column_kinds(book)
        self.full = {name: answers_of(name, ruleset, self.kinds, book) for name in ruleset.fields}
        self.short = {name: answers_of(name, ruleset, self.kinds, book, short=True) for name in ruleset.fields}
        # criteria that rest on derived quantities are judged each by itself, for each sees other trials as alike
        heavy = [one for one in ruleset.criteria if any(name in DERIVED for name in one.columns)]
        light = tuple(one for one in ruleset.criteria if one not in heavy)
        self.parts = [replace(ruleset, criteria=some) for some in (*((one,) for one in heavy), light) if some]

    def work(self, table: pd.DataFrame, known: Known) -> pd.DataFrame:
        """Give the stakes of some cases; ``known`` is what was derived for them under other rule sets."""
        columns = Columns(table)
        lacking = {name: missing(columns, name, self.kinds[name], self.book) for name in self.ruleset.fields}
        worth = {name: np.zeros(len(table)) for name in self.ruleset.fields}
        trials = Trials(columns, self.full)
        trials.add(np.arange(len(table)))  # first the cases as they are
        singles = {frozenset([name]): np.flatnonzero(flags) for name, flags in lacking.items()}
        todo = self.fill(trials, singles, self.full)
        todo += self.fill(trials, self.together(ways_of(self.ruleset), lacking), self.short)
        found_bands = self.bands(trials, known)
        bands = {name: (low[: len(table)], high[: len(table)]) for name, (low, high) in found_bands.items()}
        note(todo, _width(bands), np.split(_width(found_bands), np.cumsum(trials.sizes))[1:], worth)
        trials = Trials(columns, self.full)
        todo = self.fill(trials, self.leftovers(bands, lacking, worth), self.short)
        if todo:
            widths = np.split(_width(self.bands(trials, known, bands)), np.cumsum(trials.sizes))
            note(todo, _width(bands), widths, worth)
        found = [
            (case, name, worth[name][row])
            for row, case in enumerate(table["case_id"])
            for name in self.ruleset.fields
            if lacking[name][row]
        ]
        result = pd.DataFrame(found, columns=["case_id", "field", "points_at_stake"])
        result.insert(1, "ruleset", self.ruleset.name)
        return result.astype({"points_at_stake": float}).round({"points_at_stake": 6})

    def bands(self, trials: Trials, known: Known, before: Bands | None = None) -> Bands:
        """Give the least and the most points of each criterion for each trial; ``before`` are those of the cases."""
        found: dict[str, tuple[NDArray, NDArray]] = {}
        parts = self.parts
        if before is not None:
            parts = [part for part in self.parts if trials.changed(part.fields)]
            found = {name: (low[trials.rows], high[trials.rows]) for name, (low, high) in before.items()}
        derived = self.derived(trials, parts, known)
        for part in parts:
            first, which = trials.distinct(part.fields)
            filled = trials.columns(first, [name for name in part.columns if name not in DERIVED])
            ends: dict[str, NDArray] = {}
            for name in part.columns:
                if name in DERIVED:
                    whence, parts_of = derived[name]
                    for column, values in zip((name, f"{name}__low", f"{name}__high"), parts_of, strict=True):
                        ends[column] = values[whence[first]]
            for one in judge(filled.with_columns(ends, {}), part, self.book, why=False):
                found[one.criterion.name] = (one.low[which], one.high[which])
        return {one.name: found[one.name] for one in self.ruleset.criteria}

    def derived(
        self, trials: Trials, parts: Sequence[RuleSet], known: Known
    ) -> dict[str, tuple[NDArray, list[NDArray]]]:
        """Give for each derived quantity its different values (typical, low, high), and which each trial has."""
        together: dict[bytes, tuple[NDArray, NDArray, list[str]]] = {}
        for name in (one for one in DERIVED if any(one in part.columns for part in parts)):
            first, which = trials.distinct(DERIVED[name].inputs)
            together.setdefault(first.tobytes(), (first, which, []))[2].append(name)
        found = {}
        for first, which, names in together.values():
            inputs = list(dict.fromkeys(field for name in names for field in DERIVED[name].inputs))
            key = (tuple(names), *trials.key(first, inputs))
            if key not in known:
                ends = derive_ends(trials.columns(first, inputs), self.book, self.conditions, names)
                known[key] = {name: [ends[f"{name}{end}"] for end in ("", "__low", "__high")] for name in names}
            found.update({name: (which, known[key][name]) for name in names})
        return found

    def together(self, sets: Iterable[tuple[str, ...]], lacking: Mapping[str, NDArray]) -> Groups:
        """Give, for sets of fields, which two or more of them are missing together, and in which cases."""
        found: dict[frozenset[str], list[NDArray]] = {}
        for fields in sets:
            flags = np.column_stack([lacking[name] for name in fields])
            for pattern in np.unique(flags, axis=0):
                names = frozenset(name for name, flag in zip(fields, pattern, strict=True) if flag)
                if len(names) > 1:
                    found.setdefault(names, []).append(np.flatnonzero((flags == pattern).all(axis=1)))
        return {names: np.unique(np.concatenate(rows)) for names, rows in found.items()}

    def leftovers(self, bands: Bands, lacking: Mapping[str, NDArray], worth: Mapping[str, NDArray]) -> Groups:
        """Give the missing fields of criteria that are not settled and in which no single field has a stake."""
        found: Groups = {}
        for criterion in self.ruleset.criteria:
            low, high = bands[criterion.name]
            own = tuple(name for name in criterion.columns if name in lacking)
            if len(own) > 1:
                idle = (low < high) & (np.max([worth[name] for name in own], axis=0) == 0)
                found.update(self.together([own], {name: lacking[name] & idle for name in own}))
        return found

    def fill(self, trials: Trials, groups: Groups, answers: Mapping[str, Answers]) -> Todo:
        """Fill groups of fields with answers, all of which are among the full ones, and say what was filled.

        Every combination of answers is tried with all fields of the group and, where there are several, with each of
        them left out.
        """
        todo: Todo = []
        for names, rows in groups.items():
            fields = sorted(names)
            parts = [answers[name] for name in fields]
            if not len(rows) or not all(len(one) for one in parts):
                continue
            chosen = combinations(parts)
            picks = np.column_stack(
                [self.full[name].numbers_of(answers[name])[chosen[:, place]] for place, name in enumerate(fields)]
            )
            left_out = ["", *fields] if len(parts) > 1 else [""]
            for left in left_out:
                trials.add(rows, fields, picks, left)
            todo.append((fields, np.repeat(rows, len(picks))))
        return todo


def note(todo: Todo, width: NDArray, widths: Sequence[NDArray], worth: dict[str, NDArray]) -> None:
    """Note in ``worth`` what each field is worth, of which ``width`` are the cases' bands, ``widths`` the trials'.

    A field is worth the shrink of the combinations that shrink the band less without it.
    """
    place = 0
    for fields, whence in todo:
        joint = width[whence] - widths[place]
        for number, name in enumerate(fields):
            without = width[whence] - widths[place + 1 + number] if len(fields) > 1 else 0.0
            np.maximum.at(worth[name], whence, np.where(joint > without + NEGLIGIBLE, joint, 0.0))
        place += 1 + len(fields) if len(fields) > 1 else 1


def _width(bands: Bands) -> NDArray:
    return np.sum([high - low for low, high in bands.values()], axis=0)
