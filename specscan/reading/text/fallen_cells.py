"""Tables that fell apart cell by cell when they were copied: a label, the value of each van, the next label."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import dataclass
from typing import NamedTuple

from specscan.reading.letters.words import is_bullet
from specscan.reading.tables.compose import Hints

MIN_ROWS = 5
MOST_COLUMNS = 6  # of a row, its label counted
CELL_LETTERS = 60
HEAD_WORDS = 5
KNOWN_SHARE = 0.6  # of the rows that have a label known to the rules
MOST_LABELS = 0.25  # of the values; where more of them are labels, it is a list and no table
KNOWN, STRANGE, LABEL_AS_VALUE, HEAD, SKIPPED, SHORT = 1.0, -0.25, -0.6, -0.3, -0.3, -1.5  # common practice, no source
VALUED = re.compile(r"^\d|:.*\d|\d\s?\D{0,3}$")  # a line that is a value, or holds its label and its value
BROKEN_OFF = re.compile(r"[^\W\d]-$|,$")  # the end of a line that goes on in the next


@dataclass(slots=True)
class Pasted:
    """Lines ``start`` to ``end`` of a text as the rows of a table, whether a row of heads comes first."""

    start: int
    end: int
    rows: list[list[str]]
    headed: bool


class _Cell(NamedTuple):
    first: int  # lines of the text, from and to
    last: int
    text: str


class _Step(NamedTuple):
    """The best way to go on from a cell: the score from there on, the kind of the next part, and its size."""

    score: float
    kind: str = "end"
    size: int = 0


def find_fallen(lines: list[str], hints: Hints) -> Pasted | None:
    """Give the first table whose cells stand below each other in a text, or ``None``."""
    cells = _cells(lines, hints)
    if len(cells) < 2 * MIN_ROWS:
        return None
    known = [_is_label(cell.text, hints) for cell in cells]
    if sum(known) < MIN_ROWS:
        return None
    best: tuple[float, int, int] | None = None
    walks: dict[int, list[_Step]] = {}
    for size in range(2, MOST_COLUMNS + 1):
        walks[size] = _walk(cells, known, size, hints)
        for place, step in enumerate(walks[size]):
            if step.kind == "row" and known[place] and (best is None or step.score > best[0]):
                best = step.score, size, place
    return _fallen(cells, known, walks[best[1]], best[2], best[1]) if best is not None else None


def _cells(lines: list[str], hints: Hints) -> list[_Cell]:
    cells: list[_Cell] = []
    for number, line in enumerate(lines):
        text = line.strip()
        if not text:
            continue
        last = cells[-1] if cells else None
        if last is not None and last.last == number and BROKEN_OFF.search(last.text) and len(last.text) > 10:
            cells[-1] = _Cell(last.first, number + 1, _joined(last.text, text, hints))
        else:
            cells.append(_Cell(number, number + 1, text))
    return cells


def _joined(before: str, after: str, hints: Hints) -> str:
    """Give two lines as one; a word broken at the end of the first is made whole."""
    if not before.endswith("-"):
        return f"{before} {after}"
    kept = after[0].isupper() or hints.keeps_hyphen(before[:-1].split()[-1], after)
    return (before if kept else before[:-1]) + after


def _is_label(text: str, hints: Hints) -> bool:
    return _is_cell(text) and not VALUED.search(text) and hints.is_label(text)


def _is_cell(text: str) -> bool:
    return len(text) <= CELL_LETTERS and "   " not in text and not is_bullet(text.split()[0])


def _walk(cells: list[_Cell], known: list[bool], size: int, hints: Hints) -> list[_Step]:
    """Give for each cell the best way to read on from it: rows of ``size`` cells, heads of groups between them."""
    often = Counter(cell.text for cell in cells)
    steps = [_Step(0.0)] * (len(cells) + 1)
    for place in range(len(cells) - 1, -1, -1):
        options = [_Step(0.0)]
        row = cells[place : place + size]
        if len(row) == size and _is_row(row, known[place]):
            gain = KNOWN if known[place] else STRANGE
            gain += LABEL_AS_VALUE * sum(known[place + 1 : place + size])
            options.append(_Step(gain + steps[place + size].score, "row", size))
        ahead = steps[place + 1]
        if ahead.kind in ("row", "skip") and heads_group(cells[place].text):
            options.append(_Step(HEAD + ahead.score, "head", 1))
        text = cells[place].text
        if ahead.kind != "end" and (hints.is_page_foot(text) or often[text] > 1 and " " in text and not known[place]):
            options.append(_Step(SKIPPED + ahead.score, "skip", 1))
        for count in range(1, size):  # a row that lacks a cell: whose the others are nobody can tell
            beyond = steps[min(place + count, len(cells))]
            if known[place] and beyond.kind in ("row", "head") and _is_row(cells[place : place + count], True):
                options.append(_Step(SHORT + LABEL_AS_VALUE * (count < 2) + beyond.score, "skip", count))
        steps[place] = max(options)
    return steps


def _is_row(row: list[_Cell], known: bool) -> bool:
    """Tell whether cells can be a row: short ones, with the same gap between all of them."""
    gaps = {after.first - before.last for before, after in zip(row, row[1:], strict=False)}
    return (known or row[0].text[0].isupper()) and len(gaps) <= 1 and all(_is_cell(cell.text) for cell in row)


def heads_group(text: str) -> bool:
    """Tell whether a line can head a group of rows: few words, no figure, no sentence."""
    plain = _is_cell(text) and text[0].isupper() and text[-1] not in ".,;!?"
    return plain and len(text.split()) <= HEAD_WORDS and not any(letter.isdigit() for letter in text)


def _fallen(cells: list[_Cell], known: list[bool], steps: list[_Step], first: int, size: int) -> Pasted | None:
    rows: list[list[str]] = []
    place, found, all_rows, misplaced = first, 0, 0, 0
    while steps[place].kind != "end":
        step = steps[place]
        if step.kind == "row":
            rows.append([cell.text for cell in cells[place : place + size]])
            found += known[place]
            all_rows += 1
            misplaced += sum(known[place + 1 : place + size])
        elif step.kind == "head":
            rows.append([cells[place].text, *[""] * (size - 1)])
        place += step.size
    if found < max(MIN_ROWS, KNOWN_SHARE * all_rows) or misplaced > MOST_LABELS * all_rows * (size - 1):
        return None
    begin = first
    if begin and heads_group(cells[begin - 1].text) and (size == 2 or not _are_heads(cells, known, begin, size)):
        rows.insert(0, [cells[begin - 1].text, *[""] * (size - 1)])
        begin -= 1
    headed = size > 2 and _are_heads(cells, known, begin, size)
    if headed:
        begin -= size - 1
        rows.insert(0, ["", *[cell.text for cell in cells[begin : begin + size - 1]]])
    return Pasted(cells[begin].first, cells[place - 1].last, rows, headed)


def _are_heads(cells: list[_Cell], known: list[bool], before: int, size: int) -> bool:
    """Tell whether the cells before a place are the heads of the columns: short, all different, none a label."""
    heads = range(before - size + 1, before)
    if heads[0] < 0 or any(known[place] for place in heads):
        return False
    texts = [cells[place].text for place in heads]
    return len(set(texts)) == len(texts) and all(_is_cell(text) and text[-1] not in ".,;" for text in texts)
