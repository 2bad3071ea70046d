"""White strips that run down through lines and part their words: what may part columns."""

from __future__ import annotations

from collections.abc import Iterator

from specscan.reading.words import Line

Strips = list[tuple[float, float]]


def strips_below(bands: list[list[Line]], start: int) -> Iterator[tuple[int, Strips]]:
    """Give the ends of the rows of bands from ``start`` on, the longest first, with the white strips through each.

    A row without any strip is left out, as are all longer ones: words only ever close a strip.
    """
    found: list[tuple[int, Strips]] = []
    covered: Strips = []
    for end in range(start + 1, len(bands) + 1):
        covered = _joined(covered, _spans(bands[end - 1]))
        if len(covered) < 2:
            break
        found.append((end, _between(covered)))
    return reversed(found)


def _spans(lines: list[Line]) -> Strips:
    return [(word.box.x0, word.box.x1) for line in lines for word in line.words]


def _joined(one: Strips, two: Strips) -> Strips:
    """Give the ranges that either covers, from left to right, each apart from the next."""
    joined: Strips = []
    left = right = 0.0
    for x0, x1 in sorted([*one, *two]):
        if joined and x0 <= right:
            if x1 > right:
                right = x1
                joined[-1] = (left, right)
        else:
            left, right = x0, x1
            joined.append((left, right))
    return joined


def _between(covered: Strips) -> Strips:
    return [(left[1], right[0]) for left, right in zip(covered, covered[1:], strict=False)]


def strips_through(lines: list[Line]) -> Strips:
    """Give the white strips through lines, from left to right."""
    return _between(_joined([], _spans(lines)))
