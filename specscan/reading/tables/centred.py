"""Values set in the middle of the columns that they are true of, as merged cells print them without rules."""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence

from specscan.reading.tables.grid import GridCell, by_row
from specscan.reading.tables.widening import Columns, middle, steady_places

LEAST_COLUMNS = 3  # of values: two are told apart by ``widen_between``
MIN_FULL = 3  # rows with a value in each column, heads included
NEAR = 0.1  # of the way from one column to the next: by which a middle may miss its place
MOST_OPEN = 4  # such steps by which an edge may be open for a middle to be told from it

Edge = tuple[float, float]  # where an edge lies at least and at most
Tiling = list[tuple[int, int]]  # the first and the last column of each value of a row


def widen_centred(cells: list[GridCell], columns: Columns) -> None:
    """Let values span the columns in whose middle they stand, where those of a row leave no column empty.

    A lone value in the very middle may be that of the middle column alone: it spans all only where no row of the table
    leaves a column empty.
    """
    rows = _full_rows(cells, columns)
    by_column = list(zip(*map(_values, rows), strict=True))
    middles = steady_places([[middle(cell) for cell in column] for column in by_column]) if rows else []
    if not middles:
        return
    labels = [cell.box.x1 for row in rows for cell in row if cell.col == 0 and cell.box is not None]
    edges = _edges(max(labels, default=-math.inf), by_column, middles)
    reach = NEAR * min(right - left for left, right in itertools.pairwise(middles))
    tiled: list[tuple[list[GridCell], Tiling]] = []
    gaps = False
    for row in by_row(cells).values():
        values = _values(row)
        if not values or len(values) == len(middles):
            continue
        found = _tilings([middle(cell) for cell in values], middles, edges, reach, 0)
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


def _full_rows(cells: list[GridCell], columns: Columns) -> list[list[GridCell]]:
    """Give the rows with a value in each column, none where they are too few, or the columns, to tell middles from."""
    count = len(columns) - 1
    full = [row for row in by_row(cells).values() if len(_values(row)) == count]
    return full if count >= LEAST_COLUMNS and len(full) >= MIN_FULL else []


def _values(row: list[GridCell]) -> list[GridCell]:
    """Give the cells of a row that hold values, from left to right."""
    return sorted((cell for cell in row if cell.col > 0 and cell.box is not None), key=middle)


def _edges(labels: float, by_column: Sequence[Sequence[GridCell]], middles: list[float]) -> list[Edge]:
    """Give between which bounds the left edge of each column lies, as its values and those before it leave them.

    ``labels`` is where the labels end. In columns without gaps between them both edges are as far from the middle: what
    is known of one edge is of all.
    """
    boxes = [[cell.box for cell in column if cell.box is not None] for column in by_column]
    rights = [labels, *(max(box.x1 for box in column) for column in boxes)]
    lefts = [min(box.x0 for box in column) for column in boxes]
    found = list(zip(rights, lefts, strict=False))
    for order in (range(1, len(found)), range(len(found) - 2, -1, -1)):
        for place in order:
            near = place - 1 if order.step > 0 else place + 1
            twice = 2 * middles[min(near, place)]
            low, high = found[near]
            found[place] = max(found[place][0], twice - high), min(found[place][1], twice - low)
    return found


def _tilings(places: list[float], middles: list[float], edges: list[Edge], reach: float, first: int) -> list[Tiling]:
    """Give the ways in which values at ``places`` can span all columns from ``first`` on, each set in its middle."""
    if not places:
        return [[]] if first == len(middles) else []
    found: list[Tiling] = []
    for last in range(first, len(middles)):
        if _is_centred(places[0], middles[first : last + 1], edges[first], reach):
            found += [[(first, last), *rest] for rest in _tilings(places[1:], middles, edges, reach, last + 1)]
    return found


def _is_centred(place: float, middles: list[float], edge: Edge, reach: float) -> bool:
    """Tell whether a value stands in the middle of columns with these middles, whose left edge is known so far.

    Columns of one width have theirs half-way between the outer two. Where widths differ, and columns lie side by side
    without gaps, the middle of an odd number of columns is the first less the second plus the third, and so on,
    whatever their edges are; that of an even number is as far from the left edge as the sum of these differences.
    """
    if abs((middles[0] + middles[-1]) / 2 - place) <= reach:
        return True
    along = sum(one if number % 2 == 0 else -one for number, one in enumerate(middles))
    if len(middles) % 2:
        return abs(along - place) <= reach
    low, high = edge[0] - along, edge[1] - along
    return high - low <= MOST_OPEN * reach and low - reach <= place <= high + reach
