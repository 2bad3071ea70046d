"""Ranges of numbers along one direction of a page."""

from __future__ import annotations

from collections.abc import Iterable

Spans = list[tuple[float, float]]


def joined(spans: Iterable[tuple[float, float]], gap: float = 0.0) -> Spans:
    """Give the ranges that any of some covers, in order; gaps up to ``gap`` are closed."""
    found: Spans = []
    left = right = 0.0
    for start, stop in sorted(spans):
        if found and start <= right + gap:
            if stop > right:
                right = stop
                found[-1] = (left, right)
        else:
            left, right = start, stop
            found.append((left, right))
    return found
