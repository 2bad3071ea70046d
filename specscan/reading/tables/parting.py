"""Grids → grids with one set of heads each: label-value pairs side by side, heads that come again half way down."""

from __future__ import annotations

import itertools
from collections import Counter
from dataclasses import replace

from specscan.reading.letters.words import Line
from specscan.reading.tables.compose import Hints
from specscan.reading.tables.grid import Grid, GridCell

HEAD_SHARE = 0.5
MIN_HEADS = 2
STRIPED = 0.3  # of the rows that have one shade, at least
AGAIN = 3  # labels that come again, at least, where a table begins anew


def labelish(cell: GridCell | None, hints: Hints) -> bool:
    """Tell whether a cell holds text that is known as a label of a specification."""
    return cell is not None and not cell.empty and hints.is_label(cell.plain)


def column_cells(grid: Grid, col: int) -> list[GridCell]:
    """Give the cells of one column that hold text and span no other column."""
    return [cell for cell in grid.cells if cell.col == col and not cell.empty and cell.col_span == 1]


def has_digit(text: str) -> bool:
    """Tell whether a text holds a figure."""
    return any(letter.isdecimal() for letter in text)


def head_key(text: str) -> str:
    """Give a head in the form in which its repetitions agree."""
    return " ".join(text.split()).strip(" *†:").casefold()


def split_pairs(grid: Grid, hints: Hints) -> list[Grid]:
    """Part a grid in which labels stand in more than one column, each with values beside it."""
    starts = [0]
    for col in range(2, grid.cols):
        cells = column_cells(grid, col)
        hits = sum(labelish(cell, hints) for cell in cells)
        first = column_cells(grid, 0)
        first_hits = sum(labelish(cell, hints) for cell in first)
        again = any(a.plain == b.plain for a, b in itertools.pairwise(cells))  # "RWD" in one row and the next
        own = not again and hits >= max(2, 0.6 * len(cells)) and first_hits >= 0.5 * len(first)
        if own and col + 1 < grid.cols and col - starts[-1] >= 2:
            starts.append(col)
    if len(starts) == 1:
        return [grid]
    group_heads = [
        GridCell(cell.row, 0, [Line(replace(w, copied=True) for w in line.words) for line in cell.lines])
        for cell in grid.cells if cell.col == 0 and not cell.empty and _heads_group(grid, cell)
    ]  # fmt: skip
    parts = []
    for begin, end in zip(starts, [*starts[1:], grid.cols], strict=True):
        cells = [
            GridCell(c.row, c.col - begin, c.lines, c.row_span, min(c.col_span, end - c.col), c.fill, c.code)
            for c in grid.cells
            if begin <= c.col < end
        ]
        if cells and begin:
            cells += group_heads
        if cells:
            parts.append(Grid(cells, grid.rows, end - begin, grid.box, grid.found, grid.columns[begin:end]))
    return parts


def _heads_group(grid: Grid, cell: GridCell) -> bool:
    """Tell whether a cell is alone in its row and heads what is below it, in all pairs of the table."""
    alone = len([other for other in grid.row_cells(cell.row) if not other.empty]) == 1
    return alone and bool(grid.row_cells(cell.row + 1))


def split_heads(grid: Grid, hints: Hints, known: set[str], top: dict[int, str], high: int = 1) -> list[Grid]:
    """Part a grid above each row that heads what is below it anew: other labels, or the vans in another order.

    ``known`` holds the texts (as ``head_key`` gives them) that head columns here or in earlier tables, ``top``
    the heads at the top of this grid, by column, ``high`` how many rows they take. A group heading right above such
    a row goes with it.
    """
    starts = [0]
    current = top
    for row in range(max(2, high), grid.rows - 1):
        if not _heads_anew(grid, row, hints, known, current, high) or _repeats(grid, row, current):
            continue
        current = {cell.col: cell.plain for cell in grid.row_cells(row)}
        above = grid.row_cells(row - 1)
        begin = row - 1 if len(above) == 1 and above[0].col == 0 and row - 1 > starts[-1] + 1 else row
        if begin - starts[-1] >= 2:
            starts.append(begin)
    if len(starts) == 1:
        return [grid]
    return [_rows(grid, begin, end) for begin, end in zip(starts, [*starts[1:], grid.rows], strict=True)]


