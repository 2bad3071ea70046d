"""Ruled tables: drawn edges → crossings → cells → grids, by pdfplumber's table steps."""

from __future__ import annotations

from typing import Any

from pdfplumber import table as steps

from specscan.reading.grid import Grid, GridCell
from specscan.reading.sheet import Sheet
from specscan.reading.stripes import stripe_edges
from specscan.reading.words import Word, build_lines, middle_of
from specscan.records.text import Box

SNAP = 3.0
JOIN = 3.0
LIMIT_CROSSINGS = 20_000  # glyph charts of 256 × 256 cells hang the cell search; no spec table has as many
LIMIT_EDGES = 10_000
LIMIT_CELL_HEIGHT = 120.0
MIN_EDGE = 4.0

Edge = dict[str, Any]


def find_ruled(sheet: Sheet, words: list[Word]) -> tuple[list[Grid], set[int]]:
    """Give the ruled tables of a sheet and the ids of the words that they hold."""
    edges = _edges(sheet) + [_edge(*piece) for piece in stripe_edges(sheet, words)]
    if not edges or len(edges) > LIMIT_EDGES:
        return [], set()
    merged = steps.merge_edges(edges, SNAP, SNAP, JOIN, JOIN)  # borders drawn cell by cell become few long lines
    across = sum(edge["orientation"] == "h" for edge in merged)
    if across * (len(merged) - across) > LIMIT_CROSSINGS:
        return [], set()
    crossings = steps.edges_to_intersections(merged, 3, 3)
    if len(crossings) > LIMIT_CROSSINGS:
        return [], set()
    cells = steps.intersections_to_cells(crossings)
    grids: list[Grid] = []
    used: set[int] = set()
    for group in steps.cells_to_tables(cells):
        inside = _words_inside(group, words)
        grid = _grid(group, inside, sheet)
        if grid is not None:
            grids.append(grid)
            used.update(id(word) for held in inside.values() for word in held)
    return grids, used


def _edges(sheet: Sheet) -> list[Edge]:
    edges: list[Edge] = []
    for stroke in sheet.strokes:
        if stroke.horizontal:
            edges.append(_edge("h", stroke.x0, stroke.x1, (stroke.top + stroke.bottom) / 2))
        else:
            edges.append(_edge("v", stroke.top, stroke.bottom, (stroke.x0 + stroke.x1) / 2))
    for fill in sheet.fills:
        box = fill.box
        if fill.color in (None, (255, 255, 255)) and not fill.framed:
            continue
        if box.height > LIMIT_CELL_HEIGHT and not fill.framed:
            continue
        edges += [
            _edge("h", box.x0, box.x1, box.top),
            _edge("h", box.x0, box.x1, box.bottom),
            _edge("v", box.top, box.bottom, box.x0),
            _edge("v", box.top, box.bottom, box.x1),
        ]
    return [edge for edge in edges if max(edge["width"], edge["height"]) >= MIN_EDGE]


def _edge(orientation: str, start: float, stop: float, at: float) -> Edge:
    if orientation == "h":
        box = {"x0": start, "x1": stop, "top": at, "bottom": at}
    else:
        box = {"x0": at, "x1": at, "top": start, "bottom": stop}
    return {
        **box,
        "orientation": orientation,
        "object_type": "line",
        "width": box["x1"] - box["x0"],
        "height": box["bottom"] - box["top"],
        "doctop": box["top"],
    }


Cell = tuple[float, float, float, float]


def _words_inside(cells: list[Cell], words: list[Word]) -> dict[Cell, list[Word]]:
    found: dict[Cell, list[Word]] = {cell: [] for cell in cells}
    left, top = min(c[0] for c in cells), min(c[1] for c in cells)
    right, bottom = max(c[2] for c in cells), max(c[3] for c in cells)
    for word in words:
        x, y = word.box.middle
        if not (left <= x <= right and top <= y <= bottom):
            continue
        for cell in cells:
            if cell[0] <= x <= cell[2] and cell[1] <= y <= cell[3]:
                found[cell].append(word)
                break
    return found


def _grid(cells: list[Cell], inside: dict[Cell, list[Word]], sheet: Sheet) -> Grid | None:
    xs = _bounds([cell[0] for cell in cells] + [cell[2] for cell in cells])
    ys = _bounds([cell[1] for cell in cells] + [cell[3] for cell in cells])
    if len(xs) < 3 or len(ys) < 3:
        return None
    made = []
    for cell in cells:
        col, row = _index(xs, cell[0]), _index(ys, cell[1])
        made.append(
            GridCell(
                row,
                col,
                build_lines(inside[cell]),
                max(1, _index(ys, cell[3]) - row),
                max(1, _index(xs, cell[2]) - col),
                _fill(cell, sheet),
            )
        )
    filled = [cell for cell in made if not cell.empty]
    if len({cell.col for cell in filled}) < 2 or len({cell.row for cell in filled}) < 2:
        return None
    if _swallows_rows(filled):
        return None
    box = Box(xs[0], ys[0], xs[-1], ys[-1])
    made.sort(key=lambda cell: (cell.row, cell.col))
    spans = list(zip(xs, xs[1:], strict=False))
    return Grid(made, len(ys) - 1, len(xs) - 1, box, "ruled", spans)


def _swallows_rows(cells: list[GridCell]) -> bool:
    """Tell whether the rules only part the columns, so that one cell holds many rows of text."""
    by_row: dict[int, list[GridCell]] = {}
    for cell in cells:
        by_row.setdefault(cell.row, []).append(cell)
    for row in by_row.values():
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


def _fill(cell: Cell, sheet: Sheet) -> tuple[int, int, int] | None:
    x, y = (cell[0] + cell[2]) / 2, (cell[1] + cell[3]) / 2
    color = None
    for fill in sheet.fills:
        if fill.color is not None and fill.box.holds(x, y):
            color = fill.color
    return color
