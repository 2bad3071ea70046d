"""One door to all readers: a file's bytes to a document of passages, by kind of file."""

from __future__ import annotations

import hashlib

from specscan.reading.compose import Hints
from specscan.reading.html_page import read_html
from specscan.reading.pdf import read_pdf
from specscan.reading.plain import read_text
from specscan.records.errors import DocumentError
from specscan.records.text import Document

READERS = {"pdf": read_pdf, "text": read_text, "html": read_html}


def read_document(data: bytes, name: str, kind: str | None, hints: Hints) -> Document:
    """Give the passages of one file.

    ``data`` is the file's content, ``name`` its name, ``kind`` one of ``READERS`` (``None``: not known), ``hints``
    what the word files know of labels.

    Raises:
        DocumentError: the file is empty, of a kind without a reader, without text, or refused by its reader; named.
    """
    reader = READERS.get(kind or "")
    if reader is None:
        raise DocumentError(f"{name}: no reader for this kind of file")
    if not data:
        raise DocumentError(f"{name}: the file is empty (0 bytes)")
    try:
        document = reader(data, name, hashlib.sha256(data).hexdigest(), hints)
    except DocumentError as error:
        raise DocumentError(f"{name}: {error}") from error
    if not document.passages and not document.unread_pages:
        raise DocumentError(f"{name}: there is no text in it")
    return document
