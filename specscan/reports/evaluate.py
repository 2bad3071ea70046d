"""The dataset against gold labels: precision, recall, pages and availability, with every miss."""

from __future__ import annotations

import csv
from collections import Counter, defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import asdict, dataclass, field
from pathlib import Path
from typing import Any, Literal

from specscan.dataset.reader import Reader
from specscan.records.cells import unguarded
from specscan.records.errors import NotFoundError, RuleError, at
from specscan.records.names import plain

COLUMNS = ("doc", "van", "field", "value", "availability", "page")
IDENTITY = (
    "maker", "model", "model_year", "chassis", "drive", "engine_fuel", "length_mm", "width_mm", "height_mm",
    "interior_height_mm", "wheelbase_mm", "gvwr_kg", "sleeps",
)  # fmt: skip
FOLDED = ("maker", "model", "chassis", "season_claim")
WITHIN = 0.02

CARRIED = """
    SELECT DISTINCT d.name AS doc, f.fact_id, f.van_id, coalesce(n.model, f.van_id) AS van, f.field, f.value_num,
        f.value_text, f.value_flag, f.availability, f.page, f.printed, f.found_by, fields.type
    FROM (SELECT DISTINCT unnest(fact_ids) AS fact_id FROM settled) AS carried
    JOIN facts AS f USING (fact_id) JOIN documents AS d USING (doc_id) JOIN fields ON fields.field = f.field
    LEFT JOIN van_names AS n ON n.van_id = f.van_id AND n.doc_id = f.doc_id
    ORDER BY doc, van, f.field, f.fact_id
"""


@dataclass(frozen=True, slots=True)
class Label:
    """A line of a gold file."""

    doc: str
    van: str
    field: str
    value: str
    availability: str
    page: str


@dataclass(frozen=True, slots=True)
class Miss:
    """Something that is not as the gold file says.

    ``kind``: ``missing`` (printed, not found), ``extra`` (stated by the dataset, not in the gold file), ``page``,
    ``availability`` (right value, wrong page or availability), ``status`` (a document's status).
    """

    kind: Literal["missing", "extra", "page", "availability", "status"]
    doc: str
    van: str
    field: str
    expected: str
    found: str
    page: str = ""
    printed: str = ""


@dataclass(slots=True)
class Figures:
    """Counts and shares over a set of labels; a share of nothing is ``None``."""

    right: int = 0
    extra: int = 0
    missing: int = 0
    page_right: int = 0
    availability_right: int = 0
    availability_counted: int = 0

    @property
    def precision(self) -> float | None:
        return _share(self.right, self.right + self.extra)

    @property
    def recall(self) -> float | None:
        return _share(self.right, self.right + self.missing)

    @property
    def f1(self) -> float | None:
        return _share(2 * self.right, 2 * self.right + self.extra + self.missing)

    @property
    def page(self) -> float | None:
        return _share(self.page_right, self.right)

    @property
    def availability(self) -> float | None:
        return _share(self.availability_right, self.availability_counted)

    def as_dict(self) -> dict[str, Any]:
        """Give counts and shares by name."""
        shares = {name: getattr(self, name) for name in ("precision", "recall", "f1", "page", "availability")}
        return {**asdict(self), **{f"{k}_share" if k in ("page", "availability") else k: v for k, v in shares.items()}}


@dataclass(slots=True)
class Evaluation:
    """The figures over all, by field and by document, and every miss."""

    overall: Figures = field(default_factory=Figures)
    by_field: dict[str, Figures] = field(default_factory=lambda: defaultdict(Figures))
    by_document: dict[str, Figures] = field(default_factory=lambda: defaultdict(Figures))
    misses: list[Miss] = field(default_factory=list)
    not_judged: list[str] = field(default_factory=list)

    def as_dict(self) -> dict[str, Any]:
        """Give all of it as plain data for JSON."""
        return {
            "overall": self.overall.as_dict(),
            "by_field": {name: figures.as_dict() for name, figures in sorted(self.by_field.items())},
            "by_document": {name: figures.as_dict() for name, figures in sorted(self.by_document.items())},
            "misses": [asdict(miss) for miss in self.misses],
            "not_judged": self.not_judged,
        }


