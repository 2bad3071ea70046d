"""Findings of some vans' documents → the rows of these vans: settled, derived, judged, scored."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import pandas as pd

from specscan.dataset.rows import (
    Row,
    claim_part_rows,
    claim_row,
    document_row,
    fact_row,
    field_rows,
    name_rows,
    observation_row,
    settled_row,
)
from specscan.dataset.wide import Column
from specscan.judging.claim_rules import ClaimBook, load_claims
from specscan.judging.claims import judge_claims
from specscan.judging.rulesets import RuleSet
from specscan.judging.scoring import score
from specscan.physics.conditions import Conditions
from specscan.physics.derived import DERIVED, derive
from specscan.records.documents import ReadDocument, Settlement
from specscan.records.facts import Settled
from specscan.rulebook.book import Rulebook
from specscan.rulebook.questions import question
from specscan.scanning.plan import Plan
from specscan.scanning.timings import Timings
from specscan.scanning.worth import Worth, worth_of
from specscan.settling.preferences import Preferences
from specscan.settling.settle import settle
from specscan.settling.table import case_table, split_case

NOTHING = (None, None)
UNKNOWN = Worth()
Tables = dict[str, list[Row]]


@dataclass(frozen=True)
class Basis:
    """What rows of vans follow from besides documents and answers; ``claims`` is what their claims imply."""

    book: Rulebook
    preferences: Preferences
    rulesets: Sequence[RuleSet]
    conditions: Conditions | None
    claims: ClaimBook


def basis_of(
    book: Rulebook, preferences: Preferences, rulesets: Sequence[RuleSet], conditions: Conditions | None = None
) -> Basis:
    """Give the basis for these rules, winter reckoned under ``conditions``, by default those of the rules."""
    return Basis(book, preferences, rulesets, conditions, load_claims(book, preferences))


def rows_of_vans(
    van_ids: Sequence[str], documents: Sequence[ReadDocument], plan: Plan, basis: Basis, timings: Timings
) -> Tables:
    """Give the rows of some vans of the plan in the tables that have rows by van.

    ``documents`` are all that name them, as the user's manifest has them.
    """
    book, wanted = basis.book, set(van_ids)
    with timings.of("settling"):
        answers = plan.observations({name for one in documents for name in _names(one, plan)})
        settlement = settle(documents, book, basis.preferences, answers, plan.fleet, wanted)
    with timings.of("deriving"):
        table = case_table(settlement.settled, book)
        whole = pd.concat([table, derive(table, book, basis.conditions)], axis=1)
        settled = [*settlement.settled, *_derived_rows(whole)]
    with timings.of("judging claims"):
        claims = judge_claims(documents, settlement, basis.claims, plan.observations(wanted))
    with timings.of("scoring"):
        scores = _score_rows(score(whole, basis.rulesets, book))
    with timings.of("weighing questions"):
        gaps = _gap_rows(table, settlement, basis)
    return {
        "facts": [fact_row(one) for one in settlement.facts if one.van_id in wanted],
        "settled": [settled_row(row) for row in settled],
        "claims": [claim_row(one) for one in claims],
        "claim_parts": [row for one in claims for row in claim_part_rows(one)],
        "van_names": [row for row in name_rows(documents, settlement.named) if row["van_id"] in wanted],
        "scores": scores,
        "gaps": gaps,
    }


def _names(document: ReadDocument, plan: Plan) -> list[str]:
    """Give the ids of the vans that a document names."""
    keys = [(document.record.doc_id, name.model) for name in document.found.vans]
    return [plan.fleet.named[key] for key in keys if key in plan.fleet.named]


def other_rows(plan: Plan, basis: Basis) -> Tables:
    """Give the rows of the tables that are not of single vans."""
    return {
        "documents": [document_row(record) for record in plan.records],
        "observations": [observation_row(one, van_id) for one, van_id in plan.answers],
        "fields": [*field_rows(basis.book), *_derived_field_rows()],
        "rulesets": _ruleset_rows(basis.rulesets),
    }


def columns_of_vans(book: Rulebook) -> list[Column]:
    """Give the columns of the wide tables."""
    columns = [Column(name, spec.type, book.unit_of(name)) for name, spec in book.fields.items()]
    return columns + [Column(name, "number", spec.unit) for name, spec in DERIVED.items()]


def idle(plan: Plan) -> list[str]:
    """Give which kept answers change nothing, for their van or document is not in the dataset."""
    documents = {name for record in plan.records for name in (record.name, record.doc_id)}
    notes = []
    for one, van_id in plan.answers:
        where = f"kept answers, line {one.line}"
        if van_id is None:
            notes.append(f"{where}: the dataset has no van {one.van_id!r} now; the answer is kept, but not used")
        elif one.doc and one.doc not in documents:
            notes.append(f"{where}: the dataset has no document {one.doc!r} now; the correction is kept, but not used")
    return notes


def _derived_rows(whole: pd.DataFrame) -> list[Settled]:
    rows: list[Settled] = []
    columns = {name: [whole[f"{name}{part}"].tolist() for part in ("", "__low", "__high", "__how")] for name in DERIVED}
    for place, case in enumerate(whole["case_id"].tolist()):
        van_id, equipment = split_case(case)
        for name, spec in DERIVED.items():
            number, low, high, how = (column[place] for column in columns[name])
            known = not math.isnan(number)
            rows.append(
                Settled(
                    van_id, name, equipment, "derived" if known else "missing",  # type: ignore[arg-type]
                    num=number if known else None, low=low if known else None, high=high if known else None,
                    unit=spec.unit, reason=None if known else "not_stated", note=how if isinstance(how, str) else "",
                )
            )  # fmt: skip
    return rows


def _derived_field_rows() -> list[Row]:
    return [
        {"field": name, "type": "number", "unit": spec.unit, "kind": "derived", "meaning": spec.meaning, "words": []}
        for name, spec in DERIVED.items()
    ]


def _score_rows(scores: pd.DataFrame) -> list[Row]:
    rows = []
    names = ("case_id", "ruleset", "criterion", "because", "points", "points_low", "points_high", "points_max")
    for case, ruleset, criterion, because, *numbers in zip(*(scores[name].tolist() for name in names), strict=True):
        van_id, equipment = split_case(case)
        points, low, high, most = (None if math.isnan(one) else one for one in numbers)
        rows.append(
            {
                "van_id": van_id, "ruleset": ruleset, "equipment": equipment, "criterion": criterion,
                "because": because, "points": points, "points_low": low, "points_high": high, "points_max": most,
            }
        )  # fmt: skip
    return rows


def _gap_rows(table: pd.DataFrame, settlement: Settlement, basis: Basis) -> list[Row]:
    """Give every field of every van, as delivered, that is missing or conflicting, with what it could change.

    A field that is stated, but not fully (a range, "heated" without how, a tank of unstated basis), is ambiguous where
    that could change points.
    """
    delivered = table[table["case_id"].str.endswith("|standard")].reset_index(drop=True)
    found = worth_of(delivered, basis.rulesets, basis.book, basis.conditions)
    worth = {split_case(case)[0]: one for case, one in found.items()}
    questions = {name: question(name, basis.book) for name in basis.book.fields}
    rows = []
    for row in settlement.settled:
        if row.equipment != "standard":
            continue
        for ruleset in basis.rulesets:
            van = worth.get(row.van_id, UNKNOWN)
            at_stake = van.points.get((ruleset.name, row.field), 0.0)
            narrows, what = van.narrows.get(row.field, NOTHING)
            if row.status not in ("missing", "conflicting") and at_stake < basis.preferences.least_stake:
                continue
            rows.append(
                {
                    "van_id": row.van_id, "ruleset": ruleset.name, "field": row.field,
                    "reason": row.reason or "ambiguous", "points_at_stake": at_stake,
                    "question": questions[row.field],
                    "narrows": narrows, "narrows_what": what,
                }
            )  # fmt: skip
    return rows


def _ruleset_rows(rulesets: Sequence[RuleSet]) -> list[Row]:
    return [
        {
            "ruleset": ruleset.name, "title": ruleset.title, "criterion": criterion.name,
            "criterion_title": criterion.title, "points_max": criterion.weight, "fields": list(criterion.columns),
            "source": criterion.source, "note": " ".join([ruleset.meaning, *ruleset.notes]),
        }
        for ruleset in rulesets
        for criterion in ruleset.criteria
    ]  # fmt: skip
