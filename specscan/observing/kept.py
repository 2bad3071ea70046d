"""The user's own file of answers beside the dataset: plain CSV, added to and never rewritten by the program."""

from __future__ import annotations

import csv
import io
import os
from collections.abc import Sequence
from datetime import date
from pathlib import Path

from specscan.observing.answers import AnswerReader
from specscan.observing.check import Checker
from specscan.observing.rules import load_observing
from specscan.observing.sheet_rows import COLUMNS, delimiter_of, read_sheet
from specscan.records.cells import guarded
from specscan.records.errors import RuleError, SpecscanError
from specscan.records.observations import Observation
from specscan.rulebook.book import Rulebook

ENDING = ".observed.csv"


def kept_path(db: Path) -> Path:
    """Give the file beside a dataset in which answers are kept: ``vans.observed.csv`` beside ``vans.duckdb``."""
    return db.with_name(db.stem + ENDING)


def read_kept(db: Path, book: Rulebook) -> list[Observation]:
    """Give all answers kept beside a dataset, in the order of the file; none where there is no file.

    Raises:
        RuleError: lines of it are wrong (it may have been edited); each is named.
    """
    path = kept_path(db)
    if not path.is_file():
        return []
    rules = load_observing(book)
    checker = Checker(AnswerReader(book, rules), rules, path, None, date.max, path.parent)
    checked = checker.check(read_sheet(path).rows)
    if checked.mistakes:
        raise RuleError(checked.mistakes)
    return checked.observations


def add_kept(db: Path, observations: Sequence[Observation]) -> str | None:
    """Add answers at the end of the file beside the dataset; give what it held before, ``None`` for no file.

    Raises:
        SpecscanError: the file cannot be written; it is then as it was.
    """
    path = kept_path(db)
    before = path.read_text(encoding="utf-8") if path.is_file() else None
    sign = delimiter_of(before or ",")
    head_cells = next(csv.reader(io.StringIO((before or "").removeprefix("\ufeff")), delimiter=sign), list(COLUMNS))
    header = [name.strip().casefold() for name in head_cells]
    buffer = io.StringIO()
    writer = csv.writer(buffer, lineterminator="\n", delimiter=sign)
    if before is None:
        writer.writerow(COLUMNS)
    for one in observations:
        cells = _cells(one)
        homeless = [name for name, cell in cells.items() if cell and name not in header]
        if homeless:
            raise SpecscanError(f"{path}: has no column {homeless[0]}; add it to the first line")
        writer.writerow([guarded(cells.get(name, "")) for name in header])
    head = "" if before is None else before if before.endswith("\n") else before + "\n"
    put_kept(db, head + buffer.getvalue())
    return before


def put_kept(db: Path, content: str | None) -> None:
    """Put a content in place of the file beside the dataset, wholly or not at all; ``None`` removes the file.

    Raises:
        SpecscanError: it cannot be written.
    """
    path = kept_path(db)
    try:
        if content is None:
            path.unlink(missing_ok=True)
            return
        draft = path.with_name(f"{path.name}.new")
        draft.write_text(content, encoding="utf-8", newline="")
        os.replace(draft, path)
    except OSError as error:
        raise SpecscanError(f"{path}: cannot be written ({error.strerror})") from error


def _cells(one: Observation) -> dict[str, str]:
    return {
        "van_id": one.van_id, "van": one.van, "field": one.field, "equipment": one.equipment, "answer": one.answer,
        "unit": one.unit, "who": one.who, "when": one.when, "how": one.how, "evidence": one.evidence,
        "note": one.note, "doc": one.doc, "page": str(one.page) if one.page else "", "availability": one.availability,
    }  # fmt: skip