def _share(part: int, whole: int) -> float | None:
    return part / whole if whole else None


def read_gold(path: Path) -> list[Label]:
    """Give the labels of a gold file.

    Raises:
        NotFoundError: there is no such file.
        RuleError: it lacks a column or a line lacks a cell; with file and line.
    """
    if not path.is_file():
        raise NotFoundError(f"{path}: no such gold file")
    with open(path, encoding="utf-8-sig", newline="") as file:
        reader = csv.DictReader(file)
        lacking = [name for name in COLUMNS if name not in (reader.fieldnames or [])]
        if lacking:
            raise RuleError([at(path, 1, f"the column {lacking[0]} is missing; needed are {', '.join(COLUMNS)}")])
        labels, mistakes = [], []
        for row in reader:
            if any(row[name] is None for name in COLUMNS):
                mistakes.append(at(path, reader.line_num, "the line has too few cells"))
                continue
            labels.append(Label(*(unguarded(row[name].strip()) for name in COLUMNS)))
    if mistakes:
        raise RuleError(mistakes)
    return labels


def evaluate(gold: Path, db: Path) -> Evaluation:
    """Compare the facts that carry settled values with a gold file, document by document.

    A document that the gold file does not list counts too (every value of it as extra) where it lies in the gold
    file's folder, unless another ``gold*.csv`` there lists it; others are named in ``not_judged``. A page that only
    such another file labels (scanned pages in ``gold_scanned.csv``) is not judged either. Where an ``expected.csv``
    (doc, status) lies beside the gold file, the documents' statuses are compared as well.

    Raises:
        NotFoundError, RuleError: see ``read_gold``.
        DatasetError: the dataset cannot be opened.
    """
    labels = read_gold(gold)
    with Reader(db) as reader:  # which refuses a dataset in which no scan was finished
        stated, documents = reader.rows(CARRIED), reader.rows("SELECT name, path, status, message FROM documents")
    result = Evaluation()
    others = [
        label for other in sorted(gold.parent.glob("gold*.csv")) if other.name != gold.name
        for label in read_gold(other)
    ]  # fmt: skip
    elsewhere = {(label.doc, label.page) for label in others} - {(label.doc, label.page) for label in labels}
    judged = {label.doc for label in labels}
    judged |= _in_folder(gold, documents) - {label.doc for label in others}
    result.not_judged = sorted({row["doc"] for row in stated} - judged)
    for doc in sorted(judged):
        own = [label for label in labels if label.doc == doc]
        _compare(result, doc, own, [row for row in stated if row["doc"] == doc], elsewhere)
    _compare_statuses(result, gold, documents)
    return result


def _in_folder(gold: Path, documents: Iterable[dict[str, Any]]) -> set[str]:
    """Give the names of the dataset's documents that lie in the gold file's folder."""
    folder = gold.resolve().parent.as_posix()
    parted = [row["path"].rsplit("/", 1) for row in documents]
    return {parts[1] for parts in parted if parts[0] == folder}


