"""Reading on more than one machine: two workers on this one, one of which is killed midway."""

from __future__ import annotations

import os
import signal
from pathlib import Path

import pytest
from distributed import LocalCluster
from distributed.client import Client

from specscan import api
from specscan.records.errors import SpecscanError
from specscan.scanning.cluster import Cluster
from specscan.scanning.scan import scan
from specscan.scanning.update import kept_records
from tests.scanning.sheets import state_of, write_sheet

TABLES = ("documents", "facts", "settled", "scores", "gaps", "claims", "vans", "kept.findings")
RULES = Path(__file__).parent.parent.parent / "rules"


@pytest.fixture(scope="module")
def cluster():
    options = {"n_workers": 2, "threads_per_worker": 1, "dashboard_address": None, "host": "127.0.0.1"}
    with LocalCluster(processes=True, silence_logs=50, **options) as machines:
        yield machines


def test_files_of_a_killed_worker_are_read_by_another_and_the_dataset_is_that_of_one_machine(cluster, tmp_path):
    folder, parts = tmp_path / "sheets", tmp_path / "parts"
    folder.mkdir()
    parts.mkdir()
    for number in range(1, 4):
        write_sheet(folder, number, 80 + number)
    (folder / "broken.pdf").write_bytes(b"%PDF-1.4\nnothing of use")
    with Client(cluster, set_as_default=False) as client:
        first = next(iter(client.run(os.getpid).values()))
    killed: list[int] = []

    def kill_one(done: int, total: int, name: str) -> None:
        if not killed:
            killed.append(first)
            os.kill(first, signal.SIGKILL)

    many = Cluster(cluster.scheduler_address, f"file://{parts}", files_per_part=1)
    summary = scan([folder], tmp_path / "many.duckdb", rules=RULES, cluster=many, progress=kill_one)
    alone = api.scan([folder], tmp_path / "one.duckdb", jobs=1)
    assert killed
    assert [record.status for record in summary.documents] == [record.status for record in alone.documents]
    assert state_of(tmp_path / "many.duckdb", TABLES) == state_of(tmp_path / "one.duckdb", TABLES)
    assert list(parts.iterdir()) == []  # what machines wrote is taken away


def test_files_at_addresses_are_read_and_named_by_them(cluster, tmp_path):
    (tmp_path / "in").mkdir()
    write_sheet(tmp_path / "in", 1, 81)
    (tmp_path / "in" / "readme.md").write_text("no document")
    address = f"file://{tmp_path / 'in'}"
    summary = api.scan([address], tmp_path / "vans.duckdb", cluster=cluster.scheduler_address)
    assert [(record.path, record.status) for record in summary.documents] == [(f"{address}/drift_1.txt", "read")]
    assert summary.vans == 1


def test_without_a_cluster_addresses_are_refused(tmp_path):
    with pytest.raises(SpecscanError, match="--cluster"):
        api.scan(["s3://brochures/2026"], tmp_path / "vans.duckdb")


def test_records_that_are_kept_name_copies():
    record = '{{"doc_id":"a","path":"{0}","sha256":"aa","kind":"text","language":"en","pages":null,"status":"read",'
    record += '"message":"","dated":"","unread":[]}}'
    found = list(kept_records({path: record.format(path) for path in ("one.txt", "two.txt", "three.txt")}))
    assert [(one.path, one.doc_id, copied) for one, copied in found] == [
        ("one.txt", "a", False), ("three.txt", "a-2", True), ("two.txt", "a-3", True),
    ]  # fmt: skip
