"""Draws brochures from a seed, makes scans of them as bad as scans get, reads them, and says how well.

python -m tests.benchmarks.scans --count 60 --seed 1
python -m tests.benchmarks.scans --count 20 --seed 1 --recognisers
"""

from __future__ import annotations

import argparse
import sys
from collections import defaultdict
from collections.abc import Iterable, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, replace
from random import Random

from specscan.finding.doubts import UNSURE_FIGURE
from specscan.records.documents import ReadDocument
from tests.benchmarks.recognisers import Counts, compare, table
from tests.benchmarks.scoring import Outcome, Scanner, score
from tests.proving_ground.maker import Brochure, draw
from tests.reading.scans import Spoil, scanned, with_garbage

RESOLUTIONS = (150, 200, 300)
GARBAGE = "text layer of garbage"
DAMAGES = {
    "none": Spoil(), "skew": Spoil(skew=1.0), "blur": Spoil(blur=0.9), "noise": Spoil(noise=22, specks=30),
    "strong JPEG": Spoil(jpeg=25), "gray paper": Spoil(paper=190, ink=60, noise=5, jpeg=70),
    "shadow of a fold": Spoil(fold=90, shade=30, noise=5, jpeg=70),
    "all at once": Spoil(skew=1.0, blur=0.5, noise=12, specks=15, paper=215, ink=45, fold=50, shade=20, jpeg=55),
    GARBAGE: Spoil(noise=6, jpeg=75),
}  # fmt: skip


@dataclass(slots=True)
class Read:
    """One brochure read from its scan: its damage, the outcomes, and what was left out and said to be."""

    damage: str
    dpi: int
    outcomes: list[Outcome]
    unsure: int
    unread: int
    from_text: list[Outcome]


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command."""
    parser = argparse.ArgumentParser(
        prog="python -m tests.benchmarks.scans", description=__doc__,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )  # fmt: skip
    parser.add_argument("--count", type=int, default=60, help="how many brochures (60)")
    parser.add_argument("--seed", type=int, default=1, help="the seed from which all is drawn (1)")
    parser.add_argument("--jobs", type=int, default=2, help="processes (2)")
    parser.add_argument("--misses", action="store_true", help="list what was stated wrongly")
    parser.add_argument("--recognisers", action="store_true", help="compare recognisers on the first page of each")
    told = parser.parse_args(arguments)
    tasks = [(told.seed, number) for number in range(told.count)]
    with ProcessPoolExecutor(told.jobs) as pool:
        if told.recognisers:
            counts: list[Counts] = [one for some in pool.map(_compared, tasks) for one in some]
            print("\n".join(table(counts)))
            return 0
        reads = list(pool.map(_one, tasks))
    print(f"{told.count} scans of brochures of seed {told.seed}")
    print("\n".join(lines(reads)))
    if told.misses:
        print("\n".join(_extras(reads)))
    return 0


def draw_scan(seed: int, number: int) -> tuple[Brochure, str, int]:
    """Give a drawn brochure as a PDF of pictures with the name of its damage and its resolution."""
    brochure = draw(seed, number, "", "", ("reportlab",))
    rng = Random(f"{seed}/{number}/scan")
    damage = list(DAMAGES)[number % len(DAMAGES)]
    dpi = RESOLUTIONS[number // len(DAMAGES) % len(RESOLUTIONS)]
    how = DAMAGES[damage]
    how = replace(how, dpi=dpi, skew=how.skew * rng.choice((-1, 1)) * rng.uniform(0.5, 2.0))
    data = scanned(brochure.data, how, seed=number)
    if damage == GARBAGE:
        data = with_garbage(data, brochure.data)
    return replace(brochure, data=data), damage, dpi


_kept: list[Scanner] = []


def _scanner() -> Scanner:
    if not _kept:
        _kept.append(Scanner())
    return _kept[0]


def _one(task: tuple[int, int]) -> Read:
    brochure, damage, dpi = draw_scan(*task)
    scanner = _scanner()
    document = scanner.examined(brochure)
    printed = draw(*task, "", "", ("reportlab",))
    return Read(
        damage, dpi, score(brochure, scanner.stated(document)), _unsure(document), len(document.record.unread),
        score(printed, scanner.scan(printed)),
    )  # fmt: skip


def _compared(task: tuple[int, int]) -> list[Counts]:
    brochure, damage, dpi = draw_scan(*task)
    return compare(brochure.data, draw(*task, "", "", ("reportlab",)).data, damage, dpi, _scanner().examiner.hints.ocr)


def _unsure(document: ReadDocument) -> int:
    """Give how many values were set aside because their figure is not certain."""
    return len({(fact.model, fact.field) for fact in document.found.facts if fact.rejected == UNSURE_FIGURE})


def lines(reads: Iterable[Read]) -> list[str]:
    """Give the table by damage and by resolution."""
    groups: dict[str, list[Read]] = defaultdict(list)
    for read in reads:
        for name in ("all", read.damage, f"{read.dpi} dpi"):
            groups[name].append(read)
    told = ["                        scans  prec. recall unsure unread  |  from text: prec. recall  values"]
    for name, own in sorted(groups.items(), key=lambda pair: (pair[0] != "all", pair[0][0].isdigit(), pair[0])):
        right, extra, missing = _counts(one for read in own for one in read.outcomes)
        text = _counts(one for read in own for one in read.from_text)
        values = max(1, right + missing)
        told.append(
            f"{name:24}{len(own):5}{right / max(1, right + extra):7.3f}{right / values:7.3f}"
            f"{sum(read.unsure for read in own) / values:7.3f}{sum(read.unread for read in own):7d}"
            f"  |  {text[0] / max(1, text[0] + text[1]):17.3f}{text[0] / max(1, text[0] + text[2]):7.3f}{values:8d}"
        )
    return told


def _counts(outcomes: Iterable[Outcome]) -> tuple[int, int, int]:
    """Give how many values were right, stated wrongly, and not found."""
    kinds = [outcome.kind for outcome in outcomes]
    right, extra = kinds.count("right"), kinds.count("extra")
    return right, extra, len(kinds) - right - extra


def _extras(reads: Iterable[Read]) -> list[str]:
    """Give what the scans state wrongly and the text layer does not."""
    told = []
    for read in reads:
        known = {(one.van, one.field, one.found) for one in read.from_text if one.kind == "extra"}
        told += [
            f"{one.doc} ({read.damage}, {read.dpi} dpi) [{one.van}] {one.field} {one.found} “{one.words}” {one.note}"
            for one in read.outcomes if one.kind == "extra" and (one.van, one.field, one.found) not in known
        ]  # fmt: skip
    return told


if __name__ == "__main__":
    sys.exit(main())
