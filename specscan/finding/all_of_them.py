"""What is said of all tanks holds for those that the van is said to have."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from specscan.finding.drafts import Reading
from specscan.finding.things.found import Found
from specscan.finding.things.items import Item
from specscan.records.facts import Fact
from specscan.rulebook.book import Rulebook

NOT_SAID = "said of all of them, and nothing says that the van has this one"


def is_of_all(book: Rulebook, found: Found, reading: Reading) -> bool:
    """Tell whether a value is told of all things of a kind, none of them by its name: "All tanks are heated"."""
    words = [name for name, among in book.common_names.items() if set(found.things) <= set(among)]
    beside = [item for item in reading.parsed.items if item.sentence == found.sentence]
    if not found.things or not words or not _is_named(beside, words):
        return False
    asked = set(book.fields[found.field].of)  # "waste tanks" name the gray one in any case
    own = [name for name, thing in book.things.items() if name in asked or asked.intersection(thing.stands_for)]
    return not _is_named(beside, own)


def _is_named(items: list[Item], things: list[str]) -> bool:
    return any(item.has("thing", *things) or item.has("short", *things) for item in items)


def held_to_own(book: Rulebook, facts: list[Fact], of_all: Sequence[Fact]) -> list[Fact]:
    """Give the facts, those rejected that are told of all things and about one of which the van has no size.

    ``of_all`` are those of the facts that are told so. A size of 0 says that it is not there.
    """
    if not of_all:
        return facts
    told = set(map(id, of_all))
    sized = {
        (fact.model, thing)
        for fact in facts
        if fact.num and not fact.rejected and book.fields[fact.field].aspect == "capacity"
        for thing in book.fields[fact.field].of
    }
    return [
        fact
        if id(fact) not in told or any((fact.model, thing) in sized for thing in book.fields[fact.field].of)
        else replace(fact, rejected=fact.rejected or NOT_SAID)
        for fact in facts
    ]
