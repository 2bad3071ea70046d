"""Which files a scan is about."""

from __future__ import annotations

import os
import stat
from collections.abc import Sequence
from dataclasses import dataclass, field
from fnmatch import fnmatch
from pathlib import Path

from specscan.reading.archive import ArchiveLimits, is_archive, list_archive, named_inside, read_content
from specscan.records.errors import DocumentError, NotFoundError
from specscan.records.shown import visible
from specscan.rulebook.book import Rulebook
from specscan.settling.manifest import LIMIT_BYTES, NAME, ManifestRow, parse_manifest, read_manifest

LEADS_OUT = "it is a link that leads out of the folder: name the file itself to have it read"
NOT_ORDINARY = "it is no ordinary file but a device, a pipe or a broken link"
NO_TEXT_NAME = "its name is not UTF-8: rename it to have it read"
CLUTTER = "__MACOSX"  # folder in archives, with what one system keeps about the files


@dataclass(slots=True)
class Gathered:
    """The files of a scan (absolute path → kind, ``None`` where no reader takes it) and what lay beside them.

    ``refused`` are those of ``files`` that are not even opened, with why. ``roots`` are the folders and archives that
    were looked through: a file under one of them that is gone is forgotten. ``aside`` counts files of other kinds in
    those folders; ``notes`` say what could not be looked into.
    """

    files: dict[str, str | None] = field(default_factory=dict)
    refused: dict[str, str] = field(default_factory=dict)
    roots: list[str] = field(default_factory=list)
    manifests: dict[str, list[ManifestRow]] = field(default_factory=dict)
    aside: int = 0
    notes: list[str] = field(default_factory=list)


def kind_of(path: Path, book: Rulebook) -> str | None:
    """Give the kind of document that a file's name says it is, ``None`` where no reader takes it."""
    ending = path.suffix.casefold()
    return next((kind for kind, endings in book.general.document_endings.items() if ending in endings), None)


def is_set_aside(name: str, book: Rulebook) -> bool:
    """Tell whether the rules name files so called as no documents, as a readme."""
    return any(fnmatch(name.casefold(), pattern) for pattern in book.general.not_documents)


def gather(paths: Sequence[Path], book: Rulebook, limits: ArchiveLimits) -> Gathered:
    """Give the documents under files, folders (with their sub-folders) and archives, in order of path.

    Hidden files and folders, files that the rules name as no documents (a readme) and files of other kinds are left
    out of a folder; a file named by itself is always taken. A ``manifest.csv`` in a folder is read. Links are not
    followed out of a folder.

    Raises:
        NotFoundError: there is no such file or folder.
        RuleError: a manifest is wrong; with file and line.
    """
    found = Gathered()
    looker = _Looker(book, limits, found)
    for path in paths:
        if path.is_dir():
            found.roots.append(path.resolve().as_posix())
            looker.folder(path.resolve())
        elif path.is_file():
            looker.named(path.resolve())
        elif os.path.lexists(path):
            raise NotFoundError(f"{path}: {NOT_ORDINARY}")
        else:
            raise NotFoundError(f"{path}: no such file or folder")
    found.files = dict(sorted(found.files.items()))
    return found


class _Looker:
    def __init__(self, book: Rulebook, limits: ArchiveLimits, found: Gathered):
        self.book, self.limits, self.found = book, limits, found

    def folder(self, root: Path) -> None:
        """Take the documents of a folder and its sub-folders."""
        for folder, folders, names in os.walk(root, followlinks=False, onerror=self._closed):
            folders[:] = sorted(name for name in folders if not name.startswith("."))
            for name in folders:
                path = Path(folder) / name
                if path.is_symlink() and not _within(path, root):
                    self.found.notes.append(f"not looked into: {visible(str(path))}: it is a link out of the folder")
            self._manifest(Path(folder))
            for name in sorted(names):
                if not name.startswith(".") and self._is_document(name):
                    self._take(Path(folder) / name, root)

    def named(self, path: Path) -> None:
        """Take a file that was named by itself."""
        self._manifest(path.parent)
        if is_archive(path):
            self.found.roots.append(path.as_posix())
            self._archive(path)
        else:
            self._add(path.as_posix(), kind_of(path, self.book))

    def _is_document(self, name: str) -> bool:
        """Tell whether a name is one of a document or archive; those of other kinds are counted."""
        if is_set_aside(name, self.book):
            return False
        if kind_of(Path(name), self.book) is None and not is_archive(Path(name)):
            self.found.aside += 1
            return False
        return True

    def _take(self, path: Path, root: Path) -> None:
        why = _why_not(path, root)
        if why is None:
            return
        if why:
            self._add(path.as_posix(), kind_of(path, self.book), why)
        elif is_archive(path):
            self._archive(path)
        else:
            self._add(path.as_posix(), kind_of(path, self.book))

    def _archive(self, path: Path) -> None:
        """Take the documents of an archive as if it were a folder."""
        whole = path.as_posix()
        try:
            listing = list_archive(path, self.limits)
        except DocumentError as error:
            self._add(whole, "archive", str(error))
            return
        for name, why in [*((name, "") for name in listing.names), *listing.refused.items()]:
            last = name.rsplit("/", 1)[-1]
            if name.startswith(f"{CLUTTER}/") or any(
                part.startswith(".") and part.strip(".") for part in name.split("/")
            ):
                continue
            if last == NAME and not why:
                self._manifest_inside(whole, name)
            if self._is_document(last):
                self._add(named_inside(whole, name), kind_of(Path(last), self.book), why)

    def _add(self, path: str, kind: str | None, why: str = "") -> None:
        try:
            path.encode()
        except UnicodeEncodeError:  # a name in bytes that are no UTF-8 can be opened, but neither stored nor shown
            path, why = os.fsencode(path).decode("utf-8", "backslashreplace"), NO_TEXT_NAME
        self.found.files[path] = kind
        if why:
            self.found.refused[path] = why

    def _manifest(self, folder: Path) -> None:
        path = folder / NAME
        if path.is_file() and folder.as_posix() not in self.found.manifests:
            self.found.manifests[folder.as_posix()] = read_manifest(path)

    def _manifest_inside(self, archive: str, name: str) -> None:
        path = f"{archive}/{name}"
        try:
            data = read_content(path, LIMIT_BYTES // 1_000_000)
        except DocumentError as error:
            self.found.notes.append(f"not read: {visible(path)}: {error}")
            return
        self.found.manifests[path.rpartition("/")[0]] = parse_manifest(Path(path), data)

    def _closed(self, error: OSError) -> None:
        self.found.notes.append(f"not looked into: {visible(str(error.filename))}: {error.strerror}")


def _within(path: Path, root: Path) -> bool:
    try:
        return path.resolve().is_relative_to(root)
    except (OSError, RuntimeError):  # links in a circle
        return False


def _why_not(path: Path, root: Path) -> str | None:
    """Give why a file in a folder is not opened, empty where it is, ``None`` where it is read by its own name."""
    try:
        ordinary = stat.S_ISREG(path.stat().st_mode)
    except OSError:
        ordinary = False
    if not ordinary:
        return NOT_ORDINARY
    if path.is_symlink():
        return None if _within(path, root) else LEADS_OUT
    return ""


def rows_for(path: str, manifests: dict[str, list[ManifestRow]]) -> list[ManifestRow]:
    """Give the manifest rows that name a file, from the manifests in its folder and the folders above."""
    rows: list[ManifestRow] = []
    file = Path(path)
    for folder in file.parents:
        for row in manifests.get(folder.as_posix(), []):
            if row.file in (file.name, file.relative_to(folder).as_posix()):
                rows.append(row)
    return rows
