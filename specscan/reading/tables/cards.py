"""Boxes under common rules that each hold a list: packages side by side, no rows and columns of one table."""

from __future__ import annotations

from specscan.reading.letters.words import is_bullet
from specscan.reading.tables.grid import Grid, GridCell

LISTED_SHARE = 0.7  # of the boxes
MIN_ITEMS = 4


def holds_cards(grid: Grid) -> bool:
    """Tell whether most cells of a ruled grid, those at its left among them, hold a list of their own."""
    filled = [cell for cell in grid.cells if not cell.empty]
    items = {id(cell): _items(cell) for cell in filled}
    listed = [cell for cell in filled if items[id(cell)]]
    left = [cell for cell in filled if cell.col == 0]
    enough = sum(items.values()) >= MIN_ITEMS and len(listed) >= LISTED_SHARE * len(filled)
    return enough and any(items[id(cell)] for cell in left)


def _items(cell: GridCell) -> int:
    """Give how many lines of a cell begin with a bullet."""
    return sum(len(line.words) > 1 and is_bullet(line.words[0].text) for line in cell.lines)
