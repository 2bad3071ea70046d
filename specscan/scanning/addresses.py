"""Files that are named by an address (``s3://…``, ``https://…``, ``file://…``) and reached through fsspec."""

from __future__ import annotations

from pathlib import Path, PurePosixPath
from typing import Any

from specscan.records.errors import DocumentError, NotFoundError, SpecscanError
from specscan.rulebook.book import Rulebook
from specscan.scanning.files import is_set_aside, kind_of

COMMAND = "pip install 'specscan[cluster]'"
SIGN = "://"


def is_address(text: str) -> bool:
    """Tell whether a text names a file or folder by an address and not by a path."""
    return SIGN in text


def opened(address: str) -> tuple[Any, str]:
    """Give the file system of an address and the place in it.

    Raises:
        SpecscanError: fsspec, or what it needs for such an address, is not installed.
    """
    try:
        from fsspec.core import url_to_fs
    except ImportError as error:
        raise SpecscanError(f"files at addresses need the cluster extra: {COMMAND}") from error
    try:
        return url_to_fs(address)
    except (ImportError, ValueError) as error:
        raise SpecscanError(f"{address}: {error}") from error


def documents_at(address: str, book: Rulebook) -> dict[str, str | None]:
    """Give the documents at an address, a folder with all below it or one file, by their addresses, with their kinds.

    Raises:
        NotFoundError: there is nothing.
        SpecscanError: the address cannot be reached from here.
    """
    system, place = opened(address)
    try:
        names = sorted(system.find(place))
    except OSError as error:
        raise NotFoundError(f"{address}: cannot be looked through ({error})") from error
    if not names:
        raise NotFoundError(f"{address}: no such file or folder")
    found: dict[str, str | None] = {}
    for name in names:
        path = PurePosixPath(name)
        kind = kind_of(Path(name), book)
        hidden = any(part.startswith(".") for part in PurePosixPath(name[len(place) :]).parts)
        if kind is not None and not is_set_aside(path.name, book) and not hidden:
            found[system.unstrip_protocol(name)] = kind
    return found


def fetch(address: str, folder: Path, limit_mb: int) -> Path:
    """Copy the file at an address into a folder, under its own name.

    Raises:
        DocumentError: it cannot be fetched, or is larger than ``limit_mb`` megabytes.
    """
    system, place = opened(address)
    target = folder / PurePosixPath(place).name
    try:
        if (system.size(place) or 0) > limit_mb * 1_000_000:
            raise DocumentError(f"the file is larger than {limit_mb} MB")
        system.get_file(place, str(target))
    except OSError as error:
        raise DocumentError(f"the file cannot be fetched ({error})") from error
    return target
