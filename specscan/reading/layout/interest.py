"""Pages that cannot hold a table of interest: covers, photographs with captions, running text, floorplans with names.

What is drawn on a page costs most to read where it says least: floorplans and ornaments have thousands of strokes. They
are looked at only where a table may stand: in running text they would only pass for rules and bullets.
"""

from __future__ import annotations

import itertools
import re

from specscan.reading.letters.words import Line, is_bullet, segments_of
from specscan.reading.tables.alignment import SEGMENT_GAP
from specscan.reading.tables.compose import Hints
from specscan.reading.tables.parting import has_digit

ALIGNED = 2.0  # points within which labels of a list, perhaps with drawn marks, are in line; in a floorplan few are
LEADING = 1.75  # em from one line of running text to the next
ROWS = 3  # lines of several parts that make a table where a label or figure stands in them
MANY_ROWS = 8  # that make a table whatever stands in them
CELL = 3  # words: a row of a table has a part as short as that
TABLE_SHARE = 0.5  # of the lines of several parts that are such rows, where they stand in a table
LEGEND = "="  # stands between a mark and what it means
SENTENCE = (".", "!", "?")
FIGURE = re.compile(r"\d[\d.,]*\s?([^\W\d]{1,8}|[\"'″′°%²])?")


def may_hold_table(lines: list[Line], hints: Hints) -> bool:
    """Tell whether a page of such lines may hold a table or marked list of interest.

    It may not where no line has a mark, bullet, legend or figure with a unit, no known labels stand in line, and there
    are no rows: lines that are parted like the row of a table, with labels or figures in them.
    """
    parted = [segments_of(line, SEGMENT_GAP) for line in lines]
    parts = [part for own in parted for part in own]
    if any(_shows_value(part, hints) for part in parts):
        return True
    running = _running(parts)
    asked = [part for part in parts if id(part) not in running and not part.text.endswith(SENTENCE)]
    labelled = [part for part in asked if hints.is_label(part.text)]
    if any(one.text != two.text and _in_line(one, two) for one, two in itertools.combinations(labelled, 2)):
        return True
    labels = {part.text for part in labelled}
    several = [own for own in parted if len(own) > 1]
    rows = [own for own in several if min(len(part.words) for part in own) <= CELL]
    if len(rows) < TABLE_SHARE * len(several):
        return False  # columns of running text, whose paragraphs end with short lines
    telling = any(part.text in labels or has_digit(part.text) for own in rows for part in own)
    return len(rows) >= (ROWS if telling else MANY_ROWS)


def _running(parts: list[Line]) -> set[int]:
    """Give the ids of parts that are lines of running text: they go on in small letters with a part right below."""
    found: set[int] = set()
    by_edge: dict[int, Line] = {}  # the last part from the top, by its left edge
    for part in parts:
        edge = round(part.box.x0)
        above = next((one for x in (edge, edge - 1, edge + 1) if (one := by_edge.get(x)) is not None), None)
        by_edge[edge] = part
        close = above is not None and part.box.top - above.box.top <= LEADING * part.size
        if above is not None and close and len(above.words) > CELL and part.text[:1].islower():
            found |= {id(above), id(part)}
    return found


def _in_line(one: Line, two: Line) -> bool:
    """Tell whether two labels stand below or beside each other: they share an edge, a middle or a baseline."""
    a, b = one.box, two.box
    apart = (a.x0 - b.x0, a.x1 - b.x1, a.middle[0] - b.middle[0], one.base - two.base)
    return min(map(abs, apart)) <= ALIGNED


def _shows_value(part: Line, hints: Hints) -> bool:
    if any(is_bullet(word.text) or word.text == LEGEND for word in part.words):
        return True
    return any(hints.is_unit(match.group(1) or "") for match in FIGURE.finditer(part.text))
