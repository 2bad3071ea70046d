"""The command line: what it prints, and how it ends."""

import csv
import io
import json
import re
import subprocess
import sys

import pytest
from click.testing import CliRunner

from specscan.cli.main import main
from specscan.cli.printing import print_overview
from specscan.reports.overview import overview
from tests.conftest import ROOT
from tests.scanning.made import text


def run(*arguments):
    return CliRunner().invoke(main, [str(argument) for argument in arguments], catch_exceptions=False)


def test_scan_names_what_it_could_not_read_and_ends_with_1(tmp_path):
    folder = tmp_path / "brochures"
    folder.mkdir()
    (folder / "nothing.pdf").write_bytes(b"")
    (folder / "drift.txt").write_text(text())
    result = run("scan", folder, "--db", tmp_path / "vans.duckdb", "--jobs", 1)
    assert result.exit_code == 1
    assert "not read: nothing.pdf: the file is empty (0 bytes)" in result.output
    assert "1 van," in result.output


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["scan", "/no/such/folder", "--db", "{tmp}/a.duckdb"], "no such file or folder"),
        (["scan", "{tmp}"], "Missing option '--db'"),
        (["query", "SELECT 1", "--db", "{tmp}/gone.duckdb"], "no such dataset"),
        (["explain", "x", "--db", "{tmp}/gone.duckdb"], "no such dataset"),
        (["evaluate", "{tmp}/gold.csv", "--db", "{tmp}/gone.duckdb"], "no such gold file"),
        (["rules", "check", "{tmp}/gone.yaml"], "cannot be read"),
        (["fly"], "No such command"),
    ],
)
def test_a_wrong_call_says_why_and_ends_with_2(tmp_path, arguments, said):
    result = run(*(argument.format(tmp=tmp_path) for argument in arguments))
    assert result.exit_code == 2
    assert said in result.output


def test_query_prints_a_table_csv_and_json(demo_db):
    sql = "SELECT model, fresh_tank_l FROM vans WHERE maker = 'Ebbingford' ORDER BY model"
    table = run("query", sql, "--db", demo_db).output
    assert re.search(r"Sallowby Duo\s+54\.5", table)
    rows = list(csv.DictReader(io.StringIO(run("query", sql, "--db", demo_db, "--format", "csv").output)))
    assert [row["model"] for row in rows] == ["Sallowby Duo", "Sallowby Trio", "Sallowby Trio Winter"]
    told = json.loads(run("query", sql, "--db", demo_db, "--format", "json").output)
    assert told[0]["fresh_tank_l"] == pytest.approx(54.55, abs=0.01)  # 12 imperial gallons


def test_query_writes_parquet_to_a_file(demo_db, tmp_path):
    import duckdb

    out = tmp_path / "vans.parquet"
    result = run("query", "SELECT count(*) AS n FROM vans", "--db", demo_db, "--format", "parquet", "--out", out)
    assert result.exit_code == 0
    assert duckdb.read_parquet(str(out)).fetchall()[0][0] > 20
    assert run("query", "SELECT 1", "--db", demo_db, "--format", "parquet").exit_code == 2


def test_query_cannot_write(demo_db):
    result = run("query", "DELETE FROM facts", "--db", demo_db)
    assert result.exit_code == 2
    assert "only reading" in result.output


def test_the_table_of_a_scan_tells_days_of_heat_by_the_rule_of_thumb_from_those_by_the_loss_of_heat(demo_db, capsys):
    rows = [row for row in overview(demo_db, "deep_winter_wet") if row["van"].endswith("Trio Winter 2026")]
    print_overview(rows)
    said = capsys.readouterr().out
    settled = {row["field"]: row for row in json.loads(run(
        "query", "SELECT v.model, s.field, s.value_low, s.value_high FROM settled s JOIN vans v USING (van_id) "
        "WHERE v.model = 'Sallowby Trio Winter' AND s.equipment = 'standard' AND s.field LIKE 'heat_days%'",
        "--db", demo_db, "--format", "json",
    ).output)}  # fmt: skip
    assert settled["heat_days"]["value_low"] > settled["heat_days_at_loss"]["value_low"]
    for field in ("heat_days", "heat_days_at_loss"):
        assert f"{settled[field]['value_low']:.2f}" in said
    assert "Believe the shorter one" in " ".join(said.split())


def test_explain_shows_words_pages_unknowns_and_cautions(demo_db):
    said = run("explain", "Sallowby Trio Winter", "--db", demo_db).output
    assert "Ebbingford Sallowby Trio Winter 2026, as delivered" in said
    assert "“Thermal break between ribs and lining: ■”  ebbingford_sallowby_2026.pdf, page 3" in said
    assert "Not known, and what it could move" in said
    assert "Ask the maker:" in said
    assert "Carbon monoxide" in said


def test_explain_as_json_adds_up(demo_db):
    told = json.loads(run("explain", "Sallowby Trio Winter", "--db", demo_db, "--json").output)
    assert sum(one["points_low"] for one in told["criteria"]) == pytest.approx(told["total"]["points_low"])
    assert sum(one["points_high"] for one in told["criteria"]) == pytest.approx(told["total"]["points_high"])


