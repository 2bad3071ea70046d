"""Summaries, explanations, gaps and evaluations as a person likes to read them."""

from __future__ import annotations

import time
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from typing import TYPE_CHECKING, Any

from rich.table import Table
from rich.text import Text

from specscan.cli.cautions import CAUTION
from specscan.cli.consoles import console, print_json, print_rows
from specscan.records.claims import VERDICT_WORDS
from specscan.records.documents import DocumentRecord
from specscan.records.shown import on_page, visible
from specscan.reports.citations import short_words

if TYPE_CHECKING:
    from specscan.reports.evaluate import Evaluation, Figures
    from specscan.reports.explain import CriterionAccount, Evidence, Explanation
    from specscan.scanning.scan import Progress, ScanSummary
    from specscan.scanning.timings import Timings

BAND_WIDTH = 30
DAYS_OF_HEAT = (
    "Heat: days that the fuel on board lasts, by the rule of thumb for hours at full output, and by the heat that the "
    "van loses in this winter. Believe the shorter one."
)
LENGTH = 150  # letters of a statement that are shown
REASONS = {
    "not_stated": "not stated",
    "only_optional": "only as an option",
    "conflicting": "documents disagree",
    "unreadable_page": "perhaps on a page that could not be read",
    "implausible": "printed value is implausible",
    "ambiguous": "ambiguous",
}


@contextmanager
def progress_line(*, quiet: bool) -> Iterator[Progress | None]:
    """Give a function that shows how far a long work is; nothing is shown when piped or ``quiet``."""
    out = console(error=True)
    if quiet or not out.is_terminal:
        yield None
        return
    from rich.progress import BarColumn, MofNCompleteColumn, Progress, TextColumn, TimeRemainingColumn

    columns = (
        TextColumn("reading"),
        BarColumn(),
        MofNCompleteColumn(),
        TextColumn("{task.fields[rate]}"),
        TimeRemainingColumn(),
        TextColumn("{task.description}", markup=False),
    )
    with Progress(*columns, console=out, transient=True) as bar:
        task = bar.add_task("", total=None, rate="")
        began = time.monotonic()

        def show(done: int, total: int, name: str) -> None:
            rate = f"{done / max(0.001, time.monotonic() - began):.1f} files/s"
            bar.update(task, completed=done, total=total, description=visible(name[:60]), rate=rate)

        yield show


def print_summary(summary: ScanSummary, *, as_json: bool) -> None:
    """Print what a scan did, every document that could not be read, and what to do next."""
    if as_json:
        print_json(_summary_data(summary))
    out = console(error=as_json)
    for record in summary.documents:
        if record.status != "read" and not as_json:
            out.print(_document_line(record))
    for note in summary.notes:
        out.print(Text(visible(note), style="yellow"))
    if as_json:
        return
    removed = f", {summary.removed} removed" if summary.removed else ""
    aside = f"; {_counted(summary.aside, 'file')} of other kinds left aside" if summary.aside else ""
    documents = _counted(len(summary.documents), "document")
    found = f"{_counted(summary.vans, 'van')}, {_counted(summary.facts, 'statement')}"
    out.print(f"{documents} ({summary.read} read now, {summary.unchanged} unchanged{removed}){aside}")
    out.print(f"{found}, {summary.seconds:.1f} s → {summary.db}")


def print_timings(timings: Timings) -> None:
    """Print the seconds that each stage of a scan took, and what reading processes spent inside."""
    out = console()
    table = Table(box=None, header_style="bold", pad_edge=False, title="Where the time went", title_justify="left")
    table.add_column("stage")
    table.add_column("seconds", justify="right")
    table.add_column("share", justify="right")
    total = sum(timings.stages.values()) or 1.0
    for name, seconds in timings.stages.items():
        table.add_row(name, f"{seconds:.2f}", f"{seconds / total:.0%}")
        if name == "reading documents":
            for part, inside in timings.inside.items():
                table.add_row(f"  {part}, processor time", f"{inside:.2f}", "")
    out.print(table)


def print_overview(rows: Sequence[dict[str, Any]]) -> None:
    """Print all vans with their score bands, days of heat and largest unknown."""
    if not rows:
        return
    out = console()
    table = Table(
        box=None, header_style="bold", pad_edge=False, title=f"{rows[0]['ruleset']}, as delivered", title_justify="left"
    )
    table.add_column("van", overflow="fold")
    for head in ("points", "with options", "heat by rule", "heat by loss"):
        table.add_column(head, justify="right")
    table.add_column("largest unknown", overflow="fold")
    for row in rows:
        unknown = f"{row['unknown']} ({row['points_at_stake']:.1f} points)" if row["unknown"] else ""
        days = [
            "" if row[name] is None else _span(row[f"{name}_low"], row[f"{name}_high"])
            for name in ("heat_days", "heat_days_at_loss")
        ]
        table.add_row(
            Text(row["van"]), _span(row["points_low"], row["points_high"]),
            _span(row["optioned_low"], row["optioned_high"]), *days, unknown,
        )  # fmt: skip
    out.print(table)
    out.print(Text("In order of name: where two bands overlap, neither van is the better one.", style="dim"))
    out.print(Text(DAYS_OF_HEAT, style="dim"))


