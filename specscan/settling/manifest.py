"""The user's ``manifest.csv``: which van a file is about, over anything that the file says itself."""

from __future__ import annotations

import csv
import io
import re
from dataclasses import dataclass
from pathlib import Path

from specscan.records.errors import RuleError, at
from specscan.records.files import TooLarge, read_ordinary

COLUMNS = ("file", "maker", "model", "year")
NAME = "manifest.csv"
LIMIT_BYTES = 5_000_000


@dataclass(frozen=True, slots=True)
class ManifestRow:
    """One line: the file (its name, or its path from the manifest's folder) and what the user says of it."""

    file: str
    maker: str
    model: str
    year: int | None
    line: int


def read_manifest(path: Path) -> list[ManifestRow]:
    """Give the rows of a manifest.

    Raises:
        RuleError: it cannot be read, lacks a column, or a year is no year; each mistake with file and line.
    """
    try:
        return parse_manifest(path, read_ordinary(path, LIMIT_BYTES))
    except TooLarge as error:
        raise RuleError([at(path, None, "the file is larger than 5 MB")]) from error
    except OSError as error:
        raise RuleError([at(path, None, f"cannot be read ({error.strerror})")]) from error


def parse_manifest(path: Path, raw: bytes) -> list[ManifestRow]:
    """Give the rows of a manifest from its content; ``path`` names it in messages. Errors as for ``read_manifest``."""
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise RuleError([at(path, None, "the file is not UTF-8")]) from error
    reader = csv.DictReader(io.StringIO(text))
    try:
        return _rows(path, reader)
    except csv.Error as error:
        raise RuleError([at(path, reader.line_num, f"no valid CSV: {error}")]) from error


def _rows(path: Path, reader: csv.DictReader[str]) -> list[ManifestRow]:
    header = [name.strip().casefold() for name in reader.fieldnames or []]
    missing = [name for name in COLUMNS if name not in header]
    if missing or len(set(header)) != len(header):
        raise RuleError([at(path, 1, f"the first line must name the columns {', '.join(COLUMNS)}, each once")])
    reader.fieldnames = header
    rows, mistakes = [], []
    for record in reader:
        line = reader.line_num
        cells = {name: (record.get(name) or "").strip() for name in COLUMNS}
        if not any(cells.values()):
            continue
        if not cells["file"]:
            mistakes.append(at(path, line, "no file is named"))
        if cells["year"] and not (re.fullmatch("[0-9]{4}", cells["year"]) and 1950 <= int(cells["year"]) <= 2100):
            mistakes.append(at(path, line, f"{cells['year']!r} is no year"))
            continue
        year = int(cells["year"]) if cells["year"] else None
        rows.append(ManifestRow(cells["file"], cells["maker"], cells["model"], year, line))
    if mistakes:
        raise RuleError(mistakes)
    return rows
