"""Ranges of lines that can be tables → ranges whose rows have the same columns."""

from __future__ import annotations

from specscan.reading.letters.words import Line
from specscan.reading.tables.gutters import Parted, columns_of, em_of, touched_by
from specscan.reading.tables.marks import Marks
from specscan.reading.tables.widening import Columns

WIDE = 1.1  # em: the gap between two tables, at least
MERGED_SHARE = 0.3  # of the rows of a table: those in which two segments fall into one column
MIN_HEADS = 4  # with the corner
FLUSH = 0.2  # em, from where a head begins to where the cells below it do
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
