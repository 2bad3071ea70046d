"""Answers brought back: stored wholly or not at all, above what is printed, and never lost."""

import csv

import pytest

from specscan import api
from specscan.observing.kept import kept_path
from specscan.records.errors import NotFoundError, RuleError
from tests.observing.conftest import DRIFT21, DRIFT23
from tests.scanning.made import pdf


def band(db, van=DRIFT21, ruleset="deep_winter_wet"):
    sql = (
        f"SELECT points_low, points_high FROM scores WHERE van_id = '{van}' AND ruleset = '{ruleset}' "
        "AND equipment = 'standard' AND criterion = 'total'"
    )
    return api.query(sql, db).values.tolist()[0]


def width(db):
    low, high = band(db)
    return high - low


def test_an_answer_stands_above_what_is_printed_and_the_printed_value_stays_in_sight(db, sheet, settled):
    printed = settled(db, "fresh_tank_l")
    summary = api.observe(db, sheet({"field": "fresh_tank_l", "answer": "24 gal", "how": "measured"}))
    row = settled(db, "fresh_tank_l")
    assert (row["status"], row["value_num"]) == ("observed", pytest.approx(24 * 3.785411784))
    assert row["fact_ids"].tolist() == printed["fact_ids"].tolist() != []
    assert row["note"] == "measured by R. Quill, 2026-01-20: 24 gal; printed: 100 l (drift21.pdf, page 1)"
    assert settled(db, "fresh_tank_l", DRIFT23)["status"] == "stated"
    assert summary.kept == kept_path(db) and summary.kept.is_file()
    assert api.query(f"SELECT fresh_tank_l FROM vans WHERE van_id = '{DRIFT21}'", db)["fresh_tank_l"].tolist() == [
        pytest.approx(90.8, abs=0.1)
    ]


def test_answers_survive_a_new_scan_and_a_new_document(db, sheet, settled, tmp_path):
    api.observe(db, sheet({"field": "fresh_tank_l", "answer": "24 gal"}))
    folder = tmp_path / "more"
    folder.mkdir()
    (folder / "again.pdf").write_bytes(pdf(fresh=110))
    assert api.scan([folder], db, jobs=1).notes == []
    row = settled(db, "fresh_tank_l")
    assert row["status"] == "observed"
    assert "110 l (again.pdf, page 1)" in row["note"] and "100 l (drift21.pdf, page 1)" in row["note"]


def test_wrong_rows_are_named_with_line_and_reason_and_nothing_is_stored(db, sheet):
    path = sheet(
        {"field": "heated_floor", "answer": "yes"},
        {"field": "heated_floor", "answer": "perhaps"},
        {"van_id": "marrowfen-drift-22-2026", "field": "heated_floor", "answer": "yes"},
        {"field": "fresh_tank_l", "answer": "24 gal", "when": "last week", "how": "felt", "who": ""},
        {"field": "fresh_tank_l", "answer": "24 gal", "when": "2126-01-01", "evidence": "gone.jpg"},
        {"field": "fresh_tank_l", "answer": "24 gal", "doc": "drift21.pdf", "page": "9", "how": ""},
        {"field": "fresh_tank_l", "answer": "24 gal", "doc": "drift23.txt", "how": ""},
        {"field": "fresh_tank_l", "answer": "24 gal", "how": "read"},
    )
    before = band(db)
    with pytest.raises(RuleError) as caught:
        api.observe(db, path)
    said = "\n".join(caught.value.mistakes)
    for expected in (
        "answers.csv:3: 'perhaps' is neither yes nor no",
        "answers.csv:4: the dataset has no van 'marrowfen-drift-22-2026'; perhaps marrowfen-drift-2",
        "answers.csv:5: who saw it is missing",
        "answers.csv:5: when is 'last week'",
        "answers.csv:5: how is 'felt': use measured, seen, told",
        "answers.csv:6: 2126-01-01 lies in the future",
        "answers.csv:6: evidence: there is no file gone.jpg",
        "answers.csv:7: drift21.pdf has 1 pages, not page 9",
        f"answers.csv:8: drift23.txt does not speak of {DRIFT21}",
        "answers.csv:9: 'read' needs the document",
    ):
        assert expected in said
    assert "answers.csv:2:" not in said
    assert not kept_path(db).exists()
    assert band(db) == before


@pytest.mark.parametrize(
    ("content", "reason"),
    [
        (b"van_id,answer\nx,yes\n", ":1: the column field is missing"),
        (b"van_id,field,answer,answer\n", ":1: the column answer stands twice"),
        (b"van_id,field,answer\nx,y,z,w\n", ":2: the row has more cells"),
        (b"van_id,field,answer\nx,y,\xff\n", "not UTF-8"),
    ],
)
def test_a_file_that_is_no_sheet_is_named_with_the_reason(db, tmp_path, content, reason):
    path = tmp_path / "answers.csv"
    path.write_bytes(content)
    with pytest.raises(RuleError, match=reason):
        api.observe(db, path)
    with pytest.raises(NotFoundError, match="no such file"):
        api.observe(db, tmp_path / "nowhere.csv")


