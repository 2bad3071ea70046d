"""The report as Markdown and JSON, and the table to paste."""

import csv
import io
import json

import pytest
from click.testing import CliRunner

from specscan import api
from specscan.cli.main import main
from specscan.records.errors import NotFoundError
from specscan.reports.markdown import md
from tests.reports.made_page import made_db

DUO, LX = "Ebbingford Sallowby Duo 2026", "Halvenny Skerrow 24 LX 2026"


@pytest.fixture(scope="module")
def written(demo_db, tmp_path_factory):
    """Give the report as JSON data and as Markdown."""
    folder = tmp_path_factory.mktemp("written")
    return (
        json.loads(api.written_report(demo_db, folder / "r.json", "json")),
        api.written_report(demo_db, folder / "r.md", "markdown"),
    )


def test_every_known_value_is_in_both_forms_with_a_citation(written, demo_db):
    data, text = written
    known = api.query(
        "SELECT van_id, field FROM settled WHERE status IN ('stated', 'conflicting', 'observed') AND "
        "equipment = 'standard' AND len(fact_ids) > 0", demo_db,
    )  # fmt: skip
    shown = {
        (van["van_id"], value["field"]): value["sources"]
        for van in data["vans"] for value in van["values"] if value["equipment"] != "optioned"
    }  # fmt: skip
    assert len(known) > 800
    for row in known.itertuples():
        sources = shown[(row.van_id, row.field)]
        assert sources
        assert all(md(source["citation"]) in text for source in sources)


def test_a_citation_names_maker_document_page_and_words(written):
    data, text = written
    [van] = [van for van in data["vans"] if van["title"] == DUO]
    [value] = [value for value in van["values"] if value["field"] == "fresh_tank_l"]
    cited = "Ebbingford, ebbingford_sallowby_2026.pdf, page 2: “Fresh water (gallons): 12”"
    assert [source["citation"] for source in value["sources"]] == [cited]
    assert f"## {DUO}\n" in text and md(cited) in text


def test_both_forms_tell_the_same_bands_as_the_dataset(written, demo_db):
    data, text = written
    scores = api.query("SELECT * FROM scores WHERE criterion = 'total'", demo_db)
    told = {
        (van["van_id"], view["ruleset"], view["equipment"]): view["total"]
        for van in data["vans"] for view in van["points"]
    }  # fmt: skip
    assert len(told) == len(scores)
    for row in scores.itertuples():
        band = told[(row.van_id, row.ruleset, row.equipment)]
        assert (band["low"], band["high"]) == (row.points_low, row.points_high)
    assert "neither is ranked above the other" in text


def test_words_from_outside_are_no_markup(tmp_path):
    text = api.written_report(made_db(tmp_path), tmp_path / "r.md", "markdown")
    assert "<script" not in text.replace("\\<script", "") and "<img" not in text.replace("\\<img", "")
    assert "\\<script\\>window.harmed = 1" in text


@pytest.mark.parametrize(
    ("printed", "shown"),
    [("a | b", "a \\| b"), ("# no head", "\\# no head"), ("1. no list", "1\\. no list"), ("x\n\ny *z*", "x y \\*z\\*")],
)
def test_signs_of_markdown_are_escaped(printed, shown):
    assert md(printed) == shown


def test_the_table_has_a_column_a_van_and_a_source_for_every_value(demo_db):
    table = api.table(demo_db, ["Sallowby Duo", "Skerrow 24"], ["fresh_tank_l", "battery_chemistry"])
    lines = table.markdown().splitlines()
    assert lines[0] == f"| as delivered | {DUO} | {LX} |"
    assert lines[2].startswith("| Capacity of the fresh-water tank | 54.55 L \\[1\\] | ")
    assert (
        "\\[1\\] Ebbingford, ebbingford\\_sallowby\\_2026.pdf, page 2: “Fresh water (gallons): 12”" in table.markdown()
    )
    us = api.table(demo_db, ["Sallowby Duo"], ["fresh_tank_l"], units="us")
    assert us.rows[0][1][0].text == "14.41 gal"


def test_the_table_as_csv_has_the_citation_beside_the_value(demo_db):
    said = CliRunner().invoke(
        main, ["table", "Sallowby Duo", "--field", "fresh_tank_l", "--format", "csv", "--db", str(demo_db)]
    )
    assert said.exit_code == 0, said.output
    [row] = list(csv.DictReader(io.StringIO(said.output)))
    assert row[DUO] == "54.55 L" and "page 2: “Fresh water (gallons): 12”" in row[f"{DUO}: sources"]


def test_without_fields_the_rows_are_the_points_and_what_the_rule_set_asks(demo_db):
    table = api.table(demo_db, ["Sallowby Duo", "Skerrow 24"])
    labels = [label for label, _ in table.rows]
    assert labels[0] == "Points: Deep winter with running water" and len(labels) > 15
    with pytest.raises(NotFoundError, match="no field is called 'wings'"):
        api.table(demo_db, [], ["wings"])
