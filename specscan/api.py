"""All that the command line does, as functions: one a task. Heavy libraries are imported where they are needed."""

from __future__ import annotations

import shutil
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from specscan.records.errors import NotFoundError, SpecscanError

if TYPE_CHECKING:
    import pandas as pd

    from specscan.judging.examples import CaseResult
    from specscan.records.documents import ReadDocument
    from specscan.reports.changes import Comparison
    from specscan.reports.draft import Claim
    from specscan.reports.evaluate import Evaluation
    from specscan.reports.explain import Explanation
    from specscan.reports.page import Page
    from specscan.reports.sensitivity import Sensitivity
    from specscan.reports.sheet import Sheet
    from specscan.reports.table import ComparisonTable
    from specscan.reports.winter import Outlook
    from specscan.scanning.observe import ObserveSummary
    from specscan.scanning.scan import Progress, ScanSummary

PACKAGE = Path(__file__).parent
DEFAULT_RULESET = ""  # the built-in first one where the dataset was scored with it; see Reader.ruleset


def _shipped(name: str) -> Path:
    """Give a folder that travels with the program: inside an installed wheel, else beside the package in a checkout."""
    inside = PACKAGE / "_shipped" / name
    return inside if inside.is_dir() else PACKAGE.parent / name


def rules_folder() -> Path:
    """Give the folder of the built-in rules."""
    return _shipped("rules")


def demo_folder() -> Path:
    """Give the folder of the demo corpus."""
    return _shipped("corpus_demo")


def scan(
    paths: Sequence[str | Path],
    db: str | Path,
    *,
    rules: str | Path | None = None,
    rulesets: Sequence[str | Path] = (),
    jobs: int = 0,
    again: bool = False,
    progress: Progress | None = None,
    conditions: str = "",
    changes: Mapping[str, Any] | None = None,
    confidence: float | None = None,
    cluster: str = "",
    parts: str = "",
) -> ScanSummary:
    """Read new and changed documents under files and folders, and bring the dataset up to date.

    See ``specscan.scanning.scan.scan`` for arguments and errors; statements read with less than ``confidence`` (0 to
    1, by default that of the rules) do not settle; ``conditions`` and ``changes`` say under which ones
    winter is reckoned, as for ``winter``. Documents that cannot be read are no error: they
    are listed in the summary. ``cluster`` is the address of the scheduler of a Dask cluster that is to read the files,
    ``parts`` that of a folder which all its machines reach; files can then be given by address too.
    """
    from specscan.physics.conditions import conditions_named
    from specscan.scanning.cluster import Cluster
    from specscan.scanning.scan import scan as run

    folder = Path(rules) if rules is not None else rules_folder()
    return run(
        paths,
        Path(db),
        rules=folder,
        conditions=conditions_named(folder, conditions).changed(changes or {}),
        extra_rulesets=[Path(path) for path in rulesets],
        jobs=jobs,
        again=again,
        progress=progress,
        confidence=confidence,
        cluster=Cluster(cluster, parts) if cluster else None,
    )


def examine(path: str | Path, rules: str | Path | None = None) -> ReadDocument:
    """Give what one document states, candidates that were set aside included, without any dataset.

    The file is read in this very process: for files from strangers prefer ``scan``, which reads each in a process
    of its own.

    Raises:
        NotFoundError: there is no such file.
        RuleError: the rules are wrong.
    """
    from specscan.rulebook.book import load_rulebook
    from specscan.scanning.examine import Examiner
    from specscan.scanning.files import kind_of

    file = Path(path)
    if not file.is_file():
        raise NotFoundError(f"{file}: no such file")
    book = load_rulebook(Path(rules) if rules is not None else rules_folder())
    return Examiner(book).examine(file.as_posix(), file.read_bytes(), kind_of(file, book))


def query(sql: str, db: str | Path) -> pd.DataFrame:
    """Give the answer of one SELECT over the dataset, read only and walled off from files and network.

    Raises:
        QueryError: the text is not one reading statement, or DuckDB refuses it.
        DatasetError: the dataset cannot be opened.
    """
    from specscan.dataset.query import query_frame

    return query_frame(Path(db), sql)


