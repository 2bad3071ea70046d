"""The letters over the columns of a spreadsheet, and the numbers beside its rows, which are no part of its table."""

from __future__ import annotations

import string

from specscan.reading.tables.grid import Grid, GridCell

LEAST_LETTERS = 3
LEAST_ROWS = 3


def without_sheet_letters(grid: Grid) -> Grid:
    """Give a grid without the first row where that counts the columns, A, B, C, and the one of the labels with them.

    Letters that name vans stand over the values alone: nothing stands over the labels, and no numbers before them.
    """
    letters = {cell.col: cell.plain for cell in grid.row_cells(0)}
    columns = sorted(letters)
    if len(columns) < LEAST_LETTERS or columns[0] > 1 or columns != list(range(columns[0], columns[-1] + 1)):
        return grid
    if "".join(letters[col] for col in columns) != string.ascii_uppercase[: len(columns)]:
        return grid
    numbered = _counts_rows(grid)
    if bool(columns[0]) != numbered:
        return grid
    kept = [
        GridCell(
            cell.row - 1, max(0, cell.col - numbered), cell.lines, cell.row_span, cell.col_span, cell.fill, cell.code
        )
        for cell in grid.cells
        if cell.row and not (numbered and cell.col == 0)
    ]
    return Grid(kept, grid.rows - 1, grid.cols - numbered, grid.box, grid.found, list(grid.columns[numbered:]))


def _counts_rows(grid: Grid) -> bool:
    """Tell whether the first column holds nothing but the numbers of the rows, one more from row to row."""
    texts = [cell.plain for cell in grid.cells if cell.col == 0 and cell.row and not cell.empty]
    if len(texts) < LEAST_ROWS or not all(text.isdecimal() for text in texts):
        return False
    first = int(texts[0])
    return [int(text) for text in texts] == list(range(first, first + len(texts)))
