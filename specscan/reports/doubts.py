"""What a person should check first: conflicts, pages not read, statements read with little confidence, rejects."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Any

from specscan.dataset.reader import Reader
from specscan.settling.one_document import DOUBTFUL, IMPLIED, IN_UNION, LESS_EXACT

KINDS = ("conflict", "not_read", "below_threshold", "unsure", "set_aside")
COLUMNS = [
    "kind",
    "van",
    "field",
    "value",
    "unit",
    "availability",
    "confidence",
    "document",
    "page",
    "printed",
    "because",
]
NEEDLESS = (IMPLIED, IN_UNION, LESS_EXACT)  # set aside because the document says it better elsewhere: no doubt
FACTS = """
    SELECT f.fact_id, f.van_id, f.field, coalesce(printf('%.6g', f.value_num), f.value_text,
        CASE f.value_flag WHEN true THEN 'yes' WHEN false THEN 'no' END) AS value, f.unit, f.availability,
        f.confidence, d.name AS document, f.page, f.printed, f.rejected_because AS because
    FROM facts AS f JOIN documents AS d USING (doc_id)
    WHERE len(?::VARCHAR[]) = 0 OR list_contains(?::VARCHAR[], f.van_id)
    ORDER BY f.confidence, d.name, f.page, f.fact_id"""


def list_doubts(db: Path, vans: Sequence[str] = (), below: float = 1.0) -> list[dict[str, Any]]:
    """Give what is doubtful of all vans, or of those named, most doubtful first, each with document, page and words.

    ``kind`` is one of ``conflict`` (documents or lines disagree), ``not_read`` (a document or pages that gave no text),
    ``below_threshold`` (read with less confidence than the scan asked for, so it does not count), ``unsure`` (counts,
    but was read with less confidence than ``below``) and ``set_aside`` (a candidate that does not count, with why).

    Raises:
        NotFoundError: no such van, or several of that name.
        DatasetError: the dataset cannot be opened.
    """
    with Reader(db) as reader:
        wanted = [reader.van(name)["van_id"] for name in vans]
        titles = {row["van_id"]: row["title"] for row in reader.vans()}
        conflicts = {
            fact_id for row in reader.rows("SELECT fact_ids FROM settled WHERE status = 'conflicting'")
            for fact_id in row["fact_ids"] or []
        }  # fmt: skip
        found = [_doubt(row, conflicts, below) for row in reader.rows(FACTS, [wanted, wanted])]
        found += _unread(reader) if not wanted else []
    rows = [{**row, "van": titles.get(row["van_id"], "")} for row in found if row["kind"]]
    rows.sort(key=lambda row: KINDS.index(row["kind"]))
    return [{name: row[name] for name in COLUMNS} for row in rows]


def _doubt(row: dict[str, Any], conflicts: set[str], below: float) -> dict[str, Any]:
    """Give a fact with the kind of its doubt, an empty one where there is none."""
    if row["fact_id"] in conflicts:
        return {**row, "kind": "conflict", "because": "another statement says something else"}
    if row["because"] == DOUBTFUL:
        return {**row, "kind": "below_threshold"}
    if row["because"]:
        return {**row, "kind": "" if row["because"] in NEEDLESS else "set_aside"}
    return {**row, "kind": "unsure" if row["confidence"] < below else "", "because": "read with little confidence"}


def _unread(reader: Reader) -> list[dict[str, Any]]:
    """Give documents, or their pages, that gave no text, or were read from a picture."""
    nothing = dict.fromkeys([*COLUMNS, "van_id"], None)
    return [
        {
            **nothing,
            "kind": "not_read",
            "document": row["name"],
            "page": page,
            "because": row["message"] or row["status"],
        }
        for row in reader.rows("SELECT name, status, message, unread_pages FROM documents ORDER BY name")
        if row["status"] in ("partly_read", "unreadable")
        for page in (row["unread_pages"] or [None])
    ]
