"""Claims and their verdicts as a person likes to read them."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby
from typing import Any

from rich.text import Text

from specscan.cli.cautions import CAUTION
from specscan.cli.consoles import console
from specscan.records.claims import VERDICT_WORDS
from specscan.records.shown import on_page, visible
from specscan.reports.citations import short_words

STYLES = {"contradicted": "bold red", "only_with_options": "yellow", "not_supported": "yellow", "supported": "green"}
LENGTH = 200


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
    place = on_page(visible(row["document"]), row["page"])
    verdict = Text(VERDICT_WORDS[row["verdict"]], style=STYLES[row["verdict"]])
    option = " (claimed of the van with an option)" if row["availability"] == "optional" else ""
    out.print(Text.assemble("  ", verdict, f": “{short_words(row['printed'], LENGTH)}”  {place}"))
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
    mark = " [option]" if source["availability"] == "optional" else ""
    place = on_page(visible(source["document"]), source["page"])
    return f"“{short_words(source['printed'], LENGTH)}”{mark}  {place}"
