"""Tables typed into plain text: cells parted by tabs, and heads of columns with a rule of dashes under them."""

from __future__ import annotations

import itertools
import re

RULE = re.compile(r"^\s*[=\-~_]{3,}(?:\s+[=\-~_]{2,})*\s*$")
PART = re.compile(r"[^ \t]+(?: [^ \t]+)*")  # a space that does not break parts no cells: "16\u00a0000 BTU/h"
LONGEST_LABEL = 60
WORD = re.compile(r"[^\W\d_]{2}")
INITIALS = re.compile(r"[^\W\d_](?: ?[x×/·] ?[^\W\d_])+")  # "L x W x H"
INDENT = 4  # characters before the heads of a table whose corner is empty
LOOK_AHEAD = 12
FULL_SHARE = 0.5  # of the rows below: so many have a value under each head


def tabbed_rows(lines: list[str], start: int) -> list[list[str]] | None:
    """Give the rows of a table whose cells are parted by single tabs, from line ``start`` on, or ``None``.

    A line without tabs between two rows is the heading of a group. A first line that begins with a tab is a head.
    Rows of two cells are labels with their values.
    """
    head = _cells(lines[start])
    if len(head) == 2 and _is_pair(head):
        end = start + 1
        while end < len(lines) and _is_pair(_cells(lines[end])):
            end += 1
        return [_cells(line) for line in lines[start:end]]
    if len(head) < 3 or not all(head[1:]):
        return None
    rows, taken = [head], 1
    for at in range(start + 1, len(lines)):
        cells = _cells(lines[at])
        if _fits(cells, head):
            rows.append(cells)
            taken = len(rows)
        elif len(cells) == 1 and len(rows) == taken:
            rows.append(cells)  # a heading, if a row follows
        else:
            break
    return rows[:taken] if sum(len(row) > 1 for row in rows[:taken]) >= 2 else None


def _is_pair(cells: list[str]) -> bool:
    """Tell whether the cells are a label and its value; the sign or number of an item in a list is no label."""
    if len(cells) != 2 or not all(cells) or len(cells[0]) > LONGEST_LABEL:
        return False
    return bool(WORD.search(cells[0]) or INITIALS.fullmatch(cells[0]))


def _cells(line: str) -> list[str]:
    return [cell.strip() for cell in line.rstrip().split("\t")]


def _fits(cells: list[str], head: list[str]) -> bool:
    if not cells[0] or len(cells) < 2 or not cells[-1]:
        return False
    return len(cells) == len(head) or (not head[0] and len(cells) < len(head) and all(cells))


def heads_columns(line: str, below: list[str]) -> bool:
    """Tell whether a line over a rule holds heads of columns: parts of the lines ``below`` stand under its parts."""
    parts = [match.span() for match in PART.finditer(line.expandtabs())]
    here = list(itertools.takewhile(lambda row: not RULE.match(row), below[:LOOK_AHEAD]))
    rows = [[match.span() for match in PART.finditer(row.expandtabs())] for row in here if row.strip()]
    rows = [row for row in rows if len(row) > 1]  # a part alone names a group of rows
    # What is indented can head the first column of values, or that of labels, with groups of rows on its left.
    indented = bool(parts) and parts[0][0] >= INDENT
    return (indented and _stand_over(parts, rows)) or _stand_over(parts[1:], rows)


def _stand_over(heads: list[tuple[int, int]], rows: list[list[tuple[int, int]]]) -> bool:
    """Tell whether most rows have a part under each head, and one before these."""
    full = [row for row in rows if len(row) == len(heads) + 1]
    if len(heads) < 2 or len(full) < max(2, FULL_SHARE * len(rows)):
        return False
    reach = [(min(row[n][0] for row in full), max(row[n][1] for row in full)) for n in range(1, len(heads) + 1)]
    apart = all(left[1] <= right[0] for left, right in zip(reach, reach[1:], strict=False))
    return apart and all(a < y and x < b for (a, b), (x, y) in zip(heads, reach, strict=True))
