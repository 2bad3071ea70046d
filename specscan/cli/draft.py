"""The command ``draft``: a text that says things about vans, held against the dataset."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from specscan import api
from specscan.cli.options import db_option, json_option, scanned_rules_option

if TYPE_CHECKING:
    from specscan.reports.draft import Claim

WORDS = {
    "borne_out": "borne out", "contradicted": "contradicted", "without_evidence": "without evidence",
    "not_checked": "not checked",
}  # fmt: skip
STYLES = {"borne_out": "green", "contradicted": "bold red", "without_evidence": "yellow", "not_checked": "dim"}


@click.command()
@click.argument("text", type=click.Path(path_type=Path))
@db_option
@scanned_rules_option
@json_option
def draft(text: Path, db: Path, rules: Path | None, as_json: bool) -> None:
    """Check TEXT, a draft in plain text or Markdown that says things about vans of the dataset.

    Each statement is listed as borne out, contradicted or without evidence, with document, page and words. What a
    sentence says of a van that is not in the dataset, or of no field of the vocabulary, is listed as not checked.
    """
    claims = api.check_draft(text, db, rules=rules)
    if as_json:
        from specscan.cli.consoles import print_json

        print_json([claim.as_dict() for claim in claims])
        return
    _print(claims)


def _print(claims: Sequence[Claim]) -> None:
    from rich.text import Text

    from specscan.cli.consoles import console

    out = console()
    if not claims:
        out.print(Text("nothing in this text is about a van of the dataset, and it has no figures"))
        return
    said = None
    for claim in claims:
        if claim.words != said:
            out.print(Text(f"“{' '.join(claim.words.split())}”", style="bold"))
            for taken in claim.taken:
                out.print(Text(f"  {taken}", style="dim"))
            said = claim.words
        about = f"{claim.label}: {claim.says}" if claim.label else ""
        van = f"{claim.van}{' (named before)' if claim.carried else ''}"
        line = ", ".join(part for part in (van, about) if part)
        out.print(Text.assemble("  ", (WORDS[claim.verdict], STYLES[claim.verdict]), f"  {line}" if line else ""))
        out.print(Text(f"    {claim.because}"))
        for source in claim.sources:
            out.print(Text(f"    {source['citation']}", style="dim"))
    counts: Counter[str] = Counter(claim.verdict for claim in claims)
    out.print(Text("; ".join(f"{counts[verdict]} {words}" for verdict, words in WORDS.items() if counts[verdict])))
