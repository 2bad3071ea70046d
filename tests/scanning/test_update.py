"""A scan works only on what changed: the state stays where nothing did, and questions are weighed once a van."""

from __future__ import annotations

import shutil
from pathlib import Path

import duckdb
import pytest
from click.testing import CliRunner

from specscan import api
from specscan.cli.main import main
from specscan.scanning import update, worth
from tests.scanning.sheets import state_of, write_sheet

TABLES = ("facts", "settled", "scores", "gaps", "claims", "vans")


@pytest.fixture(scope="module")
def scanned(tmp_path_factory):
    """Two data sheets and the dataset made of them, scanned once for all tests here, and what the scan told."""
    folder = tmp_path_factory.mktemp("sheets")
    for number, litres in enumerate((90, 110), start=1):
        write_sheet(folder, number, litres)
    db = tmp_path_factory.mktemp("scanned") / "vans.duckdb"
    return folder, db, api.scan([folder], db, jobs=1)


@pytest.fixture
def sheets(scanned):
    return scanned[0]


@pytest.fixture
def db(scanned, tmp_path):
    return Path(shutil.copy(scanned[1], tmp_path / "vans.duckdb"))


def test_a_scan_that_finds_nothing_changed_keeps_the_state_and_notes_the_run(sheets, db, scanned, monkeypatch):
    first = scanned[2]
    before = state_of(db, TABLES)
    monkeypatch.setattr(update, "build_state", lambda *_: pytest.fail("the state was made anew"))
    second = api.scan([sheets], db, jobs=1)
    assert (second.read, second.unchanged) == (0, 2)
    assert (second.vans, second.facts, second.notes) == (first.vans, first.facts, first.notes)
    assert [record.path for record in second.documents] == [record.path for record in first.documents]
    assert state_of(db, TABLES) == before
    with duckdb.connect(str(db), read_only=True) as connection:
        assert connection.execute("SELECT vans, documents_read FROM runs ORDER BY started_at").fetchall() == [
            (2, 2), (2, 0),
        ]  # fmt: skip


def test_a_changed_file_costs_the_work_of_its_own_vans_and_gives_what_a_scan_from_nothing_gives(
    sheets, db, tmp_path, monkeypatch
):
    worked: list[str] = []
    real = worth.stakes
    monkeypatch.setattr(worth, "stakes", lambda table, *rest: worked.extend(table["case_id"]) or real(table, *rest))
    before = (sheets / "drift_2.txt").read_text()
    (sheets / "drift_2.txt").write_text(before.replace("110 L", "140 L"))
    api.scan([sheets], db, jobs=1)
    assert len(worked) == 1 and "drift-200" in worked[0].casefold().replace("_", "-").replace(" ", "-")
    api.scan([sheets], tmp_path / "anew.duckdb", jobs=1)
    (sheets / "drift_2.txt").write_text(before)
    assert state_of(db, TABLES) == state_of(tmp_path / "anew.duckdb", TABLES)


def test_other_conditions_make_the_state_anew(sheets, db):
    before = state_of(db, TABLES)
    api.scan([sheets], db, jobs=1, confidence=0.99)
    assert state_of(db, TABLES)["settled"] != before["settled"]


def test_a_scan_tells_where_its_time_went(sheets, db, scanned):
    told = scanned[2].timings
    assert all(told.stages[name] > 0 for name in ("loading rules", "reading documents", "settling", "storing"))
    assert told.inside["reading pages"] > 0 and told.inside["finding statements"] > 0
    answer = CliRunner().invoke(main, ["scan", str(sheets), "--db", str(db), "--timings"])
    assert answer.exit_code == 0, answer.output
    assert "Where the time went" in answer.output and "loading rules" in answer.output
    assert "settling" not in answer.output  # nothing had changed
