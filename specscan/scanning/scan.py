"""The main job: a folder of documents becomes a dataset."""

from __future__ import annotations

import hashlib
import os
import time
import uuid
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field
from datetime import UTC, datetime
from pathlib import Path

from specscan import __version__
from specscan.dataset.store import Dataset
from specscan.observing.kept import read_kept
from specscan.physics.conditions import Conditions
from specscan.reading.archive import is_there, parted, read_content
from specscan.reading.ocr.engine import COMMAND, ocr_version
from specscan.records.documents import DocumentRecord, ReadDocument
from specscan.records.errors import DocumentError, SpecscanError
from specscan.records.facts import VanName
from specscan.records.files import open_ordinary
from specscan.rulebook.book import Rulebook
from specscan.scanning.addresses import documents_at, is_address
from specscan.scanning.answers import kept_row, records_as_json, unreadable
from specscan.scanning.cluster import Cluster
from specscan.scanning.files import Gathered, gather, rows_for
from specscan.scanning.limits import Limits, load_limits
from specscan.scanning.pool import Task, examine_all
from specscan.scanning.timings import Timings
from specscan.scanning.update import keep_manifests, kept_manifests, load_job
from specscan.settling.manifested import named_by

BATCH = 20
BATCH_SECONDS = 5.0
REFUSED = "not opened"  # stands in place of what made the findings
Progress = Callable[[int, int, str], None]


@dataclass(slots=True)
class ScanSummary:
    """What a scan did. ``problems`` are the documents of this scan that could not be read, or only in part."""

    db: Path
    run_id: str
    read: int = 0
    unchanged: int = 0
    removed: int = 0
    aside: int = 0
    documents: list[DocumentRecord] = field(default_factory=list)
    vans: int = 0
    facts: int = 0
    notes: list[str] = field(default_factory=list)
    seconds: float = 0.0
    conditions: Conditions | None = None
    timings: Timings = field(default_factory=Timings)

    @property
    def unreadable(self) -> list[DocumentRecord]:
        """Give the documents that could not be read at all."""
        return [record for record in self.documents if record.status == "unreadable"]

    @property
    def partly_read(self) -> list[DocumentRecord]:
        """Give the documents of which some pages could not be read."""
        return [record for record in self.documents if record.status == "partly_read"]


def scan(
    paths: Sequence[Path | str],
    db: Path,
    *,
    rules: Path,
    extra_rulesets: Sequence[Path] = (),
    jobs: int = 0,
    again: bool = False,
    progress: Progress | None = None,
    conditions: Conditions | None = None,
    confidence: float | None = None,
    cluster: Cluster | None = None,
) -> ScanSummary:
    """Read new and changed documents under ``paths`` and bring the dataset ``db`` up to date.

    ``rules`` is the folder of rules, ``extra_rulesets`` further rule-set files to score with; ``jobs`` the number of
    reading processes (0: one per core); ``again`` reads unchanged files as well; ``progress`` is called with files
    done, files to do, and the last file's name; ``confidence`` is the least one with which a statement counts, by
    default that of ``rules/settling.yaml``; ``conditions`` are those under which winter is reckoned, by default
    those of the rules. Where there is a ``cluster`` its machines read the files, and ``paths`` can be addresses.

    Raises:
        RuleError: a rule, field, word or manifest file is wrong; nothing is stored.
        NotFoundError: a path is not there; nothing is stored.
        DatasetError: the dataset cannot be written.
    """
    started = datetime.now(UTC)
    timings = Timings()
    with timings.of("loading rules"):
        job = load_job(rules, extra_rulesets, conditions, confidence)
        book, limits = job.book, load_limits(rules)
        observations = read_kept(db, book)
    with timings.of("looking for files"):
        found = _gathered(paths, book, limits, cluster)
    summary = ScanSummary(db, uuid.uuid4().hex[:12], aside=found.aside, timings=timings)
    with Dataset(db) as dataset:
        with timings.of("looking for files"):
            _recall_manifests(found, dataset)
            _keep_refused(found, dataset)
            tasks = _to_do(found, dataset, book, again, summary, limits.file_mb)
        with timings.of("reading documents"):
            if cluster is not None:
                cluster.read(
                    tasks, lambda task: _made_by(book, task.named), rules, dataset.keep_parts, timings, progress
                )
            else:
                results = examine_all(tasks, rules, limits, jobs or os.cpu_count() or 1)
                _keep_all(results, dataset, book, len(tasks), progress, timings)
        summary.read = len(tasks)
        records, told = job.bring_up_to_date(
            dataset, found.manifests, observations, summary.run_id, started, len(tasks), timings
        )
        summary.documents = [record for record in records if record.path in found.files]
        summary.vans, summary.facts = told.vans, told.facts
        summary.notes, summary.conditions = [*found.notes, *told.notes], job.conditions
        summary.seconds = (datetime.now(UTC) - started).total_seconds()
    return summary


