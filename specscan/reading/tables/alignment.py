"""Unruled tables: which lines are one, and its cells; columns by ``gutters``, rows by ``row_groups``."""

from __future__ import annotations

import itertools
import re

from specscan.reading.letters.taglines import part_tagline
from specscan.reading.letters.words import Line, middle_of, segments_of
from specscan.reading.tables.bands import fills_last_cell
from specscan.reading.tables.centred import widen_centred
from specscan.reading.tables.clauses import clauses_in_one
from specscan.reading.tables.column_breaks import SECTION_SIZE, part_by_columns, titled_apart
from specscan.reading.tables.compose import Hints
from specscan.reading.tables.filled import widen_filled
from specscan.reading.tables.flush import find_flush
from specscan.reading.tables.grid import AmongLines, Grid, GridCell
from specscan.reading.tables.gutters import Parted, above_notes, columns_under_heads, em_of, touched_by
from specscan.reading.tables.head_starts import part_under_heads
from specscan.reading.tables.leaders import find_led
from specscan.reading.tables.legend_lines import LEGEND, are_notes, explains_marks
from specscan.reading.tables.marks import Marks
from specscan.reading.tables.open_walls import widen_past_walls
from specscan.reading.tables.raised_labels import join_raised
from specscan.reading.tables.row_groups import HANGING, LEADING, is_grouped, rows_of
from specscan.reading.tables.stacked import stacked_heads
from specscan.reading.tables.stretched import join_stretched
from specscan.reading.tables.title_lines import below_large_title, below_lines_apart
from specscan.reading.tables.widening import Columns, widen_between, widen_lone, widen_short
from specscan.records.text import Box, union

# All in em (the font size of the lines at hand).
SEGMENT_GAP = 0.8
TIGHT_GAP = 0.3
WIDER = 1.1  # times the narrowest space of a line
TABLE_SHARE = 0.4  # of the lines of a table: those with several parts
RULED_SHARE = 0.2  # where rules part its rows
MIN_HEADS = 3  # segments of the head of a table, its corner included
PITCHES = 1.3  # times the usual distance of rows: heads and groups above the first
REACH = 2.0  # below the last line of a table: its last rule
MIN_RULES = 2
HEAD_LINES = 3  # of wrapped heads
MOST_ABOVE = 4  # lines above the head that can be taken for rows
HEAD_SHARE = 0.3  # of the rows: those that can look like the head
NUMBERED = re.compile(r"\d{1,2}(?:\.\d{1,2}){0,3}\.?\s+[^\W\d_][^\d|]*")


def find_aligned(lines: list[Line], marks: Marks, hints: Hints) -> AmongLines | None:
    """Give the first unruled table among lines of one column of the page, or ``None``."""
    led = find_led(lines)
    if led is None:
        found = _find_by_gutters(lines, marks, hints)
        flush = find_flush(lines if found is None else found.before)
        if flush is None:
            return found
        rest = [] if found is None else lines[len(found.before) :]
        return AmongLines(flush.before, flush.grid, [*flush.after, *rest])
    above = _find_by_gutters(led.before, marks, hints)
    if above is not None:
        return AmongLines(above.before, above.grid, above.after + lines[len(led.before) :])
    return AmongLines(led.before, led.grid, led.after)


def _find_by_gutters(lines: list[Line], marks: Marks, hints: Hints) -> AmongLines | None:
    if not lines:
        return None
    usual = middle_of([line.size for line in lines])
    parts = [
        [line]
        if LEGEND.search(line.text) or line.words[0].raised or _is_numbered_title(line, usual) or part_tagline(line)
        else segments_of(line, SEGMENT_GAP, marks.walls_at(line))
        for line in lines
    ]
    parts = clauses_in_one(lines, parts)
    whole = ([line] if explains_marks(cut) or are_notes(cut) else cut for line, cut in zip(lines, parts, strict=True))
    kept = join_stretched([(line, segments) for line, segments in zip(lines, whole, strict=True) if segments])
    kept = part_under_heads(join_raised(kept))
    for first, last in (part for run in _runs(kept, marks) for part in _part_by_titles(kept, *run, marks)):
        last = above_notes(kept, first, last)
        first = below_lines_apart(kept, first, last, hints)
        columns = _drawn_columns(kept[first:last], columns_under_heads(kept[first:last]), marks)
        if len(columns) < 2:
            continue
        first = _head_bar(kept, first, last, marks)
        first, last = _extend(kept, first, last, columns, marks, hints)
        picked = kept[first:last]
        share = RULED_SHARE if _has_ruled_rows(picked, marks) else TABLE_SHARE
        if sum(len(segments) > 1 for _, segments in picked) < share * len(picked):
            continue
        grid = _build(picked, columns, marks, hints)
        if grid is None:
            continue
        return AmongLines([line for line, _ in kept[:first]], grid, [line for line, _ in kept[last:]])
    return None


