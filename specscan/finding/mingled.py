"""Vans whose names were not found: what tables and lists then say of another van is seen from its contradictions."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Sequence
from dataclasses import replace

from specscan.records.facts import Fact
from specscan.rulebook.book import Mingling

MINGLED = (
    "tables and lists give this van several values of many fields: they tell of others, whose names were not found"
)


def set_aside_mingled(facts: Sequence[Fact], mingling: Mingling) -> list[Fact]:
    """Give the facts; what tables and lists say of a van to which they give more than it can have carries the reason.

    A van as delivered has one length, one battery, one tank of a kind. Where tables and lists give one van two values
    that differ by more than ``mingling.differ`` (a share of the smaller) for ``mingling.fields_from`` fields, the
    columns, rows or lists of several vans were taken for its own. What running text says of it, and what it is called,
    stays.
    """
    told: dict[tuple[str, str], list[float]] = defaultdict(list)
    for fact in facts:
        if fact.num is not None and fact.availability == "standard" and _is_tabled(fact) and not fact.rejected:
            told[fact.model, fact.field].append(fact.num)
    against = Counter(van for (van, _), values in told.items() if max(values) > (1 + mingling.differ) * min(values))
    mingled = {van for van, fields in against.items() if fields >= mingling.fields_from}
    if not mingled:
        return list(facts)  # nearly all documents
    return [
        replace(fact, rejected=MINGLED) if fact.model in mingled and _is_tabled(fact) and not fact.rejected else fact
        for fact in facts
    ]


def _is_tabled(fact: Fact) -> bool:
    """Tell whether a fact stands in a table or list, or in a note to one."""
    return fact.how not in ("prose", "heading", "identity")
