"""The walk-around sheet: the questions still open about a van, by where they are answered, with room to write."""

from __future__ import annotations

import csv
import io
from collections.abc import Sequence
from dataclasses import dataclass
from dataclasses import field as made
from pathlib import Path
from typing import Any

from specscan.dataset.reader import Reader
from specscan.records.cells import guarded
from specscan.reports.page import render
from specscan.reports.page_rules import ReportRules, load_report_rules
from specscan.reports.page_words import Wording
from specscan.rulebook.book import Rulebook, load_rulebook
from specscan.rulebook.models import Question

COLUMNS = ("van_id", "field", "question", "answer", "unit", "who", "when", "how", "evidence", "note")
PLACES = {
    "maker": "Ask the maker or the dealer",
    "inside": "Look inside and around the van",
    "underneath": "Look underneath",
    "measure": "Measure",
}
LEAST = 0.05  # points; less prints as nothing


@dataclass(frozen=True, slots=True)
class OpenQuestion:
    """A field that is not known: what it could change, why it is open, and how it can be answered.

    ``tasks`` maps a place (``maker``, ``inside``, ``underneath``, ``measure``) to what to do there. ``choices`` are
    the possible answers, each as the vocabulary writes it and as people do; ``unit`` and ``us_unit`` those of a number.
    """

    number: int
    field: str
    label: str
    points: float
    reason: str
    known: str
    tasks: dict[str, str]
    choices: list[tuple[str, str]]
    several: bool
    unit: str
    us_unit: str
    kind: str

    @property
    def text(self) -> str:
        """Give the whole question in one line, with how it may be answered."""
        openings = {
            "maker": "Ask the maker:",
            "inside": "Look:",
            "underneath": "Look underneath:",
            "measure": "Measure:",
        }
        asked = [f"{openings[place]} {_ended(task)}" for place, task in self.tasks.items()]
        if self.choices:
            joined = " + " if self.several else ", "
            asked.append(f"Answer: {joined.join(word for word, _ in self.choices)}.")
        elif self.unit:
            units = f"{self.unit} or {self.us_unit}" if self.us_unit else self.unit
            asked.append(f"Answer: a number with its unit ({units}).")
        elif self.kind == "integer":
            asked.append("Answer: a number.")
        return " ".join(asked)


@dataclass(slots=True)
class VanSheet:
    """The open questions of one van, those that could change most first."""

    van_id: str
    title: str
    low: float
    high: float
    most: float
    questions: list[OpenQuestion] = made(default_factory=list)

    def at(self, place: str) -> list[OpenQuestion]:
        """Give the questions that are answered at a place."""
        return [question for question in self.questions if place in question.tasks]


@dataclass(frozen=True, slots=True)
class Sheet:
    """The sheet as a page to print, as a CSV text to fill in, and as data."""

    html: str
    csv: str
    vans: list[VanSheet]

    @property
    def questions(self) -> int:
        """Give how many questions there are in all."""
        return sum(len(van.questions) for van in self.vans)


def make_sheet(db: Path, rules: Path, ruleset: str, names: Sequence[str] = (), everything: bool = False) -> Sheet:
    """Make the walk-around sheet of the vans ``names``, or of all.

    Questions are those that could change points under ``ruleset``; with ``everything`` those that could change none
    as well. ``rules`` is the folder of rules.

    Raises:
        NotFoundError: no such van or rule set.
        DatasetError: the dataset cannot be opened.
        RuleError: the rules are wrong.
    """
    book, report_rules = load_rulebook(rules), load_report_rules(rules)
    with Reader(db) as reader:
        ruleset = reader.ruleset(ruleset)
        chosen = [reader.van(name)["van_id"] for name in names]
        fields = {row["field"]: row for row in reader.rows("SELECT * FROM fields")}
        wording = Wording(fields, report_rules, rules)
        title = reader.rows("SELECT any_value(title) AS title FROM rulesets WHERE ruleset = ?", [ruleset])[0]["title"]
        listed = [van for van in reader.vans() if not chosen or van["van_id"] in chosen]
        vans = [_van_sheet(reader, van, ruleset, book, wording, 0.0 if everything else LEAST) for van in listed]
    html = render("sheet.html.j2", "sheet", vans=vans, places=PLACES, ruleset=title, cautions=_cautions(report_rules))
    return Sheet(html, _as_csv(vans), vans)


