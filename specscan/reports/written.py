"""The report for writers and programs: the same as the comparison page, as Markdown and as JSON."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import asdict
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from specscan import __version__
from specscan.reports.citations import cite
from specscan.reports.markdown import fill
from specscan.reports.page import Report, gather_report
from specscan.reports.page_claims import ClaimShown
from specscan.reports.page_data import Value, VanShown


def write_markdown(db: Path, rules: Path, ruleset: str, names: Sequence[str] = ()) -> str:
    """Give the report as Markdown; arguments and errors as for ``make_page``."""
    report = gather_report(db, rules, ruleset, names)
    return fill(
        "report.md.j2", data=report.data, know=report.know, first=report.ruleset, cite=_citation,
        today=datetime.now(UTC).date().isoformat(),
    )  # fmt: skip


def write_json(db: Path, rules: Path, ruleset: str, names: Sequence[str] = ()) -> str:
    """Give the report as JSON text; arguments and errors as for ``make_page``."""
    report = gather_report(db, rules, ruleset, names)
    return json.dumps(as_data(report), ensure_ascii=False, indent=1, default=str) + "\n"


def as_data(report: Report) -> dict[str, Any]:
    """Give all that the report says as plain data.

    ``vans`` have ``points`` by rule set and equipment with the vans they can be told from, ``criteria``, ``values``
    with status, wording and ``sources`` (each with a ``citation``), ``gaps``, ``claims`` and ``winter``.
    """
    data, know = report.data, report.know
    winter = data.winter
    return {
        "made_on": datetime.now(UTC).date().isoformat(), "version": __version__, "run": data.run,
        "first_ruleset": report.ruleset, "rules_are_those_of_the_dataset": know.same,
        "rulesets": [
            {**row, "criteria": [{name: one[name] for name in CRITERION} for one in data.criteria[row["ruleset"]]]}
            for row in data.rulesets
        ],
        "conditions": winter.conditions if winter else None,
        "vans": [_van(van, report) for van in data.vans],
        "assumptions": {name: value.model_dump() for name, value in know.values.items()},
        "documents": data.documents,
        "cautions": [*know.cautions, *(winter.cautions if winter else [])],
    }  # fmt: skip


CRITERION = ("criterion", "criterion_title", "points_max", "fields", "source", "note")


def _van(van: VanShown, report: Report) -> dict[str, Any]:
    maker = van.facts.get("maker")
    winter = report.data.winter
    return {
        "van_id": van.van_id, "title": van.title,
        "points": [asdict(view) for view in van.views],
        "criteria": [
            {
                "ruleset": ruleset, "equipment": one.equipment or "both", "title": one.title, **asdict(one.band),
                "because": one.because, "fields": [value.field for value in one.rests_on],
            }
            for ruleset, criteria in van.criteria.items() for one in criteria
        ],
        "values": [_value(value, maker) for value in van.values],
        "gaps": van.gaps,
        "claims": [_claim(claim, maker) for claim in van.claims],
        "winter": {
            equipment: {
                "limits": [asdict(limit) for limit in vans[van.van_id].limits], "lasts": vans[van.van_id].lasts,
                "holds": asdict(vans[van.van_id].holds), "curve": vans[van.van_id].points,
            }
            for equipment, vans in winter.vans.items()
        } if winter else None,
    }  # fmt: skip


def _value(value: Value, maker: str | None) -> dict[str, Any]:
    return {
        "field": value.field, "label": value.label, "equipment": value.equipment or "both", "status": value.status,
        "reason": value.reason or None, "availability": value.availability or None, "note": value.note or None,
        "shown": asdict(value.shown) if value.shown else None,
        "sources": [
            {
                "document": one.document, "page": one.page, "words": one.printed, "availability": one.availability,
                "option": one.option or None, "read_as": asdict(one.value) if one.value else None,
                "citation": _citation(one, maker),
            }
            for one in value.sources
        ],
    }  # fmt: skip


def _claim(claim: ClaimShown, maker: str | None) -> dict[str, Any]:
    said = {"document": claim.document, "page": claim.page, "printed": claim.printed}
    return {
        "title": claim.title, "verdict": claim.verdict, "citation": cite(said, maker), "note": claim.note or None,
        "parts": [asdict(part) for part in claim.parts],
    }  # fmt: skip


def _citation(source: Any, maker: str | None) -> str:
    """Give the citation of a statement, or of a claim."""
    said = {"document": source.document, "page": source.page, "printed": source.printed,
            "availability": getattr(source, "availability", "")}  # fmt: skip
    return cite(said, maker)
