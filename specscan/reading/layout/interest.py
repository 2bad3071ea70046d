"""Pages that cannot hold a table of interest: covers, photographs with captions, running text, floorplans with names.

What is drawn on a page costs most to read where it says least: floorplans and ornaments have thousands of strokes. They
are looked at only where a table may stand: in running text they would only pass for rules and bullets.
"""

from __future__ import annotations

import re

from specscan.reading.letters.words import Line, is_bullet, segments_of
from specscan.reading.tables.alignment import SEGMENT_GAP
from specscan.reading.tables.compose import Hints
from specscan.reading.tables.parting import has_digit

LABELS = 2  # so many different known labels make a list, perhaps with drawn marks; one is a name in a floorplan
ROWS = 3  # lines of several parts that make a table where a label or figure stands in them
MANY_ROWS = 8  # that make a table whatever stands in them
CELL = 3  # words: a row of a table has a part as short as that
TABLE_SHARE = 0.5  # of the lines of several parts that are such rows, where they stand in a table
LEGEND = "="  # stands between a mark and what it means
SENTENCE = (".", "!", "?")
FIGURE = re.compile(r"\d[\d.,]*\s?([^\W\d]{1,8}|[\"'″′°%²])?")


def may_hold_table(lines: list[Line], hints: Hints) -> bool:
    """Tell whether a page of such lines may hold a table or marked list of interest.

    It may not where no line has a mark, bullet, legend or figure with a unit, hardly any is a known label, and there
    are no rows: lines that are parted like the row of a table, with labels or figures in them.
    """
    parted = [segments_of(line, SEGMENT_GAP) for line in lines]
    parts = [part for own in parted for part in own]
    if any(_shows_value(part, hints) for part in parts):
        return True
    texts = {part.text for part in parts}
    labels = {text for text in texts if not text.endswith(SENTENCE) and hints.is_label(text)}
    if len(labels) >= LABELS:
        return True
    several = [own for own in parted if len(own) > 1]
    rows = [own for own in several if min(len(part.words) for part in own) <= CELL]
    if len(rows) < TABLE_SHARE * len(several):
        return False  # columns of running text, whose paragraphs end with short lines
    telling = any(part.text in labels or has_digit(part.text) for own in rows for part in own)
    return len(rows) >= (ROWS if telling else MANY_ROWS)


def _shows_value(part: Line, hints: Hints) -> bool:
    if any(is_bullet(word.text) or word.text == LEGEND for word in part.words):
        return True
    return any(hints.is_unit(match.group(1) or "") for match in FIGURE.finditer(part.text))
