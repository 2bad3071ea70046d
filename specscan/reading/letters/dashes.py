"""Dotted and dashed rules, which browsers draw as hundreds of tiny boxes in a row."""

from __future__ import annotations

import numpy as np

from specscan.reading.letters.sheet import Numbers, Stroke

LEVEL = 0.5  # points by which dashes of one rule lie apart across it, at most
WIDEST_GAP = 4.0  # points from one dash to the next
LEAST = 10  # dashes of a rule
SHORTEST = 24.0  # points


def dashed_rules(boxes: Numbers) -> list[Stroke]:
    """Give the rules, across and down, that tiny boxes make up; ``boxes`` has a row of x0, top, x1, bottom each."""
    if len(boxes) < LEAST:
        return []
    return [*_rules(boxes, 0), *_rules(boxes, 1)]


def _rules(boxes: Numbers, along: int) -> list[Stroke]:
    """Give the rules along x (0) or y (1)."""
    begin, end = boxes[:, along], boxes[:, along + 2]
    level = np.round((boxes[:, 1 - along] + boxes[:, 3 - along]) / 2 / LEVEL)
    order = np.lexsort((begin, level))
    begin, end, level, rows = begin[order], end[order], level[order], boxes[order]
    gap = begin[1:] - end[:-1]
    joined = (level[1:] == level[:-1]) & (gap >= -LEVEL) & (gap <= WIDEST_GAP)
    starts = np.flatnonzero(np.concatenate([[True], ~joined]))
    stops = np.concatenate([starts[1:], [len(rows)]])
    found = []
    for start, stop in zip(starts.tolist(), stops.tolist(), strict=True):
        if stop - start >= LEAST and end[stop - 1] - begin[start] >= SHORTEST:
            run = rows[start:stop]
            low, high = run[:, :2].min(axis=0), run[:, 2:].max(axis=0)
            found.append(Stroke(float(low[0]), float(low[1]), float(high[0]), float(high[1])))
    return found
