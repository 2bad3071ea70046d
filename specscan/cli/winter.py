"""``specscan winter``: how cold, how long, what ends the stay."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import click

from specscan import api
from specscan.cli.conditions import chosen_conditions, conditions_options
from specscan.cli.options import db_option, json_option, scanned_rules_option


@click.command()
@click.argument("vans", nargs=-1)
@db_option
@conditions_options
@click.option("--optioned", is_flag=True, help="With the printed options fitted, not as delivered.")
@click.option("--arithmetic", is_flag=True, help="Show for each figure how it comes about, to redo it by hand.")
@click.option(
    "--plot", type=click.Path(path_type=Path),
    help="Draw days by outside temperature, and the inside after the heating stops, to a PNG or SVG file.",
)  # fmt: skip
@scanned_rules_option
@json_option
def winter(
    vans: tuple[str, ...], db: Path, optioned: bool, arithmetic: bool, plot: Path | None, rules: Path | None,
    as_json: bool, **stated: Any,
) -> None:  # fmt: skip
    """Reckon the winter behaviour of VANS, or of all vans: heat, fuel, battery, tanks, lines, and what ends the stay.

    Without options under the conditions of the last scan. One van is told in full, several as a table. Every figure is
    an estimate with its range; what no document tells is assumed with a range, or named as not known.
    """
    equipment = "optioned" if optioned else "standard"
    outlook = api.winter(db, vans=vans, equipment=equipment, rules=rules, **chosen_conditions(stated))
    if plot is not None:
        api.plot_winter(outlook, plot)
    if as_json:
        from specscan.cli.consoles import print_json

        print_json(outlook.as_dict())
        return
    from specscan.cli.winter_printing import print_one, print_several

    if len(outlook.vans) == 1:
        print_one(outlook, arithmetic=arithmetic)
    else:
        print_several(outlook)
    if plot is not None:
        click.echo(f"drawn → {plot}")
