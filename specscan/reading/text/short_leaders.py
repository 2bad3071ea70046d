"""Rows of dots for which a long label leaves no room, or for one: "Haut. . 2,65 m" below "PTAC .... 3 300 kg".

And rows of dots without a space before or behind them: "Berths.......... 2"; and second labels with their own in the
same line: "Length...... 21 ft     Height... 9 ft".
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence

DOTS = re.compile(r"(?<=\s)\.{3,}(?=\s)")
SHORT = re.compile(r"(?<=\S)\s\.{1,2}(?=\s\S)")
COLON = re.compile(r"(?<=[^\W\d_])\s?:(?=\s+\S)")
LEADER = " ..."
CLOSE = re.compile(r"(?<=[^\s.])\.{4,}(?=\s)|(?<=[^\s.])\.{5,}(?=[^\s.])|(?<=\s)\.{4,}(?=[^\s.])")  # no "and so on..."

TWO_PAIRS = re.compile(r"(\s*[^\W\d_].*?\.{3,} ?[^\s.].*?)\s{3,}([^\W\d_][^.]*(?:\.\s[^.]+)?)\.{3,}\s+(?=\S)")
ONE = re.compile(r"(?<=[^\W\d_])\.(?=\s\d)")
LEAST_ALIKE = 4  # lines whose rows of dots end at the same place
LEAST_ROW = 4  # dots


def with_whole_leaders(lines: Sequence[str]) -> list[str]:
    """Give lines in which such dots are a row of dots, where one on a line beside ends at the same place.

    A colon between two rows of dots stands for one: "Couchages / places : 3 / 4".
    """
    lines = [CLOSE.sub(_apart, line) for line in _with_one_dot(_with_pairs_apart(lines))]
    ends = [{match.end() for match in DOTS.finditer(line)} for line in lines]
    made = list(lines)
    for number, line in enumerate(lines):
        beside = set().union(*ends[max(0, number - 1) : number + 2])
        match = next((one for one in SHORT.finditer(line) if one.end() in beside), None)
        if match is not None and not ends[number]:
            made[number] = line[: match.start()] + LEADER + line[match.end() :]
        between = 0 < number < len(lines) - 1 and ends[number - 1] and ends[number + 1] and not ends[number]
        colon = COLON.search(line) if between and match is None else None
        if colon is not None:
            made[number] = line[: colon.start()] + LEADER + line[colon.end() :]
    return made


def _with_pairs_apart(lines: Sequence[str]) -> list[str]:
    """Give lines of two pairs as two lines, where most lines with rows of dots are one pair: else they are columns."""
    two = {number: match for number, line in enumerate(lines) if (match := TWO_PAIRS.match(line))}
    if not two or 2 * len(two) > sum("." * LEAST_ROW in line for line in lines):
        return list(lines)
    made: list[str] = []
    for number, line in enumerate(lines):
        match = two.get(number)
        made.extend([line] if match is None else [match[1], match[2] + LEADER + " " + line[match.end() :]])
    return made


def _with_one_dot(lines: list[str]) -> list[str]:
    """Give lines with a row of dots for the only one that a label left room for, where the others' most often end."""
    ends = Counter(match.end() for line in lines if (match := re.search(r"\.{4,}(?=\s)", line)))
    usual = max(ends, key=lambda end: ends[end], default=0)
    if ends[usual] < LEAST_ALIKE:
        return lines
    made: list[str] = []
    for number, line in enumerate(lines):
        one = ONE.search(line)
        if one is None or one.end() != usual:
            made.append(line)
        elif any("." * LEAST_ROW in near for near in lines[max(0, number - 1) : number + 2]):
            made.append(line[: one.start()] + LEADER + line[one.end() :])
        else:
            made.extend([line[: one.start()] + ":" + line[one.end() :], ""])  # no sentence goes on below it
    return made


def _apart(dots: re.Match[str]) -> str:
    """Give a row of dots as long as it was, with a space on each side."""
    line, (start, end) = dots.string, dots.span()
    before, behind = " " * (not line[start - 1].isspace()), " " * (not line[end].isspace())
    return f"{before}{'.' * (end - start - len(before) - len(behind))}{behind}"
