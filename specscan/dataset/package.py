"""The whole dataset as a Frictionless Data Package: CSV and Parquet, described by ``datapackage.json``.

The standard is the Data Package (https://specs.frictionlessdata.io/data-package/) with Table Schema: an open text
format that says types, units, meanings, keys and checksums beside plain files, so that nothing else is needed to read
them. Each table is one resource, its CSV file; the same table as Parquet is named beside it (``parquet``), for programs
that check packages read lists in Parquet wrongly or not at all.
"""

from __future__ import annotations

import hashlib
import json
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC
from importlib import resources
from pathlib import Path
from typing import Any

import duckdb
import yaml

from specscan.dataset.schema import TABLES
from specscan.dataset.store import connect, finished_tables
from specscan.dataset.wide import VIEWS
from specscan.records.errors import DatasetError

WIDE = (*VIEWS, *(f"{view}_us" for view in VIEWS))
TYPES = {
    "VARCHAR": "string", "DOUBLE": "number", "INTEGER": "integer", "BIGINT": "integer", "BOOLEAN": "boolean",
    "TIMESTAMP": "datetime", "DATE": "date",
}  # fmt: skip
MOMENT = "%Y-%m-%dT%H:%M:%SZ"
ABOUT = (
    "Read by a program from brochures, spec sheets and web pages: values are what documents state, with page and words "
    "(table facts); what nobody states is empty and is not a no. Figures are estimates and no safety certificate. "
    "Printed words remain their makers'; the licence is for the tables."
)


@dataclass(frozen=True, slots=True)
class Described:
    """A column: its name, its type in DuckDB, and how Table Schema describes it."""

    name: str
    type: str
    field: dict[str, Any]


def write_package(path: Path, folder: Path, licence: str) -> list[Path]:
    """Write the dataset to ``folder`` as a data package; give the files, ``datapackage.json`` last.

    Lists are JSON arrays in CSV and lists in Parquet. ``licence`` is an SPDX identifier, told in the package.

    Raises:
        DatasetError: the dataset cannot be opened, has no scan in it, or the folder cannot be written.
    """
    data = folder / "data"
    try:
        data.mkdir(parents=True, exist_ok=True)
        with connect(path, read_only=True) as connection:
            connection.execute("SET TimeZone = 'UTC'")
            package = _Package(connection, data, finished_tables(connection, path))
            descriptor = package.descriptor(licence)
        target = folder / "datapackage.json"
        target.write_text(json.dumps(descriptor, ensure_ascii=False, indent=2) + "\n", encoding="utf-8")
    except (OSError, duckdb.IOException) as error:
        raise DatasetError(f"{folder}: cannot be written ({error})") from error
    return [*package.written, target]


