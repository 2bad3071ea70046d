"""What people saw, measured or were told, put above what is printed; the printed value stays in sight."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from specscan.records.documents import Van
from specscan.records.facts import Settled
from specscan.records.observations import Observation
from specscan.settling.preferences import Preferences

YEAR_LETTERS = 4


def van_of(vans: Sequence[Van], observation: Observation) -> Van | None:
    """Give the van that an answer is about, ``None`` where the dataset has it no more.

    By its id; else by its name, if one van only has it but for a model year that has become known or was dropped.
    """
    for van in vans:
        if van.van_id == observation.van_id:
            return van
    named = [van for van in vans if _same_name(van.title.split(), observation.van.split())]
    return named[0] if len(named) == 1 else None


def _same_name(one: Sequence[str], two: Sequence[str]) -> bool:
    short, long = sorted((one, two), key=len)
    rest = long[len(short) :]
    dated = not rest or (len(rest) == 1 and rest[0].isdigit() and len(rest[0]) == YEAR_LETTERS)
    return bool(short) and dated and [w.casefold() for w in long[: len(short)]] == [w.casefold() for w in short]


def believed(observations: Sequence[Observation]) -> list[Observation]:
    """Give answers to one question, the one that counts first: by the way it was come by, then the newest."""
    ordered = sorted(observations, key=lambda one: (one.when, one.line), reverse=True)
    return sorted(ordered, key=lambda one: one.trust)


def put_above(row: Settled, observations: Sequence[Observation], printed: str, preferences: Preferences) -> Settled:
    """Give a row with the answer that counts as its value; its note tells what else was answered and what is printed.

    ``observations`` are answers (no corrections) to the row's field and equipment, ``printed`` what documents say.
    The facts that stood for the row stay with it.
    """
    first, *others = believed(observations)
    fact = first.fact
    if fact is None:
        return row
    parts = [f"{first.source}: {first.said}"]
    parts += [
        f"{one.source}: {one.said}, which does not agree"
        for one in others
        if one.fact is not None and not preferences.agree(row.field, fact, one.fact)
    ]
    parts.append(f"printed: {printed}" if printed else (row.note or "no document states it"))
    return replace(
        row, status="observed", num=fact.num, low=fact.low if fact.low is not None else fact.num,
        high=fact.high if fact.high is not None else fact.num, text=fact.text, flag=fact.flag, basis=fact.basis,
        availability="optional" if first.equipment == "optioned" else "standard", reason=None, note="; ".join(parts),
    )  # fmt: skip
