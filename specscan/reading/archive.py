"""Archives (ZIP: PKWARE APPNOTE 6.3) read as if they were folders: nothing is ever written to the disk.

A document inside has the path ``brochures.zip/tarn/tarn.pdf``. What an archive says of itself is not believed: how many
entries it has, how large they are and how far they are packed is bounded before and while they are unpacked.
"""

from __future__ import annotations

import atexit
import os
import stat
import struct
import zipfile
import zlib
from collections import Counter
from dataclasses import dataclass, field
from pathlib import Path, PurePosixPath
from typing import IO

from specscan.records.errors import DocumentError
from specscan.records.files import TooLarge, open_ordinary, read_ordinary

ENDING = ".zip"
END_RECORD = b"PK\x05\x06"
END_SIZE = 22
LONGEST_COMMENT = 0xFFFF
BYTES_PER_ENTRY = 1_000  # of an archive's list; names are far shorter
PACKED_WAYS = {zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED}
RATIO_FROM = 1_000_000  # bytes; what is smaller may be packed as far as it likes
ERRORS = (
    zipfile.BadZipFile,
    zlib.error,
    struct.error,
    EOFError,
    OSError,
    ValueError,
    NotImplementedError,
    RuntimeError,
)


@dataclass(frozen=True, slots=True)
class ArchiveLimits:
    """Bounds on archives: entries, megabytes of all and of one when unpacked, and how many times packed."""

    files: int
    unpacked_mb: int
    file_mb: int
    ratio: int


@dataclass(slots=True)
class Listing:
    """The files of an archive by their names in it, and those that are not read, with why."""

    names: list[str] = field(default_factory=list)
    refused: dict[str, str] = field(default_factory=dict)


def is_archive(path: Path) -> bool:
    """Tell whether a file's name says that it is an archive."""
    return path.suffix.casefold() == ENDING


def list_archive(path: Path, limits: ArchiveLimits) -> Listing:
    """Give what an archive holds.

    Raises:
        DocumentError: it is damaged, or asks for more than the limits allow; nothing of it is read then.
    """
    try:
        entries = [entry for entry in _opened(str(path), _stamp(path), limits.files).infolist() if not entry.is_dir()]
    except ERRORS as error:
        raise DocumentError(f"the archive cannot be read ({error})") from error
    if len(entries) > limits.files:
        raise DocumentError(f"the archive holds more than {limits.files} files")
    if sum(entry.file_size for entry in entries) > limits.unpacked_mb * 1_000_000:
        raise DocumentError(f"the archive holds more than {limits.unpacked_mb} MB when unpacked")
    order = sorted(entries, key=lambda entry: entry.header_offset)
    if any(
        one.header_offset + one.compress_size > two.header_offset for one, two in zip(order, order[1:], strict=False)
    ):
        raise DocumentError("the archive is made to deceive: its files lie over each other")
    found = Listing()
    often = Counter(entry.filename for entry in entries)
    for entry in entries:
        why = "its name stands twice in the archive" if often[entry.filename] > 1 else _why_not(entry, limits)
        if why:
            found.refused[entry.filename] = why
        else:
            found.names.append(entry.filename)
    return found


def _why_not(entry: zipfile.ZipInfo, limits: ArchiveLimits) -> str:
    if not _stays_inside(entry.filename):
        return "its name leads out of the archive"
    if stat.S_ISLNK(entry.external_attr >> 16):
        return "it is a link"
    if entry.flag_bits & 1:
        return "it is encrypted and asks for a password"
    if entry.compress_type not in PACKED_WAYS:
        return "it is packed in a way that is not read here (only deflated and stored files are)"
    if entry.file_size > limits.file_mb * 1_000_000:
        return f"the file is larger than {limits.file_mb} MB"
    if entry.file_size > RATIO_FROM and entry.file_size > limits.ratio * max(1, entry.compress_size):
        return f"it is packed more than {limits.ratio} times"
    if is_archive(Path(entry.filename)):
        return "an archive inside an archive is not read: unpack it"
    return ""


def _stays_inside(name: str) -> bool:
    parts = name.split("/")
    return not any(part in ("", ".", "..") for part in parts) and "\\" not in name and ":" not in parts[0]


def named_inside(archive: str, name: str) -> str:
    """Give the path by which a file in an archive is known; a name that leads out of it is shown, never followed."""
    if _stays_inside(name):
        return f"{archive}/{name}"
    shown = "/".join(part.replace(".", "%2E") if part.strip(".") == "" else part for part in name.split("/"))
    return f"{archive}/{shown.lstrip('/') or '%2F'}"


