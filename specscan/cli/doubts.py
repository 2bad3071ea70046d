"""The command ``doubts``: what a person should check first."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby
from pathlib import Path
from typing import Any

import click

from specscan.cli.options import db_option, json_option
from specscan.records.defaults import UNSURE_BELOW
from specscan.records.shown import on_page
from specscan.reports.citations import short_words

TITLES = {
    "conflict": "Statements that contradict each other",
    "not_read": "Not read",
    "below_threshold": "Read with less confidence than the scan asked for; they do not count",
    "unsure": "Counted, but not quite sure",
    "set_aside": "Candidates that were set aside",
}
LENGTH = 160


@click.command()
@click.argument("vans", nargs=-1)
@db_option
@click.option(
    "--below", type=click.FloatRange(0, 1), default=UNSURE_BELOW, show_default=True,
    help="List statements that count, but were read with less confidence than this.",
)  # fmt: skip
@json_option
def doubts(vans: tuple[str, ...], db: Path, below: float, as_json: bool) -> None:
    """List what to check first of VANS (all by default), with document, page and words.

    First conflicts, then pages that could not be read, statements below the confidence that the scan asked for
    (scan --confidence), those that count but are unsure, and last the candidates that were set aside, with why.
    """
    from specscan.reports.doubts import list_doubts

    rows = list_doubts(db, vans, below)
    if as_json:
        from specscan.cli.consoles import print_json

        print_json(rows)
        return
    _print_doubts(rows)


def _print_doubts(rows: Sequence[dict[str, Any]]) -> None:
    from rich.text import Text

    from specscan.cli.consoles import console

    out = console()
    if not rows:
        out.print(Text("nothing is in doubt"))
    for kind, own in groupby(rows, key=lambda row: row["kind"]):
        out.print(Text(TITLES[kind], style="bold"))
        for row in own:
            out.print(Text(f"  {_line(row)}"))
        out.print()


def _line(row: dict[str, Any]) -> str:
    place = on_page(row["document"], row["page"])
    if row["kind"] == "not_read":
        return f"{place}: {row['because']}"
    value = " ".join(str(part) for part in (row["value"], row["unit"]) if part not in (None, ""))
    option = (
        f" [{row['availability'].replace('_', ' ')}]" if row["availability"] in ("optional", "not_available") else ""
    )
    words = short_words(row["printed"] or "", LENGTH)
    why = f" — {row['because']}" if row["because"] and row["kind"] != "conflict" else ""
    stated = f"{row['van']}, {row['field']}: {value}{option} ({row['confidence']:.2f})"
    return f"{stated} “{words}”  {place}{why}"
