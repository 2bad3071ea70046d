"""The commands ``changes`` and ``sensitivity``."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from specscan import api
from specscan.cli.options import db_option, json_option, ruleset_option

if TYPE_CHECKING:
    from specscan.reports.changes import Comparison, Side
    from specscan.reports.sensitivity import Sensitivity

KINDS = {"changed": "changed", "new": "now known", "gone": "no longer known", "availability": "same value, other offer",
         "status": "same value, other standing"}  # fmt: skip
SHOWN = 8


@click.command()
@click.argument("vans", nargs=-1)
@db_option
@click.option("--since", type=click.Path(path_type=Path), help="An older dataset of the same vans to compare with.")
@click.option("--derived", is_flag=True, help="What was worked out, too.")
@json_option
def changes(vans: tuple[str, ...], db: Path, since: Path | None, derived: bool, as_json: bool) -> None:
    """Tell what changed, per van and field, with the pages on both sides.

    With --since between two scans (keep a copy of the dataset); with two VANS between these; else between all model
    years of the same van that the dataset has.
    """
    found = api.changes(db, vans, since=since, derived=derived)
    if as_json:
        from specscan.cli.consoles import print_json

        print_json(found.as_dict())
        return
    _print_changes(found)


def _print_changes(found: Comparison) -> None:
    from rich.text import Text

    from specscan.cli.consoles import console

    out = console()
    for title in found.appeared:
        out.print(Text(f"new van: {title}", style="green"))
    for title in found.vanished:
        out.print(Text(f"no longer there: {title}", style="yellow"))
    told = False
    for pair in found.pairs:
        if not pair.changes and not pair.bands:
            continue
        told = True
        out.print(Text(pair.before if pair.before == pair.after else f"{pair.before} → {pair.after}", style="bold"))
        for change in pair.changes:
            fitted = ", with options fitted" if change.equipment == "optioned" else ""
            out.print(Text.assemble("  ", (change.field, "cyan"), f"{fitted}: {KINDS[change.kind]}"))
            for word, side in (("before", change.before), ("after", change.after)):
                out.print(Text(f"    {word}: {_side(side)}"))
                for citation in side.citations:
                    out.print(Text(f"      {citation}", style="dim"))
        for band in pair.bands:
            fitted = "options fitted" if band["equipment"] == "optioned" else "as delivered"
            before = f"{band['low_before']:.1f} to {band['high_before']:.1f}"
            out.print(Text(f"  {band['ruleset']}, {fitted}: {before} → {band['low']:.1f} to {band['high']:.1f} points"))
        out.print()
    if not told and not found.appeared and not found.vanished:
        out.print(Text("no changes" if found.pairs else "no van is there in several model years"))


def _side(side: Side) -> str:
    marks = [mark.replace("_", " ") for mark in (side.status, side.availability) if mark and mark != "missing"]
    if not side.value:
        return side.note or "not known"
    return f"{side.value} ({', '.join(marks)})"


@click.command()
@db_option
@ruleset_option
@click.option("--optioned", is_flag=True, help="With the printed options fitted, not as delivered.")
@click.option("--draws", default=1000, show_default=True, help="How many sets of weights to draw.")
@click.option(
    "--spread", default=2.0, show_default=True, help="Largest factor of a weight: 2 lets each be halved or doubled."
)
@click.option("--seed", default=1, show_default=True, help="Of the random numbers.")
@json_option
def sensitivity(db: Path, ruleset: str, optioned: bool, draws: int, spread: float, seed: int, as_json: bool) -> None:
    """Tell how the order of the vans moves when the weights of the rule set move.

    Weights are a choice. Each draw changes all of them at random; the table says how often each van ranks where. Ranks
    go by the middle of a van's band; where bands overlap neither van is the better one, whatever the rank.
    """
    equipment = "optioned" if optioned else "standard"
    found = api.sensitivity(db, ruleset=ruleset, equipment=equipment, draws=draws, spread=spread, seed=seed)
    if as_json:
        from specscan.cli.consoles import print_json

        print_json(found.as_dict())
        return
    _print_sensitivity(found)


def _print_sensitivity(found: Sensitivity) -> None:
    from rich.table import Table
    from rich.text import Text

    from specscan.cli.consoles import console

    out = console()
    fitted = "with printed options fitted" if found.equipment == "optioned" else "as delivered"
    title = f"{found.title}, {fitted}: {found.draws} draws, weights times {1 / found.spread:.2g} to {found.spread:g}"
    table = Table(box=None, header_style="bold", pad_edge=False, title=title, title_justify="left")
    table.add_column("van", overflow="fold")
    for head in ("points", "rank", "in 9 of 10 draws", "most often", "bands leave open"):
        table.add_column(head, justify="right")
    for row in found.vans.itertuples():
        table.add_row(
            Text(row.van), f"{row.points_low:.1f} to {row.points_high:.1f}", str(row.rank),
            _ranks(row.rank_low, row.rank_high), f"{row.rank_most} ({row.share_most:.0%})",
            _ranks(row.best, row.worst),
        )  # fmt: skip
    out.print(table)
    orders = found.orders
    always = int((orders["share"] == 1).sum())
    out.print(
        Text(f"{len(orders)} pairs of vans have an order (their bands do not overlap); {always} keep it in every draw.")
    )
    for pair in orders[orders["share"] < 1].head(SHOWN).itertuples():
        out.print(Text(f"  {pair.share:4.0%} of draws: {pair.above} above {pair.below}", style="dim"))
    out.print(
        Text("Ranks go by the middle of the band. Where bands overlap, neither van is the better one.", style="dim")
    )


def _ranks(low: int, high: int) -> str:
    return str(low) if low == high else f"{low} to {high}"
