"""Headings over text in columns that stand in the first of them only: they head what is below in all columns."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Self

from specscan.reading.letters.words import Line, Word, is_bullet, middle_of
from specscan.records.text import Box

LARGER = 1.12  # times the usual size: a heading
LEVEL = 0.5  # em by which the first lines below a heading may differ in height
FEW_BOLD = 0.3  # share of lines up to which bold ones are headings


@dataclass(frozen=True, slots=True)
class Usual:
    """How most lines are set: their size (pt), and whether so few are bold that these are headings."""

    size: float
    few_bold: bool

    @classmethod
    def of(cls, lines: list[Line]) -> Self:
        """Give what is usual among some lines."""
        bold = sum(line.bold for line in lines)
        return cls(middle_of([line.size for line in lines]), bold < FEW_BOLD * len(lines))

    def stands_out(self, line: Line) -> bool:
        """Tell whether a line is set larger or bolder than that, as a heading is."""
        return line.size > LARGER * self.size or (self.few_bold and line.bold)


def with_headings(left: list[Line], right: list[Line]) -> list[Line]:
    """Give the right column with copies of the headings of the left one that head it too."""
    edge = min(line.box.x0 for line in right)
    copies = [_moved(line, edge - line.box.x0) for line in _seams(left, right)]
    return sorted([*right, *copies], key=lambda line: line.box.top) if copies else right


def have_own_headings(left: list[Line], right: list[Line]) -> bool:
    """Tell whether the right column opens with a heading that stands level with another one in the left column."""
    usual = Usual.of([*left, *right])
    first = right[0]
    beside = [line for line in left if abs(line.first_base - first.first_base) <= LEVEL * usual.size]
    return usual.stands_out(first) and any(usual.stands_out(line) and line.text != first.text for line in beside)


def flows_on(left: list[Line], right: list[Line]) -> bool:
    """Tell whether a list goes on from the foot of the left column at the head of the right one.

    Its heading stands in the left column, and the right one opens with an item of the same mark level with the heading
    or above it; where the heading is above both, the first items stand level.
    """
    mark = right[0].words[0].text
    if not is_bullet(mark) or len(right[0].words) < 2:
        return False
    usual = Usual.of([*left, *right])
    heads = [place for place, line in enumerate(left) if usual.stands_out(line)]
    last = heads[-1] if heads else len(left)
    above = [line for line in left[last + 1 :] if line.words[0].text == mark]
    seams = _seams(left, right)
    own = bool(heads) and left[heads[-1]] not in seams and left[heads[-1]].box.bottom > right[0].box.top
    return own and (bool(above) or last == len(left) - 1)


def _seams(left: list[Line], right: list[Line]) -> list[Line]:
    """Give the headings of the left column with nothing beside them, to the last one above lines that are level."""
    usual = Usual.of([*left, *right])
    found: list[Line] = []
    heads = 0  # how many of them are known to head both columns: the last that does, and those above it
    for line, following in zip(left, left[1:], strict=False):
        if not usual.stands_out(line):
            continue
        if any(other.box.top < line.box.bottom and line.box.top < other.box.bottom for other in right):
            continue
        found.append(line)
        below = next((other for other in right if other.box.top >= line.box.bottom), None)
        if below is not None and abs(below.first_base - following.first_base) <= LEVEL * usual.size:
            heads = len(found)
    return found[:heads]


def _moved(line: Line, by: float) -> Line:
    return Line([replace(word, box=_shifted(word.box, by), copied=True) for word in line.words])


def _shifted(box: Box, by: float) -> Box:
    return Box(box.x0 + by, box.top, box.x1 + by, box.bottom)


def is_copy(words: Sequence[Word]) -> bool:
    """Tell whether words only repeat a heading that stands elsewhere."""
    return bool(words) and all(word.copied for word in words)
