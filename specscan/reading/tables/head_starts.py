"""Cells that run up to the next column: heads tell where that begins, "100 Ah × 12.8 V AGM" under "Battery  Cells"."""

from __future__ import annotations

from specscan.reading.letters.words import Line
from specscan.reading.tables.gutters import Parted

MIN_HEADS = 4  # with the corner
MIN_ROWS = 2  # of which the cells run up to the next column
FLUSH = 0.12  # em, between where a head and a cell below it begin
MIN_GAP = 0.2  # em


def part_under_heads(kept: list[Parted]) -> list[Parted]:
    """Part cells between which no more than a space is left, below a bold line of heads.

    In two rows or more such a cell must begin where a head does and hold a word that begins where the next head does,
    and in no row may a cell reach over that place without.
    """
    kept = list(kept)
    for place, (_, heads) in enumerate(kept):
        if not _are_heads(heads):
            continue
        body = _body(kept, place)
        for own, after in zip(heads, heads[1:], strict=False):
            _part_at(kept, body, own.box.x0, after.box.x0)
    return kept


def _body(kept: list[Parted], place: int) -> list[int]:
    """Give the rows below a line of heads, up to the next such line: labels can be bold, values are not."""
    found: list[int] = []
    for below in range(place + 1, len(kept)):
        segments = kept[below][1]
        if found and _are_heads(segments):
            break
        if not all(segment.bold for segment in segments[1:]):
            found.append(below)
    return found


def _are_heads(segments: list[Line]) -> bool:
    return len(segments) >= MIN_HEADS and all(segment.bold for segment in segments)


def _part_at(kept: list[Parted], body: list[int], own: float, after: float) -> None:
    cuts: dict[int, tuple[int, int]] = {}  # row → which of its segments, before which of the segment's words
    for row in body:
        for number, segment in enumerate(kept[row][1]):
            if not segment.box.x0 < after - FLUSH * segment.size or segment.box.x1 < after + FLUSH * segment.size:
                continue
            cut = _cut_in(segment, own, after)
            if cut is None:
                return
            cuts[row] = number, cut
    if len(cuts) < MIN_ROWS:
        return
    for row, (number, cut) in cuts.items():
        line, segments = kept[row]
        words = segments[number].words
        kept[row] = line, [*segments[:number], Line(words[:cut]), Line(words[cut:]), *segments[number + 1 :]]


def _cut_in(segment: Line, own: float, after: float) -> int | None:
    """Give before which word a segment that begins at ``own`` is cut, for it begins at ``after``."""
    near = FLUSH * segment.size
    if abs(segment.box.x0 - own) > near:
        return None
    for place, (left, right) in enumerate(zip(segment.words, segment.words[1:], strict=False), 1):
        if abs(right.box.x0 - after) <= near and right.box.x0 - left.box.x1 >= MIN_GAP * segment.size:
            return place
    return None
