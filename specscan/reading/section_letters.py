"""Letters of sections: "A. Drift 540", "B. Drift 600 Snow", or "I." and "II.", are headings without them.

They count only where each is the first or goes on from the one before, so that initials of persons and codes do not.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from specscan.reading.renamed import title_called, under_names
from specscan.records.text import Document, Kind, Passage

LETTERED = re.compile(r"(?:\(([A-Z])\)|([A-Z]|I{2,3}|IV|VI{0,3})[.)])\s+(?=[A-ZÀ-Þ\d])")
ROMAN = ("I", "II", "III", "IV", "V", "VI", "VII", "VIII")
LEAST = 2


def without_section_letters(document: Document) -> Document:
    """Give a document without the letters that count its headings; one that has none as it is."""
    headings = [passage for passage in document.passages if passage.kind is Kind.HEADING and passage.row is None]
    told = [(match.group(1) or match.group(2), p) for p in headings if (match := LETTERED.match(p.text))]
    marks = [mark for mark, _ in told]
    roman = marks[:2] == ["I", "II"]
    order = ROMAN if roman else tuple("ABCDEFGHIJKLMNOPQRSTUVWXYZ")
    if len(set(marks)) < LEAST or not _go_on(marks, order):
        return document
    names = {passage.text: LETTERED.sub("", passage.text, count=1) for _, passage in told}
    passages = tuple(_bare(passage, names) for passage in document.passages)
    titles = tuple(title_called(title, names) for title in document.titles)
    return replace(document, passages=passages, titles=titles)


def _go_on(marks: Sequence[str], order: Sequence[str]) -> bool:
    """Tell whether each mark is the first of an order or follows the one before: A, B, A, B, C."""
    places = [order.index(mark) if mark in order else -1 for mark in marks]
    goes_on = (place in (0, before + 1) for before, place in zip([-1, *places], places, strict=False))
    return -1 not in places and all(goes_on)


def _bare(passage: Passage, names: dict[str, str]) -> Passage:
    passage = under_names(passage, names)
    if passage.kind is Kind.HEADING and passage.text in names:
        return passage.part(len(passage.text) - len(names[passage.text]))
    return passage
