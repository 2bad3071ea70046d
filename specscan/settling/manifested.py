"""What the user's manifest says of the vans of a document, put over what the document says."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from specscan.records.documents import ReadDocument
from specscan.records.facts import DocumentFacts, Fact, VanName
from specscan.records.names import plain
from specscan.settling.manifest import ManifestRow

FOUND_BY = "manifest"
OVERRULED = "overruled by the manifest"


def apply_manifest(document: ReadDocument, rows: Sequence[ManifestRow]) -> tuple[ReadDocument, list[str]]:
    """Give a document with the names of its vans as ``rows`` (those for this file) say, and what could not be done.

    One row for a document of one van overrules its maker, model and year. For a document of several vans a row
    without a model overrules maker and year of all, a row with a model those of the van of that model.
    """
    found, notes = document.found, []
    for row in rows:
        if len(found.vans) == 1:
            targets = [found.vans[0]]
        elif row.model:
            targets = [van for van in found.vans if plain(van.model) == plain(row.model)]
        else:
            targets = list(found.vans)
        if not targets:
            said = ", ".join(van.model for van in found.vans) or "no van at all"
            notes.append(f"manifest.csv:{row.line}: {document.record.name} speaks of {said}, not of {row.model!r}")
        for target in targets:
            found = _renamed(found, target, row)
    return replace(document, found=found), notes


def named_by(rows: Sequence[ManifestRow]) -> VanName | None:
    """Give the van that a file is about, where one manifest line names its model."""
    if len(rows) != 1 or not rows[0].model:
        return None
    return VanName(rows[0].maker, rows[0].model, rows[0].year)


def _renamed(found: DocumentFacts, old: VanName, row: ManifestRow) -> DocumentFacts:
    model = row.model if row.model and len(found.vans) == 1 else old.model
    new = VanName(row.maker or old.maker, model, row.year if row.year is not None else old.year)
    facts: list[Fact] = []
    said: dict[str, object] = {"maker": row.maker, "model": row.model and model, "model_year": row.year}
    for fact in found.facts:
        if fact.model == old.model:
            fact = replace(fact, model=model)
            if said.get(fact.field) and not fact.rejected:
                fact = replace(fact, rejected=OVERRULED)
        facts.append(fact)
    for name, value in said.items():
        if value:
            facts.append(
                Fact(
                    field=name,
                    model=model,
                    num=float(value) if isinstance(value, int) else None,
                    text=value if isinstance(value, str) else None,
                    printed=f"manifest.csv line {row.line}: {value}",
                    availability="standard",
                    found_by=FOUND_BY,
                    confidence=1.0,
                    how="identity",
                )
            )
    vans = tuple(new if van == old else van for van in found.vans)
    return replace(found, vans=vans, facts=tuple(facts))
