"""``specscan observe``: answers that people bring back."""

from __future__ import annotations

from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from specscan import api
from specscan.cli.options import db_option, json_option, scanned_rules_option
from specscan.records.errors import SpecscanError

if TYPE_CHECKING:
    from specscan.scanning.observe import ObserveSummary

PATH = click.Path(path_type=Path)


@click.command()
@click.argument("answers", required=False, type=PATH)
@db_option
@click.option("--van", help="One answer: the van's id or name.")
@click.option("--field", help="One answer: the field, as in the table fields.")
@click.option("--answer", help="One answer: such as “27 gal”, “yes”, “electric pad”.")
@click.option("--unit", default="", help="The unit, where the answer does not hold it.")
@click.option("--who", default="", help="Who saw it; fills empty cells of ANSWERS too.")
@click.option("--when", default="", help="The day, as 2026-02-28; fills empty cells of ANSWERS too.")
@click.option("--how", default="", help="seen, measured or told (by the maker); fills empty cells of ANSWERS too.")
@click.option("--evidence", type=PATH, help="A photograph or document that shows it.")
@click.option("--note", default="", help="Anything else to keep with the answer.")
@click.option("--optioned", is_flag=True, help="The answer is for the van with its options fitted, not as delivered.")
@click.option("--correct", "doc", default="", metavar="DOC", help="The answer is what this document really says.")
@click.option("--page", default="", help="With --correct: the page on which it says so.")
@click.option("--availability", default="", help="With --correct: standard, optional, not_available or unstated.")
@click.option("--gold", type=PATH, help="Write the kept corrections to this file as gold labels for evaluate.")
@scanned_rules_option
@json_option
def observe(
    answers: Path | None, db: Path, van: str | None, field: str | None, answer: str | None, unit: str, who: str,
    when: str, how: str, evidence: Path | None, note: str, optioned: bool, doc: str, page: str, availability: str,
    gold: Path | None, rules: Path | None, as_json: bool,
) -> None:  # fmt: skip
    """Take ANSWERS (a filled-in CSV), or one answer by options, into the dataset, above what is printed.

    Columns: van_id, field, answer; unit, who, when, how (seen, measured, told), evidence, note; equipment (standard or
    optioned); and for corrections of misread documents doc, page, availability. Rows without an answer are passed
    over. If any row is wrong, all wrong rows are named and nothing is stored.

    Answers are kept in a plain CSV file of yours beside the dataset, which every scan reads again. After editing it,
    run observe without ANSWERS. An answer tells of one vehicle; it is no promise for others of its kind.
    """
    if gold is not None:
        if answers is not None or van:
            raise SpecscanError("--gold writes what is kept: give the answers in a call of their own")
        count = api.gold_of_corrections(db, gold, rules=rules)
        click.echo(
            f"{count} labels → {gold}\nA gold file is exhaustive: add what else these documents state.", err=True
        )
        return
    one = _one(van, field, answer)
    if one is not None:
        one |= {
            "unit": unit, "note": note, "doc": doc, "page": page, "availability": availability,
            "equipment": "optioned" if optioned else "",
        }  # fmt: skip
    elif unit or note or doc or page or availability or optioned:
        raise SpecscanError("one answer by options needs --van, --field and --answer")
    shown = "" if evidence is None else evidence.resolve().as_posix()
    defaults = {"who": who, "when": when, "how": how, "evidence": shown}
    summary = api.observe(db, answers, one=one, defaults=defaults, rules=rules)
    if as_json:
        from specscan.cli.consoles import print_json

        print_json(_data(summary))
    else:
        _print(summary)


def _one(van: str | None, field: str | None, answer: str | None) -> dict[str, str] | None:
    given = {"van_id": van, "field": field, "answer": answer}
    if not any(value is not None for value in given.values()):
        return None
    lacking = [name.removesuffix("_id") for name, value in given.items() if not value]
    if lacking:
        raise SpecscanError(f"one answer by options needs --{' and --'.join(lacking)} too")
    return {name: value or "" for name, value in given.items()}


def _data(summary: ObserveSummary) -> dict[str, Any]:
    return {**asdict(summary), "db": str(summary.db), "kept": str(summary.kept)}


def _print(summary: ObserveSummary) -> None:
    from rich.text import Text

    from specscan.cli.consoles import console
    from specscan.reports.explain import value_text

    out = console()
    for one, row in zip(summary.added, summary.settled, strict=True):
        head = f"{one.van_id}  {one.field}: "
        out.print(
            Text.assemble(head, (value_text(row) or "not known", "bold"), f" ({row['status']}) — {row['note'] or ''}")
        )
    for line in summary.notes:
        out.print(Text(line, style="yellow"))
    counts = [f"{_counted(len(summary.added), 'answer')} kept in {summary.kept}"]
    counts += [f"{summary.known_before} there already"] if summary.known_before else []
    counts += (
        [f"{_counted(summary.without_answer, 'row')} without an answer passed over"] if summary.without_answer else []
    )
    out.print(Text("; ".join(counts)))
    if summary.unused_columns:
        out.print(Text(f"columns that are not used: {', '.join(summary.unused_columns)}", style="dim"))
    for band in summary.bands:
        if (band["low"], band["high"]) != (band["low_before"], band["high_before"]):
            fitted = "options fitted" if band["equipment"] == "optioned" else "as delivered"
            before = "" if band["low_before"] is None else f"{band['low_before']:.1f} to {band['high_before']:.1f} → "
            out.print(
                Text(f"{band['van_id']}, {band['ruleset']}, {fitted}: {before}{band['low']:.1f} to {band['high']:.1f}")
            )


def _counted(number: int, name: str) -> str:
    return f"{number} {name}" if number == 1 else f"{number} {name}s"
