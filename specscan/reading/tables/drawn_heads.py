"""The drawn or shaded head of a table whose rows have no walls: it goes with the rows found below it."""

from __future__ import annotations

from specscan.reading.tables.grid import Grid, GridCell

MAX_ROWS = 3
REACH = 3.0  # em from a drawn head to the first row below it
RULED = "ruled"


def with_body(head: object, body: Grid) -> Grid | None:
    """Give a table without walls together with the drawn head right above it, or ``None`` where ``head`` is none.

    Such a head has bold cells alone, and its corner over the labels is not drawn. Each of its cells stands over the
    columns whose middles lie below it.
    """
    if not isinstance(head, Grid) or not _is_bare_head(head, body):
        return None
    cells: list[GridCell] = []
    for cell in head.cells:
        if cell.empty:
            continue
        x0, x1 = head.columns[cell.col][0], head.columns[cell.col + cell.col_span - 1][1]
        under = [col for col, (a, b) in enumerate(body.columns) if x0 <= (a + b) / 2 <= x1]
        if not under or under[0] == 0:
            return None
        cells.append(GridCell(cell.row, under[0], cell.lines, cell.row_span, len(under), cell.fill))
    below = [
        GridCell(cell.row + head.rows, cell.col, cell.lines, cell.row_span, cell.col_span, cell.fill)
        for cell in body.cells
    ]
    return Grid([*cells, *below], head.rows + body.rows, body.cols, body.box, body.found, body.columns)


def _is_bare_head(head: Grid, body: Grid) -> bool:
    filled = [cell for cell in head.cells if not cell.empty]
    if head.found != RULED or head.rows > MAX_ROWS or not filled or not all(cell.bold for cell in filled):
        return False
    near = 0 <= body.box.top - head.box.bottom + 1 <= REACH * max(cell.size for cell in filled)
    return near and bool(body.columns) and body.columns[0][1] < head.box.x0
