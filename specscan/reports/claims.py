"""The claims of brochures with their verdicts, the words and pages on both sides."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Sequence
from pathlib import Path
from typing import Any

from specscan.dataset.reader import Reader
from specscan.records.claims import VERDICTS
from specscan.reports.explain import sources_of


def list_claims(db: Path, vans: Sequence[str] = (), verdicts: Collection[str] = ()) -> list[dict[str, Any]]:
    """Give the claims of all vans, or of those named, van by van, what is contradicted first.

    Each has ``van``, ``document``, ``page``, ``printed``, ``said``, ``title``, ``verdict``, ``because``, ``note`` and
    ``parts``; a part has ``means``, ``verdict``, ``because`` and ``sources``, the statements of its evidence.
    ``verdicts`` leaves out all others.

    Raises:
        NotFoundError: no such van, or several of that name.
        DatasetError: the dataset cannot be opened, or was made before claims were kept.
    """
    with Reader(db) as reader:
        wanted = [reader.van(name)["van_id"] for name in vans]
        titles = {row["van_id"]: row["title"] for row in reader.vans()}
        rows = claims_of(reader, wanted)
    rows = [row for row in rows if not verdicts or row["verdict"] in verdicts]
    rows = [{"van": titles.get(row["van_id"], row["van_id"]), **row} for row in rows]
    return sorted(rows, key=lambda row: (row["van"], VERDICTS.index(row["verdict"]), row["document"], row["page"] or 0))


def claims_of(reader: Reader, van_ids: Sequence[str] = ()) -> list[dict[str, Any]]:
    """Give the claims of vans (all where none is named), the doubtful verdicts first, with parts and sources."""
    rows = reader.rows(
        "SELECT c.claim_id, c.van_id, d.name AS document, c.page, c.kind, c.title, c.said, c.printed, c.form, "
        "c.availability, c.verdict, c.because, c.note, c.claim_fact_ids, c.fact_ids "
        "FROM claims AS c JOIN documents AS d USING (doc_id) "
        "WHERE len(?::VARCHAR[]) = 0 OR list_contains(?::VARCHAR[], c.van_id) "
        "ORDER BY c.van_id, d.name, c.page, c.rowid",
        [list(van_ids), list(van_ids)],
    )
    parts: dict[str, list[dict[str, Any]]] = defaultdict(list)
    for part in reader.rows("SELECT * FROM claim_parts ORDER BY claim_id, part"):
        parts[part["claim_id"]].append(part)
    for row in rows:
        row["parts"] = parts[row["claim_id"]]
    shown = [part for row in rows for part in row["parts"]]
    evidence = sorted({fact_id for part in shown for fact_id in part["fact_ids"] or []})
    sources = sources_of(reader, evidence)  # of all at once, in order of document and page
    place = {source["fact_id"]: number for number, source in enumerate(sources)}
    for part in shown:
        part.pop("claim_id", None)
        part["sources"] = [sources[n] for n in sorted(place[one] for one in part["fact_ids"] or [] if one in place)]
    return sorted(rows, key=lambda row: (row["van_id"], VERDICTS.index(row["verdict"])))
