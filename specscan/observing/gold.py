"""Corrections as gold labels: what a person read again on a page is what the program should have read."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Mapping, Sequence

from specscan.records.cells import guarded
from specscan.records.facts import Fact
from specscan.records.observations import Observation

COLUMNS = ("doc", "van", "field", "value", "availability", "page")


def gold_rows(
    observations: Sequence[Observation],
    names: Mapping[tuple[str, str], str],
    misread: Mapping[tuple[str, str, str], str],
) -> list[dict[str, str]]:
    """Give the gold labels that follow from the corrections among observations, in order of document and field.

    ``names`` gives for a document's name and a van's id the model as that document names it, ``misread`` for document,
    van and field the availability of what was read there, which holds where a correction says none.

    Of several corrections of one statement the newest counts; one that says that a document does not state a field
    gives no label, for a gold file lists only what is stated.
    """
    newest: dict[tuple[str, ...], Observation] = {}
    for one in sorted(observations, key=lambda one: (one.when, one.line)):
        if one.doc:
            newest[(one.doc, one.van_id, one.field, one.availability)] = one
    rows = []
    for one in newest.values():
        if one.fact is None:
            continue
        availability = one.availability or misread.get((one.doc, one.van_id, one.field), "unstated")
        rows.append(
            {
                "doc": one.doc, "van": names.get((one.doc, one.van_id), ""), "field": one.field,
                "value": _shown(one.fact), "availability": availability, "page": str(one.page) if one.page else "",
            }
        )  # fmt: skip
    return sorted(rows, key=lambda row: (row["doc"], row["van"], row["field"], row["availability"]))


def _shown(fact: Fact) -> str:
    if fact.num is not None:
        return f"{fact.num:g}"
    return ("yes" if fact.flag else "no") if fact.flag is not None else fact.text or ""


def gold_csv(rows: Iterable[Mapping[str, str]]) -> str:
    """Give gold labels as the text of a CSV file."""
    buffer = io.StringIO()
    writer = csv.DictWriter(buffer, COLUMNS, lineterminator="\n")
    writer.writeheader()
    writer.writerows({name: guarded(cell) for name, cell in row.items()} for row in rows)
    return buffer.getvalue()
