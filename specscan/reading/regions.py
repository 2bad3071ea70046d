"""Pages → regions that are read one after the other: framed cards, side-bars, text columns."""

from __future__ import annotations

import bisect
import re
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from specscan.reading.alignment import SEGMENT_GAP
from specscan.reading.compose import Hints
from specscan.reading.marks import Marks
from specscan.reading.seams import Usual, with_headings
from specscan.reading.sheet import Fill, Sheet
from specscan.reading.spans import Spans
from specscan.reading.strips import strips_below, strips_through
from specscan.reading.words import Line, Word, build_lines, is_bullet, middle_of, segments_of
from specscan.records.text import Box

MIN_GUTTER = 0.65  # em
CARD_MIN_HEIGHT = 2.6  # em
CARD_MIN_WORDS = 3
PROSE_WORDS = 5.5
MARK = 2  # letters: the marks of several vans side by side
LABELLED_SHARE = 0.35
INLINE_LABEL = re.compile(r"([^:.!?]{2,60}?)\s?:\s+\S")
HEAD_BAR = 6.0  # em, how high the shaded head of a table can be


@dataclass(slots=True)
class Column:
    """Lines that are read as one column; ``back``: begun under the headings above the column so many before it."""

    lines: list[Line]
    back: int = 0


def split_cards(sheet: Sheet, words: list[Word]) -> list[list[Word]]:
    """Part the words by the framed or shaded boxes that hold them; the page itself comes first.

    Side-bars and cards are independent of what stands beside them. A shaded row or column of a table
    is not: where most lines of a box go on outside it, the box is no card.
    """
    boxes = _card_boxes(sheet, words)
    if not boxes:
        return [words]
    groups: dict[int, list[Word]] = {-1: []}
    for word in words:
        x, y = word.box.middle
        holder = -1
        for index, box in enumerate(boxes):  # largest first, so the last hit is the innermost
            if box.holds(x, y):
                holder = index
        groups.setdefault(holder, []).append(word)
    for index in [key for key in groups if key >= 0]:
        goes_on = _goes_on_outside(groups[index], boxes[index], boxes, groups[-1])
        if goes_on or _heads_table(groups[index], boxes[index], groups[-1]):
            groups[-1].extend(groups.pop(index))
    parts = [groups.pop(-1)]
    order = sorted(groups, key=lambda i: (round(boxes[i].top / 8), boxes[i].x0))
    parts.extend(groups[index] for index in order)
    return [part for part in parts if part]


def _card_boxes(sheet: Sheet, words: list[Word]) -> list[Box]:
    if not words:
        return []
    em = middle_of([word.size for word in words])
    page = sheet.width * sheet.height
    shaded = [fill.box for fill in sheet.fills]
    fills = [fill for fill in sheet.fills if _can_be_card(fill, em, page)]
    middles = np.array([word.box.middle for word in words])
    boxes: list[Box] = []
    for fill in sorted(fills, key=lambda f: -(f.box.width * f.box.height)):
        if not _holds_some(fill.box, middles):  # a drawing can have ten thousands of shapes, nearly all without words
            continue
        held = [word for word in words if fill.box.holds(*word.box.middle)]
        rows = {round((word.base or word.box.bottom) / 3) for word in held}
        if len(held) < CARD_MIN_WORDS or len(rows) < 2 or len(held) > 0.97 * len(words):
            continue
        if any(_same(fill.box, other) or _is_bar(fill.box, other) for other in boxes):
            continue
        if _is_row(fill.box, shaded, words):
            continue
        boxes.append(fill.box)
    return boxes


def _holds_some(box: Box, middles: NDArray[np.float64]) -> bool:
    """Tell whether a box holds the middles of at least as many words as a card has."""
    x, y = middles[:, 0], middles[:, 1]
    inside = (x >= box.x0) & (x <= box.x1) & (y >= box.top) & (y <= box.bottom)
    return int(inside.sum()) >= CARD_MIN_WORDS