def _counted(number: int, name: str) -> str:
    return f"{number} {name}" if number == 1 else f"{number} {name}s"


def _summary_data(summary: ScanSummary) -> dict[str, Any]:
    return {
        "db": str(summary.db), "run_id": summary.run_id, "read": summary.read, "unchanged": summary.unchanged,
        "removed": summary.removed, "left_aside": summary.aside, "vans": summary.vans, "facts": summary.facts,
        "seconds": round(summary.seconds, 3), "notes": summary.notes,
        "timings": {name: round(seconds, 3) for name, seconds in summary.timings.stages.items()},
        "processor_seconds": {name: round(seconds, 3) for name, seconds in summary.timings.inside.items()},
        "documents": [
            {"path": record.path, "status": record.status, "message": record.message}
            for record in summary.documents
        ],
    }  # fmt: skip


def _document_line(record: DocumentRecord) -> Text:
    words = {
        "unreadable": ("not read", "bold red"),
        "partly_read": ("read in part", "yellow"),
        "no_van_found": ("no van in it", "dim"),
    }
    word, style = words.get(record.status, (record.status, ""))
    message = f": {visible(record.message)}" if record.message else ""
    return Text.assemble((f"{word}: ", style), visible(record.name), message)


def print_explanation(account: Explanation, *, cite: bool = False) -> None:
    """Print the account of a van: bands, reasons, words and pages, unknowns; with ``cite`` sources by number."""
    out = console()
    numbers: dict[str, int] | None = {} if cite else None
    fitted = "with printed options fitted" if account.equipment == "optioned" else "as delivered"
    out.print(Text.assemble((account.title, "bold"), f", {fitted}"))
    out.print(Text(f"{account.ruleset_title} ({account.ruleset})"))
    out.print(_band_line(account.total))
    if account.meaning:
        out.print(Text(account.meaning, style="dim"))
    for criterion in account.criteria:
        out.print()
        out.print(Text.assemble((criterion.title, "bold"), "  ", _points(criterion)))
        out.print(Text(f"  {criterion.because}"))
        for evidence in criterion.evidence:
            _print_evidence(out, evidence, numbers)
    if account.unknown:
        out.print()
        out.print(Text("Not known, and what it could move", style="bold"))
        for gap in account.unknown:
            reason = REASONS.get(gap["reason"], gap["reason"])
            out.print(Text(f"  {gap['points_at_stake']:5.1f} points  {gap['field']} ({reason})"))
            out.print(Text(f"                {gap['question']}", style="dim"))
    out.print()
    if account.claims:
        out.print(Text("What is claimed, and what bears it out (evidence: specscan claims)", style="bold"))
        for claim in account.claims:
            said = claim["said"] if claim["said"] and len(claim["said"]) < len(claim["printed"]) else claim["printed"]
            line = f"  {VERDICT_WORDS[claim['verdict']]}: {claim['title']} “{short_words(said, 90)}”"
            out.print(Text(f"{line}  {on_page(visible(claim['document']), claim['page'])}"))
        notes = dict.fromkeys(claim["note"] for claim in account.claims if claim["note"])
        for note in notes:
            out.print(Text(f"  {note}", style="dim"))
        out.print()
    out.print(Text("Other views", style="bold"))
    for row in account.other_totals:
        view = "options fitted" if row["equipment"] == "optioned" else "as delivered"
        points = f"{_span(row['points_low'], row['points_high'])} of {row['points_max']:g}"
        out.print(Text(f"  {row['ruleset']}, {view}: {points}"))
    out.print()
    out.print(Text("Documents", style="bold"))
    for document in account.documents:
        digest = f", SHA-256 {document['sha256']}" if cite and document["sha256"] else ""
        message = f" ({document['message']})" if document["message"] else ""
        out.print(Text(f"  {document['name']}{digest}{message}"))
    out.print()
    if numbers:
        out.print(Text("Sources", style="bold"))
        for citation, number in numbers.items():
            out.print(Text(f"  [{number}] {citation}"))
        out.print()
    out.print(Text(CAUTION, style="dim"))