def _drawn_columns(run: list[Parted], columns: Columns, marks: Marks) -> Columns:
    """Give the columns that the borders of the heads show, where values for several columns hide some of them."""
    for line, segments in run[:HEAD_LINES]:
        drawn = marks.cells_over(line) if line.bold and len(segments) >= MIN_HEADS else []
        if len(drawn) > len(columns) >= 2 and len(segments) >= len(drawn) - 1:
            return drawn
    return columns


def _is_numbered_title(line: Line, usual: float) -> bool:
    """Tell whether a line is the numbered title of a section, "2.1  Where things are", set bolder and no smaller."""
    return line.bold and line.size >= usual and bool(NUMBERED.fullmatch(line.text))


def _runs(kept: list[Parted], marks: Marks) -> list[tuple[int, int]]:
    """Give the ranges of lines that can be tables: from a line of several segments to the last such.

    A long line of one segment that is no wrapped cell ends a range: it is running text.
    """
    runs: list[tuple[int, int]] = []
    start: int | None = None
    last = 0
    for index, (line, segments) in enumerate(kept):
        if len(segments) > 1:
            if start is not None and _is_break(kept, start, last, index, marks):
                runs.append((start, last + 1))
                start = None
            if start is None:
                start = index
            last = index
        elif start is None or fills_last_cell(line, kept[index - 1][0], kept[last][1]):
            continue
        elif _is_running_text(line, kept[start : last + 1]):
            runs.append((start, last + 1))
            start = None
    if start is not None:
        runs.append((start, last + 1))
    parted = [part for run in runs for part in part_by_columns(kept, below_large_title(kept, *run), run[1], marks)]
    return [(a, b) for a, b in parted if sum(len(s) > 1 for _, s in kept[a:b]) >= 2]


def _is_break(kept: list[Parted], start: int, last: int, index: int, marks: Marks) -> bool:
    """Tell whether the gap before a line is so much wider than the others that a new table begins."""
    gap = kept[index][0].box.top - kept[index - 1][0].box.bottom
    em = em_of([line for line, _ in kept[start : index + 1]])
    far = gap > 4.5 * em and last - start >= 2
    return far and not marks.share_rows(kept[index - 1][0], kept[index][0])


def _is_running_text(line: Line, run: list[Parted]) -> bool:
    box = union([part.box for _, segments in run for part in segments])
    assert box is not None
    words = len(line.words)
    return words >= 9 and line.box.width > 0.62 * box.width


def _head_bar(kept: list[Parted], first: int, last: int, marks: Marks) -> int:
    """Give where a table begins: at the bar of its heads, where lines above it only happen to be parted.

    The lines above it have no bar, begin where the table does and have fewer parts, as "Customer: ____  Dealer: ____"
    over heads.
    """
    bars = _bars_of_heads(kept, first, last, marks)
    if not bars or not first < bars[0] <= first + MOST_ABOVE:
        return first
    line, segments = kept[bars[0]]
    above = kept[first : bars[0]]
    free = not any(marks.in_bar(one) for one, _ in above)
    level = all(abs(one.box.x0 - line.box.x0) <= one.size and len(parts) < len(segments) for one, parts in above)
    return bars[0] if free and level else first


def _has_ruled_rows(picked: list[Parted], marks: Marks) -> bool:
    """Tell whether lines below a bar of heads are parted by rules into rows, which can hold lists of many lines.

    Where rules of one length hold them all together, but for the lines of their heads, no bar is needed.
    """
    box = union([one.box for one, _ in picked])
    assert box is not None
    barred = any(len(segments) >= MIN_HEADS and marks.in_bar(line) for line, segments in picked[:HEAD_LINES])
    last = picked[-1][0]
    held = barred or any(marks.share_rows(line, last) for line, _ in picked[: min(HEAD_LINES, len(picked) - 1) + 1])
    return held and len(marks.floors_across(box)) > MIN_RULES


