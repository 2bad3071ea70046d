"""All that the comparison page shows, as plain data: vans, score bands, reasons, evidence, gaps, documents."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass, replace
from dataclasses import field as made
from pathlib import Path
from typing import Any

from specscan.dataset.reader import Reader
from specscan.judging.rulesets import TOTAL
from specscan.reports.page_claims import ClaimShown, show_claims
from specscan.reports.page_pictures import Cut, Spot
from specscan.reports.page_rules import ColumnShown, ReportRules
from specscan.reports.page_winter import WinterShown
from specscan.reports.page_words import Shown, Wording

EQUIPMENTS = ("standard", "optioned")
Row = dict[str, Any]


@dataclass(frozen=True, slots=True)
class Band:
    """Points as a band: certain from ``low``, possible to ``high``, of at most ``most``."""

    low: float
    high: float
    most: float


@dataclass(slots=True)
class Source:
    """One statement in a document: the words, where, and its picture or why there is none."""

    fact_id: str
    document: str
    page: int | None
    printed: str
    availability: str
    option: str
    form: str
    value: Shown | None
    cut: Cut | None = None
    why_no_picture: str = ""


@dataclass(slots=True)
class Value:
    """What is known of one field, for one equipment or (``equipment`` empty) for both alike."""

    field: str
    label: str
    equipment: str
    shown: Shown | None
    status: str
    reason: str
    availability: str
    note: str
    anchor: str
    sources: list[Source] = made(default_factory=list)
    derived: bool = False


@dataclass(slots=True)
class Criterion:
    """One criterion of a rule set: points as a band, the reason, and the values it rests on.

    ``equipment`` is empty where it is the same for both.
    """

    equipment: str
    title: str
    band: Band
    because: str
    rests_on: list[Value]


@dataclass(slots=True)
class View:
    """A van under one rule set with one equipment. ``ahead``: vans wholly below it; ``behind``: wholly above it."""

    ruleset: str
    equipment: str
    total: Band
    ahead: list[str] = made(default_factory=list)
    behind: list[str] = made(default_factory=list)
    level: list[str] = made(default_factory=list)


@dataclass(slots=True)
class VanShown:
    """All about one van. ``numbers``: equipment → column's field → settled row."""

    van_id: str
    anchor: str
    title: str
    facts: Row
    views: list[View]
    criteria: dict[str, list[Criterion]]
    values: list[Value]
    gaps: dict[str, list[Row]]
    numbers: dict[str, dict[str, Row]]
    documents: list[Row]
    claims: list[ClaimShown] = made(default_factory=list)

    @property
    def derived(self) -> list[Value]:
        """Give what was worked out and is known."""
        return [value for value in self.values if value.derived and value.status != "missing"]

    @property
    def conflicts(self) -> list[Value]:
        """Give the values on which documents disagree."""
        return [value for value in self.values if value.status == "conflicting"]


@dataclass(slots=True)
class PageData:
    """The whole page."""

    vans: list[VanShown]
    rulesets: list[Row]
    criteria: dict[str, list[Row]]
    columns: list[ColumnShown]
    documents: list[Row]
    run: Row
    spots: list[Spot]
    fuels: list[str]
    wording: Wording
    winter: WinterShown | None = None

    def title(self, text: str) -> Shown:
        """Give the title of a column, or what it is about, with the temperatures of the conditions."""
        if self.winter is None:
            plain = text.replace("{outside}", "the stated temperature").replace("{inside}", "the inside")
            return Shown(plain, plain)
        outside, inside = self.winter.outside, self.winter.inside
        return Shown(
            text.replace("{outside}", outside.metric).replace("{inside}", inside.metric),
            text.replace("{outside}", outside.us).replace("{inside}", inside.us),
        )


