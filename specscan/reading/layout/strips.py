"""White strips that run down through lines and part their words: what may part columns."""

from __future__ import annotations

from collections.abc import Iterator

from specscan.reading.letters.words import Line
from specscan.reading.tables.spans import Spans, joined


def strips_below(bands: list[list[Line]], start: int) -> Iterator[tuple[int, Spans]]:
    """Give the ends of the rows of bands from ``start`` on, the longest first, with the white strips through each.

    A row without any strip is left out, as are all longer ones: words only ever close a strip.
    """
    found: list[tuple[int, Spans]] = []
    covered: Spans = []
    for end in range(start + 1, len(bands) + 1):
        covered = joined([*covered, *_spans(bands[end - 1])])
        if len(covered) < 2:
            break
        found.append((end, _between(covered)))
    return reversed(found)


def _spans(lines: list[Line]) -> Spans:
    return [(word.box.x0, word.box.x1) for line in lines for word in line.words]


def _between(covered: Spans) -> Spans:
    return [(left[1], right[0]) for left, right in zip(covered, covered[1:], strict=False)]


def strips_through(lines: list[Line]) -> Spans:
    """Give the white strips through lines, from left to right."""
    return _between(joined(_spans(lines)))
