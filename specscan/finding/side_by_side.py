"""Values that a row prints in US and in metric units beside each other."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import replace

from specscan.records.facts import Fact
from specscan.records.text import Passage

ROUNDED = 0.08  # share by which two prints of one value differ: "0.28 L/h / 0.07 gal/h"; common practice, no source
METRIC = {"mm", "cm", "m", "kg", "l", "L", "l/h", "L/h", "W", "kW", "°C", "m²·K/W", "litres", "liters"}


def metric_first(facts: list[Fact], passages: list[Passage]) -> list[Fact]:
    """Where a row prints a value in US and in metric units side by side, keep the metric one."""
    rows = {p.number: (p.table, p.row_index) for p in passages if p.table is not None}
    groups: dict[tuple[object, ...], list[int]] = defaultdict(list)
    for index, fact in enumerate(facts):
        if fact.num is not None and not fact.rejected and fact.passage in rows:
            groups[(fact.field, fact.model, fact.availability, rows[fact.passage])].append(index)
    result = list(facts)
    for members in groups.values():
        metric = [i for i in members if facts[i].printed_unit in METRIC]
        if not metric or len(metric) == len(members):
            continue
        for index in members:
            twin = next((facts[m] for m in metric if _near(facts[m], facts[index])), None)
            if index not in metric and twin is not None:
                result[index] = replace(facts[index], rejected="the same value stands beside it in metric units")
    return result


def _near(one: Fact, two: Fact) -> bool:
    assert one.num is not None and two.num is not None
    if one.unit == "°C":
        return abs(one.num - two.num) <= 1.5
    return abs(one.num - two.num) <= ROUNDED * max(abs(one.num), abs(two.num))
