"""Legends that stand over columns of marked lists: "■ standard  □ option  △ on request" across the page."""

from __future__ import annotations

import itertools
from collections.abc import Sequence

from specscan.reading.layout.line_runs import gap_between
from specscan.reading.letters.words import Line

JOINTS = set("|·•&+/=:,;€$£")  # stand between the parts of a line and mean nothing
LEAST_SIGNS = 3  # of different kinds in one line: two columns of a list have two marks in one
FIRST_LINES = 4  # of a region, titles among them
LAST_LINES = 6
WRAPPED = 0.6  # of the size of letters: white space within a legend of two lines
APART = 1.3  # times that space stands below the legend


def opening_legend(lines: Sequence[Line]) -> tuple[int, int] | None:
    """Give where a legend of several signs begins and ends among the first lines of a region, or ``None``.

    A second line of it begins with no sign and stands closer to the first than to what follows.
    """
    start = next((place for place, line in enumerate(lines[:FIRST_LINES]) if len(_signs(line)) >= LEAST_SIGNS), None)
    if start is None:
        return None
    end = start + 1
    if end + 1 < len(lines):
        gap, below = gap_between(lines[start], lines[end]), gap_between(lines[end], lines[end + 1])
        wrapped = gap <= WRAPPED * lines[start].size and below > max(APART * gap, WRAPPED * lines[start].size)
        end += wrapped and len(lines[end].words[0].text) > 1
    return start, end


def closing_notes(lines: Sequence[Line]) -> int:
    """Give where notes begin that run on across the foot of a region, "1 With roof rack. 2 Option. 3 By law": its end
    if there are none."""
    first = max(0, len(lines) - LAST_LINES)
    return next((place for place in range(first, len(lines)) if _counts(lines[place])), len(lines))


def _counts(line: Line) -> bool:
    """Tell whether a line has three signs of notes or more, one after the other, each before a capital."""
    pairs = itertools.pairwise(word.text for word in line.words)
    signs = [int(sign) for sign, word in pairs if len(sign) == 1 and sign.isdecimal() and word[:1].isupper()]
    return len(signs) >= LEAST_SIGNS and signs == list(range(signs[0], signs[0] + len(signs)))


def _signs(line: Line) -> set[str]:
    """Give the signs of a line, each before a word that says what it means."""
    pairs = itertools.pairwise(word.text.strip(",;:.") or word.text for word in line.words)
    return {sign for sign, word in pairs if len(sign) == 1 and not sign.isalnum() and word.isalpha()} - JOINTS
