"""Framed cards and side-bars: what stands in a box is read apart from the page around it."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from specscan.reading.letters.sheet import Fill, Sheet
from specscan.reading.letters.words import Word, build_lines, is_bullet, middle_of, segments_of
from specscan.reading.tables.alignment import SEGMENT_GAP
from specscan.records.text import Box

CARD_MIN_HEIGHT = 2.6  # em
CARD_MIN_WORDS = 3
ROW_LINES = 3  # from the top of a row to the line that all its cells share
BAND_LINES, BAND_SHARE = 3, 0.9  # of the band of a title: lines at most, and its width beside that of the page's text
HEAD_BAR = 6.0  # em, how high the shaded head of a table can be


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
        tops = _tops_page(groups[index], boxes[index], groups[-1])
        if goes_on or tops or _heads_table(groups[index], boxes[index], groups[-1]):
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


def _tops_page(held: list[Word], box: Box, outside: list[Word]) -> bool:
    """Tell whether a box is the band of a title above all that a page says, and heads it."""
    upright = [word.box for word in outside if not word.direction]
    if not upright or any(word.middle[1] < box.bottom for word in upright):
        return False
    wide = box.width >= BAND_SHARE * (max(word.x1 for word in upright) - min(word.x0 for word in upright))
    return wide and len(build_lines(held)) <= BAND_LINES


def _heads_table(held: list[Word], box: Box, outside: list[Word]) -> bool:
    """Tell whether a shaded box is the head bar of a table below it: wrapped heads over columns that line up."""
    em = middle_of([word.size for word in held])
    if box.height > HEAD_BAR * em:
        return False
    reach = [w for w in outside if not w.direction and 0 <= w.box.middle[1] - box.bottom <= HEAD_BAR * em]
    below = build_lines([word for word in reach if box.x0 - em <= word.box.middle[0] <= box.x1 + em])
    if not below:
        return False
    # A cell of two lines beside cells of one begins above the line that all of them share.
    parts = max(([part.box for part in segments_of(line, SEGMENT_GAP)] for line in below[:ROW_LINES]), key=len)
    said = [part for line in build_lines(held) for part in segments_of(line, SEGMENT_GAP)]
    if any(is_bullet(part.words[0].text) and len(part.words) > 1 for part in said):
        return False  # marks and what they mean
    heads = [part.box for part in said]
    headed = sum(any(part.overlap_x(head) > 0.5 * min(part.width, head.width) for head in heads) for part in parts)
    return len(parts) >= 3 and headed >= 0.6 * len(parts)
