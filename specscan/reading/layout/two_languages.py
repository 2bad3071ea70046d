"""Rows whose label is printed in two languages, one below the other, with the values half way between."""

from __future__ import annotations

import itertools
import re
from dataclasses import replace

from specscan.reading.letters.words import Line, is_bullet, segments_of
from specscan.reading.tables.alignment import SEGMENT_GAP
from specscan.reading.tables.compose import Hints

MIN_ROWS = 3  # fewer may be chance
SHARE = 0.15  # of the lines of a page, at least, each with two beside it
PITCH = 1.75  # em from one label to the other, at most
MARK = 2  # letters
OWN_VALUE = re.compile(r"[^\d:]{3,}:\s+\S")  # "Inverter: 800 W" has its value behind it
APART = 0.12  # em that the values' baseline lies from each label's, at least


def with_one_label(lines: list[Line], hints: Hints) -> list[Line]:
    """Give lines in which such rows are one line each, with the label that is known, the upper one first."""
    triples = [
        (above, values, below)
        for above, values, below in zip(lines, lines[1:], lines[2:], strict=False)
        if _is_row(above, values, below) and not _begins_with_label(values, hints)
    ]
    uppers, lowers = ({id(triple[place]) for triple in triples} for place in (0, 2))
    chained = uppers & lowers  # every line between two of another column: running text, and not one label each
    triples = [triple for triple in triples if not chained & {id(triple[0]), id(triple[2])}]
    known = [_label(above, below, hints) for above, _, below in triples]
    if sum(label is not None for label in known) < max(MIN_ROWS, SHARE * len(lines)):
        return lines
    made = {
        id(values): _joined(label or above, values)
        for (above, values, below), label in zip(triples, known, strict=True)
    }
    gone = {id(line) for above, _, below in triples for line in (above, below)}
    return [made.get(id(line), line) for line in lines if id(line) not in gone or id(line) in made]


def _begins_with_label(line: Line, hints: Hints) -> bool:
    """Tell whether a line is a row of its own beside another column: a label without a figure, and its values.

    A mark ("W", "–") and the only value of a row ("double glazing") are no labels, though they may name things too.
    """
    first, *values = (part.text for part in segments_of(line, SEGMENT_GAP))
    if not values or len(first) <= MARK:
        return False
    return not any(letter.isdigit() for letter in first) and hints.is_label(first)


def _joined(label: Line, values: Line) -> Line:
    return Line([*(replace(word, base=values.first_base) for word in label.words), *values.words])


def _label(above: Line, below: Line, hints: Hints) -> Line | None:
    return next((line for line in (above, below) if hints.is_label(line.text)), None)


def _is_row(above: Line, values: Line, below: Line) -> bool:
    em = max(above.size, below.size)
    left = max(above.box.x1, below.box.x1)
    bases = [line.first_base for line in (above, values, below)]
    steps = [second - first for first, second in itertools.pairwise(bases)]
    return (
        values.box.x0 > left + em
        and not any(_has_its_value(line) or _is_item(line) for line in (above, below))
        and abs(above.box.x0 - below.box.x0) < em
        and all(step > APART * em for step in steps)
        and sum(steps) < PITCH * em
        and all(len(segments_of(line, SEGMENT_GAP)) == 1 for line in (above, below))  # else it has values of its own
    )


def _has_its_value(line: Line) -> bool:
    """Tell whether a line is a label with a value of its own, behind a colon or dots, as in a list beside another."""
    return OWN_VALUE.match(line.text) is not None or re.search(r"\.\s?\.", line.text) is not None


def _is_item(line: Line) -> bool:
    """Tell whether a line is an item of a list, behind its bullet: another list may stand beside it."""
    return len(line.words) > 1 and is_bullet(line.words[0].text)