def _print_evidence(out: Any, evidence: Evidence, numbers: dict[str, int] | None) -> None:
    value = evidence.value or "not known"
    marks = [evidence.status] if evidence.status in ("conflicting", "derived", "observed") else []
    if evidence.availability in ("not_available", "unstated", "optional"):
        marks.append(evidence.availability.replace("_", " "))
    line = Text.assemble("    ", (evidence.field, "cyan"), ": ", (value, "" if evidence.value else "yellow"))
    if marks:
        line.append(f" ({', '.join(marks)})")
    if evidence.note:
        line.append(f" — {evidence.note}")
    if numbers is not None:
        cited = [numbers.setdefault(source["citation"], len(numbers) + 1) for source in evidence.sources]
        line.append("".join(f" [{number}]" for number in dict.fromkeys(cited)))
    out.print(line)
    if numbers is not None:
        return
    for source in evidence.sources:
        option = " [option]" if source["availability"] == "optional" else ""
        place = on_page(visible(source["document"]), source["page"])
        out.print(Text(f"      “{short_words(source['printed'], LENGTH)}”{option}  {place}", style="dim"))


def _band_line(total: CriterionAccount) -> Text:
    """Draw a band: points known, points that could still come, the rest."""
    scale = BAND_WIDTH / total.points_max if total.points_max else 0
    low, high = round(total.points_low * scale), round(total.points_high * scale)
    bar = "█" * low + "▒" * (high - low) + "·" * (BAND_WIDTH - high)
    known = f"{_span(total.points_low, total.points_high)} of {total.points_max:g} points"
    return Text.assemble((bar, "green"), "  ", (known, "bold"))


def _points(criterion: CriterionAccount) -> str:
    return f"{_span(criterion.points_low, criterion.points_high)} of {criterion.points_max:g}"


def _span(low: float, high: float) -> str:
    return f"{low:.3g}" if abs(high - low) < 0.05 else f"{low:.3g} to {high:.3g}"


def print_gaps(rows: Sequence[dict[str, Any]], ruleset: str) -> None:
    """Print gaps as a table."""
    if not rows:
        console().print(Text(f"nothing is missing that would change points under {ruleset}"))
        return
    heads = ("points", "van", "field", "why it is missing", "what to ask, where to look")
    cells = [
        (f"{row['points_at_stake']:.1f}", row["van"], row["field"], REASONS.get(row["reason"], row["reason"] or ""),
         row["question"])
        for row in rows
    ]  # fmt: skip
    print_rows(heads, cells)


def print_evaluation(result: Evaluation) -> None:
    """Print figures over all and by field, and every miss."""
    out = console()
    table = Table(box=None, header_style="bold", pad_edge=False)
    for head in ("field", "right", "extra", "missing", "precision", "recall", "F1", "page", "availability"):
        table.add_column(head, justify="left" if head == "field" else "right")
    for name, figures in sorted(result.by_field.items()):
        table.add_row(name, *_cells(figures))
    table.add_section()
    table.add_row("all", *_cells(result.overall), style="bold")
    out.print(table)
    if result.misses:
        out.print()
        out.print(Text(f"{len(result.misses)} misses", style="bold"))
    for miss in result.misses:
        place = f" page {miss.page}" if miss.page else ""
        wanted = f"expected {miss.expected}" if miss.expected else ""
        found = f"found {miss.found}" if miss.found else ""
        said = f"  “{short_words(miss.printed, 90)}”" if miss.printed else ""
        parts = ", ".join(part for part in (wanted, found) if part)
        out.print(Text(f"{miss.kind}: {miss.doc}{place}: {miss.van} {miss.field}: {parts}{said}"))
    if result.not_judged:
        out.print(Text(f"not in the gold file, not judged: {', '.join(result.not_judged)}", style="dim"))


def _cells(figures: Figures) -> list[str]:
    shares = (figures.precision, figures.recall, figures.f1, figures.page, figures.availability)
    return [
        str(figures.right),
        str(figures.extra),
        str(figures.missing),
        *("" if s is None else f"{s:.3f}" for s in shares),
    ]


def print_cases(results: Sequence[Any]) -> None:
    """Print the outcome of the cases in rule files."""
    out = console()
    for result in results:
        style = "green" if result.passed else "bold red"
        out.print(Text.assemble(("ok    " if result.passed else "WRONG ", style), f"{result.ruleset}: {result.case}"))
        for failure in result.failures:
            out.print(Text(f"      {failure}"))
    wrong = sum(not result.passed for result in results)
    out.print(f"{len(results)} cases, {wrong} wrong" if wrong else f"{len(results)} cases, all as expected")
