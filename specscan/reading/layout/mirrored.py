"""Lists side by side that have the same labels, as where two vans stand side by side, each with its own."""

from __future__ import annotations

from specscan.reading.letters.words import Line, segments_of
from specscan.reading.tables.alignment import SEGMENT_GAP
from specscan.reading.tables.compose import Hints
from specscan.reading.tables.parting import has_digit

MIRRORED = 3  # rows with the same label on both sides
OVER_VALUES = 4  # labels that are all there is at their height
SHARE = 0.35  # of the heights at which both sides have something


def same_labels(west: list[Line], east: list[Line]) -> bool:
    """Tell whether two lists have the same labels, each before its value."""
    left, right = _labels(west), _labels(east)
    shared = sum(not has_digit(label) for label in left & right)
    return shared >= MIRRORED and shared >= 0.5 * min(len(left), len(right))


def labels_over_values(west: list[Line], east: list[Line], hints: Hints) -> bool:
    """Tell whether lists stand side by side that have the same labels, each above its value: no row repeats its label.

    In a part of the lines all that is level with each other is one known label.
    """
    bases = {round(line.first_base): line for line in east}
    rows = [(line, bases.get(round(line.first_base))) for line in west]
    cells = [[*segments_of(one, SEGMENT_GAP), *segments_of(other, SEGMENT_GAP)] for one, other in rows if other]
    texts = [{cell.text for cell in row} for row in cells]
    labels = sum(len(one) == 1 and not has_digit(text := min(one)) and hints.is_label(text) for one in texts)
    return labels >= OVER_VALUES and labels >= SHARE * len(cells)


def _labels(lines: list[Line]) -> set[str]:
    """Give what stands first in lines that have a value beside it."""
    parts = (segments_of(line, SEGMENT_GAP) for line in lines)
    return {row[0].text for row in parts if len(row) == 2 and row[0].text != row[1].text}
