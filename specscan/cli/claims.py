"""The command ``claims``: what brochures claim, and what their own tables and physics say to it."""

from __future__ import annotations

from pathlib import Path

import click

from specscan.cli.options import db_option, json_option
from specscan.records.claims import VERDICTS


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
    from specscan.cli.claims_printing import print_claims

    print_claims(rows)
