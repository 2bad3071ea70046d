"""The DuckDB file: whole states only, one row per van, unknown stays null."""

import gc
import sys

import duckdb
import pytest

from specscan.dataset.query import run_query
from specscan.dataset.store import Dataset
from specscan.records.errors import DatasetError
from tests.dataset.made import put, settled, write


def test_wide_view_has_one_row_per_van_and_null_for_unknown(tmp_path):
    db = write(
        tmp_path / "a.duckdb",
        settled("model", value_text="Drift 21"),
        settled("model_year", value_num=2026.0),
        settled("fresh_tank_l", value_num=100.0),
        settled("fresh_tank_l", equipment="optioned", value_num=140.0),
        settled("heated_floor", status="missing"),
    )
    answer = run_query(db, "SELECT model, model_year, fresh_tank_l, heated_floor FROM vans")
    assert answer.rows == [("Drift 21", 2026, 100.0, None)]
    assert run_query(db, "SELECT fresh_tank_l FROM vans_optioned").rows == [(140.0,)]


def test_us_view_converts(tmp_path):
    # 1 US gallon = 3.785411784 l (NIST SP 811, B.8); -40 °C = -40 °F by definition of the scales
    db = write(
        tmp_path / "a.duckdb",
        settled("fresh_tank_l", value_num=3.785411784),
        settled("rated_min_temp_c", value_num=-40.0),
    )
    ((gallons, fahrenheit),) = run_query(db, "SELECT fresh_tank_gal, rated_min_temp_f FROM vans_us").rows
    assert gallons == pytest.approx(1.0)
    assert fahrenheit == pytest.approx(-40.0)


def test_a_state_that_fails_half_way_leaves_the_last_good_one(tmp_path):
    db = write(tmp_path / "a.duckdb", settled("fresh_tank_l", value_num=100.0))
    with Dataset(db) as dataset, pytest.raises(duckdb.Error):
        broken = {"settled": [settled("fresh_tank_l", value_num="no number at all")]}
        put(dataset, broken, 2)
    assert run_query(db, "SELECT fresh_tank_l FROM vans").rows == [(100.0,)]
    assert run_query(db, "SELECT run_id FROM runs").rows == [("run1",)]


def test_runs_add_up_and_states_replace(tmp_path):
    db = write(tmp_path / "a.duckdb", settled("fresh_tank_l", value_num=100.0))
    write(db, settled("fresh_tank_l", van="other", value_num=90.0), number=2)
    assert run_query(db, "SELECT van_id FROM vans").rows == [("other",)]
    assert run_query(db, "SELECT count(*) FROM runs").rows == [(2,)]


def test_another_duckdb_file_is_left_alone(tmp_path):
    path = tmp_path / "accounts.duckdb"
    with duckdb.connect(str(path)) as connection:
        connection.execute("CREATE TABLE accounts (id INTEGER)")
    with pytest.raises(DatasetError, match="no dataset of specscan"):
        Dataset(path)


def test_a_file_that_is_no_database_is_named(tmp_path):
    path = tmp_path / "notes.duckdb"
    path.write_text("shopping list")
    with pytest.raises(DatasetError, match=r"notes\.duckdb"):
        Dataset(path)


def test_tables_of_another_version_are_refused_with_what_to_do(tmp_path):
    db = write(tmp_path / "a.duckdb")
    with duckdb.connect(str(db)) as connection:
        connection.execute("UPDATE kept.about SET value = '0'")
    with pytest.raises(DatasetError, match="build it anew: specscan scan"):
        Dataset(db)


def test_rows_once_added_are_not_held_in_memory_until_the_state_is_complete(tmp_path):
    ids = ["one of the ids of a statement"]
    with Dataset(tmp_path / "a.duckdb") as dataset, dataset.renewal() as new:
        before = sys.getrefcount(ids)
        new.add({"settled": [settled("model", value_text="Drift 21", fact_ids=ids)]})
        gc.collect()
        assert sys.getrefcount(ids) == before