def _van_sheet(
    reader: Reader, van: dict[str, Any], ruleset: str, book: Rulebook, wording: Wording, least: float
) -> VanSheet:
    total = reader.rows(
        "SELECT points_low, points_high, points_max FROM scores WHERE van_id = ? AND ruleset = ? "
        "AND equipment = 'standard' AND criterion = 'total'",
        [van["van_id"], ruleset],
    )
    ends = (total[0]["points_low"], total[0]["points_high"], total[0]["points_max"]) if total else (0.0, 0.0, 0.0)
    sheet = VanSheet(van["van_id"], van["title"], *ends)
    gaps = reader.rows(
        "SELECT g.field, g.reason, g.points_at_stake, g.question, s.note, s.status FROM gaps AS g "
        "LEFT JOIN settled AS s ON s.van_id = g.van_id AND s.field = g.field AND s.equipment = 'standard' "
        "WHERE g.van_id = ? AND g.ruleset = ? AND g.points_at_stake >= ? "
        "ORDER BY g.points_at_stake DESC, g.narrows DESC NULLS LAST, g.field",
        [van["van_id"], ruleset, least],
    )
    for gap in gaps:
        sheet.questions.append(_question(len(sheet.questions) + 1, gap, book, wording))
    return sheet


def _question(number: int, gap: dict[str, Any], book: Rulebook, wording: Wording) -> OpenQuestion:
    name = gap["field"]
    spec = book.fields.get(name)
    ask = spec.ask if spec is not None else Question()
    tasks = {"maker": ask.maker, ask.where: ask.look, "measure": ask.measure}
    tasks = {place: task for place, task in tasks.items() if task} or {"maker": gap["question"]}
    kind = str(wording.fields.get(name, {}).get("type") or "text")
    words = book.choices_of(name) if spec is not None and kind in ("choice", "set") else []
    choices = [("yes", "yes"), ("no", "no")] if kind == "flag" else [(word, wording.word(name, word)) for word in words]
    units = wording.units(name) if kind == "number" else None
    known = gap["note"] if gap["status"] == "conflicting" and gap["note"] else ""
    return OpenQuestion(
        number, name, wording.label(name), gap["points_at_stake"], gap["reason"] or "", known, tasks, choices,
        kind == "set", units.metric if units else "", units.us if units and units.us != units.metric else "", kind,
    )  # fmt: skip


def _cautions(rules: ReportRules) -> dict[str, Any]:
    """Give the cautions, and functions that say whether a van's questions call for those on gas and on batteries."""
    sheet = rules.sheet

    def touches(words: Sequence[str], van: VanSheet) -> bool:
        return any(word in question.field for question in van.questions for word in words)

    return {
        "underneath": sheet.underneath, "gas": sheet.gas, "electric": sheet.electric,
        "needs_gas": lambda van: touches(sheet.gas_words, van),
        "needs_electric": lambda van: touches(sheet.electric_words, van),
    }  # fmt: skip


def _as_csv(vans: Sequence[VanSheet]) -> str:
    """Give the sheet as CSV: a line per question, the cells for the answer empty; no cell reads as a formula."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(COLUMNS)
    for van in vans:
        for question in van.questions:
            first = (guarded(van.van_id), guarded(question.field), guarded(question.text))
            writer.writerow((*first, *("" for _ in COLUMNS[len(first) :])))
    return out.getvalue()


def _ended(task: str) -> str:
    return task if task.endswith(("?", ".")) else f"{task}."
