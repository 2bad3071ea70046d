"""Unruled tables: columns from the white space that many lines share, rows from rules or spacing."""

from __future__ import annotations

import re
from dataclasses import dataclass

from specscan.reading.bands import hangs, holds_rows
from specscan.reading.compose import Hints
from specscan.reading.grid import Grid, GridCell
from specscan.reading.leaders import find_led
from specscan.reading.marks import Marks
from specscan.reading.stacked import stacked_heads
from specscan.reading.widening import Columns, widen_between, widen_short, widened
from specscan.reading.words import Line, has_leader, middle_of, segments_of
from specscan.records.text import Box, union

# All in em (the font size of the lines at hand).
SEGMENT_GAP = 0.8
GUTTER = 0.45
TIGHT_GAP = 0.3
LEADING = 1.35
LEADING_WIDE = 1.55
PITCH_LOOSE = 1.45
HANGING = 1.9  # from a line of a listed item to the next
CROSSING_SHARE = 0.1
TABLE_SHARE = 0.4
LEGEND = re.compile(r"^\s*(?:[^\w\s]|[A-Za-z])\s*[:=]\s.*\s(?:[^\w\s]|[A-Za-z])\s*[:=]\s")  # "S = standard  O = option"
GROUP_SHARE = 0.5  # rows that name their group, at most; and second cells that are known labels, at least


@dataclass(slots=True)
class Found:
    """A table among lines: the lines before it, the table, the lines after it."""

    before: list[Line]
    grid: Grid
    after: list[Line]


def find_aligned(lines: list[Line], marks: Marks, hints: Hints) -> Found | None:
    """Give the first unruled table among lines of one column of the page, or ``None``."""
    led = find_led(lines)
    if led is None:
        return _find_by_gutters(lines, marks, hints)
    above = _find_by_gutters(led.before, marks, hints)
    if above is not None:
        return Found(above.before, above.grid, above.after + lines[len(led.before) :])
    return Found(led.before, led.grid, led.after)


def _find_by_gutters(lines: list[Line], marks: Marks, hints: Hints) -> Found | None:
    parts = [
        [line] if LEGEND.search(line.text) else segments_of(line, SEGMENT_GAP, marks.walls_at(line)) for line in lines
    ]
    kept = [(line, segments) for line, segments in zip(lines, parts, strict=True) if segments]
    for first, last in _runs(kept):
        columns = _columns_under_heads(kept[first:last])
        if len(columns) < 2:
            continue
        first, last = _extend(kept, first, last, columns)
        picked = kept[first:last]
        if sum(len(segments) > 1 for _, segments in picked) < TABLE_SHARE * len(picked):
            continue
        grid = _build(picked, columns, marks, hints)
        if grid is None:
            continue
        return Found([line for line, _ in kept[:first]], grid, [line for line, _ in kept[last:]])
    return None


Parted = tuple[Line, list[Line]]


def _em(lines: list[Line]) -> float:
    return middle_of([line.size for line in lines]) if lines else 1.0


def _runs(kept: list[Parted]) -> list[tuple[int, int]]:
    """Give the ranges of lines that can be tables: from a line of several segments to the last such.

    A long line of one segment that is no wrapped cell ends a range: it is running text.
    """
    runs: list[tuple[int, int]] = []
    start: int | None = None
    last = 0
    for index, (line, segments) in enumerate(kept):
        if len(segments) > 1:
            if start is not None and _is_break(kept, start, last, index):
                runs.append((start, last + 1))
                start = None
            if start is None:
                start = index
            last = index
        elif start is not None and _is_running_text(line, kept[start : last + 1]):
            runs.append((start, last + 1))
            start = None
    if start is not None:
        runs.append((start, last + 1))
    parted = [part for run in runs for part in _part_by_columns(kept, *run)]
    return [(a, b) for a, b in parted if sum(len(s) > 1 for _, s in kept[a:b]) >= 2]


