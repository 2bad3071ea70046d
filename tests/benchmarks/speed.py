"""Measures how quick the program is, on documents that the proving ground draws, and prints a table.

python -m tests.benchmarks.speed            what takes a few minutes
python -m tests.benchmarks.speed --growth   also how time and memory grow with 100 and 300 documents
"""

from __future__ import annotations

import argparse
import gc
import io
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

import numpy as np
import pandas as pd
import pdfplumber
from reportlab.pdfgen.canvas import Canvas

from specscan.dataset.store import Dataset
from specscan.judging.kinds import column_kinds
from specscan.judging.rulesets import RuleSet, load_rulesets
from specscan.judging.scoring import score_in_batches
from specscan.reading.read import read_document
from specscan.records.text import Document
from specscan.rulebook.book import Rulebook
from specscan.scanning.answers import kept_row
from specscan.scanning.examine import Examiner
from specscan.scanning.files import kind_of
from specscan.scanning.update import load_job
from specscan.scanning.worker import COLLECT_AFTER
from tests.benchmarks.mixed import mixed_brochures, what_it_holds
from tests.proving_ground.maker import draw

RULES = Path(__file__).parent.parent.parent / "rules"
SEED, WARM_SEED = 8, 7
TIMES = 3
MEDIA = ("reportlab", "html", "text", "markdown")
MILLION = 1_000_000
PATHS, CELLS = 40_000, 200  # curves on a page; rows and columns of a grid


@dataclass(frozen=True, slots=True)
class Row:
    """One line of the table: what was measured, the figure, and what was aimed at."""

    what: str
    figure: str
    aim: str = ""

    def line(self) -> str:
        """Give it as text."""
        return f"{self.what:66}{self.figure:>24}   {self.aim}"


