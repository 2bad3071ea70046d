"""Answers brought back: checked, kept in the user's own file, and worked into the dataset without reading documents."""

from __future__ import annotations

import re
import uuid
from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Any

from specscan.dataset.reader import Reader
from specscan.dataset.store import Dataset
from specscan.finding.language.units import conversion
from specscan.observing.answers import AnswerReader
from specscan.observing.check import Checked, Checker, Known
from specscan.observing.gold import gold_csv, gold_rows
from specscan.observing.kept import add_kept, kept_path, put_kept, read_kept
from specscan.observing.rules import load_observing
from specscan.observing.sheet_rows import COLUMNS, SheetRow, read_sheet
from specscan.records.errors import RuleError, SpecscanError
from specscan.records.observations import Observation
from specscan.scanning.update import (
    Job,
    asked_confidence,
    kept_manifests,
    load_job,
    reckoned_under,
    scored_by,
)

FLAGS = Path("the answer given by flags")
FIGURE = re.compile(r"\d+(?:\.\d+)?")
ROUNDING = 0.01  # litres
SAME = ("van_id", "field", "equipment", "said", "who", "when", "how", "doc", "page", "availability")


@dataclass(slots=True)
class ObserveSummary:
    """What came of answers: the file in which they are kept, those that are new, and how score bands moved.

    ``bands`` has one row per van with a new answer, rule set and equipment: points low and high before and after.
    """

    db: Path
    kept: Path
    added: list[Observation] = field(default_factory=list)
    known_before: int = 0
    without_answer: int = 0
    unused_columns: list[str] = field(default_factory=list)
    settled: list[dict[str, Any]] = field(default_factory=list)
    bands: list[dict[str, Any]] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)


def observe(
    db: Path,
    answers: Path | None = None,
    one: dict[str, str] | None = None,
    *,
    defaults: dict[str, str] | None = None,
    rules: Path,
    rulesets: Sequence[Path] = (),
    own_rules: bool = False,
    today: date | None = None,
) -> ObserveSummary:
    """Take answers, keep them beside the dataset, and bring the dataset up to date.

    Args:
        answers: a CSV file of answers (columns ``van_id, field, answer``; of use are ``unit, who, when, how, evidence,
            note, equipment``, and for corrections ``doc, page, availability``).
        one: a single answer, by the same names; its ``van_id`` may be any name that only this van has.
        defaults: what stands for empty cells of ``who``, ``when``, ``how`` and ``evidence``.
        rules: the folder of rules, used where ``own_rules`` or where the last scan's folder is not known.
        rulesets: further rule-set files; where none are given, those of the last scan.

    With neither ``answers`` nor ``one`` the kept file is read again, after it was edited.

    Raises:
        NotFoundError: there is no such file of answers, or no van of the single answer's name.
        DatasetError: there is no such dataset, or it cannot be written.
        RuleError: lines are wrong; all of them are named, and nothing is stored.
    """
    started = datetime.now(UTC)
    with Reader(db) as reader:  # refuses what is no dataset, and does not make one
        known, before = _known(reader), _totals(reader)
        one = {**one, "van_id": reader.van(one["van_id"])["van_id"]} if one is not None else None
    summary = ObserveSummary(db, kept_path(db))
    with Dataset(db) as dataset:
        job = _job(dataset, rules, rulesets, own_rules)
        kept = read_kept(db, job.book)
        checked = _checked(job, known, answers, one, defaults or {}, summary, today or date.today())
        there = {_same(known_one) for known_one in kept}
        summary.added = [new for new in checked.observations if _same(new) not in there]
        summary.known_before = len(checked.observations) - len(summary.added)
        summary.notes = _store(dataset, job, db, summary.added, started)
    with Reader(db) as reader:
        _tell(summary, reader, before)
    return summary


def write_gold(db: Path, target: Path, rules: Path) -> int:
    """Write the corrections kept beside a dataset as gold labels for ``evaluate``; give how many there are.

    Raises:
        RuleError: the kept file is wrong.
        SpecscanError: there are no corrections, or the file is there already or cannot be written.
        DatasetError: the dataset cannot be opened.
    """
    with Reader(db) as reader:
        names = {
            (row["name"], row["van_id"]): row["model"]
            for row in reader.rows(
                "SELECT d.name, n.van_id, n.model FROM van_names AS n JOIN documents AS d USING (doc_id)"
            )
        }
        misread = {
            (row["name"], row["van_id"], row["field"]): row["availability"]
            for row in reader.rows(
                "SELECT name, van_id, field, availability FROM facts JOIN documents USING (doc_id) "
                "WHERE rejected_because LIKE 'corrected:%'"
            )
        }
    rows = gold_rows(read_kept(db, load_job(rules).book), names, misread)
    if not rows:
        raise SpecscanError(f"{kept_path(db)}: holds no corrections (observe --correct)")
    try:
        with open(target, "x", encoding="utf-8", newline="") as file:
            file.write(gold_csv(rows))
    except FileExistsError as error:
        raise SpecscanError(f"{target}: is there already") from error
    except OSError as error:
        raise SpecscanError(f"{target}: cannot be written ({error.strerror})") from error
    return len(rows)


