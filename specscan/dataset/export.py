"""The whole dataset as CSV, Parquet or JSON files."""

from __future__ import annotations

from pathlib import Path

from specscan.dataset.schema import TABLES
from specscan.dataset.store import connect
from specscan.dataset.wide import VIEWS
from specscan.records.errors import DatasetError

OPTIONS = {"csv": "FORMAT csv, HEADER", "parquet": "FORMAT parquet", "json": "FORMAT json, ARRAY true"}


def export(path: Path, folder: Path, form: str) -> list[Path]:
    """Write every table and view of the dataset to ``folder`` as one file each; give the files.

    ``form`` is ``csv``, ``parquet`` or ``json``. Lists (``fact_ids``) become lists in Parquet and JSON, and text
    such as ``[a, b]`` in CSV.

    Raises:
        DatasetError: the dataset cannot be opened, or the folder cannot be written.
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
        present = {row[0] for row in connection.execute("SELECT table_name FROM information_schema.tables").fetchall()}
        for name in names:
            if name not in present:
                continue
            target = folder / f"{name}.{form}"
            quoted = str(target).replace("'", "''")
            try:
                connection.execute(f"COPY (FROM {name}) TO '{quoted}' ({OPTIONS[form]})")
            except Exception as error:
                raise DatasetError(f"{target}: cannot be written ({error})") from error
            written.append(target)
    return written
