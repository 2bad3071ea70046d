"""A small dataset made by hand for the tests."""

from datetime import datetime

from specscan.dataset.store import Dataset
from specscan.dataset.wide import Column, UsUnit

COLUMNS = [
    Column("maker", "text", ""), Column("model", "text", ""), Column("model_year", "integer", ""),
    Column("fresh_tank_l", "number", "l"), Column("heated_floor", "flag", ""),
    Column("rated_min_temp_c", "number", "°C"),
]  # fmt: skip
US = {
    "fresh_tank_l": UsUnit("fresh_tank_gal", 1 / 3.785411784, 0.0),
    "rated_min_temp_c": UsUnit("rated_min_temp_f", 1.8, 32.0),
}


def settled(field, *, van="drift", equipment="standard", **more):
    return {"van_id": van, "field": field, "equipment": equipment, "status": "stated", "fact_ids": [], **more}


def run(number):
    moment = datetime(2026, 1, 1, 12, number)
    return {"run_id": f"run{number}", "version": "1", "started_at": moment, "finished_at": moment, "vans": 1}


def put(dataset, tables, number):
    """Put a state with these rows in place of what the dataset holds."""
    with dataset.renewal() as new:
        new.drop()
        new.put(tables)
        new.finish(run(number), COLUMNS, US)


def write(path, *rows, number=1, **tables):
    """Write a state with these settled rows, and the rows of other tables."""
    with Dataset(path) as dataset:
        put(dataset, {"settled": list(rows), **tables}, number)
    return path
