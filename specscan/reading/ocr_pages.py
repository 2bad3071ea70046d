"""Which pages of a PDF are read from their pictures, and what is said of them."""

from __future__ import annotations

import math
import re
from dataclasses import replace
from itertools import islice

import pypdfium2 as pdfium

from specscan.reading.letters.sheet import Sheet
from specscan.reading.letters.spelling import build_words
from specscan.reading.ocr.agree import names_agreed, sizes_agreed
from specscan.reading.ocr.reader import Scan
from specscan.reading.ocr.rules import TextLayerRules
from specscan.reading.tables.compose import Hints
from specscan.records.errors import DocumentError
from specscan.records.text import PageState

WORD = re.compile(r"[^\W\d_]{2,}")
NAMED = 12  # pages that a message lists by number


def read_pictures(
    document: pdfium.PdfDocument, sheets: list[Sheet], states: list[PageState], hints: Hints
) -> dict[int, Scan]:
    """Read the pages that have no usable text layer; put what is read in place of their sheets and states.

    Without the ``ocr`` extra the states of pages that could be read name the command that installs it. A page without
    text that does not look printed (a photograph, or light print on dark) is tried too, and left as it is where no
    words are found on it. So is a page whose text holds next to no word that brochures use, for letters may be
    mapped to wrong ones; it is taken from the picture only where that says more.
    """
    scans: dict[int, Scan] = {}
    reader = hints.ocr
    if reader is None:
        return scans
    available = reader.available
    for index, (sheet, state) in enumerate(zip(sheets, states, strict=True)):
        tried = state.usable and not sheet.letters and bool(sheet.pictures or sheet.fills or sheet.crowded)
        foreign = state.usable and available and _says_nothing(sheet, hints, reader.rules.text_layer)
        if sheet.width <= 0 or not (tried or foreign or not state.usable):
            continue
        if not available:
            if not state.usable:
                states[index] = replace(state, why=f"{state.why}; to read it: {reader.command}")
            continue
        if len(scans) >= reader.rules.picture.most_pages:
            if not state.usable:
                states[index] = replace(state, why=f"{state.why}; only {len(scans)} such pages are read")
            continue
        try:
            scan = reader.read(document, sheet)
        except DocumentError as error:
            states[index] = replace(state, why=f"{state.why}; {error}" if state.why else state.why)
            continue
        if foreign and _says_nothing(scan.sheet, hints, reader.rules.text_layer):
            continue  # its words are those of another language, or names
        if scan.sheet.letters and scan.sure >= reader.rules.picture.readable_from:
            scans[sheet.number] = scan
            sheets[index] = scan.sheet
            states[index] = replace(state, usable=True, why="")
        elif not state.usable:
            states[index] = replace(state, why=f"{state.why}; too little on it can be recognised")
    read = [scan for _, scan in sorted(scans.items())]
    names_agreed([(scan.sheet, scan.printed.glyphs, scan.printed.words) for scan in read], hints.knows_word)
    sizes_agreed([scan.sheet for scan in read])
    return scans


def _says_nothing(sheet: Sheet, hints: Hints, rules: TextLayerRules) -> bool:
    """Tell whether a page holds many words and hardly one that brochures use."""
    # the letters as they come cost little; where no spaces stand among them, words are parted by their distances
    for text in (lambda: sheet.letters.text, lambda: " ".join(w.text for w in build_words(sheet.letters))):
        words = WORD.findall(text())
        enough = math.ceil(max(1.0, rules.known_share * len(words)))
        if sum(1 for _ in islice(filter(hints.knows_word, words), enough)) == enough:
            return False
    return len(words) >= rules.words_from


def say(scans: dict[int, Scan]) -> str:
    """Give what a user should know of pages read from their pictures."""
    numbers = [str(number) for number in sorted(scans)]
    listed = ", ".join(numbers[:NAMED]) + (" …" if len(numbers) > NAMED else "")
    text = f"page{'s' if len(numbers) > 1 else ''} {listed} read by optical character recognition"
    doubts = sum(len(scan.doubts) for scan in scans.values())
    if doubts:
        text += f" ({doubts} figure{'s' if doubts > 1 else ''} not read with certainty)"
    return text
