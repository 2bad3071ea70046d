"""What an answer is worth: how far the band of a total would shrink if a missing field were known.

The stake of a field is the greatest shrink over the answers it can have: the most that asking can settle. Fields that
tell something only together (the size of a tank and the heater's consumption) would each get nothing that way, so the
missing fields of every *way* to a derived quantity (a least set of fields that is enough for it) are also filled
together, and a field has the greatest shrink that they reach jointly with answers of which its own one makes a
difference. Where a criterion stays unsettled and none of its own fields has a stake, its missing fields are filled
together in the same manner. Joint stakes are not shares: those of several fields may add up to more than the band.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from specscan.judging.answers import Answers, answers_of, combinations, filled, missing, ways_of
from specscan.judging.kinds import column_kinds
from specscan.judging.rulesets import RuleSet
from specscan.judging.scoring import Judged, judge
from specscan.physics.columns import BASIS, Columns
from specscan.physics.derived import DERIVED, derive_numbers
from specscan.rulebook.book import Rulebook

Derive = Callable[..., pd.DataFrame]  # of a table, a rulebook and ``only`` the names of some quantities
Groups = dict[frozenset[str], NDArray]
"""Sets of fields, and the rows of the cases in which they are filled together."""
NEGLIGIBLE = 1e-9
CASES = 100
"""How many cases are worked on at once: each is tried with some hundreds of answers."""
COLUMNS = ["case_id", "ruleset", "field", "points_at_stake"]


def stakes(
    table: pd.DataFrame, rulesets: Sequence[RuleSet], book: Rulebook, derive: Derive = derive_numbers
) -> pd.DataFrame:
    """Give what each missing field is worth in each case and rule set.

    Args:
        table: the table of cases (see ``physics.columns``); its derived quantities are worked out anew.
        derive: what derives them, ``physics.derive`` or, as its sentences are not needed here, ``derive_numbers``.

    Returns:
        ``case_id``, ``ruleset``, ``field``, ``points_at_stake``: one row for every field that the rule set's
        conditions use, directly or through a derived quantity, and that is not known or known only in part (a range,
        a conflict, a vague word, some words of a set). 0 where no answer would move the total's band. Between 0 and
        the width of that band; the module says how it is reckoned.
    """
    parts = []
    for ruleset in rulesets:
        worker = _Worker(ruleset, book, derive)
        for start in range(0, len(table), CASES):
            parts.append(worker.work(table.iloc[start : start + CASES]))
    return pd.concat(parts, ignore_index=True) if parts else pd.DataFrame(columns=COLUMNS)


class _Worker:
    def __init__(self, ruleset: RuleSet, book: Rulebook, derive: Derive):
        self.ruleset, self.book, self.derive = ruleset, book, derive
        self.kinds = column_kinds(book)
        self.full = {name: answers_of(name, ruleset, self.kinds, book) for name in ruleset.fields}
        self.short = {name: answers_of(name, ruleset, self.kinds, book, short=True) for name in ruleset.fields}

    def work(self, table: pd.DataFrame) -> pd.DataFrame:
        """Give the stakes of some cases."""
        base = self.narrow(table)
        columns = Columns(base)
        lacking = {name: missing(columns, name, self.kinds[name], self.book) for name in self.ruleset.fields}
        judged = self.judged(base)
        width = _width(judged)
        worth = {name: np.zeros(len(base)) for name in self.ruleset.fields}
        singles = {frozenset([name]): np.flatnonzero(flags) for name, flags in lacking.items()}
        self.try_out(base, width, singles, self.full, worth)
        self.try_out(base, width, self.together(ways_of(self.ruleset), lacking), self.short, worth)
        self.try_out(base, width, self.leftovers(judged, lacking, worth), self.short, worth)
        found = [
            (case, name, worth[name][row])
            for row, case in enumerate(table["case_id"])
            for name in self.ruleset.fields
            if lacking[name][row]
        ]
        result = pd.DataFrame(found, columns=["case_id", "field", "points_at_stake"])
        result.insert(1, "ruleset", self.ruleset.name)
        return result.astype({"points_at_stake": float}).round({"points_at_stake": 6})

    def narrow(self, table: pd.DataFrame) -> pd.DataFrame:
        """Give the columns of the fields that matter here; those of derived quantities are left to be worked out."""
        names = [
            column
            for name in self.ruleset.fields
            for column in (name, f"{name}__low", f"{name}__high", name + BASIS)
            if column in table
        ]
        return table[["case_id", *names]].reset_index(drop=True)

    def judged(self, table: pd.DataFrame) -> list[Judged]:
        used = [q for q in DERIVED if q in self.ruleset.columns]
        derived = self.derive(table, self.book, only=used)[
            [f"{q}{end}" for q in used for end in ("", "__low", "__high")]
        ]
        return judge(pd.concat([table, derived], axis=1), self.ruleset, self.book)

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

    def leftovers(self, judged: list[Judged], lacking: Mapping[str, NDArray], worth: Mapping[str, NDArray]) -> Groups:
        """Give the missing fields of criteria that are not settled and in which no single field has a stake."""
        found: Groups = {}
        for one in judged:
            own = tuple(name for name in one.criterion.columns if name in lacking)
            if len(own) > 1:
                idle = (one.low < one.high) & (np.max([worth[name] for name in own], axis=0) == 0)
                found.update(self.together([own], {name: lacking[name] & idle for name in own}))
        return found

    def try_out(
        self,
        base: pd.DataFrame,
        width: NDArray,
        groups: Groups,
        answers: Mapping[str, Answers],
        worth: dict[str, NDArray],
    ) -> None:
        """Fill groups of fields with answers, all in one go, and note in ``worth`` what each field is worth.

        Every combination of answers is tried with all fields of the group and, where there are several, with each of
        them left out: a field is worth the shrink of the combinations that shrink the band less without it.
        """
        tables: list[pd.DataFrame] = []
        todo: list[tuple[list[str], NDArray]] = []
        for names, rows in groups.items():
            parts = [answers[name] for name in sorted(names)]
            if not len(rows) or not all(len(one) for one in parts):
                continue
            picks = combinations(parts)
            left_out = ["", *sorted(names)] if len(parts) > 1 else [""]
            tables += [filled(base, rows, parts, picks, without) for without in left_out]
            todo.append((sorted(names), np.repeat(rows, len(picks))))
        if not tables:
            return
        widths = np.split(
            _width(self.judged(pd.concat(tables, ignore_index=True))), np.cumsum([len(t) for t in tables])
        )
        place = 0
        for fields, whence in todo:
            joint = width[whence] - widths[place]
            for number, name in enumerate(fields):
                without = width[whence] - widths[place + 1 + number] if len(fields) > 1 else 0.0
                np.maximum.at(worth[name], whence, np.where(joint > without + NEGLIGIBLE, joint, 0.0))
            place += 1 + len(fields) if len(fields) > 1 else 1


def _width(judged: list[Judged]) -> NDArray:
    return np.sum([one.high - one.low for one in judged], axis=0)
