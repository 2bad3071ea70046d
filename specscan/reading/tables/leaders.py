"""Labels and values joined by rows of dots: each line is a pair, wherever its value ends."""

from __future__ import annotations

from specscan.reading.letters.words import Line, has_leader, is_leader, segments_of
from specscan.reading.tables.grid import AmongLines, Grid, GridCell
from specscan.records.text import union

MIN_PAIRS = 3
SINGLE_SHARE = 0.7  # of the pairs: those with one value
GAP = 0.8  # em between two columns
STEP = 2.6  # em from one line of such a list to the next, headings between them included
MAX_HEADING = 60


def find_led(lines: list[Line]) -> AmongLines | None:
    """Give the first list of labels and values that are joined by leaders, or ``None``.

    A short line between two pairs is the heading of those below; one that stands under the value above it goes on
    with that value, and one whose pair below begins with a small letter or a bracket begins that pair's label.
    """
    start = next((n for n, line in enumerate(lines) if _is_pair(line)), None)
    while start is not None:
        end = _end(lines, start)
        pairs = [line for line in lines[start:end] if _is_pair(line)]
        single = sum(len(segments_of(line, GAP)) == 2 for line in pairs)
        if len(pairs) >= MIN_PAIRS and single >= SINGLE_SHARE * len(pairs):  # else the rows of a table of vans
            first = start
            while first and _begins_label(lines[first - 1], lines[first]):
                first -= 1
            return AmongLines(lines[:first], _grid(lines[first:end]), lines[end:])
        start = next((n for n, line in enumerate(lines) if n >= end and _is_pair(line)), None)
    return None


def _is_pair(line: Line) -> bool:
    """Tell whether a leader joins the first part of a line to the next; what stands behind goes with the value."""
    if not has_leader(line):
        return False  # most lines
    dots = [is_leader(word) for word in line.words]
    runs = sum(here and not before for before, here in zip([False, *dots], dots, strict=False))
    return runs == 1 and not dots[0] and len(segments_of(line, GAP)) >= 2


def _value(line: Line) -> Line:
    """Give what stands behind the leader of a pair, as one line."""
    return Line([word for part in segments_of(line, GAP)[1:] for word in part.words])


def _end(lines: list[Line], start: int) -> int:
    """Give the end of a list that begins with a pair: behind its last pair and what goes on with that one's value.

    A heading such as the one above the list opens another.
    """
    end = start + 1
    opening = lines[start - 1] if start else None
    for number in range(start + 1, len(lines)):
        above, line = lines[number - 1], lines[number]
        if line.base - above.base > STEP * max(above.size, line.size):
            break
        if _is_pair(line):
            end = number + 1
        elif opening is not None and _are_headings(opening, line):
            break
        elif _goes_on(above, line):
            end = max(end, number + 1)
        elif len(line.text) > MAX_HEADING or len(segments_of(line, GAP)) > 1:
            break
    return end


def _are_headings(one: Line, other: Line) -> bool:
    """Tell whether two lines are headings of one rank: shouted or bold, at one edge, of one size."""
    alike = one.bold == other.bold and one.text.isupper() == other.text.isupper()
    alike = alike and abs(one.size - other.size) < 0.5 and abs(one.box.x0 - other.box.x0) < one.size
    return alike and (one.bold or one.text.isupper()) and not _is_pair(one)


def _goes_on(above: Line, line: Line) -> bool:
    """Tell whether a line stands under the value of the pair above it."""
    return _is_pair(above) and line.box.x0 >= _value(above).box.x0 - line.size


def _begins_label(line: Line, below: Line) -> bool:
    """Tell whether a line without a value begins the label of the pair below it."""
    near = below.base - line.base < 1.6 * line.size and abs(line.size - below.size) < 0.5
    lone = not _is_pair(line) and len(segments_of(line, GAP)) == 1 and len(line.text) <= MAX_HEADING
    return near and lone and line.bold == below.bold and (below.text[:1].islower() or below.text[:1] == "(")


def _grid(lines: list[Line]) -> Grid:
    cells: list[GridCell] = []
    row = 0
    label: list[Line] = []
    for number, line in enumerate(lines):
        if _is_pair(line):
            cells += [GridCell(row, 0, [*label, segments_of(line, GAP)[0]]), GridCell(row, 1, [_value(line)])]
            label = []
        elif cells and number and _goes_on(lines[number - 1], line):
            cells[-1].lines.append(line)
            continue
        elif number + 1 < len(lines) and _begins_label(line, lines[number + 1]):
            label.append(line)
            continue
        else:
            cells.append(GridCell(row, 0, [line]))
        row += 1
    box = union([line.box for line in lines])
    assert box is not None
    return Grid(cells, row, 2, box, "leaders")