def _part_by_columns(kept: list[Parted], first: int, last: int) -> list[tuple[int, int]]:
    """Cut a range at a wide gap below which other columns begin, as where a list or another table follows.

    Of several such gaps that one counts above and below which the rows respect their own columns best.
    """
    em = _em([line for line, _ in kept[first:last]])
    whole = _columns([s for _, s in kept[first:last] if len(s) > 1])
    best: tuple[float, float, int] | None = None
    for index in range(first + 2, last - 1):
        gap = kept[index][0].box.top - kept[index - 1][0].box.bottom
        if gap < 1.1 * em:
            continue
        upper = [s for _, s in kept[first:index] if len(s) > 1]
        lower = [s for _, s in kept[index:last] if len(s) > 1]
        if len(upper) < 2 or len(lower) < 2:
            continue
        if _merged(upper, whole) <= 0.3 and _merged(lower, whole) <= 0.3:
            continue
        loss = _merged(upper, _columns(upper)) * len(upper) + _merged(lower, _columns(lower)) * len(lower)
        if best is None or (loss, -gap) < best[:2]:
            best = (loss, -gap, index)
    if best is None:
        return [(first, last)]
    return [*_part_by_columns(kept, first, best[2]), *_part_by_columns(kept, best[2], last)]


def _merged(rows: list[list[Line]], columns: list[tuple[float, float]]) -> float:
    """Give the share of rows in which two segments fall into one of the columns."""
    if len(columns) < 2:
        return 1.0
    hits = 0
    for row in rows:
        places = [place for segment in row if len(place := _touched(segment.box, columns)) == 1]
        hits += len(places) != len({place[0] for place in places})
    return hits / len(rows)


def _is_break(kept: list[Parted], start: int, last: int, index: int) -> bool:
    """Tell whether the gap before a line is so much wider than the others that a new table begins."""
    gap = kept[index][0].box.top - kept[index - 1][0].box.bottom
    em = _em([line for line, _ in kept[start : index + 1]])
    return gap > 4.5 * em and last - start >= 2


def _is_running_text(line: Line, run: list[Parted]) -> bool:
    box = union([part.box for _, segments in run for part in segments])
    assert box is not None
    words = len(line.words)
    return words >= 9 and line.box.width > 0.62 * box.width


def _columns_under_heads(run: list[Parted]) -> list[tuple[float, float]]:
    """Give the columns of a range; heads that reach over several columns do not hide them.

    Bold or shouted lines at the top are heads. They are left out where the lines below have more columns.
    """
    rows = [segments for _, segments in run if len(segments) > 1]
    led = [segments for line, segments in run if len(segments) > 1 and has_leader(line)]
    if len(led) >= 3 and len(led) >= 0.5 * len(rows):
        rows = led  # where dots lead to the values, they say where the values begin
    columns = _columns(rows)
    top = 0
    while top < len(rows) and all(segment.bold or segment.text.isupper() for segment in rows[top]):
        top += 1
    body = _columns(rows[top:]) if top and len(rows) - top >= 2 else []
    return body if len(body) > len(columns) else columns


def _columns(rows: list[list[Line]]) -> list[tuple[float, float]]:
    """Give the x ranges of the columns that the segments of most lines respect."""
    if len(rows) < 2:
        return []
    em = _em([segment for row in rows for segment in row])
    left = min(segment.box.x0 for row in rows for segment in row)
    right = max(segment.box.x1 for row in rows for segment in row)
    bins = int(right - left) + 2
    cover = [0] * bins
    for row in rows:
        inked: set[int] = set()
        for segment in row:
            inked.update(range(int(segment.box.x0 - left), int(segment.box.x1 - left) + 1))
        for x in inked:
            if 0 <= x < bins:
                cover[x] += 1
    allowed = int(CROSSING_SHARE * len(rows))
    columns: list[tuple[float, float]] = []
    start: int | None = None
    blank = 0
    for x in range(bins):
        if cover[x] > allowed:
            if start is None:
                start = x
            elif blank >= GUTTER * em:
                columns.append((left + start, left + x - blank))
                start = x
            blank = 0
        else:
            blank += 1
    if start is not None:
        columns.append((left + start, left + bins - blank))
    return [column for column in columns if column[1] - column[0] >= 1]


def _extend(kept: list[Parted], first: int, last: int, columns: list[tuple[float, float]]) -> tuple[int, int]:
    """Take in lines above and below that are wrapped parts of one column's cells."""
    em = _em([line for line, _ in kept[first:last]])
    while first > 0:
        line = kept[first - 1][0]
        below = kept[first][0]
        near = below.base - line.base < LEADING * em
        if not (near and _column_of(line, columns) not in (None, 0)):
            break
        first -= 1
    while last < len(kept):
        line = kept[last][0]
        above = kept[last - 1][0]
        near = line.base - above.base < LEADING * em
        column = _column_of(line, columns)
        wrapped = column == 0 and line.text[:1].islower() and near
        if not ((near and column not in (None, 0)) or wrapped):
            break
        last += 1
    return first, last