def _part_by_titles(kept: list[Parted], first: int, last: int, marks: Marks) -> list[tuple[int, int]]:
    """Cut a range where another table begins: at titles above a further bar or row of heads, at heads printed again."""
    starts, ends = [first], []
    again = _heads_again(kept, first, last)
    below_titles = {*_heads_below_titles(kept, first, last), *titled_apart(kept, first, last), *again}
    for place in sorted({*_bars_of_heads(kept, first, last, marks), *below_titles}):
        above, parts = kept[place - 1]
        larger = above.size >= SECTION_SIZE * kept[place][0].size  # in a bar of its own too
        title = len(parts) == 1 and above.bold and above.size >= kept[place][0].size
        title = title and (larger or not marks.in_bar(above))
        title = title or part_tagline(above) is not None
        end = place - 1 if title else place
        if (title or place in again) and end > starts[-1]:
            starts.append(place)
            ends.append(end)
    return list(zip(starts, [*ends, last], strict=True))


def _bars_of_heads(kept: list[Parted], first: int, last: int, marks: Marks) -> list[int]:
    """Give the lines of three parts or more that stand in a shaded bar, in letters of another weight or colour than
    those of the rows."""
    rows = [(line.bold, line.words[0].color) for line, segments in kept[first:last] if len(segments) > 1]
    found = []
    for place in range(first + 1, last):
        line, segments = kept[place]
        rare = rows.count((line.bold, line.words[0].color)) <= HEAD_SHARE * len(rows)
        if len(segments) >= MIN_HEADS and rare and marks.in_bar(line):
            found.append(place)
    return found


def _heads_below_titles(kept: list[Parted], first: int, last: int) -> list[int]:
    """Give the bold lines right below a larger title that leave the corner below it open, above rows that are not bold.

    Such a line names the columns of a further table: "What differs", below what all vans have in one column of values.
    """
    found = []
    for place in range(first + 2, last - 1):
        line, segments = kept[place]
        title, below = kept[place - 1][0], kept[place + 1][0]
        cornered = segments[0].box.x0 > title.box.x0 + line.size and below.box.x0 < segments[0].box.x0 - line.size
        larger = title.bold and title.size >= SECTION_SIZE * line.size
        if len(segments) > 1 and larger and cornered and line.bold and not below.bold:
            found.append(place)
    return found


def _heads_again(kept: list[Parted], first: int, last: int) -> list[int]:
    """Give the bold lines that begin as the first one does, "Model", below rows that are not bold."""
    heads, parts = kept[first]
    if not heads.bold or len(parts) < MIN_HEADS:
        return []
    found = []
    for place in range(first + 2, last):
        line, again = kept[place]
        alike = line.bold and len(again) > 1 and again[0].text == parts[0].text
        if alike and not all(one.bold for one, _ in kept[first + 1 : place]):
            while place > first + 2 and _is_wrapped_head(*kept[place - 1], kept[place][0], again[0]):
                place -= 1
            found.append(place)
    return found


def _is_wrapped_head(line: Line, parts: list[Line], below: Line, corner: Line) -> bool:
    """Tell whether a line is the upper part of heads set in two lines or more, half way beside those in one."""
    near = below.base - line.base < LEADING * line.size
    return near and line.bold and line.size <= below.size and all(part.box.x0 > corner.box.x1 for part in parts)


def _extend(kept: list[Parted], first: int, last: int, columns: Columns, marks: Marks, hints: Hints) -> tuple[int, int]:
    """Take in lines above and below that are wrapped parts of one column's cells.

    What stands in one of them above the last rule of a table with rules between its rows belongs to the last row.
    """
    em = em_of([line for line, _ in kept[first:last]])
    if first > 1 and _heads_column([line for line, _ in kept[first - 2 : last]], columns):
        first -= 2
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
        wrapped = column == 0 and near and (line.text[:1].islower() or hints.leaves_open(kept[last - 1][1][0].text))
        near = near or (line.base - above.base < HANGING * em and _above_last_rule(line, kept, first, last, marks))
        if not ((near and column not in (None, 0)) or wrapped):
            break
        last += 1
    return first, last


def _heads_column(lines: list[Line], columns: Columns) -> bool:
    """Tell whether the first line heads a column of values, the second the first group of rows below them."""
    head, group = lines[:2]
    pitch = middle_of([below.base - line.base for line, below in itertools.pairwise(lines[1:])])
    alike = head.bold and group.bold and abs(head.size - group.size) < 1 and not lines[2].bold
    near = all(0 < below.base - line.base <= PITCHES * pitch for line, below in itertools.pairwise(lines[:3]))
    return alike and near and _column_of(head, columns) not in (None, 0) and _column_of(group, columns) == 0