def _heads_anew(grid: Grid, row: int, hints: Hints, known: set[str], heads: dict[int, str], high: int) -> bool:
    others = [cell for cell in grid.row_cells(row) if cell.col > 0]
    if _names_anew(grid, row, others, hints, heads) or _begins_again(grid, row, others, high):
        return True
    if len(others) < MIN_HEADS:
        return False
    keys = {head_key(cell.plain) for cell in others}
    if (keys <= known and len(keys) > 1) or _heads_shifted(others, heads):  # "S, S, S" are marks and no van "S"
        return True
    labels = sum(labelish(cell, hints) for cell in others)
    if grid.cols < 3 or labels < max(MIN_HEADS, HEAD_SHARE * len(others)):
        return False
    figured = sum(has_digit(cell.plain) for cell in others)
    first = grid.at(row, 0)
    named_alike = first is not None and head_key(first.plain) == head_key(heads.get(0, "")) or len(others) >= 5
    fits = labels >= 0.8 * len(others) or not labelish(first, hints) or named_alike
    return figured <= 0.2 * len(others) and fits and _set_apart(grid, row, others)


def _heads_shifted(others: list[GridCell], heads: dict[int, str]) -> bool:
    """Tell whether the heads come again at other places, with more columns behind them: weights, say."""
    named = [text for col, text in sorted(heads.items()) if col > 0 and text]
    return len(named) >= MIN_HEADS and [cell.plain for cell in others][: len(named)] == named


def _names_anew(grid: Grid, row: int, others: list[GridCell], hints: Hints, heads: dict[int, str]) -> bool:
    """Tell whether a row names other vans: it has the corner of the head again ("Model"), or none, and alike names."""
    first = grid.at(row, 0)
    corner, own = head_key(heads.get(0, "")), head_key(first.plain) if first is not None else ""
    if own != corner or not others or any(hints.is_label(cell.plain) for cell in others):
        return False
    if corner and hints.heads_labels(corner):
        return True
    series = {text.split()[0] for col, text in heads.items() if col > 0 and text}
    named = all(cell.plain.split()[0] in series and has_digit(cell.plain) for cell in others)
    return named and len(series) == 1 and next(iter(series)).isalpha()


def _begins_again(grid: Grid, row: int, others: list[GridCell], high: int) -> bool:
    """Tell whether below a row without a label of its own the labels come again that stand at the top of the table."""
    first, corner = grid.at(row, 0), grid.at(0, 0)
    named = first is None or first.empty or corner is not None and first.plain == corner.plain
    if not named or len(others) < MIN_HEADS or row + AGAIN >= grid.rows or high + AGAIN > row:
        return False
    top, below = ([grid.at(start + n, 0) for n in range(AGAIN)] for start in (high, row + 1))
    pairs = list(zip(top, below, strict=True))
    # A cell over all these rows, the name of their group, is no label that comes again.
    return all(a is not None and b is not None and a is not b and a.plain and a.plain == b.plain for a, b in pairs)


def _repeats(grid: Grid, row: int, heads: dict[int, str]) -> bool:
    """Tell whether a row only repeats the heads, as at the top of another page."""
    return all(cell.plain == heads.get(cell.col) for cell in grid.row_cells(row) if cell.col > 0)


def _set_apart(grid: Grid, row: int, cells: list[GridCell]) -> bool:
    """Tell whether all cells of a row differ from those right below in weight, colour, size or shade."""
    below = [cell for cell in grid.row_cells(row + 1) if cell.col > 0]
    if not below:
        return False
    if all(cell.bold for cell in cells) and not any(cell.bold for cell in below):
        return True
    if not {cell.color for cell in cells} & {cell.color for cell in below}:
        return True
    fills = {cell.fill for cell in cells}
    if not fills & {cell.fill for cell in below} and not fills & _stripes(grid):
        return True
    return min(cell.size for cell in cells) > 1.15 * max(cell.size for cell in below)


def _stripes(grid: Grid) -> set[tuple[int, int, int] | None]:
    """Give the shades of every other row of values, which set no row apart."""
    values = [cell for cell in grid.cells if cell.col == 1]
    shades = Counter(cell.fill for cell in values)
    return {shade for shade, number in shades.items() if number >= STRIPED * len(values)}


def _rows(grid: Grid, begin: int, end: int) -> Grid:
    """Give the rows from ``begin`` to before ``end`` as a grid of their own."""
    cells = [
        GridCell(c.row - begin, c.col, c.lines, min(c.row_span, end - c.row), c.col_span, c.fill, c.code)
        for c in grid.cells
        if begin <= c.row < end
    ]
    return Grid(cells, end - begin, grid.cols, grid.box, grid.found, grid.columns)
