"""CSV files of answers → rows of cells with their lines: sheets that were filled in, and the user's kept file."""

from __future__ import annotations

import csv
import io
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from specscan.records.cells import unguarded
from specscan.records.errors import NotFoundError, RuleError, at

NEEDED = ("van_id", "field", "answer")
COLUMNS = (
    "van_id", "van", "field", "equipment", "answer", "unit", "who", "when", "how", "evidence", "note", "doc", "page",
    "availability",
)  # fmt: skip
LIMIT_BYTES = 5_000_000


@dataclass(frozen=True, slots=True)
class SheetRow:
    """A row: its cells by column (an empty text where the column is missing) and its line (0: given by flags)."""

    line: int
    cells: dict[str, str]


@dataclass(frozen=True, slots=True)
class Sheet:
    """The rows of a file and the names of columns that are not used."""

    rows: list[SheetRow]
    unused: list[str]


def read_sheet(path: Path) -> Sheet:
    """Give the rows of a CSV file of answers; commas, semicolons or tabs part the columns.

    Raises:
        NotFoundError: there is no such file.
        RuleError: it is too large, not UTF-8, lacks a column, has one twice, or a row has more cells than columns;
            with file and line.
    """
    if not path.is_file():
        raise NotFoundError(f"{path}: no such file of answers")
    try:
        raw = path.read_bytes()
    except OSError as error:
        raise RuleError([at(path, None, f"cannot be read ({error.strerror})")]) from error
    if len(raw) > LIMIT_BYTES:
        raise RuleError([at(path, None, "the file is larger than 5 MB")])
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise RuleError([at(path, None, "the file is not UTF-8 (in a spreadsheet: save as “CSV UTF-8”)")]) from error
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter_of(text))
    try:
        return _rows(path, reader)
    except csv.Error as error:
        raise RuleError([at(path, reader.line_num, f"no valid CSV: {error}")]) from error


def delimiter_of(text: str) -> str:
    """Give the sign that parts the columns of a CSV text: comma, semicolon or tab, whichever its head has most of."""
    head = text.split("\n", 1)[0]
    return max(",;\t", key=head.count)


def _rows(path: Path, reader: Any) -> Sheet:
    header = [name.strip().casefold() for name in next(reader, [])]
    lacking = [name for name in NEEDED if name not in header]
    if lacking:
        raise RuleError([at(path, 1, f"the column {lacking[0]} is missing; needed are {', '.join(NEEDED)}")])
    doubled = sorted({name for name in header if name and header.count(name) > 1})
    if doubled:
        raise RuleError([at(path, 1, f"the column {doubled[0]} stands twice")])
    rows, mistakes = [], []
    for cells in reader:
        if len(cells) > len(header):
            mistakes.append(at(path, reader.line_num, "the row has more cells than there are columns"))
            continue
        found = dict(zip(header, cells, strict=False))
        if any(cell.strip() for cell in cells):
            rows.append(SheetRow(reader.line_num, {name: unguarded(found.get(name, "").strip()) for name in COLUMNS}))
    if mistakes:
        raise RuleError(mistakes)
    return Sheet(rows, [name for name in header if name and name not in (*COLUMNS, "question")])