def parted(path: str) -> tuple[str, str] | None:
    """Give the archive and the name in it that a path stands for; ``None`` for a path of an ordinary file."""
    for folder in PurePosixPath(path).parents:
        if is_archive(Path(folder)) and Path(folder).is_file():
            return str(folder), path[len(str(folder)) + 1 :]
    return None


def is_there(path: str) -> bool:
    """Tell whether a path stands for a file that exists, in an archive or not."""
    if Path(path).is_file():
        return True
    inside = parted(path)
    if inside is None:
        return False
    try:
        _opened(inside[0], _stamp(Path(inside[0]))).getinfo(inside[1])
    except (KeyError, *ERRORS):
        return False
    return True


def read_content(path: str, limit_mb: int) -> bytes:
    """Give the content of a file, in an archive or not.

    Raises:
        DocumentError: it cannot be read, is no ordinary file, or is larger than ``limit_mb`` megabytes.
    """
    inside = None if os.path.lexists(path) else parted(path)
    if inside is not None:
        return _read_inside(*inside, limit_mb)
    try:
        return read_ordinary(path, limit_mb * 1_000_000, follow=False)
    except TooLarge as error:
        raise DocumentError(f"the file is larger than {limit_mb} MB") from error
    except OSError as error:
        raise DocumentError(f"the file cannot be opened ({error.strerror})") from error


def _read_inside(archive: str, name: str, limit_mb: int) -> bytes:
    limit = limit_mb * 1_000_000
    try:
        with _opened(archive, _stamp(Path(archive))).open(name) as file:
            data = file.read(limit + 1)
    except KeyError as error:
        raise DocumentError("the file is no longer in the archive") from error
    except ERRORS as error:
        raise DocumentError(f"the file cannot be unpacked ({error})") from error
    if len(data) > limit:
        raise DocumentError(f"the file is larger than {limit_mb} MB")
    return data


def _stamp(path: Path) -> tuple[int, int, int]:
    about = path.stat()
    return about.st_ino, about.st_size, about.st_mtime_ns


class _Shelf:
    """Archives that are open: the last few that were asked for; the others are closed."""

    MOST = 2

    def __init__(self) -> None:
        self.held: dict[tuple[str, tuple[int, int, int], int], tuple[zipfile.ZipFile, IO[bytes]]] = {}
        atexit.register(self.close)

    def get(self, path: str, stamp: tuple[int, int, int], most: int) -> zipfile.ZipFile:
        """Give an archive, opened once while it does not change; see ``_open``."""
        key = (path, stamp, most)
        if key not in self.held:
            while len(self.held) >= self.MOST:
                self._close(next(iter(self.held)))
            self.held[key] = _open(path, stamp, most)
        return self.held[key][0]

    def close(self) -> None:
        """Close all of them."""
        for key in list(self.held):
            self._close(key)

    def _close(self, key: tuple[str, tuple[int, int, int], int]) -> None:
        archive, file = self.held.pop(key)
        archive.close()
        file.close()  # which an archive leaves to whoever opened it


_shelf = _Shelf()


def _opened(path: str, stamp: tuple[int, int, int], most: int = 100_000) -> zipfile.ZipFile:
    """Give an open archive, once opened while it does not change (``stamp``)."""
    return _shelf.get(path, stamp, most)


def _open(path: str, stamp: tuple[int, int, int], most: int) -> tuple[zipfile.ZipFile, IO[bytes]]:
    """Open an archive and give it with its file; its list is measured before it is parsed."""
    file = open_ordinary(path)
    try:
        start = max(0, stamp[1] - END_SIZE - LONGEST_COMMENT)
        file.seek(start)
        tail = file.read(END_SIZE + LONGEST_COMMENT)
        place = tail.rfind(END_RECORD)
        if place < 0 or len(tail) - place < END_SIZE:
            raise zipfile.BadZipFile("it has no list of its files")
        entries, size = struct.unpack("<HI", tail[place + 10 : place + 16])
        if entries == 0xFFFF or size == 0xFFFFFFFF or tail[max(0, place - 20) : place].startswith(b"PK\x06\x07"):
            raise zipfile.BadZipFile("the form for archives beyond 4 GB or 65,535 files is not read")
        if entries > most or size > BYTES_PER_ENTRY * most:
            raise zipfile.BadZipFile(f"it lists more than {most} files")
        return zipfile.ZipFile(file), file
    except BaseException:
        file.close()
        raise
