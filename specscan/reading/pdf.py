"""The PDF reader: bytes → a document of passages."""

from __future__ import annotations

import math
from collections import Counter
from dataclasses import replace
from functools import partial

import numpy as np
import pypdfium2 as pdfium

from specscan.reading.active import named_active
from specscan.reading.layout.assemble import Assembler
from specscan.reading.layout.flow import body_size
from specscan.reading.layout.interest import may_hold_table
from specscan.reading.layout.page import read_regions
from specscan.reading.letters.glyphs import PasswordNeeded, metadata, open_pdf, read_sheets, render_gray
from specscan.reading.letters.second_opinion import read_sheets_slowly
from specscan.reading.letters.sheet import Letters, Numbers, Sheet, told
from specscan.reading.letters.sign_runs import with_joined_signs
from specscan.reading.letters.spelling import build_words, drawn_signs
from specscan.reading.letters.words import Line, Word, build_lines, middle_of, segments_of
from specscan.reading.ocr.reader import Scan
from specscan.reading.ocr_pages import read_pictures, say
from specscan.reading.running import page_numbers, running_lines, runs
from specscan.reading.tables.compose import Hints, clean_sign, signs_of
from specscan.reading.tables.grid import Grid
from specscan.records.errors import DocumentError
from specscan.records.text import Box, Document, PageState, Title

PALE = 232  # a text colour all of whose channels are above this may be white on white
CONTRAST = 18  # grey levels between ink and ground below which nobody reads a word
ROOM = 2.0  # points around pale text that are drawn with it
GARBAGE_SHARE = 0.25
TITLES_PER_PAGE = 6
COLUMNS_APART = 4.0  # em between words: titles side by side
LIMIT_PAGES = 400


def read_pdf(data: bytes, path: str, sha256: str, hints: Hints) -> Document:
    """Read a PDF.

    Raises:
        DocumentError: nothing of the file can be read; the message says why.
    """
    try:
        document = open_pdf(data)
    except DocumentError as refusal:
        if isinstance(refusal, PasswordNeeded):
            raise
        return _with_message(_read_refused(data, str(refusal), path, sha256, hints), named_active(data))
    try:
        if len(document) == 0:
            raise DocumentError("the PDF has no pages")
        sheets, spelled = [], Spelled()

        def needs_drawing(sheet: Sheet) -> bool:
            _drop_unseen(document, sheet)
            return not sheet.letters or _garbled(sheet) or may_hold_table(spelled.lines(sheet), hints)

        for sheet in read_sheets(document, needs_drawing):
            sheets.append(sheet)
            if len(sheets) >= LIMIT_PAGES:
                break
        states = [_state(document, sheet) for sheet in sheets]
        _try_again(data, sheets, states)
        scans = read_pictures(document, sheets, states, hints)
        info = metadata(document)
        total = len(document)
        active = named_active(data, document)
    finally:
        document.close()
    return _with_message(_assemble(sheets, states, info, total, path, sha256, hints, spelled, scans), active)


class Spelled:
    """The words and upright lines of the sheets of a document, built once as long as a sheet keeps its letters."""

    def __init__(self) -> None:
        self._words: dict[int, tuple[Letters, list[Word]]] = {}
        self._signed: dict[int, tuple[list[Word], int, list[Word]]] = {}  # without signs, number of dots, with signs
        self._lines: dict[int, tuple[list[Word], list[Line]]] = {}

    def words(self, sheet: Sheet) -> list[Word]:
        """Give the words of a sheet, with signs for the small shapes that are drawn like bullets and marks."""
        known = self._words.get(sheet.number)
        if known is None or known[0] is not sheet.letters:
            known = self._words[sheet.number] = sheet.letters, with_joined_signs(build_words(sheet.letters))
        if not sheet.dots:
            return known[1]
        signed = self._signed.get(sheet.number)
        if signed is None or signed[0] is not known[1] or signed[1] != len(sheet.dots):
            words = with_joined_signs([*known[1], *drawn_signs(sheet, known[1])])
            signed = self._signed[sheet.number] = known[1], len(sheet.dots), words
        return signed[2]

    def lines(self, sheet: Sheet) -> list[Line]:
        """Give the lines of upright words of a sheet."""
        words = self.words(sheet)
        known = self._lines.get(sheet.number)
        if known is None or known[0] is not words:
            known = self._lines[sheet.number] = words, build_lines([word for word in words if not word.direction])
        return known[1]


def _with_message(document: Document, said: str) -> Document:
    return replace(document, message="; ".join(part for part in (document.message, said) if part))