def _job(dataset: Dataset, rules: Path, rulesets: Sequence[Path], own_rules: bool) -> Job:
    folder, extra = scored_by(dataset)
    conditions, confidence = reckoned_under(dataset), asked_confidence(dataset)
    if own_rules or folder is None:
        return load_job(rules, tuple(rulesets) or extra, conditions, confidence)
    if not folder.is_dir():
        raise RuleError([f"{folder}: the rules of the last scan are gone; name others with --rules"])
    return load_job(folder, tuple(rulesets) or extra, conditions, confidence)


def _known(reader: Reader) -> Known:
    documents: dict[str, tuple[int | None, frozenset[str]]] = {}
    rows = reader.rows(
        "SELECT d.name, CASE WHEN d.kind = 'pdf' THEN d.pages END AS pages, "
        "list(n.van_id) FILTER (n.van_id IS NOT NULL) AS vans "
        "FROM documents AS d LEFT JOIN van_names AS n USING (doc_id) GROUP BY ALL"
    )
    for row in rows:
        pages, vans = documents.get(row["name"], (row["pages"], frozenset()))
        documents[row["name"]] = (pages, vans | frozenset(row["vans"] or ()))
    return Known({van["van_id"]: van["title"] for van in reader.vans()}, documents, _imperial(reader))


def _imperial(reader: Reader) -> frozenset[str]:
    """Give the vans of which a document prints gallons that were read as imperial: the figure says so."""
    factor = conversion("imperial_gallon", "liter")[0]
    rows = reader.rows(
        "SELECT van_id, printed, value_num FROM facts WHERE rejected_because IS NULL AND unit = 'l' "
        "AND printed_unit ILIKE '%gal%' AND value_num > 0"
    )
    return frozenset(
        row["van_id"]
        for row in rows
        if any(abs(float(n) * factor - row["value_num"]) < ROUNDING for n in FIGURE.findall(row["printed"]))
    )


def _checked(
    job: Job,
    known: Known,
    answers: Path | None,
    one: dict[str, str] | None,
    defaults: dict[str, str],
    summary: ObserveSummary,
    today: date,
) -> Checked:
    """Check all rows, those of the file and the one given by flags; refuse all of them where any is wrong."""
    rules, result = load_observing(job.book), Checked()
    reader = AnswerReader(job.book, rules)
    sources: list[tuple[Path, list[SheetRow]]] = []
    if answers is not None:
        sheet = read_sheet(answers)
        summary.unused_columns = sheet.unused
        sources.append((answers, sheet.rows))
    if one is not None:
        sources.append((FLAGS, [SheetRow(0, {name: one.get(name, "") for name in COLUMNS})]))
    for path, rows in sources:
        filled = [_filled(row, defaults) for row in rows]
        checked = Checker(reader, rules, path, known, today, summary.kept.parent).check(filled)
        result.observations += checked.observations
        result.mistakes += checked.mistakes
        result.without_answer += checked.without_answer
    if result.mistakes:
        raise RuleError(result.mistakes)
    summary.without_answer = result.without_answer
    return result


def _filled(row: SheetRow, defaults: dict[str, str]) -> SheetRow:
    """Give a row with its empty cells filled; how a correction was come by follows from its document."""
    usable = {name: cell for name, cell in defaults.items() if name != "how" or not row.cells["doc"]}
    return SheetRow(row.line, {name: cell or usable.get(name, "") for name, cell in row.cells.items()})


def _same(one: Observation) -> tuple[Any, ...]:
    return tuple(getattr(one, name) for name in SAME)


def _store(dataset: Dataset, job: Job, db: Path, added: Sequence[Observation], started: datetime) -> list[str]:
    """Keep new answers and bring the state up to date; where this fails, the kept file is as it was. Give the notes."""
    before = add_kept(db, added) if added else None
    try:
        observations, run_id = read_kept(db, job.book), uuid.uuid4().hex[:12]
        _, told = job.bring_up_to_date(dataset, kept_manifests(dataset), observations, run_id, started, 0)
        return told.notes
    except BaseException:
        if added:
            put_kept(db, before)
        raise


def _totals(reader: Reader) -> dict[tuple[str, str, str], tuple[float, float]]:
    rows = reader.rows("SELECT * FROM scores WHERE criterion = 'total'")
    return {(r["van_id"], r["ruleset"], r["equipment"]): (r["points_low"], r["points_high"]) for r in rows}


def _tell(summary: ObserveSummary, reader: Reader, before: dict[tuple[str, str, str], tuple[float, float]]) -> None:
    """Note what became of the new answers: the settled rows and the score bands before and after."""
    after = _totals(reader)
    for one in summary.added:
        summary.settled += reader.rows(
            "SELECT * FROM settled WHERE van_id = ? AND field = ? AND equipment = ?",
            [one.van_id, one.field, one.equipment],
        )
    touched = {one.van_id for one in summary.added}
    for key, (low, high) in sorted(after.items()):
        if key[0] in touched:
            was = before.get(key, (None, None))
            summary.bands.append(
                {
                    "van_id": key[0], "ruleset": key[1], "equipment": key[2], "low_before": was[0],
                    "high_before": was[1], "low": low, "high": high,
                }
            )  # fmt: skip
