"""Writing a new state van by van: what changed goes and comes again, what did not stays as it is."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from contextlib import contextmanager, suppress
from typing import TYPE_CHECKING, Any

import duckdb

from specscan.dataset.schema import columns_of
from specscan.dataset.wide import Column, UsUnit, create_wide

if TYPE_CHECKING:
    import pandas as pd

Rows = Sequence[Mapping[str, Any]]
OF_VANS = ("facts", "settled", "claims", "van_names", "scores", "gaps")  # tables with rows of single vans
PARTS = "claim_parts"  # whose rows belong to those of ``claims``


class Renewal:
    """A state in the making, within the one transaction that ``Dataset.renewal`` opens."""

    def __init__(self, connection: duckdb.DuckDBPyConnection):
        """Take the connection, on which a transaction has begun."""
        self.connection = connection
        self.stays = True  # whether rows of vans stay from the state before

    def drop(self, vans: Collection[str] | None = None) -> None:
        """Drop the rows of some vans, by default of all."""
        if vans is None:
            self.stays = False
            for name in (*OF_VANS, PARTS):
                self.connection.execute(f"DELETE FROM {name}")
            self.connection.execute("DELETE FROM kept.vans")
            return
        with _incoming(self.connection, {"van_id": sorted(vans)}) as gone:
            self.connection.execute(
                f"DELETE FROM {PARTS} WHERE claim_id IN "
                f"(SELECT claim_id FROM claims WHERE van_id IN (SELECT van_id FROM {gone}))"
            )
            for name in (*OF_VANS, "kept.vans"):
                self.connection.execute(f"DELETE FROM {name} WHERE van_id IN (SELECT van_id FROM {gone})")

    def add(self, tables: Mapping[str, Rows]) -> None:
        """Add rows to tables."""
        for name, rows in tables.items():
            insert(self.connection, name, rows)

    def put(self, tables: Mapping[str, Rows]) -> None:
        """Put rows in place of all that tables hold."""
        for name, rows in tables.items():
            self.connection.execute(f"DELETE FROM {name}")
            insert(self.connection, name, rows)

    def keep_keys(self, keys: Mapping[str, str]) -> None:
        """Keep the digests of what the rows of new and changed vans follow from."""
        if keys:
            with _incoming(self.connection, {"van_id": list(keys), "key": list(keys.values())}) as new:
                self.connection.execute(f"INSERT INTO kept.vans SELECT van_id, key FROM {new}")

    def finish(
        self,
        run: Mapping[str, Any],
        columns: Sequence[Column],
        us_units: Mapping[str, UsUnit],
        settings: Mapping[str, str] | None = None,
        renewed: Collection[str] = (),
    ) -> None:
        """Make the wide tables from the rows, add the run to ``runs``, and keep texts as ``keep_setting`` does.

        ``renewed`` are the vans whose rows were added or dropped, where those of others stay as they were.
        """
        for key, value in (settings or {}).items():
            self.connection.execute("INSERT OR REPLACE INTO kept.about VALUES (?, ?)", [key, value])
        insert(self.connection, "runs", [run])
        if not self.stays:
            create_wide(self.connection, columns, us_units)
            return
        with _incoming(self.connection, {"van_id": sorted(renewed)}) as changed:
            create_wide(self.connection, columns, us_units, changed)


def insert(connection: duckdb.DuckDBPyConnection, table: str, rows: Rows) -> None:
    """Add rows (mappings by column name; a missing column is null) to one of the dataset's tables."""
    if not rows:
        return
    frame = _frame({name: [row.get(name) for row in rows] for name in columns_of(table)})
    connection.from_df(frame).insert_into(table)  # what is registered by name stays in memory until a transaction ends


@contextmanager
def _incoming(connection: duckdb.DuckDBPyConnection, columns: Mapping[str, Sequence[Any]]) -> Iterator[str]:
    """Give a name under which queries of one connection can use these columns, for a while."""
    name = "incoming_rows"
    connection.register(name, _frame(columns))
    try:
        yield name
    finally:
        with suppress(duckdb.Error):  # in a failed transaction this fails too, and would hide why
            connection.unregister(name)


def _frame(columns: Mapping[str, Sequence[Any]]) -> pd.DataFrame:
    import pandas as pd  # not needed by commands that only read, which start sooner without it

    return pd.DataFrame({column: pd.Series(values, dtype="object") for column, values in columns.items()})
