"""Columns of unruled tables: the white space that the segments of many lines leave."""

from __future__ import annotations

from collections import Counter

import numpy as np

from specscan.reading.letters.words import Line, has_leader, middle_of
from specscan.reading.tables.compose import NOTE_SIGNS
from specscan.reading.tables.widening import Columns
from specscan.records.text import Box

GUTTER = 0.45  # em
STEPS = 2  # in which a point is looked through for gutters
CROSSING_SHARE = 0.1  # of the lines: those that may reach over a gutter
FULL_SHARE = 0.4  # of the lines: those that have a value in each column
MOST_SHARE = 0.3  # of the lines: those with most values, between which others hold one for several columns
MIN_ROWS = 3  # that say so
MIN_ALONE = 2  # lines of one part in a column of wrapped cells
MIN_FULL = 4  # rows with a value for each
HALF_WAY = 0.12  # of the way from the first van's column to the last
SHARED_SHARE = 0.8
HELD_SHARE = 0.5  # of the rows with a value for each
MIN_COLUMNS = 3  # of a table in whose rows one value can stand in the middle of several columns

Parted = tuple[Line, list[Line]]  # a line and its segments


def em_of(lines: list[Line]) -> float:
    """Give the usual font size of lines, 1 without any."""
    return middle_of([line.size for line in lines]) if lines else 1.0


def columns_under_heads(run: list[Parted]) -> Columns:
    """Give the columns of a range; heads that reach over several columns do not hide them.

    Bold or shouted lines at the top are heads. They are left out where the lines below have more columns.
    """
    rows = [segments for _, segments in run if len(segments) > 1]
    led = [segments for line, segments in run if len(segments) > 1 and has_leader(line)]
    if len(led) >= 3 and len(led) >= 0.5 * len(rows):
        rows = led  # where dots lead to the values, they say where the values begin
    alone = [segments[0] for _, segments in run if len(segments) == 1]
    columns = _columns_of_fullest(rows, alone) or columns_of(rows)
    top = 0
    while top < len(rows) and all(segment.bold or segment.text.isupper() for segment in rows[top]):
        top += 1
    body = columns_of(rows[top:]) if top and len(rows) - top >= 2 else []
    hidden = len(_respected(rows)) < len(body)
    return body if hidden and len(body) >= len(columns) else columns


def _columns_of_fullest(rows: list[list[Line]], alone: list[Line]) -> Columns:
    """Give the columns of the rows with most values, where values for several columns hide one of them.

    Without hidden columns there are none to give. ``alone`` are the lines of one part.
    """
    most = max((len(row) for row in rows), default=0)
    fullest = [row for row in rows if len(row) == most]
    headed = rows and len(rows[0]) >= most - 1 and all(segment.bold for segment in rows[0])  # the corner may be empty
    share = 0.0 if headed else MOST_SHARE
    if most < MIN_COLUMNS or len(fullest) < max(MIN_ROWS, share * len(rows)):
        return []
    shown = _respected(rows)
    if len(shown) >= most and (_hold_one_each(shown, fullest) or _have_wrapped_column(shown, alone, fullest)):
        return []  # and no strip where lone values lie over one another
    columns = _respected(fullest)
    return columns if len(columns) == most else []


def columns_of(rows: list[list[Line]]) -> Columns:
    """Give the x ranges of the columns that the segments of most lines respect.

    A value for all stands in the middle, in the gutter between two columns: some hide the gutter, many look like a
    column of their own. Where rows of one value for each show other columns than all rows do, they say where these are.
    """
    columns = _respected(rows)
    counts = Counter(len(row) for row in rows)
    full = max(counts, key=lambda count: (counts[count], count), default=0)
    columns = _without_shared(rows, columns, full)
    share = FULL_SHARE
    if full < MIN_COLUMNS:
        full, share = _full_beside_shared(rows, counts), 0.0
    elif full < len(columns) and _full_beside_shared(rows, counts) != full:
        return columns
    rest = [row for row in rows if len(row) >= full]
    if full < MIN_COLUMNS or (full == len(columns) and _hold_one_each(columns, rest)):
        return columns
    parted = _respected(rest) if len(rest) >= share * len(rows) else []
    grouped = len(parted) == full + 1 and full + 1 in counts  # a group's name stands before some of the labels
    return parted if len(parted) == full or grouped else columns