def _can_be_card(fill: Fill, em: float, page: float) -> bool:
    box = fill.box
    tall = box.height >= CARD_MIN_HEIGHT * em and box.width >= 6 * em
    return tall and 0.004 * page <= box.width * box.height


def _is_row(box: Box, shaded: list[Box], words: list[Word]) -> bool:
    """Tell whether a shaded box is a row of a table: others of its width touch it, or are parted from
    it only by rows of text that are not shaded.
    """
    for other in shaded:
        if abs(other.x0 - box.x0) > 3 or abs(other.x1 - box.x1) > 3 or _same(box, other):
            continue
        gap = max(other.top - box.bottom, box.top - other.bottom)
        if -2 <= gap <= 2:
            return True
        upper, lower = min(box.bottom, other.bottom), max(box.top, other.top)
        between = [w for w in words if box.holds(w.box.middle[0], box.middle[1]) and upper < w.box.middle[1] < lower]
        if between and 0 < gap <= 3 * max(box.height, other.height):
            return True
    return False


def _is_bar(box: Box, card: Box) -> bool:
    """Tell whether a box is the head or foot bar of a card."""
    as_wide = abs(box.x0 - card.x0) < 4 and abs(box.x1 - card.x1) < 4
    return as_wide and (abs(box.top - card.top) < 4 or abs(box.bottom - card.bottom) < 4)


def _same(one: Box, two: Box) -> bool:
    return (
        abs(one.x0 - two.x0) < 4
        and abs(one.x1 - two.x1) < 4
        and abs(one.top - two.top) < 4
        and abs(one.bottom - two.bottom) < 4
    )


def _goes_on_outside(held: list[Word], box: Box, boxes: list[Box], outside: list[Word]) -> bool:
    lines = build_lines(held)
    bases = [
        (word.base or word.box.bottom)
        for word in outside
        if not word.direction and box.top <= word.box.middle[1] <= box.bottom
    ]
    hits = sum(any(abs(base - line.first_base) < 0.8 for base in bases) for line in lines)
    return len(lines) > 0 and hits >= 0.6 * len(lines)


def _heads_table(held: list[Word], box: Box, outside: list[Word]) -> bool:
    """Tell whether a shaded box is the head bar of a table below it: wrapped heads over columns that line up."""
    em = middle_of([word.size for word in held])
    if box.height > HEAD_BAR * em:
        return False
    reach = [w for w in outside if not w.direction and 0 <= w.box.middle[1] - box.bottom <= HEAD_BAR * em]
    below = build_lines([word for word in reach if box.x0 - em <= word.box.middle[0] <= box.x1 + em])
    if not below:
        return False
    parts = [part.box for part in segments_of(below[0], SEGMENT_GAP)]
    heads = [part.box for line in build_lines(held) for part in segments_of(line, SEGMENT_GAP)]
    headed = sum(any(part.overlap_x(head) > 0.5 * min(part.width, head.width) for head in heads) for part in parts)
    return len(parts) >= 3 and headed >= 0.6 * len(parts)


def split_columns(lines: list[Line], marks: Marks, hints: Hints) -> list[Column]:
    """Part lines into columns of independent text, each in reading order.

    A region without such columns comes back whole.
    """
    if len(lines) < 3:
        return [Column(lines)]
    gutter = _independent_gutter(lines, marks, hints)
    if gutter is not None:
        left, right = _cut(lines, gutter)
        headed = with_headings(left, right)
        first, second = split_columns(left, marks, hints), split_columns(headed, marks, hints)
        if len(headed) > len(right):
            second[0].back = len(first)
        return [*first, *second]
    bands = _bands(lines, marks)
    if len(bands) == 1:
        return [Column(lines)]
    regions: list[Column] = []
    index = 0
    pending: list[Line] = []
    while index < len(bands):
        end = _widest_split(bands, index, marks, hints)
        if end is None:
            pending.extend(bands[index])
            index += 1
            continue
        if pending:
            regions.append(Column(pending))
            pending = []
        regions.extend(split_columns([line for band in bands[index:end] for line in band], marks, hints))
        index = end
    if pending:
        regions.append(Column(pending))
    return regions


