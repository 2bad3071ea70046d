"""Answers of queries: as a table, CSV, JSON or Parquet."""

from __future__ import annotations

import csv
import io
import json
from datetime import date, datetime
from decimal import Decimal
from pathlib import Path
from typing import Any

from specscan.dataset.query import Answer, query_frame, run_query
from specscan.records.cells import guarded
from specscan.records.errors import QueryError, SpecscanError
from specscan.records.shown import escaped


def write_answer(db: Path, sql: str, form: str, out: Path | None) -> None:
    """Run a query and write its answer.

    Raises:
        QueryError: the query is refused; or Parquet is asked for without a file to write.
        SpecscanError: the file cannot be written.
    """
    if form == "parquet":
        if out is None:
            raise QueryError("parquet is no text: name a file with --out FILE")
        _parquet(db, sql, out)
        return
    answer = run_query(db, sql)
    if form == "table" and out is None:
        _table(answer)
        return
    text = {"csv": _csv, "json": _json, "table": _csv}[form](answer)
    if out is None:
        from specscan.cli.consoles import print_text

        print_text(text)
        return
    try:
        out.write_text(text, encoding="utf-8", newline="")
    except OSError as error:
        raise SpecscanError(f"{out}: cannot be written ({error.strerror})") from error


def _table(answer: Answer) -> None:
    from rich.table import Table
    from rich.text import Text

    from specscan.cli.consoles import console

    table = Table(box=None, header_style="bold", pad_edge=False)
    for index, name in enumerate(answer.columns):
        numeric = any(isinstance(row[index], int | float) and not isinstance(row[index], bool) for row in answer.rows)
        table.add_column(Text(name), justify="right" if numeric else "left", overflow="fold")
    for row in answer.rows:
        table.add_row(*(Text(shown(value)) for value in row))
    console().print(table)


def shown(value: Any) -> str:
    """Give a cell as a person reads it; unknown is empty."""
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float):
        return f"{value:.6g}"
    if isinstance(value, list):
        return ", ".join(shown(one) for one in value)
    return str(value)


def _csv(answer: Answer) -> str:
    buffer = io.StringIO()
    writer = csv.writer(buffer, lineterminator="\n")
    quoting = csv.writer(buffer, lineterminator="\n", quoting=csv.QUOTE_ALL)
    writer.writerow(map(guarded, answer.columns))
    for row in answer.rows:
        cells = ("" if value is None else _plain(value) for value in row)
        row_cells = [cell if isinstance(cell, bool | int | float) else guarded(str(cell)) for cell in cells]
        # the writer leaves a carriage return unquoted where lines end with a line feed, and readers end the line there
        (quoting if any("\r" in str(cell) for cell in row_cells) else writer).writerow(row_cells)
    return buffer.getvalue()


def _json(answer: Answer) -> str:
    rows = [dict(zip(answer.columns, map(_plain, row), strict=True)) for row in answer.rows]
    return escaped(json.dumps(rows, ensure_ascii=False, indent=2)) + "\n"


def _plain(value: Any) -> Any:
    if isinstance(value, datetime | date):
        return value.isoformat()
    if isinstance(value, Decimal):
        return float(value)
    return value if isinstance(value, bool | int | float | str | list | dict | None) else str(value)


def _parquet(db: Path, sql: str, out: Path) -> None:
    import duckdb

    frame = query_frame(db, sql)
    connection = duckdb.connect()
    try:
        connection.register("answer", frame)
        connection.execute("COPY answer TO '" + str(out).replace("'", "''") + "' (FORMAT parquet)")
    except duckdb.Error as error:
        raise SpecscanError(f"{out}: cannot be written ({error})") from error
    finally:
        connection.close()
