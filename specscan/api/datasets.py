"""Making a dataset, keeping it up to date, asking it and taking it elsewhere."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from specscan.api.places import rules_folder, rules_of
from specscan.records.errors import NotFoundError

if TYPE_CHECKING:
    import pandas as pd

    from specscan.records.documents import ReadDocument
    from specscan.reports.evaluate import Evaluation
    from specscan.scanning.observe import ObserveSummary
    from specscan.scanning.scan import Progress, ScanSummary


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

    return write_gold(Path(db), Path(target), rules_of(db, rules))


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