def _widest_split(bands: list[list[Line]], start: int, marks: Marks, hints: Hints) -> int | None:
    """Give the end of the longest row of bands from ``start`` that one gutter parts, or ``None``."""
    for end, strips in strips_below(bands, start):
        lines = [line for band in bands[start:end] for line in band]
        gutter = _independent_gutter(lines, marks, hints, strips)
        if gutter is None:
            continue
        first_left, first_right = _cut(bands[start], gutter)
        last_left, last_right = _cut(bands[end - 1], gutter)
        if end < len(bands) and not (last_left and last_right) and _is_title(bands[end - 1], lines):
            continue  # a heading under the columns belongs to what follows
        if (first_left and first_right) and (last_left or last_right):
            return end
    return None


def _is_title(band: list[Line], lines: list[Line]) -> bool:
    """Tell whether a band is one line set larger or bolder than most of the lines."""
    return len(band) == 1 and Usual.of(lines).stands_out(band[0])


def _bands(lines: list[Line], marks: Marks) -> list[list[Line]]:
    """Cut where the white space between two lines is wider than usual, but never inside or right below a head bar."""
    gaps = [_gap(above, below) for above, below in zip(lines, lines[1:], strict=False)]
    usual = middle_of([max(gap, 0) for gap in gaps])
    em = middle_of([line.size for line in lines])
    limit = max(0.3 * em, 1.2 * usual)
    bands = [[lines[0]]]
    several = [len(segments_of(line, SEGMENT_GAP)) > 1 for line in lines]
    for index, (gap, line) in enumerate(zip(gaps, lines[1:], strict=True), 1):
        # Where a run of parted lines begins or ends, columns may begin or end.
        turns = several[index] != several[index - 1] and len(lines) <= 90
        above = lines[index - 1]
        if (gap > limit or turns) and not marks.share_bar(above, line) and not marks.under_bar(above, line):
            bands.append([line])
        else:
            bands[-1].append(line)
    return bands


def _gap(above: Line, below: Line) -> float:
    return below.box.top - above.box.bottom


def _cut(lines: list[Line], x: float) -> tuple[list[Line], list[Line]]:
    left, right = [], []
    for line in lines:
        west, east = line.sides(x)
        if west is not None:
            left.append(west)
        if east is not None:
            right.append(east)
    return left, right


def _independent_gutter(lines: list[Line], marks: Marks, hints: Hints, strips: Spans | None = None) -> float | None:
    """Give the x of a white gutter whose two sides are no rows of each other, or ``None``.

    ``strips`` are the white strips through the lines, where they are known.
    """
    strips = strips_through(lines) if strips is None else strips
    em = middle_of([line.size for line in lines])
    gutters = sorted((gutter for gutter in strips if gutter[1] - gutter[0] >= MIN_GUTTER * em), key=_widest)
    first, last = lines[0].box.middle[1], lines[-1].box.middle[1]
    for left, right in gutters:
        # A rule or the edge of a shaded row that runs through makes the sides rows of one table.
        long = marks.floors_over(right - left + 2 * em)
        if any(first < y < last and x0 < left - em and x1 > right + em for y, x0, x1 in long):
            continue
        middle = (left + right) / 2
        west, east = _cut(lines, middle)
        if len(west) < 2 or len(east) < 2:
            continue
        if _independent(west, east, marks, hints):
            return middle
    return None


def _widest(gutter: tuple[float, float]) -> float:
    return gutter[0] - gutter[1]


def _independent(west: list[Line], east: list[Line], marks: Marks, hints: Hints) -> bool:
    overlap = min(west[-1].box.bottom, east[-1].box.bottom) - max(west[0].box.top, east[0].box.top)
    if overlap <= 0:
        return False
    if _is_list(east) and _is_list(west):
        return True
    if is_prose(west) and not _only_labels(east) or is_prose(east) and is_prose(west):
        return True
    if _headed_lists(west, east, hints) or _labelled_lists(west, hints) and _labelled_lists(east, hints):
        return True
    lonely_east, lonely_west = _unmatched(east, west), _unmatched(west, east)
    if min(len(west), len(east)) >= 4 and lonely_east > 0.4 and lonely_west > 0.4:
        return True
    return _own_labels(west, marks) and _own_labels(east, marks)


