"""``specscan observe``: what it says and how it ends."""

import shutil

import pytest
from click.testing import CliRunner

from specscan import api
from specscan.cli.main import main
from tests.scanning.made import text

ONE = ("--field", "heated_floor", "--who", "R. Quill", "--when", "2026-01-20", "--how", "seen")


def run(*arguments):
    return CliRunner().invoke(main, [str(argument) for argument in arguments], catch_exceptions=False)


@pytest.fixture(scope="module")
def scanned(tmp_path_factory):
    folder = tmp_path_factory.mktemp("cli_observed")
    (folder / "drift21.txt").write_text(text())
    api.scan([folder], folder / "vans.duckdb", jobs=1)
    return folder / "vans.duckdb"


@pytest.fixture
def db(scanned, tmp_path):
    return shutil.copy(scanned, tmp_path / "vans.duckdb")


def test_one_answer_says_what_became_of_it_and_where_it_is_kept(db):
    result = run("observe", "--db", db, "--van", "Drift 21", "--answer", "yes", *ONE)
    assert result.exit_code == 0, result.output
    assert "heated_floor: yes (observed) — seen by R. Quill, 2026-01-20: yes" in result.output
    assert str(db.parent / "vans.observed.csv") in result.output
    assert "deep_winter_wet, as delivered:" in result.output and "→" in result.output


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("--van", "Drift 21", "--answer", "perhaps", *ONE), "neither yes nor no"),
        (("--van", "Drift 99", "--answer", "yes", *ONE), "no van is called 'Drift 99'"),
        (("--van", "Drift 21", *ONE), "needs --answer"),
        (("answers.csv",), "no such file of answers"),
    ],
)
def test_a_wrong_answer_ends_with_2_and_stores_nothing(db, arguments, said):
    result = run("observe", *arguments, "--db", db)
    assert result.exit_code == 2
    assert said in result.output
    assert not (db.parent / "vans.observed.csv").exists()
