"""From what is kept of documents and answers to a new state of the dataset, without reading a document."""

from __future__ import annotations

import hashlib
import json
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import asdict, dataclass, replace
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from pydantic import TypeAdapter

from specscan import __version__
from specscan.dataset.schema import SCORED_BY
from specscan.dataset.store import Dataset
from specscan.dataset.us_units import us_columns
from specscan.judging.rulesets import RuleSet, load_ruleset, load_rulesets
from specscan.physics.conditions import Conditions, conditions_named
from specscan.records.documents import DocumentRecord, ReadDocument
from specscan.records.facts import DocumentFacts
from specscan.records.observations import Observation
from specscan.rulebook.book import Rulebook, load_rulebook
from specscan.scanning.answers import findings_as_json, outlines_as_json, records_as_json
from specscan.scanning.files import rows_for
from specscan.scanning.plan import Outlined, Plan, plan
from specscan.scanning.state import basis_of, columns_of_vans, idle, other_rows, rows_of_vans
from specscan.scanning.timings import Timings
from specscan.settling.manifest import ManifestRow
from specscan.settling.manifested import apply_manifest
from specscan.settling.preferences import Preferences, load_preferences

Manifests = dict[str, list[ManifestRow]]
manifests_as_json: TypeAdapter[Manifests] = TypeAdapter(Manifests)
LAST_STATE = "last_state"
VANS_AT_ONCE = 200  # some hundreds of rows each: this bounds the memory that a scan needs


@dataclass(frozen=True, slots=True)
class Told:
    """What a scan tells of the state: how many vans and statements, and what could not be done as asked."""

    vans: int
    facts: int
    notes: list[str]


@dataclass(frozen=True)
class Job:
    """The rules by which a state is made: their folder, the further rule-set files, and all that was loaded."""

    rules: Path
    extra_rulesets: tuple[Path, ...]
    book: Rulebook
    preferences: Preferences
    rulesets: tuple[RuleSet, ...]
    conditions: Conditions

    def bring_up_to_date(
        self,
        dataset: Dataset,
        manifests: Mapping[str, list[ManifestRow]],
        observations: Sequence[Observation],
        run_id: str,
        started: datetime,
        read: int,
        timings: Timings | None = None,
    ) -> tuple[list[DocumentRecord], Told]:
        """Give the records of all documents and what is to be told of the state, which is brought up to date first.

        ``read`` is how many documents this run has read, ``started`` when it began (UTC). Where nothing that the state
        follows from has changed, the run is noted and the state stays as it is.
        """
        timings = timings or Timings()
        last = json.loads(dataset.setting(LAST_STATE) or "{}")
        with timings.of("looking for changes"):
            basis = self.basis(dataset, manifests, observations)
        if last.pop("basis", "") == basis:
            records, told = [record for record, _ in kept_records(dataset.kept_records())], Told(**last)
            dataset.add_run(self._run(records, told, run_id, started, read))
            return records, told
        with timings.of("looking for changes"):
            rows = dict(manifests)
            planned = plan(
                kept_outlines(dataset), self.book.general.legal_forms, lambda path: rows_for(path, rows),
                observations, self.stamp(),
            )  # fmt: skip
        told = self._renew(dataset, planned, rows, basis, (run_id, started, read), timings)
        return planned.records, told

    def _renew(
        self,
        dataset: Dataset,
        planned: Plan,
        manifests: Manifests,
        basis: str,
        run: tuple[str, datetime, int],
        timings: Timings,
    ) -> Told:
        """Work on the vans of which anything has changed, some at a time, and write their rows in one transaction."""
        before = dataset.van_keys()
        keys = {van_id: key for van_id, key in planned.keys.items() if before.get(van_id) != key}
        old = [van_id for van_id in before if van_id in keys or van_id not in planned.keys]
        under = basis_of(self.book, self.preferences, self.rulesets, self.conditions)
        columns = columns_of_vans(self.book)
        with dataset.renewal() as new:
            with timings.of("storing"):
                new.drop(old if len(old) < len(before) else None)
            for van_ids, doc_ids in planned.batches(keys, VANS_AT_ONCE):
                with timings.of("recalling findings"):
                    records = [planned.fleet.records[doc_id] for doc_id in doc_ids]
                    documents = kept_documents(dataset, records, manifests)
                tables = rows_of_vans(van_ids, documents, planned, under, timings)
                with timings.of("storing"):
                    new.add(tables)
            with timings.of("storing"):
                new.put(other_rows(planned, under))
                new.keep_keys(keys)
                told = Told(len(planned.keys), dataset.count_facts(), [*planned.notes, *idle(planned)])
                settings = {
                    SCORED_BY: json.dumps(self._by()),
                    LAST_STATE: json.dumps({"basis": basis, **asdict(told)}),
                }
                row = self._run(planned.records, told, *run)
                new.finish(row, columns, us_columns(columns, self.rules), settings, {*keys, *old})
        return told

    def stamp(self) -> str:
        """Give a digest of the program, the rules and the conditions."""
        digest = hashlib.sha256(f"{__version__} {self.book.digest} {self.conditions.model_dump_json()}".encode())
        digest.update(self.preferences.model_dump_json().encode())
        for path in self.extra_rulesets:
            digest.update(path.read_bytes())
        return digest.hexdigest()

    def basis(
        self, dataset: Dataset, manifests: Mapping[str, list[ManifestRow]], observations: Sequence[Observation]
    ) -> str:
        """Give a digest of all that a state follows from."""
        parts = [
            self.stamp(), json.dumps(self._by()), dataset.digest_of_kept(),
            manifests_as_json.dump_json(dict(sorted(manifests.items()))).decode(), repr(list(observations)),
        ]  # fmt: skip
        return hashlib.sha256("\0".join(parts).encode()).hexdigest()

    def _by(self) -> dict[str, Any]:
        return {
            "rules": str(self.rules.resolve()), "rulesets": [str(path.resolve()) for path in self.extra_rulesets],
            "conditions": self.conditions.model_dump(), "confidence": self.preferences.settle_at,
        }  # fmt: skip

    def _run(
        self, records: Sequence[DocumentRecord], told: Told, run_id: str, started: datetime, read: int
    ) -> dict[str, Any]:
        return {
            "run_id": run_id, "version": __version__, "rules_sha256": self.book.digest,
            "started_at": started.replace(tzinfo=None), "finished_at": datetime.now(UTC).replace(tzinfo=None),
            "documents": len(records), "documents_read": read,
            "documents_unreadable": sum(record.status == "unreadable" for record in records),
            "vans": told.vans, "facts": told.facts, "conditions": self.conditions.model_dump_json(),
        }  # fmt: skip