def _headed_lists(west: list[Line], east: list[Line], hints: Hints) -> bool:
    """Tell whether two lists stand side by side, each under a heading such as "options"."""
    if len(east) < 3 or is_bullet(east[0].words[0].text) or not hints.heads_list(east[0].text):
        return False
    level = abs(west[0].box.top - east[0].box.top) < west[0].size
    left_heads = hints.heads_list(west[0].text) or west[0].text.isupper() or west[0].bold
    rest = [line for line in east[1:] if len(line.text) > 3]
    worded = sum(len(line.words) for line in rest) >= 1.6 * len(rest) and len(rest) >= 0.8 * (len(east) - 1)
    return level and left_heads and worded and not hints.is_label(west[0].text)


def _labelled_lists(lines: list[Line], hints: Hints) -> bool:
    """Tell whether lines are a list of "label: value" of their own, as where each column is the sheet of one van."""
    matches = [INLINE_LABEL.match(line.text) for line in lines]
    labelled = sum(match is not None and hints.is_label(match.group(1)) for match in matches)
    return labelled >= 3 and labelled >= LABELLED_SHARE * len(lines)


def _is_list(lines: list[Line]) -> bool:
    starts = [is_bullet(line.words[0].text) and len(line.words) > 1 for line in lines]
    return sum(starts) >= 2 and sum(starts) >= 0.3 * len(lines)


def is_prose(lines: list[Line]) -> bool:
    """Tell whether the lines are running text: long lines that mostly fill their column."""
    if len(lines) < 3:
        return False
    counts = [len(line.words) for line in lines]
    if sum(counts) < PROSE_WORDS * len(counts):
        return False
    right = max(line.box.x1 for line in lines)
    left = min(line.box.x0 for line in lines)
    full = sum(line.box.x1 > right - 0.22 * (right - left) for line in lines)
    whole = sum(len(segments_of(line, SEGMENT_GAP)) == 1 for line in lines)
    return full >= 0.5 * len(lines) and whole >= 0.7 * len(lines)


def _only_labels(lines: list[Line]) -> bool:
    """Tell whether the lines are so short that they are values of what stands beside them, as prices are."""
    marks = all(len(word.text) <= MARK for line in lines for word in line.words)
    return marks or all(len(line.words) <= (2 if line.text[0].isalpha() else 4) for line in lines)


def _unmatched(lines: list[Line], others: list[Line]) -> float:
    """Give the share of lines, within the height of the others, that no line of theirs is level with."""
    top, bottom = others[0].box.top - 1, others[-1].box.bottom + 1
    inside = [line for line in lines if top <= line.box.middle[1] <= bottom]
    if not inside:
        return 0.0
    bases = sorted(other.first_base for other in others)
    lonely = sum(_distance(line.first_base, bases) > 0.15 * line.size for line in inside)
    return lonely / len(inside)


def _distance(value: float, others: list[float]) -> float:
    """Give how far the nearest of some numbers in order is from a number."""
    place = bisect.bisect_left(others, value)
    return min(abs(value - other) for other in others[max(0, place - 1) : place + 1])


def _own_labels(lines: list[Line], marks: Marks) -> bool:
    """Tell whether the lines are a list of labels and values of their own.

    Most lines have two segments, the first without digits, the second mostly with.
    """
    pairs = [segments_of(line, SEGMENT_GAP, marks.walls_at(line)) for line in lines]
    pairs = [pair for pair in pairs if len(pair) == 2]
    if len(pairs) < 3 or len(pairs) < 0.5 * len(lines):
        return False
    wordy = sum(not _has_digit(pair[0].text) for pair in pairs)
    valued = sum(_has_digit(pair[1].text) for pair in pairs)
    return wordy >= 0.7 * len(pairs) and valued >= 0.4 * len(pairs)


def _has_digit(text: str) -> bool:
    return any(letter.isdecimal() for letter in text)
