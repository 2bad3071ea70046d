"""Options that several commands share, and the ways in which a command ends."""

from __future__ import annotations

from pathlib import Path

import click

from specscan import api
from specscan.records.defaults import FIRST_RULESET

DONE, SOME_UNREADABLE, WRONG_CALL = 0, 1, 2
db_option = click.option("--db", required=True, type=click.Path(path_type=Path), help="The dataset, a DuckDB file.")
json_option = click.option("--json", "as_json", is_flag=True, help="Print JSON for programs.")
rules_option = click.option(
    "--rules", type=click.Path(path_type=Path), help="A folder of rules to use in place of the built-in ones."
)
scanned_rules_option = click.option(
    "--rules", type=click.Path(path_type=Path), help="A folder of rules to use in place of those of the last scan."
)
ruleset_option = click.option(
    "--ruleset",
    default=api.DEFAULT_RULESET,
    show_default=f"{FIRST_RULESET}, or the first there is",
    help="The rule set to score by.",
)
