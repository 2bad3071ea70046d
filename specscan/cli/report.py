"""Commands that write what people look at: the comparison page and the walk-around sheet."""

from __future__ import annotations

from pathlib import Path

import click

from specscan import api
from specscan.cli.options import db_option, ruleset_option, scanned_rules_option

FORMS = {".md": "markdown", ".json": "json"}


@click.command()
@click.argument("vans", nargs=-1)
@db_option
@click.option(
    "--out",
    required=True,
    type=click.Path(path_type=Path),
    help="The file to write: .md gives Markdown, .json JSON, anything else the HTML page.",
)
@ruleset_option
@scanned_rules_option
def report(vans: tuple[str, ...], db: Path, out: Path, ruleset: str, rules: Path | None) -> None:
    """Write a page that compares all vans of the dataset, or VANS, with the evidence for every value.

    It is one file that opens in any browser, without network: score bands, reasons, pictures cut from the documents
    with the words marked, what is not known, method and sources. The documents must still be where they were read;
    where one is gone or changed, the page says so and shows its words without a picture.

    As Markdown and JSON it says the same, with a citation for every value and without pictures.
    """
    form = FORMS.get(out.suffix.casefold())
    if form is not None:
        text = api.written_report(db, out, form, vans=vans, ruleset=ruleset, rules=rules)
        click.echo(f"{len(text.encode()) / 1e6:.1f} MB → {out}")
        return
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
@scanned_rules_option
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


@click.command()
@click.argument("vans", nargs=-1)
@db_option
@click.option("--field", "fields", multiple=True, help="A row of the table; may be given several times.")
@click.option("--units", type=click.Choice(["metric", "us"]), default="metric", show_default=True)
@click.option("--optioned", is_flag=True, help="With the printed options fitted, not as delivered.")
@click.option("--format", "form", type=click.Choice(["markdown", "csv"]), default="markdown", show_default=True)
@ruleset_option
@scanned_rules_option
def table(
    vans: tuple[str, ...], db: Path, fields: tuple[str, ...], units: str, optioned: bool, form: str, ruleset: str,
    rules: Path | None,
) -> None:  # fmt: skip
    """Print a table that compares VANS (or all vans), ready to paste: a column a van, a numbered source a value.

    Without --field its rows are the points and what the rule set asks about.
    """
    equipment = "optioned" if optioned else "standard"
    made = api.table(db, vans, fields, ruleset=ruleset, equipment=equipment, units=units, rules=rules)
    click.echo(made.csv() if form == "csv" else made.markdown(), nl=False)


def _counted(number: int, name: str) -> str:
    return f"{number} {name}" if number == 1 else f"{number} {name}s"
