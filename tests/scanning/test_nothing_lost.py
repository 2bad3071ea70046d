"""Whatever ends a scan early, the dataset opens, holds the last whole state, and the next scan finishes the rest."""

import os
import subprocess
import sys

import pytest
from click.testing import CliRunner

from specscan.cli.main import main
from specscan.dataset.query import run_query
from specscan.dataset.store import Dataset
from specscan.records.errors import DatasetError
from tests.benchmarks.kills import kill_scans
from tests.conftest import ROOT
from tests.dataset.made import settled, write
from tests.scanning.made import text


def test_a_scan_killed_at_any_moment_leaves_a_whole_state(tmp_path):
    outcome = kill_scans(tmp_path, times=2, files=3, seed=5)
    assert outcome.faults == []
    assert outcome.killed == 2


HOLDING = """
import sys, time
from pathlib import Path
from specscan.dataset.store import Dataset
with Dataset(Path(sys.argv[1])):
    print("open", flush=True)
    time.sleep(100)
"""


def test_a_second_scan_at_the_same_time_says_so(tmp_path):
    (tmp_path / "a.txt").write_text(text())
    db = write(tmp_path / "vans.duckdb", settled("fresh_tank_l", value_num=100.0))
    holder = subprocess.Popen([sys.executable, "-c", HOLDING, str(db)], cwd=ROOT, stdout=subprocess.PIPE)
    try:
        assert holder.stdout.readline() == b"open\n"
        for arguments in (["scan", str(tmp_path / "a.txt")], ["query", "SELECT 1"]):
            result = CliRunner().invoke(main, [*arguments, "--db", str(db)])
            assert result.exit_code == 2
            assert "another process is using this dataset" in result.output
    finally:
        holder.kill()
        holder.wait()
    assert run_query(db, "SELECT fresh_tank_l FROM vans").rows == [(100.0,)]


FILLING = """
import resource, signal, sys
from pathlib import Path
from specscan.dataset.store import Dataset
from specscan.records.errors import DatasetError
from tests.dataset.made import put, settled
signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
with Dataset(Path(sys.argv[1])) as dataset:
    resource.setrlimit(resource.RLIMIT_FSIZE, (int(sys.argv[2]), resource.RLIM_INFINITY))
    try:
        if sys.argv[3] == "keep":
            dataset.keep([(f"{n}", "", "", "x" * 100_000 + str(n), "", "") for n in range(100)])
        else:
            rows = [settled("model", van=f"v{n}", value_text="x" * 50_000 + str(n)) for n in range(100)]
            put(dataset, {"settled": rows}, 2)
    except DatasetError as error:
        print(error)
        sys.exit(2)
"""


@pytest.mark.parametrize("step", ["keep", "state"])
def test_a_full_disk_is_said_and_leaves_the_last_state(tmp_path, step):
    # a bound on the size of files stands for the full disk: writing fails in the midst of the data
    db = write(tmp_path / "vans.duckdb", settled("fresh_tank_l", value_num=100.0))
    room = db.stat().st_size + 200_000
    done = subprocess.run(
        [sys.executable, "-c", FILLING, str(db), str(room), step], cwd=ROOT, capture_output=True, text=True
    )
    assert done.returncode == 2, done.stderr
    assert "vans.duckdb: cannot be written" in done.stdout
    assert run_query(db, "SELECT fresh_tank_l FROM vans").rows == [(100.0,)]
    write(db, settled("fresh_tank_l", value_num=90.0), number=2)
    assert run_query(db, "SELECT fresh_tank_l FROM vans").rows == [(90.0,)]


@pytest.mark.parametrize("place", ["/proc/vans.duckdb", "{folder}/nowhere/vans.duckdb", "{folder}"])
def test_a_place_that_cannot_be_written_is_named(tmp_path, place):
    path = place.format(folder=tmp_path)
    with pytest.raises(DatasetError, match=r"cannot be opened|no DuckDB"):
        Dataset(type(tmp_path)(path))
    assert os.listdir(tmp_path) == []