def _compare(
    result: Evaluation,
    doc: str,
    labels: Sequence[Label],
    stated: Sequence[Mapping[str, Any]],
    elsewhere: set[tuple[str, str]],
) -> None:
    named = sorted({row["van"] for row in stated})
    only = _only_van(labels, stated, named)
    free = list(stated)
    for label in labels:
        van = plain(label.van or only)
        matches = [
            row for row in free
            if plain(row["van"]) == van and row["field"] == label.field and is_right(row, label)
        ]  # fmt: skip
        matches.sort(key=lambda row: (row["availability"] != label.availability, str(row["page"] or "") != label.page))
        for figures in _all(result, doc, label.field):
            figures.right += bool(matches)
            figures.missing += not matches
        if not matches:
            result.misses.append(Miss("missing", doc, label.van, label.field, label.value, "", label.page))
            continue
        free.remove(matches[0])
        _compare_place(result, doc, label, matches[0])
    for row in free:
        if (doc, str(row["page"] or "")) in elsewhere:
            continue
        for figures in _all(result, doc, row["field"]):
            figures.extra += 1
        shown = shown_value(row)
        page = str(row["page"] or "")
        result.misses.append(Miss("extra", doc, row["van"], row["field"], "", shown, page, row["printed"]))


def _compare_place(result: Evaluation, doc: str, label: Label, row: Mapping[str, Any]) -> None:
    page = str(row["page"] or "")
    same_page = page == label.page
    counted = label.field not in IDENTITY
    same = _merged(row["availability"]) == _merged(label.availability)
    for figures in _all(result, doc, label.field):
        figures.page_right += same_page
        figures.availability_counted += counted
        figures.availability_right += counted and same
    if not same_page:
        result.misses.append(Miss("page", doc, label.van, label.field, label.page, page, page, row["printed"]))
    if counted and not same:
        result.misses.append(
            Miss(
                "availability", doc, label.van, label.field, label.availability, row["availability"], page,
                row["printed"],
            )
        )  # fmt: skip


def _only_van(labels: Sequence[Label], stated: Sequence[Mapping[str, Any]], named: Sequence[str]) -> str:
    """Give the van that labels without a name mean: the document's one, else the one called as the label says."""
    if len(named) == 1:
        return named[0]
    called = [label.value for label in labels if label.field == "model" and not label.van]
    fitting = [van for van in named for model in called if plain(van) == plain(model)]
    counts = Counter(row["van"] for row in stated)
    return fitting[0] if fitting else max(named, key=lambda van: counts[van], default="")


def _all(result: Evaluation, doc: str, name: str) -> tuple[Figures, Figures, Figures]:
    return result.overall, result.by_field[name], result.by_document[doc]


def _merged(availability: str) -> str:
    return "standard" if availability == "unstated" else availability


def shown_value(row: Mapping[str, Any]) -> str:
    """Give a fact's value as a gold file writes it."""
    if row["value_num"] is not None:
        return f"{row['value_num']:g}"
    if row["value_flag"] is not None:
        return "yes" if row["value_flag"] else "no"
    return row["value_text"] or ""


def is_right(row: Mapping[str, Any], label: Label) -> bool:
    """Tell whether a fact's value is the label's: a number within 2 %, names case-folded, words and sets equal."""
    if row["type"] in ("number", "integer"):
        try:
            wanted = float(label.value)
        except ValueError:
            return False
        return row["value_num"] is not None and abs(row["value_num"] - wanted) <= WITHIN * abs(wanted) + 1e-9
    if row["type"] == "flag":
        return row["value_flag"] is not None and ("yes" if row["value_flag"] else "no") == label.value
    if row["field"] in FOLDED:
        return row["value_text"] is not None and plain(row["value_text"]) == plain(label.value)
    return row["value_text"] == label.value


def _compare_statuses(result: Evaluation, gold: Path, documents: Iterable[dict[str, Any]]) -> None:
    expected = gold.parent / "expected.csv"
    if not expected.is_file():
        return
    with open(expected, encoding="utf-8-sig", newline="") as file:
        wanted = {row["doc"]: row["status"] for row in csv.DictReader(file) if row.get("doc") and row.get("status")}
    found = {row["name"]: (row["status"], row["message"] or "") for row in documents}
    for doc, status in sorted(wanted.items()):
        if doc in found and found[doc][0] != status:
            result.misses.append(Miss("status", doc, "", "", status, found[doc][0], "", found[doc][1]))
