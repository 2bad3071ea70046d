"""What several tests share: the built-in rules, loaded once, and a reader for texts written in a test."""

import fcntl
import shutil
from pathlib import Path

import pytest

from specscan.rulebook.book import load_rulebook
from specscan.scanning.examine import Examiner
from specscan.scanning.files import kind_of

ROOT = Path(__file__).parent.parent


@pytest.fixture(scope="session")
def book():
    return load_rulebook(ROOT / "rules")


@pytest.fixture(scope="session")
def examiner(book):
    return Examiner(book)


@pytest.fixture(scope="session")
def read_file(examiner):
    """Give a function that reads one file into its record and findings."""

    def read(path: Path):
        return examiner.examine(path.as_posix(), path.read_bytes(), kind_of(path, examiner.book))

    return read


@pytest.fixture
def facts_of(read_file, tmp_path):
    """Give a function that writes a document, reads it, and returns the facts that count."""

    def read(text: str, name: str = "brochure.txt"):
        path = tmp_path / name
        path.write_text(text, encoding="utf-8")
        return [fact for fact in read_file(path).found.facts if not fact.rejected]

    return read


@pytest.fixture(scope="session")
def demo_db(tmp_path_factory, worker_id):
    """Give a dataset of the demo corpus, scanned once for all tests; each process that runs tests has a copy."""
    from specscan import api

    own = tmp_path_factory.mktemp("demo") / "vans.duckdb"
    base = tmp_path_factory.getbasetemp()
    shared = (base if worker_id == "master" else base.parent) / "demo.duckdb"
    with shared.with_suffix(".lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)  # the first scans, the others wait for it
        if not shared.exists():
            api.scan([ROOT / "corpus_demo"], own)
            shutil.copy(own, shared)
    return own if own.exists() else Path(shutil.copy(shared, own))
