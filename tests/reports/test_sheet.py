"""The walk-around sheet and its CSV."""

import csv
import io

import pytest
from click.testing import CliRunner
from lxml import html

from specscan import api
from specscan.cli.main import main
from specscan.reports.sheet import COLUMNS
from tests.reports.made_page import made_db


@pytest.fixture(scope="module")
def sheet(demo_db, tmp_path_factory):
    """Give the sheet of the demo corpus."""
    return api.sheet(demo_db, tmp_path_factory.mktemp("sheet") / "sheet.html")


def test_every_open_question_stands_there_most_points_first(sheet, demo_db):
    gaps = api.gaps(demo_db, at_least=0.05)
    asked = {(van.van_id, question.field) for van in sheet.vans for question in van.questions}
    assert asked == set(zip(gaps["van_id"], gaps["field"], strict=True))
    for van in sheet.vans:
        points = [question.points for question in van.questions]
        assert points == sorted(points, reverse=True)
        assert [question.number for question in van.questions] == list(range(1, len(points) + 1))


def test_no_question_is_without_a_place_where_it_is_answered(sheet):
    tree = html.fromstring(sheet.html)
    for van, article in zip(sheet.vans, tree.xpath("//article"), strict=True):
        numbers = {int(text) for text in article.xpath(".//tbody/tr/th/text()")}
        assert numbers == {question.number for question in van.questions}


@pytest.mark.parametrize(
    ("field", "places"),
    [
        ("gray_tank_heat", {"maker", "underneath"}),
        ("dump_valve_protection", {"maker", "underneath"}),
        ("heater_output_w", {"maker", "inside"}),
        ("heater_power_draw_w", {"maker", "measure"}),
    ],
)
def test_questions_stand_where_they_can_be_answered(demo_db, tmp_path, field, places):
    """The places are written in the field files (`ask`)."""
    whole = api.sheet(demo_db, tmp_path / "sheet.html", everything=True)
    found = [question for van in whole.vans for question in van.questions if question.field == field]
    assert found
    assert all(set(question.tasks) == places for question in found)


def test_warnings_stand_before_what_they_warn_of(sheet):
    for article in html.fromstring(sheet.html).xpath("//article"):
        for section in article.xpath(".//section[h2='Look underneath']"):
            first = section.xpath("./*[2]")[0].text_content()
            assert "Never go under a vehicle that a jack alone holds up" in first
        fields = article.xpath(".//td//code/text()")
        if any("heater" in field or "propane" in field for field in fields):
            assert "If you smell gas" in article.text_content()


def test_there_is_an_answer_to_tick_for_each_word_of_the_vocabulary(sheet, book):
    tree = html.fromstring(sheet.html)
    rows = tree.xpath("//tr[.//code='water_lines_location']")
    assert rows
    for row in rows:
        assert len(row.xpath(".//ul[@class='ticks']/li")) == len(book.choices_of("water_lines_location")) + 1


def test_the_csv_has_a_line_per_question_with_the_answer_left_empty(demo_db, tmp_path):
    made = api.sheet(demo_db, tmp_path / "sheet.html", csv=tmp_path / "answers.csv", vans=["Sallowby Duo"])
    rows = list(csv.DictReader(io.StringIO((tmp_path / "answers.csv").read_text(encoding="utf-8"))))
    assert tuple(rows[0]) == COLUMNS
    assert [row["field"] for row in rows] == [question.field for question in made.vans[0].questions]
    assert all(row["van_id"] == "ebbingford-sallowby-duo-2026" and row["question"] for row in rows)
    assert all(row[name] == "" for row in rows for name in COLUMNS[3:])


def test_words_from_outside_stay_words_and_no_cell_is_a_formula(tmp_path):
    made = api.sheet(made_db(tmp_path), tmp_path / "sheet.html", csv=tmp_path / "answers.csv")
    tree = html.fromstring(made.html)
    assert not tree.xpath("//script") and not tree.xpath("//img")
    cells = [cell for row in csv.reader(io.StringIO(made.csv)) for cell in row]
    assert not any(cell.startswith(("=", "+", "-", "@")) for cell in cells)


def test_the_commands_say_what_they_wrote(demo_db, tmp_path):
    out, answers, page = tmp_path / "sheet.html", tmp_path / "answers.csv", tmp_path / "page.html"
    arguments = ["sheet", "Sallowby Duo", "--db", demo_db, "--out", out, "--csv", answers]
    said = CliRunner().invoke(main, [str(one) for one in arguments])
    assert said.exit_code == 0, said.output
    assert f"questions about 1 van → {out}, {answers}" in said.output and out.is_file() and answers.is_file()
    said = CliRunner().invoke(main, ["report", "Sallowby Duo", "--db", str(demo_db), "--out", str(page)])
    assert said.exit_code == 0, said.output
    assert said.output.startswith("1 van, ") and page.is_file()
    said = CliRunner().invoke(main, ["report", "--db", str(tmp_path / "gone.duckdb"), "--out", str(page)])
    assert said.exit_code == 2 and "no such dataset" in said.output
