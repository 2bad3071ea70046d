"""Tables that fell apart when they were pasted: all labels first, then the values of each van."""

from __future__ import annotations

import re

from specscan.reading.tables.compose import Hints
from specscan.reading.text.close_columns import find_close_columns
from specscan.reading.text.close_rows import find_close_rows
from specscan.reading.text.fallen_cells import Pasted, find_fallen
from specscan.reading.text.spaced_cells import find_spaced

MIN_ROWS = 5
LABEL_SHARE = 0.6
VALUED_SHARE = 0.5  # of the lines, those with a figure: more hold their values already
LED = re.compile(r"(?:\.\s?){3,}\s*\S|(?:_|…){2,}\s*\S")  # dots that lead from a label to its value


def find_pasted(lines: list[str], hints: Hints) -> Pasted | None:
    """Give the first table that was pasted column by column, cell by cell or line by line, or ``None``."""
    found = _by_columns(lines, hints) or find_spaced(lines, hints)
    found = found or find_close_columns(lines, hints) or find_close_rows(lines, hints)
    return found or find_fallen(lines, hints)


def _groups(lines: list[str]) -> list[tuple[int, int]]:
    groups: list[tuple[int, int]] = []
    start: int | None = None
    for index, line in enumerate([*lines, ""]):
        if line.strip():
            if start is None:
                start = index
        elif start is not None:
            groups.append((start, index))
            start = None
    return groups


def _is_label_list(lines: list[str], hints: Hints) -> bool:
    if len(lines) < MIN_ROWS or any(len(line.split()) > 8 or "   " in line.strip() for line in lines):
        return False
    if sum(any(map(str.isdigit, line)) for line in lines) > VALUED_SHARE * len(lines):
        return False  # "Fresh water tank 90 l" is no label
    return sum(hints.is_label(line.strip()) for line in lines) >= LABEL_SHARE * len(lines)


def _by_columns(lines: list[str], hints: Hints) -> Pasted | None:
    groups = _groups(lines)
    for place, (start, end) in enumerate(groups):
        labels = [line.strip() for line in lines[start:end]]
        if not _is_label_list(labels, hints) or any(_valued(label) for label in labels):
            continue
        columns: list[list[str]] = []
        last = end
        extra: int | None = None
        for begin, stop in groups[place + 1 :]:
            values = [line.strip() for line in lines[begin:stop]]
            surplus = len(values) - len(labels)
            if surplus not in (0, 1) or (extra is not None and surplus != extra):
                break
            extra = surplus
            columns.append(values)
            last = stop
        if not columns:
            continue
        headed = extra == 1
        head = ["", *(column[0] for column in columns)] if headed else []
        body = [
            [label, *(column[row + (1 if headed else 0)] for column in columns)] for row, label in enumerate(labels)
        ]
        return Pasted(start, last, [head, *body] if headed else body, headed)
    return None


def _valued(label: str) -> bool:
    """Tell whether a line already holds a label and its value."""
    return LED.search(label) is not None or ":" in label[:-1] and any(letter.isdigit() for letter in label)
