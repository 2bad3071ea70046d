"""What the missing fields of vans are worth: points at stake, and what an answer would narrow most."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

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
    for record in narrowing(table, book, conditions).to_dict("records"):
        found[record["case_id"]].narrows[record["field"]] = (float(record["narrows"]), record["narrows_what"])
    for record in stakes(table, rulesets, book, conditions).to_dict("records"):
        found[record["case_id"]].points[record["ruleset"], record["field"]] = float(record["points_at_stake"])
    return found