def explain(van: str, db: str | Path, *, ruleset: str = DEFAULT_RULESET, equipment: str = "standard") -> Explanation:
    """Give why a van scores as it does; see ``specscan.reports.explain.explain``."""
    from specscan.reports.explain import explain as account

    return account(Path(db), van, ruleset, equipment)


def gaps(db: str | Path, *, ruleset: str = DEFAULT_RULESET, van: str = "", at_least: float = 0.0) -> pd.DataFrame:
    """Give what is missing, most points at stake first, with the question to ask; see ``specscan.reports.gaps``."""
    import pandas as pd

    from specscan.reports.gaps import list_gaps

    columns = ["van", "van_id", "field", "reason", "points_at_stake", "question", "narrows", "narrows_what"]
    return pd.DataFrame(list_gaps(Path(db), ruleset, van, at_least), columns=columns)


def claims(db: str | Path, *, vans: Sequence[str] = (), verdicts: Sequence[str] = ()) -> pd.DataFrame:
    """Give what brochures claim, with verdict, parts and evidence; see ``specscan.reports.claims.list_claims``."""
    import pandas as pd

    from specscan.reports.claims import list_claims

    columns = ["van", "document", "page", "printed", "said", "title", "verdict", "because", "note", "parts"]
    frame = pd.DataFrame(list_claims(Path(db), vans, verdicts))
    return frame if len(frame) else pd.DataFrame(columns=columns)


def doubts(db: str | Path, *, vans: Sequence[str] = (), below: float = 0.9) -> pd.DataFrame:
    """Give what a person should check first; see ``specscan.reports.doubts.list_doubts``."""
    import pandas as pd

    from specscan.reports.doubts import COLUMNS, list_doubts

    return pd.DataFrame(list_doubts(Path(db), vans, below), columns=COLUMNS)


def winter(
    db: str | Path,
    *,
    vans: Sequence[str] = (),
    conditions: str = "",
    changes: Mapping[str, Any] | None = None,
    equipment: str = "standard",
    rules: str | Path | None = None,
) -> Outlook:
    """Give the winter behaviour of the named vans (all by default) as frames.

    ``conditions`` is a name in ``rules/conditions.yaml`` or a file of that form (by default those of the last scan),
    ``changes`` single figures by their names there: ``winter(db, changes={"outside_c": -12, "nights": 2})``. See
    ``specscan.reports.winter.winter`` for errors and ``Outlook`` for the frames.
    """
    from specscan.reports.winter import winter as reckon

    folder = Path(rules) if rules is not None else rules_folder()
    return reckon(Path(db), folder, vans, conditions, changes, equipment)


def plot_winter(outlook: Outlook, out: str | Path) -> Path:
    """Draw days over outside temperature, and inside temperature after the heating stops, to a PNG or SVG file.

    Raises:
        SpecscanError: too many vans for one picture, no such kind of file, or the ``plot`` extra is not installed.
    """
    from specscan.reports.winter_plot import draw

    return draw(outlook, Path(out))


def check_draft(text: str | Path, db: str | Path, rules: str | Path | None = None) -> list[Claim]:
    """Give each statement of a draft about vans of the dataset as borne out, contradicted or without evidence.

    See ``specscan.reports.draft.check_draft`` for errors.
    """
    from specscan.reports.draft import check_draft as check

    return check(Path(text), Path(db), Path(rules) if rules is not None else rules_folder())


def report(
    db: str | Path,
    out: str | Path,
    *,
    vans: Sequence[str] = (),
    ruleset: str = DEFAULT_RULESET,
    rules: str | Path | None = None,
) -> Page:
    """Write the comparison page of a dataset to an HTML file; give the page.

    ``vans`` are the vans to show (all by default), ``ruleset`` the one shown first. See
    ``specscan.reports.page.make_page`` for errors.
    """
    from specscan.reports.page import make_page, write_text

    page = make_page(Path(db), Path(rules) if rules is not None else rules_folder(), ruleset, vans)
    write_text(Path(out), page.html)
    return page


