"""Statements that something is not to be had, beside others that the van has the same value."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import replace

from specscan.records.facts import Fact

Value = float | str | bool | None
HAS_IT = "the van has the same by another statement"


def set_aside_had(facts: Sequence[Fact]) -> list[Fact]:
    """Give the facts; those "not available" whose value the van has by another statement carry the reason.

    That the gasoline boiler is not to be had says nothing against gasoline where the air heater burns it. What the
    name of a thing in running text implies is no such statement: "The gasoline boiler replaces the furnace." Several
    values that one statement gives count together: that foam in walls and floor is not to be had says something of a
    van with wool in its walls.
    """
    had: dict[tuple[str, str], set[Value]] = defaultdict(set)
    refused: dict[tuple[str, str, int], set[Value]] = defaultdict(set)
    for fact in facts:
        if fact.rejected:
            continue
        if fact.availability == "not_available":
            refused[fact.model, fact.field, fact.passage].add(fact.value)
        elif not (fact.weak and fact.how == "prose"):
            had[fact.model, fact.field].add(fact.value)

    def has_it(fact: Fact) -> bool:
        own = had.get((fact.model, fact.field), set())
        together = refused[fact.model, fact.field, fact.passage]
        return together == own if len(together) > 1 else fact.value in own

    return [
        replace(fact, rejected=HAS_IT)
        if fact.availability == "not_available" and not fact.rejected and has_it(fact)
        else fact
        for fact in facts
    ]
