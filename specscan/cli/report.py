"""Commands that write what people look at: the comparison page and the walk-around sheet."""

from __future__ import annotations

from pathlib import Path

import click

from specscan import api
from specscan.cli.options import db_option, rules_option, ruleset_option


@click.command()
@click.argument("vans", nargs=-1)
@db_option
@click.option("--out", required=True, type=click.Path(path_type=Path), help="The HTML file to write.")
@ruleset_option
@rules_option
def report(vans: tuple[str, ...], db: Path, out: Path, ruleset: str, rules: Path | None) -> None:
    """Write a page that compares all vans of the dataset, or VANS, with the evidence for every value.

    It is one file that opens in any browser, without network: score bands, reasons, pictures cut from the documents
    with the words marked, what is not known, method and sources. The documents must still be where they were read;
    where one is gone or changed, the page says so and shows its words without a picture.
    """
    page = api.report(db, out, vans=vans, ruleset=ruleset, rules=rules)
    size = len(page.html.encode()) / 1e6
    without = f", {page.without_picture} places without a picture" if page.without_picture else ""
    click.echo(f"{page.vans} vans, {page.pictures} pictures{without}, {size:.1f} MB → {out}")
