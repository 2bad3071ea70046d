"""Heads over several lines: which head stands over several columns, and which is the lower head of one."""

from __future__ import annotations

import itertools

from specscan.reading.letters.words import Line
from specscan.reading.tables.grid import GridCell
from specscan.reading.tables.widening import Columns
from specscan.records.text import Box

CENTER = 0.9  # em between the middle of a head and the middle of the columns that it spans
SAME_MIDDLE = 0.5  # em between the middles of two lines of one head
FLUSH = 0.1  # em between their left edges
RULE_REACH = 1.6  # em from a head down to the rule under it
MAX_LINES = 8

Placed = tuple[int, Line, list[int]]  # level, segment, columns under it
Rule = tuple[float, float, float]  # y, x0, x1


def stacked_heads(row: int, lines: list[list[Line]], columns: Columns, rules: list[Rule]) -> list[GridCell] | None:
    """Give the cells of a head row in which some heads stand over several others, or ``None`` where none does.

    ``lines`` are the printed lines of the row, each cut into segments. A head over several columns is known by
    the rule drawn under it, else by standing in the middle over columns that have heads of their own below it.
    """
    if not 2 <= len(lines) <= MAX_LINES or not all(s.bold or s.text.isupper() for line in lines for s in line):
        return None
    placed = [(level, segment, _touched(segment.box, columns)) for level, line in enumerate(lines) for segment in line]
    spans: dict[int, list[int]] = {}
    for index, (level, segment, touched) in enumerate(placed):
        below = {c for other, _, cols in placed if other > level for c in cols}
        span = _ruled_span(segment, columns, rules) or _centered_span(index, placed, columns, below)
        if len(span) >= 2 and len(below & set(span)) >= 2:
            spans[index] = span
        elif len(touched) > 1:
            return None
    if not spans:
        return None
    _share_rules(spans, placed, columns)
    cells = [GridCell(row, span[0], [placed[index][1]], 1, len(span)) for index, span in spans.items()]
    own: dict[int, GridCell] = {}
    for index, (_, segment, touched) in enumerate(placed):
        if index not in spans:
            cell = own.setdefault(touched[0], GridCell(row, touched[0], []))
            cell.lines.append(segment)
    return [*cells, *(own[col] for col in sorted(own))]


def _share_rules(spans: dict[int, list[int]], placed: list[Placed], columns: Columns) -> None:
    """Part the columns over one long rule among the heads that stand side by side on it."""
    shared: dict[tuple[int, ...], list[int]] = {}
    for index, span in spans.items():
        shared.setdefault((placed[index][0], *span), []).append(index)
    for (_, *span), heads in shared.items():
        if len(heads) < 2 or len(span) <= len(heads):
            continue
        heads.sort(key=lambda index: placed[index][1].box.x0)
        middles = [placed[index][1].box.middle[0] for index in heads]

        def loss(cuts: tuple[int, ...], span: list[int] = span, middles: list[float] = middles) -> float:
            edges = [0, *cuts, len(span)]
            runs = [span[a:b] for a, b in itertools.pairwise(edges)]
            return sum(
                abs((columns[run[0]][0] + columns[run[-1]][1]) / 2 - m) for run, m in zip(runs, middles, strict=True)
            )

        cuts = min(itertools.combinations(range(1, len(span)), len(heads) - 1), key=loss)
        for index, (a, b) in zip(heads, itertools.pairwise([0, *cuts, len(span)]), strict=True):
            spans[index] = span[a:b]


def _ruled_span(segment: Line, columns: Columns, rules: list[Rule]) -> list[int]:
    """Give the columns over the rule that is drawn right under a head and reaches beyond it on both sides."""
    box = segment.box
    reach = RULE_REACH * segment.size
    for y, x0, x1 in rules:
        if 0 <= y - box.middle[1] <= reach and x0 <= box.x0 and box.x1 <= x1:
            span = [i for i, (a, b) in enumerate(columns) if x0 - 2 <= (a + b) / 2 <= x1 + 2]
            if 2 <= len(span) < len(columns):
                return span
    return []


def _centered_span(index: int, placed: list[Placed], columns: Columns, below: set[int]) -> list[int]:
    """Give the run of columns in whose middle a head stands, all with heads below and none beside it."""
    level, segment, touched = placed[index]
    beside = {c for i, (other, _, cols) in enumerate(placed) if other == level and i != index for c in cols}
    free = [c for c in range(1, len(columns)) if c in below and c not in beside]
    middle = segment.box.middle[0]
    best: list[int] = []
    for start in free:
        run = [start]
        while run[-1] + 1 in free:
            run.append(run[-1] + 1)
            away = abs((columns[run[0]][0] + columns[run[-1]][1]) / 2 - middle)
            if away <= CENTER * segment.size and set(touched) <= set(run) and len(run) > len(best):
                best = list(run)
    # A head that stands in the middle over one column, or flush with it, may be the first line of that column's head.
    lower = [s.box for other, s, cols in placed if other > level and cols == touched and len(cols) == 1]
    near = SAME_MIDDLE * segment.size
    over = any(abs(b.middle[0] - middle) <= near or abs(b.x0 - segment.box.x0) <= FLUSH * segment.size for b in lower)
    return [] if over else best


def _touched(box: Box, columns: Columns) -> list[int]:
    found = [
        i for i, (x0, x1) in enumerate(columns) if min(box.x1, x1) - max(box.x0, x0) > 0.2 * min(box.width, x1 - x0)
    ]
    middle = box.middle[0]
    return found or [min(range(len(columns)), key=lambda i: abs((columns[i][0] + columns[i][1]) / 2 - middle))]
