"""Values that stand in the middle of a row alone: they are true of all columns."""

from __future__ import annotations

from specscan.reading.letters.words import middle_of
from specscan.reading.tables.grid import GridCell, by_row

Columns = list[tuple[float, float]]
SHORT = 2  # letters: a mark, or a figure that may belong to the middle column alone
CENTER = 0.04  # of the width of the value columns
STEADY = 2.0  # points by which values of one column may begin, have their middle or end apart
STEADY_SHARE = 0.8
OFF = 1.5  # em by which a value set in the middle of two columns misses the place of each
MIN_FULL = 4  # rows that have a value in each column


def widen_lone(cells: list[GridCell], columns: Columns) -> None:
    """Let the only value of a row span all value columns where it stands in their middle."""
    if len(columns) < 4:
        return
    for row in by_row(cells).values():
        values = [cell for cell in row if cell.col > 0]
        if len(values) == 1 < len(row) and len(values[0].plain) > SHORT and _is_central(values[0], columns):
            _span(values[0], columns)


def widen_short(cells: list[GridCell], columns: Columns) -> None:
    """Let short lone values in the middle span all value columns, where no row of the table leaves a column empty.

    Such a table prints a sign or a word where a van has no value, so that a lone figure is no value of one van.
    """
    rows = by_row(cells)
    lone: list[GridCell] = []
    full = 0
    for row in rows.values():
        values = [cell for cell in row if cell.col > 0]
        if len(values) == len(row) or not values:
            continue  # heads, and headings of groups
        if len(values) == 1 and values[0].col_span == 1 and _is_central(values[0], columns):
            lone.append(values[0])
        elif sum(cell.col_span for cell in values) == len(columns) - 1:
            full += 1
        else:
            return
    if len(columns) >= 4 and full >= MIN_FULL:
        for cell in lone:
            _span(cell, columns)


def widen_between(cells: list[GridCell], columns: Columns) -> None:
    """Let lone values that stand between the two value columns of a table span both.

    One that lies between the columns and touches neither was set in the middle of both. So was one that lies partly
    between them, where the values of full rows begin, center or end at one place in each column, and it in neither.
    """
    if len(columns) != 3:
        return
    rows = by_row(cells)
    full = [sorted(row, key=lambda c: c.col)[-2:] for row in rows.values() if {c.col for c in row} == {0, 1, 2}]
    lone = [row[-1] for row in rows.values() if len(row) == 2 and row[0].col == 0 < row[1].col and row[1].col_span == 1]
    if len(full) < MIN_FULL or not lone:
        return
    for cell in lone:
        if columns[1][1] < _left(cell) and _right(cell) < columns[2][0]:
            _span(cell, columns)
    lone = [cell for cell in lone if cell.col_span == 1]
    for anchor in (_left, middle, _right):
        usual = steady_places([[anchor(pair[side]) for pair in full] for side in (0, 1)])
        if usual:
            for cell in lone:
                off = all(abs(anchor(cell) - at) > OFF * cell.size for at in usual)
                if off and usual[0] < middle(cell) < max(_right(pair[1]) for pair in full):
                    _span(cell, columns)
            return


def steady_places(columns: list[list[float]]) -> list[float]:
    """Give the usual place of each column's values, nothing where those of a column do not keep to one."""
    usual = [middle_of(places) for places in columns]
    steady = all(
        sum(abs(place - at) <= STEADY for place in places) >= STEADY_SHARE * len(places)
        for places, at in zip(columns, usual, strict=True)
    )
    return usual if steady else []


def _left(cell: GridCell) -> float:
    return cell.box.x0 if cell.box is not None else 0.0


def middle(cell: GridCell) -> float:
    """Give where a cell's text has its middle across."""
    return cell.box.middle[0] if cell.box is not None else 0.0


def _right(cell: GridCell) -> float:
    return cell.box.x1 if cell.box is not None else 0.0


def _is_central(cell: GridCell, columns: Columns) -> bool:
    box = cell.box
    if box is None:
        return False
    (left, inner_left), (inner_right, right) = columns[1], columns[-1]
    # Of text or, where long values stand on one side, of the cells in which texts are set in the middle.
    middles = ((left + right) / 2, (left + inner_left + inner_right + right) / 4)
    return any(abs(box.middle[0] - middle) < CENTER * (right - left) for middle in middles)


def _span(cell: GridCell, columns: Columns) -> None:
    cell.col, cell.col_span = 1, len(columns) - 1
