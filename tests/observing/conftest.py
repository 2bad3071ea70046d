"""A dataset of two invented vans, scanned once; each test gets its own copy, with nothing observed yet."""

import csv
import dataclasses
import functools
import shutil

import pytest

from specscan import api
from specscan.observing.answers import AnswerReader
from specscan.observing.rules import load_observing
from tests.scanning.made import pdf, text

DRIFT21, DRIFT23 = "marrowfen-drift-21-2026", "marrowfen-drift-23-2026"
FILLED = {"who": "R. Quill", "when": "2026-01-20", "how": "seen"}


@pytest.fixture(scope="session")
def answer_reader(book):
    return AnswerReader(book, load_observing(book))


@pytest.fixture(scope="session")
def scanned(tmp_path_factory):
    folder = tmp_path_factory.mktemp("observed")
    brochures = folder / "brochures"
    brochures.mkdir()
    (brochures / "drift21.pdf").write_bytes(pdf())
    (brochures / "drift23.txt").write_text(text(model="Drift 23", fresh=120))
    api.scan([brochures], folder / "vans.duckdb", jobs=1)
    return folder / "vans.duckdb"


@pytest.fixture(autouse=True)
def rules_loaded_once(monkeypatch, loaded):
    """Loading the rules is tested elsewhere and takes longer than all that is tested here."""
    from specscan.scanning import observe

    monkeypatch.setattr(observe, "load_job", loaded)


@pytest.fixture(scope="session")
def loaded():
    from specscan.scanning.update import load_job

    once = functools.cache(lambda rules, rulesets: load_job(rules, list(rulesets)))

    def job(rules, rulesets=(), conditions=None, confidence=None):
        made = once(rules, tuple(rulesets))
        if confidence is not None:
            made = dataclasses.replace(made, preferences=made.preferences.model_copy(update={"settle_at": confidence}))
        return made if conditions is None else dataclasses.replace(made, conditions=conditions)

    return job


@pytest.fixture
def db(scanned, tmp_path):
    return shutil.copy(scanned, tmp_path / "vans.duckdb")


@pytest.fixture
def sheet(tmp_path):
    """Give a function that writes a filled-in sheet, with who, when and how in every row."""

    def write(*rows, name="answers.csv"):
        columns = ["van_id", "field", "question", "answer", "unit", "who", "when", "how", "evidence", "note"]
        columns += sorted({key for row in rows for key in row} - set(columns))
        with open(tmp_path / name, "w", newline="", encoding="utf-8") as file:
            writer = csv.DictWriter(file, columns)
            writer.writeheader()
            writer.writerows({"van_id": DRIFT21, **FILLED, **row} for row in rows)
        return tmp_path / name

    return write


@pytest.fixture
def settled():
    """Give a function that reads one settled row."""

    def read(db, field, van=DRIFT21, equipment="standard"):
        sql = f"SELECT * FROM settled WHERE van_id = '{van}' AND field = '{field}' AND equipment = '{equipment}'"
        (row,) = api.query(sql, db).to_dict("records")
        return row

    return read
