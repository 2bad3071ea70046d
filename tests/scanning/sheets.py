"""Short data sheets of invented vans, and the state of a dataset for comparison."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import duckdb

SHEET = """Marrowfen Drift {number}00 2026

Maker: Marrowfen
Model: Drift {number}00
Model year: 2026
Fresh water tank: {litres} L
Gray water tank: 70 L
Length: 5990 mm
Gross vehicle weight: 3500 kg
Heater output: 4 kW
Heater fuel: diesel
Battery capacity: 100 Ah
"""


def write_sheet(folder: Path, number: int, litres: int) -> None:
    """Write the data sheet of a Drift 100, 200, … with a fresh-water tank of so many litres."""
    (folder / f"drift_{number}.txt").write_text(SHEET.format(number=number, litres=litres))


def state_of(db: Path, tables: Sequence[str]) -> dict[str, list[str]]:
    """Give the rows of tables as text, in an order that does not hang on that in the file."""
    with duckdb.connect(str(db), read_only=True) as connection:
        return {name: sorted(map(repr, connection.execute(f"FROM {name}").fetchall())) for name in tables}
