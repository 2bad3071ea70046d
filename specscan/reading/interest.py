"""Pages that cannot hold a table of interest: covers, photographs with captions, floorplans with a few names.

What is drawn on a page costs most to read where it says least: floorplans and ornaments have thousands of strokes. They
are looked at only where a table may stand. Running text needs none of them, and its pages are read as they are.
"""

from __future__ import annotations

import re

from specscan.reading.alignment import SEGMENT_GAP
from specscan.reading.compose import Hints
from specscan.reading.words import Line, is_bullet, segments_of

MOST_LINES = 24  # a page of more holds text, and may hold anything
MOST_ROWS = 2  # lines of several parts that stand in no table: names of a floorplan that happen to be level
FIGURE = re.compile(r"\d[\d.,]*\s?([^\W\d]{1,8}|[\"'″′°%²])?")


def may_hold_table(lines: list[Line], hints: Hints) -> bool:
    """Tell whether a page of such lines may hold a table or list of interest.

    It may not where it has few lines, of which none is known as a label, holds a figure with a unit or begins with
    a mark or bullet, and hardly any is parted like the row of a table.
    """
    if len(lines) > MOST_LINES:
        return True
    parted = [segments_of(line, SEGMENT_GAP) for line in lines]
    if sum(len(parts) > 1 for parts in parted) > MOST_ROWS:
        return True
    return any(_says_something(part, hints) for parts in parted for part in parts)


def _says_something(part: Line, hints: Hints) -> bool:
    if any(is_bullet(word.text) for word in part.words):
        return True
    text = part.text
    return any(hints.is_unit(match.group(1) or "") for match in FIGURE.finditer(text)) or hints.is_label(text)
