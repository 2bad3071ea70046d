"""Draws brochures from a seed, scans them, and says how often statements of each confidence are right.

python -m tests.benchmarks.calibration --count 300 --seed 1 --scanned 40
python -m tests.benchmarks.calibration --count 300 --seed 2 --scanned 40 --fit rules/confidence.yaml
python -m tests.benchmarks.calibration --gold FOLDER …
"""

from __future__ import annotations

import argparse
import csv
import re
import sys
from collections import defaultdict
from collections.abc import Iterable, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any

from specscan.records.names import plain
from specscan.reports.evaluate import Label as GoldLabel
from specscan.reports.evaluate import is_right
from specscan.scanning.files import kind_of
from specscan.settling.confidence import DISAGREES, FORMS, GROUNDS, gravest
from tests.benchmarks.scans import draw_scan
from tests.benchmarks.scoring import Scanner, is_label
from tests.proving_ground.maker import Brochure, draw

MEDIA = ("reportlab", "html", "text", "markdown")  # no browser is needed
BINS = (0.99, 0.98, 0.95, 0.9, 0.8, 0.0)
COUNTED_LINE = re.compile(r"  (\w+): \{right: \d+, of: \d+")
scanner: Scanner | None = None


@dataclass(frozen=True, slots=True)
class Judged:
    """A settled statement: how sure it was, its form, its grounds for doubt, and whether it is right."""

    confidence: float
    form: str
    grounds: tuple[str, ...]
    right: bool


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command."""
    told = _told(arguments)
    if told.gold:
        judged = [one for folder in told.gold for one in judge_gold(Path(folder))]
        print(f"{', '.join(told.gold)}: {len(judged)} settled statements")
    else:
        tasks = [(told.seed, number, number >= told.count) for number in range(told.count + told.scanned)]
        with ProcessPoolExecutor(told.jobs) as pool:
            judged = [one for some in pool.map(_one, tasks, chunksize=2) for one in some]
        drawn = f"{told.count} brochures and {told.scanned} scans of brochures, drawn with seed {told.seed}"
        print(f"{drawn}: {len(judged)} settled statements")
    if told.fit:
        source = f"python -m tests.benchmarks.calibration --fit, {drawn}, {len(judged)} statements, {date.today()}"
        fit(judged, Path(told.fit), source)
        print(f"written: {told.fit}")
        return 0
    print("\n".join(lines(judged)))
    return 0


def _told(arguments: Sequence[str] | None) -> argparse.Namespace:
    parser = argparse.ArgumentParser(
        prog="python -m tests.benchmarks.calibration", description=__doc__,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )  # fmt: skip
    parser.add_argument("--count", type=int, default=200, help="how many brochures (200)")
    parser.add_argument("--scanned", type=int, default=0, help="how many scans of brochures besides (none)")
    parser.add_argument("--seed", type=int, default=1, help="the seed from which all is drawn (1)")
    parser.add_argument("--jobs", type=int, default=2, help="processes (2)")
    parser.add_argument("--fit", default="", metavar="FILE", help="count anew into this file of confidences")
    parser.add_argument("--gold", nargs="+", default=[], metavar="FOLDER", help="documents with a gold.csv instead")
    told = parser.parse_args(arguments)
    if told.fit and told.gold:
        parser.error("confidences are fitted to drawn brochures only")
    return told


def _one(task: tuple[int, int, bool]) -> list[Judged]:
    global scanner
    scanner = scanner or Scanner()
    seed, number, as_scan = task
    brochure = draw_scan(seed, number)[0] if as_scan else draw(seed, number, "", "", MEDIA)
    return judge(brochure, scanner.scan(brochure))


def judge(brochure: Brochure, stated: Iterable[dict[str, Any]]) -> list[Judged]:
    """Give each settled statement of a brochure with whether a label bears it out."""
    alone = len(brochure.vans) == 1
    return [
        _judged(row, any(
            (alone or plain(label.van) == plain(row["van"])) and is_label(row, label) for label in brochure.labels
        ))
        for row in stated
    ]  # fmt: skip


def judge_gold(folder: Path) -> list[Judged]:
    """Give each settled statement of the documents of a folder with whether its ``gold.csv`` bears it out."""
    global scanner
    scanner = scanner or Scanner()
    labels: dict[str, list[GoldLabel]] = defaultdict(list)
    with open(folder / "gold.csv", encoding="utf-8-sig", newline="") as file:
        for row in csv.DictReader(file):
            label = GoldLabel(row["doc"], row["van"], row["field"], row["value"], row["availability"], row["page"])
            labels[row["doc"]].append(label)
    found = []
    for doc, own in sorted(labels.items()):
        path = folder / doc
        document = scanner.examiner.examine(path.as_posix(), path.read_bytes(), kind_of(path, scanner.book))
        alone = len({label.van for label in own}) == 1
        found += [
            _judged(row, any(
                (alone or plain(label.van) == plain(row["van"])) and label.field == row["field"]
                and is_right(row, label) for label in own
            ))
            for row in scanner.stated(document)
        ]  # fmt: skip
    return found


def _judged(row: dict[str, Any], right: bool) -> Judged:
    return Judged(row["confidence"], row["how"], row["grounds"], right)


def lines(judged: Sequence[Judged]) -> list[str]:
    """Give the table: by confidence, by gravest ground and by form; share right, and how many there were."""
    parts: dict[str, dict[str, list[bool]]] = {"confidence": defaultdict(list), "ground": {}, "form": {}}
    for one in judged:
        low = next(low for low in BINS if one.confidence >= low)
        parts["confidence"][f"from {low:.2f}"].append(one.right)
        if one.confidence >= 0.9:
            parts["confidence"]["all from 0.90"].append(one.right)
    for (block, name), rights in counted(judged).items():
        parts["ground" if block == "grounds" else "form"][name] = rights
    told = []
    for title, rows in parts.items():
        told.append(f"by {title}{' where there is no ground for doubt' if title == 'form' else ''}")
        ordered = sorted(rows.items(), reverse=title == "confidence")
        told += [f"  {name:16}{sum(own) / len(own):7.3f}{len(own):8d}" for name, own in ordered if own]
    return told


def counted(judged: Iterable[Judged]) -> dict[tuple[str, str], list[bool]]:
    """Give for each ground and form the statements by which its confidence is counted, each with whether it is right.

    A contradicted statement counts for the disagreement alone, one with several grounds for ``several`` alone; a form
    is counted by its statements without grounds.
    """
    found: dict[tuple[str, str], list[bool]] = {("grounds", name): [] for name in GROUNDS}
    found |= {("forms", name): [] for name in FORMS}
    for one in judged:
        grounds = gravest(one.grounds)
        if DISAGREES in grounds:
            found["grounds", DISAGREES].append(one.right)
        elif grounds:
            found["grounds", grounds[-1]].append(one.right)  # ``several`` stands last
        else:
            found["forms", one.form].append(one.right)
    return found


def fit(judged: Sequence[Judged], path: Path, source: str) -> None:
    """Write the counts into a file of confidences in place of those that stand there; its words stay.

    A kind that was counted elsewhere, as its own source says, stays too.
    """
    counts = counted(judged)
    block, made = "", []
    for line in path.read_text(encoding="utf-8").splitlines():
        block = line.rstrip(":") if line in ("grounds:", "forms:") else block
        if line.startswith("source:"):
            line = f'source: "{source}"'
        elif (match := COUNTED_LINE.match(line)) and ", source: " not in line:
            rights = counts[block, match.group(1)]
            line = f"  {match.group(1)}: {{right: {sum(rights)}, of: {len(rights)}{line[match.end() :]}"
        made.append(line)
    path.write_text("\n".join(made) + "\n", encoding="utf-8")


if __name__ == "__main__":
    sys.exit(main())