def _column_of(line: Line, columns: list[tuple[float, float]]) -> int | None:
    """Give the only column that a line lies in, or ``None``."""
    touched = _touched(line.box, columns)
    return touched[0] if len(touched) == 1 else None


def _touched(box: Box, columns: list[tuple[float, float]]) -> list[int]:
    shares = []
    for index, (x0, x1) in enumerate(columns):
        if x1 <= box.x0 or x0 >= box.x1:
            continue  # they share nothing
        shared = min(box.x1, x1) - max(box.x0, x0)
        if shared > 0.2 * min(box.width, x1 - x0) or (shared > 0 and box.width < 4):
            shares.append(index)
    if not shares:
        middle = box.middle[0]
        shares = [min(range(len(columns)), key=lambda i: abs((columns[i][0] + columns[i][1]) / 2 - middle))]
    return shares


def _build(picked: list[Parted], columns: Columns, marks: Marks, hints: Hints) -> Grid | None:
    box = union([line.box for line, _ in picked])
    assert box is not None
    refined = [(line, _refine(segments, columns)) for line, segments in picked]
    rows = _rows(refined, columns, marks.floors_across(box), hints)
    cells: list[GridCell] = []
    for row, members in enumerate(rows):
        cells.extend(stacked_heads(row, members, columns, marks.floors) or _row_cells(row, members, columns))
    widen_short(cells, columns)
    widen_between(cells, columns)
    if len({cell.row for cell in cells}) < 2 or len({cell.col for cell in cells}) < 2:
        return None
    return Grid(cells, len(rows), len(columns), box, "aligned", columns)


def _refine(segments: list[Line], columns: list[tuple[float, float]]) -> list[Line]:
    """Cut a segment that reaches over a gutter at the word gap that lies in the gutter."""
    parts: list[Line] = []
    for segment in segments:
        pending = segment
        for (_, end), (begin, _) in zip(columns, columns[1:], strict=False):
            cut = _cut_at(pending, end, begin)
            if cut is not None:
                parts.append(cut[0])
                pending = cut[1]
        parts.append(pending)
    return parts


def _cut_at(segment: Line, end: float, begin: float) -> tuple[Line, Line] | None:
    if not (segment.box.x0 < end - 1 and segment.box.x1 > begin + 1):
        return None
    for place, (left, right) in enumerate(zip(segment.words, segment.words[1:], strict=False), 1):
        gap = right.box.x0 - left.box.x1
        aligned = abs(right.box.x0 - begin) < 0.35 * right.size
        inside = left.box.x1 <= begin and right.box.x0 >= end - 1
        if inside and gap > TIGHT_GAP * right.size and aligned:
            return Line(segment.words[:place]), Line(segment.words[place:])
    return None


def _rows(picked: list[Parted], columns: Columns, floors: list[float], hints: Hints) -> list[list[list[Line]]]:
    """Group lines into rows of the table; each row is a list of lines of segments."""
    em = _em([line for line, _ in picked])
    multi = [line for line, segments in picked if len(segments) > 1]
    pitches = [below.base - above.base for above, below in zip(multi, multi[1:], strict=False)]
    pitch = middle_of(pitches) if pitches else 2 * em
    ruled = len(floors) >= 3
    several = _holding_rows(picked, columns, floors, hints)
    grouped = _is_grouped(picked, columns, hints)
    # Wrapped cells may be set wider than usual, but closer than one row to the next.
    near = max(LEADING * em, min(LEADING_WIDE * em, 0.92 * pitch))
    rows: list[list[Parted]] = []
    for line, segments in picked:
        loose = pitch > PITCH_LOOSE * em or (ruled and id(line) not in several)
        if (
            rows
            and not _parted(rows[-1][-1][0], line, floors)
            and _continues(rows[-1], line, segments, columns, near, loose, grouped)
        ):
            rows[-1].append((line, segments))
        else:
            rows.append([(line, segments)])
    return [[segments for _, segments in row] for row in rows]


def _holding_rows(picked: list[Parted], columns: Columns, floors: list[float], hints: Hints) -> set[int]:
    """Give the ids of lines between two rules that part groups of rows, not the rows."""
    bands: dict[int, list[Parted]] = {}
    for line, segments in picked:
        band = sum(y < line.box.middle[1] for y in floors)
        bands.setdefault(band, []).append((line, segments))
    found: set[int] = set()
    for members in bands.values():
        parts = [[(_touched(segment.box, columns)[0], segment) for segment in segments] for _, segments in members]
        if holds_rows(parts, hints):
            found.update(id(line) for line, _ in members)
    return found


