"""Statements about one field of one van → its value, or a conflict that keeps them all."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from specscan.records.facts import Equipment, Fact, Settled
from specscan.records.shown import on_page
from specscan.rulebook.book import Rulebook
from specscan.settling.preferences import Preferences


@dataclass(frozen=True, slots=True)
class Candidate:
    """A statement that may become the value: its fact, its document, and whether it is said of several vans at once."""

    fact_id: str
    fact: Fact
    document: str
    dated: str
    general: bool


def preferred(candidates: Sequence[Candidate], preferences: Preferences) -> list[Candidate]:
    """Give the candidates, the one to believe first on top.

    Specification table over list over running text, the van's own column over the general line, the newer
    document over the older (where both say when they were made), the surer reading over the other.
    """
    ordered = sorted(candidates, key=lambda c: (c.document, c.fact_id))
    ordered.sort(key=lambda c: -c.fact.confidence)
    ordered.sort(key=lambda c: c.dated, reverse=True)
    return sorted(ordered, key=lambda c: (preferences.rank(c.fact), c.general))


def settle_candidates(
    van_id: str,
    name: str,
    equipment: Equipment,
    candidates: Sequence[Candidate],
    book: Rulebook,
    preferences: Preferences,
) -> Settled:
    """Give the value of one or more statements.

    Agreeing statements support each other; where any disagree, the row is ``conflicting``: it keeps the
    preferred value, the range from the lowest to the highest, and every statement's fact.
    """
    ordered = preferred(candidates, preferences)
    best = ordered[0]
    if book.fields[name].type == "set":
        return _settled_set(van_id, name, equipment, ordered, book)
    others = [c for c in ordered[1:] if not preferences.agree(name, best.fact, c.fact)]
    fact = best.fact
    if name in preferences.longer_wins and not others:
        fact = max((c.fact for c in ordered), key=lambda f: len(f.text or ""))
    low, high = _range(ordered if others else [best])
    conflicting = bool(others) and name not in preferences.never_conflicts
    return Settled(
        van_id, name, equipment, "conflicting" if conflicting else "stated",
        num=fact.num, low=low, high=high, text=fact.text, flag=fact.flag,
        unit=book.unit_of(name), basis=fact.basis, availability=fact.availability,
        fact_ids=tuple(c.fact_id for c in ordered),
        reason="conflicting" if conflicting else None,
        note=disagreement(ordered, preferences, name) if conflicting else "",
    )  # fmt: skip


def _settled_set(van_id: str, name: str, equipment: Equipment, ordered: list[Candidate], book: Rulebook) -> Settled:
    """Give a set: one that holds all others counts as the fuller statement; fields declared as unions join."""
    sets = [set((c.fact.text or "").split("+")) for c in ordered]
    whole = set().union(*sets)
    conflicting = not book.fields[name].union and whole not in sets
    words = sets[0] if conflicting else whole
    return Settled(
        van_id, name, equipment, "conflicting" if conflicting else "stated",
        text="+".join(sorted(words)), availability=ordered[0].fact.availability,
        fact_ids=tuple(c.fact_id for c in ordered),
        reason="conflicting" if conflicting else None,
        note="; ".join(f"{c.fact.text} ({c.document})" for c in ordered) if conflicting else "",
    )  # fmt: skip


def _range(candidates: Sequence[Candidate]) -> tuple[float | None, float | None]:
    numbers = [number for c in candidates for number in (c.fact.num, c.fact.low, c.fact.high) if number is not None]
    return (min(numbers), max(numbers)) if numbers else (None, None)


def disagreement(ordered: Sequence[Candidate], preferences: Preferences, name: str) -> str:
    """Give the different values of statements with their documents and pages, those that agree once."""
    said: list[Candidate] = []
    for candidate in ordered:
        if not any(preferences.agree(name, candidate.fact, other.fact) for other in said):
            said.append(candidate)
    return "; ".join(f"{_shown(c.fact)} ({on_page(c.document, c.fact.page)})" for c in said)


def _shown(fact: Fact) -> str:
    if fact.num is not None:
        return f"{fact.num:g} {fact.unit}".strip()
    if fact.flag is not None:
        return "yes" if fact.flag else "no"
    return fact.text or ""


def settle_not_offered(
    van_id: str, name: str, equipment: Equipment, candidates: Sequence[Candidate], book: Rulebook
) -> Settled:
    """Give the value of a field of which a document says that it is not offered on the van.

    A flag is no, a choice that has the word is ``none``, anything else has no value; all of them are known.
    """
    spec = book.fields[name]
    flag = False if spec.type == "flag" else None
    text = "none" if spec.type == "choice" and "none" in book.choices_of(name) else None
    offered = ", ".join(dict.fromkeys(_shown(c.fact) for c in candidates))
    return Settled(
        van_id, name, equipment, "stated", text=text, flag=flag, unit=book.unit_of(name),
        availability="not_available", fact_ids=tuple(c.fact_id for c in candidates),
        note=f"not offered: {offered}" if offered not in ("", "yes") else "not offered",
    )  # fmt: skip
