"""Boxes each with a label in small letters over its value in large or bold ones: each is a pair, not a cell of rows."""

from __future__ import annotations

from specscan.reading.letters.words import Line
from specscan.reading.tables.grid import Grid, GridCell
from specscan.reading.tables.pairs import pair_grid
from specscan.reading.tables.parting import has_digit

LEAST = 4  # boxes
MOST_LINES = 4  # of a box
LARGER = 1.1  # times the size of the labels
FIGURED = 0.4  # of the values, those with a figure


def with_cell_labels(grid: Grid) -> Grid:
    """Give a ruled grid as pairs where all its cells are a label over a value, else as it is."""
    filled = [cell for cell in grid.cells if not cell.empty]
    if len(filled) < LEAST or any(not 2 <= len(cell.lines) <= MOST_LINES for cell in filled):
        return grid
    if len({_style(cell.lines[0]) for cell in filled}) > 1 or len({cell.row for cell in filled}) < 2:
        return grid
    figured = sum(any(has_digit(line.text) for line in cell.lines[1:]) for cell in filled)
    if not all(map(_is_pair, filled)) or figured < FIGURED * len(filled):
        return grid
    return pair_grid([(cell.lines[:1], cell.lines[1:]) for cell in sorted(filled, key=lambda c: (c.row, c.col))])


def _is_pair(cell: GridCell) -> bool:
    label, *value = cell.lines
    return not has_digit(label.text) and all(
        line.bold > label.bold or line.bold == label.bold and line.size >= LARGER * label.size for line in value
    )


def _style(line: Line) -> tuple[float, bool]:
    return round(line.size, 1), line.bold
