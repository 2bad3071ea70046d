"""Exports open in pandas with the same values."""

import pandas as pd
import pytest

from specscan.dataset.export import export
from tests.dataset.made import settled, write


@pytest.mark.parametrize(("form", "read"), [("csv", pd.read_csv), ("json", pd.read_json), ("parquet", "duckdb")])
def test_every_table_is_written(tmp_path, form, read):
    db = write(
        tmp_path / "a.duckdb",
        settled("model", value_text='Drift "21", long'),
        settled("fresh_tank_l", value_num=100.5, fact_ids=["a-1", "a-2"]),
    )
    written = {path.stem: path for path in export(db, tmp_path / "out", form)}
    assert {"vans", "vans_optioned", "vans_us", "settled", "facts", "documents", "scores", "gaps", "runs"} <= set(
        written
    )
    if read == "duckdb":
        import duckdb

        frame = duckdb.read_parquet(str(written["vans"])).df()
    else:
        frame = read(written["vans"])
    assert frame["model"].tolist() == ['Drift "21", long']
    assert frame["fresh_tank_l"].tolist() == [100.5]
