"""Rule sets' own examples: do they get the points that the file expects?"""

from __future__ import annotations

from dataclasses import dataclass

import pandas as pd

from specscan.judging.rulesets import Points, RuleSet
from specscan.judging.scoring import score
from specscan.physics.columns import table_of
from specscan.physics.derived import DERIVED, derive_numbers
from specscan.rulebook.book import Rulebook

TOLERANCE = 0.005


@dataclass(frozen=True, slots=True)
class CaseResult:
    """What became of an example: the points that differ from what was expected, each in words."""

    ruleset: str
    case: str
    failures: tuple[str, ...]

    @property
    def passed(self) -> bool:
        """Tell whether every point was as expected."""
        return not self.failures


def run_cases(ruleset: RuleSet, book: Rulebook) -> list[CaseResult]:
    """Score the examples of a rule set and compare them with what it expects, to a half hundredth of a point.

    An example may give a derived quantity outright, which then stands for the computed one.
    """
    if not ruleset.cases:
        return []
    scores = score(_table(ruleset, book), [ruleset], book)
    bands = scores.set_index(["case_id", "criterion"])[["points_low", "points_high"]]
    results = []
    for number, example in enumerate(ruleset.cases):
        failures = []
        for name, points in example.expect.items():
            low, high = (float(bands.at[(str(number), name), end]) for end in ("points_low", "points_high"))
            wanted = _band(points)
            if max(abs(low - wanted[0]), abs(high - wanted[1])) > TOLERANCE:
                failures.append(f"{name}: expected {_shown(wanted)}, got {_shown((low, high))}")
        results.append(CaseResult(ruleset.name, example.case, tuple(failures)))
    return results


def _table(ruleset: RuleSet, book: Rulebook) -> pd.DataFrame:
    table = table_of([example.van for example in ruleset.cases], book, DERIVED)
    computed = derive_numbers(table, book)
    for name in DERIVED:
        given = table[name].notna() if name in table else pd.Series(False, index=table.index)
        for column in (name, f"{name}__low", f"{name}__high"):
            table[column] = table[column].where(given, computed[column]) if given.any() else computed[column]
    return table


def _band(points: Points) -> tuple[float, float]:
    return (float(points[0]), float(points[1])) if isinstance(points, list) else (float(points), float(points))


def _shown(band: tuple[float, float]) -> str:
    return f"{band[0]:g}" if band[0] == band[1] else f"{band[0]:g} to {band[1]:g}"
