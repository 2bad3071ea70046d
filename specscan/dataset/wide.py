"""``vans`` and ``vans_optioned``: one row per van, one column per field; and the same in US units."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import duckdb

VIEWS = {"vans": "standard", "vans_optioned": "optioned"}
# The known values of a van by field. A query that looks for each column in all rows takes five times as long.
MAPS = ", ".join(
    f"map(list(field) FILTER ({known}), list({value}) FILTER ({known})) AS {value}"
    for value in ("value_num", "value_text", "value_flag")
    for known in [f"status <> 'missing' AND {value} IS NOT NULL"]
)


@dataclass(frozen=True, slots=True)
class Column:
    """A column of the wide views: the field, its type (``number``, ``integer``, ``flag``, else words) and its unit."""

    name: str
    type: str
    unit: str


@dataclass(frozen=True, slots=True)
class UsUnit:
    """How a column is shown in US units: its name there, and value × factor + offset."""

    name: str
    factor: float
    offset: float


def create_wide(
    connection: duckdb.DuckDBPyConnection, columns: Sequence[Column], us: Mapping[str, UsUnit], changed: str = ""
) -> None:
    """Make the wide tables from ``settled`` anew, and the views in US units over them.

    ``changed`` names a table of the vans (``van_id``) whose rows differ from those in the wide tables, by default all.
    Names of columns are identifiers checked when the field files were read; they are quoted all the same.
    """
    names = ["van_id", *(column.name for column in columns)]
    for view, equipment in VIEWS.items():
        picks = ", ".join(f"{_picked(column)} AS {_quoted(column.name)}" for column in columns)
        connection.execute(f"DROP VIEW IF EXISTS {view}_us")
        known = f"SELECT van_id, {MAPS} FROM settled WHERE equipment = '{equipment}'"
        if changed and _columns_of(connection, view) == names:
            mine = f"van_id IN (SELECT van_id FROM {changed})"
            new = f"SELECT van_id, {picks} FROM ({known} AND {mine} GROUP BY van_id)"
            query = f"FROM {view} WHERE NOT {mine} UNION ALL {new}"
        else:
            query = f"SELECT van_id, {picks} FROM ({known} GROUP BY van_id)"
        connection.execute(f"CREATE TABLE {view}_next AS FROM ({query}) ORDER BY van_id")
        connection.execute(f"DROP TABLE IF EXISTS {view}")
        connection.execute(f"ALTER TABLE {view}_next RENAME TO {view}")
        shown = ", ".join(_in_us(column, us.get(column.name)) for column in columns)
        connection.execute(f"CREATE VIEW {view}_us AS SELECT van_id, {shown} FROM {view}")


def _columns_of(connection: duckdb.DuckDBPyConnection, table: str) -> list[str]:
    rows = connection.execute(
        "SELECT column_name FROM duckdb_columns() WHERE table_name = ? ORDER BY column_index", [table]
    )
    return [name for (name,) in rows.fetchall()]


def _picked(column: Column) -> str:
    key = "'" + column.name.replace("'", "''") + "'"
    if column.type == "integer":
        return f"CAST(value_num[{key}] AS BIGINT)"
    if column.type in ("number", "flag"):
        return f"{'value_num' if column.type == 'number' else 'value_flag'}[{key}]"
    return f"value_text[{key}]"


def _in_us(column: Column, unit: UsUnit | None) -> str:
    if unit is None:
        return _quoted(column.name)
    return f"{_quoted(column.name)} * {unit.factor!r} + {unit.offset!r} AS {_quoted(unit.name)}"


def _quoted(name: str) -> str:
    return '"' + name.replace('"', '""') + '"'