def gather(reader: Reader, names: Sequence[str], rules: ReportRules, folder: Path) -> PageData:
    """Read a dataset for the page; ``names`` are the vans to show, none for all.

    Raises:
        NotFoundError: a name is no van's, or several vans'.
        RuleError: the rules on units are wrong.
    """
    fields = {row["field"]: row for row in reader.rows("SELECT * FROM fields")}
    wording = Wording(fields, rules, folder)
    chosen = [reader.van(name)["van_id"] for name in names]
    listed = [van for van in reader.vans() if not chosen or van["van_id"] in chosen]
    columns = [column for column in rules.page.columns if column.field in fields]
    tables = _Tables(reader, wording, columns)
    claims = show_claims(reader, wording)
    vans = [tables.van(van, f"van-{number}") for number, van in enumerate(listed, start=1)]
    for van in vans:
        van.claims = claims.by_van.get(van.van_id, [])
    _compare(vans)
    shown = {source.fact_id for van in vans for value in van.values for source in value.sources}
    shown |= {claim.claim_id for van in vans for claim in van.claims}
    fuels = {word for van in vans for word in str(van.facts.get("heater_fuel") or "").split("+") if word}
    return PageData(
        vans, tables.rulesets, tables.criteria, columns,
        reader.rows("SELECT * FROM documents ORDER BY name, path"), reader.rows("SELECT * FROM runs")[-1],
        [spot for spot in [*tables.spots(), *claims.spots] if spot.fact_id in shown], sorted(fuels), wording,
    )  # fmt: skip


class _Tables:
    """The rows of the dataset, by van."""

    def __init__(self, reader: Reader, wording: Wording, columns: Sequence[ColumnShown]):
        self.wording, self.columns = wording, columns
        self.rulesets = reader.rows("SELECT DISTINCT ruleset, title, note FROM rulesets ORDER BY ruleset")
        self.criteria = _grouped(reader.rows("SELECT * FROM rulesets"), "ruleset")
        self.facts = {row["fact_id"]: row for row in reader.rows(
            "SELECT f.*, d.name AS document, d.path, d.sha256, d.kind FROM facts AS f "
            "JOIN documents AS d USING (doc_id)"
        )}  # fmt: skip
        self.settled = _grouped(reader.rows("SELECT * FROM settled ORDER BY field, equipment"), "van_id")
        self.scores = _grouped(reader.rows("SELECT * FROM scores"), "van_id")
        self.gaps = _grouped(
            reader.rows(
                "SELECT * FROM gaps WHERE points_at_stake > 0 "
                "ORDER BY points_at_stake DESC, narrows DESC NULLS LAST, field"
            ),
            "van_id",
        )
        self.documents = _grouped(
            reader.rows(
                "SELECT DISTINCT n.van_id, d.name, d.status, d.message FROM van_names AS n "
                "JOIN documents AS d USING (doc_id) ORDER BY d.name"
            ), "van_id",
        )  # fmt: skip
        self.facts_of_vans = {row["van_id"]: row for row in reader.rows("SELECT * FROM vans")}
        self.judged = {name for rows in self.criteria.values() for row in rows for name in row["fields"] or []}

    def van(self, van: Row, anchor: str) -> VanShown:
        van_id = van["van_id"]
        rows = self.settled.get(van_id, [])
        by_place = {(row["field"], row["equipment"]): row for row in rows}
        values = self._values(by_place, anchor)
        found = {(value.field, equipment): value for value in values for equipment in _covered(value)}
        gaps: dict[str, list[Row]] = defaultdict(list)
        for gap in self.gaps.get(van_id, []):
            gaps[gap["ruleset"]].append({**gap, "label": self.wording.label(gap["field"])})
        wanted = {column.field for column in self.columns}
        numbers: dict[str, dict[str, Row]] = {equipment: {} for equipment in EQUIPMENTS}
        for name, equipment in by_place:
            if name in wanted:
                numbers[equipment][name] = by_place[(name, equipment)]
        views, criteria = self._judged(van_id, found)
        return VanShown(
            van_id, anchor, van["title"], self.facts_of_vans.get(van_id, {}), views, criteria, values, dict(gaps),
            numbers, self.documents.get(van_id, []),
        )  # fmt: skip

    def _values(self, by_place: dict[tuple[str, str], Row], anchor: str) -> list[Value]:
        values: list[Value] = []
        for name in self.wording.fields:
            standard, optioned = (by_place.get((name, equipment)) for equipment in EQUIPMENTS)
            if standard is None:
                continue
            same = optioned is None or _told(standard) == _told(optioned)
            for row in [standard] if same or optioned is None else [standard, optioned]:
                equipment = "" if same else row["equipment"]
                place = f"{anchor}-{name}" + (f"-{equipment}" if equipment == "optioned" else "")
                values.append(self._value(row, equipment, place))
        return values

    def _value(self, row: Row, equipment: str, anchor: str) -> Value:
        sources = [self._source(self.facts[one]) for one in row["fact_ids"] or [] if one in self.facts]
        sources.sort(key=lambda one: (one.document, one.page or 0))
        shown = self.wording.value(row)
        if row["status"] == "conflicting" and row["value_num"] is None:
            shown = _either([source.value for source in sources if source.value is not None])
        return Value(
            row["field"], self.wording.label(row["field"]), equipment, shown, row["status"],
            row["reason"] or "", row["availability"] or "", row["note"] or "", anchor, sources,
            self.wording.fields[row["field"]].get("kind") == "derived",
        )  # fmt: skip

    def _source(self, fact: Row) -> Source:
        why = "" if fact["kind"] == "pdf" else "the document has no pages to draw"
        if fact["kind"] == "pdf" and fact["x0"] is None:
            why = "the place on the page is not known"
        return Source(
            fact["fact_id"], fact["document"], fact["page"], fact["printed"] or "", fact["availability"] or "",
            fact["option_name"] or "", fact["form"] or "", self.wording.value(fact), None, why,
        )  # fmt: skip

    def _judged(
        self, van_id: str, found: dict[tuple[str, str], Value]
    ) -> tuple[list[View], dict[str, list[Criterion]]]:
        scores = {(row["ruleset"], row["equipment"], row["criterion"]): row for row in self.scores.get(van_id, [])}
        views, criteria = [], {}
        for name in (row["ruleset"] for row in self.rulesets):
            totals = [(equipment, scores.get((name, equipment, TOTAL))) for equipment in EQUIPMENTS]
            views += [View(name, equipment, _band(total)) for equipment, total in totals if total is not None]
            made_of: list[Criterion] = []
            for about in self.criteria[name]:
                both = []
                for equipment in EQUIPMENTS:
                    score = scores.get((name, equipment, about["criterion"]))
                    if score is not None:
                        rests = [found[(n, equipment)] for n in about["fields"] or [] if (n, equipment) in found]
                        title = about["criterion_title"] or about["criterion"]
                        because = self.wording.plain(score["because"] or "")
                        both.append(Criterion(equipment, title, _band(score), because, rests))
                if len(both) == 2 and replace(both[0], equipment="") == replace(both[1], equipment=""):
                    both = [replace(both[0], equipment="")]
                made_of += both
            criteria[name] = made_of
        return views, criteria

    def spots(self) -> list[Spot]:
        """Give where each statement in a PDF stands; those that rule sets rest on matter most."""
        return [
            Spot(
                row["fact_id"], row["doc_id"], row["path"], row["sha256"], row["page"], row["x0"], row["top"],
                row["x1"], row["bottom"], int(row["field"] in self.judged),
            )
            for row in self.facts.values()
            if row["kind"] == "pdf" and row["x0"] is not None and row["page"]
        ]  # fmt: skip


