"""Tables whose columns lost their places when they were pasted: the same two blanks stand between all cells."""

from __future__ import annotations

import re
from collections import Counter

from specscan.reading.tables.compose import Hints
from specscan.reading.text.fallen_cells import KNOWN_SHARE, MIN_ROWS, Pasted, heads_group

MIN_CELLS = 3  # label and two values: of fewer, the line reads well as it stands
MIN_PLACES = 3  # at which second cells begin; where they stand below each other, columns are read by their places
GAP = re.compile(r"(?<=\S)\s{2,}(?=\S)")
WIDEST = 4  # blanks
FIGURES = re.compile(r"\d+")


def find_spaced(lines: list[str], hints: Hints) -> Pasted | None:
    """Give the first table whose cells are parted by as many blanks everywhere, or ``None``.

    Its head has a cell for each value; where the next page repeats it, with blanks or without, the table goes on.
    """
    cells = [_cells(line) for line in lines]
    often = Counter(FIGURES.sub("#", _bare(line)) for line in lines)
    for start, head in enumerate(cells):
        if len(head) >= MIN_CELLS - 1 and not hints.is_label(head[0]):
            found = _read_on(lines, cells, start, often, hints)
            if found is not None:
                return found
    return None


def _cells(line: str) -> list[str]:
    """Give the cells of a line; none where the blanks between them are not as many everywhere."""
    text = line.strip()
    wide = {len(gap) for gap in GAP.findall(text)}
    return GAP.split(text) if len(wide) <= 1 and max(wide, default=2) <= WIDEST and text else []


def _bare(line: str) -> str:
    return " ".join(line.split())


def _runs(text: str, often: Counter[str]) -> bool:
    """Tell whether a line is one that runs at the head or foot of pages: "Drift 2026, page 4 of 6"."""
    return len(GAP.findall(text)) == 0 and often[FIGURES.sub("#", _bare(text))] > 1 and " " in text


def _read_on(lines: list[str], cells: list[list[str]], start: int, often: Counter[str], hints: Hints) -> Pasted | None:
    """Give the table whose head is a line, or ``None``; ``often`` says how often lines come, whatever their figures."""
    head = cells[start]
    size = len(head) + 1
    if len(set(head)) < len(head):
        return None
    again = _bare(lines[start])
    rows, waiting = [["", *head]], list[list[str]]()
    end, count, known = start + 1, 0, 0
    places: set[int] = set()
    for number in range(start + 1, len(lines)):
        row, text = cells[number], lines[number].strip()
        if len(row) == size:
            rows += [*waiting, row]
            waiting.clear()
            end, count, known = number + 1, count + 1, known + hints.is_label(row[0])
            places.add(len(row[0]))
        elif len(row) == 1 and heads_group(text):
            waiting.append([text, *[""] * (size - 1)])
        elif text and _bare(text) != again and not _runs(text, often) and not hints.is_page_foot(text):
            if not (1 < len(row) < size and hints.is_label(row[0])):
                break  # of a row that lacks a cell nobody can tell whose the others are: it is left out
    right = count >= MIN_ROWS and known >= KNOWN_SHARE * count and len(places) >= MIN_PLACES
    return Pasted(start, end, rows, headed=True) if right else None
