"""Why a van scores as it does: points, reasons, the words and pages they rest on, and what is not known."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import asdict, dataclass
from dataclasses import field as made
from pathlib import Path
from typing import Any

from specscan.dataset.reader import Reader
from specscan.records.claims import VERDICTS
from specscan.reports.citations import cite


@dataclass(slots=True)
class Evidence:
    """What is known of one field of the van, and from where; each of ``sources`` has a ``citation``."""

    field: str
    value: str
    status: str
    availability: str
    note: str
    sources: list[dict[str, Any]] = made(default_factory=list)


@dataclass(slots=True)
class CriterionAccount:
    """One criterion: its points as a band, why, and its evidence."""

    criterion: str
    title: str
    points: float | None
    points_low: float
    points_high: float
    points_max: float
    because: str
    evidence: list[Evidence] = made(default_factory=list)


@dataclass(slots=True)
class Explanation:
    """The account of one van under one rule set."""

    van_id: str
    title: str
    ruleset: str
    ruleset_title: str
    meaning: str
    equipment: str
    total: CriterionAccount
    criteria: list[CriterionAccount]
    unknown: list[dict[str, Any]]
    other_totals: list[dict[str, Any]]
    documents: list[dict[str, Any]]
    maker: str = ""
    claims: list[dict[str, Any]] = made(default_factory=list)

    def as_dict(self) -> dict[str, Any]:
        """Give all of it as plain data for JSON."""
        return asdict(self)


def explain(db: Path, name: str, ruleset: str, equipment: str = "standard") -> Explanation:
    """Give the account of a van.

    ``name`` is an id, a model, or a part of the name that only this van has; ``equipment`` is ``standard`` (as
    delivered) or ``optioned`` (with printed options fitted).

    Raises:
        NotFoundError: no such van or rule set, or several vans of that name.
        DatasetError: the dataset cannot be opened.
    """
    with Reader(db) as reader:
        van = reader.van(name)
        ruleset = reader.ruleset(ruleset)
        described = {
            row["criterion"]: row for row in reader.rows("SELECT * FROM rulesets WHERE ruleset = ?", [ruleset])
        }
        scores = reader.rows(
            "SELECT * FROM scores WHERE van_id = ? AND ruleset = ? AND equipment = ?",
            [van["van_id"], ruleset, equipment],
        )
        accounts = {row["criterion"]: _account(row, described) for row in scores}
        fields = {criterion: row["fields"] or [] for criterion, row in described.items()}
        evidence = _Evidence(reader, van, sorted({name for names in fields.values() for name in names}))
        for criterion, account in accounts.items():
            account.evidence = [evidence.of(name, equipment) for name in fields.get(criterion, [])]
        first = next(iter(described.values()), {})
        return Explanation(
            van["van_id"], van["title"], ruleset, first.get("title", ruleset), first.get("note") or "", equipment,
            accounts["total"], [accounts[name] for name in described if name in accounts],
            _unknown(reader, van["van_id"], ruleset), _other_totals(reader, van["van_id"]),
            _documents(reader, van["van_id"]), van["maker"] or "", _claims(reader, van["van_id"]),
        )  # fmt: skip


def _account(row: dict[str, Any], described: dict[str, dict[str, Any]]) -> CriterionAccount:
    title = described.get(row["criterion"], {}).get("criterion_title") or row["criterion"]
    return CriterionAccount(
        row["criterion"], title, row["points"], row["points_low"], row["points_high"], row["points_max"],
        row["because"] or "",
    )  # fmt: skip


class _Evidence:
    """The settled rows of one van and the statements that they rest on, looked up all at once."""

    def __init__(self, reader: Reader, van: dict[str, Any], names: Sequence[str]):
        rows = reader.rows(
            "SELECT * FROM settled WHERE van_id = ? AND list_contains(?::VARCHAR[], field)", [van["van_id"], names]
        )
        self.rows = {(row["field"], row["equipment"]): row for row in rows}
        ids = {fact_id for row in rows for fact_id in row["fact_ids"] or []}
        self.sources = [
            {**source, "citation": cite(source, van["maker"])} for source in sources_of(reader, sorted(ids))
        ]

    def of(self, name: str, equipment: str) -> Evidence:
        """Give what is known of a field; where it is only an option, the statements on that."""
        row = self.rows.get((name, equipment))
        if row is None:
            return Evidence(name, "", "missing", "", "")
        only_optional = row["status"] == "missing" and row["reason"] == "only_optional"
        carrier = self.rows.get((name, "optioned")) if only_optional else row
        ids = set((carrier or {}).get("fact_ids") or [])
        sources = [dict(source) for source in self.sources if source["fact_id"] in ids]
        return Evidence(name, value_text(row), row["status"], row["availability"] or "", row["note"] or "", sources)


def sources_of(reader: Reader, fact_ids: list[str]) -> list[dict[str, Any]]:
    """Give document, page and words of facts, in order of document and page."""
    if not fact_ids:
        return []
    return reader.rows(
        "SELECT d.name AS document, f.page, f.printed, f.availability, f.option_name, f.confidence, f.fact_id "
        "FROM (SELECT unnest(?::VARCHAR[]) AS fact_id) JOIN facts AS f USING (fact_id) "
        "JOIN documents AS d USING (doc_id) ORDER BY d.name, f.page, f.rowid",
        [fact_ids],
    )


def value_text(row: dict[str, Any]) -> str:
    """Give a settled value as a person reads it; a range as "from to", unknown as an empty text."""
    if row["value_num"] is not None:
        low, high = row["value_low"], row["value_high"]
        number = f"{row['value_num']:.4g}"
        if low is not None and high is not None and (low, high) != (row["value_num"], row["value_num"]):
            number = f"{number} ({low:.4g} to {high:.4g})"
        return f"{number} {row['unit'] or ''}".strip()
    if row["value_flag"] is not None:
        return "yes" if row["value_flag"] else "no"
    return row["value_text"] or ""


def _unknown(reader: Reader, van_id: str, ruleset: str) -> list[dict[str, Any]]:
    return reader.rows(
        "SELECT field, reason, points_at_stake, question FROM gaps WHERE van_id = ? AND ruleset = ? "
        "AND points_at_stake > 0 ORDER BY points_at_stake DESC, narrows DESC NULLS LAST, field",
        [van_id, ruleset],
    )


def _other_totals(reader: Reader, van_id: str) -> list[dict[str, Any]]:
    return reader.rows(
        "SELECT ruleset, equipment, points_low, points_high, points_max FROM scores "
        "WHERE van_id = ? AND criterion = 'total' ORDER BY ruleset, equipment DESC",
        [van_id],
    )


def _claims(reader: Reader, van_id: str) -> list[dict[str, Any]]:
    """Give the van's claims in short; ``specscan claims`` has the evidence."""
    return reader.rows(
        "SELECT c.title, c.said, c.printed, c.verdict, c.because, c.note, d.name AS document, c.page "
        "FROM claims AS c JOIN documents AS d USING (doc_id) WHERE van_id = ? "
        "ORDER BY list_position(?::VARCHAR[], c.verdict), d.name, c.page",
        [van_id, list(VERDICTS)],
    )


def _documents(reader: Reader, van_id: str) -> list[dict[str, Any]]:
    return reader.rows(
        "SELECT d.name, d.kind, d.status, d.message, d.sha256 FROM van_names JOIN documents AS d USING (doc_id) "
        "WHERE van_id = ? ORDER BY d.name",
        [van_id],
    )
