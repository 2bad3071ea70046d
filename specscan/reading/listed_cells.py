"""Tables of packages: a column whose cells each hold a list, beside the name of the package and its prices."""

from __future__ import annotations

from specscan.reading.grid import Grid, GridCell
from specscan.reading.words import Line, is_bullet

MIN_LISTS = 2
MOST_HEADS = 2  # rows above the first list


def with_listed_items(grid: Grid) -> Grid:
    """Give a grid in which each item of such lists is a row, with what stands beside its list as its values.

    The name of the package, left of its list or above its first item, heads the rows of its items.
    """
    col = next((col for col in range(min(2, grid.cols - 1)) if _holds_lists(grid, col)), None)
    if col is None:
        return grid
    cells: list[GridCell] = []
    row = 0
    begun = False
    for old in range(grid.rows):
        here = grid.row_cells(old)
        items, title = _items(grid.at(old, col))
        right = [cell for cell in here if cell.col > col]
        if not items and not begun:
            # The head of the lists tells nothing, and the others are known better without it.
            cells += [GridCell(row, cell.col - col, cell.lines, 1, cell.col_span, cell.fill) for cell in right]
            row += 1
            continue
        begun = True
        named = [line for cell in here if cell.col < col for line in cell.lines] + title
        if named:
            cells.append(GridCell(row, 0, named))
            row += bool(items)
        for item in items or [[]]:
            cells += [GridCell(row, 0, item)] if item else []
            cells += [GridCell(row, cell.col - col, cell.lines, 1, cell.col_span, cell.fill) for cell in right]
            row += 1
    return Grid(cells, row, grid.cols - col, grid.box, grid.found, grid.columns[col:])


def _holds_lists(grid: Grid, col: int) -> bool:
    """Tell whether most cells of a column are lists with values beside them; some have several items."""
    cells = [cell for cell in grid.cells if cell.col == col and cell.col_span == 1 and not cell.empty]
    lists = [cell for cell in cells if _items(cell)[0]]
    if not lists or lists[0].row > MOST_HEADS or len(cells) - len(lists) > MOST_HEADS:
        return False  # rows of other kinds would be lost
    several = sum(len(_items(cell)[0]) > 1 for cell in lists)
    beside = sum(any(other.col > col for other in grid.row_cells(cell.row)) for cell in lists)
    return several >= MIN_LISTS and beside == len(lists)


def _items(cell: GridCell | None) -> tuple[list[list[Line]], list[Line]]:
    """Give the items of the list in a cell, each without its bullet, and the lines above the first."""
    items: list[list[Line]] = []
    above: list[Line] = []
    for line in cell.lines if cell is not None else ():
        if len(line.words) > 1 and is_bullet(line.words[0].text):
            items.append([Line(line.words[1:])])
        elif items:
            items[-1].append(line)
        else:
            above.append(line)
    return items, above
