"""The van with its printed options fitted."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from specscan.records.facts import Settled
from specscan.rulebook.book import Rulebook
from specscan.settling.preferences import Preferences
from specscan.settling.values import Candidate, preferred, settle_candidates, settle_not_offered


def with_replaced(
    standard: Mapping[str, Settled], fitted: Mapping[str, Settled], preferences: Preferences
) -> list[Settled]:
    """Give the rows of a van with options fitted, where what an option replaces takes its figures with it.

    ``standard`` are its rows as delivered, ``fitted`` the same fields' with options, each by itself, in order.
    """
    fitted = dict(fitted)
    for group in preferences.replaced_together:
        changed = [name for name in group.when if _changes(standard.get(name), fitted.get(name))]
        if not changed:
            continue
        for name in group.fields:
            row = fitted.get(name)
            if row is not None and row.status != "missing" and row.availability != "optional":
                fitted[name] = Settled(
                    row.van_id, name, "optioned", "missing", unit=row.unit, reason="not_stated",
                    note=f"an optional {changed[0]} replaces what is standard; its own figure is not printed",
                )  # fmt: skip
    return list(fitted.values())


def with_option(row: Settled, candidates: Sequence[Candidate], book: Rulebook, preferences: Preferences) -> Settled:
    """Give the standard row of a field with options fitted.

    ``candidates`` are what is printed as optional, and what is not offered beside a standard value; the latter
    changes nothing and is only listed among the facts. Options that exclude each other are no conflict: of several
    numbers the highest counts.
    """
    if not candidates:
        return replace(row, equipment="optioned")
    optional = [c for c in candidates if c.fact.availability == "optional"]
    refused = [c for c in candidates if c.fact.availability == "not_available"]
    refused_ids = tuple(c.fact_id for c in refused)
    if not optional:
        if refused and row.status == "missing":
            return settle_not_offered(row.van_id, row.field, "optioned", refused, book)
        return replace(row, equipment="optioned", fact_ids=(*row.fact_ids, *refused_ids))
    ordered = preferred(optional, preferences)
    numbers = [c.fact.num for c in ordered if c.fact.num is not None]
    if numbers:
        ordered.sort(key=lambda c: -(c.fact.num or 0.0))
    best = settle_candidates(row.van_id, row.field, "optioned", ordered[:1], book, preferences)
    text = best.text
    if book.fields[row.field].union and row.text:
        text = "+".join(sorted({*row.text.split("+"), *(w for c in ordered for w in (c.fact.text or "").split("+"))}))
    several = len(ordered) > 1
    return replace(
        best,
        text=text,
        fact_ids=(*(c.fact_id for c in ordered), *refused_ids),
        note=f"{len(ordered)} options are printed; the largest counts" if several and numbers else best.note,
    )


def _changes(before: Settled | None, after: Settled | None) -> bool:
    if before is None or after is None or after.availability != "optional":
        return False
    return (before.num, before.text, before.flag) != (after.num, after.text, after.flag)
