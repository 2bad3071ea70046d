"""One door to all readers: a file's bytes to a document of passages, by kind of file."""

from __future__ import annotations

import hashlib
from dataclasses import replace

from specscan.reading.apart_signs import with_apart_signs
from specscan.reading.clause_numbers import without_clause_numbers
from specscan.reading.pdf import read_pdf
from specscan.reading.section_letters import without_section_letters
from specscan.reading.tables.compose import Hints
from specscan.reading.text.plain import read_text
from specscan.reading.web.page import read_html
from specscan.records.errors import DocumentError
from specscan.records.text import Document

LIMIT_CHARACTERS = 6_000  # of one passage: a longer one is no sentence of a brochure
LIMIT_PASSAGES = 60_000
LIMIT_TITLE = 200

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
        raise DocumentError("; ".join([f"{name}: there is no text in it", *filter(None, [document.message])]))
    document = replace(document, passages=with_apart_signs(document.passages))
    return _bounded(without_section_letters(without_clause_numbers(document)))


def _bounded(document: Document) -> Document:
    """Cut what no brochure holds: passages of endless length, passages without end; the message says so."""
    titles = tuple(replace(title, text=title.text[:LIMIT_TITLE]) for title in document.titles)
    document = replace(document, titles=titles)
    said = [document.message] if document.message else []
    passages = list(document.passages[:LIMIT_PASSAGES])
    if len(passages) < len(document.passages):
        said.append(f"only the first {LIMIT_PASSAGES} pieces of text were read")
    for index, passage in enumerate(passages):
        if len(passage.text) > LIMIT_CHARACTERS:
            passages[index] = replace(passage, text=passage.text[:LIMIT_CHARACTERS])
            said.append(f"a piece of text of {len(passage.text)} characters was cut")
    if len(said) == bool(document.message):
        return document
    return replace(document, passages=tuple(passages), message="; ".join(dict.fromkeys(said[:4])))
