"""Tables whose cells bars part, copied with lines that have none: heads run together, groups, cells that were broken.

"Technical data Drift 58 Drift 64 X" stands over "Fresh tank | 80 l | 110 l". Where nothing tells which cell a broken
line goes on with, the table ends.
"""

from __future__ import annotations

import re

from specscan.records.years import MODEL_YEAR

MIN_ROWS = 3
MOST_CELLS = 7
GROUP_WORDS = 5
CODE = re.compile(r"\d[\w.-]*|[A-Z]{1,3}\d[\w.-]*")
YEAR = re.compile(MODEL_YEAR)
OPEN_END = re.compile(r"[,–—/&(-]$")
BULLET = re.compile(r"\W")


def barred_rows(lines: list[str], start: int) -> tuple[list[list[str]], int] | None:
    """Give the rows of such a table from the line of its heads on, and the line behind it, or ``None``.

    A table all of whose lines have bars is none of them, unless its heads have none.
    """
    size = next((len(_cells(line)) for line in lines[start + 1 : start + 4] if _is_row(line)), 0)
    if not 3 <= size <= MOST_CELLS or any(not line.strip() for line in lines[start : start + 2]):
        return None
    head = _cells(lines[start]) if "|" in lines[start] else _heads(lines[start], size - 1)
    if head is None or len(head) != size or not all(head[1:]):
        return None
    rows, end, mended, full = [head], start + 1, "|" not in lines[start], 0
    while end < len(lines) and (taken := _next(lines, end, size, rows)) is not None:
        row, end, joined = taken
        mended |= joined or len(row) == 1
        full += len(row) == size
        if row:
            rows.append(row)
    while len(rows[-1]) == 1:
        rows.pop()  # the heading of what follows
        end -= 1
    return (rows, end) if mended and full >= MIN_ROWS else None


def _heads(line: str, count: int) -> list[str] | None:
    """Part heads that ran together, where all begin with the same word, or each with the figure of its code.

    A head has no words in small letters: "For the Drift 58 and the Drift 64" holds none.
    """
    words = line.split()
    again = [[n for n, word in enumerate(words) if word == first] for first in dict.fromkeys(words) if first.isalpha()]
    coded = [n for n, word in enumerate(words) if CODE.fullmatch(word) and not YEAR.fullmatch(word)]
    for at in [*again, coded]:
        if len(at) != count or at is coded and at[0] == 0:
            continue
        ends = [*at[1:], len(words)]
        heads = [words[a:b] for a, b in zip(at, ends, strict=True)]
        named = all(len(head) > 1 or at is coded for head in heads)
        if named and not any(word[:1].islower() for head in heads for word in head):
            return [" ".join(words[: at[0]]), *(" ".join(head) for head in heads)]
    return None


def _next(lines: list[str], at: int, size: int, rows: list[list[str]]) -> tuple[list[str], int, bool] | None:
    """Give the next row, the line behind it and whether it was broken; of a line that goes on with the last row, none.

    The heading of a group is a row of one cell.
    """
    line = lines[at].strip()
    below = lines[at + 1].strip() if at + 1 < len(lines) else ""
    if not line:
        return None
    if "|" in line:
        cells = _cells(line)
        if len(cells) == size and all(cells):
            return cells, at + 1, False
        whole = _cells(f"{line} {below}" if line.endswith("|") else "")
        if len(cells) < size and len(whole) == size and all(whole):
            return whole, at + 2, True  # broken behind a bar
        return None
    if len(rows[-1]) == size and len(rows) > 1 and (cell := _broken(rows[-1], line)) is not None:
        rows[-1][cell] = f"{rows[-1][cell]} {line}"
        return [], at + 1, True
    group = line[:1].isupper() and len(line.split()) <= GROUP_WORDS and line[-1] not in ".,;:!?"
    return ([line], at + 1, False) if group and "|" in below else None


def _broken(row: list[str], line: str) -> int | None:
    """Give the cell of a row with which a line goes on: the one that breaks off, or the last before small letters."""
    open_ended = [n for n, cell in enumerate(row) if n and OPEN_END.search(cell) and len(cell) > 1]
    if len(open_ended) == 1 and not BULLET.match(line):
        return open_ended[0]
    return len(row) - 1 if not open_ended and line[:1].islower() and not line.endswith((".", "!", "?")) else None


def _cells(line: str) -> list[str]:
    return [cell.strip() for cell in line.split("|")]


def _is_row(line: str) -> bool:
    return "|" in line and all(_cells(line))
