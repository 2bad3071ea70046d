"""Values set in the middle of the columns that they are true of, as merged cells print them without rules."""

from __future__ import annotations

import itertools

from specscan.reading.tables.grid import GridCell, by_row
from specscan.reading.tables.widening import Columns, middle, steady_places

LEAST_COLUMNS = 3  # of values: two are told apart by ``widen_between``
MIN_FULL = 3  # rows with a value in each column, heads included
NEAR = 0.1  # of the way from one column to the next: by which a middle may miss its place

Tiling = list[tuple[int, int]]  # the first and the last column of each value of a row


def widen_centred(cells: list[GridCell], columns: Columns) -> None:
    """Let values span the columns in whose middle they stand, where those of a row leave no column empty.

    A lone value in the very middle may be that of the middle column alone: it spans all only where no row of the table
    leaves a column empty.
    """
    middles = _middles(cells, columns)
    if not middles:
        return
    reach = NEAR * min(right - left for left, right in itertools.pairwise(middles))
    tiled: list[tuple[list[GridCell], Tiling]] = []
    gaps = False
    for row in by_row(cells).values():
        values = _values(row)
        if not values or len(values) == len(middles):
            continue
        found = _tilings([middle(cell) for cell in values], middles, reach, 0)
        if len(found) == 1:
            tiled.append((values, found[0]))
        else:
            gaps = True
    for values, tiling in tiled:
        alone = len(values) == 1 and any(abs(middle(values[0]) - place) <= reach for place in middles)
        if alone and gaps:
            continue
        for cell, (first, last) in zip(values, tiling, strict=True):
            cell.col, cell.col_span = first + 1, last - first + 1


def _middles(cells: list[GridCell], columns: Columns) -> list[float]:
    """Give where the values of each column are centred, nothing where they are not."""
    count = len(columns) - 1
    full = [values for row in by_row(cells).values() if len(values := _values(row)) == count]
    if count < LEAST_COLUMNS or len(full) < MIN_FULL:
        return []
    return steady_places([[middle(row[place]) for row in full] for place in range(count)])


def _values(row: list[GridCell]) -> list[GridCell]:
    """Give the cells of a row that hold values, from left to right."""
    return sorted((cell for cell in row if cell.col > 0 and cell.box is not None), key=middle)


def _tilings(places: list[float], middles: list[float], reach: float, first: int) -> list[Tiling]:
    """Give the ways in which values at ``places`` can span all columns from ``first`` on, each set in its middle."""
    if not places:
        return [[]] if first == len(middles) else []
    found: list[Tiling] = []
    for last in range(first, len(middles)):
        if abs((middles[first] + middles[last]) / 2 - places[0]) <= reach:
            found += [[(first, last), *rest] for rest in _tilings(places[1:], middles, reach, last + 1)]
    return found
