"""The command ``specscan``. Nothing heavy is imported before a command needs it."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Any

import click

from specscan import api
from specscan.cli.cautions import CAUTION
from specscan.cli.claims import claims
from specscan.cli.compare import changes, sensitivity
from specscan.cli.conditions import chosen_conditions, conditions_options
from specscan.cli.doubts import doubts
from specscan.cli.draft import draft
from specscan.cli.observe import observe
from specscan.cli.options import (
    DONE,
    SOME_UNREADABLE,
    WRONG_CALL,
    db_option,
    json_option,
    rules_option,
    ruleset_option,
)
from specscan.cli.report import report, sheet, table
from specscan.cli.winter import winter
from specscan.records.errors import RuleError, SpecscanError
from specscan.records.shown import visible, visible_lines


class _Group(click.Group):
    """Turns errors made on purpose into a message and exit status 2."""

    def invoke(self, ctx: click.Context) -> Any:
        try:
            return super().invoke(ctx)
        except RuleError as error:
            for mistake in error.mistakes:
                click.echo(visible(mistake), err=True)
            ctx.exit(WRONG_CALL)
        except SpecscanError as error:
            click.echo(visible_lines(f"specscan: {error}"), err=True)
            ctx.exit(WRONG_CALL)


def _print_version(ctx: click.Context, _: click.Parameter, asked: bool) -> None:
    if asked:
        from specscan import __version__

        click.echo(f"specscan, version {__version__}")
        ctx.exit()


@click.group(cls=_Group, context_settings={"help_option_names": ["-h", "--help"]}, epilog=CAUTION)
@click.option(
    "--version", is_flag=True, is_eager=True, expose_value=False, callback=_print_version,
    help="Show the version and exit.",
)  # fmt: skip
def main() -> None:
    """Read brochures, spec sheets and web pages of camper vans into one dataset, and judge from it which vans can be
    lived in through deep winter: what is printed and where, what follows from it, what is unknown and whom to ask.

    Exit status: 0 all done; 1 done, but some documents could not be read (each is named); 2 the call or a rule file
    is wrong (nothing is stored).
    """


@main.command()
@click.argument("paths", nargs=-1, required=True)
@db_option
@rules_option
@click.option(
    "--ruleset-file", "ruleset_files", multiple=True, type=click.Path(path_type=Path),
    help="A further rule-set file to score with; may be given several times.",
)  # fmt: skip
@click.option("--jobs", default=0, show_default="one per core", help="How many processes read at once.")
@click.option(
    "--confidence", type=click.FloatRange(0, 1), default=None, show_default="settle_at in rules/settling.yaml",
    help="The least confidence with which a statement counts; `doubts` lists those below.",
)  # fmt: skip
@click.option("--again", is_flag=True, help="Read unchanged files again as well.")
@click.option(
    "--cluster", default="", metavar="ADDRESS",
    help="Have the files read by the machines of a Dask cluster, by its scheduler's address: tcp://host:8786. "
    "PATHS can then be addresses too (s3://…), which are read anew at each scan. Needs the cluster extra.",
)  # fmt: skip
@click.option(
    "--parts", default="", metavar="ADDRESS",
    help="With --cluster: a folder that all its machines can write to and this one can read.",
)  # fmt: skip
@click.option("--timings", is_flag=True, help="Tell where the time went.")
@conditions_options
@json_option
def scan(
    paths: tuple[str, ...], db: Path, rules: Path | None, ruleset_files: tuple[Path, ...], jobs: int, again: bool,
    confidence: float | None, cluster: str, parts: str, timings: bool, as_json: bool, **stated: Any,
) -> None:  # fmt: skip
    """Read the documents under PATHS (files or folders) into the dataset, settle and score.

    Only new and changed files are read. A manifest.csv in a folder (columns file, maker, model, year) overrules what
    its files say about whose they are.
    """
    from specscan.cli.printing import print_overview, print_summary, print_timings, progress_line
    from specscan.reports.overview import overview

    with progress_line(quiet=as_json) as progress:
        summary = api.scan(
            paths, db, rules=rules, rulesets=ruleset_files, jobs=jobs, again=again, progress=progress,
            confidence=confidence, cluster=cluster, parts=parts,
            **chosen_conditions(stated),
        )  # fmt: skip
    print_summary(summary, as_json=as_json)
    if timings and not as_json:
        print_timings(summary.timings)
    if not as_json:
        print_overview(overview(db, api.DEFAULT_RULESET))
    sys.exit(SOME_UNREADABLE if summary.unreadable else DONE)


@main.command()
@click.argument("van")
@db_option
@ruleset_option
@click.option("--optioned", is_flag=True, help="With the printed options fitted, not as delivered.")
@click.option("--cite", is_flag=True, help="Number the sources and list them with maker, document, page and words.")
@json_option
def explain(van: str, db: Path, ruleset: str, optioned: bool, cite: bool, as_json: bool) -> None:
    """Tell why VAN scores as it does: points, reasons, the words and pages they rest on, and what is not known."""
    account = api.explain(van, db, ruleset=ruleset, equipment="optioned" if optioned else "standard")
    if as_json:
        from specscan.cli.consoles import print_json

        print_json(account.as_dict())
        return
    from specscan.cli.printing import print_explanation

    print_explanation(account, cite=cite)


@main.command()
@db_option
@ruleset_option
@click.option("--van", default="", help="Only this van.")
@click.option("--all", "everything", is_flag=True, help="Also what would change no points under this rule set.")
@json_option
def gaps(db: Path, ruleset: str, van: str, everything: bool, as_json: bool) -> None:
    """List what is missing per van, most points at stake first, with the question to ask or where to look."""
    from specscan.reports.gaps import list_gaps

    rows = list_gaps(db, ruleset, van, 0.0 if everything else 0.005)
    if as_json:
        from specscan.cli.consoles import print_json

        print_json(rows)
        return
    from specscan.cli.printing import print_gaps

    print_gaps(rows, ruleset)


@main.command()
@click.argument("sql")
@db_option
@click.option(
    "--format", "form", type=click.Choice(["table", "csv", "json", "parquet"]), default="table", show_default=True,
    help="How to print the answer; parquet needs --out.",
)  # fmt: skip
@click.option("--out", type=click.Path(path_type=Path), help="Write to this file and not to the terminal.")
def query(sql: str, db: Path, form: str, out: Path | None) -> None:
    """Run one SQL SELECT over the dataset, read only.

    Tables: vans, vans_optioned (one row per van; vans_us and vans_optioned_us in US units), settled, facts, documents,
    scores, gaps, claims, claim_parts, fields, rulesets, runs.
    """
    from specscan.cli.answers import write_answer

    write_answer(db, sql, form, out)


@main.command()
@click.argument("gold", type=click.Path(path_type=Path))
@db_option
@json_option
def evaluate(gold: Path, db: Path, as_json: bool) -> None:
    """Compare the dataset with gold labels: precision, recall and F1, pages, availability, and every miss."""
    result = api.evaluate(gold, db)
    if as_json:
        from specscan.cli.consoles import print_json

        print_json(result.as_dict())
        return
    from specscan.cli.printing import print_evaluation

    print_evaluation(result)


@main.command()
@click.argument("folder", type=click.Path(path_type=Path))
@db_option
@click.option(
    "--format", "form", type=click.Choice(["csv", "parquet", "json", "package"]), default="csv", show_default=True
)
@click.option(
    "--licence", default="MIT", show_default=True, help="Licence of the tables that a package tells (SPDX identifier)."
)
def export(folder: Path, db: Path, form: str, licence: str) -> None:
    """Write every table of the dataset to FOLDER, one file each.

    As a package: a Frictionless Data Package with CSV and Parquet, data dictionary, checksums and digest of the rules.
    """
    for path in api.export(db, folder, form, licence):
        click.echo(path)


@main.command()
@click.argument("folder", type=click.Path(path_type=Path))
def demo(folder: Path) -> None:
    """Write the demo corpus (invented brochures, with labels) to FOLDER."""
    click.echo(api.copy_demo(folder))


main.add_command(changes)
main.add_command(claims)
main.add_command(doubts)
main.add_command(draft)
main.add_command(observe)
main.add_command(winter)


@main.group()
def rules() -> None:
    """Copy, check and test the rules: fields, words, values and rule sets."""


@rules.command("copy")
@click.argument("folder", type=click.Path(path_type=Path))
def rules_copy(folder: Path) -> None:
    """Write the built-in rules to FOLDER, to be changed and used with scan --rules FOLDER."""
    click.echo(api.copy_rules(folder))


@rules.command("check")
@click.argument("path", required=False, type=click.Path(path_type=Path))
@rules_option
def rules_check(path: Path | None, rules: Path | None) -> None:
    """Name every mistake in PATH, a rule-set file or a folder of rules (the built-in ones by default)."""
    mistakes = api.check_rules(path, rules)
    for mistake in mistakes:
        click.echo(mistake, err=True)
    if mistakes:
        sys.exit(WRONG_CALL)
    click.echo("no mistakes")


@rules.command("test")
@click.argument("path", required=False, type=click.Path(path_type=Path))
@rules_option
def rules_test(path: Path | None, rules: Path | None) -> None:
    """Run the cases that rule-set files carry: of PATH, or of all rule sets."""
    from specscan.cli.printing import print_cases

    results = api.run_rule_cases(path, rules)
    print_cases(results)
    sys.exit(DONE if all(result.passed for result in results) else WRONG_CALL)


main.add_command(report)
main.add_command(sensitivity)
main.add_command(sheet)
main.add_command(table)