def _above_last_rule(line: Line, kept: list[Parted], first: int, last: int, marks: Marks) -> bool:
    """Tell whether the next rule across a table stands below a line that follows it, as others between its rows."""
    box = union([one.box for one, _ in kept[first:last]])
    assert box is not None
    reach = Box(box.x0, box.top, box.x1, line.box.bottom + REACH * line.size)
    floors = marks.floors_across(reach)
    inside = [y for y in floors if y <= box.bottom]
    return (
        len(inside) >= MIN_RULES
        and any(y >= line.box.bottom - 1 for y in floors)
        and not any(box.bottom < y < line.box.bottom - 1 for y in floors)
    )


def _column_of(line: Line, columns: Columns) -> int | None:
    """Give the only column that a line lies in, or ``None``."""
    touched = touched_by(line.box, columns)
    return touched[0] if len(touched) == 1 else None


def _build(picked: list[Parted], columns: Columns, marks: Marks, hints: Hints) -> Grid | None:
    box = union([line.box for line, _ in picked])
    assert box is not None
    refined = [
        (line, segments if _titles_group(place, line, segments, columns, marks) else _refine(segments, columns))
        for place, (line, segments) in enumerate(picked)
    ]
    rows = rows_of(refined, columns, marks.floors_across(box), hints)
    cells: list[GridCell] = []
    for row, members in enumerate(rows):
        cells.extend(stacked_heads(row, members, columns, marks.floors) or _row_cells(row, members, columns))
    _widen(cells, columns, marks, 1 if is_grouped(refined, columns, hints) else 0)
    if len({cell.row for cell in cells}) < 2 or len({cell.col for cell in cells}) < 2:
        return None
    return Grid(cells, len(rows), len(columns), box, "aligned", columns)


def _widen(cells: list[GridCell], columns: Columns, marks: Marks, labels: int) -> None:
    """Let values span the columns that they are true of; ``labels`` is the column that the labels stand in.

    What stands before it, the names of groups, has no part in this.
    """
    own = [cell for cell in cells if cell.col >= labels]
    values = columns[labels:]
    for cell in own:
        cell.col -= labels
    widen_lone(own, values)
    widen_short(own, values)
    widen_between(own, values)
    widen_centred(own, values)
    widen_filled(own, values, marks.bars)
    widen_past_walls(own, values, marks.walls)
    for cell in own:
        cell.col += labels


def _titles_group(place: int, line: Line, segments: list[Line], columns: Columns, marks: Marks) -> bool:
    """Tell whether a line below the first is in one piece in a bar of its own: a group's name, however wide its spaces.

    Letters set apart have wide ones: "D R I F T   R A N G E".
    """
    return place > 0 and len(segments) == 1 and len(columns) >= MIN_HEADS and marks.in_bar(line)


def _refine(segments: list[Line], columns: Columns) -> list[Line]:
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
    gaps = [right.box.x0 - left.box.x1 for left, right in zip(segment.words, segment.words[1:], strict=False)]
    narrowest = min(gaps, default=0.0)
    for place, (left, right) in enumerate(zip(segment.words, segment.words[1:], strict=False), 1):
        gap = gaps[place - 1]
        if len(gaps) > 1 and gap < WIDER * narrowest and not left.text.endswith(":"):
            continue  # a space between words, however wide the type sets it; behind a label the colon ends it
        aligned = abs(right.box.x0 - begin) < 0.35 * right.size
        inside = left.box.x1 <= begin and right.box.x0 >= end - 1
        if inside and gap > TIGHT_GAP * right.size and aligned:
            return Line(segment.words[:place]), Line(segment.words[place:])
    return None


def _row_cells(row: int, members: list[list[Line]], columns: Columns) -> list[GridCell]:
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
    return sorted(cells.values(), key=lambda cell: cell.col)


def _places(segments: list[Line], columns: Columns) -> list[list[int]]:
    """Give the columns that each segment of a line takes; a long one ends where the next begins."""
    places = [touched_by(segment.box, columns) for segment in segments]
    for place, (own, after) in enumerate(zip(places, places[1:], strict=False)):
        places[place] = [col for col in own if col < after[0]] or own
    return places