def _read_refused(data: bytes, refusal: str, path: str, sha256: str, hints: Hints) -> Document:
    """Read a file that pdfium refuses by the slow reader; give up where that finds no text either."""
    try:
        sheets = list(read_sheets_slowly(data))
    except DocumentError as error:
        raise DocumentError(f"{refusal}; {error}") from error
    if not any(sheet.letters for sheet in sheets):
        raise DocumentError(f"{refusal}; the slow reader finds no text in it")
    states = [
        PageState(sheet.number, sheet.width, sheet.height, usable, "" if usable else "no text can be read on it")
        for sheet in sheets
        for usable in [bool(sheet.letters) and not _garbled(sheet)]
    ]
    document = _assemble(sheets, states, {}, len(sheets), path, sha256, hints, Spelled())
    return replace(document, message=f"{refusal}; what is left of it was read by the slow reader")


def _try_again(data: bytes, sheets: list[Sheet], states: list[PageState]) -> None:
    """Read pages whose text came out as garbage by the slow reader, and keep what it reads better."""
    wanted = [
        state.number for state, sheet in zip(states, sheets, strict=True) if _garbled(sheet) and not sheet.crowded
    ]
    if not wanted:
        return
    try:
        for sheet in read_sheets_slowly(data, wanted):
            if sheet.letters and not _garbled(sheet):
                sheets[sheet.number - 1] = sheet
                states[sheet.number - 1] = PageState(sheet.number, sheet.width, sheet.height, True)
    except DocumentError:
        return


def _assemble(
    sheets: list[Sheet],
    states: list[PageState],
    info: dict[str, str],
    total: int,
    path: str,
    sha256: str,
    hints: Hints,
    spelled: Spelled,
    scans: dict[int, Scan] | None = None,
) -> Document:
    scans = scans or {}
    assembler = Assembler(hints)
    titles: list[Title] = []
    words = {sheet.number: spelled.words(sheet) for sheet in sheets}
    lines = {sheet.number: spelled.lines(sheet) for sheet in sheets}
    sizes = {number: body_size(some) for number, some in lines.items()}
    running = running_lines(sheets, lines, sizes)
    numbering = page_numbers(lines, total, hints)
    referred: frozenset[str] = frozenset()
    for sheet, state in zip(sheets, states, strict=True):
        if not state.usable or not sheet.letters:
            continue
        titles.extend(_titles(sheet, lines[sheet.number]))
        scan, first = scans.get(sheet.number), len(assembler.passages)
        assembler.source = "ocr" if scan is not None else "text"
        held = words[sheet.number]
        begun = _line_starts(lines[sheet.number])
        open_signs = frozenset(sign for sign in referred if begun.get(sign, 0) == 1)
        referred = signs_of(held) - begun.keys()
        own = lines[sheet.number]
        skip = partial(runs, sheet.height, running | numbering)
        for region in read_regions(sheet, held, own, sizes[sheet.number], hints, skip, open_signs):
            outer = list(assembler.stack)
            if region.box is not None:
                assembler.stack = assembler.above(sheet.number, region.box)
            assembler.begin_block(region.back, headed=region.headed)
            for block in region.blocks:
                if isinstance(block, Grid):
                    assembler.add_grid(sheet.number, block)
                else:
                    for item in block:
                        assembler.add_item(sheet.number, item)
            if region.inner:
                assembler.stack = outer
        if scan is not None:
            assembler.passages[first:] = [scan.placed(passage) for passage in assembler.passages[first:]]
    for text in sorted(running):
        titles.append(Title(text, 1, 0.0, "page"))
    if "Title" in info:
        titles.append(Title(info["Title"], 1, 0.0, "metadata"))
    messages = [say(scans)] if scans else []
    if total > len(sheets):
        messages.append(f"only the first {len(sheets)} of {total} pages were read")
    return Document(
        path=path,
        sha256=sha256,
        kind="pdf",
        passages=tuple(assembler.passages),
        titles=(*titles, *assembler.corners),
        pages=tuple(states),
        message="; ".join(messages),
        metadata=info,
    )


def _line_starts(lines: list[Line]) -> dict[str, int]:
    """Give how many lines begin with each word, in the form of the signs of notes."""
    return Counter(clean_sign(line.words[0].text) for line in lines if len(line.words) > 1)


def _state(document: pdfium.PdfDocument, sheet: Sheet) -> PageState:
    if sheet.width <= 0:
        return PageState(sheet.number, None, None, False, "the page is damaged")
    usable, why = True, ""
    if sheet.letters.solid.any():
        if _garbled(sheet):
            usable, why = False, "the text layer has no usable mapping to characters"
    elif _looks_printed(document, sheet):
        why = "the page is a picture without a text layer"
        if sheet.hidden_glyphs > 20:
            why = "the page is a picture; its text layer is invisible and does not count"
        usable = False
    return PageState(sheet.number, sheet.width, sheet.height, usable, why)


