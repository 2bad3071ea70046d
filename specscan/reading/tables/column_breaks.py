"""Ranges of lines that can be tables → ranges whose rows have the same columns."""

from __future__ import annotations

import itertools
from collections import Counter

from specscan.reading.letters.words import Line
from specscan.reading.tables.gutters import Parted, columns_of, em_of, touched_by
from specscan.reading.tables.marks import Marks
from specscan.reading.tables.widening import Columns

WIDE = 1.1  # em: the gap between two tables, at least
MERGED_SHARE = 0.3  # of the rows of a table: those in which two segments fall into one column
MIN_HEADS = 4  # with the corner
FLUSH = 0.2  # em, from where a head begins to where the cells below it do
SECTION_SIZE = 1.1  # times the size of the heads or rows: the title of a further table
ALIGNED = 0.3  # em, between the edges or middles of cells of one column
HEADED_SHARE = 0.5  # of the rows below: those with a cell flush with the head


def part_by_columns(kept: list[Parted], first: int, last: int, marks: Marks) -> list[tuple[int, int]]:
    """Cut a range at a wide gap below which other columns begin, as where a list or another table follows.

    ``kept`` are lines with their segments, ``first`` and ``last`` the range. Of several such gaps that one counts
    above and below which the rows respect their own columns best.
    """
    em = em_of([line for line, _ in kept[first:last]])
    whole = columns_of([s for _, s in kept[first:last] if len(s) > 1])
    best: tuple[float, float, int] | None = None
    for index in range(first + 2, last - 1):
        gap = kept[index][0].box.top - kept[index - 1][0].box.bottom
        if gap < WIDE * em or marks.share_rows(kept[index - 1][0], kept[index][0]):
            continue
        upper = [s for _, s in kept[first:index] if len(s) > 1]
        lower = [s for _, s in kept[index:last] if len(s) > 1]
        if len(upper) < 2 or len(lower) < 2 or _heads_all(upper[0], lower):
            continue
        if _merged(upper, whole) <= MERGED_SHARE and _merged(lower, whole) <= MERGED_SHARE:
            continue
        loss = _merged(upper, columns_of(upper)) * len(upper) + _merged(lower, columns_of(lower)) * len(lower)
        if best is None or (loss, -gap) < best[:2]:
            best = (loss, -gap, index)
    if best is None:
        return [(first, last)]
    return [*part_by_columns(kept, first, best[2], marks), *part_by_columns(kept, best[2], last, marks)]


def titled_apart(kept: list[Parted], first: int, last: int) -> list[int]:
    """Give the lines right below a larger bold title, from which on no cell stands as those above the title do."""
    places = [n for n in range(first + 1, last) if _is_title(kept[n], kept[n - 1][0])]
    found = []
    for title, end in itertools.pairwise([*places, last]):
        upper = [s for _, s in kept[first:title] if len(s) > 1 and not all(part.bold for part in s)]  # no heads
        lower = [s for _, s in kept[title + 1 : end] if len(s) > 1 and not all(part.bold for part in s)]
        if min(len(upper), len(lower)) < 2 or kept[title][0].size < SECTION_SIZE * em_of([s[0] for s in lower]):
            continue
        if not _edges(upper) & _edges(lower):
            found.append(title + 1)
            first = title + 1
    return found


def _is_title(parted: Parted, above: Line) -> bool:
    line, segments = parted
    return len(segments) == 1 and line.bold and line.size >= SECTION_SIZE * above.size


def _edges(rows: list[list[Line]]) -> set[tuple[str, int]]:
    """Give where cells behind the labels of two rows or more begin, end or have their middles, in steps of a letter."""
    found: Counter[tuple[str, int]] = Counter()
    for row in rows:
        step = ALIGNED * row[0].size
        places = {(kind, round(x / step) + more) for cell in row[1:] for kind, x in _marked(cell) for more in (0, 1)}
        found.update(places)
    return {edge for edge, times in found.items() if times > 1}


def _marked(cell: Line) -> tuple[tuple[str, float], ...]:
    return ("left", cell.box.x0), ("right", cell.box.x1), ("middle", cell.box.middle[0])


def _heads_all(heads: list[Line], rows: list[list[Line]]) -> bool:
    """Tell whether each head stands where most rows below begin a cell: a value for all, printed half way between
    the columns, can part the rows, and they have one head all the same."""
    if len(heads) < MIN_HEADS:
        return False
    begins = [[part.box.x0 for part in row] for row in rows]
    flush = [sum(any(abs(x - head.box.x0) < FLUSH * head.size for x in row) for row in begins) for head in heads]
    return min(flush) > HEADED_SHARE * len(rows)


def _merged(rows: list[list[Line]], columns: Columns) -> float:
    """Give the share of rows in which two segments fall into one of the columns."""
    if len(columns) < 2:
        return 1.0
    hits = 0
    for row in rows:
        places = [place for segment in row if len(place := touched_by(segment.box, columns)) == 1]
        hits += len(places) != len({place[0] for place in places})
    return hits / len(rows)
