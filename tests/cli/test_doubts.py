"""The command that lists what to check first, and the confidence that decides what counts."""

import json

import pytest
from click.testing import CliRunner

from specscan import api
from specscan.cli.main import main
from specscan.dataset.reader import Reader

SHEET = "Marrowfen Drift 21\nModel year 2026\n\nOverall length: 6.36 m\nMTPLM: 3500 kg\nWheelbase: 3.80 m\n"
PROSE = "\nThe inverter of the Drift 21 gives 2000 W, and its batteries sit under the bed where they are warm enough.\n"


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    folder = tmp_path_factory.mktemp("doubts")
    (folder / "one.txt").write_text(SHEET + "Fresh water: 100 litres\n" + PROSE, encoding="utf-8")
    (folder / "two.txt").write_text(SHEET + "Fresh water: 120 litres\nSolar: 90000 W\n", encoding="utf-8")
    return folder


@pytest.fixture(scope="module")
def db(folder):
    api.scan([folder], folder / "vans.duckdb", jobs=1)
    return folder / "vans.duckdb"


def listed(db, *arguments):
    result = CliRunner().invoke(main, ["doubts", "--db", str(db), "--json", *arguments])
    assert result.exit_code == 0, result.output
    return json.loads(result.output)


def test_conflicts_come_first_with_the_words_of_both_sides(db):
    first, second = listed(db)[:2]
    assert [first["kind"], second["kind"]] == ["conflict", "conflict"]
    assert {first["document"], second["document"]} == {"one.txt", "two.txt"}
    assert {first["printed"], second["printed"]} == {"Fresh water: 100 litres", "Fresh water: 120 litres"}


def test_a_reject_says_why_it_was_set_aside(db):
    rows = [row for row in listed(db) if row["kind"] == "set_aside" and row["field"] == "solar_w"]
    assert [row["because"] for row in rows] == ["implausible: outside the plausible range"]


def test_running_text_is_unsure_and_can_be_left_out_of_the_list(db):
    rows = [row for row in listed(db) if row["kind"] == "unsure" and row["field"] == "inverter_w"]
    assert [row["because"] for row in rows] == ["said in running text"]
    assert not any(row["kind"] == "unsure" for row in listed(db, "--below", "0.5"))


def test_what_is_below_the_confidence_asked_for_does_not_settle_and_is_listed(folder, tmp_path):
    strict = tmp_path / "strict.duckdb"
    result = CliRunner().invoke(
        main, ["scan", str(folder), "--db", str(strict), "--jobs", "1", "--confidence", "0.985", "--json"]
    )
    assert result.exit_code == 0, result.output
    with Reader(strict) as reader:
        assert [row["inverter_w"] for row in reader.rows("SELECT inverter_w FROM vans")] == [None]
    assert any(row["kind"] == "below_threshold" and row["field"] == "inverter_w" for row in listed(strict))


def test_the_list_reads_as_text(db):
    result = CliRunner().invoke(main, ["doubts", "--db", str(db)])
    assert "Statements that contradict each other" in result.output and "one.txt" in result.output


def test_a_name_put_together_is_unsure(tmp_path):
    rows = "".join(
        f"| {label} | {one} | {two} |\n"
        for label, one, two in (
            ("Length", "5990 mm", "6360 mm"), ("Width", "2050 mm", "2050 mm"), ("Height", "2650 mm", "2650 mm"),
            ("Fresh water tank", "90 L", "110 L"), ("Sleeps", "2", "3"),
        )
    )  # fmt: skip
    text = f"# The Ferrule range 2026\n\n|  | 190 | 240 X |\n|---|---|---|\n{rows}"
    (tmp_path / "sheet.md").write_text(text, encoding="utf-8")
    api.scan([tmp_path], tmp_path / "vans.duckdb", jobs=1)
    unsure = [row for row in listed(tmp_path / "vans.duckdb") if row["field"] == "model"]
    assert [row["value"] for row in unsure] == ["Ferrule 190", "Ferrule 240 X"]
    assert all("put together" in row["because"] for row in unsure)