def _without_shared(rows: list[list[Line]], columns: Columns, count: int) -> Columns:
    """Give columns without those that hold lone values alone: they stand half way, and are values for all.

    They come back as they are where not ``count`` are left, or few rows have as many values.
    """
    if len(columns) <= count or count < MIN_COLUMNS or sum(len(row) >= count for row in rows) < MIN_FULL:
        return columns
    several = sum(len(row) > 2 for row in rows)
    held = [0] * len(columns)  # by how many rows of several values: a word set far apart may stand there once
    for row in rows:
        for part in row if len(row) > 2 else ():
            places = touched_by(part.box, columns)
            if len(places) == 1:
                held[places[0]] += 1
    last = len(columns) - 1  # labels, the names of groups and the outer values stay
    kept = [
        column for place, column in enumerate(columns)
        if place < 2 or place == last or held[place] > CROSSING_SHARE * several
    ]  # fmt: skip
    return kept if len(kept) == count else columns


def _hold_one_each(columns: Columns, rows: list[list[Line]]) -> bool:
    """Tell whether most rows have a segment in each column: one that reaches over others can look like a column."""
    held = sum(all(touched_by(part.box, columns) == [place] for place, part in enumerate(row)) for row in rows)
    return held >= HELD_SHARE * len(rows)


def _have_wrapped_column(columns: Columns, alone: list[Line], fullest: list[list[Line]]) -> bool:
    """Tell whether lines of one part stand in a column that the rows with most values leave empty.

    They are the first and last lines of its wrapped cells, which are set around the middle of these rows.
    """
    filled = {place for row in fullest for part in row for place in touched_by(part.box, columns)}
    held = Counter(places[0] for line in alone if len(places := touched_by(line.box, columns)) == 1)
    return any(count >= MIN_ALONE for place, count in held.items() if place not in filled)


def _full_beside_shared(rows: list[list[Line]], counts: Counter[int]) -> int:
    """Give how many parts a row has that gives each van its own value, where most rows have one value for all.

    Such a value stands half way between the columns: "Base vehicle      Marrow 3500" below "RL          TB".
    """
    full = max((count for count in counts if counts[count] >= MIN_FULL), default=0)
    whole = [row for row in rows if len(row) == full]
    shared = [row for row in rows if len(row) == 2]
    if full < MIN_COLUMNS or not shared:
        return 0
    left = middle_of([row[1].box.middle[0] for row in whole])
    right = middle_of([row[-1].box.middle[0] for row in whole])
    half = [row for row in shared if abs(row[1].box.middle[0] - (left + right) / 2) < HALF_WAY * (right - left)]
    return full if len(half) >= SHARED_SHARE * len(shared) else 0


def _respected(rows: list[list[Line]]) -> Columns:
    """Give the x ranges that the segments of nine of ten lines leave white space between."""
    if len(rows) < 2:
        return []
    em = em_of([segment for row in rows for segment in row])
    left = min(segment.box.x0 for row in rows for segment in row)
    right = max(segment.box.x1 for row in rows for segment in row)
    bins = int((right - left) * STEPS) + 2
    covered = np.zeros(bins, np.int64)
    for row in rows:
        inked = np.zeros(bins, np.bool_)
        for segment in row:
            inked[int((segment.box.x0 - left) * STEPS) : int((segment.box.x1 - left) * STEPS) + 1] = True
        covered += inked
    cover = covered.tolist()
    allowed = int(CROSSING_SHARE * len(rows))
    columns: Columns = []
    start: int | None = None
    blank = 0
    for x in range(bins):
        if cover[x] > allowed:
            if start is None:
                start = x
            elif blank >= GUTTER * em * STEPS:
                columns.append((left + start / STEPS, left + (x - blank) / STEPS))
                start = x
            blank = 0
        else:
            blank += 1
    if start is not None:
        columns.append((left + start / STEPS, left + (bins - blank) / STEPS))
    columns = [column for column in columns if column[1] - column[0] >= 1]
    return [*_groups_before(rows, columns, em), *columns]


def _groups_before(rows: list[list[Line]], columns: Columns, em: float) -> Columns:
    """Give the column of names of groups left of the labels, which few lines have and so few lines respect.

    Such a line has a label beside it, below the others, and a value in each column.
    """
    if len(columns) < MIN_COLUMNS:
        return []
    left = columns[0][0]
    full = [row for row in rows if len(row) == len(columns) + 1 and abs(row[1].box.x0 - left) <= 1]
    groups = [row[0].box for row in full if row[0].box.x1 < left - GUTTER * em]
    return [(min(box.x0 for box in groups), max(box.x1 for box in groups))] if groups else []


def touched_by(box: Box, columns: Columns) -> list[int]:
    """Give the columns that a box shares enough with, or else the one whose middle is nearest."""
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


def above_notes(kept: list[Parted], first: int, last: int) -> int:
    """Give where a range ends without what stands from the first note on below its last row: "* Heat output."."""
    below = next((n + 1 for n in range(last - 1, first, -1) if len(kept[n][1]) > 1), last)
    return next((n for n in range(below, last) if kept[n][0].words[0].text in NOTE_SIGNS), last)