def load_job(
    rules: Path,
    extra_rulesets: Sequence[Path] = (),
    conditions: Conditions | None = None,
    confidence: float | None = None,
) -> Job:
    """Load and check the rules of a folder, further rule-set files, and the conditions of winter (else the default).

    ``confidence`` is the least one with which a statement counts, by default that of the rules.

    Raises:
        RuleError: a rule, field or word file is wrong; every mistake with file and line.
    """
    book = load_rulebook(rules)
    rulesets = load_rulesets(rules / "winter", book)
    rulesets += [load_ruleset(path, book) for path in extra_rulesets]
    reckoned = conditions or conditions_named(rules)
    preferences = load_preferences(book)
    if confidence is not None:
        preferences = preferences.model_copy(update={"settle_at": confidence})
    return Job(rules, tuple(extra_rulesets), book, preferences, tuple(rulesets), reckoned)


def scored_by(dataset: Dataset) -> tuple[Path | None, tuple[Path, ...]]:
    """Give the folder of rules and the further rule-set files by which the last state was made."""
    said = json.loads(dataset.setting(SCORED_BY) or "{}")
    return (Path(said["rules"]) if said.get("rules") else None), tuple(Path(path) for path in said.get("rulesets", []))


def reckoned_under(dataset: Dataset) -> Conditions | None:
    """Give the conditions under which the last state was reckoned, if there is one."""
    said = json.loads(dataset.setting(SCORED_BY) or "{}").get("conditions")
    return Conditions.model_validate(said) if said else None


def asked_confidence(dataset: Dataset) -> float | None:
    """Give the least confidence with which statements counted in the last state, if there is one."""
    said = json.loads(dataset.setting(SCORED_BY) or "{}").get("confidence")
    return float(said) if said is not None else None


def kept_manifests(dataset: Dataset) -> Manifests:
    """Give the manifests that scans of this dataset have found, by folder."""
    return manifests_as_json.validate_json(dataset.setting("manifests") or "{}")


def keep_manifests(dataset: Dataset, manifests: Manifests) -> None:
    """Keep the manifests, by folder."""
    dataset.keep_setting("manifests", manifests_as_json.dump_json(manifests).decode())


def kept_outlines(dataset: Dataset) -> list[Outlined]:
    """Give all documents of the dataset, with the names of their vans only, in order of path.

    A copy of another file is named as such and names no vans of its own.
    """
    kept = dataset.kept_outlines()
    found = []
    for record, copied in kept_records({path: record for path, (record, _) in kept.items()}):
        outline = outlines_as_json.validate_json(kept[record.path][1])
        names = DocumentFacts(() if copied else outline.vans, (), outline.language)
        found.append(Outlined(ReadDocument(record, names), outline.digest))
    return found


def kept_documents(dataset: Dataset, records: Sequence[DocumentRecord], manifests: Manifests) -> list[ReadDocument]:
    """Give documents with all that was found in them, named as the manifests say."""
    kept = dataset.findings([record.path for record in records])
    documents = []
    for record in records:
        found = findings_as_json.validate_json(kept[record.path])
        documents.append(apply_manifest(ReadDocument(record, found), rows_for(record.path, manifests))[0])
    return documents


def kept_records(kept: Mapping[str, str]) -> Iterator[tuple[DocumentRecord, bool]]:
    """Give the records that are kept of files (as JSON, by path) in order of path, and whether each is of a copy.

    A copy of another file is named as such in its message.
    """
    first: dict[str, DocumentRecord] = {}
    seen: Counter[str] = Counter()
    for path, record_json in sorted(kept.items()):
        record = replace(records_as_json.validate_json(record_json), path=path)
        original = first.get(record.sha256) if record.sha256 else None
        seen[record.sha256] += 1
        if original is not None:
            record = replace(
                record,
                doc_id=f"{original.doc_id}-{seen[record.sha256]}",
                message="; ".join(part for part in (f"the same content as {original.name}", record.message) if part),
            )
        elif record.sha256:
            first[record.sha256] = record
        else:
            record = replace(record, doc_id=hashlib.sha256(path.encode()).hexdigest()[:12])
        yield record, original is not None
