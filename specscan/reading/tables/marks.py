"""What is drawn on a page besides text, as the finding of tables asks for it."""

from __future__ import annotations

import bisect
import itertools
from dataclasses import dataclass, field

from specscan.reading.letters.words import Line, middle_of
from specscan.records.text import Box

SPAN_SHARE = 0.6  # of a table's width: a rule as long crosses it
LEAST_RULES = 4  # of one length below one another, from which they part the rows of a table
LIKE = 3.0  # points by which the ends of such rules may differ
ROW_HEIGHT = 8.0  # em, how far apart they may be: a row of some wrapped lines
UNEVEN = 2.2  # times the usual height of a row: a higher one holds a title between two tables
LEAST_CELLS = 4  # of a head, its corner included
CELL_FLOOR = 1.5  # em, from the words of a cell to its border at most
TITLE = 1.1  # times the size of the rows
ROW_WIDTH = 20.0  # em, how long they must be
LEAST_LENGTH = 60.0  # points, as much in letters too small to read: a drawing has thousands of shorter strokes
MOST_RULES = 1_000  # longer ones, of more a page is a drawing


@dataclass(frozen=True, slots=True)
class _Stack:
    """Rules of one length below one another: their ends, heights, the steps between these and the usual one."""

    x0: float
    x1: float
    heights: list[float]
    steps: list[float]
    usual: float


@dataclass(slots=True)
class Marks:
    """What is drawn on the page: vertical rules (x, top, bottom), horizontal ones (y, x0, x1) and shaded bars.

    ``pieces`` are the horizontal rules as they were drawn, cell by cell where cells have borders of their own.
    """

    bars: list[Box] = field(default_factory=list)
    walls: list[tuple[float, float, float]] = field(default_factory=list)
    floors: list[tuple[float, float, float]] = field(default_factory=list)
    pieces: list[tuple[float, float, float]] = field(default_factory=list)
    _stacks: list[_Stack] | None = field(default=None, compare=False)
    _by_width: tuple[list[float], list[tuple[float, float, float]]] | None = field(default=None, compare=False)

    def walls_at(self, line: Line) -> list[float]:
        """Give the x of the vertical rules that pass the line."""
        middle = line.box.middle[1]
        return [x for x, top, bottom in self.walls if top <= middle <= bottom]

    def cells_over(self, line: Line) -> list[tuple[float, float]]:
        """Give the x ranges of the pieces, end to end, of the rule right below a line: the columns of a table.

        There are none where the rule is drawn in one, or each word of the line is not over one piece.
        """
        reach = [(y, x0, x1) for y, x0, x1 in self.pieces if -0.3 <= (y - line.box.bottom) / line.size <= CELL_FLOOR]
        height = min((y for y, _, _ in reach), default=0.0)
        cells = sorted({(round(x0, 1), round(x1, 1)) for y, x0, x1 in reach if y - height < 1})
        if any(abs(right[0] - left[1]) > LIKE for left, right in itertools.pairwise(cells)):
            return []
        within = all(any(x0 - 1 <= word.box.x0 and word.box.x1 <= x1 + 1 for x0, x1 in cells) for word in line.words)
        return cells if len(cells) >= LEAST_CELLS and within else []

    def in_bar(self, line: Line) -> bool:
        """Tell whether a line stands in a shaded bar."""
        return any(bar.holds(*line.box.middle) for bar in self.bars)

    def share_bar(self, above: Line, below: Line) -> bool:
        """Tell whether two lines stand in one shaded bar, as the wrapped heads of a table do."""
        return any(bar.holds(*above.box.middle) and bar.holds(*below.box.middle) for bar in self.bars)

    def under_bar(self, above: Line, below: Line) -> bool:
        """Tell whether the second line stands right below a shaded bar that holds the first."""
        reach = 2.5 * below.size
        return any(bar.holds(*above.box.middle) and 0 <= below.box.top - bar.bottom <= reach for bar in self.bars)

    def share_rows(self, above: Line, below: Line) -> bool:
        """Tell whether two lines stand in one table whose rows are parted by rules of one length.

        A larger bold line is the title of another table.
        """
        small, large = sorted((above, below), key=lambda line: line.size)
        if large.bold and large.size > TITLE * small.size:
            return False
        if self._stacks is None:
            self._stacks = _stacks(self.floors_over(LEAST_LENGTH))
        em = below.size
        top, bottom = above.box.middle[1], below.box.middle[1]
        west, east = min(above.box.x0, below.box.x0), max(above.box.x1, below.box.x1)
        for stack in self._stacks:
            if stack.x1 - stack.x0 < ROW_WIDTH * em or west < stack.x0 - em or east > stack.x1 + em:
                continue
            first, last = bisect.bisect_right(stack.heights, top) - 1, bisect.bisect_left(stack.heights, bottom)
            if first >= 0 and last < len(stack.heights):
                return max(stack.steps[first:last], default=0.0) <= min(ROW_HEIGHT * em, UNEVEN * stack.usual)
        return False

    def floors_over(self, width: float) -> list[tuple[float, float, float]]:
        """Give the horizontal rules that are longer than ``width``; a drawing has thousands of short ones."""
        if self._by_width is None:
            ordered = sorted(self.floors, key=lambda floor: floor[1] - floor[2])
            self._by_width = [floor[1] - floor[2] for floor in ordered], ordered
        lengths, ordered = self._by_width
        return ordered[: bisect.bisect_left(lengths, -width)]

    def floors_across(self, box: Box) -> list[float]:
        """Give the y of the horizontal rules that cross most of the box."""
        need = SPAN_SHARE * box.width
        found = sorted(
            y
            for y, x0, x1 in self.floors
            if box.top - 6 <= y <= box.bottom + 6 and min(x1, box.x1) - max(x0, box.x0) >= need
        )
        kept: list[float] = []
        for y in found:
            if not kept or y - kept[-1] > 2.5:
                kept.append(y)
        return kept


def _stacks(floors: list[tuple[float, float, float]]) -> list[_Stack]:
    """Give the rules of one length below one another, as part the rows of a table; none of a drawing's many."""
    if len(floors) > MOST_RULES:
        return []
    found: dict[tuple[float, float], list[float]] = {}
    for y, x0, x1 in sorted(floors):
        ends = next((e for e in found if abs(e[0] - x0) <= LIKE and abs(e[1] - x1) <= LIKE), (x0, x1))
        found.setdefault(ends, []).append(y)
    made = []
    for ends, heights in found.items():
        if len(heights) >= LEAST_RULES:
            steps = [below - above for above, below in itertools.pairwise(heights)]
            made.append(_Stack(*ends, heights, steps, middle_of(steps)))
    return made
