"""Which vans must be worked on: those of which anything has changed that their rows follow from.

What a van's rows follow from is what its documents state (of other vans of the same documents too, for a line that is
said of several vans is less its own), the names of vans and the user's manifest, what people answered, the rules and
the conditions. A digest of these is kept with each van.
"""

from __future__ import annotations

import hashlib
from collections import defaultdict
from collections.abc import Callable, Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from specscan.records.documents import DocumentRecord, ReadDocument
from specscan.records.observations import Observation
from specscan.scanning.answers import records_as_json
from specscan.settling.identity import Fleet, fleet_of
from specscan.settling.manifest import ManifestRow
from specscan.settling.manifested import apply_manifest
from specscan.settling.observed import van_of

RowsFor = Callable[[str], Sequence[ManifestRow]]


@dataclass(frozen=True, slots=True)
class Outlined:
    """A document with the names of its vans, without what is stated of them, and the digest of all its findings."""

    document: ReadDocument
    digest: str


@dataclass(frozen=True, slots=True)
class Plan:
    """All vans, and by id the digest of what the rows of each follow from.

    ``answers`` are all answers kept, each with the id that its van has now, ``None`` where there is no such van;
    ``notes`` say which manifest lines could not be followed.
    """

    fleet: Fleet
    keys: dict[str, str]
    answers: list[tuple[Observation, str | None]]
    notes: list[str] = field(default_factory=list)

    def observations(self, van_ids: Collection[str]) -> list[Observation]:
        """Give the answers about some vans, by the ids that these have now."""
        return _present((one, van_id) for one, van_id in self.answers if van_id in van_ids)

    @property
    def records(self) -> list[DocumentRecord]:
        """Give the records of all documents, in order of path."""
        return list(self.fleet.records.values())

    def batches(self, van_ids: Collection[str], size: int) -> Iterator[tuple[list[str], list[str]]]:
        """Give some vans in lots of about ``size``, those of a document together, with the ids of their documents."""
        wanted, lot = set(van_ids), dict[str, None]()
        by_document: dict[str, list[str]] = defaultdict(list)
        for (doc_id, _), van_id in self.fleet.named.items():
            if van_id in wanted:
                by_document[doc_id].append(van_id)
        for doc_id in self.fleet.records:
            new = [van_id for van_id in by_document[doc_id] if van_id in wanted]
            lot.update(dict.fromkeys(new))
            wanted.difference_update(new)
            if len(lot) >= size:
                yield list(lot), self._documents_of(lot)
                lot = {}
        if lot:
            yield list(lot), self._documents_of(lot)

    def _documents_of(self, van_ids: Collection[str]) -> list[str]:
        needed = {doc_id for van_id in van_ids for doc_id in self.fleet.documents_of[van_id]}
        return [doc_id for doc_id in self.fleet.records if doc_id in needed]


def plan(
    outlined: Sequence[Outlined],
    legal_forms: Sequence[str],
    manifest_rows: RowsFor,
    observations: Sequence[Observation],
    stamp: str,
) -> Plan:
    """Give the vans that documents name, and what the rows of each follow from; ``stamp`` is of rules, conditions."""
    named: list[ReadDocument] = []
    notes: list[str] = []
    for one in outlined:
        changed, said = apply_manifest(one.document, manifest_rows(one.document.record.path))
        named.append(changed)
        notes.extend(said)
    fleet = fleet_of(named, legal_forms)
    vans = list(fleet.vans.values())
    found = [(one, van_of(vans, one)) for one in observations]
    answers = [(one, van.van_id if van is not None else None) for one, van in found]
    keys = _keys(outlined, fleet, manifest_rows, _present(answers), stamp)
    return Plan(fleet, keys, answers, notes)


def _present(answers: Iterable[tuple[Observation, str | None]]) -> list[Observation]:
    return [replace(one, van_id=van_id) for one, van_id in answers if van_id is not None]


def _keys(
    outlined: Sequence[Outlined],
    fleet: Fleet,
    manifest_rows: RowsFor,
    observations: Sequence[Observation],
    stamp: str,
) -> dict[str, str]:
    names: dict[str, list[tuple[str, str]]] = defaultdict(list)
    for (doc_id, model), van_id in sorted(fleet.named.items()):
        names[doc_id].append((model, van_id))
    said: Mapping[str, list[Observation]] = defaultdict(list)
    corrected: Mapping[str, list[Observation]] = defaultdict(list)  # they change the numbers of a document's claims
    for one in observations:
        said[one.van_id].append(one)
        for doc_id in fleet.documents_of[one.van_id] if one.doc else ():
            corrected[doc_id].append(one)
    of_document = {}
    for each in outlined:
        record = each.document.record
        if record.doc_id in names:
            parts = [
                each.digest, records_as_json.dump_json(record).decode(), repr(list(manifest_rows(record.path))),
                repr(names[record.doc_id]), repr(corrected[record.doc_id]),
            ]  # fmt: skip
            of_document[record.doc_id] = _digest(*parts)
    return {
        van_id: _digest(stamp, repr(van), repr(said[van_id]), *(of_document[d] for d in fleet.documents_of[van_id]))
        for van_id, van in fleet.vans.items()
    }


def _digest(*parts: str) -> str:
    return hashlib.sha256("\0".join(parts).encode()).hexdigest()
