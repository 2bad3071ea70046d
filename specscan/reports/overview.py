"""All vans at a glance: score bands, days of heat, the largest unknown; in order of name, for bands are no ranks."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from specscan.dataset.reader import Reader


def overview(db: Path, ruleset: str) -> list[dict[str, Any]]:
    """Give one row per van.

    ``van``; ``ruleset``, the one judged by; ``points_low``, ``points_high``, ``points_max`` as delivered;
    ``optioned_low``, ``optioned_high`` with the options fitted; ``heat_days`` (by the rule of thumb) and
    ``heat_days_at_loss`` (by the heat that the van loses under the conditions of the scan), each with low and high;
    ``unknown``, the missing field with the most points at stake, and ``points_at_stake``. A dataset without vans gives
    none.

    Raises:
        NotFoundError: the dataset was not scored with this rule set.
        DatasetError: the dataset cannot be opened.
    """
    with Reader(db) as reader:
        titles = {row["van_id"]: row["title"] for row in reader.vans()}
        if not titles:
            return []
        ruleset = reader.ruleset(ruleset)
        rows = reader.rows(
            """
            SELECT s.van_id, s.points_low, s.points_high, s.points_max, o.points_low AS optioned_low,
                o.points_high AS optioned_high, h.value_num AS heat_days, h.value_low AS heat_days_low,
                h.value_high AS heat_days_high, l.value_num AS heat_days_at_loss,
                l.value_low AS heat_days_at_loss_low, l.value_high AS heat_days_at_loss_high,
                g.field AS unknown, g.points_at_stake
            FROM scores AS s
            LEFT JOIN scores AS o ON o.van_id = s.van_id AND o.ruleset = s.ruleset AND o.criterion = 'total'
                AND o.equipment = 'optioned'
            LEFT JOIN settled AS h ON h.van_id = s.van_id AND h.field = 'heat_days' AND h.equipment = 'standard'
            LEFT JOIN settled AS l ON l.van_id = s.van_id AND l.field = 'heat_days_at_loss'
                AND l.equipment = 'standard'
            LEFT JOIN (
                SELECT * FROM gaps WHERE points_at_stake > 0
                QUALIFY row_number() OVER (
                    PARTITION BY van_id, ruleset ORDER BY points_at_stake DESC, narrows DESC NULLS LAST, field
                ) = 1
            ) AS g ON g.van_id = s.van_id AND g.ruleset = s.ruleset
            WHERE s.criterion = 'total' AND s.equipment = 'standard' AND s.ruleset = ?
            """,
            [ruleset],
        )
    return sorted(
        ({"van": titles[row["van_id"]], "ruleset": ruleset, **row} for row in rows), key=lambda row: row["van"]
    )
