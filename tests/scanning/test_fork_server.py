"""Reading processes are forked from one that has the rules loaded; what it keeps, and what ends with it."""

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from specscan import api
from specscan.scanning.fork_server import WorkerFailed, end_fork_server, fork_server
from specscan.scanning.limits import load_limits
from tests.conftest import ROOT

RULES = ROOT / "rules"


@pytest.fixture
def fresh():
    """Begin and end without a server of another test."""
    end_fork_server()
    yield
    end_fork_server()


def test_a_second_scan_by_the_same_rules_loads_them_no_more(fresh, tmp_path):
    with fork_server(RULES) as first:
        pass
    with fork_server(api.copy_rules(tmp_path / "rules")) as second:  # the same content elsewhere
        assert second.process.pid == first.process.pid
    (tmp_path / "rules" / "words" / "en.yaml").open("a").write("\n# a remark\n")
    with fork_server(tmp_path / "rules") as other:
        assert other.process.pid != first.process.pid
        assert not first.lives


def test_a_server_that_was_killed_is_started_anew(fresh):
    with fork_server(RULES) as first:
        first.process.kill()
        first.process.wait()
    with fork_server(RULES) as second:
        reading = second.start(load_limits(RULES))
        os.kill(reading.number, 0)
        assert second.stop(reading) == -signal.SIGKILL


def test_how_a_reading_process_ended_is_told(fresh):
    with fork_server(RULES) as server:
        reading = server.start(load_limits(RULES))
        os.kill(reading.number, signal.SIGSEGV)
        assert os.read(reading.answers, 1) == b""
        assert server.stop(reading) == -signal.SIGSEGV


def test_rules_that_cannot_be_loaded_are_told(fresh, tmp_path):
    rules = api.copy_rules(tmp_path / "rules")
    (rules / "ocr.yaml").unlink()
    with pytest.raises(WorkerFailed, match=r"ocr\.yaml"), fork_server(rules):
        pass


HOLDING = """
import sys, time
from pathlib import Path
from specscan.scanning.fork_server import fork_server
from specscan.scanning.limits import load_limits
rules = Path(sys.argv[1])
with fork_server(rules) as server:
    print(server.process.pid, server.start(load_limits(rules)).number, flush=True)
    time.sleep(100)
"""


def test_when_the_scan_is_killed_nothing_goes_on_reading():
    scan = subprocess.Popen([sys.executable, "-c", HOLDING, str(RULES)], cwd=ROOT, stdout=subprocess.PIPE)
    numbers = [int(word) for word in scan.stdout.readline().split()]
    assert len(numbers) == 2
    os.kill(numbers[1], signal.SIGSTOP)  # a document on which it hangs: it would not see that its pipe has closed
    scan.kill()
    scan.wait()
    ends = time.monotonic() + 20
    while any(_runs(number) for number in numbers) and time.monotonic() < ends:
        time.sleep(0.05)
    assert [number for number in numbers if _runs(number)] == []


def _runs(number: int) -> bool:
    """Tell whether a process is there and not merely waiting to be looked after by whoever inherited it."""
    try:
        os.kill(number, 0)
    except ProcessLookupError:
        return False
    state = Path(f"/proc/{number}/stat")
    return not (state.exists() and state.read_text().rpartition(")")[2].split()[0] == "Z")
