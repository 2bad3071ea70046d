"""Ruled tables: drawn edges → crossings → cells → grids."""

from __future__ import annotations

import itertools

import numpy as np
from numpy.typing import NDArray

from specscan.reading.letters.sheet import Sheet
from specscan.reading.letters.words import Word, build_lines, middle_of
from specscan.reading.tables.crossings import Cell, Crossings, Edge, merged, tables
from specscan.reading.tables.grid import Grid, GridCell, by_row
from specscan.reading.tables.grouping_rules import grouping_edges
from specscan.reading.tables.open_sides import open_sides
from specscan.reading.tables.running_over import add_running_over
from specscan.reading.tables.stripes import stripe_edges
from specscan.records.text import Box

SNAP = 3.0
JOIN = 3.0
LIMIT_CROSSINGS = 20_000  # glyph charts of 256 × 256 cells hang the cell search; no spec table has as many
LIMIT_EDGES = 10_000
LIMIT_CELL_HEIGHT = 120.0
MIN_EDGE = 4.0
MIN_HEADS = 3
HEADS_APART = 0.8  # em between heads in a bar at least
BELOW_HEADS = 3.0  # em under the heads, in which the first row begins
HEADED = 0.75  # share of the heads that have a word of that row below them
AT_ONCE = 1_000_000  # comparisons of points with cells that are held in memory
WHITE = (255, 255, 255)


def find_ruled(sheet: Sheet, words: list[Word]) -> tuple[list[Grid], set[int]]:
    """Give the ruled tables of a sheet and the ids of the words that they hold."""
    told = [*stripe_edges(sheet, words), *grouping_edges(sheet, words)]
    edges = _edges(sheet) + [Edge(kind == "h", at, start, stop) for kind, start, stop, at in told]
    if not edges or len(edges) > LIMIT_EDGES:
        return [], set()
    joined = merged(edges, SNAP, JOIN)  # borders drawn cell by cell become few long lines, and only then are counted
    joined += open_sides(joined, SNAP)
    across = sum(edge.across for edge in joined)
    if across * (len(joined) - across) > LIMIT_CROSSINGS:
        return [], set()
    crossings = Crossings(joined, SNAP)
    if len(crossings) > LIMIT_CROSSINGS:
        return [], set()
    found: list[tuple[Grid, set[int]]] = []
    for group in tables(crossings.cells()):
        inside = _words_inside(group, words)
        _close(group, inside, words)
        add_running_over(inside, words)
        grid = _grid(list(inside), inside, sheet)
        if grid is not None:
            found.append((grid, {id(word) for held in inside.values() for word in held}))
    used = set().union(*(held for _, held in found))
    open_words = [word for word in words if id(word) not in used and not word.direction]
    kept = [one for one in found if not _only_heads(one[0], open_words) and not _shades_columns(one[0], open_words)]
    return [grid for grid, _ in kept], set().union(*(held for _, held in kept))


def _edges(sheet: Sheet) -> list[Edge]:
    edges: list[Edge] = []
    for stroke in sheet.strokes:
        if stroke.horizontal:
            if stroke.x1 - stroke.x0 >= MIN_EDGE:
                edges.append(Edge(True, (stroke.top + stroke.bottom) / 2, stroke.x0, stroke.x1))
        elif stroke.bottom - stroke.top >= MIN_EDGE:
            edges.append(Edge(False, (stroke.x0 + stroke.x1) / 2, stroke.top, stroke.bottom))
    for fill in sheet.fills:
        box = fill.box
        if fill.color in (None, WHITE) and not fill.framed:
            continue
        if box.height > LIMIT_CELL_HEIGHT and not fill.framed:
            continue
        if box.width >= MIN_EDGE:
            edges += [Edge(True, box.top, box.x0, box.x1), Edge(True, box.bottom, box.x0, box.x1)]
        if box.height >= MIN_EDGE:
            edges += [Edge(False, box.x0, box.top, box.bottom), Edge(False, box.x1, box.top, box.bottom)]
    return edges


def _words_inside(cells: list[Cell], words: list[Word]) -> dict[Cell, list[Word]]:
    found: dict[Cell, list[Word]] = {cell: [] for cell in cells}
    middles = np.array([word.box.middle for word in words], np.float64).reshape(-1, 2)
    for place, cell in enumerate(_holders(middles, np.array(cells, np.float64)).tolist()):
        if cell >= 0:
            found[cells[cell]].append(words[place])
    return found


