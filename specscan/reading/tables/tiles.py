"""Figures set large with their labels in small type right below or above them: each pair is a label and its value."""

from __future__ import annotations

from specscan.reading.letters.words import Line, segments_of
from specscan.reading.tables.alignment import SEGMENT_GAP
from specscan.reading.tables.compose import Hints
from specscan.reading.tables.grid import AmongLines
from specscan.reading.tables.pairs import pair_grid, take_in
from specscan.reading.tables.parting import has_digit

RATIO = 1.2  # of the font sizes of figure and label
NEAR = 0.9  # em of the larger type between figure and label
ALIGNED = 0.6  # em of the smaller type between their left edges, or their middles
WRAP = 0.7  # em from one line of a label to the next
MIN_TILES = 3
LABEL_SHARE = 0.4
FIGURE_SHARE = 0.5
MAX_WORDS = 6  # of a figure with its unit


Pair = tuple[list[Line], Line]  # label, value


def find_tiles(lines: list[Line], hints: Hints) -> AmongLines | None:
    """Give the first run of figures with labels below (or above) them in small type, or ``None``."""
    sizes = [line.size for line in lines]
    for start in range(len(lines) - 1):
        if max(sizes[start : start + 2]) < RATIO * min(sizes[start : start + 2]):
            continue
        for above in (True, False):
            end, pairs = _run(lines, start, above, hints)
            if _sound(pairs, hints):
                return AmongLines(lines[:start], pair_grid([(label, [value]) for label, value in pairs]), lines[end:])
    return None


def _run(lines: list[Line], start: int, above: bool, hints: Hints) -> tuple[int, list[Pair]]:
    """Give the end and the pairs of a run from a line on; ``above``: the figures stand above their labels.

    A line of figures without a digit ends it where no label is known either: a title and its second line.
    """
    pairs: list[Pair] = []
    at = start
    while at + 1 < len(lines):
        first, second = _segments(lines[at]), _segments(lines[at + 1])
        values, labels = (first, second) if above else (second, first)
        if not _are_pairs(first, second, values, labels):
            break
        if not any(has_digit(value.text) for value in values) and not any(hints.is_label(one.text) for one in labels):
            break
        made = [([label], value) for label, value in zip(labels, values, strict=True)]
        at += 2
        while above and at < len(lines) and take_in(_segments(lines[at]), [label for label, _ in made], _goes_on):
            at += 1
        pairs.extend(made)
    return at, pairs


def _segments(line: Line) -> list[Line]:
    return segments_of(line, SEGMENT_GAP)


def _are_pairs(first: list[Line], second: list[Line], values: list[Line], labels: list[Line]) -> bool:
    if len(first) != len(second) or len(values) == 1 and not values[0].text[:1].isdigit():
        return False  # a large line alone that begins with a word is a title
    for upper, lower, value, label in zip(first, second, values, labels, strict=True):
        apart = lower.box.top - upper.box.bottom
        edges = abs(value.box.x0 - label.box.x0), abs(value.box.middle[0] - label.box.middle[0])
        if value.size < RATIO * label.size or not -0.5 * label.size <= apart <= NEAR * value.size:
            return False
        if min(edges) > ALIGNED * label.size or len(value.words) > MAX_WORDS:
            return False
    return True


def _goes_on(segment: Line, label: list[Line]) -> bool:
    last = label[-1]
    near = 0 <= segment.box.top - last.box.bottom + 0.3 * last.size <= WRAP * last.size
    edges = abs(segment.box.x0 - last.box.x0), abs(segment.box.middle[0] - last.box.middle[0])
    return near and min(edges) <= ALIGNED * last.size and abs(segment.size - last.size) < 0.5


def _sound(pairs: list[Pair], hints: Hints) -> bool:
    if len(pairs) < MIN_TILES:
        return False
    labels = sum(hints.is_label(" ".join(line.text for line in label)) for label, _ in pairs)
    figures = sum(has_digit(value.text) for _, value in pairs)
    return labels >= max(2, LABEL_SHARE * len(pairs)) and figures >= FIGURE_SHARE * len(pairs)
