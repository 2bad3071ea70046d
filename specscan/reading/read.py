"""One door to all readers: a file's bytes to a document of passages, by kind of file."""

from __future__ import annotations

from pathlib import PurePath

from specscan.reading.compose import Hints
from specscan.reading.html_page import read_html
from specscan.reading.pdf import read_pdf
from specscan.reading.plain import read_text
from specscan.records.errors import DocumentError
from specscan.records.text import Document

READERS = {
    ".pdf": read_pdf,
    ".txt": read_text,
    ".md": read_text,
    ".html": read_html,
    ".htm": read_html,
}


def is_document(path: PurePath) -> bool:
    """Tell whether a file's name says that one of the readers can take it."""
    return path.suffix.casefold() in READERS


def read_document(data: bytes, name: str, hints: Hints | None = None) -> Document:
    """Give the passages of one file.

    ``data`` is the file's content, ``name`` its name, whose ending chooses the reader.
    Raises ``DocumentError``, naming the file and why, where the file is empty, of an unknown
    kind, or refused by its reader.
    """
    reader = READERS.get(PurePath(name).suffix.casefold())
    if reader is None:
        raise DocumentError(f"{name}: no reader for this kind of file")
    if not data:
        raise DocumentError(f"{name}: the file is empty (0 bytes)")
    return reader(data, name, "", hints) if hints else reader(data, name, "")
