"""What the README promises is there."""

import re
import shutil

import click

from specscan.cli.main import main
from tests.conftest import ROOT

README = (ROOT / "README.md").read_text(encoding="utf-8")


def commands(group=main, before=()):
    for name, command in group.commands.items():
        if isinstance(command, click.Group):
            yield from commands(command, (*before, name))
        else:
            yield (*before, name), command


def test_every_command_in_the_readme_exists():
    known = {" ".join(path) for path, _ in commands()}
    used = set()
    for line in re.findall(r"^    (?:.*/)?specscan (.+)$", README, re.MULTILINE):
        words = line.split()
        used.add(" ".join(words[:2]) if words[0] == "rules" else words[0])
    assert used
    assert used <= known


def test_every_command_says_what_it_does():
    for path, command in commands():
        assert command.help, path


def test_tables_in_the_readme_are_in_the_dataset(demo_db):
    from specscan import api

    there = set(api.query("SELECT table_name FROM information_schema.tables", demo_db)["table_name"])
    section = README.split("## The dataset")[1].split("## The rules")[0]
    named = {
        name for row in re.findall(r"^\| (`.*?) \|", section, re.MULTILINE) for name in re.findall(r"`(\w+)`", row)
    }
    assert named
    assert named <= there


def test_rule_sets_in_the_readme_are_those_that_ship():
    section = README.split("## The rules")[1].split("## Limits")[0]
    named = set(re.findall(r"^\| `(\w+)` \|", section, re.MULTILINE))
    assert named == {path.stem for path in (ROOT / "rules" / "winter").glob("*.yaml")}


def test_ci_calls_the_test_command_of_the_readme():
    assert re.search(r"^    python3 -m venv .*pytest$", README, re.MULTILINE)
    assert "README.md" in (ROOT / ".ci" / "run").read_text(encoding="utf-8")


def test_the_example_from_folder_to_figure_runs_in_ten_lines(demo_db, tmp_path, monkeypatch):
    """The scan itself is the one that all tests share."""
    from specscan import api

    [code] = re.findall(r"```python\n(.*?)```", README, re.DOTALL)
    assert len([line for line in code.splitlines() if line.strip()]) <= 10
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("MPLBACKEND", "Agg")
    scanned = []

    def scan(paths, db):
        scanned.extend(paths)
        shutil.copy(demo_db, db)

    monkeypatch.setattr(api, "scan", scan)
    names: dict = {}
    exec(code, names)
    assert all((ROOT / path).is_dir() for path in scanned) and scanned
    assert len(names["wet"]) > 20
    assert (tmp_path / "bands.png").read_bytes().startswith(b"\x89PNG")
