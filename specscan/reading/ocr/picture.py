"""A page as a picture: drawn, set straight, its ink told from its paper."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from specscan.reading.ocr.engine import Picture
from specscan.records.text import Box

POINTS = 72.0
ASCENT, DESCENT = 0.93, 0.23  # em above and below the baseline that a letter's cell takes
SKEW_LEAST, SKEW_MOST = 0.05, 12.0  # degrees: below is none, above is no skew but something else
INK_SAMPLE = 60_000  # pixels of ink that show the skew well enough
LONG_LINE = 5.0  # width over height from which on a line of text shows the skew well

Mask = NDArray[np.bool_]


@dataclass(frozen=True, slots=True)
class Frame:
    """How a page that was set straight lies on the page as displayed.

    ``turn`` (0, 90, 180, 270) is by how much the displayed page was turned clockwise to be upright, ``skew`` by how
    many degrees it was then still turned clockwise. Sizes are in points; ``width`` and ``height`` are of the upright
    page.
    """

    width: float
    height: float
    turn: int = 0
    skew: float = 0.0

    def back(self, box: Box) -> Box:
        """Give the box on the page as displayed; it keeps its size, and its middle goes to its true place."""
        x, y = self.point_back(*box.middle)
        across, down = (box.height, box.width) if self.turn in (90, 270) else (box.width, box.height)
        return Box(x - across / 2, y - down / 2, x + across / 2, y + down / 2)

    def point_back(self, x: float, y: float) -> tuple[float, float]:
        """Give the place on the displayed page of a point of the straight page."""
        angle = math.radians(self.skew)
        dx, dy = x - self.width / 2, y - self.height / 2
        x = self.width / 2 + dx * math.cos(angle) - dy * math.sin(angle)
        y = self.height / 2 + dx * math.sin(angle) + dy * math.cos(angle)
        if self.turn == 90:
            return y, self.width - x
        if self.turn == 180:
            return self.width - x, self.height - y
        if self.turn == 270:
            return self.height - y, x
        return x, y


def turned(picture: Picture, degrees: int) -> Picture:
    """Turn a picture clockwise by a multiple of 90 degrees."""
    return np.ascontiguousarray(np.rot90(picture, -degrees // 90))


def scaled(picture: Picture, factor: float) -> Picture:
    """Give the picture in another size."""
    import cv2

    if abs(factor - 1) < 0.01:
        return picture
    size = max(1, round(picture.shape[1] * factor)), max(1, round(picture.shape[0] * factor))
    how = cv2.INTER_AREA if factor < 1 else cv2.INTER_CUBIC
    return np.asarray(cv2.resize(picture, size, interpolation=how), np.uint8)


def skew_of(corners: NDArray[np.float32]) -> float:
    """Give by how many degrees lines of text run downwards to the right: the median, long lines weighing most."""
    slopes: list[tuple[float, float]] = []
    for quad in corners:
        along = (quad[1] - quad[0] + quad[2] - quad[3]) / 2
        across = float(np.linalg.norm(quad[3] - quad[0]))
        length = float(np.linalg.norm(along))
        angle = math.degrees(math.atan2(along[1], along[0]))
        if length > LONG_LINE * max(across, 1.0) and abs(angle) <= SKEW_MOST:
            slopes.append((angle, length))
    if not slopes:
        return 0.0
    slopes.sort()
    half, passed = sum(length for _, length in slopes) / 2, 0.0
    for angle, length in slopes:
        passed += length
        if passed >= half:
            return angle if abs(angle) >= SKEW_LEAST else 0.0
    return 0.0


def refined_skew(ink: Mask, guess: float) -> float:
    """Give the skew near ``guess`` (degrees) at which the rows of ink are sharpest; short lines of text show it too."""
    ys, xs = np.nonzero(ink)
    if len(ys) < 200:
        return guess
    step = max(1, len(ys) // INK_SAMPLE)
    ys, xs = ys[::step].astype(np.float64), xs[::step].astype(np.float64)

    def sharpness(angle: float) -> float:
        slope = math.radians(angle)
        rows = np.bincount((ys * math.cos(slope) - xs * math.sin(slope) + ink.shape[1]).astype(np.int64))
        return float(np.square(rows, dtype=np.float64).sum())

    for reach, pace in ((1.5, 0.1), (0.1, 0.02)):
        steps = round(reach / pace)
        guess = max((guess + pace * number for number in range(-steps, steps + 1)), key=sharpness)
    return guess if abs(guess) >= SKEW_LEAST else 0.0


def straightened(picture: Picture, skew: float) -> Picture:
    """Turn a picture counterclockwise by ``skew`` degrees about its middle; what comes in at the edges is paper."""
    import cv2

    if not skew:
        return picture
    height, width = picture.shape
    matrix = cv2.getRotationMatrix2D((width / 2, height / 2), skew, 1.0)
    paper = int(np.median(picture[::7, ::7]))
    turned_picture = cv2.warpAffine(
        picture, matrix, (width, height), flags=cv2.INTER_CUBIC, borderMode=cv2.BORDER_CONSTANT, borderValue=(paper,)
    )
    return np.asarray(turned_picture, np.uint8)


def straight_corners(corners: NDArray[np.float32], skew: float, width: float, height: float) -> NDArray[np.float32]:
    """Give where corners lie once the picture is straightened."""
    angle = math.radians(skew)
    x, y = corners[..., 0] - width / 2, corners[..., 1] - height / 2
    return np.stack(
        [
            width / 2 + x * math.cos(angle) + y * math.sin(angle),
            height / 2 - x * math.sin(angle) + y * math.cos(angle),
        ],
        axis=-1,
    ).astype(np.float32)


def dark_ink(picture: Picture, dpi: float) -> Mask:
    """Tell for each pixel of a page whether it is darker than the paper around it."""
    import cv2

    around = int(dpi * 0.15) | 1
    smooth = cv2.GaussianBlur(picture, (3, 3), 0)
    mean = cv2.blur(smooth, (around, around))
    return np.asarray(smooth.astype(np.int16) < mean.astype(np.int16) - 14)


def strip_ink(strip: Picture, rules: Mask) -> Mask:
    """Tell the ink of a strip of text from its ground, dark on light or light on dark; rules do not count."""
    import cv2

    smooth = cv2.GaussianBlur(strip, (3, 3), 0)
    level, _ = cv2.threshold(smooth, 0, 255, cv2.THRESH_BINARY + cv2.THRESH_OTSU)
    dark = smooth <= level
    ink = np.asarray(~dark if dark.mean() > 0.5 else dark) & ~rules
    height = ink.shape[0]
    count, labels, stats, _ = cv2.connectedComponentsWithStats(ink.astype(np.uint8), connectivity=8)
    for number, (_, y, _, h, area) in enumerate(stats[1:count].tolist(), start=1):
        at_edge = (y == 0 or y + h == height) and not (y < 0.7 * height and y + h > 0.3 * height)
        if area < 3 or at_edge:  # dust, or the feet and heads of the lines above and below
            ink[labels == number] = False
    return ink


def strip_is_reversed(strip: Picture) -> bool:
    """Tell whether light text stands on a dark ground."""
    import cv2

    level, _ = cv2.threshold(strip, 0, 255, cv2.THRESH_BINARY + cv2.THRESH_OTSU)
    return bool((strip <= level).mean() > 0.5)


def letter_cell(x0: float, x1: float, base: float, em: float, scale: float) -> Box:
    """Give the cell of an upright letter between two edges, all in pixels; ``scale`` is in points a pixel."""
    return Box(x0 * scale, (base - ASCENT * em) * scale, x1 * scale, (base + DESCENT * em) * scale)
