"""A dataset whose first scan was ended before anything was stored: everybody who asks is told what to do."""

import re

import pytest
from click.testing import CliRunner

from specscan import api
from specscan.cli.main import main
from specscan.dataset.store import Dataset
from specscan.records.errors import DatasetError

VIEWS = {
    "changes": lambda db, folder: api.changes(db),
    "claims": lambda db, folder: api.claims(db),
    "doubts": lambda db, folder: api.doubts(db),
    "evaluate": lambda db, folder: api.evaluate(folder / "gold.csv", db),
    "explain": lambda db, folder: api.explain("Drift 21", db),
    "export": lambda db, folder: api.export(db, folder / "out"),
    "export as a package": lambda db, folder: api.export(db, folder / "out", form="package"),
    "gaps": lambda db, folder: api.gaps(db),
    "report": lambda db, folder: api.report(db, folder / "report.html"),
    "sensitivity": lambda db, folder: api.sensitivity(db),
    "sheet": lambda db, folder: api.sheet(db, folder / "sheet.csv"),
    "table": lambda db, folder: api.table(db),
    "winter": lambda db, folder: api.winter(db),
}


@pytest.fixture
def unfinished(tmp_path):
    """Give the dataset that a scan leaves which is ended while it reads its first file."""
    path = tmp_path / "vans.duckdb"
    Dataset(path).close()
    (tmp_path / "gold.csv").write_text("doc,van,field,value,availability,page\n", encoding="utf-8")
    return path


@pytest.mark.parametrize("view", VIEWS)
def test_each_view_names_the_command_that_finishes_a_scan(unfinished, view):
    wanted = rf"{re.escape(str(unfinished))}: no scan .* specscan scan PATH --db {re.escape(str(unfinished))}$"
    with pytest.raises(DatasetError, match=wanted):
        VIEWS[view](unfinished, unfinished.parent)


def test_a_command_says_so_in_one_sentence_and_ends_with_2(unfinished):
    result = CliRunner().invoke(main, ["doubts", "--db", str(unfinished)])
    assert result.exit_code == 2
    assert "no scan has been finished" in result.output
    assert "Catalog" not in result.output
