"""All documents' findings → the whole state of the dataset: settled, derived, scored."""

from __future__ import annotations

from collections.abc import Callable, Collection, Sequence
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
from specscan.judging.claim_rules import load_claims
from specscan.judging.claims import judge_claims
from specscan.judging.rulesets import RuleSet
from specscan.judging.scoring import score
from specscan.physics.conditions import Conditions
from specscan.physics.derived import DERIVED, derive
from specscan.records.documents import ReadDocument, Settlement
from specscan.records.facts import Settled
from specscan.records.observations import Observation
from specscan.rulebook.book import Rulebook
from specscan.rulebook.questions import question
from specscan.scanning.timings import Timings
from specscan.scanning.worth import Worth, WorthKeeper
from specscan.settling.manifest import ManifestRow
from specscan.settling.manifested import apply_manifest
from specscan.settling.observed import van_of
from specscan.settling.preferences import Preferences
from specscan.settling.settle import settle
from specscan.settling.table import case_table, split_case

NOTHING = (None, None)
UNKNOWN = Worth()
RowsFor = Callable[[str], Sequence[ManifestRow]]


@dataclass(frozen=True, slots=True)
class State:
    """The rows of every table, the columns of the wide views, and what could not be done as asked."""

    tables: dict[str, list[Row]]
    columns: list[Column]
    settlement: Settlement
    notes: list[str]


def build_state(
    documents: Sequence[ReadDocument],
    book: Rulebook,
    preferences: Preferences,
    rulesets: Sequence[RuleSet],
    manifest_rows: RowsFor,
    observations: Sequence[Observation] = (),
    conditions: Conditions | None = None,
    worths: WorthKeeper | None = None,
    timings: Timings | None = None,
) -> State:
    """Give the state that follows from all documents and observations.

    ``manifest_rows`` gives the manifest lines on a file. Winter is reckoned under ``conditions``, by default those of
    the rules. ``worths`` knows what questions are worth from scans before.
    """
    named: list[ReadDocument] = []
    notes: list[str] = []
    for document in documents:
        changed, said = apply_manifest(document, manifest_rows(document.record.path))
        named.append(changed)
        notes.extend(said)
    timings = timings or Timings()
    with timings.of("settling"):
        settlement = settle(named, book, preferences, observations)
    names = {name for document in documents for name in (document.record.name, document.record.doc_id)}
    notes.extend(_idle(observations, settlement, names))
    with timings.of("deriving"):
        table = case_table(settlement.settled, book)
        derived = derive(table, book, conditions)
        whole = pd.concat([table, derived], axis=1)
        settled = [*settlement.settled, *_derived_rows(whole)]
    with timings.of("judging claims"):
        claims = judge_claims(named, settlement, load_claims(book, preferences), observations)
    with timings.of("scoring"):
        scores = _score_rows(score(whole, rulesets, book))
    with timings.of("weighing questions"):
        gaps = _gap_rows(table, settlement, rulesets, book, preferences, conditions, worths)
    tables = {
        "documents": [document_row(document.record) for document in documents],
        "facts": [fact_row(one) for one in settlement.facts],
        "settled": [settled_row(row) for row in settled],
        "observations": [observation_row(one, _van_id(one, settlement)) for one in observations],
        "claims": [claim_row(one) for one in claims],
        "claim_parts": [row for one in claims for row in claim_part_rows(one)],
        "van_names": name_rows(named, settlement.named),
        "scores": scores,
        "gaps": gaps,
        "fields": [*field_rows(book), *_derived_field_rows()],
        "rulesets": _ruleset_rows(rulesets),
    }
    columns = [Column(name, spec.type, book.unit_of(name)) for name, spec in book.fields.items()]
    columns += [Column(name, "number", spec.unit) for name, spec in DERIVED.items()]
    return State(tables, columns, settlement, notes)


def _van_id(observation: Observation, settlement: Settlement) -> str | None:
    van = van_of(settlement.vans, observation)
    return van.van_id if van is not None else None


def _idle(observations: Sequence[Observation], settlement: Settlement, documents: Collection[str]) -> list[str]:
    """Give which kept answers change nothing, for their van or document is not in the dataset."""
    notes = []
    for one in observations:
        where = f"kept answers, line {one.line}"
        if _van_id(one, settlement) is None:
            notes.append(f"{where}: the dataset has no van {one.van_id!r} now; the answer is kept, but not used")
        elif one.doc and one.doc not in documents:
            notes.append(f"{where}: the dataset has no document {one.doc!r} now; the correction is kept, but not used")
    return notes


def _derived_rows(whole: pd.DataFrame) -> list[Settled]:
    rows: list[Settled] = []
    for record in whole.to_dict("records"):
        van_id, equipment = split_case(record["case_id"])
        for name, spec in DERIVED.items():
            number, how = record[name], record[f"{name}__how"]
            known = not pd.isna(number)
            rows.append(
                Settled(
                    van_id, name, equipment, "derived" if known else "missing",  # type: ignore[arg-type]
                    num=float(number) if known else None,
                    low=float(record[f"{name}__low"]) if known else None,
                    high=float(record[f"{name}__high"]) if known else None,
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
    for record in scores.to_dict("records"):
        van_id, equipment = split_case(record["case_id"])
        numbers = {
            name: None if pd.isna(record[name]) else float(record[name])
            for name in ("points", "points_low", "points_high", "points_max")
        }
        rows.append(
            {
                "van_id": van_id, "ruleset": record["ruleset"], "equipment": equipment,
                "criterion": record["criterion"], "because": record["because"], **numbers,
            }
        )  # fmt: skip
    return rows


def _gap_rows(
    table: pd.DataFrame,
    settlement: Settlement,
    rulesets: Sequence[RuleSet],
    book: Rulebook,
    preferences: Preferences,
    conditions: Conditions | None,
    worths: WorthKeeper | None,
) -> list[Row]:
    """Give every field of every van, as delivered, that is missing or conflicting, with what it could change.

    A field that is stated, but not fully (a range, "heated" without how, a tank of unstated basis), is ambiguous where
    that could change points.
    """
    delivered = table[table["case_id"].str.endswith("|standard")].reset_index(drop=True)
    found = (worths or WorthKeeper()).of(delivered, rulesets, book, conditions)
    worth = {split_case(case)[0]: one for case, one in found.items()}
    rows = []
    for row in settlement.settled:
        if row.equipment != "standard":
            continue
        for ruleset in rulesets:
            van = worth.get(row.van_id, UNKNOWN)
            at_stake = van.points.get((ruleset.name, row.field), 0.0)
            narrows, what = van.narrows.get(row.field, NOTHING)
            if row.status not in ("missing", "conflicting") and at_stake < preferences.least_stake:
                continue
            rows.append(
                {
                    "van_id": row.van_id, "ruleset": ruleset.name, "field": row.field,
                    "reason": row.reason or "ambiguous", "points_at_stake": at_stake,
                    "question": question(row.field, book),
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
