"""Heads apart from their rows: drawn above rows without walls, or printed above drawn ones. They go with the rows."""

from __future__ import annotations

from specscan.reading.letters.words import Line, segments_of
from specscan.reading.tables.alignment import SEGMENT_GAP
from specscan.reading.tables.grid import Grid, GridCell
from specscan.records.text import Box

MAX_ROWS = 3
REACH = 3.0  # em from a drawn head to the first row below it
RULED = "ruled"


def with_body(head: object, body: Grid) -> Grid | None:
    """Give a table without walls together with the drawn head right above it, or ``None`` where ``head`` is none.

    Such a head has bold cells alone, and its corner over the labels is not drawn. Each of its cells stands over the
    columns whose middles lie below it; one that is drawn over all may hold a name over each. The band of the first
    group may be drawn below them.
    """
    if not isinstance(head, Grid) or not _is_bare_head(head, body):
        return None
    cells: list[GridCell] = []
    for cell in head.cells:
        if cell.empty:
            continue
        if _is_band(cell, head):
            cells.append(GridCell(cell.row, 0, cell.lines, cell.row_span, body.cols, cell.fill))
            continue
        x0, x1 = head.columns[cell.col][0], head.columns[cell.col + cell.col_span - 1][1]
        under = [col for col, (a, b) in enumerate(body.columns) if x0 <= (a + b) / 2 <= x1]
        if not under or under[0] == 0:
            return None
        names = [part for line in cell.lines for part in segments_of(line, SEGMENT_GAP)]
        if len(under) > 1 and [_nearest(name, body) for name in names] == under:
            cells += [
                GridCell(cell.row, col, [name], cell.row_span, 1, cell.fill)
                for col, name in zip(under, names, strict=True)
            ]
        else:
            cells.append(GridCell(cell.row, under[0], cell.lines, cell.row_span, len(under), cell.fill))
    return _over(cells, head.rows, body)


def _is_band(cell: GridCell, head: Grid) -> bool:
    """Tell whether a cell is drawn over all columns as the last row of a head."""
    return cell.col == 0 and cell.col_span == head.cols > 1 and 0 < cell.row == head.rows - 1


def _nearest(name: Line, body: Grid) -> int:
    """Give the column whose middle lies nearest to that of a text."""
    return min(range(body.cols), key=lambda col: abs(sum(body.columns[col]) / 2 - name.box.middle[0]))


def _over(heads: list[GridCell], rows: int, body: Grid) -> Grid:
    """Give a table with so many rows of heads over its own."""
    below = [GridCell(c.row + rows, c.col, c.lines, c.row_span, c.col_span, c.fill) for c in body.cells]
    return Grid([*heads, *below], rows + body.rows, body.cols, body.box, body.found, body.columns)


def _is_bare_head(head: Grid, body: Grid) -> bool:
    filled = [cell for cell in head.cells if not cell.empty]
    names = [cell for cell in filled if not _is_band(cell, head)]
    if head.found != RULED or head.rows > MAX_ROWS or not names or not all(cell.bold for cell in names):
        return False
    near = _is_right_above(head.box, body.box.top, max(cell.size for cell in filled))
    return near and bool(body.columns) and body.columns[0][1] < min(head.columns[cell.col][0] for cell in names)


def with_printed_heads(lines: list[Line], body: Grid) -> tuple[Grid, int] | None:
    """Give a drawn table together with the bold line above it that names its columns, and how many lines that took.

    Such a table opens with the band of a group, drawn or printed right above its walls, and its heads stand above that
    without walls of their own: one over each column behind the labels, the corner left open.
    """
    banded = _opens_with_band(body)
    group = None if banded or len(lines) < 2 or not _names_group(lines[-1], body) else lines[-1]
    if not lines or not (banded or group):
        return None
    line = lines[-1] if group is None else lines[-2]
    below = body.box.top if group is None else group.box.top
    parts = segments_of(line, SEGMENT_GAP)
    values = {cell.col for cell in body.cells if cell.col > 0 and cell.col_span == 1 and not cell.empty}
    places = [_column_of(part, body) for part in parts]
    near = _is_right_above(line.box, below, line.size)
    if not (near and line.bold and len(places) > 1 and places == sorted(values)):
        return None
    heads = [GridCell(0, col, [part]) for col, part in zip(places, parts, strict=True) if col is not None]
    band = [] if group is None else [GridCell(1, 0, [group], 1, body.cols)]
    rows = 1 + len(band)
    return _over([*heads, *band], rows, body), rows


def _is_right_above(box: Box, top: float, size: float) -> bool:
    """Tell whether what stands in a box, in letters of a size, ends right above a height of the page."""
    return 0 <= top - box.bottom + 1 <= REACH * size


def _names_group(line: Line, body: Grid) -> bool:
    """Tell whether a bold line right above a drawn table stands over its labels alone, and rows follow at once."""
    first = body.row_cells(0)
    labelled = len(first) > 1 and first[0].col == 0 and not any(cell.bold for cell in first)
    near = _is_right_above(line.box, body.box.top, line.size)
    alone = len(segments_of(line, SEGMENT_GAP)) == 1 and _column_of(line, body) == 0
    return body.found == RULED and labelled and near and alone and line.bold


def _opens_with_band(body: Grid) -> bool:
    """Tell whether the first row of a drawn table is one cell over all columns, the next a label with its values."""
    first, second = body.row_cells(0), body.row_cells(1)
    banded = len(first) == 1 and first[0].col == 0 and first[0].col_span == body.cols > 2
    labelled = len(second) > 1 and second[0].col == 0
    return body.found == RULED and banded and labelled and not any(cell.bold for cell in second[1:])


def _column_of(part: Line, body: Grid) -> int | None:
    """Give the only column between the edges of which a text stands."""
    inside = (n for n, (x0, x1) in enumerate(body.columns) if x0 - 1 <= part.box.x0 and part.box.x1 <= x1 + 1)
    return next(inside, None)
