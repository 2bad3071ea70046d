"""What the missing fields of vans are worth: points at stake, and what an answer would narrow most."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import Any

import pandas as pd

from specscan.judging.narrowing import narrowing
from specscan.judging.rulesets import RuleSet
from specscan.judging.stakes import stakes
from specscan.physics.conditions import Conditions
from specscan.rulebook.book import Rulebook


@dataclass(slots=True)
class Worth:
    """What the missing fields of one van are worth: points by rule set and field; share and result by field."""

    points: dict[tuple[str, str], float] = field(default_factory=dict)
    narrows: dict[str, tuple[float, str]] = field(default_factory=dict)


def worth_of(
    table: pd.DataFrame, rulesets: Sequence[RuleSet], book: Rulebook, conditions: Conditions | None
) -> dict[str, Worth]:
    """Give the worth of the missing fields of each case of a table, by ``case_id``."""
    found = {case: Worth() for case in table["case_id"]}
    for case, name, narrows, what in _rows(narrowing(table, book, conditions), ("narrows", "narrows_what")):
        found[case].narrows[name] = (float(narrows), what)
    for case, name, ruleset, points in _rows(stakes(table, rulesets, book, conditions), ("ruleset", "points_at_stake")):
        found[case].points[ruleset, name] = float(points)
    return found


def _rows(frame: pd.DataFrame, columns: Sequence[str]) -> Iterator[tuple[Any, ...]]:
    """Give for each row its case, its field and what stands in two other columns."""
    return zip(*(frame[name].tolist() for name in ("case_id", "field", *columns)), strict=True)
