"""Diamonds and stars that mark cells of a scanned table: told by their shape, for the recogniser mistakes them.

They are taken off the picture before the text is read, and are put on the sheet as the signs that they are.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from specscan.reading.letters.sheet import Glyph, Style
from specscan.reading.ocr.engine import Picture
from specscan.reading.ocr.picture import POINTS, Mask, letter_cell
from specscan.records.text import Box

# Set by looking at scans made for the purpose; common practice, no source.
ACROSS = (4.0, 11.0)  # points
JOINED = 1.5  # points: a diamond of four parts has such white between them at most
ALIKE = 0.8  # share of a shape and what is drawn that both cover
FULL, HOLLOW_BELOW = 0.93, 0.55  # share of a shape that is inked: all of it; no more than an outline
WHOLE_FROM, PARTED_TO = 0.93, 0.82  # darkness of the middle of a diamond, as a share of that around it
STAR = 0.382  # radius of the inner corners of a five-pointed star, of that of its points


def find_signs(picture: Picture, ink: Mask, dpi: float) -> list[tuple[Box, str]]:
    """Give the diamonds and stars in the ink of a page, in pixels, each with its sign."""
    import cv2

    scale = dpi / POINTS
    reach = max(2, round(JOINED * scale))
    joined = cv2.morphologyEx(ink.astype(np.uint8), cv2.MORPH_CLOSE, np.ones((reach, reach), np.uint8))
    count, labels, stats, _ = cv2.connectedComponentsWithStats(joined, connectivity=8)
    found = []
    for number, (x, y, w, h, _) in enumerate(stats[1:count].tolist(), start=1):
        if not ACROSS[0] * scale <= min(w, h) <= max(w, h) <= ACROSS[1] * scale or abs(w - h) > 0.15 * max(w, h):
            continue
        own = labels[y : y + h, x : x + w] == number
        sign = _sign(_filled(own), ink[y : y + h, x : x + w] & own, picture[y : y + h, x : x + w])
        if sign:
            found.append((Box(x, y, x + w, y + h), sign))
    return found


def _filled(mask: Mask) -> Mask:
    """Give a shape with its holes filled."""
    import cv2

    outlines, _ = cv2.findContours(mask.astype(np.uint8), cv2.RETR_EXTERNAL, cv2.CHAIN_APPROX_NONE)
    whole = np.zeros(mask.shape, np.uint8)
    cv2.drawContours(whole, outlines, -1, (1,), thickness=-1)
    return whole.astype(bool)


def _sign(whole: Mask, inked: Mask, shades: Picture) -> str:
    """Give the sign of a filled shape, by how much of it is inked; empty for other shapes, and where it is unsure."""
    share = float(inked.sum()) / max(1, int(whole.sum()))
    corners = [(0.5, 0.0), (1.0, 0.5), (0.5, 1.0), (0.0, 0.5)]
    if not _covers(whole, corners):
        return "★" if share >= FULL and _covers(whole, _star()) else ""
    if share < HOLLOW_BELOW:
        return "◇"
    middle = _middle(shades)
    return "◆" if middle >= WHOLE_FROM else "❖" if middle <= PARTED_TO else ""


def _middle(shades: Picture) -> float:
    """Give how dark the middle of a diamond is, as a share of the darkness between it and the corners.

    A diamond of four parts has a white cross in its middle, which may be too thin to show as white.
    """
    height, width = shades.shape
    ground = float(shades.max())
    wide = max(1, round(0.04 * (height + width)))

    def dark(x: float, y: float) -> float:
        row, column = int(y * height), int(x * width)
        first, left = max(0, row - wide // 2), max(0, column - wide // 2)
        return ground - float(shades[first : first + wide, left : left + wide].mean())

    around = [dark(0.5, 0.24), dark(0.76, 0.5), dark(0.5, 0.76), dark(0.24, 0.5)]
    return dark(0.5, 0.5) / max(1.0, float(np.mean(around)))


def _star() -> list[tuple[float, float]]:
    points = []
    for number in range(10):
        radius, angle = (1.0 if number % 2 == 0 else STAR), math.pi * number / 5
        points.append((radius * math.sin(angle), -radius * math.cos(angle)))
    left, top = min(x for x, _ in points), min(y for _, y in points)
    wide, high = max(x for x, _ in points) - left, max(y for _, y in points) - top
    return [((x - left) / wide, (y - top) / high) for x, y in points]


def _covers(whole: Mask, corners: Sequence[tuple[float, float]]) -> bool:
    """Tell whether a shape is the polygon with these corners (shares of its box)."""
    import cv2

    height, width = whole.shape
    fine = 8  # parts of a pixel
    polygon: NDArray[np.int32] = np.array([(x * width, y * height) for x, y in corners]) * fine
    drawn = np.zeros((height * fine, width * fine), np.uint8)
    cv2.fillPoly(drawn, [polygon.astype(np.int32)], (1,))
    ideal = drawn.reshape(height, fine, width, fine).mean(axis=(1, 3))
    both, either = np.minimum(ideal, whole).sum(), np.maximum(ideal, whole).sum()
    return bool(both >= ALIKE * either)


def sign_glyphs(
    signs: Sequence[tuple[Box, str]], lines: Sequence[tuple[Box, float, float]], scale: float
) -> list[Glyph]:
    """Give signs as glyphs on the baseline of the line of text that they stand beside, or on a line of their own.

    ``lines`` are boxes (pixels), baselines and font sizes of lines of text; ``scale`` is in points a pixel.
    """
    glyphs = []
    for box, sign in signs:
        beside = [(base, size) for line, base, size in lines if base - 0.8 * size <= box.middle[1] <= base + 0.1 * size]
        middle = box.middle[1]
        own = (box.bottom, box.height / 0.75)
        base, size = min(beside, key=lambda one: abs(one[0] - 0.36 * one[1] - middle), default=own)
        style = Style(font="ocr", em=size * scale)
        cell = letter_cell(box.x0, box.x1, base, size, scale)
        for text, start in ((sign, cell.x0), (" ", cell.x1)):
            glyphs.append(Glyph(text, cell, start, cell.x1, base * scale, style.em, style, False, False))
    return glyphs
