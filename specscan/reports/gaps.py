"""What is missing per van, most points at stake first, with the question to ask."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from specscan.dataset.reader import Reader


def list_gaps(db: Path, ruleset: str, van: str = "", at_least: float = 0.0) -> list[dict[str, Any]]:
    """Give the missing and conflicting fields of all vans, or of one, under a rule set.

    Each row has ``van_id``, ``van``, ``field``, ``reason``, ``points_at_stake`` and ``question``; the most points
    at stake first; those with less than ``at_least`` points are left out. ``narrows`` says which share of the range of
    ``narrows_what``, a result of winter, the answer takes away on average; it decides between equal points.

    Raises:
        NotFoundError: no such rule set or van.
        DatasetError: the dataset cannot be opened.
    """
    with Reader(db) as reader:
        ruleset = reader.ruleset(ruleset)
        titles = {row["van_id"]: row["title"] for row in reader.vans()}
        only = reader.van(van)["van_id"] if van else None
        rows = reader.rows(
            "SELECT van_id, field, reason, points_at_stake, question, narrows, narrows_what FROM gaps "
            "WHERE ruleset = ? AND points_at_stake >= ? AND (?::VARCHAR IS NULL OR van_id = ?) "
            "ORDER BY points_at_stake DESC, narrows DESC NULLS LAST, van_id, field",
            [ruleset, at_least, only, only],
        )
    return [{"van": titles.get(row["van_id"], row["van_id"]), **row} for row in rows]
