"""Rows of dots for which a long label leaves no room, or for one: "Haut. . 2,65 m" below "PTAC .... 3 300 kg".

And rows of dots without a space before or behind them: "Berths.......... 2".
"""

from __future__ import annotations

import re
from collections.abc import Sequence

DOTS = re.compile(r"(?<=\s)\.{3,}(?=\s)")
SHORT = re.compile(r"(?<=\S)\s\.{1,2}(?=\s\S)")
COLON = re.compile(r"(?<=[^\W\d_])\s?:(?=\s+\S)")
LEADER = " ..."
CLOSE = re.compile(r"(?<=[^\s.])\.{4,}(?=\s)|(?<=[^\s.])\.{5,}(?=[^\s.])|(?<=\s)\.{4,}(?=[^\s.])")  # no "and so on..."


def with_whole_leaders(lines: Sequence[str]) -> list[str]:
    """Give lines in which such dots are a row of dots, where one on a line beside ends at the same place.

    A colon between two rows of dots stands for one: "Couchages / places : 3 / 4".
    """
    lines = [CLOSE.sub(_apart, line) for line in lines]
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


def _apart(dots: re.Match[str]) -> str:
    """Give a row of dots as long as it was, with a space on each side."""
    line, (start, end) = dots.string, dots.span()
    before, behind = " " * (not line[start - 1].isspace()), " " * (not line[end].isspace())
    return f"{before}{'.' * (end - start - len(before) - len(behind))}{behind}"
