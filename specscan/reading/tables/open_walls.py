"""Vertical rules between the columns of vans that break off where one value is true of the vans on both sides."""

from __future__ import annotations

from specscan.reading.tables.grid import GridCell, by_row
from specscan.reading.tables.widening import Columns

Walls = list[tuple[float, float, float]]  # x, top, bottom
LEAST_WALLED = 3  # rows that such a rule parts: fewer tell nothing of where it is missing
SLACK = 2.0  # points by which a rule may stand within the letters of a column


def widen_past_walls(cells: list[GridCell], columns: Columns, walls: Walls) -> None:
    """Let a value go on over a rule that is left out beside it, up to the next rule or value.

    Cells that were joined have no rule between them, though their value stands at the left: "Berths | 2" of two vans.
    """
    rows = by_row(cells)
    heights = {row: _middle(members) for row, members in rows.items()}
    walled: dict[int, set[int]] = {}  # first column behind a rule → rows that it parts
    for column in range(2, len(columns)):
        left, right = columns[column - 1][1] - SLACK, columns[column][0] + SLACK
        spans = [(top, bottom) for x, top, bottom in walls if left <= x <= right]
        parted = {row for row, y in heights.items() if any(top <= y <= bottom for top, bottom in spans)}
        if len(parted) >= LEAST_WALLED:
            walled[column] = parted
    if not walled:
        return
    for row, members in rows.items():
        taken = sorted(cell.col for cell in members)
        for cell in members:
            if cell.col == 0:
                continue
            stops = [col for col in taken if col > cell.col] + [col for col, parted in walled.items() if row in parted]
            end = min((col for col in stops if col > cell.col), default=len(columns))
            if any(cell.col + cell.col_span <= col < end for col in walled):
                cell.col_span = max(cell.col_span, end - cell.col)


def _middle(cells: list[GridCell]) -> float:
    """Give the height of the first line of a row."""
    return min((line.box.middle[1] for cell in cells for line in cell.lines), default=0.0)
