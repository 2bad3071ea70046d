"""Rows of dots that lead the eye from a label to its value on a scan.

The recogniser reads such a row as a few stray dots, or as none. The row is found by its equal dots, is taken off the
picture before the text is read, and is put on the sheet as the dots that a text layer would have.
"""

from __future__ import annotations

import statistics
from collections.abc import Iterator, Sequence
from dataclasses import replace

import numpy as np

from specscan.reading.letters.sheet import Glyph, Style
from specscan.reading.ocr.engine import Picture
from specscan.reading.ocr.picture import POINTS, Mask, letter_cell
from specscan.records.text import Box

# Common practice, no source; in points.
DOT = (0.5, 2.4)  # across
STEP = (1.4, 8.0)  # from one dot to the next
LEVEL = 0.7  # by which dots of a row differ in height at most
UNEVEN = 0.3  # share by which their distances differ from the usual one at most
FEWEST = 5
BASE = 0.2  # em between the feet of dots and the baseline of the text that they belong to


def find_leaders(ink: Mask, dpi: float) -> list[Box]:
    """Give the rows of leader dots in the ink of a page, in pixels."""
    import cv2

    count, _, stats, _ = cv2.connectedComponentsWithStats(ink.astype(np.uint8), connectivity=8)
    scale = dpi / POINTS
    dots = [
        Box(x, y, x + w, y + h)
        for x, y, w, h, _ in stats[1:count].tolist()
        if DOT[0] * scale <= max(w, h) <= DOT[1] * scale and min(w, h) >= 0.5 * max(w, h)
    ]
    dots.sort(key=lambda box: box.middle[1])
    rows: list[list[Box]] = []
    for dot in dots:
        if rows and dot.middle[1] - rows[-1][0].middle[1] <= LEVEL * scale:
            rows[-1].append(dot)
        else:
            rows.append([dot])
    return [run for row in rows if len(row) >= FEWEST for run in _runs(row, scale)]


def _runs(row: list[Box], scale: float) -> Iterator[Box]:
    """Give the stretches of a row in which dots follow each other at equal steps."""
    row = sorted(row, key=lambda box: box.x0)
    run = [row[0]]
    for dot in [*row[1:], None]:
        step = dot.middle[0] - run[-1].middle[0] if dot is not None else 0.0
        steps = [right.middle[0] - left.middle[0] for left, right in zip(run, run[1:], strict=False)]
        usual = statistics.median(steps) if steps else step
        if dot is not None and STEP[0] * scale <= step <= STEP[1] * scale and abs(step - usual) <= UNEVEN * usual:
            run.append(dot)
            continue
        if len(run) >= FEWEST:
            yield Box(run[0].x0, min(b.top for b in run), run[-1].x1, max(b.bottom for b in run))
        run = [dot] if dot is not None else []


def without(places: Sequence[Box], picture: Picture, dpi: float) -> Picture:
    """Give the picture with its ground at places (pixels), a row of dots say."""
    cleared = picture.copy() if places else picture
    edge = max(1, round(0.4 * dpi / POINTS))
    for row in places:
        y0, y1 = max(0, int(row.top) - edge), int(row.bottom) + edge
        x0, x1 = max(0, int(row.x0) - edge), int(row.x1) + edge
        part = cleared[y0:y1, x0:x1]
        part[:] = np.percentile(part, 85) if part.size else 0
    return cleared


def leader_glyphs(leaders: Sequence[Box], lines: Sequence[tuple[Box, float, float]], scale: float) -> list[Glyph]:
    """Give rows of dots as glyphs, where they stand on the baseline of a line of text.

    ``lines`` are boxes (pixels), baselines and font sizes of lines of text; ``scale`` is in points a pixel.
    """
    glyphs: list[Glyph] = []
    for row in leaders:
        near = [
            (base, size) for box, base, size in lines if box.top <= row.middle[1] <= box.bottom + BASE * size
            and abs(base - row.bottom) <= BASE * size
        ]  # fmt: skip
        if not near:
            continue
        base, size = min(near, key=lambda one: abs(one[0] - row.bottom))
        style = Style(font="ocr", em=size * scale)
        number = max(FEWEST, round((row.x1 - row.x0) / (0.28 * size)))
        edges = [row.x0 + (row.x1 - row.x0) * place / number for place in range(number + 1)]
        for left, right in zip(edges, edges[1:], strict=False):
            box = letter_cell(left, right, base, size, scale)
            glyphs.append(Glyph(".", box, box.x0, box.x1, base * scale, style.em, style, False, False))
        glyphs.append(replace(glyphs[-1], text=" ", start=glyphs[-1].stop))
    return glyphs
