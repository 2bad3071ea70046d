"""Kill scans at random moments and look at what is left: ``python -m tests.benchmarks.kills --times 50``.

Each round changes some brochures, starts a scan, kills it (SIGKILL) after a random share of the time that a whole scan
takes, and checks that the dataset opens and that its vans are exactly those before or those after the scan. In the end
an undisturbed scan must give the same vans as a new dataset.
"""

from __future__ import annotations

import argparse
import os
import random
import signal
import subprocess
import sys
import tempfile
import time
from dataclasses import dataclass, field
from pathlib import Path

from specscan import api
from specscan.records.errors import SpecscanError
from tests.conftest import ROOT
from tests.scanning.made import text

VANS = "SELECT model, fresh_tank_l FROM vans ORDER BY ALL"


@dataclass
class Outcome:
    """How many scans were killed, how many ended before, and what was wrong afterwards."""

    killed: int = 0
    ended: int = 0
    faults: list[str] = field(default_factory=list)


def kill_scans(folder: Path, times: int, files: int, seed: int) -> Outcome:
    """Kill ``times`` scans over ``files`` brochures in an empty folder; give what came of it.

    A scan that ends before it is killed does not count; after three times as many rounds it is left at that.
    """
    chance, outcome = random.Random(seed), Outcome()
    brochures, db = folder / "brochures", folder / "vans.duckdb"
    brochures.mkdir()
    truth = dict.fromkeys(range(files), 100)
    _put(brochures, truth)
    begun = time.monotonic()
    _start(brochures, db).wait()
    whole = time.monotonic() - begun
    before = _vans(db)
    for number in range(3 * times):
        if outcome.killed >= times:
            break
        for changed in chance.sample(range(files), max(1, files // 3)):
            truth[changed] += 1
        _put(brochures, truth)
        process = _start(brochures, db)
        try:
            process.wait(timeout=whole * chance.uniform(0.05, 0.95))
            outcome.ended += 1
        except subprocess.TimeoutExpired:
            os.killpg(process.pid, signal.SIGKILL)
            process.wait()
            outcome.killed += 1
        after = sorted([f"Marrowfen Drift {van}", float(litres)] for van, litres in truth.items())
        try:
            found = _vans(db)
        except SpecscanError as error:
            outcome.faults.append(f"round {number}: {error}")
            continue
        if found not in (before, after):
            outcome.faults.append(f"round {number}: neither the state before nor the one after: {found}")
        before = found
    if _start(brochures, db).wait() != 0:
        outcome.faults.append("the scan afterwards failed")
    _start(brochures, folder / "new.duckdb").wait()
    if _vans(db) != _vans(folder / "new.duckdb"):
        outcome.faults.append("the scan afterwards gives other vans than a new dataset")
    return outcome


def _put(folder: Path, truth: dict[int, int]) -> None:
    for van, litres in truth.items():
        (folder / f"{van}.txt").write_text(text(model=f"Drift {van}", fresh=litres))


def _start(folder: Path, db: Path) -> subprocess.Popen[bytes]:
    command = [sys.executable, "-m", "specscan", "scan", str(folder), "--db", str(db), "--jobs", "1"]
    return subprocess.Popen(
        command, cwd=ROOT, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, start_new_session=True
    )


def _vans(db: Path) -> list[list[object]]:
    return sorted(api.query(VANS, db).values.tolist())


def main() -> None:
    """Run it as a command."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--times", type=int, default=50)
    parser.add_argument("--files", type=int, default=30)
    parser.add_argument("--seed", type=int, default=1)
    told = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        outcome = kill_scans(Path(folder), told.times, told.files, told.seed)
    print(f"{outcome.killed} scans killed, {outcome.ended} ended before, {len(outcome.faults)} faults")
    for fault in outcome.faults:
        print(fault)
    sys.exit(1 if outcome.faults else 0)


if __name__ == "__main__":
    main()
