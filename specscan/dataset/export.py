"""The tables of the dataset as CSV, Parquet or JSON files; ``package`` writes them with a description."""

from __future__ import annotations

import re
from pathlib import Path
from typing import TYPE_CHECKING

from specscan.dataset.renewal import OF_VANS, PARTS
from specscan.dataset.schema import TABLES
from specscan.dataset.store import connect, finished_tables
from specscan.dataset.wide import VIEWS
from specscan.records.cells import LEADING, NUMBER
from specscan.records.errors import DatasetError

if TYPE_CHECKING:
    import duckdb

LEADING_CLASS = "".join(map(re.escape, LEADING))
OPTIONS = {"csv": "FORMAT csv, HEADER", "parquet": "FORMAT parquet", "json": "FORMAT json, ARRAY true"}


def export(path: Path, folder: Path, form: str) -> list[Path]:
    """Write every table and view of the dataset to ``folder`` as one file each; give the files.

    ``form`` is ``csv``, ``parquet`` or ``json``. Lists (``fact_ids``) become lists in Parquet and JSON, and text
    such as ``[a, b]`` in CSV. In CSV a text that a spreadsheet would take for a formula has an apostrophe before it;
    ``specscan.records.cells.unguarded`` gives it back as it was.

    Raises:
        DatasetError: the dataset cannot be opened or no scan was finished in it, or the folder cannot be written.
        ValueError: an unknown form.
    """
    if form not in OPTIONS:
        raise ValueError(f"unknown form {form!r}: use {', '.join(OPTIONS)}")
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise DatasetError(f"{folder}: cannot be made ({error.strerror})") from error
    names = [*TABLES, *VIEWS, *(f"{view}_us" for view in VIEWS)]
    written = []
    with connect(path, read_only=True) as connection:
        present = finished_tables(connection, path)
        for name in names:
            if name not in present:
                continue
            target = folder / f"{name}.{form}"
            quoted = str(target).replace("'", "''")
            try:
                rows = _guarded_rows(connection, name) if form == "csv" else f"FROM {name}"
                connection.execute(f"COPY ({rows} {_order(name)}) TO '{quoted}' ({OPTIONS[form]})")
            except Exception as error:
                raise DatasetError(f"{target}: cannot be written ({error})") from error
            written.append(target)
    return written


def _order(table: str) -> str:
    """Give the order of a table's rows: by van, each van's as they were written, whatever was written anew."""
    if table not in TABLES:
        return "ORDER BY van_id"
    return "ORDER BY van_id, rowid" if table in OF_VANS else "ORDER BY claim_id, part" if table == PARTS else ""


def _guarded_rows(connection: duckdb.DuckDBPyConnection, table: str) -> str:
    """Give a SELECT of a table's rows whose text columns are as ``guarded`` gives them."""
    columns = connection.execute(f"DESCRIBE {table}").fetchall()
    shown = []
    for name, kind, *_ in columns:
        column = '"' + name.replace('"', '""') + '"'
        if kind == "VARCHAR":
            formula = f"regexp_matches(ltrim({column}, ''''), {_text(f'^[{LEADING_CLASS}]')})"
            number = f"regexp_full_match({column}, {_text(NUMBER.pattern)})"
            column = f"CASE WHEN {formula} AND NOT {number} THEN '''' || {column} ELSE {column} END AS {column}"
        shown.append(column)
    return f"SELECT {', '.join(shown)} FROM {table}"


def _text(value: str) -> str:
    return "'" + value.replace("'", "''") + "'"
