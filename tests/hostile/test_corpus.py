"""Five hundred broken and hostile files among good ones: each is named, none waited for, every good one stored."""

from pathlib import Path

import pytest

from specscan import api
from tests.hostile import files, raw_pdf
from tests.scanning import made

LINES = files.lines_of(1)


def test_every_file_has_a_status_and_what_is_not_read_a_message(scanned):
    documents, names = scanned["documents"], scanned["names"]
    assert len(names) == files.ALL and set(names) <= set(documents)
    assert {status for status, _ in documents.values()} <= {"read", "partly_read", "unreadable", "no_van_found"}
    assert [name for name, (status, message) in documents.items() if status == "unreadable" and not message] == []


def test_none_is_waited_for_and_none_ends_a_reading_process(scanned):
    given_up = ("longer than", "died on it", "more memory", "the reader failed", "that is none")
    said = {name: message for name, (_, message) in scanned["documents"].items()}
    assert {name: message for name, message in said.items() if any(words in message for words in given_up)} == {}


def test_every_good_file_among_them_is_stored(scanned):
    good = files.good_files()
    assert {name: scanned["documents"][name] for name in good} == dict.fromkeys(good, ["read", ""])
    sql = "SELECT model, fresh_tank_l FROM vans WHERE regexp_matches(model, '^Marrowfen Drift 1[01][0-9]$')"
    found = dict(api.query(sql, scanned["db"]).values.tolist())
    assert found == {f"Marrowfen Drift {number}": 100.0 + number for number in range(100, 100 + files.GOOD)}


def test_no_module_in_the_folder_that_the_user_stands_in_is_run(scanned):
    assert Path(scanned["folder"], "json.py").is_file() and not Path(scanned["folder"], "ran").exists()


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("many_pages.pdf", "only the first 400 of 100000 pages were read"),
        ("gigantic_white.pdf", "more than PDF allows"),
        ("deep.html", "nested too deeply"),
        ("wide_cells.html", "cells beyond 200 columns"),
        ("long_line.txt", "were cut"),
        ("nulls.txt", "binary data"),
        ("plain-cut1.pdf", "cannot open"),
        ("zz_removed.txt", "cannot be opened"),
        ("zz_replaced.txt", "no ordinary file"),
    ],
)
def test_what_was_given_up_is_said(scanned, name, said):
    assert said in scanned["documents"][name][1]


@pytest.mark.parametrize("name", ["unmarked.txt", "previous_is_itself.pdf", "saves.pdf", "form_in_itself.pdf"])
def test_what_is_only_odd_is_read(scanned, name):
    sql = f"SELECT value_num FROM facts JOIN documents USING (doc_id) WHERE name = '{name}' AND field = 'fresh_tank_l'"
    assert api.query(sql, scanned["db"])["value_num"].tolist() == [107.0]


@pytest.mark.parametrize("name", ["wide.txt", "charset.html"])
def test_any_encoding_is_text(scanned, name):
    assert scanned["documents"][name][0] == "no_van_found"


def test_entities_of_a_web_page_are_not_fetched(examiner, tmp_path):
    (tmp_path / "secret.txt").write_text("Hot water tank: 987 L")
    page = f'<!DOCTYPE x [<!ENTITY b SYSTEM "{(tmp_path / "secret.txt").as_uri()}">]>{files.html_of(8)}'
    page = page.replace("</table>", f'</table><p>&b;</p><iframe src="{tmp_path}/secret.txt"></iframe>')
    result = examiner.examine("a.html", page.encode(), "html")
    assert {fact.num for fact in result.found.facts if fact.field.endswith("_tank_l")} == {108.0, 70.0}


SCRIPT = b"/OpenAction<</S/JavaScript/JS(app.alert\\(1\\))>>"
ESCAPED = SCRIPT.replace(b"JavaScript", b"J#61v#61Script")
LAUNCH = b"/Annots[<</Type/Annot/Subtype/Link/Rect[0 0 9 9]/A<</S/Launch/F(calc)>>>>]"
FILES = b"/Names<</EmbeddedFiles<</Names[(a)<</Type/Filespec/F(a)/EF<</F 6 0 R>>>>]>>>>"


@pytest.mark.parametrize("form", [raw_pdf.file_of, raw_pdf.with_object_stream])
@pytest.mark.parametrize(
    ("catalog", "page", "said"),
    [
        (SCRIPT, b"", "holds JavaScript: not run, not opened"),
        (ESCAPED, b"", "holds JavaScript: not run, not opened"),
        (b"", LAUNCH, "holds launch actions: not run, not opened"),
        (FILES, b"", "holds embedded files: not run, not opened"),
        (FILES + SCRIPT, LAUNCH, "holds JavaScript, embedded files, launch actions: not run, not opened"),
        (b"", b"", ""),
    ],
)
def test_what_a_pdf_would_do_is_named_and_its_text_read(examiner, form, catalog, page, said):
    bodies = raw_pdf.bodies_of(LINES, catalog=catalog, page=page)
    if FILES in catalog:
        bodies[6] = raw_pdf.stream(b"MZ", b"/Type/EmbeddedFile")
    result = examiner.examine("a.pdf", form(bodies), "pdf")
    assert (result.record.status, result.record.message) == ("read", said)
    assert any(fact.field == "fresh_tank_l" and fact.num == 101 for fact in result.found.facts)


def test_encryption_with_an_empty_password_is_no_hindrance(examiner):
    from reportlab.lib.pdfencrypt import StandardEncryption

    locked = StandardEncryption("", ownerPassword="swordfish", canPrint=0)
    result = examiner.examine("a.pdf", made.pdf(password=locked), "pdf")
    assert result.record.status == "read"
    assert any(fact.field == "fresh_tank_l" for fact in result.found.facts)
