"""Short documents of several regions around a line that is to be read, and what they come to state."""

from __future__ import annotations

import pytest

from specscan.settling.preferences import load_preferences
from specscan.settling.settle import settle

# Heads of documents of a region; a line whose field the test is about is left out. All of it is invented.
HEADS = {
    "US": {"": "Marrowfen Vans\nMarrowfen Drift 21\nModel year 2026\n", "length_mm": "Overall length: 21 ft",
           "gvwr_kg": "GVWR: 9,350 lb", "wheelbase_mm": "Wheelbase: 159 in", "width_mm": "Width: 81 in"},
    "UK": {"": "Marrowfen Motorhomes\nMarrowfen Drift 21\nModel year 2026\n\nTyres: 225/75 R16",
           "length_mm": "External length: 6.36 m", "gvwr_kg": "MTPLM: 3500 kg", "wheelbase_mm": "Wheelbase: 3.80 m",
           "width_mm": "External width: 2.05 m"},
    "AU": {"": "Marrowfen Campers\nMarrowfen Drift 21\nModel year 2026\n", "length_mm": "Overall length: 6.36 m",
           "gvwr_kg": "GVM: 3500 kg", "wheelbase_mm": "Wheelbase: 3.80 m", "width_mm": "Width: 2.05 m"},
    "FR": {"": "Marrowfen Fourgons\nMarrowfen Drift 21\nMillésime 2026\n", "length_mm": "Longueur hors tout : 6,36 m",
           "gvwr_kg": "PTAC : 3 500 kg", "wheelbase_mm": "Empattement : 3,80 m", "width_mm": "Largeur : 2,05 m"},
    "QC": {"": "Marrowfen Fourgons\nMarrowfen Drift 21\nAnnée-modèle 2026\n",
           "length_mm": "Longueur hors tout : 20 pi 11 po", "gvwr_kg": "PNBV : 9 350 lb",
           "wheelbase_mm": "Empattement : 159 po", "width_mm": "Largeur : 81 po"},
    "DE": {"": "Marrowfen Reisemobile\nMarrowfen Drift 21\nModelljahr 2026\n", "length_mm": "Gesamtlänge: 6,36 m",
           "gvwr_kg": "Zulässiges Gesamtgewicht: 3.500 kg", "wheelbase_mm": "Radstand: 3.800 mm",
           "width_mm": "Breite: 2,05 m"},
    "CH": {"": "Marrowfen Reisemobile\nMarrowfen Drift 21\nModelljahr 2026\n", "length_mm": "Gesamtlänge: 6.36 m",
           "gvwr_kg": "Gesamtgewicht: 3'500 kg", "wheelbase_mm": "Radstand: 3'800 mm", "width_mm": "Breite: 2.05 m"},
}  # fmt: skip
IDENTITY = ("maker", "model", "model_year")


def sleeps_in(found):
    """Give how many sleep in each van of a document; all of them say it, and nothing else does."""
    sleeps = {fact.model: fact.value for fact in found.facts if fact.field == "sleeps" and not fact.rejected}
    assert sleeps.keys() == {van.model for van in found.vans}
    return sleeps


@pytest.fixture(scope="session")
def settled_of(examiner, book):
    """Give a function that reads texts or bytes as documents and settles them: rows by model, field and equipment."""
    preferences = load_preferences(book)

    def read(*texts, name="brochure.txt", kind="text"):
        documents = [
            examiner.examine(f"{number}_{name}", text if isinstance(text, bytes) else text.encode(), kind)
            for number, text in enumerate(texts, start=1)
        ]
        settlement = settle(documents, book, preferences)
        models = {van.van_id: van.model for van in settlement.vans}
        return {
            (models[row.van_id], row.field, row.equipment): row for row in settlement.settled if row.status != "missing"
        }

    return read


def value_of(row):
    """Give the value of a settled row; a conflict is told as such."""
    if row.status == "conflicting":
        return "conflict"
    return next((one for one in (row.num, row.text, row.flag) if one is not None), None)


@pytest.fixture(scope="session")
def printed(settled_of):
    """Give a function that reads a line in a document of a region: what the line states, and nothing else.

    Values by field; one that is only to be had as an option comes as ``("option", value)``.
    """

    def read(region, line, about=()):
        head = {field: text for field, text in HEADS[region].items() if field not in about}
        rows = settled_of("\n".join(head.values()) + "\n\n" + line + "\n")
        stated = {}
        for (_, field, equipment), row in rows.items():
            if field in IDENTITY or (field in head and field not in about):
                continue
            if equipment == "standard" and row.availability != "optional":
                stated[field] = value_of(row)
            elif equipment == "optioned" and row.availability == "optional":
                stated[field] = ("option", value_of(row))
        return stated

    return read


@pytest.fixture(scope="session")
def states(printed):
    """Give a function that asserts that a line in a document of a region states certain values and no others."""

    def check(region, line, expected):
        stated = printed(region, line, tuple(expected))
        assert stated.keys() == expected.keys(), stated
        for field, value in expected.items():
            if isinstance(value, float | int) and not isinstance(value, bool):
                value = pytest.approx(value, rel=0.006)
            elif isinstance(value, tuple) and not isinstance(value[1], bool | str):
                value = ("option", pytest.approx(value[1], rel=0.006))
            assert stated[field] == value, field

    return check


@pytest.fixture
def vans_of(read_file, tmp_path):
    """Give a function that reads a text and gives maker, model and year of its vans."""

    def read(text, name="leaflet.md"):
        path = tmp_path / name
        path.write_text(text, encoding="utf-8")
        return {(van.maker, van.model, van.year) for van in read_file(path).found.vans}

    return read


@pytest.fixture
def vans_in(read_file, tmp_path):
    """Give a function that reads a text under a name, and gives maker and model of its vans."""

    def read(text, name="page.md"):
        path = tmp_path / name
        path.write_text(text, encoding="utf-8")
        return {(van.maker, van.model) for van in read_file(path).found.vans}

    return read
