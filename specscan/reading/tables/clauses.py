"""Numbered clauses of running text: "2.6  Overall length: 5.98 m", whose further lines begin below the number."""

from __future__ import annotations

import re

from specscan.reading.letters.words import Line

NUMBER = re.compile(r"\d{1,2}(?:\.\d{1,2}){1,3}\.?")
LEAST = 4  # clauses of a page
LEAST_WRAPPED = 2  # of them that go on below their numbers
LEVEL = 0.5  # em, by which these lines may begin elsewhere
NEXT = 1.6  # em, from a line to the one it goes on in


def clauses_in_one(lines: list[Line], parts: list[list[Line]]) -> list[list[Line]]:
    """Give the segments of lines, those of a clause's first line in one with its number, which is no cell.

    Numbers head the rows of a table where nothing goes on below them.
    """
    numbered = [n for n, line in enumerate(lines) if NUMBER.fullmatch(line.words[0].text) and len(line.words) > 1]
    wrapped = sum(_goes_on(lines, n) for n in numbered)
    if len(numbered) < LEAST or wrapped < LEAST_WRAPPED:
        return parts
    whole = {n for n in numbered if len(parts[n]) == 2 and len(parts[n][0].words) == 1}
    return [[lines[n]] if n in whole else part for n, part in enumerate(parts)]


def _goes_on(lines: list[Line], number: int) -> bool:
    """Tell whether the line below begins where the number does, without one of its own."""
    if number + 1 == len(lines):
        return False
    line, below = lines[number], lines[number + 1]
    near = below.base - line.base < NEXT * line.size and abs(below.size - line.size) < 0.5
    level = abs(below.box.x0 - line.box.x0) < LEVEL * line.size
    return near and level and not below.bold and NUMBER.fullmatch(below.words[0].text) is None
