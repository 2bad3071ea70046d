"""Tables pasted column by column without blank lines: all labels, then each van and its values below one another."""

from __future__ import annotations

import itertools

from specscan.reading.tables.compose import Hints
from specscan.reading.text.fallen_cells import Pasted

MIN_ROWS = 5
MIN_COLUMNS, MAX_COLUMNS = 2, 6
LABEL_SHARE = 0.7  # of the lines above the first van
MOST_LABELS = 0.34  # of the values
ALIKE_SHARE = 0.7  # of the rows, those in which all values have a figure, or none has
CELL_LETTERS = 60


def find_close_columns(lines: list[str], hints: Hints) -> Pasted | None:
    """Give the first such table, or ``None``.

    It ends where its lines do, below a title or other short lines. Each row has a value for each van: the vans have
    names of the same beginning, or with a figure each, and what stands in a row is alike.
    """
    end = 0
    while end < len(lines):
        start = end
        while start < len(lines) and not lines[start].strip():
            start += 1
        end = start
        while end < len(lines) and lines[end].strip():
            end += 1
        found = _in_block([line.strip() for line in lines[start:end]], hints)
        if found is not None:
            first, rows = found
            return Pasted(start + first, end, rows, True)
    return None


def _in_block(block: list[str], hints: Hints) -> tuple[int, list[list[str]]] | None:
    """Give where a table begins in lines without blank ones, and its rows."""
    if len(block) < MIN_ROWS + MIN_COLUMNS * (MIN_ROWS + 1) or any(len(line) > CELL_LETTERS for line in block):
        return None
    known = [hints.is_label(line) and not any(map(str.isdigit, line)) for line in block]
    labels = [0, *itertools.accumulate(known)]  # above each line
    for count in range(MIN_COLUMNS, MAX_COLUMNS + 1):
        for size in range((len(block) - count) // (count + 1), MIN_ROWS - 1, -1):
            first = len(block) - count * (size + 1) - size
            if first > size:
                break
            if not known[first] or labels[first + size] - labels[first] < LABEL_SHARE * size:
                continue
            begins = [first + size + place * (size + 1) for place in range(count)]
            columns = [block[begin : begin + size + 1] for begin in begins]
            if _are_columns(columns, [known[begin : begin + size + 1] for begin in begins]):
                rows = [[block[first + row], *(column[row + 1] for column in columns)] for row in range(size)]
                return first, [["", *(column[0] for column in columns)], *rows]
    return None


def _are_columns(columns: list[list[str]], known: list[list[bool]]) -> bool:
    """Tell whether lists can be columns, each below the name of its van."""
    heads = [column[0] for column in columns]
    figures = all(any(map(str.isdigit, head)) for head in heads)
    named = len({*heads}) == len(heads) and (figures or len({head.split()[0] for head in heads}) == 1)
    values = sum(sum(one[1:]) for one in known) <= MOST_LABELS * sum(len(one) - 1 for one in known)
    rows = list(zip(*(column[1:] for column in columns), strict=True))
    alike = sum(len({any(map(str.isdigit, value)) for value in row}) == 1 for row in rows)
    return named and not any(one[0] for one in known) and values and alike >= ALIKE_SHARE * len(rows)