def written_report(
    db: str | Path,
    out: str | Path,
    form: str = "markdown",
    *,
    vans: Sequence[str] = (),
    ruleset: str = DEFAULT_RULESET,
    rules: str | Path | None = None,
) -> str:
    """Write what the comparison page says as ``markdown`` or ``json`` to a file; give the text.

    Other arguments and errors as for ``report``.
    """
    from specscan.reports.page import write_text
    from specscan.reports.written import write_json, write_markdown

    if form not in ("markdown", "json"):
        raise ValueError(f"unknown form {form!r}: use markdown or json")
    write = write_json if form == "json" else write_markdown
    text = write(Path(db), Path(rules) if rules is not None else rules_folder(), ruleset, vans)
    write_text(Path(out), text)
    return text


def table(
    db: str | Path,
    vans: Sequence[str] = (),
    fields: Sequence[str] = (),
    *,
    ruleset: str = DEFAULT_RULESET,
    equipment: str = "standard",
    units: str = "metric",
    rules: str | Path | None = None,
) -> ComparisonTable:
    """Give a comparison table with a citation for every value; see ``specscan.reports.table.make_table``."""
    from specscan.reports.table import make_table

    folder = Path(rules) if rules is not None else rules_folder()
    return make_table(Path(db), folder, vans, fields, ruleset, equipment, units)


def sheet(
    db: str | Path,
    out: str | Path,
    *,
    csv: str | Path | None = None,
    vans: Sequence[str] = (),
    ruleset: str = DEFAULT_RULESET,
    everything: bool = False,
    rules: str | Path | None = None,
) -> Sheet:
    """Write the questions that are still open as a page to print, and with ``csv`` as a file to fill in; give both.

    See ``specscan.reports.sheet.make_sheet`` for the other arguments and errors.
    """
    from specscan.reports.page import write_text
    from specscan.reports.sheet import make_sheet

    folder = Path(rules) if rules is not None else rules_folder()
    made = make_sheet(Path(db), folder, ruleset, vans, everything)
    write_text(Path(out), made.html)
    if csv is not None:
        write_text(Path(csv), made.csv)
    return made


def observe(
    db: str | Path,
    answers: str | Path | None = None,
    *,
    one: dict[str, str] | None = None,
    defaults: dict[str, str] | None = None,
    rules: str | Path | None = None,
    rulesets: Sequence[str | Path] = (),
) -> ObserveSummary:
    """Take answers that people brought back, a CSV file or a single one, and bring the dataset up to date.

    See ``specscan.scanning.observe.observe`` for arguments and errors. By default the rules of the last scan are used.
    """
    from specscan.scanning.observe import observe as take

    return take(
        Path(db),
        Path(answers) if answers is not None else None,
        one,
        defaults=defaults,
        rules=Path(rules) if rules is not None else rules_folder(),
        rulesets=[Path(path) for path in rulesets],
        own_rules=rules is not None,
    )


def gold_of_corrections(db: str | Path, target: str | Path, rules: str | Path | None = None) -> int:
    """Write the corrections kept beside a dataset as a gold file; give how many; see ``specscan.scanning.observe``."""
    from specscan.scanning.observe import write_gold

    return write_gold(Path(db), Path(target), Path(rules) if rules is not None else rules_folder())


def evaluate(gold: str | Path, db: str | Path) -> Evaluation:
    """Compare a dataset with gold labels; see ``specscan.reports.evaluate.evaluate``."""
    from specscan.reports.evaluate import evaluate as compare

    return compare(Path(gold), Path(db))


def export(db: str | Path, folder: str | Path, form: str = "csv", licence: str = "MIT") -> list[Path]:
    """Write every table of the dataset to a folder as ``csv``, ``parquet`` or ``json``; give the files.

    As ``package`` they are a Frictionless Data Package; see ``specscan.dataset.package.write_package``.
    """
    if form == "package":
        from specscan.dataset.package import write_package

        return write_package(Path(db), Path(folder), licence)
    from specscan.dataset.export import export as write

    return write(Path(db), Path(folder), form)


