"""Ruled tables whose outer edge is not drawn, or only at its head: where the rules across end, a column ends."""

from __future__ import annotations

import statistics
from collections.abc import Iterable

from specscan.reading.tables.crossings import Edge

LEAST_RULES = 4  # rules across that begin and end alike
LEAST_WALLS = 3  # edges down between them, so that there are two columns whose widths are known
DRAWN = 0.4  # share of the table's height on which an edge down is drawn: cells that span columns interrupt it
THERE = 0.15  # the same of an outer edge that is more than that of a shaded head
NARROWEST, WIDEST = 0.6, 1.8  # width of such a column beside the usual one; what is wider holds several columns
WIDEST_LABELS = 4.0  # the same of the labels at the left
APART = 2.0  # of the usual height of a row: a wider stretch without an edge down parts two tables of one width


def open_sides(edges: Iterable[Edge], slack: float) -> list[Edge]:
    """Give the outer edges that ruled tables lack; ``slack`` is how far, in points, ends count as alike."""
    across = [edge for edge in edges if edge.across]
    down = [edge for edge in edges if not edge.across]
    found: list[Edge] = []
    left = across
    while left:
        first = left[0]
        alike = [e for e in left if abs(e.start - first.start) <= slack and abs(e.stop - first.stop) <= slack]
        left = [e for e in left if e not in alike]
        for rules in _tables(alike, down, slack):
            if len(rules) >= LEAST_RULES:
                found += _sides(rules, down, slack)
    return found


def _tables(alike: list[Edge], down: list[Edge], slack: float) -> list[list[Edge]]:
    """Part rules that begin and end alike where two tables of one width stand below each other."""
    rules = sorted(alike, key=lambda rule: rule.at)
    gaps = [below.at - above.at for above, below in zip(rules, rules[1:], strict=False)]
    limit = APART * statistics.median(gaps) if gaps else 0.0
    parts = [rules[:1]]
    for above, below in zip(rules, rules[1:], strict=False):
        walls = (e for e in down if above.start - slack <= e.at <= above.stop + slack)
        tied = any(e.start <= above.at + slack and e.stop >= below.at - slack for e in walls)
        if below.at - above.at > limit and not tied:
            parts.append([])
        parts[-1].append(below)
    return parts


def _sides(rules: list[Edge], down: list[Edge], slack: float) -> list[Edge]:
    top, bottom = min(rule.at for rule in rules), max(rule.at for rule in rules)
    start, stop = rules[0].start, rules[0].stop
    drawn: dict[float, float] = {}
    for edge in down:
        reach = min(edge.stop, bottom) - max(edge.start, top)
        if reach > 0 and start - slack <= edge.at <= stop + slack:
            drawn[edge.at] = drawn.get(edge.at, 0.0) + reach
    walls = sorted(x for x, reach in drawn.items() if reach >= DRAWN * (bottom - top))
    second = min((rule.at for rule in rules if rule.at > top + slack), default=bottom)
    head = max(THERE * (bottom - top), second - top + slack)  # the bar of the heads has edges where the rows have none
    there = [x for x, reach in drawn.items() if reach > head]
    inner = [x for x in walls if start + slack < x < stop - slack]
    if len(inner) < LEAST_WALLS:
        return []
    usual = statistics.median(b - a for a, b in zip(inner, inner[1:], strict=False))
    widths = ((stop, stop - inner[-1], WIDEST), (start, inner[0] - start, WIDEST_LABELS))
    return [
        Edge(False, x, top, bottom)
        for x, width, widest in widths
        if NARROWEST * usual <= width <= widest * usual and not any(abs(wall - x) <= slack for wall in there)
    ]
