"""What is drawn on a page besides text: shaded bars, ruling lines, bullets and marks.

They are found in the picture of the page and given as the strokes, fills and dots that a PDF's path objects would give.
"""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

from specscan.reading.letters.sheet import Dot, Fill, Stroke
from specscan.reading.ocr.engine import Picture
from specscan.reading.ocr.picture import POINTS, Mask
from specscan.records.text import Box

RULE_LENGTH = 0.3  # inches: shorter straight ink is a dash or part of a letter
RULE_THICK = 7  # pixels at the usual 200 dots per inch, 2.5 points
HAIR = 0.25  # half the thickness (points) that a rule has on the sheet
BESIDE = 5  # pixels beside a rule where its ground is looked at
RULE_DARKER, GROUNDS_DIFFER = 12, 45  # levels of gray: of a rule than its ground; of the grounds on its two sides
BAR_LEAST = (7.0, 36.0)  # points: height and width of the smallest shaded bar
BAR_LIGHTER = 7  # levels of gray by which a shaded bar differs from the paper at least
BAR_EVEN = 9.0  # levels of gray by which a bar varies at most
TEXT_GAP = 9  # points: white between the strokes of text is narrower
DARK_SHARE = 0.55  # of a dark bar's pixels that are dark where light text stands on it
DOT_LEAST, DOT_MOST = 2.6, 9.0  # points across: bullets and marks of tables
LEADERS = 4  # equal dots in a row lead the eye and are no bullets


def find_fills(picture: Picture, dpi: float) -> list[Fill]:
    """Give the shaded bars and boxes of a page (in points) with their shade: rows of tables, heads, side-bars."""
    import cv2

    scale = POINTS / dpi
    size = max(1, round(picture.shape[1] * scale)), max(1, round(picture.shape[0] * scale))
    small = cv2.resize(picture, size, interpolation=cv2.INTER_AREA)
    kernel = np.ones((TEXT_GAP, TEXT_GAP), np.uint8)
    bare = cv2.blur(cv2.morphologyEx(small, cv2.MORPH_CLOSE, kernel), (3, 3))  # dark text is gone
    paper = int(np.bincount(bare.ravel(), minlength=256).argmax())
    dark_pixels = (small < paper - 90).astype(np.float32)
    dark = cv2.blur(dark_pixels, (TEXT_GAP, TEXT_GAP)) > DARK_SHARE
    shaded = (bare < paper - BAR_LIGHTER) & ~cv2.dilate(dark.astype(np.uint8), kernel).astype(bool)
    fills = []
    for mask in (shaded, dark):
        for box, inside in _rectangles(mask):
            levels = bare[inside] if mask is shaded else small[inside][small[inside] < paper - 90]
            if mask is shaded and float(levels.std()) > BAR_EVEN:
                continue
            shade = int(np.median(levels))
            fills.append(Fill(box, (shade, shade, shade), framed=False))
    return fills


def _rectangles(mask: Mask) -> Iterator[tuple[Box, Mask]]:
    """Give the parts of a mask (one pixel a point) that fill an upright rectangle."""
    import cv2

    count, labels, stats, _ = cv2.connectedComponentsWithStats(np.asarray(mask, np.uint8), connectivity=4)
    for number, (x, y, w, h, area) in enumerate(stats[1:count].tolist(), start=1):
        if h >= BAR_LEAST[0] and w >= BAR_LEAST[1] and area >= 0.9 * w * h:
            yield Box(float(x), float(y), float(x + w), float(y + h)), labels == number


def without_dark_bars(ink: Mask, fills: list[Fill], dpi: float) -> Mask:
    """Give the ink without that in dark bars, where ink and ground are the other way round."""
    cleared = ink.copy()
    scale = dpi / POINTS
    for fill in fills:
        if fill.color is not None and fill.color[0] < 128:
            box = fill.box
            cleared[round((box.top - 1) * scale) : round((box.bottom + 1) * scale),
                    max(0, round((box.x0 - 1) * scale)) : round((box.x1 + 1) * scale)] = False  # fmt: skip
    return cleared


def find_rules(picture: Picture, ink: Mask, texts: list[Box], dpi: float) -> tuple[list[Stroke], Mask]:
    """Give the ruling lines of a page (in points) and the pixels that they cover.

    Straight ink inside one of ``texts``, the boxes of lines of text (in points), is part of its letters; straight ink
    between two different grounds is the edge of something.
    """
    strokes: list[Stroke] = []
    covered = np.zeros(ink.shape, np.bool_)
    scale = POINTS / dpi
    for horizontal in (True, False):
        shades = picture if horizontal else picture.T
        for long, x, y, w, h in _straight_parts(ink if horizontal else ink.T, int(RULE_LENGTH * dpi)):
            if not _is_line(shades, long, x, y):
                continue
            if not horizontal:
                long, x, y, w, h = long.T, y, x, h, w
            stroke = _stroke(x * scale, y * scale, (x + w) * scale, (y + h) * scale, horizontal)
            if any(_inside(stroke, text) for text in texts):
                continue
            covered[y : y + h, x : x + w] |= long
            strokes.append(stroke)
    return strokes, covered & ink


