"""A table as a grid: which cell covers a place, whatever the size of the table."""

from __future__ import annotations

from collections.abc import Iterator

from specscan.reading.letters.words import Line, Word
from specscan.reading.tables.grid import Grid, GridCell
from specscan.records.text import Box

BOX = Box(0, 0, 100, 10)


class Counted(list[GridCell]):
    """Cells that count how often all of them are looked through."""

    times = 0

    def __iter__(self) -> Iterator[GridCell]:
        self.times += 1
        return super().__iter__()


def _cell(row: int, col: int, text: str = "x", **spans: int) -> GridCell:
    return GridCell(row, col, [Line([Word(text, BOX, 9.0, False, (0, 0, 0))])], **spans)


def test_a_place_belongs_to_the_cell_that_spans_it() -> None:
    tall, wide, low = _cell(0, 0, row_span=2), _cell(0, 1, col_span=2), _cell(1, 1)
    grid = Grid([tall, wide, low], 2, 3, BOX, "ruled")
    assert [[grid.at(row, col) for col in range(3)] for row in range(2)] == [[tall, wide, wide], [tall, low, None]]
    assert grid.row_cells(1) == [low]  # the tall one begins above
    low.col_span = 2  # cells are widened after they were asked for
    assert grid.at(1, 2) is low


def test_cells_set_above_move_the_others_down() -> None:
    first, head = _cell(0, 0), _cell(0, 1, "head")
    grid = Grid([first], 1, 2, BOX, "aligned")
    assert grid.at(0, 0) is first
    grid.set_above([head])
    assert (grid.at(0, 0), grid.at(0, 1), grid.at(1, 0), grid.rows) == (None, head, first, 2)


def test_a_table_of_thousands_of_rows_is_not_looked_through_for_each() -> None:
    cells = Counted(_cell(row, col) for row in range(3000) for col in range(2))
    grid = Grid(cells, 3000, 2, BOX, "ruled")
    assert all(grid.at(row, 1) is not None and len(grid.row_cells(row)) == 2 for row in range(3000))
    assert cells.times == 1
