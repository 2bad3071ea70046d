"""The command ``claims``: what brochures claim, and what their own tables and physics say to it."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby
from pathlib import Path
from typing import Any

import click
from rich.text import Text

from specscan.cli.cautions import CAUTION
from specscan.cli.consoles import console
from specscan.cli.options import db_option, json_option
from specscan.records.claims import VERDICT_WORDS, VERDICTS
from specscan.records.shown import visible

STYLES = {"contradicted": "bold red", "only_with_options": "yellow", "not_supported": "yellow", "supported": "green"}
LENGTH = 200


@click.command()
@click.argument("vans", nargs=-1)
@db_option
@click.option(
    "--verdict", "verdicts", multiple=True, type=click.Choice(VERDICTS),
    help="Only claims with this verdict; may be given several times.",
)  # fmt: skip
@json_option
def claims(vans: tuple[str, ...], db: Path, verdicts: tuple[str, ...], as_json: bool) -> None:
    """Hold what brochures claim of VANS (all by default) against the same maker's figures and the physics.

    Each claim has one verdict: contradicted; only_with_options (borne out only with printed options fitted);
    not_supported (nothing printed bears it out); supported. A claim is no evidence for itself, nor is other
    running text that only repeats it or claims as loosely: tables, lists and what is reckoned from them are.
    """
    from specscan.reports.claims import list_claims

    rows = list_claims(db, vans, verdicts)
    if as_json:
        from specscan.cli.consoles import print_json

        print_json(rows)
        return
    print_claims(rows)


def print_claims(rows: Sequence[dict[str, Any]]) -> None:
    """Print claims van by van: verdict, words, page, and each part with its evidence."""
    out = console()
    if not rows:
        out.print(Text("no claims"))
        return
    for van, own in groupby(rows, key=lambda row: row["van"]):
        out.print(Text(van, style="bold"))
        said: set[str] = set()
        for row in own:
            print_claim(row, said)
        out.print()
    out.print(Text(CAUTION, style="dim"))


def print_claim(row: dict[str, Any], said: set[str]) -> None:
    """Print one claim; a note that ``said`` holds already is not printed again."""
    out = console()
    page = f", page {row['page']}" if row["page"] else ""
    verdict = Text(VERDICT_WORDS[row["verdict"]], style=STYLES[row["verdict"]])
    option = " (claimed of the van with an option)" if row["availability"] == "optional" else ""
    out.print(Text.assemble("  ", verdict, f": “{_short(row['printed'])}”  {visible(row['document'])}{page}"))
    claimed = row["said"] if row["said"] != row["printed"] else ""
    out.print(Text(f"    claims: {row['title']}{f' (“{claimed}”)' if claimed else ''}{option}"))
    for part in row["parts"]:
        why = f" — {part['because']}" if part["because"] else ""
        out.print(Text(f"    {part['means']}: {VERDICT_WORDS[part['verdict']]}{why}"))
        for line in dict.fromkeys(map(_source, part["sources"])):
            out.print(Text(f"      {line}", style="dim"))
    if row["note"] and row["note"] not in said:
        out.print(Text(f"    {row['note']}", style="dim"))
    if row["kind"] != "season":
        said.add(row["note"] or "")


def _source(source: dict[str, Any]) -> str:
    page = f", page {source['page']}" if source["page"] else ""
    mark = " [option]" if source["availability"] == "optional" else ""
    return f"“{_short(source['printed'])}”{mark}  {visible(source['document'])}{page}"


def _short(text: str) -> str:
    flat = " ".join(text.split())
    return flat if len(flat) <= LENGTH else flat[: LENGTH - 1] + "…"
