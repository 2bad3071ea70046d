"""Records as rows of the dataset's tables."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from specscan.records.claims import Claim
from specscan.records.documents import DocumentRecord, PlacedFact, ReadDocument
from specscan.records.facts import Settled
from specscan.records.observations import Observation
from specscan.rulebook.book import Rulebook

Row = dict[str, Any]


def document_row(record: DocumentRecord) -> Row:
    """Give the row of ``documents``."""
    return {
        "doc_id": record.doc_id, "path": record.path, "name": record.name, "sha256": record.sha256,
        "kind": record.kind, "language": record.language or None, "pages": record.pages, "status": record.status,
        "message": record.message or None, "dated": record.dated or None, "unread_pages": list(record.unread),
    }  # fmt: skip


def fact_row(placed: PlacedFact) -> Row:
    """Give the row of ``facts``; text without pages has neither page nor box."""
    fact = placed.fact
    box = fact.box
    number = fact.num is not None
    return {
        "fact_id": placed.fact_id, "van_id": placed.van_id, "field": fact.field, "value_num": fact.num,
        "value_low": (fact.low if fact.low is not None else fact.num) if number else None,
        "value_high": (fact.high if fact.high is not None else fact.num) if number else None,
        "value_text": fact.text, "value_flag": fact.flag, "unit": fact.unit or None, "printed": fact.printed,
        "printed_unit": fact.printed_unit or None, "basis": fact.basis or None, "availability": fact.availability,
        "option_name": fact.option or None, "doc_id": placed.doc_id, "page": fact.page or None,
        "x0": box.x0 if box else None, "top": box.top if box else None, "x1": box.x1 if box else None,
        "bottom": box.bottom if box else None, "found_by": fact.found_by, "confidence": fact.confidence,
        "rejected_because": fact.rejected or None, "form": fact.how,
        "grounds": list(fact.grounds),
    }  # fmt: skip


def settled_row(row: Settled) -> Row:
    """Give the row of ``settled``."""
    return {
        "van_id": row.van_id, "field": row.field, "equipment": row.equipment, "value_num": row.num,
        "value_low": row.low, "value_high": row.high, "value_text": row.text, "value_flag": row.flag,
        "unit": row.unit or None, "availability": row.availability, "status": row.status,
        "fact_ids": list(row.fact_ids), "note": row.note or None, "reason": row.reason, "basis": row.basis or None,
    }  # fmt: skip


def observation_row(one: Observation, van_id: str | None) -> Row:
    """Give the row of ``observations``; ``van_id`` is the van that it is about now, ``None`` where it is not there."""
    fact = one.fact
    return {
        "van_id": van_id, "field": one.field, "equipment": one.equipment, "answer": one.said,
        "value_num": fact.num if fact else None, "value_text": fact.text if fact else None,
        "value_flag": fact.flag if fact else None, "unit": (fact.unit if fact else "") or None, "who": one.who,
        "observed_on": one.when, "how": one.how, "evidence": one.evidence or None, "note": one.note or None,
        "document": one.doc or None, "page": one.page or None, "line": one.line,
    }  # fmt: skip


def claim_row(claim: Claim) -> Row:
    """Give the row of ``claims``."""
    box = claim.box
    return {
        "claim_id": claim.claim_id, "van_id": claim.van_id, "doc_id": claim.doc_id, "page": claim.page or None,
        "x0": box.x0 if box else None, "top": box.top if box else None, "x1": box.x1 if box else None,
        "bottom": box.bottom if box else None, "kind": claim.kind, "title": claim.title, "said": claim.said,
        "printed": claim.printed, "form": claim.how, "availability": claim.availability, "verdict": claim.verdict,
        "because": claim.because, "note": claim.note or None, "claim_fact_ids": list(claim.fact_ids),
        "fact_ids": list(dict.fromkeys(one for part in claim.parts for one in part.fact_ids)),
        "fields": list(dict.fromkeys(name for part in claim.parts for name in part.columns)),
    }  # fmt: skip


def claim_part_rows(claim: Claim) -> list[Row]:
    """Give the rows of ``claim_parts`` of one claim."""
    return [
        {
            "claim_id": claim.claim_id, "part": number, "means": part.means, "condition": part.condition,
            "fields": list(part.columns), "as_delivered": part.delivered.value, "with_options": part.optioned.value,
            "verdict": part.verdict, "because": part.because, "fact_ids": list(part.fact_ids),
        }
        for number, part in enumerate(claim.parts, start=1)
    ]  # fmt: skip


def name_rows(documents: Iterable[ReadDocument], vans: dict[tuple[str, str], str]) -> list[Row]:
    """Give the rows of ``van_names``: how each document names its vans."""
    return [
        {
            "van_id": vans[(document.record.doc_id, name.model)], "doc_id": document.record.doc_id,
            "maker": name.maker or None, "model": name.model, "model_year": name.year,
        }
        for document in documents
        for name in document.found.vans
        if (document.record.doc_id, name.model) in vans
    ]  # fmt: skip


def field_rows(book: Rulebook) -> list[Row]:
    """Give the rows of ``fields`` for the fields that are declared."""
    return [
        {
            "field": name, "type": spec.type, "unit": book.unit_of(name) or None, "kind": spec.group,
            "meaning": spec.meaning, "words": book.choices_of(name) if spec.type in ("choice", "set") else [],
        }
        for name, spec in book.fields.items()
    ]  # fmt: skip
