"""Draws brochures from a seed, scans them, and says how often statements of each confidence are right.

python -m tests.benchmarks.calibration --count 200 --seed 1
"""

from __future__ import annotations

import argparse
import sys
from collections import defaultdict
from collections.abc import Iterable, Sequence
from concurrent.futures import ProcessPoolExecutor

from specscan.records.names import plain
from tests.benchmarks.scoring import Scanner, is_label
from tests.proving_ground.maker import Brochure, draw

MEDIA = ("reportlab", "html", "text", "markdown")  # no browser is needed
BINS = (0.97, 0.95, 0.9, 0.8, 0.6, 0.0)
Judged = tuple[float, str, bool]  # confidence, form of statement, right
scanner: Scanner | None = None


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command."""
    parser = argparse.ArgumentParser(prog="python -m tests.benchmarks.calibration", description=__doc__)
    parser.add_argument("--count", type=int, default=200, help="how many brochures (200)")
    parser.add_argument("--seed", type=int, default=1, help="the seed from which all is drawn (1)")
    parser.add_argument("--jobs", type=int, default=2, help="processes (2)")
    told = parser.parse_args(arguments)
    with ProcessPoolExecutor(told.jobs) as pool:
        tasks = [(told.seed, number) for number in range(told.count)]
        judged = [one for some in pool.map(_one, tasks, chunksize=4) for one in some]
    print(f"{told.count} brochures of seed {told.seed}: {len(judged)} settled statements")
    print("\n".join(lines(judged)))
    return 0


def _one(task: tuple[int, int]) -> list[Judged]:
    global scanner
    scanner = scanner or Scanner()
    brochure = draw(*task, "", "", MEDIA)
    return judge(brochure, scanner.scan(brochure))


def judge(brochure: Brochure, stated: Iterable[dict]) -> list[Judged]:  # type: ignore[type-arg]
    """Give confidence, form and truth of each settled statement of a brochure."""
    alone = len(brochure.vans) == 1
    return [
        (row["confidence"], row["how"], any(
            (alone or plain(label.van) == plain(row["van"])) and is_label(row, label) for label in brochure.labels
        ))
        for row in stated
    ]  # fmt: skip


def lines(judged: Iterable[Judged]) -> list[str]:
    """Give the table: by confidence, then by form of statement; share right, and how many there were."""
    rows: dict[str, list[bool]] = defaultdict(list)
    for confidence, form, right in judged:
        low = next(low for low in BINS if confidence >= low)
        rows[f"from {low:.2f}"].append(right)
        rows[form].append(right)
        if confidence >= 0.9:
            rows["all from 0.90"].append(right)
    return [f"{name:16}{sum(told) / len(told):7.3f}{len(told):8d}" for name, told in sorted(rows.items(), reverse=True)]


if __name__ == "__main__":
    sys.exit(main())