def test_explain_of_an_unclear_name_lists_the_candidates(demo_db):
    result = run("explain", "Sallowby", "--db", demo_db)
    assert result.exit_code == 2
    assert "Sallowby Duo" in result.output and "Sallowby Trio" in result.output


def test_gaps_start_with_the_most_points_at_stake(demo_db):
    rows = json.loads(run("gaps", "--db", demo_db, "--json").output)
    stakes = [row["points_at_stake"] for row in rows]
    assert stakes == sorted(stakes, reverse=True)
    assert all(row["question"] for row in rows)
    one = run("gaps", "--db", demo_db, "--van", "Sallowby Duo").output
    assert "Sallowby Duo" in one and "Sallowby Trio" not in one


def test_evaluate_lists_figures_and_misses(demo_db):
    gold = ROOT / "corpus_demo" / "gold.csv"
    told = json.loads(run("evaluate", gold, "--db", demo_db, "--json").output)
    overall = told["overall"]
    assert overall["right"] + overall["missing"] == sum(1 for _ in csv.DictReader(open(gold, encoding="utf-8")))
    kinds = [miss["kind"] for miss in told["misses"]]
    assert kinds.count("missing") == overall["missing"]
    assert kinds.count("extra") == overall["extra"]
    assert f"{overall['precision']:.3f}" in run("evaluate", gold, "--db", demo_db).output


def test_demo_and_rules_are_written_once(tmp_path):
    assert run("demo", tmp_path / "demo").exit_code == 0
    assert (tmp_path / "demo" / "gold.csv").is_file()
    assert run("rules", "copy", tmp_path / "rules").exit_code == 0
    assert run("rules", "check", tmp_path / "rules").exit_code == 0
    again = run("demo", tmp_path / "demo")
    assert again.exit_code == 2
    assert "not an empty folder" in again.output


def test_rules_check_names_file_line_and_reason(tmp_path):
    run("rules", "copy", tmp_path / "rules")
    path = tmp_path / "rules" / "winter" / "shoulder_season.yaml"
    lines = path.read_text(encoding="utf-8").splitlines()
    at = next(number for number, line in enumerate(lines) if "fresh_tank_location" in line)
    lines[at] = lines[at].replace("fresh_tank_location", "colour_of_curtains")
    path.write_text("\n".join(lines), encoding="utf-8")
    result = run("rules", "check", path)
    assert result.exit_code == 2
    assert re.search(rf"shoulder_season\.yaml:{at + 1}: .*colour_of_curtains", result.output)


def test_rules_test_runs_the_cases_of_every_rule_set():
    result = run("rules", "test")
    assert result.exit_code == 0, result.output
    for name in ("deep_winter_wet", "deep_winter_dry", "shoulder_season"):
        assert name in result.output


def test_export_writes_files(demo_db, tmp_path):
    result = run("export", tmp_path / "out", "--db", demo_db, "--format", "json")
    assert result.exit_code == 0
    assert json.loads((tmp_path / "out" / "vans.json").read_text())


@pytest.mark.parametrize(
    "command",
    [
        ["--help"], ["query", "SELECT 1", "--db", "DB"], ["gaps", "--db", "DB"],
        ["explain", "Sallowby Trio Winter", "--db", "DB"],
    ],
)  # fmt: skip
def test_light_commands_import_no_heavy_library(command, demo_db):
    code = (
        "import sys\nfrom specscan.cli.main import main\n"
        f"main({[str(demo_db) if part == 'DB' else part for part in command]!r}, standalone_mode=False)\n"
        "heavy = {'spacy', 'numpy', 'pandas', 'pdfplumber', 'pint', 'pydantic', 'yaml', 'lxml'} & set(sys.modules)\n"
        "assert not heavy, heavy\n"
    )
    subprocess.run([sys.executable, "-c", code], check=True, cwd=ROOT, stdout=subprocess.DEVNULL)


def test_a_folder_without_vans_is_no_error(tmp_path):
    (tmp_path / "letter.txt").write_text("Thank you for your letter. Our office is closed until Monday.\n")
    result = run("scan", tmp_path / "letter.txt", "--db", tmp_path / "vans.duckdb")
    assert result.exit_code == 0 and "0 vans" in result.output


def test_rules_without_the_built_in_rule_sets_judge_by_their_own(tmp_path):
    (tmp_path / "van.txt").write_text(text())
    rules = tmp_path / "rules"
    assert run("rules", "copy", rules).exit_code == 0
    for built_in in ("deep_winter_wet", "deep_winter_dry"):
        (rules / "winter" / f"{built_in}.yaml").unlink()
    result = run("scan", tmp_path / "van.txt", "--db", tmp_path / "vans.duckdb", "--rules", rules)
    assert result.exit_code == 0 and "shoulder_season, as delivered" in result.output
    assert run("explain", "Drift 21", "--db", tmp_path / "vans.duckdb").exit_code == 0
