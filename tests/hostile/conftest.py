"""One scan of a downloads folder full of broken, hostile and odd files, shared by the tests that look at it."""

import contextlib
import fcntl
import io
import json
import os
import tempfile
from pathlib import Path

import pytest

from specscan import api
from specscan.cli.printing import print_summary
from tests.hostile import files
from tests.scanning.made import text

ESCAPE = "\x1b]0;owned\x07"


def fill(folder):
    """Write the files of the scan; give the names of the broken, hostile and good ones."""
    good, bombs = files.good_files(), files.bombs()
    broken = files.broken_files(files.ALL - len(good) - len(bombs))
    for name, data in (made := {**good, **bombs, **broken}).items():
        (folder / name).write_bytes(data)
    (folder / "--help.txt").write_text(text(model="Drift 201"))
    (folder / "new\nline [red].txt").write_text(text(model=f"Drift 202{ESCAPE} [bold]x"))
    (folder / f"{ESCAPE}.pdf").write_bytes(b"")
    (folder / os.fsdecode(b"caf\xe9.txt")).write_text(text(model="Drift 203"))
    (folder / "zz_removed.txt").write_text(text(model="Drift 204"))
    (folder / "zz_replaced.txt").write_text(text(model="Drift 205"))
    (folder / "zz_inside.zip").write_bytes(files.zipped([("sub/inside.txt", text(model="Drift 206"))]))
    for module in ("json", "yaml", "lxml", "specscan", "pypdfium2"):  # the user stands in this folder
        (folder / f"{module}.py").write_text("open('ran', 'w').close()\nraise SystemExit\n")
    return sorted(made)


def scan(folder):
    """Scan the folder while it changes; give the documents, what was printed, and the names of the files."""
    names = fill(folder)
    changed = []

    def change(*_):
        if not changed:
            changed.append(True)
            (folder / "zz_removed.txt").unlink()
            (folder / "zz_replaced.txt").unlink()
            os.mkfifo(folder / "zz_replaced.txt")

    db, printed = folder.with_suffix(".duckdb"), io.StringIO()
    with contextlib.chdir(folder):
        summary = api.scan([folder], db, jobs=1, progress=change)
    with contextlib.redirect_stdout(printed):
        print_summary(summary, as_json=False)
    documents = {
        record.path.removeprefix(f"{folder}/"): (record.status, record.message) for record in summary.documents
    }
    return {"documents": documents, "printed": printed.getvalue(), "names": names, "db": str(db), "folder": str(folder)}


@pytest.fixture(scope="session")
def scanned(tmp_path_factory):
    """Give the outcome of the scan; it is done once even where several processes run the tests."""
    parallel = "PYTEST_XDIST_WORKER" in os.environ
    base = tmp_path_factory.getbasetemp().parent if parallel else tmp_path_factory.mktemp("once")
    with open(base / "hostile.lock", "w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        kept = base / "hostile.json"
        if not kept.exists():
            kept.write_text(json.dumps(scan(Path(tempfile.mkdtemp(dir=base)))))
        return json.loads(kept.read_text())
