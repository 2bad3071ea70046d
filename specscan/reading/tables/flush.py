"""Labels at the left edge of a column and values at its right edge, with no white strip between that all share."""

from __future__ import annotations

import itertools
from collections import Counter

from specscan.reading.letters.words import Line, segments_of
from specscan.reading.tables.grid import AmongLines, Grid, GridCell
from specscan.records.text import union

GAP = 0.8  # em between a label and its value
EDGE = 0.35  # em by which edges of one column may differ
MIN_PAIRS = 5
PAIR_SHARE = 0.6  # of the lines of such a list: those with a label and a value
STEP = 2.8  # em from one line of the list to the next, headings between them included
WRAP = 1.5  # em from a line to the one that goes on with it
FULL = 3.0  # em between label and value, at most, where one of them had to be broken
BROKEN = 8.0  # em from the end of a broken line to the edge, at most
MAX_HEADING = 60
WIDER = 1.8  # times the next space: what parts a label and a value that fill the column


def find_flush(lines: list[Line]) -> AmongLines | None:
    """Give the first list of labels and values that stand at the two edges of a column, or ``None``."""
    edges = _edges(lines)
    if edges is None:
        return None
    starts = [number for number, line in enumerate(lines) if _is_pair(line, *edges)]
    end = 0
    for start in starts:
        if start < end:
            continue
        rows = _members(lines[start:], *edges)
        end = start + sum(map(len, rows))
        pairs = sum(_is_pair(row[0], *edges) for row in rows)
        if pairs >= MIN_PAIRS and pairs >= PAIR_SHARE * len(rows):
            return AmongLines(lines[:start], _grid(rows, *edges), lines[end:])
    return None


def _members(lines: list[Line], left: float, right: float) -> list[list[Line]]:
    """Give the rows of a list that begins with the first line: pairs with what goes on with them, and headings.

    The last row is a pair: a heading below it belongs to what follows.
    """
    rows = [[lines[0]]]
    ends = 1
    for number, (above, line) in enumerate(itertools.pairwise(lines), start=2):
        if line.base - above.base > STEP * max(above.size, line.size):
            break
        if _goes_on(rows[-1], line, left, right):
            rows[-1].append(line)
            continue
        alone = len(_parts(line, left, right)) == 1 and len(line.text) <= MAX_HEADING
        pair = _is_pair(line, left, right) or (
            _is_near(line.box.x0, left, line) and _are_halves(line, lines[number] if number < len(lines) else line)
        )
        if not pair and not (alone and abs(line.box.x0 - left) <= line.size):
            break
        rows.append([line])
        ends = len(rows) if pair else ends
    return rows[:ends]


def _edges(lines: list[Line]) -> tuple[float, float] | None:
    """Give the left and right edge at which most lines of two parts begin and end; none where they are no such list.

    The values must begin at different places: where they do not, a column of values is found by its white strip.
    """
    rows = [(line, parts) for line in lines if len(parts := segments_of(line, GAP)) == 2]
    if len(rows) < MIN_PAIRS:
        return None
    left = Counter(round(line.box.x0) for line, _ in rows).most_common(1)[0][0]
    right = Counter(round(line.box.x1) for line, _ in rows).most_common(1)[0][0]
    kept = [p for line, p in rows if _is_near(line.box.x0, left, line) and _is_near(line.box.x1, right, line)]
    if len(kept) < MIN_PAIRS or len(kept) < PAIR_SHARE * len(rows):
        return None
    begun = Counter(round(parts[1].box.x0) for parts in kept).most_common(1)[0][1]
    return (left, right) if begun <= 0.5 * len(kept) else None


def _is_pair(line: Line, left: float, right: float) -> bool:
    parts = _parts(line, left, right)
    if len(parts) != 2 or not _is_near(line.box.x0, left, line):
        return False
    return _is_near(line.box.x1, right, line) or _is_full(parts) and right - line.box.x1 < BROKEN * line.size


def _parts(line: Line, left: float, right: float) -> list[Line]:
    """Give label and value of a line, or all of it; one that fills the column is parted at a space wider than all."""
    parts = segments_of(line, GAP)
    if len(parts) != 1 or not (_is_near(line.box.x0, left, line) and _is_near(line.box.x1, right, line)):
        return parts
    spaces = [(after.box.x0 - word.box.x1, at) for at, (word, after) in enumerate(itertools.pairwise(line.words), 1)]
    widest = sorted(spaces, reverse=True)
    if len(widest) < 2 or widest[0][0] < WIDER * widest[1][0]:
        return parts
    at = widest[0][1]
    return [Line(list(line.words[:at])), Line(list(line.words[at:]))]


def _is_near(x: float, edge: float, line: Line) -> bool:
    return abs(x - edge) <= max(1.0, EDGE * line.size)


def _is_full(parts: list[Line]) -> bool:
    """Tell whether a label and its value are so near that one of them had to be broken."""
    return parts[1].box.x0 - parts[0].box.x1 <= FULL * parts[0].size


def _are_halves(above: Line, line: Line) -> bool:
    """Tell whether label and value both go on in the next line, which has them at the same places."""
    upper, lower = segments_of(above, GAP), segments_of(line, GAP)
    near = 0 < line.base - above.base <= WRAP * line.size and above.bold == line.bold
    return (
        near
        and len(upper) == len(lower) == 2
        and all(_is_near(two.box.x0, one.box.x0, line) for one, two in zip(upper, lower, strict=True))
        and upper[1].box.x1 - lower[1].box.x1 > max(1.0, EDGE * line.size)  # two rows would end at one place
    )


def _goes_on(row: list[Line], line: Line, left: float, right: float) -> bool:
    """Tell whether a line goes on with the label or the value of a row whose first line was full."""
    if _are_halves(row[-1], line):
        return True
    parts = _parts(row[0], left, right)
    near = line.base - row[-1].base <= WRAP * line.size and row[0].bold == line.bold
    if not near or not _is_pair(row[0], left, right) or not _is_full(parts):
        return False
    return line.text[:1].islower() or line.box.x0 > left + line.size


def _grid(rows: list[list[Line]], left: float, right: float) -> Grid:
    cells: list[GridCell] = []
    for number, members in enumerate(rows):
        parts = _parts(members[0], left, right)
        own = [GridCell(number, col, [part]) for col, part in enumerate(parts)]
        for line in members[1:]:
            for part in segments_of(line, GAP):
                at_edge = abs(part.box.x0 - left) <= part.size and part.box.x1 < right - part.size
                own[0 if at_edge else 1].lines.append(part)
        cells += own
    box = union([line.box for members in rows for line in members])
    assert box is not None
    return Grid(cells, len(rows), 2, box, "leaders")
