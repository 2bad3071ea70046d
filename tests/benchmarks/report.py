"""The benchmark's tables: figures for every layout, language, field and habit, weakest first, and the misses."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from tests.benchmarks.scoring import ABSENT, Outcome

ORDER = (
    "all", "family", "layout", "language", "medium", "vans", "naming", "place of names", "maker", "year",
    "availability", "absence", "habit", "unit habit", "field",
)  # fmt: skip
TITLES = {
    "all": "Over all", "family": "By family of documents", "layout": "By layout of the block that prints the value",
    "language": "By language and region", "medium": "By medium", "vans": "By number of vans",
    "availability": "By availability", "absence": "No, none and 0, stated or not", "habit": "By habit",
    "unit habit": "By unit habit", "field": "By field", "naming": "By way of naming",
    "place of names": "By place of names", "maker": "Makers by place and form", "year": "Years by place and form",
}  # fmt: skip


@dataclass(slots=True)
class Figures:
    """Counts of one row of a table."""

    right: int = 0
    extra: int = 0
    missing: int = 0
    wrong_van: int = 0
    page: int = 0
    availability: int = 0
    availability_of: int = 0
    known_right: int = 0
    known_missing: int = 0

    def add(self, outcome: Outcome) -> None:
        """Count one outcome."""
        self.known_right += outcome.vans_right and outcome.kind == "right"
        self.known_missing += outcome.vans_right and outcome.kind in ("missing", "wrong van")
        if outcome.kind == "right":
            self.right += 1
            self.page += outcome.page_right
            self.availability_of += outcome.availability_counted
            self.availability += outcome.availability_counted and outcome.availability_right
        elif outcome.kind == "extra":
            self.extra += 1
        else:
            self.missing += 1
            self.wrong_van += outcome.kind == "wrong van"

    @property
    def precision(self) -> float | None:
        """Give the share of stated values that are printed; none where nothing is stated."""
        return share(self.right, self.right + self.extra)

    @property
    def recall(self) -> float | None:
        """Give the share of printed values that are stated; none where nothing is printed."""
        return share(self.right, self.right + self.missing)

    def shares(self) -> tuple[float | None, ...]:
        """Give the columns of a table: precision, recall, recall where the vans are known, and so on."""
        known = share(self.known_right, self.known_right + self.known_missing)
        available = share(self.availability, self.availability_of)
        return self.precision, self.recall, known, available, share(self.page, self.right), self.attribution

    @property
    def attribution(self) -> float | None:
        """Give the share of found values that are of the right van."""
        return share(self.right, self.right + self.wrong_van)


def share(part: int, whole: int) -> float | None:
    """Give a part of a whole; none of nothing."""
    return part / whole if whole else None


def tally(outcomes: Iterable[Outcome]) -> dict[str, dict[str, Figures]]:
    """Give figures by table and row."""
    tables: dict[str, dict[str, Figures]] = defaultdict(lambda: defaultdict(Figures))
    for outcome in outcomes:
        for table, row in outcome.keys:
            tables[table][row].add(outcome)
    return tables


def lines(outcomes: Iterable[Outcome], least: int = 5) -> list[str]:
    """Give the tables as text, the weakest rows first; long tables leave rows of few values out."""
    outcomes = list(outcomes)
    tables = tally(outcomes)
    made = _about_vans(outcomes)
    for name in ("naming", "place of names"):
        made += _vans_by(outcomes, name)
    for name in ORDER:
        rows = tables.get(name, {})
        if not rows:
            continue
        made += ["", f"{TITLES[name]:46}  prec. recall  known  avail.  page    van   values  miss  extra"]
        for row, figures in sorted(rows.items(), key=lambda item: (_weakness(item[1]), item[0])):
            values = figures.right + figures.missing
            if values + figures.extra < least and name in ("habit", "unit habit"):
                continue
            cells = figures.shares()
            made.append(
                f"  {row[:44]:44}" + "".join(_cell(cell) for cell in cells)
                + f"  {values:6d}{figures.missing:6d}{figures.extra:7d}"
            )  # fmt: skip
    return made


def _about_vans(outcomes: Sequence[Outcome]) -> list[str]:
    models = [one for one in outcomes if one.field == "model"]
    printed = sum(one.kind != "extra" for one in models)
    found = sum(one.kind == "right" for one in models)
    docs = {one.doc: one.vans_right for one in outcomes}
    return [
        f"Vans: {found} of {printed} found, {len(models) - printed} invented; "
        f"all found and none invented in {sum(docs.values())} of {len(docs)} documents.",
        f"Stated no, none or 0 that no document states: {sum(map(is_false_absence, outcomes))}.",
        "Columns: precision, recall, recall in documents whose vans are all known, availability and page of what is "
        "right, share of found values that are of the right van.",
    ]


def _vans_by(outcomes: Sequence[Outcome], table: str) -> list[str]:
    """Give for each row of a table how many vans are printed, found and invented, the weakest first."""
    rows: dict[str, list[str]] = defaultdict(list)
    for one in outcomes:
        if one.field == "model":
            for name in (row for key, row in one.keys if key == table):
                rows[name].append(one.kind)
    counted = []
    for name, kinds in rows.items():
        found, invented = kinds.count("right"), kinds.count("extra")
        printed = len(kinds) - invented
        counted.append(((found - invented) / max(1, printed), name, printed, found, invented))
    shown = [f"  {name[:44]:44}{printed:8d}{found:7d}{extra:10d}" for _, name, printed, found, extra in sorted(counted)]
    return (
        ["", f"{'Vans, ' + TITLES[table][0].lower() + TITLES[table][1:]:46}printed  found  invented", *shown]
        if shown
        else []
    )


def is_false_absence(one: Outcome) -> bool:
    """Tell whether an outcome is a "no", "none" or 0 that the document does not state."""
    return one.kind == "extra" and one.found in ABSENT


def _weakness(figures: Figures) -> float:
    shares = [one for one in (figures.precision, figures.recall) if one is not None]
    return min(shares, default=1.0)


def _cell(value: float | None) -> str:
    return "      -" if value is None else f"{value:7.3f}"


def misses(outcomes: Iterable[Outcome]) -> list[str]:
    """Give one line for each value that is missing, extra, on a wrong page or of a wrong availability."""
    made = []
    for one in outcomes:
        habits = ", ".join(row for table, row in one.keys if table in ("layout", "habit", "unit habit"))
        place = f"{one.doc} [{one.van}] {one.field}"
        if one.kind != "right":
            value = one.expected or one.found
            sure = one.availability[0] or one.availability[1]
            made.append(f"{one.kind.upper():9} {place} {value} ({sure}) “{one.words}” {one.note}; {habits}")
            continue
        if not one.page_right:
            made.append(f"PAGE      {place} {one.expected}: {one.note} “{one.words}”; {habits}")
        if one.availability_counted and not one.availability_right:
            told, found = one.availability
            made.append(f"AVAIL     {place} {one.expected}: {found} for {told} “{one.words}”; {habits}")
    return made