def _straight_parts(ink: Mask, length: int) -> Iterator[tuple[Mask, int, int, int, int]]:
    """Give the long level parts of ink that are thin, each with its place: x, y, width, height."""
    import cv2

    # A rule that was straightened climbs a pixel now and then: it is widened across before its length is asked for.
    picture = cv2.dilate(np.ascontiguousarray(ink).astype(np.uint8), np.ones((3, 1), np.uint8))
    opened = cv2.morphologyEx(picture, cv2.MORPH_OPEN, np.ones((1, length), np.uint8))
    count, labels, stats, _ = cv2.connectedComponentsWithStats(opened, connectivity=8)
    for number, (x, y, w, h, area) in enumerate(stats[1:count].tolist(), start=1):
        # The mean thickness, less what widening added, is a share of the length that no bar or picture has.
        if area / w - 2 <= max(RULE_THICK, 0.02 * w) and h <= max(3 * RULE_THICK, 0.03 * w) and w >= length:
            yield np.asarray(labels[y : y + h, x : x + w] == number), x, y, w, h


def _is_line(shades: Picture, long: Mask, x: int, y: int) -> bool:
    """Tell whether a level part is a line on even ground, and not the border between two grounds."""
    columns = np.arange(long.shape[1])[:: max(1, long.shape[1] // 200)]
    first = y + long.argmax(axis=0)[columns]
    last = y + long.shape[0] - 1 - long[::-1].argmax(axis=0)[columns]
    height = shades.shape[0]
    above = shades[np.clip(first - BESIDE, 0, height - 1), x + columns]
    below = shades[np.clip(last + BESIDE, 0, height - 1), x + columns]
    middle = shades[np.clip((first + last) // 2, 0, height - 1), x + columns]
    grounds = float(np.median(above)), float(np.median(below))
    return abs(grounds[0] - grounds[1]) <= GROUNDS_DIFFER and float(np.median(middle)) < min(grounds) - RULE_DARKER


def _stroke(x0: float, top: float, x1: float, bottom: float, horizontal: bool) -> Stroke:
    if horizontal:
        middle = (top + bottom) / 2
        return Stroke(x0, middle - HAIR, x1, middle + HAIR)
    middle = (x0 + x1) / 2
    return Stroke(middle - HAIR, top, middle + HAIR, bottom)


def _inside(stroke: Stroke, text: Box) -> bool:
    x, y = (stroke.x0 + stroke.x1) / 2, (stroke.top + stroke.bottom) / 2
    if not text.holds(x, y):
        return False
    if stroke.horizontal:
        return stroke.x1 - stroke.x0 <= text.width and abs(y - text.middle[1]) < 0.32 * text.height
    return stroke.bottom - stroke.top <= 1.2 * text.height


def find_dots(ink: Mask, taken: list[Box], dpi: float) -> list[Dot]:
    """Give the small filled or open circles and squares outside the boxes ``taken`` (all in points).

    Dots that lead the eye from a label to its value are left out.
    """
    import cv2

    scale = POINTS / dpi
    count, labels, stats, _ = cv2.connectedComponentsWithStats(ink.astype(np.uint8), connectivity=8)
    dots: list[Dot] = []
    for number, (x, y, w, h, _) in enumerate(stats[1:count].tolist(), start=1):
        if not DOT_LEAST <= max(w, h) * scale <= DOT_MOST:
            continue
        box = Box(x * scale, y * scale, (x + w) * scale, (y + h) * scale)
        if any(one.holds(*box.middle) for one in taken):
            continue
        shape = shape_of(np.asarray(labels[y : y + h, x : x + w] == number))
        if shape is not None:
            dots.append(Dot(box, *shape))
    return [dot for dot in dots if _row_of(dot, dots) < LEADERS]


def _row_of(dot: Dot, dots: list[Dot]) -> int:
    """Give how many dots stand close together in one row with this one."""
    size = dot.box.width
    row = sorted(other.box.middle[0] for other in dots if abs(other.box.middle[1] - dot.box.middle[1]) < 0.5 * size)
    at = row.index(dot.box.middle[0])
    first = last = at
    while first > 0 and row[first] - row[first - 1] < 4 * size:
        first -= 1
    while last + 1 < len(row) and row[last + 1] - row[last] < 4 * size:
        last += 1
    return last - first + 1


def shape_of(mask: Mask) -> tuple[bool, bool] | None:
    """Tell whether a small spot is filled and whether it is round; ``None`` for any other shape."""
    import cv2

    height, width = mask.shape
    if min(height, width) < 4 or abs(width - height) > max(1, 0.15 * max(width, height)):
        return None
    padded = np.pad(mask.astype(np.uint8), 1)
    outlines, _ = cv2.findContours(padded, cv2.RETR_EXTERNAL, cv2.CHAIN_APPROX_NONE)
    outline = max(outlines, key=len)
    around = cv2.contourArea(outline) / ((height - 1) * (width - 1))
    is_round, is_square = 0.62 <= around <= 0.86, around >= 0.93
    if not (is_round or is_square):
        return None
    whole = np.zeros_like(padded)
    cv2.drawContours(whole, [outline], -1, (1,), thickness=-1)
    share = float(mask.sum()) / max(1, int(whole.sum()))
    if share >= 0.93:
        return True, is_round
    middle: NDArray[np.bool_] = mask[height // 3 : height - height // 3, width // 3 : width - width // 3]
    return (False, is_round) if min(mask.shape) >= 7 and middle.mean() < 0.15 else None
