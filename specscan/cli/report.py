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
    without = f", {_counted(page.without_picture, 'place')} without a picture" if page.without_picture else ""
    click.echo(f"{_counted(page.vans, 'van')}, {_counted(page.pictures, 'picture')}{without}, {size:.1f} MB → {out}")


@click.command()
@click.argument("vans", nargs=-1)
@db_option
@click.option("--out", required=True, type=click.Path(path_type=Path), help="The HTML file to write, for printing.")
@click.option("--csv", "csv_out", type=click.Path(path_type=Path), help="Write the questions as CSV to fill in, too.")
@click.option("--all", "everything", is_flag=True, help="Also what would change no points under this rule set.")
@ruleset_option
@rules_option
def sheet(
    vans: tuple[str, ...], db: Path, out: Path, csv_out: Path | None, everything: bool, ruleset: str, rules: Path | None
) -> None:
    """Write the questions that are still open about VANS (or all vans) as a sheet to take to the van.

    Those that could change most come first, parted by whether one asks the maker, looks inside, looks underneath or
    measures, with room to write. A filled CSV goes back by `specscan observe`.
    """
    made = api.sheet(db, out, csv=csv_out, vans=vans, ruleset=ruleset, everything=everything, rules=rules)
    files = f"{out}, {csv_out}" if csv_out else str(out)
    click.echo(f"{_counted(made.questions, 'question')} about {_counted(len(made.vans), 'van')} → {files}")


def _counted(number: int, name: str) -> str:
    return f"{number} {name}" if number == 1 else f"{number} {name}s"
