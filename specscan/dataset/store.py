"""Opening and writing the DuckDB file: one transaction per state, so that a killed run leaves the last good one."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import Any

import duckdb

from specscan.dataset.renewal import Renewal, insert
from specscan.dataset.schema import VERSION, create_statements
from specscan.records.errors import DatasetError

MEMORY = (
    "512MB"  # of the engine while it writes: what is not yet in place beyond that goes to a file beside the dataset
)
UNWRITTEN = (duckdb.IOException, duckdb.FatalException, duckdb.TransactionException, duckdb.OutOfMemoryException)


def connect(path: Path, *, read_only: bool) -> duckdb.DuckDBPyConnection:
    """Open a dataset.

    Raises:
        DatasetError: it is missing (when reading), locked by another process, or no DuckDB file.
    """
    if read_only and not path.is_file():
        raise DatasetError(f"{path}: there is no such dataset; make one with: specscan scan PATH --db {path}")
    try:
        return duckdb.connect(str(path), read_only=read_only, config={} if read_only else {"memory_limit": MEMORY})
    except duckdb.IOException as error:
        text = str(error)
        if "lock" in text.casefold():
            raise DatasetError(f"{path}: another process is using this dataset; try again when it has ended") from error
        if "No such file" in text or "Cannot open file" in text or "Permission" in text:
            raise DatasetError(f"{path}: cannot be opened or written ({_first_line(text)})") from error
        raise DatasetError(f"{path}: this is no DuckDB dataset ({_first_line(text)})") from error
    except duckdb.Error as error:
        raise DatasetError(f"{path}: cannot be opened ({_first_line(str(error))})") from error


def finished_tables(connection: duckdb.DuckDBPyConnection, path: Path) -> set[str]:
    """Give the names of the tables and views that people see, without those only kept between scans.

    Raises:
        DatasetError: the wide tables are missing, as where the first scan was ended before anything was stored.
    """
    rows = connection.execute("SELECT table_name FROM information_schema.tables WHERE table_schema = 'main'").fetchall()
    present = {name for (name,) in rows}
    if not {"settled", "vans", "scores"} <= present:
        raise DatasetError(
            f"{path}: no scan has been finished in this dataset; finish one with: specscan scan PATH --db {path}"
        )
    return present


def _first_line(text: str) -> str:
    return text.strip().splitlines()[0]


class Dataset:
    """A dataset open for writing."""

    def __init__(self, path: Path):
        """Open or make the dataset.

        Raises:
            DatasetError: it cannot be opened, is no dataset of specscan, or was made by another version of its tables.
        """
        self.path = path
        self.connection = connect(path, read_only=False)
        try:
            self._prepare()
        except BaseException:
            self.connection.close()
            raise

    def close(self) -> None:
        """Close the file."""
        with suppress(
            duckdb.Error
        ):  # what could not be put in place here is in the log beside the file, and is next time
            self.connection.close()

    def __enter__(self) -> Dataset:
        return self

    def __exit__(self, *_: object) -> None:
        self.close()

    def _prepare(self) -> None:
        present = {row[0] for row in self.connection.execute("SELECT table_name FROM duckdb_tables()").fetchall()}
        if present and "about" not in present:
            raise DatasetError(f"{self.path}: this DuckDB file holds other tables and is no dataset of specscan")
        with self.transaction():
            for statement in create_statements():
                self.connection.execute(statement)
            found = self.connection.execute("SELECT value FROM kept.about WHERE key = 'tables'").fetchone()
            if found is None:
                self.connection.execute("INSERT INTO kept.about VALUES ('tables', ?)", [str(VERSION)])
            elif found[0] != str(VERSION):
                raise DatasetError(
                    f"{self.path}: made by another version of specscan (tables {found[0]}, here {VERSION}); "
                    f"build it anew: specscan scan PATH --db NEW_FILE"
                )

    @contextmanager
    def transaction(self) -> Iterator[None]:
        """Do what is inside wholly or not at all.

        Raises:
            DatasetError: the disk is full or gone, or another process has changed the file; the file is as it was.
        """
        try:
            self.connection.execute("BEGIN")
            try:
                yield
            except BaseException:
                with suppress(duckdb.Error):  # after a fault of the disk nothing more is possible, and nothing needed
                    self.connection.execute("ROLLBACK")
                raise
            self.connection.execute("COMMIT")
        except UNWRITTEN as error:
            raise DatasetError(
                f"{self.path}: cannot be written ({_first_line(str(error))}); it holds what it held before"
            ) from error

    # what is kept of files

    def kept_records(self) -> dict[str, str]:
        """Give the record kept of each file as JSON, by path."""
        return dict(self.connection.execute("SELECT path, record FROM kept.findings").fetchall())

    def kept_outlines(self) -> dict[str, tuple[str, str]]:
        """Give the record kept of each file and the outline of its findings as JSON, by path."""
        rows = self.connection.execute("SELECT path, record, outline FROM kept.findings").fetchall()
        return {path: (record, outline) for path, record, outline in rows}

    def findings(self, paths: Sequence[str]) -> dict[str, str]:
        """Give what is kept of the findings of some files as JSON, by path."""
        query = "SELECT path, found FROM kept.findings WHERE path IN (SELECT unnest(?))"
        return dict(self.connection.execute(query, [list(paths)]).fetchall())

    def kept_marks(self) -> dict[str, tuple[str, str, str]]:
        """Give by path what tells whether a file must be read again: content digest, what made it, and its record."""
        rows = self.connection.execute("SELECT path, sha256, made_by, record FROM kept.findings").fetchall()
        return {path: (sha256, made_by, record) for path, sha256, made_by, record in rows}

    def keep(self, rows: Sequence[tuple[str, ...]]) -> None:
        """Keep findings of files, over older ones.

        A row is path, content digest, what made them, and as JSON the record, an outline of the findings, the findings.
        """
        if rows:
            with self.transaction():
                self.connection.executemany("INSERT OR REPLACE INTO kept.findings VALUES (?, ?, ?, ?, ?, ?)", rows)

    def keep_parts(self, parts: Sequence[str]) -> None:
        """Keep the findings in Parquet files with the columns of ``keep``, over older ones, all in one go."""
        if parts:
            with self.transaction():
                self.connection.execute(
                    "INSERT OR REPLACE INTO kept.findings "
                    "SELECT path, sha256, made_by, record, outline, found FROM read_parquet(?)",
                    [list(parts)],
                )

    def forget(self, paths: Sequence[str]) -> None:
        """Drop what is kept of files."""
        if paths:
            with self.transaction():
                self.connection.executemany("DELETE FROM kept.findings WHERE path = ?", [[path] for path in paths])

    def setting(self, key: str) -> str:
        """Give a text that was kept under a key, empty where there is none."""
        row = self.connection.execute("SELECT value FROM kept.about WHERE key = ?", [key]).fetchone()
        return row[0] if row else ""

    def keep_setting(self, key: str, value: str) -> None:
        """Keep a text under a key."""
        with self.transaction():
            self.connection.execute("INSERT OR REPLACE INTO kept.about VALUES (?, ?)", [key, value])

    def van_keys(self) -> dict[str, str]:
        """Give by van the digest of what its rows followed from."""
        return dict(self.connection.execute("SELECT van_id, key FROM kept.vans").fetchall())

    def count_facts(self) -> int:
        """Give the number of statements in the state."""
        row = self.connection.execute("SELECT count(*) FROM facts").fetchone()
        return int(row[0]) if row else 0

    def digest_of_kept(self) -> str:
        """Give a digest of all that is kept of files; the outline of findings has a digest of these."""
        row = self.connection.execute(
            "SELECT sha256(string_agg(concat_ws(chr(1), path, sha256, made_by, md5(record), outline), chr(2) "
            "ORDER BY path)) FROM kept.findings"
        ).fetchone()
        return str(row[0]) if row else ""

    def add_run(self, run: Mapping[str, Any]) -> None:
        """Add a run that found the state as it was."""
        with self.transaction():
            insert(self.connection, "runs", [run])

    # the state that others see

    @contextmanager
    def renewal(self) -> Iterator[Renewal]:
        """Write a new state, in one transaction.

        Raises:
            DatasetError: as for ``transaction``.
        """
        with self.transaction():
            yield Renewal(self.connection)
