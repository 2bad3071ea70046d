"""Values that stand in the middle of a row alone: they are true of all columns."""

from __future__ import annotations

from specscan.reading.grid import GridCell

Columns = list[tuple[float, float]]
SHORT = 2  # letters: a mark, or a figure that may belong to the middle column alone
CENTER = 0.04  # of the width of the value columns
MIN_FULL = 4  # rows that have a value in each column


def widened(cell: GridCell, row: list[GridCell], columns: Columns) -> GridCell:
    """Give the only value of a row as one that spans all value columns where it stands in their middle."""
    values = [other for other in row if other.col > 0]
    if len(columns) < 4 or len(values) != 1 or cell.col == 0 or cell.col_span > 1 or len(row) < 2:
        return cell
    if len(cell.plain) > SHORT and _is_central(cell, columns):
        _span(cell, columns)
    return cell


def widen_short(cells: list[GridCell], columns: Columns) -> None:
    """Let short lone values in the middle span all value columns, where no row of the table leaves a column empty.

    Such a table prints a sign or a word where a van has no value, so that a lone figure is no value of one van.
    """
    rows: dict[int, list[GridCell]] = {}
    for cell in cells:
        rows.setdefault(cell.row, []).append(cell)
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


def _is_central(cell: GridCell, columns: Columns) -> bool:
    box = cell.box
    if box is None:
        return False
    middle = (columns[1][0] + columns[-1][1]) / 2
    return abs(box.middle[0] - middle) < CENTER * (columns[-1][1] - columns[1][0])


def _span(cell: GridCell, columns: Columns) -> None:
    cell.col, cell.col_span = 1, len(columns) - 1