def _grouped(rows: Sequence[Row], key: str) -> dict[str, list[Row]]:
    groups: dict[str, list[Row]] = defaultdict(list)
    for row in rows:
        groups[row[key]].append(row)
    return dict(groups)


def _either(said: Sequence[Shown]) -> Shown | None:
    """Give what disagreeing documents say, as alternatives."""
    if not said:
        return None
    metric, us = (" or ".join(dict.fromkeys(words)) for words in zip(*((s.metric, s.us) for s in said), strict=True))
    return Shown(metric, us)


def _covered(value: Value) -> tuple[str, ...]:
    return (value.equipment,) if value.equipment else EQUIPMENTS


def _told(row: Row) -> tuple[Any, ...]:
    names = ("value_num", "value_low", "value_high", "value_text", "value_flag", "status", "note", "availability")
    return (*(row[name] for name in names), tuple(row["fact_ids"] or ()))


def _band(row: Row) -> Band:
    return Band(row["points_low"], row["points_high"], row["points_max"])


def _compare(vans: Sequence[VanShown]) -> None:
    """Note for each van, in each view, which vans it is certainly ahead of or behind, and which it cannot be told from.

    One van is ahead of another only where its band lies wholly above the other's, by what is printed: tenths of points.
    """
    views: dict[tuple[str, str], list[tuple[VanShown, View]]] = defaultdict(list)
    for van in vans:
        for view in van.views:
            views[(view.ruleset, view.equipment)].append((van, view))
    for pairs in views.values():
        for van, view in pairs:
            for other, its in pairs:
                if other is van:
                    continue
                if round(view.total.low, 1) > round(its.total.high, 1):
                    view.ahead.append(other.title)
                elif round(view.total.high, 1) < round(its.total.low, 1):
                    view.behind.append(other.title)
                else:
                    view.level.append(other.title)
