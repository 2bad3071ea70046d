"""A scan works only on what changed: the state stays where nothing did, and questions are weighed once a van."""

from __future__ import annotations

import shutil
from datetime import UTC, datetime
from pathlib import Path

import duckdb
import pytest
from click.testing import CliRunner

from specscan import api
from specscan.cli.main import main
from specscan.dataset.store import Dataset
from specscan.scanning import update
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
    monkeypatch.setattr(update, "rows_of_vans", lambda *_: pytest.fail("the state was made anew"))
    second = api.scan([sheets], db, jobs=1)
    assert (second.read, second.unchanged) == (0, 2)
    assert (second.vans, second.facts, second.notes) == (first.vans, first.facts, first.notes)
    assert [record.path for record in second.documents] == [record.path for record in first.documents]
    assert state_of(db, TABLES) == before
    with duckdb.connect(str(db), read_only=True) as connection:
        assert connection.execute("SELECT vans, documents_read FROM runs ORDER BY started_at").fetchall() == [
            (2, 2), (2, 0),
        ]  # fmt: skip


def test_a_changed_file_costs_the_work_of_its_own_vans(sheets, db, tmp_path, monkeypatch):
    folder = shutil.copytree(sheets, tmp_path / "sheets")
    api.scan([folder], db, jobs=1)
    worked: list[str] = []
    real = update.rows_of_vans
    monkeypatch.setattr(update, "rows_of_vans", lambda vans, *rest: worked.extend(vans) or real(vans, *rest))
    write_sheet(folder, 2, 140)
    api.scan([folder], db, jobs=1)
    assert worked == ["marrowfen-drift-200-2026"]


COMPARED = """Marrowfen 2026: the models side by side

| | Drift 100 | Drift 200 |
|---|---|---|
| Fresh water tank | 90 L | 115 L |
| Solar panels | 200 W | 200 W |
| Heater fuel | diesel | propane (optional) |
"""


def exported(db: Path, folder: Path) -> dict[str, bytes]:
    """Give the tables of a dataset, but for the list of its runs, as files, by name."""
    api.export(db, folder)
    return {path.name: path.read_bytes() for path in folder.iterdir() if not path.name.startswith("runs")}


def test_after_changes_the_dataset_is_that_of_a_scan_from_nothing_to_the_byte(sheets, tmp_path):
    folder = shutil.copytree(sheets, tmp_path / "sheets")
    (folder / "compared.md").write_text(COMPARED)
    write_sheet(folder, 3, 70)
    api.scan([folder], tmp_path / "vans.duckdb", jobs=1)
    write_sheet(folder, 2, 140)
    (folder / "drift_3.txt").unlink()
    write_sheet(folder, 4, 75)
    for name in ("vans", "anew"):
        api.scan([folder], tmp_path / f"{name}.duckdb", jobs=1)
    found, anew = (exported(tmp_path / f"{name}.duckdb", tmp_path / name) for name in ("vans", "anew"))
    assert {"facts.csv", "settled.csv", "scores.csv", "gaps.csv", "claims.csv", "vans.csv"} <= set(anew)
    assert b"compared.md" in anew["documents.csv"] and b"drift-300" not in anew["vans.csv"]
    assert found == anew


def test_vans_of_many_documents_are_renewed_in_part_as_they_are_made_anew(demo_db, tmp_path, book):
    job = update.load_job(book.folder)
    made = {}
    for way in ("in_part", "anew"):
        db = Path(shutil.copy(demo_db, tmp_path / f"{way}.duckdb"))
        with Dataset(db) as dataset:
            path = dataset.connection.execute(
                "SELECT path FROM documents JOIN van_names USING (doc_id) WHERE van_id IN "
                "(SELECT van_id FROM van_names GROUP BY van_id HAVING count(DISTINCT doc_id) > 1) ORDER BY path"
            ).fetchone()[0]
            dataset.forget([path])
            if way == "anew":
                dataset.connection.execute("DELETE FROM kept.vans")
            before = dataset.van_keys()
            job.bring_up_to_date(dataset, update.kept_manifests(dataset), [], "again", datetime.now(UTC), 0)
            after = dataset.van_keys()
            kept = [van for van in before if before[van] == after.get(van)]
            assert len(kept) > len(after) / 2 if way == "in_part" else not kept
        made[way] = exported(db, tmp_path / way)
    assert made["in_part"] == made["anew"]


def test_other_conditions_make_the_state_anew(sheets, db):
    before = state_of(db, TABLES)
    api.scan([sheets], db, jobs=1, confidence=0.9995)
    assert state_of(db, TABLES)["settled"] != before["settled"]


def test_a_scan_tells_where_its_time_went(sheets, db, scanned):
    told = scanned[2].timings
    assert all(told.stages[name] > 0 for name in ("loading rules", "reading documents", "settling", "storing"))
    assert told.inside["reading pages"] > 0 and told.inside["finding statements"] > 0
    answer = CliRunner().invoke(main, ["scan", str(sheets), "--db", str(db), "--timings"])
    assert answer.exit_code == 0, answer.output
    assert "Where the time went" in answer.output and "loading rules" in answer.output
    assert "settling" not in answer.output  # nothing had changed