def _parted(above: Line, below: Line, floors: list[float]) -> bool:
    """Tell whether a rule or the edge of a shaded row runs between two lines."""
    upper, lower = above.box.middle[1], below.box.middle[1]
    return any(upper < y < lower for y in floors)


def _continues(
    row: list[Parted],
    line: Line,
    segments: list[Line],
    columns: list[tuple[float, float]],
    near: float,
    loose: bool,
    grouped: bool,
) -> bool:
    above = row[-1][0]
    step = line.base - above.base
    if step > near and (step > HANGING * line.size or not _hangs(row, segments, columns)):
        return False
    if len(row) == 1 and _is_heading_line(row[0][1], segments, columns):
        return False
    if loose:
        return True
    if len(row) == 1 and len(above_parts := row[0][1]) == 1 and len(segments) > 1 and segments[0].text[:1].islower():
        return _touched(above_parts[0].box, columns)[0] == 0  # the label goes on, and its value stands at its end
    label_column = 1 if grouped else 0
    places = [_touched(segment.box, columns) for segment in segments]
    labels = [segment for segment, touched in zip(segments, places, strict=True) if label_column in touched]
    filled = {index for touched in places for index in touched if index >= label_column}
    if not labels:
        return True
    if filled == {label_column}:
        own = [segment.text for segment in row[-1][1] if label_column in _touched(segment.box, columns)]
        return labels[0].text[:1].islower() or bool(own) and own[-1].endswith((",", "-", "/", "(", "–"))
    return False


def _hangs(row: list[Parted], segments: list[Line], columns: list[tuple[float, float]]) -> bool:
    above = [(_touched(part.box, columns)[0], part) for _, parts in row for part in parts]
    return hangs(above, [(_touched(part.box, columns)[0], part) for part in segments])


def _is_grouped(picked: list[Parted], columns: Columns, hints: Hints) -> bool:
    """Tell whether the first column only names groups of rows, and the labels of the rows stand in the second."""
    if len(columns) < 3:
        return False
    first, second = [], []
    for _, segments in picked:
        parts = {_touched(segment.box, columns)[0]: segment.text for segment in segments}
        if len(parts) > 1 and max(parts) > 1:
            first.append(parts.get(0, ""))
            second.append(parts.get(1, ""))
    named, labels = [text for text in first if text], [text for text in second if text]
    rare = 1 <= len(named) <= GROUP_SHARE * len(first)
    known = sum(hints.is_label(text) for text in labels)
    return rare and len(labels) >= 0.7 * len(second) and known >= GROUP_SHARE * len(labels)


def _is_heading_line(above: list[Line], segments: list[Line], columns: list[tuple[float, float]]) -> bool:
    """Tell whether the line above holds only a label, set apart by weight or colour: a group heading."""
    if len(above) != 1 or _touched(above[0].box, columns) != [0]:
        return False
    one, two = above[0], segments[0]
    return one.bold != two.bold or one.color != two.color or (one.text.isupper() and not two.text.isupper())


def _row_cells(row: int, members: list[list[Line]], columns: list[tuple[float, float]]) -> list[GridCell]:
    cells: dict[int, GridCell] = {}
    for segments in members:
        places = _places(segments, columns)
        for segment, touched in zip(segments, places, strict=True):
            first, span = touched[0], touched[-1] - touched[0] + 1
            host = next((c for c in cells.values() if c.col <= first < c.col + c.col_span), None)
            if host is not None and host.col == 0 < first and len(segments) > 1:
                host.col_span, host = first, None  # a long first line of a label reaches over the values below it
            if host is None:
                cells[first] = GridCell(row, first, [segment], 1, span)
            else:
                host.lines.append(segment)
                host.col_span = max(host.col_span, first + span - host.col)
    found = sorted(cells.values(), key=lambda cell: cell.col)
    return [widened(cell, found, columns) for cell in found]


def _places(segments: list[Line], columns: list[tuple[float, float]]) -> list[list[int]]:
    """Give the columns that each segment of a line takes; a long one ends where the next begins."""
    places = [_touched(segment.box, columns) for segment in segments]
    for place, (own, after) in enumerate(zip(places, places[1:], strict=False)):
        places[place] = [col for col in own if col < after[0]] or own
    return places