def test_rows_without_an_answer_are_passed_over_and_repeats_are_kept_once(db, sheet):
    path = sheet(
        {"field": "heated_floor", "answer": "yes"},
        {"field": "thermal_break", "answer": ""},
        {"field": "drive", "answer": "don't know"},
    )
    first = api.observe(db, path)
    assert (len(first.added), first.without_answer) == (1, 2)
    again = api.observe(db, path)
    assert (len(again.added), again.known_before) == (0, 1)
    assert kept_path(db).read_text(encoding="utf-8").count("heated_floor") == 1


def test_semicolons_and_the_apostrophe_of_spreadsheets_are_read(db, tmp_path, settled):
    path = tmp_path / "answers.csv"
    path.write_text(
        f"van_id;field;answer;unit;who;when;how\n{DRIFT21};rated_min_temp_c;'-20;°C;R. Quill;2026-01-20;told\n",
        encoding="utf-8-sig",
    )
    api.observe(db, path)
    row = settled(db, "rated_min_temp_c")
    assert row["value_num"] == pytest.approx(-20)
    assert row["note"].startswith("told by the maker to R. Quill, 2026-01-20: -20 °C")


def test_what_was_measured_goes_before_what_was_told_later_and_both_are_shown(db, sheet, settled):
    api.observe(
        db,
        sheet(
            {"field": "gray_tank_l", "answer": "60 l", "how": "measured", "when": "2026-01-10"},
            {"field": "gray_tank_l", "answer": "80 l", "how": "told", "when": "2026-01-20"},
        ),
    )
    row = settled(db, "gray_tank_l")
    assert row["value_num"] == 60.0
    assert "told by the maker to R. Quill, 2026-01-20: 80 l, which does not agree" in row["note"]


def test_an_answer_for_the_van_with_options_leaves_the_van_as_delivered_alone(db, sheet, settled):
    api.observe(db, sheet({"field": "heated_floor", "answer": "yes", "equipment": "optioned"}))
    assert settled(db, "heated_floor")["status"] == "missing"
    fitted = settled(db, "heated_floor", equipment="optioned")
    assert (fitted["status"], fitted["value_flag"]) == ("observed", True)


def test_the_kept_file_may_be_edited_and_a_slip_in_it_is_named(db, sheet, settled, tmp_path):
    api.observe(db, sheet({"field": "heated_floor", "answer": "yes"}))
    kept = kept_path(db)
    kept.write_text(kept.read_text().replace(",yes,", ",no,"))
    api.observe(db)
    assert settled(db, "heated_floor")["value_flag"] is False
    kept.write_text(kept.read_text().replace(",no,", ",perhaps,"))
    with pytest.raises(RuleError, match=r"vans\.observed\.csv:2: 'perhaps'"):
        api.scan([tmp_path], db, jobs=1)
    assert settled(db, "heated_floor")["value_flag"] is False


def test_an_answer_whose_van_is_gone_is_kept_and_named(db, sheet, scanned):
    kept = kept_path(db)
    api.observe(db, sheet({"field": "heated_floor", "answer": "yes"}))
    kept.write_text(kept.read_text().replace(DRIFT21, "other-van").replace("Marrowfen Drift 21 2026", "Other Van"))
    summary = api.observe(db)
    assert [note for note in summary.notes if "line 2" in note and "'other-van'" in note]
    assert "other-van" in kept.read_text()


def test_evidence_is_kept_by_its_path_from_the_kept_file(db, sheet, tmp_path):
    (tmp_path / "photos").mkdir()
    (tmp_path / "photos" / "floor.jpg").write_bytes(b"\xff\xd8")
    api.observe(db, sheet({"field": "heated_floor", "answer": "yes", "evidence": "photos/floor.jpg"}))
    (row,) = csv.DictReader(open(kept_path(db), encoding="utf-8"))
    assert row["evidence"] == "photos/floor.jpg"


def _printed(db, folder):
    """Print the walk-around sheet; give the lines of its CSV."""
    api.sheet(db, folder / "sheet.html", csv=folder / "sheet.csv", vans=[DRIFT21])
    with open(folder / "sheet.csv", encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def _filled(lines, folder, field, answer):
    """Fill in one line of a sheet's CSV; give the file."""
    told = {"answer": answer, "who": "R. Quill", "when": "2026-01-20", "how": "seen"}
    with open(folder / "filled.csv", "w", encoding="utf-8", newline="") as file:
        writer = csv.DictWriter(file, lines[0])
        writer.writeheader()
        writer.writerows(line | told if line["field"] == field else line for line in lines)
    return folder / "filled.csv"


@pytest.mark.parametrize("field", ["water_lines_location"])
def test_from_gaps_over_a_filled_sheet_the_band_narrows_by_what_was_promised(db, tmp_path, book, field):
    """Of all answers that a question can have, the one that settles most shrinks the band by the points at stake."""
    lines = _printed(db, tmp_path)
    gaps = api.gaps(db, van=DRIFT21).set_index("field")
    promised = gaps.loc[field, "points_at_stake"]
    before = width(db)
    shrunk = []
    for answer in book.choices_of(field) if book.fields[field].type == "choice" else ("yes", "no"):
        api.observe(db, _filled(lines, tmp_path, field, answer))
        shrunk.append(before - width(db))
        kept_path(db).unlink()
    assert max(shrunk) == pytest.approx(promised)
    assert promised > 1
    assert field not in set(api.gaps(db, van=DRIFT23)["field"]) or width(db) < before
