"""What a reading process answers, as text, and the row under which a dataset keeps it.

Nothing here reads documents: who only asks for them need not load what does.
"""

from __future__ import annotations

import hashlib
from dataclasses import dataclass, replace

from pydantic import TypeAdapter

from specscan.records.documents import DocumentRecord, ReadDocument
from specscan.records.facts import DocumentFacts, VanName
from specscan.records.text import Status

NOTHING = DocumentFacts((), (), "")


@dataclass(frozen=True, slots=True)
class Outline:
    """What is asked of a document's findings again and again: the names of its vans, and a digest of all findings."""

    vans: tuple[VanName, ...]
    language: str
    digest: str


records_as_json: TypeAdapter[DocumentRecord] = TypeAdapter(DocumentRecord)
findings_as_json: TypeAdapter[DocumentFacts] = TypeAdapter(DocumentFacts)
outlines_as_json: TypeAdapter[Outline] = TypeAdapter(Outline)


def doc_id(sha256: str) -> str:
    """Give the identity of a document: the beginning of its content's digest."""
    return sha256[:12]


def unreadable(
    path: str, sha256: str, kind: str | None, message: str, pages: int | None = None, unread: tuple[int, ...] = ()
) -> ReadDocument:
    """Give the record of a file that could not be read, with why."""
    name = path.rsplit("/", 1)[-1]
    record = DocumentRecord(
        doc_id(sha256), path, sha256, kind or "other", "", pages, Status.UNREADABLE.value,
        message.removeprefix(f"{name}: "), "", unread,
    )  # fmt: skip
    return ReadDocument(record, NOTHING)


def kept_row(path: str, sha256: str, made_by: str, result: ReadDocument) -> tuple[str, ...]:
    """Give the row under which a dataset keeps what was found in a file; see ``Dataset.keep``.

    ``path`` is the one by which the scan knows the file, ``sha256`` its digest where the record has none.
    """
    sha256 = result.record.sha256 or sha256
    record = replace(result.record, path=path, sha256=sha256, doc_id=doc_id(sha256))
    found = findings_as_json.dump_json(result.found)
    outline = outlines_as_json.dump_json(
        Outline(result.found.vans, result.found.language, hashlib.sha256(found).hexdigest())
    )
    return path, sha256, made_by, records_as_json.dump_json(record).decode(), outline.decode(), found.decode()
