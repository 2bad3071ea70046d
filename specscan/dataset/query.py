"""Read-only SQL over a dataset, walled off from files, network and settings."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

import duckdb

from specscan.dataset.store import connect
from specscan.records.errors import QueryError

if TYPE_CHECKING:
    import pandas as pd

ALLOWED = {"SELECT", "EXPLAIN"}


@dataclass(frozen=True, slots=True)
class Answer:
    """The columns and rows of a query."""

    columns: list[str]
    rows: list[tuple[Any, ...]]


def open_walled(path: Path) -> duckdb.DuckDBPyConnection:
    """Open a dataset for reading, unable to touch other files, the network, Python's variables or its own settings.

    Raises:
        DatasetError: the dataset is missing, locked or no DuckDB file.
    """
    connection = connect(path, read_only=True)
    locked = connection.execute("SELECT current_setting('lock_configuration')").fetchone()
    if locked and locked[0]:  # opened a second time in this process: the walls are those of the file, and stand
        return connection
    for setting in (
        "SET enable_external_access = false",
        "SET autoinstall_known_extensions = false",
        "SET autoload_known_extensions = false",
        "SET python_enable_replacements = false",
        "SET lock_configuration = true",
    ):
        connection.execute(setting)
    return connection


def run_query(path: Path, sql: str) -> Answer:
    """Give the answer of one SELECT (or EXPLAIN) over the dataset.

    Raises:
        QueryError: the text is not one reading statement, or DuckDB refuses it; with DuckDB's reason.
        DatasetError: the dataset cannot be opened.
    """
    connection = open_walled(path)
    try:
        cursor = _execute(connection, sql)
        columns = [column[0] for column in cursor.description or []]
        return Answer(columns, cursor.fetchall())
    except duckdb.Error as error:
        raise QueryError(str(error)) from error
    finally:
        connection.close()


def query_frame(path: Path, sql: str) -> pd.DataFrame:
    """Give the answer of one SELECT over the dataset as a pandas frame; errors as for ``run_query``."""
    connection = open_walled(path)
    try:
        return _execute(connection, sql).df()
    except duckdb.Error as error:
        raise QueryError(str(error)) from error
    finally:
        connection.close()


def _execute(connection: duckdb.DuckDBPyConnection, sql: str) -> duckdb.DuckDBPyConnection:
    try:
        statements = connection.extract_statements(sql)
    except duckdb.Error as error:
        raise QueryError(str(error)) from error
    if len(statements) != 1:
        raise QueryError("give one SQL statement" if statements else "the query is empty")
    kind = statements[0].type.name
    if kind not in ALLOWED:
        raise QueryError(f"only reading is allowed here (SELECT), not {kind}")
    return connection.execute(statements[0])
