"""Queries read the dataset and touch nothing else."""

import pandas as pd
import pytest

from specscan.dataset.query import run_query
from specscan.dataset.reader import Reader
from specscan.records.errors import DatasetError, QueryError
from tests.dataset.made import settled, write


@pytest.fixture
def db(tmp_path):
    (tmp_path / "secret.csv").write_text("word\nswordfish\n")
    return write(tmp_path / "a.duckdb", settled("fresh_tank_l", value_num=100.0))


def test_any_select_is_answered(db):
    answer = run_query(db, "WITH big AS (SELECT * FROM vans WHERE fresh_tank_l > 50) SELECT count(*) AS n FROM big")
    assert (answer.columns, answer.rows) == (["n"], [(1,)])


@pytest.mark.parametrize(
    "sql",
    [
        "SELECT * FROM read_csv('{folder}/secret.csv')",
        "SELECT * FROM '{folder}/secret.csv'",
        "SELECT content FROM read_text('{folder}/secret.csv')",
        "SELECT * FROM glob('{folder}/*')",
        "COPY vans TO '{folder}/out.csv'",
        "ATTACH '{folder}/other.duckdb'",
        "INSTALL httpfs",
        "LOAD httpfs",
        "SELECT * FROM read_csv('https://localhost/x.csv')",
        "SET enable_external_access = true",
        "PRAGMA enable_profiling",
        "DELETE FROM settled",
        "CREATE TABLE x AS SELECT 1",
        "UPDATE settled SET value_num = 1",
        "EXPORT DATABASE '{folder}/dump'",
        "SELECT 1; DELETE FROM settled",
        "CALL enable_logging()",
        "",
        "selekt nothing",
    ],
)
def test_nothing_but_reading_is_allowed(db, tmp_path, sql):
    before = sorted(path.name for path in tmp_path.iterdir())
    with pytest.raises(QueryError):
        run_query(db, sql.format(folder=tmp_path))
    assert sorted(path.name for path in tmp_path.iterdir()) == before
    assert run_query(db, "SELECT fresh_tank_l FROM vans").rows == [(100.0,)]


def test_variables_of_the_calling_program_are_out_of_reach(db):
    import pandas as pd

    hidden = pd.DataFrame({"word": ["swordfish"]})
    with pytest.raises(QueryError, match="hidden"):
        run_query(db, "SELECT * FROM hidden")
    assert len(hidden) == 1


def test_a_second_reader_of_the_same_file_is_walled_off_too(db, tmp_path):
    frame = pd.DataFrame({"a": [1]})  # noqa: F841  # what must stay out of reach
    with Reader(db), Reader(db):
        assert run_query(db, "SELECT count(*) FROM vans").rows == [(1,)]
        for sql in ("SELECT * FROM frame", f"SELECT * FROM read_csv('{tmp_path}/secret.csv')"):
            with pytest.raises(QueryError):
                run_query(db, sql)


def test_a_missing_dataset_is_named_and_not_made(tmp_path):
    with pytest.raises(DatasetError, match=r"gone\.duckdb"):
        run_query(tmp_path / "gone.duckdb", "SELECT 1")
    assert not (tmp_path / "gone.duckdb").exists()
