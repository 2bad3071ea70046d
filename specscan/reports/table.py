"""A comparison table to paste: a column a van, a row a field, and a numbered citation for every value."""

from __future__ import annotations

import csv
import io
from collections.abc import Sequence
from dataclasses import dataclass
from dataclasses import field as made
from pathlib import Path

from specscan.dataset.reader import Reader
from specscan.records.cells import guarded
from specscan.records.errors import NotFoundError
from specscan.reports import page_words
from specscan.reports.citations import cite
from specscan.reports.markdown import md, table_lines
from specscan.reports.page_data import PageData, Value, VanShown, gather
from specscan.reports.page_rules import load_report_rules
from specscan.reports.page_words import Shown

UNITS = ("metric", "us")
UNKNOWN = "not known"


@dataclass(frozen=True, slots=True)
class Cell:
    """What is known of a field of a van, and the numbers of its sources."""

    text: str
    sources: tuple[int, ...] = ()


@dataclass(slots=True)
class ComparisonTable:
    """The table: titles of vans, rows of label and cells, and the citations, the first with number 1."""

    title: str
    vans: list[str]
    rows: list[tuple[str, list[Cell]]] = made(default_factory=list)
    citations: list[str] = made(default_factory=list)

    def markdown(self) -> str:
        """Give it as Markdown, with the citations below."""
        rows = [[md(label), *(_marked(cell) for cell in cells)] for label, cells in self.rows]
        text = table_lines([md(self.title), *map(md, self.vans)], rows)
        listed = "".join(f"\\[{number}\\] {md(one)}  \n" for number, one in enumerate(self.citations, start=1))
        return f"{text}\n{NOTE}\n\n{listed}"

    def csv(self) -> str:
        """Give it as CSV: for each van a column of values and one of citations; no cell reads as a formula."""
        out = io.StringIO()
        writer = csv.writer(out, lineterminator="\r\n")
        writer.writerow([self.title, *(guarded(name) for van in self.vans for name in (van, f"{van}: sources"))])
        for label, cells in self.rows:
            said = [(cell.text, "; ".join(self.citations[n - 1] for n in cell.sources)) for cell in cells]
            writer.writerow([guarded(label), *(guarded(text) for pair in said for text in pair)])
        return out.getvalue()


NOTE = (
    "Unknown is never no. Points are bands: certain from the first figure, possible to the second; where two bands "
    "overlap, neither van is ranked above the other. No safety certificate: follow makers’ manuals and local codes."
)


def make_table(
    db: Path,
    rules: Path,
    names: Sequence[str] = (),
    fields: Sequence[str] = (),
    ruleset: str = "",
    equipment: str = "standard",
    units: str = "metric",
) -> ComparisonTable:
    """Make the table of the vans ``names`` (all by default).

    ``fields`` are the rows; by default the points under ``ruleset`` and the fields that its criteria rest on, of which
    anything is known. ``units`` is ``metric`` or ``us``.

    Raises:
        NotFoundError: no such van, rule set or field.
        DatasetError: the dataset cannot be opened.
        RuleError: the rules are wrong.
    """
    report_rules = load_report_rules(rules)
    with Reader(db) as reader:
        ruleset = reader.ruleset(ruleset)
        data = gather(reader, names, report_rules, rules)
        makers = {van["van_id"]: van["maker"] for van in reader.vans()}
    unknown = [name for name in fields if name not in data.wording.fields]
    if unknown:
        raise NotFoundError(f"no field is called {unknown[0]!r}; they are: {', '.join(data.wording.fields)}")
    table = ComparisonTable(page_words.EQUIPMENTS[equipment], [van.title for van in data.vans])
    if not fields:
        table.rows += _points(data, ruleset, equipment)
    for name in fields or _judged(data, ruleset):
        values = [_value(van, name, equipment) for van in data.vans]
        if fields or any(value is not None and value.shown is not None for value in values):
            cells = [
                _cell(value, makers[van.van_id], table, units) for van, value in zip(data.vans, values, strict=True)
            ]
            table.rows.append((data.wording.label(name), cells))
    return table


def _points(data: PageData, ruleset: str, equipment: str) -> list[tuple[str, list[Cell]]]:
    title = next(row["title"] for row in data.rulesets if row["ruleset"] == ruleset)
    cells = []
    for van in data.vans:
        view = next((one for one in van.views if (one.ruleset, one.equipment) == (ruleset, equipment)), None)
        shown = f"{page_words.band_text(view.total.low, view.total.high)} of {view.total.most:g}" if view else UNKNOWN
        cells.append(Cell(shown))
    return [(f"Points: {title}", cells)]


def _judged(data: PageData, ruleset: str) -> list[str]:
    return list(dict.fromkeys(name for row in data.criteria[ruleset] for name in row["fields"] or []))


def _value(van: VanShown, name: str, equipment: str) -> Value | None:
    found = (one for one in van.values if one.field == name and one.equipment in ("", equipment))
    return next(found, None)


def _cell(value: Value | None, maker: str | None, table: ComparisonTable, units: str) -> Cell:
    if value is None or value.shown is None:
        why = page_words.REASONS.get(value.reason, "") if value is not None else ""
        return Cell(f"{UNKNOWN} ({why})" if why and value is not None and value.reason != "not_stated" else UNKNOWN)
    numbers = []
    for source in value.sources:
        said = {"document": source.document, "page": source.page, "printed": source.printed,
                "availability": source.availability}  # fmt: skip
        citation = cite(said, maker)
        if citation not in table.citations:
            table.citations.append(citation)
        numbers.append(table.citations.index(citation) + 1)
    note = {"conflicting": " (documents disagree)", "derived": " (worked out)", "observed": " (observed)"}
    return Cell(_said(value.shown, units) + note.get(value.status, ""), tuple(dict.fromkeys(numbers)))


def _said(shown: Shown, units: str) -> str:
    return shown.us if units == "us" else shown.metric


def _marked(cell: Cell) -> str:
    return md(cell.text) + "".join(f" \\[{number}\\]" for number in cell.sources)
