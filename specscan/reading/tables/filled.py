"""Values in a shaded cell that reaches over the columns they are true of, in tables without vertical rules."""

from __future__ import annotations

from collections.abc import Sequence

from specscan.reading.tables.grid import GridCell, by_row
from specscan.reading.tables.widening import Columns, middle
from specscan.records.text import Box

CENTRED = 0.02  # of the width of the shade: by which a value may miss its middle
SLACK = 2.0  # points by which letters may stand out over the edge of a shade


def widen_filled(cells: list[GridCell], columns: Columns, bars: Sequence[Box]) -> None:
    """Let the only value of a row span the columns that the shade behind it covers, if it stands in their middle.

    The shade begins behind the label. Where a row of several values has one too, shades are stripes and tell nothing.
    """
    found: list[tuple[GridCell, int, int]] = []
    for row in by_row(cells).values():
        values = [cell for cell in row if cell.col > 0 and cell.box is not None]
        if not values or len(values) == len(row):
            continue
        bar = _behind(values[0], columns, bars)
        if bar is None:
            continue
        if len(values) > 1:
            return
        covered = [place for place, column in enumerate(columns) if place and _covers(bar, column)]
        if len(covered) > 1 and abs(bar.middle[0] - middle(values[0])) <= CENTRED * bar.width:
            found.append((values[0], covered[0], covered[-1]))
    for cell, first, last in found:
        cell.col, cell.col_span = first, last - first + 1


def _behind(value: GridCell, columns: Columns, bars: Sequence[Box]) -> Box | None:
    """Give the shade behind a value that leaves out the labels and covers more than one column."""
    assert value.box is not None
    for bar in bars:
        if bar.x0 >= columns[0][1] - SLACK and bar.holds(*value.box.middle):
            if sum(_covers(bar, column) for column in columns[1:]) > 1:
                return bar
    return None


def _covers(bar: Box, column: tuple[float, float]) -> bool:
    return bar.x0 <= column[0] + SLACK and bar.x1 >= column[1] - SLACK