class Bench:
    """One process with rules loaded and documents drawn."""

    def __init__(self, folder: Path, count: int):
        self.folder, self.count = folder, count
        self.job = load_job(RULES)
        self.book: Rulebook = self.job.book
        self.examiner = Examiner(self.book)
        gc.freeze()  # as the reading processes of a scan do
        gc.set_threshold(*COLLECT_AFTER)
        self.files = drawn(folder / "drawn", count, SEED, MEDIA)

    def read(self, files: Sequence[Path]) -> list[Document]:
        """Read documents."""
        hints = self.examiner.hints
        return [read_document(one.read_bytes(), one.name, kind_of(one, self.book), hints) for one in files]

    def mixed_brochures(self) -> Iterator[Row]:
        """Time whole brochures as makers print them, against pdfplumber."""
        files = mixed_brochures(self.folder / "mixed", max(6, self.count // 3), SEED)
        warm = mixed_brochures(self.folder / "mixed_warm", 4, WARM_SEED)
        yield from self._against_pdfplumber("whole brochures", files, warm)

    def light_pages(self) -> Iterator[Row]:
        """Time pages that hold a specification and little else, against pdfplumber."""
        files = drawn(self.folder / "pdf", self.count // 2, SEED, ("reportlab",))
        warm = drawn(self.folder / "pdf_warm", self.count // 2, WARM_SEED, ("reportlab",))
        yield from self._against_pdfplumber("specification pages alone", files, warm)

    def _against_pdfplumber(self, what: str, files: list[Path], warm: list[Path]) -> Iterator[Row]:
        """Time reading alone, and the whole scan from files to a dataset, in this process.

        The scan meets each statement for the first time; other brochures (``warm``) were read before.
        """
        held = what_it_holds(files)
        pages = held["pages"]
        self.read(warm)
        theirs = median(lambda: plumbed(files))
        reading = median(lambda: self.read(files))
        whole = statistics.median(self._scanned(files, warm, number) for number in range(TIMES))
        yield Row(f"{what}: {', '.join(f'{value:,} {name}' for name, value in held.items())}", "")
        yield Row("  pdfplumber words and tables", f"{pages / theirs:.0f} pages/s")
        yield Row("  reading into passages", f"{pages / reading:.0f} pages/s, {theirs / reading:.1f} times")
        yield Row("  read, find, settle, derive, score, store", f"{pages / whole:.0f} pages/s")
        yield Row("  the whole scan against pdfplumber", f"{theirs / whole:.1f} times", "8 times")

    def _scanned(self, files: list[Path], warm: list[Path], number: int) -> float:
        """Give the processor seconds of a scan from nothing by an examiner that has only read ``warm``."""
        examiner = Examiner(self.book)
        for file in warm:
            examiner.examine(file.as_posix(), file.read_bytes(), kind_of(file, self.book))
        db = self.folder / f"{files[0].parent.name}_{number}.duckdb"

        def scan() -> None:
            with Dataset(db) as dataset:
                for file in files:
                    result = examiner.examine(file.as_posix(), file.read_bytes(), kind_of(file, self.book))
                    dataset.keep([kept_row(file.as_posix(), "", "benchmark", result)])
                self.job.bring_up_to_date(dataset, {}, [], "benchmark", datetime.now(UTC), len(files))

        return spent(scan)

    def hard_pages(self) -> Iterator[Row]:
        """Time a page of curves and a grid of cells."""
        for what, data in ((f"a page of {PATHS:,} curves", _curves()), (f"a grid of {CELLS}×{CELLS} cells", _grid())):
            took = spent(lambda data=data: self.examiner.examine("page.pdf", data, "pdf"))
            yield Row(what, f"{took:.2f} s", "under 2 s")

    def finding(self) -> Iterator[Row]:
        """Time finding in new documents, in chatter that states nothing, and in statements met before."""
        documents = self.read(self.files)
        passages = sum(len(one.passages) for one in documents)
        fresh = Examiner(self.book).finder
        for what in ("finding, each wording met for the first time", "finding, wordings met before"):
            took = spent(lambda: [fresh.find(one) for one in documents])
            yield Row(f"{what} ({passages:,} passages)", f"{passages / took:,.0f} passages/s", "20,000 passages/s")

    def million(self) -> Iterator[Row]:
        """Time scoring a million made-up vans by one rule set, derived quantities included in the table."""
        ruleset = load_rulesets(RULES / "winter", self.book)[0]
        table = made_up(MILLION, ruleset, self.book)
        took = spent(lambda: sum(len(part) for part in score_in_batches(table, [ruleset], self.book)))
        yield Row(f"scoring {MILLION:,} vans by {ruleset.name}", f"{took:.0f} s", "under 60 s")

    def commands(self) -> Iterator[Row]:
        """Time whole commands, the start of Python included, on a dataset of the documents."""
        db = self.folder / "vans.duckdb"
        folder = self.folder / "drawn"
        first = clock("scan", str(folder), "--db", str(db))
        yield Row(f"first scan of {self.count} files, all cores", f"{first:.1f} s")
        again = statistics.median(clock("scan", str(folder), "--db", str(db)) for _ in range(TIMES))
        yield Row("second scan, nothing changed", f"{again:.2f} s", "seconds")
        changed = next(one for one in self.files if one.suffix in (".txt", ".md", ".html"))
        changed.write_bytes(changed.read_bytes() + b"\n")
        yield Row("scan after one file changed", f"{clock('scan', str(folder), '--db', str(db)):.1f} s")
        for words in (["--help"], ["query", "SELECT count(*) FROM vans", "--db", str(db)], ["gaps", "--db", str(db)]):
            took = statistics.median(clock(*words) for _ in range(TIMES))
            yield Row(f"specscan {words[0]}", f"{took:.2f} s", "under 0.5 s")

    def growth(self) -> Iterator[Row]:
        """Time first scans of more and more documents, with the memory of the main process and of the readers."""
        for count in (100, 300):
            folder = self.folder / f"of_{count}"
            drawn(folder, count, SEED + 1, MEDIA)
            code = (
                "import resource, sys; from specscan import api; "
                "from specscan.scanning.fork_server import end_fork_server; "
                "api.scan([sys.argv[1]], sys.argv[2]); end_fork_server(); "
                "own, others = (resource.getrusage(w).ru_maxrss // 1024 for w in "
                "(resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN)); print(own, others)"
            )
            began = time.perf_counter()
            done = subprocess.run(
                [sys.executable, "-c", code, str(folder), str(self.folder / f"of_{count}.duckdb")],
                capture_output=True, text=True, check=True,
            )  # fmt: skip
            took = time.perf_counter() - began
            own, others = done.stdout.split()[-2:]
            yield Row(f"first scan of {count} documents", f"{took:.0f} s", f"main {own} MB, a reader {others} MB")


def plumbed(files: Sequence[Path]) -> None:
    """Read documents by pdfplumber: words and tables of each page."""
    for file in files:
        with pdfplumber.open(file) as pdf:
            for page in pdf.pages:
                page.extract_words()
                page.extract_tables()
                page.close()


def drawn(folder: Path, count: int, seed: int, media: tuple[str, ...]) -> list[Path]:
    """Draw brochures into a folder, where they are not there yet, and give their files."""
    folder.mkdir(parents=True, exist_ok=True)
    number = 0
    while len(list(folder.iterdir())) < count:
        try:
            brochure = draw(seed, number, renderers=media)
        except ValueError:  # a layout that no such medium can render
            number += 1
            continue
        (folder / brochure.name).write_bytes(brochure.data)
        number += 1
    return sorted(folder.iterdir())


def made_up(count: int, ruleset: RuleSet, book: Rulebook) -> pd.DataFrame:
    """Give vans with random values in the columns that a rule set uses, a third of them unknown."""
    chance, kinds = np.random.default_rng(SEED), column_kinds(book)
    columns: dict[str, object] = {"case_id": np.arange(count).astype(str).astype(object)}
    for name in ruleset.columns:
        kind, unknown = kinds[name], chance.random(count) < 1 / 3
        if kind.name == "number":
            values = np.where(unknown, np.nan, chance.uniform(0, 200, count))
            columns.update({name: values, f"{name}__low": values * 0.95, f"{name}__high": values * 1.05})
            continue
        words = [True, False] if kind.name == "flag" else list(kind.words)
        picked = np.array(words, dtype=object)[chance.integers(0, len(words), count)]
        columns[name] = np.where(unknown, None, picked)
    return pd.DataFrame(columns)


def spent(work: Callable[[], object]) -> float:
    """Give the processor seconds that some work takes."""
    began = time.process_time()
    work()
    return time.process_time() - began


def median(work: Callable[[], object]) -> float:
    """Give the median of the processor seconds of several times."""
    return statistics.median(spent(work) for _ in range(TIMES))


def clock(*words: str) -> float:
    """Give the seconds by the clock that a command takes."""
    began = time.perf_counter()
    done = subprocess.run([sys.executable, "-m", "specscan", *words], capture_output=True)
    if done.returncode not in (0, 1):
        sys.exit(done.stderr.decode())
    return time.perf_counter() - began


def _curves() -> bytes:
    file = io.BytesIO()
    canvas = Canvas(file, invariant=1)
    chance = np.random.default_rng(SEED)
    path = chance.uniform(50, 550, (PATHS, 8))
    for points in path:
        canvas.bezier(*points)
    canvas.drawString(60, 60, "Fresh water tank 100 L")
    canvas.save()
    return file.getvalue()


def _grid() -> bytes:
    file = io.BytesIO()
    canvas = Canvas(file, invariant=1)
    lines = np.linspace(40, 560, CELLS + 1)
    canvas.setLineWidth(0.2)
    canvas.grid(lines.tolist(), lines.tolist())
    canvas.setFont("Helvetica", 2)
    for x in lines[:-1:4]:
        for y in lines[:-1:4]:
            canvas.drawString(x, y, "7")
    canvas.save()
    return file.getvalue()


PARTS = ("mixed_brochures", "light_pages", "hard_pages", "finding", "million", "commands")


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command."""
    parser = argparse.ArgumentParser(
        prog="python -m tests.benchmarks.speed", description=(__doc__ or "").splitlines()[0]
    )
    parser.add_argument("--count", type=int, default=60, help="how many documents (60)")
    parser.add_argument("--only", nargs="*", default=list(PARTS), choices=PARTS, help="only these: %(choices)s")
    parser.add_argument("--growth", action="store_true", help="also scans of 100 and 300 documents")
    told = parser.parse_args(arguments)
    with tempfile.TemporaryDirectory() as folder:
        bench = Bench(Path(folder), told.count)
        print(Row("", "measured", "aim").line())
        for name in [*told.only, *(["growth"] if told.growth else [])]:
            for row in getattr(bench, name)():
                print(row.line(), flush=True)
    return 0


if __name__ == "__main__":
    sys.exit(main())
