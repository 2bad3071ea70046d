"""Times the winter of many vans at many temperatures in one call, beside a loop over the vans.

python -m tests.benchmarks.winter --vans 100000 --temperatures 30

Both give the same figures, which is checked. Times are CPU seconds; the loop is timed on some vans and scaled up.
"""

from __future__ import annotations

import argparse
import resource
import time
from collections.abc import Sequence
from pathlib import Path

import numpy as np
import pandas as pd

from specscan.physics.assumptions import Assumptions
from specscan.physics.columns import Columns
from specscan.physics.conditions import Conditions, conditions_named
from specscan.physics.ranges import Floats
from specscan.physics.winter import Winter
from specscan.rulebook.book import Rulebook, load_rulebook

RULES = Path(__file__).parent.parent.parent / "rules"
SEED = 4
PARTS = ("low", "typical", "high")


def drawn(vans: int) -> pd.DataFrame:
    """Give a table of vans drawn from a seed: half of them heat with propane, some figures are not known."""
    draw = np.random.default_rng(SEED)
    propane = draw.random(vans) < 0.5

    def some(low: float, high: float) -> Floats:
        return np.where(draw.random(vans) < 0.8, draw.uniform(low, high, vans), np.nan)

    def words(*choice: object) -> pd.Series:
        return pd.Series(draw.choice(np.array([*choice, None], dtype=object), vans), dtype=object)

    return pd.DataFrame(
        {
            "case_id": [str(number) for number in range(vans)],
            "length_mm": draw.uniform(5400, 7300, vans),
            "insulation_r_si": some(0.2, 1.6),
            "window_glazing": words("single", "double"),
            "thermal_break": pd.array(draw.random(vans) < 0.5, dtype="boolean"),
            "heater_fuel": pd.Series(np.where(propane, "propane", "diesel"), dtype=object),
            "engine_fuel": pd.Series(["diesel"] * vans, dtype=object),
            "heater_output_w": some(2000, 6000),
            "propane_mass_kg": np.where(propane, draw.uniform(5, 30, vans), np.nan),
            "fuel_tank_l": draw.uniform(60, 100, vans),
            "battery_wh": some(1000, 8000),
            "battery_chemistry": words("lithium", "agm"),
            "fresh_tank_l": some(60, 130),
            "fresh_tank_location": words("interior", "underbody", "enclosed"),
            "gray_tank_l": some(50, 110),
            "gray_tank_location": words("interior", "underbody", "enclosed"),
            "toilet": words("cassette", "dry"),
            "cassette_l": draw.uniform(15, 22, vans),
            "water_lines_location": words("interior", "enclosed", "exterior"),
        }
    )


def reckoned(table: pd.DataFrame, book: Rulebook, under: Conditions, at: Floats) -> list[Floats]:
    """Give days of heat, days of stay and the temperature held inside, each as low, typical and high."""
    winter = Winter(Columns(table), Assumptions(book), under, at)
    return [getattr(one, part) for one in (winter.heat_days, winter.stay, winter.held_inside) for part in PARTS]


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command; give 0, or 1 where the loop gives other figures."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--vans", type=int, default=100_000)
    parser.add_argument("--temperatures", type=int, default=30)
    parser.add_argument("--loop", type=int, default=100, help="how many vans the loop is timed on")
    told = parser.parse_args(arguments)
    book, under = load_rulebook(RULES), conditions_named(RULES)
    at = np.linspace(-40.0, 0.0, told.temperatures)
    table = drawn(told.vans)
    reckoned(table.head(2), book, under, at)  # pint and the rules are read once, not timed

    start = time.process_time()
    together = reckoned(table, book, under, at)
    in_one = time.process_time() - start

    few = min(told.loop, told.vans)
    start = time.process_time()
    alone = [reckoned(table.iloc[[row]].reset_index(drop=True), book, under, at) for row in range(few)]
    each = (time.process_time() - start) / few
    same = all(
        np.allclose(one[0], whole[row], equal_nan=True)
        for row, ones in enumerate(alone)
        for one, whole in zip(ones, together, strict=True)
    )
    memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 2**20
    print(
        f"{told.vans:,} vans × {told.temperatures} temperatures: days of heat, days of stay, inside held, with ranges"
    )
    print(f"in one call: {in_one:.1f} s, {memory:.1f} GB at most")
    print(f"van by van:  {each * told.vans:,.0f} s ({each * 1e3:.1f} ms a van, timed on {few})")
    print(f"ratio:       {each * told.vans / in_one:,.0f}; the figures are {'the same' if same else 'NOT THE SAME'}")
    return 0 if same else 1


if __name__ == "__main__":
    raise SystemExit(main())