def _garbled(sheet: Sheet) -> bool:
    """Tell whether much of a page's text is no text: unmapped glyphs, control characters."""
    letters = sheet.letters
    garbage = letters.unmapped | told(letters.codes, _is_garbage)
    return int((garbage & letters.solid).sum()) > GARBAGE_SHARE * int(letters.solid.sum())


def _is_garbage(letter: str) -> bool:
    code = ord(letter)
    return code < 32 or 0x7F <= code < 0xA0 or code in (0xFFFD, 0xFFFE, 0xFFFF)


def _looks_printed(document: pdfium.PdfDocument, sheet: Sheet) -> bool:
    """Tell whether a page without text shows print: much light ground with some dark ink on it.

    A photograph that fills a page has few light pixels; a blank page has no ink.
    """
    if not sheet.pictures and not sheet.crowded and not sheet.fills and len(sheet.strokes) < 20:
        return sheet.hidden_glyphs > 20
    _, _, pixels, _ = render_gray(document, sheet.number, 0.5)
    counts = Counter(pixels)
    total = max(1, len(pixels))
    ground = sum(count for value, count in counts.items() if value >= 185) / total
    ink = sum(count for value, count in counts.items() if value <= 120) / total
    return ground >= 0.45 and ink >= 0.001


def _drop_unseen(document: pdfium.PdfDocument, sheet: Sheet) -> None:
    """Drop glyphs in a pale colour on a ground just as pale; only such pages are rendered."""
    letters = sheet.letters
    light = np.array([min(style.color) >= PALE for style in letters.styles], np.bool_)
    if not light.any():
        return
    pale = np.flatnonzero(light[letters.style] & ~letters.generated)
    if not len(pale):
        return
    part = _around(letters.boxes[pale], sheet)
    width, height, pixels, scale = render_gray(document, sheet.number, 1.0, part)
    left, high = math.ceil(scale * part.x0), math.ceil(scale * part.top)  # of the picture on the page, in pixels
    seen = np.ones(len(letters), np.bool_)
    for line in _clusters(letters, pale.tolist()):
        x0, top = (scale * letters.boxes[line, :2].min(axis=0)).tolist()
        x1, bottom = (scale * letters.boxes[line, 2:].max(axis=0)).tolist()
        values: list[int] = []
        for y in range(max(0, int(top) - high), min(height, int(bottom) + 1 - high)):
            row = y * width
            values.extend(pixels[row + max(0, int(x0) - left) : row + max(0, min(width, int(x1) + 1 - left))])
        if not values or max(values) - min(values) < CONTRAST:
            seen[line] = False
    if not seen.all():
        sheet.hidden_glyphs += int((~seen).sum())
        sheet.letters = letters.only(seen)


def _around(boxes: Numbers, sheet: Sheet) -> Box:
    """Give the part of a page that holds boxes, in whole points, with some room around."""
    x0, top = np.floor(boxes[:, :2].min(axis=0) - ROOM).clip(0).tolist()
    x1, bottom = np.ceil(boxes[:, 2:].max(axis=0) + ROOM).tolist()
    x0, top = min(x0, math.floor(sheet.width) - 1), min(top, math.floor(sheet.height) - 1)
    return Box(max(0, x0), max(0, top), max(x0 + 1, min(x1, sheet.width)), max(top + 1, min(bottom, sheet.height)))


def _clusters(letters: Letters, places: list[int]) -> list[list[int]]:
    """Group the places of letters that follow each other on one line."""
    base, start, size = letters.base.tolist(), letters.start.tolist(), letters.size.tolist()
    groups: list[list[int]] = []
    for place in places:
        last = groups[-1][-1] if groups else None
        if last is not None and abs(base[last] - base[place]) < 1 and 0 <= start[place] - start[last] < 3 * size[place]:
            groups[-1].append(place)
        else:
            groups.append([place])
    return groups


def _titles(sheet: Sheet, lines: list[Line]) -> list[Title]:
    """Give the most prominent lines of a page, largest first."""
    if not lines:
        return []
    usual = middle_of([line.size for line in lines])
    first = sheet.number == 1
    picked = [line for line in lines if first or line.size >= 1.2 * usual]
    picked = [part for line in picked for part in segments_of(line, COLUMNS_APART)]
    picked.sort(key=lambda line: -line.size)
    return [Title(line.text, sheet.number, line.size, "page") for line in picked[:TITLES_PER_PAGE]]
