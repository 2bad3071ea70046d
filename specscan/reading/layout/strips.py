"""White strips that run down through lines and part their words: what may part columns."""

from __future__ import annotations

from collections.abc import Iterator

from specscan.reading.letters.words import Line
from specscan.reading.tables.spans import Spans, joined


def strips_below(
    bands: list[list[Line]], start: int, least: float, edges: tuple[float, float]
) -> Iterator[tuple[int, Spans]]:
    """Give the ends of the rows of bands from ``start`` on, the longest first, with the white strips through each.

    A row without a strip of the ``least`` width is left out. Words close strips, and open new ones only beyond those
    above them: none is looked for once the rows reach to both ``edges`` of all bands.
    """
    found: list[tuple[int, Spans]] = []
    covered: Spans = []
    for end in range(start + 1, len(bands) + 1):
        covered = joined([*covered, *_spans(bands[end - 1])])
        if len(covered) < 2:
            break
        strips = _between(covered)
        if any(right - left >= least for left, right in strips):
            found.append((end, strips))
        elif covered[0][0] <= edges[0] and covered[-1][1] >= edges[1]:
            break
    return reversed(found)


def _spans(lines: list[Line]) -> Spans:
    return [(word.box.x0, word.box.x1) for line in lines for word in line.words]


def _between(covered: Spans) -> Spans:
    return [(left[1], right[0]) for left, right in zip(covered, covered[1:], strict=False)]


def strips_through(lines: list[Line]) -> Spans:
    """Give the white strips through lines, from left to right."""
    return _between(joined(_spans(lines)))
