"""Odd names, links and devices in a folder: read or named, never followed out, never acted on by the terminal."""

import csv
import io
import json
import os

import pytest
from click.testing import CliRunner

from specscan import api
from specscan.cli.main import main
from specscan.dataset.export import export
from specscan.reading.archive import ArchiveLimits
from specscan.records.cells import guarded, unguarded
from specscan.scanning.files import gather
from tests.dataset.made import settled, write
from tests.scanning.made import text


def test_links_are_not_followed_out_and_devices_are_not_opened(tmp_path, book):
    folder, outside = tmp_path / "downloads", tmp_path / "outside"
    (folder / "sub").mkdir(parents=True)
    outside.mkdir()
    (outside / "secret.txt").write_text(text())
    (folder / "-rf.txt").write_text(text())
    (folder / "sub" / "again.txt").symlink_to(folder / "-rf.txt")
    (folder / "secret.txt").symlink_to(outside / "secret.txt")
    (folder / "gone.txt").symlink_to(folder / "nowhere.txt")
    (folder / "circle").symlink_to(folder)
    (folder / "away").symlink_to(outside)
    (folder / os.fsdecode(b"caf\xe9.txt")).write_text(text())
    os.mkfifo(folder / "pipe.pdf")
    found = gather([folder], book, ArchiveLimits(10, 10, 10, 100))
    assert set(found.files) - set(found.refused) == {f"{folder}/-rf.txt"}
    assert {path.rsplit("/", 1)[-1]: why.split(":")[0] for path, why in found.refused.items()} == {
        "secret.txt": "it is a link that leads out of the folder",
        "gone.txt": "it is no ordinary file but a device, a pipe or a broken link",
        "pipe.pdf": "it is no ordinary file but a device, a pipe or a broken link",
        "caf\\xe9.txt": "its name is not UTF-8",
    }
    assert found.notes == [f"not looked into: {folder}/away: it is a link out of the folder"]


def test_odd_names_are_read_and_shown_on_one_line(scanned):
    models = " ".join(api.query("SELECT model FROM vans", scanned["db"])["model"])
    assert "Drift 201" in models and "Drift 202" in models and "Drift 203" not in models
    assert "not read: ␛]0;owned␇.pdf: the file is empty (0 bytes)" in scanned["printed"]
    assert scanned["documents"]["new\nline [red].txt"][0] == "read"


def test_nothing_that_acts_reaches_the_terminal(scanned):
    outputs = [scanned["printed"]]
    for arguments in (
        ["query", "SELECT path, name, message FROM documents"],
        ["query", "SELECT * FROM vans"],
        ["gaps", "--all"],
        ["explain", "Drift 202"],
    ):
        result = CliRunner().invoke(main, [*arguments, "--db", scanned["db"]])
        assert result.exit_code == 0
        outputs.append(result.output)
    for output in outputs:
        assert not set(output) & {chr(code) for code in (*range(9), *range(11, 32), 127)}
    asked = ["query", "SELECT path FROM documents", "--db", scanned["db"], "--format", "json"]
    told = CliRunner().invoke(main, asked).output
    assert "\\u001b]0;owned" in told
    assert any("\x1b]0;owned" in row["path"] for row in json.loads(told))


@pytest.mark.parametrize("device", ["/dev/zero", "/dev/null"])
def test_a_device_is_no_document_rule_or_dataset(tmp_path, device):
    (tmp_path / "a.txt").write_text(text())
    for arguments in (
        ["scan", device, "--db", str(tmp_path / "a.duckdb")],
        ["scan", str(tmp_path), "--db", str(tmp_path / "a.duckdb"), "--rules", device],
        ["rules", "check", device],
        ["query", "SELECT 1", "--db", device],
    ):
        result = CliRunner().invoke(main, arguments)
        assert (result.exit_code, result.exception.__class__) == (2, SystemExit), arguments
        assert device in result.output


FORMULAS = ["=1+1", "+cmd|' /C calc'!A0", "-2+3", "@SUM(A1)", "\t=1", "\r=1", "\n=1", "＝1", "'=1", "''=1", "'-5"]


@pytest.mark.parametrize("value", [*FORMULAS, "plain", "-5", "+3.5", "'quoted'", ""])
def test_no_cell_of_a_csv_is_a_formula_and_none_is_lost(tmp_path, value):
    assert unguarded(guarded(value)) == value
    db = write(tmp_path / "a.duckdb", settled("model", value_text=value), settled("fresh_tank_l", value_num=-20.0))
    (path,) = [path for path in export(db, tmp_path / "out", "csv") if path.stem == "vans"]
    asked = CliRunner().invoke(main, ["query", "FROM vans", "--db", str(db), "--format", "csv"])
    for content in (path.read_bytes().decode(), asked.stdout_bytes.decode()):
        (row,) = csv.DictReader(io.StringIO(content, newline=""))
        assert not row["model"].startswith(("=", "@", "\t", "\r", "\n", "＝")) and row["model"][:2] not in ("+c", "-2")
        assert unguarded(row["model"]) == value
        assert float(row["fresh_tank_l"]) == -20.0