def _close(cells: list[Cell], inside: dict[Cell, list[Word]], words: list[Word]) -> None:
    """Add the cells at the left of a table whose outer edge is not drawn: shaded rows have one, those between do not.

    Their words stand beside a row of cells, in the column that other rows have there.
    """
    edges = _bounds([cell[0] for cell in cells])
    if len(edges) < 3:
        return
    left, right = edges[0], edges[1]
    first = [cell for cell in cells if abs(cell[0] - left) <= SNAP]
    rows = sorted({(cell[1], cell[3]) for cell in cells if abs(cell[0] - right) <= SNAP})
    for top, bottom in rows:
        if any(cell[1] < bottom - SNAP and cell[3] > top + SNAP for cell in first):
            continue
        held = [w for w in words if left < w.box.middle[0] < right and top < w.box.middle[1] < bottom]
        if held and len(first) > 1:
            inside[(left, top, right, bottom)] = held


def _holders(points: NDArray[np.float64], boxes: NDArray[np.float64]) -> NDArray[np.int64]:
    """Give the place of the first box that holds each point, -1 where none does."""
    found = np.full(len(points), -1, np.int64)
    step = max(1, AT_ONCE // len(boxes))
    for first in range(0, len(points), step):
        x, y = points[first : first + step, :1], points[first : first + step, 1:]
        inside = (boxes[:, 0] <= x) & (x <= boxes[:, 2]) & (boxes[:, 1] <= y) & (y <= boxes[:, 3])
        found[first : first + step] = np.where(inside.any(axis=1), inside.argmax(axis=1), -1)
    return found


def _grid(cells: list[Cell], inside: dict[Cell, list[Word]], sheet: Sheet) -> Grid | None:
    xs = _bounds([cell[0] for cell in cells] + [cell[2] for cell in cells])
    ys = _bounds([cell[1] for cell in cells] + [cell[3] for cell in cells])
    if len(xs) < 3 or len(ys) < 3:
        return None
    col_of = {x: _index(xs, x) for cell in cells for x in (cell[0], cell[2])}
    row_of = {y: _index(ys, y) for cell in cells for y in (cell[1], cell[3])}
    made = []
    for cell, fill in zip(cells, _fills(cells, sheet), strict=True):
        col, row = col_of[cell[0]], row_of[cell[1]]
        wide, tall = max(1, col_of[cell[2]] - col), max(1, row_of[cell[3]] - row)
        if wide > 1 and len(inside[cell]) > 1 and all(word.direction for word in inside[cell]):
            made += _turned_heads(GridCell(row, col, [], tall, wide, fill), inside[cell], xs)
        elif row == 0 and wide == len(xs) - 1 and (parts := _heads_in_bar(inside[cell], xs)):
            made += [GridCell(row, place, build_lines(held), tall, 1, fill) for place, held in parts.items()]
        else:
            made.append(GridCell(row, col, build_lines(inside[cell]), tall, wide, fill))
    made = _part_open_rows(made, xs)
    filled = [cell for cell in made if not cell.empty]
    if len({cell.col for cell in filled}) < 2 or len({cell.row for cell in filled}) < 2:
        return None
    if _swallows_rows(filled):
        return None
    while not any(cell.col == len(xs) - 2 for cell in filled):  # bands reach out beyond the last column of the rows
        del xs[-2]
        made = [_within(cell, len(xs) - 1) for cell in made if cell.col < len(xs) - 1]
        filled = [cell for cell in made if not cell.empty]
    box = Box(xs[0], ys[0], xs[-1], ys[-1])
    made.sort(key=lambda cell: (cell.row, cell.col))
    spans = list(zip(xs, xs[1:], strict=False))
    return Grid(made, len(ys) - 1, len(xs) - 1, box, "ruled", spans)


def _within(cell: GridCell, columns: int) -> GridCell:
    """Give a cell of a table of so many columns."""
    span = min(cell.col_span, columns - cell.col)
    return GridCell(cell.row, cell.col, cell.lines, cell.row_span, span, cell.fill)


def _heads_in_bar(words: list[Word], xs: list[float]) -> dict[int, list[Word]]:
    """Give the words of a bar over all of a table by the column in which each stands, where they are its heads.

    Each column but the first has its own.
    """
    found = _by_column(words, xs)
    return found if len(xs) > 3 and found.keys() >= set(range(1, len(xs) - 1)) else {}


def _part_open_rows(cells: list[GridCell], xs: list[float]) -> list[GridCell]:
    """Part the cells over all columns of a table whose rows have walls by turns, as banded styles draw them.

    What stands in them begins where the cells of other rows do.
    """
    starts: dict[int, set[int]] = {}
    for cell in cells:
        if cell.col_span == 1 and (box := cell.box) is not None:
            starts.setdefault(cell.col, set()).add(round(box.x0))
    made = []
    for cell in cells:
        parts = _by_column(cell.words, xs) if cell.row and cell.col_span == len(xs) - 1 and cell.row_span == 1 else {}
        level = all(
            starts.get(col, set()) & {round(min(word.box.x0 for word in held)) + off for off in (-1, 0, 1)}
            for col, held in parts.items()
        )
        if len(parts) > 1 and 0 in parts and level:
            made += [GridCell(cell.row, col, build_lines(held), 1, 1, cell.fill) for col, held in parts.items()]
        else:
            made.append(cell)
    return made


def _by_column(words: list[Word], xs: list[float]) -> dict[int, list[Word]]:
    """Give words by the column in which each stands; none where one stands across two, or the gaps are no wide ones."""
    found: dict[int, list[Word]] = {}
    for word in sorted(words, key=lambda word: word.box.x0):
        place = next((n for n, right in enumerate(xs[1:]) if word.box.middle[0] < right), len(xs) - 2)
        if word.box.x0 < xs[place] - SNAP or word.box.x1 > xs[place + 1] + SNAP:
            return {}
        found.setdefault(place, []).append(word)
    parts = [found[place] for place in sorted(found)]
    apart = all(b[0].box.x0 - a[-1].box.x1 > HEADS_APART * a[-1].size for a, b in itertools.pairwise(parts))
    return found if apart else {}


def _turned_heads(band: GridCell, words: list[Word], xs: list[float]) -> list[GridCell]:
    """Give a cell for each column that an undivided band spans, with the turned words that stand over the column."""
    made = []
    for col in range(band.col, band.col + band.col_span):
        held = [word for word in words if xs[col] <= word.box.middle[0] <= xs[col + 1]]
        made.append(GridCell(band.row, col, build_lines(held), band.row_span, 1, band.fill))
    return made


def _only_heads(grid: Grid, open_words: list[Word]) -> bool:
    """Tell whether bars of colour rule the heads of a table alone, whose rows stand below without rules."""
    rows = [row for row in by_row([cell for cell in grid.cells if not cell.empty]).values() if len(row) > 1]
    if len(rows) != 1 or len(rows[0]) < MIN_HEADS or rows[0][0].row != 0:
        return False
    end = grid.box.bottom + BELOW_HEADS * rows[0][0].size
    below = [word for word in open_words if grid.box.bottom < word.box.middle[1] < end]
    first = min((word.box.middle[1] for word in below), default=0.0)
    places = [word.box.middle[0] for word in below if word.box.middle[1] - first < word.size / 2]
    spans = [grid.columns[cell.col] for cell in rows[0]]
    return sum(any(x0 < place < x1 for place in places) for x0, x1 in spans) >= HEADED * len(spans)


def _shades_columns(grid: Grid, open_words: list[Word]) -> bool:
    """Tell whether what is drawn only shades single columns under a bar: most words below it stand in no cell."""
    filled = [cell for cell in grid.cells if not cell.empty]
    top = max((cell.box.bottom for cell in filled if cell.row == 0 and cell.box is not None), default=grid.box.top)
    held = sum(len(cell.words) for cell in filled if cell.row > 0)
    x0, x1, bottom = grid.box.x0, grid.box.x1, grid.box.bottom
    beside = sum(x0 < word.box.middle[0] < x1 and top < word.box.middle[1] < bottom for word in open_words)
    return beside > held


def _swallows_rows(cells: list[GridCell]) -> bool:
    """Tell whether the rules only part the columns, so that one cell holds many rows of text."""
    for row in by_row(cells).values():
        tall = [cell for cell in row if len(cell.lines) >= 4]
        if len(tall) < 2:
            continue
        first = {round(line.first_base) for line in tall[0].lines}
        shared = [sum(round(line.first_base) in first for line in cell.lines) for cell in tall[1:]]
        counts = [len(cell.lines) for cell in tall[1:]]
        if any(hit >= 0.75 * count for hit, count in zip(shared, counts, strict=True)):
            gaps = [
                below.box.top - above.box.bottom for above, below in zip(tall[0].lines, tall[0].lines[1:], strict=False)
            ]
            if middle_of(gaps) > 0.35 * tall[0].lines[0].size:
                return True
    return False


def _bounds(values: list[float]) -> list[float]:
    kept: list[float] = []
    for value in sorted(values):
        if not kept or value - kept[-1] > SNAP:
            kept.append(value)
    return kept


def _index(bounds: list[float], value: float) -> int:
    return min(range(len(bounds)), key=lambda i: abs(bounds[i] - value))


def _fills(cells: list[Cell], sheet: Sheet) -> list[tuple[int, int, int] | None]:
    """Give the colour in which the middle of each cell is filled, by the last that is drawn there."""
    fills = [fill for fill in reversed(sheet.fills) if fill.color is not None]
    if not fills:
        return [None] * len(cells)
    boxes = np.array([(fill.box.x0, fill.box.top, fill.box.x1, fill.box.bottom) for fill in fills], np.float64)
    middles = np.array([((cell[0] + cell[2]) / 2, (cell[1] + cell[3]) / 2) for cell in cells], np.float64)
    return [fills[place].color if place >= 0 else None for place in _holders(middles, boxes).tolist()]