def _gathered(paths: Sequence[Path | str], book: Rulebook, limits: Limits, cluster: Cluster | None) -> Gathered:
    """Give the documents at paths and addresses.

    Raises:
        NotFoundError, RuleError: as for ``gather``.
        SpecscanError: an address is given, and no cluster; or it cannot be reached.
    """
    addresses = [str(one) for one in paths if is_address(str(one))]
    if addresses and cluster is None:
        raise SpecscanError(f"{addresses[0]}: files at addresses are read by a cluster (--cluster)")
    found = gather([Path(one) for one in paths if not is_address(str(one))], book, limits.archives)
    for address in addresses:
        found.files.update(documents_at(address, book))
        found.roots.append(address.rstrip("/"))
    return found


def _keep_all(
    results: Iterable[tuple[Task, ReadDocument]],
    dataset: Dataset,
    book: Rulebook,
    total: int,
    progress: Progress | None,
    timings: Timings,
) -> None:
    """Keep what is found in documents as they are read, some at a time."""
    waiting: list[tuple[str, ...]] = []
    last = time.monotonic()
    for number, (task, result) in enumerate(results, start=1):
        timings.add_inside(result.took)
        waiting.append(kept_row(task.path, task.sha256, _made_by(book, task.named), result))
        if len(waiting) >= BATCH or time.monotonic() - last > BATCH_SECONDS:
            dataset.keep(waiting)
            waiting, last = [], time.monotonic()
        if progress is not None:
            progress(number, total, result.record.name)
    dataset.keep(waiting)


def _keep_refused(found: Gathered, dataset: Dataset) -> None:
    """Keep the files that are not even opened as documents that could not be read, with why."""
    dataset.keep(
        [
            kept_row(path, "", REFUSED, unreadable(path, "", found.files[path], why))
            for path, why in found.refused.items()
        ]
    )


def _to_do(
    found: Gathered, dataset: Dataset, book: Rulebook, again: bool, summary: ScanSummary, limit_mb: int
) -> list[Task]:
    """Give the files to read: new ones, changed ones, and those read by other rules; forget those that are gone."""
    kept = dataset.kept_marks()
    gone = [
        path for path in kept
        if path not in found.files and any(path.startswith(f"{root}/") for root in found.roots)
    ]  # fmt: skip
    dataset.forget(gone)
    summary.removed = len(gone)
    wanted: dict[str, str | None] = {path: kind for path, kind in found.files.items() if path not in found.refused}
    for path, (_, other, record) in kept.items():
        elsewhere = path not in gone and path not in found.files and other != REFUSED and is_there(path)
        if elsewhere and other != _made_by(book, named_by(rows_for(path, found.manifests))):
            wanted[path] = records_as_json.validate_json(record).kind
    tasks = []
    for path, kind in wanted.items():
        digest, named = _digest(path, limit_mb), named_by(rows_for(path, found.manifests))
        if (
            again
            or path not in kept
            or kept[path][:2] != (digest, _made_by(book, named))
            or _now_legible(kept[path][2])
        ):
            tasks.append(Task(path, digest, kind, named))
        else:
            summary.unchanged += 1
    return tasks


def _now_legible(record: str) -> bool:
    """Tell whether a document was left unread for want of the ``ocr`` extra, which has been installed since."""
    mentioned = "ocr" in record  # the cheap test first: nearly every record fails it
    return mentioned and COMMAND in records_as_json.validate_json(record).message and bool(ocr_version())


def _recall_manifests(found: Gathered, dataset: Dataset) -> None:
    """Take the manifests of folders that this scan does not look through as they were, and keep all of them."""
    for folder, rows in kept_manifests(dataset).items():
        if not any(folder == root or folder.startswith(f"{root}/") for root in found.roots):
            found.manifests.setdefault(folder, rows)
    keep_manifests(dataset, found.manifests)


def _made_by(book: Rulebook, named: VanName | None) -> str:
    """Give what findings depend on besides the file: program, rules, and the user's word on whose the file is."""
    return f"{__version__} {book.finding_digest} {named or ''}".strip()


def _digest(path: str, limit_mb: int) -> str:
    """Give the digest of a file's content, empty where it cannot be read (the worker then says why)."""
    if is_address(path):
        return ""  # it is fetched by whoever reads it
    try:
        if parted(path) is not None:
            return hashlib.sha256(read_content(path, limit_mb)).hexdigest()
        with open_ordinary(path, follow=False) as file:
            return hashlib.file_digest(file, "sha256").hexdigest()
    except (OSError, DocumentError):
        return ""
