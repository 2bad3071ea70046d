"""Tables of packages: a column whose cells each hold a list, beside the name of the package and its prices."""

from __future__ import annotations

from specscan.reading.letters.words import Line, is_bullet
from specscan.reading.tables.compose import Hints
from specscan.reading.tables.grid import Grid, GridCell

MIN_LISTS = 2
MOST_HEADS = 2  # rows above the first list
SHORT = 16  # letters of a cell that says "Std", "n/a", "not offered" beside prices
WORD = 4  # letters
PRICED_SHARE = 0.6  # of the rows: those with a price
FULL_SHARE = 0.8  # of the priced rows: those with a name and contents
BROKEN_SHARE = 0.6  # of the line ends in a column: those at which the next word would have had room
MARGIN = 1.0  # em between a column of running text and the next

Items = tuple[list[list[Line]], list[Line]]  # the items of a list, and the lines above the first


def with_listed_items(grid: Grid, hints: Hints) -> Grid:
    """Give a grid in which each item of such lists is a row, with what stands beside its list as its values.

    The name of the package, left of its list or above its first item, heads the rows of its items.
    """
    col = next((col for col in range(min(2, grid.cols - 1)) if _holds_lists(grid, col)), None)
    if col is not None:
        return _with_rows(grid, col, {cell.row: _items(cell) for cell in grid.cells if cell.col == col})
    if _holds_contents(grid, hints):
        return _with_rows(grid, 1, _plain_items(grid, hints))
    return grid


def _with_rows(grid: Grid, col: int, listed: dict[int, Items]) -> Grid:
    """Give the grid with the items of a column, by row, as rows of their own."""
    cells: list[GridCell] = []
    row = 0
    begun = False
    for old in range(grid.rows):
        here = grid.row_cells(old)
        items, title = listed.get(old, ([], []))
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


def _items(cell: GridCell) -> Items:
    """Give the items of the list in a cell, each without its bullet, and the lines above the first."""
    items: list[list[Line]] = []
    above: list[Line] = []
    for line in cell.lines:
        if len(line.words) > 1 and is_bullet(line.words[0].text):
            items.append([Line(line.words[1:])])
        elif items:
            items[-1].append(line)
        else:
            above.append(line)
    return items, above


def _holds_contents(grid: Grid, hints: Hints) -> bool:
    """Tell whether the second column says what the packages of the first hold, beside a price for each of several vans.

    Then every further cell is a price or as short as "Std" and "n/a".
    """
    if grid.cols < 4:
        return False
    rows = [grid.row_cells(row) for row in range(_first_priced(grid, hints), grid.rows)]
    rows = [cells for cells in rows if any(cell.col > 1 for cell in cells)]
    offers = [[cell for cell in cells if cell.col > 1] for cells in rows]
    priced = sum(any(hints.is_price(cell.plain) for cell in cells) for cells in offers)
    whole = sum({0, 1} <= {cell.col for cell in cells if cell.col_span == 1 and _is_worded(cell)} for cells in rows)
    if priced < max(MIN_LISTS, PRICED_SHARE * len(rows)) or whole < FULL_SHARE * len(rows):
        return False
    return all(hints.is_price(cell.plain) or _is_short(cell.plain) for cells in offers for cell in cells)


def _first_priced(grid: Grid, hints: Hints) -> int:
    """Give the first row with a price, or the number of rows without any."""
    rows = (cell.row for cell in grid.cells if cell.col > 1 and hints.is_price(cell.plain))
    return min(rows, default=grid.rows)


def _is_worded(cell: GridCell) -> bool:
    """Tell whether a cell holds words: it is no weight and no code."""
    return cell.col == 0 or any(len(word.text) >= WORD and word.text.isalpha() for word in cell.words)


def _is_short(text: str) -> bool:
    return len(text) <= SHORT and not any(letter.isdecimal() for letter in text)


def _plain_items(grid: Grid, hints: Hints) -> dict[int, Items]:
    """Give by row what packages hold: each line that ends before it must is an item, else all of a cell is one."""
    first = _first_priced(grid, hints)
    cells = [cell for cell in grid.cells if cell.col == 1 and cell.row >= first and not cell.empty]
    edge = min(word.box.x0 for cell in grid.cells if cell.col > 1 and cell.row >= first for word in cell.words)
    ends = [_ends_early(a, b, edge) for cell in cells for a, b in zip(cell.lines, cell.lines[1:], strict=False)]
    broken = sum(ends) >= BROKEN_SHARE * len(ends)
    found: dict[int, Items] = {}
    for cell in cells:
        items = [[cell.lines[0]]]
        for above, line in zip(cell.lines, cell.lines[1:], strict=False):
            if broken and _ends_early(above, line, edge) and not line.text[:1].islower():
                items.append([line])
            else:
                items[-1].append(line)
        found[cell.row] = (items, [])
    return found


def _ends_early(line: Line, following: Line, edge: float) -> bool:
    """Tell whether the first word of the next line would have had room behind a line."""
    first = following.words[0].box
    return line.box.x1 + first.width + MARGIN * line.size < edge - MARGIN * line.size