class _Package:
    def __init__(self, connection: duckdb.DuckDBPyConnection, data: Path, present: set[str]):
        self.connection, self.data = connection, data
        self.written: list[Path] = []
        text = (resources.files("specscan.dataset") / "dictionary.yaml").read_text(encoding="utf-8")
        self.dictionary = yaml.safe_load(text)
        self.names = [name for name in (*TABLES, *WIDE) if name in present]
        self.fields = {row[0]: row[1:] for row in self._rows("SELECT field, type, unit, meaning, words FROM fields")}

    def _rows(self, sql: str) -> list[tuple[Any, ...]]:
        return self.connection.execute(sql).fetchall()

    def descriptor(self, licence: str) -> dict[str, Any]:
        """Write all tables; give the descriptor of the package."""
        runs = self._rows("SELECT version, rules_sha256, finished_at FROM runs ORDER BY finished_at")
        version, digest, finished = runs[-1]
        documents = self._rows("SELECT name, sha256 FROM documents ORDER BY name, path")
        return {
            "profile": "data-package",
            "name": "specscan-vans",
            "title": "Winter equipment of camper vans, as their documents state it",
            "description": ABOUT,
            "created": finished.replace(tzinfo=UTC).strftime(MOMENT),
            "version": f"{finished:%Y.%m.%d}+{digest[:12]}",
            "licenses": [{"name": licence, "path": f"https://spdx.org/licenses/{licence}.html", "title": licence}],
            "sources": [{"title": name, "sha256": sha256} for name, sha256 in documents],
            "specscan": {"version": version, "rules_sha256": digest},
            "resources": [self._resource(name) for name in self.names],
        }  # fmt: skip

    def _resource(self, name: str) -> dict[str, Any]:
        columns = self._columns(name)
        about = self.dictionary["tables"][name]
        schema: dict[str, Any] = {"fields": [column.field for column in columns], "missingValues": [""]}
        if about["keys"]:
            schema["primaryKey"] = about["keys"]
        ordered = f"FROM {name} ORDER BY {', '.join(map(_quoted, about['keys'])) or 'ALL'}"
        shown = ", ".join(map(_in_csv, columns))
        return {
            "profile": "tabular-data-resource", "name": name.replace("_", "-"), "description": about["means"],
            **self._file(name, "csv", f"SELECT {shown} {ordered}", "FORMAT csv, HEADER"),
            "format": "csv", "mediatype": "text/csv", "encoding": "utf-8", "schema": schema,
            "parquet": self._file(name, "parquet", f"SELECT * {ordered}", "FORMAT parquet"),
        }  # fmt: skip

    def _file(self, name: str, ending: str, sql: str, options: str) -> dict[str, Any]:
        target = self.data / f"{name}.{ending}"
        quoted = str(target).replace("'", "''")
        self.connection.execute(f"COPY ({sql}) TO '{quoted}' ({options})")
        self.written.append(target)
        content = target.read_bytes()
        digest = hashlib.sha256(content).hexdigest()
        return {"path": f"data/{target.name}", "bytes": len(content), "hash": f"sha256:{digest}"}

    def _columns(self, name: str) -> list[Described]:
        rows = self._rows(f"SELECT column_name, column_type FROM (DESCRIBE {name})")
        return [Described(column, kind, self._field(name, column, kind)) for column, kind in rows]

    def _field(self, table: str, column: str, kind: str) -> dict[str, Any]:
        described: dict[str, Any] = {"name": column, "type": "array" if kind.endswith("[]") else TYPES[kind]}
        if described["type"] == "datetime":
            described["format"] = MOMENT
        if table not in WIDE or column not in self.fields:
            described["description"] = self._said(table, column)
            return described
        type_, unit, meaning, words = self.fields[column]
        described["description"] = meaning or column
        if unit:
            described["unit"] = unit
        if type_ == "choice" and words:
            described["constraints"] = {"enum": list(words)}
        if type_ == "set" and words:
            word = "|".join(re.escape(one) for one in words)
            described["description"] += "; words joined by +"
            described["constraints"] = {"pattern": rf"({word})(\+({word}))*"}
        return described

    def _said(self, table: str, column: str) -> str:
        if table in WIDE and column != "van_id":
            return self._us_meaning(table, column)
        return str(self.dictionary["columns"][column])

    def _us_meaning(self, table: str, column: str) -> str:
        """Give what a column in US units means: that of the column at its place in metric units."""
        names = [row[0] for row in self._rows(f"SELECT column_name FROM (DESCRIBE {table})")]
        metric = [row[0] for row in self._rows(f"SELECT column_name FROM (DESCRIBE {table.removesuffix('_us')})")]
        meaning = self.fields[metric[names.index(column)]][2]
        return f"{meaning}, in US units"


def _in_csv(column: Described) -> str:
    name = _quoted(column.name)
    if column.type.endswith("[]"):
        return f"to_json({name}) AS {name}"
    if column.type == "TIMESTAMP":
        return f"strftime({name}, '{MOMENT}') AS {name}"
    return name


def _quoted(name: str) -> str:
    return '"' + name.replace('"', '""') + '"'


def pandas_types(schema: Mapping[str, Sequence[Mapping[str, Any]]]) -> dict[str, str]:
    """Give the types by which pandas reads a CSV file of the package: ``read_csv(path, dtype=pandas_types(schema))``.

    ``schema`` is that of the resource in ``datapackage.json``. Moments, dates and lists are left as text.
    """
    types = {"number": "Float64", "integer": "Int64", "boolean": "boolean"}
    return {field["name"]: types.get(field["type"], "string") for field in schema["fields"]}
