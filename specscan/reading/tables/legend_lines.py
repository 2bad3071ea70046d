"""Lines among those of an unruled table that are none of its rows: legends, and notes set in a row."""

from __future__ import annotations

import re

from specscan.reading.letters.words import Line, is_bullet
from specscan.reading.tables.compose import NOTE_SIGNS

LEGEND = re.compile(r"^\s*(?:[^\w\s]|[A-Za-z])\s*[:=]\s.*\s(?:[^\w\s]|[A-Za-z])\s*[:=]\s")  # "S = standard  O = option"
LEGEND_MARKS = 3  # in a line that explains nothing else: "F  fitted   C  costs extra   x  cannot be had"


def explains_marks(segments: list[Line]) -> bool:
    """Tell whether each part of a line is a mark of its own with words behind it: "x standard   o optional".

    Where the first is a bullet the line could be an item of a list. Marks may be set apart from their words.
    """
    words = [word.text for part in segments for word in part.words]
    marks = [n for n, word in enumerate(words) if len(word) == 1 and not word.isdigit()]
    explained = all(n + 1 < len(words) and words[n + 1][:1].islower() and len(words[n + 1]) > 1 for n in marks)
    if marks[:1] == [0] and len({words[n] for n in marks}) == len(marks) >= LEGEND_MARKS and explained:
        return not is_bullet(words[0])
    signs = [part.words[0].text for part in segments]
    if len(set(signs)) < max(2, len(signs)) or is_bullet(signs[0]) or any(len(sign) > 1 for sign in signs):
        return False
    return all(len(part.words) > 1 and part.words[1].text[:1].isalpha() for part in segments)


def are_notes(segments: list[Line]) -> bool:
    """Tell whether a line is notes set in a row, with wide gaps between: "* Heat output.   Gallons are US gallons."."""
    ends = [part.text.endswith((".", ";")) and len(part.words) > 2 for part in segments[:-1]]
    return bool(ends) and all(ends) and segments[0].words[0].text in NOTE_SIGNS
