"""Lists whose items are marked by letters, "x" and "o" say, alone or among bullets: what they mean a legend tells."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence

from specscan.reading.letters.words import Line, is_bullet

WORDS = frozenset("aAiIyYàÀéÉ")  # letters that are words
LEAST = 3  # items with letters
MOST_LETTERS = 3  # that mark the items of one list
SHARE = 0.6  # of the lines that begin at one place: those with a mark
FIGURED = 0.5  # of them at most: those with a figure behind the letter, as codes and measures have
ALIGNED = 2.0  # points by which the beginnings of the items of a list differ


def lettered(lines: Sequence[Line]) -> set[int]:
    """Give the ids of lines that are items marked by a letter.

    They stand in line with others so marked; one letter at least comes again, for "a", "b", "c" count.
    """
    begun: dict[int, list[Line]] = defaultdict(list)
    for line in lines:
        begun[round(line.words[0].box.x0 / ALIGNED)].append(line)
    found: set[int] = set()
    for place, own in begun.items():
        beside = [*own, *begun.get(place + 1, ())]
        marked = [line for line in beside if _letter(line)]
        letters = {_letter(line) for line in marked}
        figured = sum(line.words[1].text[:1].isdigit() for line in marked)
        bullets = sum(is_bullet(line.words[0].text) for line in beside)
        if (
            len(marked) >= LEAST
            and len(letters) <= min(MOST_LETTERS, len(marked) - 1)
            and len(marked) + bullets >= SHARE * len(beside)
            and figured <= FIGURED * len(marked)
        ):
            found.update(map(id, marked))
    return found


def _letter(line: Line) -> str:
    """Give the letter that marks a line, an empty text for others: "R : He answers" has a label."""
    text = line.words[0].text
    marks = len(line.words) > 1 and len(text) == 1 and text.isalpha() and text not in WORDS
    return text if marks and any(map(str.isalnum, line.words[1].text)) else ""
