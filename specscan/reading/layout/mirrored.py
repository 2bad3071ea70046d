"""Lists side by side that have the same labels, as where two vans stand side by side, each with its own."""

from __future__ import annotations

from specscan.reading.letters.words import Line, segments_of
from specscan.reading.tables.alignment import SEGMENT_GAP
from specscan.reading.tables.compose import Hints
from specscan.reading.tables.parting import has_digit

MIRRORED = 3  # rows with the same label on both sides
OVER_VALUES = 4  # labels that are all there is at their height
BEGUN = 5  # lines with the same label at the beginning of both sides
BEGUN_SHARE = 0.6  # of those that are level
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


def same_beginnings(west: list[Line], east: list[Line], hints: Hints) -> bool:
    """Tell whether level lines of two lists begin with the same known label and go on: "GVWR 3,500 kg | GVWR 4,250 kg".

    Not all go on alike: the lists are of two vans.
    """
    bases = {round(line.first_base): line for line in east}
    rows = [(line, other) for line in west if (other := bases.get(round(line.first_base))) is not None]
    begun = [rest for one, other in rows if (rest := _behind_label(one, other, hints)) is not None]
    return len(begun) >= BEGUN and len(begun) >= BEGUN_SHARE * len(rows) and any(one != other for one, other in begun)


def _behind_label(one: Line, other: Line, hints: Hints) -> tuple[str, str] | None:
    """Give what stands behind the known label with which both of two lines begin."""
    texts = [[word.text for word in line.words] for line in (one, other)]
    shared = next((n for n, (a, b) in enumerate(zip(*texts, strict=False)) if a != b), min(map(len, texts)))
    for most in range(min(shared, min(map(len, texts)) - 1), 0, -1):
        label = " ".join(texts[0][:most])
        if not has_digit(label) and hints.is_label(label):
            return " ".join(texts[0][most:]), " ".join(texts[1][most:])
    return None


def _labels(lines: list[Line]) -> set[str]:
    """Give what stands first in lines that have a value beside it."""
    parts = (segments_of(line, SEGMENT_GAP) for line in lines)
    return {row[0].text for row in parts if len(row) == 2 and row[0].text != row[1].text}
