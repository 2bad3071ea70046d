"""Rows of dots for which a long label leaves room but for one or two: "Haut. . 2,65 m" below "PTAC .... 3 300 kg"."""

from __future__ import annotations

import re
from collections.abc import Sequence

DOTS = re.compile(r"(?<=\s)\.{3,}(?=\s)")
SHORT = re.compile(r"(?<=\S)\s\.{1,2}(?=\s\S)")
LEADER = " ..."


def with_whole_leaders(lines: Sequence[str]) -> list[str]:
    """Give lines in which such dots are a row of dots, where one on a line beside ends at the same place."""
    ends = [{match.end() for match in DOTS.finditer(line)} for line in lines]
    made = list(lines)
    for number, line in enumerate(lines):
        beside = set().union(*ends[max(0, number - 1) : number + 2])
        match = next((one for one in SHORT.finditer(line) if one.end() in beside), None)
        if match is not None and not ends[number]:
            made[number] = line[: match.start()] + LEADER + line[match.end() :]
    return made
