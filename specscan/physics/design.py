"""Vans under the conditions that their winter is reckoned for, worked out once for a table of them."""

from __future__ import annotations

import functools
from pathlib import Path

from specscan.physics.assumptions import Assumptions
from specscan.physics.columns import Columns
from specscan.physics.conditions import Conditions, conditions_named
from specscan.physics.winter import Winter


def at_design(columns: Columns, values: Assumptions) -> Winter:
    """Give the vans of a table under its conditions, else the default ones of the rules, worked out once for a table.

    Raises:
        RuleError: ``conditions.yaml`` is missing or wrong.
    """
    if "winter" not in columns.worked:
        reckon_under(columns, values, _default(values.book.folder, values.book.digest))
    found: Winter = columns.worked["winter"]
    return found


def reckon_under(columns: Columns, values: Assumptions, conditions: Conditions) -> None:
    """Let the vans of a table be reckoned under these conditions."""
    columns.worked["winter"] = Winter(columns, values, conditions)


@functools.lru_cache(maxsize=8)
def _default(folder: Path, digest: str) -> Conditions:
    """Read the default conditions once for each state of the rules."""
    return conditions_named(folder)
