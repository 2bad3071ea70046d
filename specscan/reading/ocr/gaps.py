"""Rules of a scanned table that are too pale in places → whole rules.

A scan loses stretches of thin lines, and a cell without a rule beside it would take in its neighbours. Between the
lines that cross it, a rule that was found elsewhere is completed where the picture is darker along it, however little,
and where no letter stands on it: there a cell does span columns or rows.
"""

from __future__ import annotations

import statistics
from collections.abc import Iterator, Sequence

import numpy as np

from specscan.reading.letters.sheet import Stroke
from specscan.reading.ocr.engine import Picture
from specscan.reading.ocr.picture import POINTS
from specscan.records.text import Box

# All of these were set by looking at scans made for the purpose; common practice, no source.
SAME_LINE = 2.0  # points: strokes this near to each other are pieces of one rule
REACH = 3.0  # points by which a rule may miss the one that it meets
BAND = (5.0, 200.0)  # points: the least and greatest distance of two lines between which a rule is completed
COVERED = 0.9  # of a band from which on nothing is missing
BESIDE = (3, 8)  # pixels beside a rule between which its ground is looked at
WANDERS = 2  # pixels by which a rule may stray from its place
LEAST_DARKER = 3.0  # levels of gray; and so many times the unevenness of the ground:
OVER_NOISE = 3.0


def completed(strokes: Sequence[Stroke], picture: Picture, letters: Sequence[Box], dpi: float) -> list[Stroke]:
    """Give strokes (points) with what is missing of them on a page's straightened picture.

    ``letters`` are the boxes of all letters on the page, in points.
    """
    whole = list(strokes)
    for horizontal in (False, True, False):
        along = [_turned(one) for one in whole] if horizontal else whole
        boxes = [Box(box.top, box.x0, box.bottom, box.x1) for box in letters] if horizontal else letters
        shades = picture.T if horizontal else picture
        found = [stroke for stroke in _missing(along, boxes) if _is_darker(shades, stroke, dpi / POINTS)]
        whole += [_turned(one) for one in found] if horizontal else found
    return whole


def _turned(stroke: Stroke) -> Stroke:
    return Stroke(stroke.top, stroke.x0, stroke.bottom, stroke.x1)


def _missing(strokes: Sequence[Stroke], letters: Sequence[Box]) -> Iterator[Stroke]:
    """Give the stretches of upright rules that are missing between two lines that meet them."""
    across = [one for one in strokes if one.horizontal]
    for rule in _rules([one for one in strokes if not one.horizontal]):
        x = statistics.median((one.x0 + one.x1) / 2 for one in rule)
        meets = sorted((one.top + one.bottom) / 2 for one in across if one.x0 - REACH <= x <= one.x1 + REACH)
        for top, bottom in zip(meets, meets[1:], strict=False):
            if not BAND[0] <= bottom - top <= BAND[1]:
                continue
            held = sum(max(0.0, min(one.bottom, bottom) - max(one.top, top)) for one in rule)
            if held >= COVERED * (bottom - top):
                continue
            if any(box.x0 < x < box.x1 and box.bottom > top and box.top < bottom for box in letters):
                continue
            near = min(rule, key=lambda one: abs((one.top + one.bottom) - (top + bottom)))
            yield Stroke(near.x0, top, near.x1, bottom)


def _rules(upright: Sequence[Stroke]) -> list[list[Stroke]]:
    """Put the pieces of each rule together."""
    rules: list[list[Stroke]] = []
    for stroke in sorted(upright, key=lambda one: one.x0):
        if rules and stroke.x0 - rules[-1][-1].x0 <= SAME_LINE:
            rules[-1].append(stroke)
        else:
            rules.append([stroke])
    return rules


def _is_darker(picture: Picture, stroke: Stroke, scale: float) -> bool:
    """Tell whether the picture is darker along an upright stroke than on both sides of it."""
    top, bottom = round(stroke.top * scale) + 2, round(stroke.bottom * scale) - 1
    x = round((stroke.x0 + stroke.x1) / 2 * scale)
    if bottom - top < 3 or x - BESIDE[1] < 0 or x + BESIDE[1] >= picture.shape[1]:
        return False
    part = picture[top:bottom, x - BESIDE[1] : x + BESIDE[1] + 1].astype(np.float32)
    shades = np.median(part, axis=0) * 0.5 + part.mean(axis=0) * 0.5
    middle = BESIDE[1]
    sides = shades[: middle - BESIDE[0] + 1], shades[middle + BESIDE[0] :]
    grounds = [float(np.median(side)) for side in sides]
    uneven = max(float(np.std(side)) for side in sides)
    line = float(shades[middle - WANDERS : middle + WANDERS + 1].min())
    return min(grounds) - line > max(LEAST_DARKER, OVER_NOISE * uneven)