def changes(
    db: str | Path, vans: Sequence[str] = (), *, since: str | Path | None = None, derived: bool = False
) -> Comparison:
    """Give what changed since an older dataset, between two vans, or between all model years of the same van.

    See ``specscan.reports.changes`` for errors.
    """
    from specscan.reports.changes import compare_runs, compare_vans

    if since is not None:
        return compare_runs(Path(since), Path(db), vans, derived)
    return compare_vans(Path(db), vans, derived)


def sensitivity(
    db: str | Path,
    *,
    ruleset: str = DEFAULT_RULESET,
    equipment: str = "standard",
    draws: int = 1000,
    spread: float = 2.0,
    seed: int = 1,
) -> Sensitivity:
    """Give how often each van ranks where when the weights move; see ``specscan.reports.sensitivity``."""
    from specscan.reports.sensitivity import sensitivity as run

    return run(Path(db), ruleset, equipment, draws, spread, seed)


def copy_demo(folder: str | Path) -> Path:
    """Write the demo corpus to a new folder, for trying things out; give the folder."""
    return _copied(demo_folder(), Path(folder))


def copy_rules(folder: str | Path) -> Path:
    """Write the built-in rules to a new folder, for changing them (``scan --rules FOLDER``); give the folder."""
    return _copied(rules_folder(), Path(folder))


def _copied(source: Path, target: Path) -> Path:
    if target.exists() and (not target.is_dir() or any(target.iterdir())):
        raise SpecscanError(f"{target}: is there already and not an empty folder")
    try:
        shutil.copytree(source, target, dirs_exist_ok=True)
    except OSError as error:
        raise SpecscanError(f"{target}: cannot be written ({error})") from error
    return target


def check_rules(path: str | Path | None = None, rules: str | Path | None = None) -> list[str]:
    """Give every mistake in a rule-set file, or in a whole folder of rules, as ``file:line: reason``.

    ``path`` is a rule-set file or a folder of rules (the built-in one by default); ``rules`` the folder whose fields
    a single rule-set file is checked against.
    """
    from specscan.dataset.us_units import us_columns
    from specscan.judging.claim_rules import load_claims
    from specscan.judging.rulesets import check_ruleset_file, load_rulesets
    from specscan.observing.rules import load_observing
    from specscan.physics.conditions import load_conditions
    from specscan.records.errors import RuleError
    from specscan.reports.draft_talk import load_talk
    from specscan.reports.page_rules import load_report_rules
    from specscan.rulebook.book import load_rulebook
    from specscan.scanning.limits import load_limits
    from specscan.settling.preferences import load_preferences

    target = Path(path) if path is not None else rules_folder()
    try:
        if target.is_dir():
            book = load_rulebook(target)
            load_claims(book, load_preferences(book))
            load_limits(target)
            load_conditions(target)
            load_observing(book)
            us_columns([], target)
            load_report_rules(target)
            load_talk(book)
            load_rulesets(target / "winter", book)
            return []
        return check_ruleset_file(target, load_rulebook(Path(rules) if rules is not None else rules_folder()))
    except RuleError as error:
        return error.mistakes


def run_rule_cases(path: str | Path | None = None, rules: str | Path | None = None) -> list[CaseResult]:
    """Run the cases that rule files carry: of one file, or of all rule sets in the rules; give one result per case.

    Raises:
        RuleError: a rule file is wrong.
    """
    from specscan.judging.examples import run_cases
    from specscan.judging.rulesets import load_ruleset, load_rulesets
    from specscan.rulebook.book import load_rulebook

    folder = Path(rules) if rules is not None else rules_folder()
    book = load_rulebook(folder)
    sets = [load_ruleset(Path(path), book)] if path is not None else load_rulesets(folder / "winter", book)
    return [result for ruleset in sets for result in run_cases(ruleset, book)]
