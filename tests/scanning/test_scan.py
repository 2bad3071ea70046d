"""A folder of documents becomes a dataset: nothing lost, nothing read twice, nothing half-written."""

import pytest

from specscan import api
from specscan.records.errors import NotFoundError, RuleError
from tests.scanning.made import pdf, text


def values(db, column="fresh_tank_l"):
    return api.query(f"SELECT model, {column} FROM vans ORDER BY model", db)[column].tolist()


@pytest.fixture
def folder(tmp_path):
    path = tmp_path / "brochures"
    path.mkdir()
    (path / "drift21.txt").write_text(text())
    return path


def test_bad_files_are_named_and_all_else_is_stored(folder, tmp_path):
    (folder / "zero.pdf").write_bytes(b"")
    (folder / "blank.txt").write_text("   \n\n")
    (folder / "locked.pdf").write_bytes(pdf(password="swordfish"))
    (folder / "torn.pdf").write_bytes(pdf()[:400])
    (folder / "good.pdf").write_bytes(pdf(model="Drift 23", fresh=120))
    (folder / "notes.docx").write_bytes(b"PK")
    (folder / "readme.txt").write_text(text(model="Drift 99"))
    summary = api.scan([folder], tmp_path / "vans.duckdb")
    refused = {record.name: record.message for record in summary.unreadable}
    assert set(refused) == {"zero.pdf", "blank.txt", "locked.pdf", "torn.pdf"}
    assert "0 bytes" in refused["zero.pdf"]
    assert "password" in refused["locked.pdf"]
    assert all(refused.values())
    assert values(summary.db) == [100.0, 120.0]
    assert summary.aside == 1


def test_only_new_and_changed_files_are_read(folder, tmp_path):
    db = tmp_path / "vans.duckdb"
    (folder / "drift23.txt").write_text(text(model="Drift 23", fresh=120))
    assert api.scan([folder], db, jobs=1).read == 2
    again = api.scan([folder], db, jobs=1)
    assert (again.read, again.unchanged) == (0, 2)
    (folder / "drift23.txt").write_text(text(model="Drift 23", fresh=130))
    changed = api.scan([folder], db, jobs=1)
    assert (changed.read, changed.unchanged) == (1, 1)
    assert values(db) == [100.0, 130.0]


def test_a_removed_files_facts_go(folder, tmp_path):
    db = tmp_path / "vans.duckdb"
    (folder / "drift23.txt").write_text(text(model="Drift 23"))
    api.scan([folder], db, jobs=1)
    (folder / "drift23.txt").unlink()
    assert api.scan([folder], db, jobs=1).removed == 1
    assert values(db) == [100.0]
    assert api.query("SELECT count(*) AS n FROM facts WHERE van_id LIKE '%23%'", db)["n"].tolist() == [0]


def test_scanning_another_folder_keeps_the_first(folder, tmp_path):
    db = tmp_path / "vans.duckdb"
    other = tmp_path / "other"
    other.mkdir()
    (other / "drift23.txt").write_text(text(model="Drift 23", fresh=120))
    api.scan([folder], db, jobs=1)
    api.scan([other], db, jobs=1)
    assert values(db) == [100.0, 120.0]


def test_two_documents_on_one_van_meet_and_a_copy_adds_nothing(folder, tmp_path):
    db = tmp_path / "vans.duckdb"
    (folder / "copy.txt").write_text(text())
    (folder / "second.pdf").write_bytes(pdf(fresh=110))
    (folder / "older.txt").write_text(text(year=2024, fresh=90))
    api.scan([folder], db, jobs=1)
    frame = api.query(
        "SELECT v.model_year, s.status, s.value_low, s.value_high, len(s.fact_ids) AS n "
        "FROM settled AS s JOIN vans AS v USING (van_id) "
        "WHERE field = 'fresh_tank_l' AND equipment = 'standard' ORDER BY 1",
        db,
    )
    assert frame.values.tolist() == [[2024, "stated", 90.0, 90.0, 1], [2026, "conflicting", 100.0, 110.0, 2]]


def test_manifest_overrules_and_names_what_has_no_name(folder, tmp_path):
    db = tmp_path / "vans.duckdb"
    (folder / "scrap.txt").write_text("Fresh water tank: 55 L\nGray water tank: 40 L\nOverall length: 5.4 m\n")
    lines = ["file,maker,model,year", "drift21.txt,Quillby,Tarn 5,2023", "scrap.txt,Quillby,Rill,2022"]
    (folder / "manifest.csv").write_text("\n".join(lines))
    api.scan([folder], db, jobs=1)
    frame = api.query("SELECT maker, model, model_year, fresh_tank_l FROM vans ORDER BY model", db)
    assert frame.values.tolist() == [["Quillby", "Rill", 2022, 55.0], ["Quillby", "Tarn 5", 2023, 100.0]]


def test_a_wrong_rule_file_stores_nothing(folder, tmp_path):
    rules = api.copy_rules(tmp_path / "rules")
    path = rules / "settling.yaml"
    path.write_text(path.read_text() + "surprise: 1\n")
    with pytest.raises(RuleError, match=r"settling\.yaml:\d+: surprise: unknown key"):
        api.scan([folder], tmp_path / "vans.duckdb", rules=rules)
    assert not (tmp_path / "vans.duckdb").exists()


def test_a_path_that_is_not_there_stores_nothing(folder, tmp_path):
    with pytest.raises(NotFoundError, match="nowhere"):
        api.scan([folder, tmp_path / "nowhere"], tmp_path / "vans.duckdb")
    assert not (tmp_path / "vans.duckdb").exists()


def test_a_new_field_needs_no_code(folder, tmp_path):
    rules = api.copy_rules(tmp_path / "rules")
    (rules / "fields" / "mine.yaml").write_text(
        "fields:\n"
        "  ladder_rungs:\n"
        "    meaning: rungs of the rear ladder\n"
        "    type: integer\n"
        "    range: [1, 20]\n"
        "    number: count\n"
        '    labels: {en: ["rear ladder rungs", "ladder rungs"]}\n'
    )
    (folder / "drift21.txt").write_text(text() + "Ladder rungs: 7\n")
    db = tmp_path / "vans.duckdb"
    api.scan([folder], db, rules=rules)
    assert values(db, "ladder_rungs") == [7]
    (folder / "drift23.txt").write_text(text(model="Drift 23"))
    api.scan([folder], db, rules=rules)
    open_questions = api.gaps(db)
    assert open_questions.loc[open_questions["field"] == "ladder_rungs", "van"].tolist() == ["Marrowfen Drift 23 2026"]


def test_a_file_that_takes_too_long_is_named_and_the_scan_ends(folder, tmp_path):
    rules = api.copy_rules(tmp_path / "rules")
    limits = rules / "limits.yaml"
    limits.write_text(limits.read_text().replace("seconds_per_file: 60", "seconds_per_file: 0.0001"))
    summary = api.scan([folder], tmp_path / "vans.duckdb", rules=rules)
    assert [record.status for record in summary.unreadable] == ["unreadable"]
    assert "longer than" in summary.unreadable[0].message
