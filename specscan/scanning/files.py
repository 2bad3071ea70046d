"""Which files a scan is about."""

from __future__ import annotations

import os
import stat
from collections.abc import Sequence
from dataclasses import dataclass, field
from fnmatch import fnmatch
from pathlib import Path

from specscan.records.errors import NotFoundError
from specscan.rulebook.book import Rulebook
from specscan.settling.manifest import NAME, ManifestRow, read_manifest


@dataclass(slots=True)
class Gathered:
    """The files of a scan (absolute path → kind, ``None`` where no reader takes it) and what lay beside them.

    ``roots`` are the folders that were looked through: a file under one of them that is gone is forgotten.
    ``aside`` counts files of other kinds in those folders.
    """

    files: dict[str, str | None] = field(default_factory=dict)
    roots: list[str] = field(default_factory=list)
    manifests: dict[str, list[ManifestRow]] = field(default_factory=dict)
    aside: int = 0


def kind_of(path: Path, book: Rulebook) -> str | None:
    """Give the kind of document that a file's name says it is, ``None`` where no reader takes it."""
    ending = path.suffix.casefold()
    return next((kind for kind, endings in book.general.document_endings.items() if ending in endings), None)


def gather(paths: Sequence[Path], book: Rulebook) -> Gathered:
    """Give the documents under files and folders (with their sub-folders), in order of path.

    Hidden files and folders, files that the rules name as no documents (a readme) and files of other kinds are left
    out of a folder; a file named by itself is always taken. A ``manifest.csv`` in a folder is read.

    Raises:
        NotFoundError: there is no such file or folder.
        RuleError: a manifest is wrong; with file and line.
    """
    found = Gathered()
    for path in paths:
        if path.is_dir():
            root = path.resolve()
            found.roots.append(root.as_posix())
            _walk(root, book, found)
        elif path.is_file():
            found.files[path.resolve().as_posix()] = kind_of(path, book)
            _manifest(path.resolve().parent, found)
        else:
            raise NotFoundError(f"{path}: no such file or folder")
    found.files = dict(sorted(found.files.items()))
    return found


def _walk(root: Path, book: Rulebook, found: Gathered) -> None:
    for folder, folders, names in os.walk(root, followlinks=False):
        folders[:] = sorted(name for name in folders if not name.startswith("."))
        _manifest(Path(folder), found)
        for name in sorted(names):
            path = Path(folder) / name
            if name.startswith(".") or not _is_regular(path):
                continue
            kind = kind_of(path, book)
            if any(fnmatch(name.casefold(), pattern) for pattern in book.general.not_documents):
                continue
            if kind is None:
                found.aside += 1
            else:
                found.files[path.as_posix()] = kind


def _is_regular(path: Path) -> bool:
    try:
        return stat.S_ISREG(path.stat().st_mode)
    except OSError:
        return False


def _manifest(folder: Path, found: Gathered) -> None:
    path = folder / NAME
    if path.is_file() and folder.as_posix() not in found.manifests:
        found.manifests[folder.as_posix()] = read_manifest(path)


def rows_for(path: str, manifests: dict[str, list[ManifestRow]]) -> list[ManifestRow]:
    """Give the manifest rows that name a file, from the manifests in its folder and the folders above."""
    rows: list[ManifestRow] = []
    file = Path(path)
    for folder in file.parents:
        for row in manifests.get(folder.as_posix(), []):
            if row.file in (file.name, file.relative_to(folder).as_posix()):
                rows.append(row)
    return rows
