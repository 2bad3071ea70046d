"""Labels with values above or below them on a page: lines that go on with those above, and grids of two columns."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from specscan.reading.letters.words import Line
from specscan.reading.tables.grid import Grid, GridCell
from specscan.records.text import union


def take_in(segments: Sequence[Line], held: Sequence[list[Line]], goes_on: Callable[[Line, list[Line]], bool]) -> bool:
    """Add each segment of a line to the first of some texts that it goes on with; none where one goes on with none.

    ``goes_on`` tells it of a segment and the lines of a text.
    """
    hosts = [next((lines for lines in held if goes_on(segment, lines)), None) for segment in segments]
    found = [lines for lines in hosts if lines is not None]
    if len(found) < len(segments):
        return False
    for lines, segment in zip(found, segments, strict=True):
        lines.append(segment)
    return True


def pair_grid(pairs: Sequence[tuple[list[Line], list[Line]]]) -> Grid:
    """Give a grid with a row for each label and its value."""
    cells = [GridCell(row, col, lines) for row, pair in enumerate(pairs) for col, lines in enumerate(pair)]
    box = union([cell.box for cell in cells if cell.box is not None])
    assert box is not None
    return Grid(cells, len(pairs), 2, box, "tiles")
