"""Draws brochures from a seed, scans them, and says how well.

python -m tests.benchmarks.proving --count 300 --seed 1
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path

from tests.benchmarks.report import lines, misses
from tests.benchmarks.scoring import Outcome, Scanner, score
from tests.proving_ground.families import FAMILIES
from tests.proving_ground.figures import STYLES
from tests.proving_ground.maker import Brochure, draw
from tests.proving_ground.selfcheck import faults
from tests.proving_ground.truth import write_gold

MEDIA = ("reportlab", "chromium", "html", "text", "markdown")
scanner: Scanner | None = None


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command; give 0, or 1 where the maker's own check finds a fault in a brochure."""
    told = _told(arguments)
    tasks = [
        (told.seed, number, told.layout, told.language, tuple(told.medium), told.keep, told.any_names)
        for number in range(told.count)
    ]
    outcomes: list[Outcome] = []
    wrong: list[str] = []
    labels = []
    for name, found, faulty, gold in _run(tasks, told.jobs):
        outcomes += found
        wrong += faulty
        labels += [(name, label) for label in gold]
    if told.keep:
        write_gold(Path(told.keep) / "gold.csv", labels)
        Path(told.keep, "misses.txt").write_text("\n".join(misses(outcomes)) + "\n", encoding="utf-8")
    print(f"{told.count} brochures of seed {told.seed}: {len(labels)} printed values")
    print("\n".join(lines(outcomes)))
    if told.misses:
        print("\n".join(["", "Misses", *misses(outcomes)]))
    if wrong:
        print("\n".join(["", "Faults of the maker (the truth is not on the page)", *wrong]))
    return 1 if wrong else 0


def _told(arguments: Sequence[str] | None) -> argparse.Namespace:
    parser = argparse.ArgumentParser(
        prog="python -m tests.benchmarks.proving", description=(__doc__ or "").splitlines()[0]
    )
    parser.add_argument("--count", type=int, default=300, help="how many brochures (300)")
    parser.add_argument("--seed", type=int, default=1, help="the seed from which all is drawn (1)")
    parser.add_argument("--layout", default="", choices=["", *FAMILIES], help="only this family of layouts")
    parser.add_argument("--language", default="", choices=["", *STYLES], help="only this region: %(choices)s")
    parser.add_argument("--medium", nargs="*", default=[], choices=MEDIA, help="only these media: %(choices)s")
    parser.add_argument("--keep", default="", metavar="DIR", help="write the brochures, gold.csv and misses.txt there")
    parser.add_argument("--any-names", action="store_true", help="name vans, makers and years in all ways and places")
    parser.add_argument("--misses", action="store_true", help="list every miss")
    parser.add_argument("--jobs", type=int, default=2, help="processes (2)")
    return parser.parse_args(arguments)


def _run(tasks: Sequence[tuple], jobs: int) -> Iterator[tuple]:  # type: ignore[type-arg]
    if jobs < 2:
        yield from map(_one, tasks)
        return
    with ProcessPoolExecutor(jobs) as pool:
        yield from pool.map(_one, tasks, chunksize=4)


def _one(task: tuple) -> tuple:  # type: ignore[type-arg]
    """Draw, check, scan and score one brochure; keep it where asked for."""
    global scanner
    seed, number, layout, language, media, keep, any_names = task
    try:
        brochure: Brochure = draw(seed, number, layout, language, media, any_names)
    except FileNotFoundError as error:
        sys.exit(f"{error}; leave printed web pages out with --medium reportlab html text markdown")
    if keep:
        folder = Path(keep)
        folder.mkdir(parents=True, exist_ok=True)
        (folder / brochure.name).write_bytes(brochure.data)
    scanner = scanner or Scanner()
    outcomes = score(brochure, scanner.scan(brochure))
    return brochure.name, outcomes, faults(brochure), brochure.labels


if __name__ == "__main__":
    sys.exit(main())
