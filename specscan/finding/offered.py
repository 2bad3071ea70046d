"""Statements that something is not to be had, beside others that the van has the same value."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from specscan.records.facts import Fact

HAS_IT = "the van has the same by another statement"


def set_aside_had(facts: Sequence[Fact]) -> list[Fact]:
    """Give the facts; those "not available" whose value the van has by another statement carry the reason.

    That the gasoline boiler is not to be had says nothing against gasoline where the air heater burns it. What the
    name of a thing in running text implies is no such statement: "The gasoline boiler replaces the furnace."
    """
    had = {
        (fact.model, fact.field, fact.value)
        for fact in facts
        if not fact.rejected and fact.availability != "not_available" and not (fact.weak and fact.how == "prose")
    }
    return [
        replace(fact, rejected=HAS_IT)
        if fact.availability == "not_available" and not fact.rejected and (fact.model, fact.field, fact.value) in had
        else fact
        for fact in facts
    ]
