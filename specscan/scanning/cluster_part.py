"""What a machine of a cluster does: some files are read, each in a process of its own, into one Parquet part."""

from __future__ import annotations

import tempfile
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from pathlib import Path

from specscan import __version__
from specscan.records.documents import ReadDocument
from specscan.records.errors import DocumentError, SpecscanError
from specscan.scanning.addresses import fetch, is_address, opened
from specscan.scanning.answers import kept_row, unreadable
from specscan.scanning.limits import load_limits
from specscan.scanning.pool import Task, examine_all

COLUMNS = ("path", "sha256", "made_by", "record", "outline", "found")


def read_part(
    tasks: Sequence[Task], made_by: Sequence[str], rules: Mapping[str, bytes], version: str, target: str
) -> tuple[str, list[tuple[float, float]]]:
    """Read files and write what is found to ``target``; give ``target`` and the seconds that each file took.

    ``rules`` are the files of the folder of rules, by name; ``made_by`` says of each task what its findings rest on.

    Raises:
        SpecscanError: this machine has another version of specscan, or ``target`` cannot be written.
    """
    if version != __version__:
        raise SpecscanError(f"a machine of the cluster has specscan {__version__}, the scan was asked by {version}")
    by = dict(zip((task.path for task in tasks), made_by, strict=True))
    rows, took = [], []
    with tempfile.TemporaryDirectory() as place:
        folder = _unpacked(rules, Path(place) / "rules")
        for task, result in _results(tasks, folder, Path(place)):
            took.append(result.took)
            rows.append(kept_row(task.path, task.sha256, by[task.path], result))
        _write(rows, target, Path(place) / "part.parquet")
    return target, took


def _unpacked(rules: Mapping[str, bytes], folder: Path) -> Path:
    for name, content in rules.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content)
    return folder


def _results(tasks: Sequence[Task], rules: Path, place: Path) -> Iterator[tuple[Task, ReadDocument]]:
    """Read files; those at addresses are fetched first, and named by their addresses again."""
    limits = load_limits(rules)
    local: list[Task] = []
    asked: dict[str, Task] = {}
    for number, task in enumerate(tasks):
        path = task.path
        if is_address(path):
            folder = place / str(number)
            folder.mkdir()
            try:
                path = str(fetch(task.path, folder, limits.file_mb))
            except DocumentError as error:
                yield task, unreadable(task.path, "", task.kind, str(error))
                continue
        asked[path] = task
        local.append(replace(task, path=path))
    for task, result in examine_all(local, rules, limits, 1):
        yield asked[task.path], result


def _write(rows: Sequence[tuple[str, ...]], target: str, part: Path) -> None:
    """Write rows as one Parquet file; it appears at its place whole or not at all."""
    import duckdb
    import pandas as pd

    frame = pd.DataFrame(list(rows), columns=list(COLUMNS), dtype="object")  # noqa: F841  (named in the query)
    with duckdb.connect(":memory:") as connection:
        connection.execute(f"COPY (SELECT * FROM frame) TO '{part}' (FORMAT parquet)")
    system, place = opened(target)
    system.put_file(str(part), f"{place}.writing")
    system.mv(f"{place}.writing", place)
