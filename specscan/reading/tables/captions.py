"""Labels in small type, each with its value in larger type right below it: side-bars and boxes of specifications."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import dataclass

from specscan.reading.letters.words import Line, middle_of, segments_of
from specscan.reading.tables.alignment import SEGMENT_GAP
from specscan.reading.tables.compose import Hints
from specscan.reading.tables.grid import Grid
from specscan.reading.tables.pairs import pair_grid, take_in

RATIO = 1.08  # of the font sizes of value and label
ALIGNED = 0.5  # em between the left edges of a label and its value
STEP = 1.7  # em of the value from the baseline of a label to that of its value
WRAP = 1.4  # em from one line of a value to the next
MOST_LINES = 3  # of a value
MOST_WORDS = 8  # of a label
MIN_PAIRS = 4
LABEL_SHARE = 0.4  # of the labels must be known as such
VALUED = re.compile(r":\s+\S")  # "solar (W): 220" has its value; what stands below is the next heading

_Style = tuple[float, bool, tuple[int, int, int], float]  # size, weight and colour of the label, size of the value


@dataclass(slots=True)
class _Pairs:
    """One line of labels with the values below it, as lines ``start`` to ``end`` of a column."""

    start: int
    end: int
    labels: list[Line]
    values: list[list[Line]]
    style: _Style


def part_captions(lines: list[Line], hints: Hints) -> list[list[Line] | Grid]:
    """Part the lines of a column at runs of small labels over larger values; each run becomes a grid of two columns.

    Labels all look alike, and so do values; there are several, and many are known as labels of specifications.
    """
    found = _all_pairs(lines)
    counts = Counter(pairs.style for pairs in found for _ in pairs.labels)
    good = {style for style, count in counts.items() if count >= MIN_PAIRS and _sound(found, style, hints)}
    parts: list[list[Line] | Grid] = []
    at = 0
    kept = [pairs for pairs in found if pairs.style in good]
    for place, pairs in enumerate(kept):
        if place and kept[place - 1].end == pairs.start and kept[place - 1].style == pairs.style:
            continue
        run = [pairs]
        for other in kept[place + 1 :]:
            if other.start != run[-1].end or other.style != pairs.style:
                break
            run.append(other)
        if pairs.start > at:
            parts.append(lines[at : pairs.start])
        held = [pair for one in run for pair in zip(one.labels, one.values, strict=True)]
        parts.append(pair_grid([([label], value) for label, value in held]))
        at = run[-1].end
    if at < len(lines):
        parts.append(lines[at:])
    return parts


def _all_pairs(lines: list[Line]) -> list[_Pairs]:
    found = []
    at = 0
    while at + 1 < len(lines):
        pairs = _pairs_at(lines, at)
        if pairs is None:
            at += 1
        else:
            found.append(pairs)
            at = pairs.end
    return found


def _pairs_at(lines: list[Line], at: int) -> _Pairs | None:
    """Give the labels that a line consists of with the values below them, ``None`` where it is none of labels."""
    labels = segments_of(lines[at], SEGMENT_GAP)
    values = segments_of(lines[at + 1], SEGMENT_GAP)
    if len(labels) != len(values) or not all(map(_is_pair, labels, values)):
        return None
    style = (round(labels[0].size, 1), labels[0].bold, labels[0].color, round(values[0].size, 1))
    if any(abs(value.size - values[0].size) > 0.2 for value in values):
        return None
    held = [[value] for value in values]
    end = at + 2
    while end < len(lines) and take_in(segments_of(lines[end], SEGMENT_GAP), held, _goes_on):
        end += 1
    return _Pairs(at, end, labels, held, style)


def _is_pair(label: Line, value: Line) -> bool:
    if value.size < RATIO * label.size:
        return False  # most lines
    step = value.base - label.base
    worded = any(map(str.isalpha, label.text)) and len(label.words) <= MOST_WORDS and label.text[-1] not in ".;,:"
    worded = worded and not VALUED.search(label.text)
    return worded and 0 < step <= STEP * value.size and _aligned(label, value)


def _aligned(one: Line, other: Line) -> bool:
    return abs(one.box.x0 - other.box.x0) <= ALIGNED * max(one.size, other.size)


def _goes_on(segment: Line, value: list[Line]) -> bool:
    last = value[-1]
    near = 0 < segment.base - last.base <= WRAP * last.size and len(value) < MOST_LINES
    alike = abs(segment.size - last.size) <= 0.2 and segment.bold == last.bold and segment.color == last.color
    return near and alike and _aligned(segment, last)


def _sound(found: list[_Pairs], style: _Style, hints: Hints) -> bool:
    """Tell whether pairs of one look are labels and values: labels that are known, nearer to what stands below them."""
    alike = [pairs for pairs in found if pairs.style == style]
    labels = [label for pairs in alike for label in pairs.labels]
    if sum(hints.is_label(label.text) for label in labels) < max(2, LABEL_SHARE * len(labels)):
        return False
    below = [
        values[0].box.top - label.box.bottom for p in alike for label, values in zip(p.labels, p.values, strict=True)
    ]
    above = [
        after.labels[0].box.top - before.values[0][-1].box.bottom
        for before, after in zip(alike, alike[1:], strict=False)
        if after.start == before.end
    ]
    return not above or middle_of(below) <= middle_of(above) + 0.5
