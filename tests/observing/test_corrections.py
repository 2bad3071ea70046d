"""Corrections of misread values: the page counts, the misread statement stays for judging, gold labels follow."""

import csv

import pytest

from specscan import api
from specscan.records.errors import SpecscanError
from tests.observing.conftest import DRIFT21, DRIFT23
from tests.scanning.made import pdf

RIGHT = {"field": "fresh_tank_l", "answer": "105 l", "doc": "drift21.pdf", "page": "1", "how": ""}


def test_a_correction_takes_the_place_of_what_was_read(db, sheet, settled):
    misread = settled(db, "fresh_tank_l")["fact_ids"].tolist()
    api.observe(db, sheet(RIGHT))
    row = settled(db, "fresh_tank_l")
    assert (row["status"], row["value_num"]) == ("observed", 105.0)
    assert row["fact_ids"].tolist() == misread
    assert "read again by R. Quill, 2026-01-20: 105 l (drift21.pdf, page 1)" in row["note"]
    assert "Fresh water tank: 100 L" in row["note"]
    facts = api.query(f"SELECT rejected_because FROM facts WHERE fact_id = '{misread[0]}'", db)
    assert facts["rejected_because"].tolist() == ["corrected: read again by R. Quill, 2026-01-20"]


def test_a_correction_of_one_document_leaves_what_another_says(db, sheet, settled, tmp_path):
    folder = tmp_path / "more"
    folder.mkdir()
    (folder / "again.pdf").write_bytes(pdf(fresh=130))
    api.scan([folder], db, jobs=1)
    api.observe(db, sheet(RIGHT))
    row = settled(db, "fresh_tank_l")
    assert (row["status"], row["value_low"], row["value_high"]) == ("conflicting", 105.0, 130.0)
    api.observe(db, sheet({**RIGHT, "answer": "130 l", "when": "2026-01-21"}))
    row = settled(db, "fresh_tank_l")
    assert (row["status"], row["value_num"]) == ("observed", 130.0) or row["status"] == "stated"


def test_a_document_that_does_not_state_a_field_leaves_it_missing(db, sheet, settled):
    api.observe(db, sheet({**RIGHT, "answer": "not stated"}))
    row = settled(db, "fresh_tank_l")
    assert (row["status"], row["reason"]) == ("missing", "not_stated")


def test_a_correction_may_state_what_was_overlooked_and_an_option(db, sheet, settled):
    api.observe(db, sheet({**RIGHT, "field": "heated_floor", "answer": "yes", "availability": "optional"}))
    assert settled(db, "heated_floor")["reason"] == "only_optional"
    assert settled(db, "heated_floor", equipment="optioned")["value_flag"] is True


def test_evaluate_goes_on_to_judge_what_was_read_by_gold_labels_from_corrections(db, sheet, tmp_path):
    """A correction must not make the program look better than it read."""
    api.observe(db, sheet(RIGHT, {**RIGHT, "van_id": DRIFT23, "doc": "drift23.txt", "page": "", "answer": "120 l"}))
    gold = tmp_path / "gold.csv"
    assert api.gold_of_corrections(db, gold) == 2
    rows = list(csv.DictReader(open(gold, encoding="utf-8")))
    told = {"doc": "drift21.pdf", "field": "fresh_tank_l", "value": "105", "availability": "standard", "page": "1"}
    assert {name: rows[0][name] for name in told} == told
    figures = api.evaluate(gold, db).by_field["fresh_tank_l"]
    assert (figures.right, figures.missing, figures.extra) == (1, 1, 1)
    with pytest.raises(SpecscanError, match="is there already"):
        api.gold_of_corrections(db, gold)


def test_gold_without_corrections_says_so(db, sheet, tmp_path):
    api.observe(db, sheet({"field": "heated_floor", "answer": "yes"}))
    with pytest.raises(SpecscanError, match="holds no corrections"):
        api.gold_of_corrections(db, tmp_path / "gold.csv")
    assert DRIFT21 in (tmp_path / "vans.observed.csv").read_text()
