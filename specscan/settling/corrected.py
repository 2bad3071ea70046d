"""Corrections of misread values: what a person read again on a document's page goes in place of what was read there.

A correction is no statement that the program found: it carries a value, but does not become a row of ``facts``. The
misread statements stay there, set aside, and stay with the settled value, so that ``evaluate`` goes on to judge what
was really read.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace

from specscan.records.documents import DocumentRecord, PlacedFact, Van
from specscan.records.facts import Fact, Settled
from specscan.records.observations import Observation
from specscan.records.shown import on_page
from specscan.settling.observed import van_of
from specscan.settling.one_document import AS_DELIVERED

FOUND_BY = "correction"
FORM = "table_cell"  # believed like a specification; a correction of running text keeps that form


@dataclass(slots=True)
class Corrected:
    """Facts as found, with the misread ones set aside, and the corrections that take part in their place.

    ``behind`` gives for the id of a correction the observation and the ids of the facts that it corrects.
    """

    placed: list[PlacedFact]
    corrections: list[PlacedFact] = field(default_factory=list)
    behind: dict[str, tuple[Observation, tuple[str, ...]]] = field(default_factory=dict)


def correct(
    placed: Sequence[PlacedFact],
    observations: Sequence[Observation],
    vans: Sequence[Van],
    records: Mapping[str, DocumentRecord],
    documents_of: Mapping[str, Sequence[str]],
) -> Corrected:
    """Apply the corrections among the observations; ``documents_of`` gives the documents of each van by their ids.

    Of several corrections of the same statement the newest counts. One for a van or document that the dataset does
    not have changes nothing.
    """
    result = Corrected(list(placed))
    newest = sorted((one for one in observations if one.doc), key=lambda one: (one.when, one.line), reverse=True)
    done: set[tuple[str, str, str, str]] = set()
    for one in newest:
        van = van_of(vans, one)
        own = documents_of.get(van.van_id, ()) if van is not None else ()
        doc_id = next((doc for doc in sorted(own) if one.doc in (doc, records[doc].name)), None)
        key = (doc_id or "", van.van_id if van is not None else "", one.field, _kind(one.availability))
        if van is None or doc_id is None or key in done:
            continue
        done.add(key)
        _apply(result, one, van.van_id, doc_id)
    return result


def _apply(result: Corrected, one: Observation, van_id: str, doc_id: str) -> None:
    places = [
        index for index, fact in enumerate(result.placed)
        if (fact.doc_id, fact.van_id, fact.fact.field) == (doc_id, van_id, one.field) and not fact.fact.rejected
    ]  # fmt: skip
    wanted = _kind(one.availability)
    if not wanted and one.fact is not None:
        delivered = [i for i in places if result.placed[i].fact.availability in AS_DELIVERED]
        places = delivered or places
    elif wanted:
        places = [i for i in places if _kind(result.placed[i].fact.availability) == wanted]
    first = result.placed[places[0]].fact if places else None
    ids = tuple(result.placed[i].fact_id for i in places)
    for index in places:
        fact = replace(result.placed[index].fact, rejected=f"corrected: {one.source}")
        result.placed[index] = replace(result.placed[index], fact=fact)
    if one.fact is None:
        return
    availability = one.availability or (first.availability if first is not None else "unstated")
    made: Fact = replace(
        one.fact, model=first.model if first is not None else "", availability=availability,  # type: ignore[arg-type]
        page=one.page, how=first.how if first is not None else FORM, found_by=FOUND_BY, confidence=1.0,
        passage=first.passage if first is not None else 0,
    )  # fmt: skip
    fact_id = f"{FOUND_BY}-{len(result.behind) + 1}"
    result.corrections.append(PlacedFact(fact_id, van_id, doc_id, made))
    result.behind[fact_id] = (one, ids)


def _kind(availability: str) -> str:
    return "delivered" if availability in AS_DELIVERED else availability


def told(row: Settled, corrected: Corrected) -> Settled:
    """Give a settled row that rests on corrections with the misread facts in their place, and its note.

    Its status is ``observed`` where a correction is what is believed first and nothing disagrees.
    """
    used = [name for name in row.fact_ids if name in corrected.behind]
    if not used:
        return row
    ids: list[str] = []
    for name in row.fact_ids:
        ids.extend(corrected.behind[name][1] if name in corrected.behind else (name,))
    read = {fact.fact_id: fact for fact in corrected.placed}
    parts = []
    for name in used:
        one, misread = corrected.behind[name]
        words = ", ".join(dict.fromkeys(f"“{read[fact_id].fact.printed}”" for fact_id in misread))
        place = on_page(one.doc, one.page)
        parts.append(f"{one.source}: {one.said} ({place})" + (f"; was read from {words}" if words else ""))
    status = "observed" if row.status == "stated" and row.fact_ids[0] in corrected.behind else row.status
    said = [row.note, *parts] if row.status == "observed" else [*parts, row.note]  # what counts comes first
    note = "; ".join(part for part in said if part)
    return replace(row, status=status, fact_ids=tuple(dict.fromkeys(ids)), note=note)
