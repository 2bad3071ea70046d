"""One file, from bytes to a document's record and the statements found in it."""

from __future__ import annotations

import hashlib
import re
import time
from collections.abc import Callable

from specscan.finding.finder import Finder
from specscan.finding.language.units import Units
from specscan.finding.language.whole_words import any_word
from specscan.finding.marks.prices import has_price
from specscan.finding.table_rows import is_unit_head
from specscan.finding.value_starts import value_starts
from specscan.reading.ocr.reader import OcrReader
from specscan.reading.ocr.rules import load_ocr_rules
from specscan.reading.read import read_document
from specscan.reading.tables.compose import Hints
from specscan.records.documents import DocumentRecord, ReadDocument
from specscan.records.errors import DocumentError
from specscan.records.facts import DocumentFacts, VanName
from specscan.records.text import Document, Status
from specscan.rulebook.book import Rulebook
from specscan.scanning.answers import doc_id, unreadable

PDF_DATE = re.compile(r"D:(\d{4})(\d\d)?(\d\d)?")
MAX_REASONS = 3


class Examiner:
    """Reads documents and finds what they state, with one set of rules."""

    def __init__(self, book: Rulebook, begins_page: Callable[[], None] = lambda: None):
        """``begins_page`` is called before each page that is read from its picture, which takes seconds."""
        self.book = book
        self.finder = Finder(book)
        lexicons = [self.finder.kits.lexicon(language) for language in book.words]
        kept = {word.casefold() for words in book.words.values() for word in words.keeps_hyphen}
        spoken = {word for lexicon in lexicons for norms in lexicon.concepts for word in norms}
        spoken |= {word.casefold() for words in book.words.values() for word in words.detect}
        over = {
            word.casefold()
            for words in book.words.values()
            for word in (*words.column_words, *words.model_labels, *words.model_words, *words.title_fillers)
        }
        makers = {label.casefold() for words in book.words.values() for label in words.maker_labels}
        ranges = {word.casefold() for words in book.words.values() for word in words.range_words}
        codes = {word.casefold().strip(".") for words in book.words.values() for word in words.code_words}
        systems = {word.casefold() for words in book.words.values() for word in words.unit_systems}
        cues = [words.cues.get(cue, []) for words in book.words.values() for cue in ("all_vans", "two_vans")]
        everyone = {word.casefold() for words in cues for word in words}
        none = {word.casefold() for words in book.words.values() for word in words.cues.get("none", [])}
        ends = {closing for words in book.words.values() for closing in words.closings}
        articles = {word for words in book.words.values() for word in words.drop if len(word) > 1}
        units = Units(book.units)
        pages = any_word(word for words in book.words.values() for word in words.page_words)
        of = any_word(["/", *(word for words in book.words.values() for word in words.page_joints)])
        page_foot = re.compile(rf"\W*(?:{pages})?\s*\d{{1,3}}(?:\s*(?:{of})\s*\d{{1,3}})?\W*", re.IGNORECASE)
        self.hints = Hints(
            heads_codes=lambda text: text.casefold().strip(" :.#") in codes,
            is_unit_system=lambda text: text.casefold().strip(" :()") in systems,
            heads_units=lambda text: is_unit_head(text, book),
            is_price=has_price,
            is_unit=lambda text: units.named(text.strip(" ()")) is not None,
            heads_labels=lambda text: text.casefold().strip(" :") in over,
            names_maker=lambda text: text.casefold().strip(" :") in makers,
            names_range=lambda text: text.casefold().strip(" :") in ranges,
            is_label=lambda text: any(lexicon.knows_label(text) for lexicon in lexicons),
            names_thing=lambda text: any(lexicon.names_thing(text) for lexicon in lexicons),
            keeps_hyphen=lambda before, after: (
                before.casefold().rpartition("-")[2] in kept
                and f"{before}{after.rstrip('.,;:)')}".casefold() not in spoken  # "winter-" over "izing"
                or units.named(f"{before}-{after.rstrip('.,;:)')}") is not None  # "amp-hours"
            ),
            heads_list=lambda text: any(lexicon.heads_list(text) for lexicon in lexicons),
            knows_word=lambda word: word.casefold() in spoken,
            ends_letter=lambda text: text.casefold().strip(" ,.!") in ends,
            means_none=lambda text: text.casefold() in none,
            value_starts=lambda text, count: next(
                (starts for lexicon in lexicons if (starts := value_starts(text, count, lexicon))), []
            ),
            means_all=lambda text: text.casefold() in everyone,
            leaves_open=lambda text: text.rpartition(" ")[2].casefold() in articles,
            is_page_foot=lambda text: page_foot.fullmatch(text) is not None,
            ocr=OcrReader(load_ocr_rules(book.folder), begins_page),
        )

    def examine(self, path: str, data: bytes, kind: str | None, named: VanName | None = None) -> ReadDocument:
        """Give the record of a file and what was found in it; ``named`` is the van it is about, if the user says so.

        A file that cannot be read gives a record with status ``unreadable`` and the reason as its message.
        """
        name = path.rsplit("/", 1)[-1]
        began = time.process_time()
        try:
            document = read_document(data, name, kind, self.hints)
        except DocumentError as error:
            return unreadable(path, hashlib.sha256(data).hexdigest(), kind, str(error))
        sha256 = document.sha256
        unread = document.unread_pages
        if document.pages and len(unread) == len(document.pages):
            reason = "; ".join(dict.fromkeys(page.why for page in unread))
            return unreadable(path, sha256, kind, reason, len(document.pages), tuple(p.number for p in unread))
        read = time.process_time()
        found = self.finder.find(document, named)
        took = (round(read - began, 6), round(time.process_time() - read, 6))
        status, message = self._status(document, found)
        record = DocumentRecord(
            doc_id=doc_id(sha256),
            path=path,
            sha256=sha256,
            kind=document.kind,
            language=found.language,
            pages=len(document.pages) if document.kind == "pdf" else None,
            status=status.value,
            message=message,
            dated=_dated(document),
            unread=tuple(page.number for page in unread),
        )
        return ReadDocument(record, found, took)

    def _status(self, document: Document, found: DocumentFacts) -> tuple[Status, str]:
        messages = [document.message] if document.message else []
        unread = document.unread_pages
        for page in unread[:MAX_REASONS]:
            messages.append(f"page {page.number}: {page.why}")
        if len(unread) > MAX_REASONS:
            messages.append(f"and {len(unread) - MAX_REASONS} more pages without usable text")
        if found.message:
            messages.append(found.message)
        # what is left out, as a figure that was recognised without certainty, is said by the status too
        left_out = found.vans and found.message
        if unread or left_out or any(passage.doubts for passage in document.passages):
            return Status.PARTLY_READ, "; ".join(messages)
        return (Status.READ if found.vans else Status.NO_VAN_FOUND), "; ".join(messages)


def _dated(document: Document) -> str:
    """Give the date on which a PDF says it was made."""
    match = PDF_DATE.search(document.metadata.get("CreationDate", ""))
    return "-".join(part for part in match.groups() if part) if match else ""
