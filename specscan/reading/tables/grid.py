"""Tables as grids of cells, whatever they were found by."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

from specscan.reading.letters.words import Line, Word
from specscan.records.text import Box, union


@dataclass(slots=True)
class GridCell:
    """A cell at ``row``, ``col`` that may span further rows and columns."""

    row: int
    col: int
    lines: list[Line] = field(default_factory=list)
    row_span: int = 1
    col_span: int = 1
    fill: tuple[int, int, int] | None = None
    code: str = ""  # by which the option of its row is ordered, from a column that is left out

    @property
    def words(self) -> list[Word]:
        return [word for line in self.lines for word in line.words]

    @property
    def empty(self) -> bool:
        return not any(line.words for line in self.lines)

    @property
    def box(self) -> Box | None:
        return union([word.box for word in self.words])

    @property
    def bold(self) -> bool:
        words = self.words
        return bool(words) and all(word.bold for word in words if any(map(str.isalnum, word.text)))

    @property
    def color(self) -> tuple[int, int, int] | None:
        words = self.words
        return words[0].color if words else None

    @property
    def size(self) -> float:
        words = self.words
        return max((word.size for word in words), default=0.0)

    @property
    def plain(self) -> str:
        return " ".join(line.text for line in self.lines)


def by_row(cells: Iterable[GridCell]) -> dict[int, list[GridCell]]:
    """Give cells by the row in which they begin."""
    rows: dict[int, list[GridCell]] = {}
    for cell in cells:
        rows.setdefault(cell.row, []).append(cell)
    return rows


@dataclass(slots=True)
class Grid:
    """A table: its cells in reading order, its extent and how it was found."""

    cells: list[GridCell]
    rows: int
    cols: int
    box: Box
    found: str
    columns: list[tuple[float, float]] = field(default_factory=list)
    _covering: dict[int, list[GridCell]] = field(default_factory=dict, init=False, repr=False, compare=False)

    def at(self, row: int, col: int) -> GridCell | None:
        """Give the cell that covers the place, or ``None``."""
        for cell in self.covering(row):
            if cell.col <= col < cell.col + cell.col_span:
                return cell
        return None

    def row_cells(self, row: int) -> list[GridCell]:
        """Give the non-empty cells that start in the row."""
        return [cell for cell in self.covering(row) if cell.row == row and not cell.empty]

    def covering(self, row: int) -> list[GridCell]:
        """Give the cells that begin in the row or reach into it from above, in reading order."""
        if not self._covering:  # kept by row: a list of parts has thousands, each asked for many times
            for cell in self.cells:
                for covered in range(cell.row, cell.row + cell.row_span):
                    self._covering.setdefault(covered, []).append(cell)
        return self._covering.get(row, [])

    def set_above(self, cells: list[GridCell]) -> None:
        """Move all rows down by one and put the cells, of row 0, above them."""
        for cell in self.cells:
            cell.row += 1
        self.rows += 1
        self.cells[:0] = cells
        self._covering.clear()


@dataclass(slots=True)
class AmongLines:
    """A table or list among lines, however it was found: the lines before it, its grid, the lines after it."""

    before: list[Line]
    grid: Grid
    after: list[Line]
