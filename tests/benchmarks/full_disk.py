"""Fills a real disk, a small tmpfs in a name space of its own, in the midst of a scan; says what became of the dataset.

python -m tests.benchmarks.full_disk        where the system lets a user mount (Linux, unshare -rm)
"""

from __future__ import annotations

import subprocess
import sys
import tempfile
from collections.abc import Sequence
from pathlib import Path

from tests.scanning.sheets import write_sheet

SIZE_MB = 24
LEFT = (0, 60_000, 400_000)  # bytes of room while the scan runs: it ends in keeping findings, or in putting the state
FEW, MANY = 2, 18


def scan(folder: Path, db: Path) -> subprocess.CompletedProcess[str]:
    """Scan a folder by the command."""
    command = [sys.executable, "-m", "specscan", "scan", str(folder), "--db", str(db), "--jobs", "1"]
    return subprocess.run(command, capture_output=True, text=True)


def vans(db: Path) -> int:
    """Give the number of vans of a dataset, by the command."""
    command = [
        sys.executable,
        "-m",
        "specscan",
        "query",
        "SELECT count(*) FROM vans",
        "--format",
        "csv",
        "--db",
        str(db),
    ]
    done = subprocess.run(command, capture_output=True, text=True, check=True)
    return int(done.stdout.split()[-1])


def fill(disk: Path, left: int) -> Path:
    """Fill a disk but for some bytes, and give the file that does it."""
    filler = disk / "filler"
    with filler.open("wb", buffering=0) as file:
        try:
            while True:
                file.write(b"\0" * 65536)
        except OSError:
            file.truncate(max(0, file.tell() - left))
    return filler


def inside(disk: Path) -> int:
    """Mount the small disk, scan, fill it, scan again, make room, scan again; give the number of faults."""
    subprocess.run(["mount", "-t", "tmpfs", "-o", f"size={SIZE_MB}m", "tmpfs", str(disk)], check=True)
    faults = 0
    with tempfile.TemporaryDirectory() as place:
        folder = Path(place)
        for left in LEFT:
            for old in folder.iterdir():
                old.unlink()
            db = disk / f"vans{left}.duckdb"
            for number in range(1, FEW + 1):
                write_sheet(folder, number, 90)
            assert scan(folder, db).returncode == 0
            for number in range(1, MANY + 1):
                write_sheet(folder, number, 100 + number)
            filler = fill(disk, left)
            full = scan(folder, db)
            kept = vans(db)
            filler.unlink()
            again, then = scan(folder, db), vans(db)
            told = full.stderr.strip().replace(str(disk), "…")
            print(f"{left} bytes left: exit {full.returncode}, “{told}”")
            print(f"    {kept} vans stay; with room again: exit {again.returncode}, {then} vans")
            faults += (full.returncode, kept, again.returncode, then) != (2, FEW, 0, MANY) or "cannot be" not in told
            db.unlink()
    return faults


def main(arguments: Sequence[str]) -> int:
    """Run the command: by itself in a name space of its own."""
    if arguments:
        return inside(Path(arguments[0]))
    with tempfile.TemporaryDirectory() as disk:
        return subprocess.run(["unshare", "-rm", sys.executable, "-m", "tests.benchmarks.full_disk", disk]).returncode


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
