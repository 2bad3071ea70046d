"""The demo corpus against its own gold: values found on the right van, held at what is reached so far."""

import csv
from collections import defaultdict

import pytest

from tests.conftest import ROOT

CORPUS = ROOT / "corpus_demo"


def test_damaged_pdf_is_refused_and_named(read_file):
    record = read_file(CORPUS / "oldersund_ravnkol_2025_damaged.pdf").record
    assert record.status == "unreadable"
    assert record.message


def test_flyer_without_a_van_gives_no_van(read_file):
    assert read_file(CORPUS / "tamarsk_landing_winter_sites_flyer.pdf").found.vans == ()


@pytest.mark.parametrize("name", ["tarnsted_pipwell_545_data_2026.pdf", "brackmere_sedgewren_19.pdf"])
def test_single_van_sheets_give_their_tanks(read_file, name):
    gold = defaultdict(list)
    with open(CORPUS / "gold.csv", encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            if row["doc"] == name:
                gold[row["field"]].append(row["value"])
    facts = [fact for fact in read_file(CORPUS / name).found.facts if not fact.rejected]
    for field in ("fresh_tank_l", "gray_tank_l"):
        found = {fact.num for fact in facts if fact.field == field}
        assert gold[field]
        assert all(any(abs(number - float(value)) <= 0.02 * float(value) for number in found) for value in gold[field])
