"""What a person should check first: conflicts, pages not read, statements read with little confidence, rejects."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Any

from specscan.dataset.reader import Reader
from specscan.records.defaults import UNSURE_BELOW
from specscan.settling.confidence import Confidences, load_confidences
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
        f.confidence, d.name AS document, f.page, f.printed, f.rejected_because AS because, f.grounds, f.form
    FROM facts AS f JOIN documents AS d USING (doc_id)
    WHERE len(?::VARCHAR[]) = 0 OR list_contains(?::VARCHAR[], f.van_id)
    ORDER BY f.confidence, d.name, f.page, f.fact_id"""


def list_doubts(db: Path, vans: Sequence[str] = (), below: float = UNSURE_BELOW) -> list[dict[str, Any]]:
    """Give what is doubtful of all vans, or of those named, with document, page and words, least sure first.

    ``kind`` is one of ``conflict`` (documents or lines disagree), ``not_read`` (a document or pages that gave no text),
    ``below_threshold`` (read with less confidence than the scan asked for, so it does not count), ``unsure`` (counts,
    but was read with less confidence than ``below``) and ``set_aside`` (a candidate that does not count, with why).
    ``because`` says why in words.

    Raises:
        NotFoundError: no such van, or several of that name.
        DatasetError: the dataset cannot be opened.
        RuleError: the table of confidences of the last scan's rules is wrong now.
    """
    with Reader(db) as reader:
        wanted = [reader.van(name)["van_id"] for name in vans]
        titles = {row["van_id"]: row["title"] for row in reader.vans()}
        conflicts = {
            fact_id for row in reader.rows("SELECT fact_ids FROM settled WHERE status = 'conflicting'")
            for fact_id in row["fact_ids"] or []
        }  # fmt: skip
        folder = reader.rules()
        table = load_confidences(folder) if folder is not None and folder.is_dir() else None
        found = [_doubt(row, conflicts, below, table) for row in reader.rows(FACTS, [wanted, wanted])]
        found += _unread(reader) if not wanted else []
    rows = [{**row, "van": titles.get(row["van_id"], "")} for row in found if row["kind"]]
    rows.sort(key=lambda row: (KINDS.index(row["kind"]), *_sides_together(row)))
    return [{name: row[name] for name in COLUMNS} for row in rows]


def _doubt(row: dict[str, Any], conflicts: set[str], below: float, table: Confidences | None) -> dict[str, Any]:
    """Give a fact with the kind of its doubt, an empty one where there is none, and why."""
    grounds = row["grounds"] or []
    why = table.why(row["form"], grounds) if table is not None else ", ".join(grounds)
    if row["fact_id"] in conflicts:
        return {**row, "kind": "conflict", "because": "another statement says something else"}
    if row["because"] == DOUBTFUL:
        return {**row, "kind": "below_threshold", "because": why or row["because"]}
    if row["because"]:
        return {**row, "kind": "" if row["because"] in NEEDLESS else "set_aside"}
    return {**row, "kind": "unsure" if row["confidence"] < below else "", "because": why}


def _sides_together(row: dict[str, Any]) -> tuple[str, str]:
    """Give what keeps the sides of a conflict beside each other; all else stays in its order."""
    return (row["van"], row["field"]) if row["kind"] == "conflict" else ("", "")


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
