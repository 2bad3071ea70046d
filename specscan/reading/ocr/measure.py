"""How large and how heavy the letters of a strip are, to a fraction of a pixel.

Counting whole pixels of ink is too coarse to tell a heading of 10 points from text of 9, or bold letters from plain
ones; the shades at the edges of letters tell both. Blur moves darkness about but takes none away.
"""

from __future__ import annotations

import statistics
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from specscan.reading.ocr.align import Place
from specscan.reading.ocr.engine import Picture
from specscan.reading.ocr.picture import Mask

Shades = NDArray[np.float32]

# Heights of signs above the baseline, those with round tops reach over it and below; from memory of common text faces.
HEIGHTS = dict.fromkeys("ABDEFHIJKLMNPRTUVWXYZbdfhklß0235689", 0.72)
HEIGHTS |= dict.fromkeys("OCGQS&", 0.735) | dict.fromkeys("147", 0.7)
SMALL = dict.fromkeys("acemnorsuvwxz", 0.535)
FEWEST_SMALL = 2
GROUND = 85  # percentile of a strip's shades that is its ground
SOLID = 90  # percentile of the darkness of its ink that is full ink


def darkness(crop: Picture, ink: Mask, *, light: bool) -> Shades:
    """Give for each pixel at or beside ink by how many levels it differs from the ground; 0 elsewhere."""
    import cv2

    shades = crop.astype(np.float32)
    away = shades - np.percentile(shades, 100 - GROUND) if light else np.percentile(shades, GROUND) - shades
    near = cv2.dilate(ink.astype(np.uint8), np.ones((3, 3), np.uint8)) > 0
    return np.asarray(np.where(near, np.maximum(away, 0.0), 0.0), np.float32)


def fine_size(places: Sequence[Place], dark: Shades) -> float | None:
    """Give the font size in pixels by the heights of letters and digits; ``None`` where none stands on its own."""
    for heights, fewest in ((HEIGHTS, 1), (SMALL, FEWEST_SMALL)):
        sizes = [
            height / heights[place.sign.text]
            for place in places
            if place.sign.text in heights and place.height > 1 and not place.shared
            if (height := _height(dark[:, int(place.x0) : int(place.x1) + 1])) is not None
        ]
        if len(sizes) >= fewest:
            return max(4.0, statistics.median(sizes))
    return None


def _height(dark: Shades) -> float | None:
    """Give the height of a sign: between the places above and below where half of its darkness is reached."""
    if not dark.size:
        return None
    profile = dark.max(axis=1)
    half = float(np.partition(profile, -3)[-3] if len(profile) > 3 else profile.max()) / 2
    rows = np.flatnonzero(profile >= half)
    if half <= 0 or not len(rows):
        return None
    first, last = int(rows[0]), int(rows[-1])
    top, bottom = float(first), float(last)
    if first > 0:
        top -= (profile[first] - half) / max(1e-6, profile[first] - profile[first - 1])
    if last + 1 < len(profile):
        bottom += (profile[last] - half) / max(1e-6, profile[last] - profile[last + 1])
    return float(bottom - top)


def thickness(dark: Shades, ink: Mask) -> float:
    """Give the mean thickness of strokes in pixels: twice the darkness over the length of the outline.

    Full ink is half taken from the strip, half from black: a strip in a lighter colour is not thinner, and blur
    that leaves thin strokes pale does not make them as thick as bold ones.
    """
    import cv2

    area = int(ink.sum())
    if not area:
        return 0.0
    inner = cv2.erode(ink.astype(np.uint8), np.ones((3, 3), np.uint8))
    full = float(np.percentile(dark[ink], SOLID))
    mass = float(dark.sum()) / max(1.0, full * 255.0) ** 0.5
    return 2.0 * mass / max(1, area - int(inner.sum()))
