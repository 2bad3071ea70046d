"""What questions are worth, van by van: worked out once and kept, for it costs more than anything else in a scan.

A van's stakes and what its questions narrow follow from its own row of the table of cases, the rules and the
conditions alone. So they are kept by a digest of these, and only new and changed vans are worked on again.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import partial

import pandas as pd

from specscan.judging.narrowing import narrowing
from specscan.judging.rulesets import RuleSet
from specscan.judging.stakes import stakes
from specscan.physics.conditions import Conditions
from specscan.physics.derived import derive_numbers
from specscan.rulebook.book import Rulebook

BATCH = 500  # vans that are worked on before what they gave is noted


@dataclass(slots=True)
class Worth:
    """What the missing fields of one van are worth: points by rule set and field; share and result by field."""

    points: dict[tuple[str, str], float] = field(default_factory=dict)
    narrows: dict[str, tuple[float, str]] = field(default_factory=dict)

    def as_json(self) -> str:
        """Give it as text to keep."""
        points = [[ruleset, name, points] for (ruleset, name), points in self.points.items()]
        return json.dumps([points, [[name, *said] for name, said in self.narrows.items()]], separators=(",", ":"))

    @classmethod
    def from_json(cls, text: str) -> Worth:
        """Give what ``as_json`` kept."""
        points, narrows = json.loads(text)
        return cls({(r, f): p for r, f, p in points}, {name: (share, what) for name, share, what in narrows})


@dataclass(slots=True)
class WorthKeeper:
    """Looks up what vans are worth, and works out what is not known.

    ``stamp`` stands for all that it follows from besides the van: program, rules, conditions. ``kept`` is what earlier
    scans found, by digest; ``used`` comes to hold what this scan used, which is what is to be kept.
    """

    stamp: str = ""
    kept: Mapping[str, str] = field(default_factory=dict)
    used: dict[str, str] = field(default_factory=dict)

    def of(
        self, table: pd.DataFrame, rulesets: Sequence[RuleSet], book: Rulebook, conditions: Conditions | None
    ) -> dict[str, Worth]:
        """Give the worth of the missing fields of each case, by ``case_id``."""
        keys = dict(zip(table["case_id"], self._keys(table), strict=True))
        known = {case: Worth.from_json(self.kept[key]) for case, key in keys.items() if key in self.kept}
        new = table[~table["case_id"].isin(known)].reset_index(drop=True)
        under = partial(derive_numbers, conditions=conditions)
        for start in range(0, len(new), BATCH):
            known.update(_worked(new.iloc[start : start + BATCH].reset_index(drop=True), rulesets, book, under))
        self.used.update({keys[case]: worth.as_json() for case, worth in known.items()})
        return known

    def _keys(self, table: pd.DataFrame) -> list[str]:
        """Give a digest of each case: its values, without its name."""
        names = sorted(name for name in table.columns if name != "case_id")
        begun = hashlib.sha256(json.dumps([self.stamp, names]).encode())
        keys = []
        for row in table[names].itertuples(index=False, name=None):
            digest = begun.copy()
            digest.update(repr([_plain(value) for value in row]).encode())
            keys.append(digest.hexdigest())
        return keys


def _plain(value: object) -> object:
    """Give a value so that equal ones look the same: words of a set in order, nothing as nothing."""
    if isinstance(value, (set, frozenset, list, tuple)):
        return sorted(map(str, value))
    if value is None or value is pd.NA or value != value:
        return None
    return value.item() if hasattr(value, "item") else value


def _worked(
    table: pd.DataFrame, rulesets: Sequence[RuleSet], book: Rulebook, derive: Callable[..., pd.DataFrame]
) -> dict[str, Worth]:
    found = {case: Worth() for case in table["case_id"]}
    for record in narrowing(table, book, derive).to_dict("records"):
        found[record["case_id"]].narrows[record["field"]] = (float(record["narrows"]), record["narrows_what"])
    for record in stakes(table, rulesets, book, derive).to_dict("records"):
        found[record["case_id"]].points[record["ruleset"], record["field"]] = float(record["points_at_stake"])
    return found
