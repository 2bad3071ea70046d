"""Files that cannot be read are refused by name, never passed over."""

import io

import pytest
from reportlab.pdfgen.canvas import Canvas

from specscan.reading.read import read_document
from specscan.records.errors import DocumentError


def blank_pdf():
    buffer = io.BytesIO()
    canvas = Canvas(buffer)
    canvas.showPage()
    canvas.save()
    return buffer.getvalue()


@pytest.mark.parametrize(
    ("name", "kind", "content"),
    [
        ("empty.pdf", "pdf", b""),
        ("damaged.pdf", "pdf", b"%PDF-1.4 and then nothing of use"),
        ("picture.png", None, b"\x89PNG"),
        ("blank.pdf", "pdf", blank_pdf()),
        ("blank.txt", "text", b"  \n\n "),
        ("blank.html", "html", b"<html><body> </body></html>"),
    ],
)
def test_unreadable_file_is_named(examiner, name, kind, content):
    with pytest.raises(DocumentError, match=name):
        read_document(content, name, kind, examiner.hints)


@pytest.mark.parametrize(
    ("name", "kind", "content"),
    [
        ("line.txt", "text", b"x" * 10_000_000),
        ("figures.txt", "text", b"1" * 1_000_000 + b" L\n" + b"1," * 500_000),
        ("brackets.txt", "text", b"(" * 200_000 + b" L\n"),
        ("pipes.txt", "text", b"|".join([b"a"] * 200_000)),
        ("spans.html", "html", b"<table><tr><td colspan=1000000000 rowspan=99999999>Fresh</td><td>1</td></tr></table>"),
    ],
)
def test_endless_content_is_cut_and_states_nothing(examiner, name, kind, content):
    result = examiner.examine(name, content, kind)
    assert result.record.status in ("no_van_found", "unreadable")
    assert result.record.message
    assert result.found.facts == ()


def test_a_text_entity_of_a_web_page_reaches_no_file(examiner, tmp_path):
    secret = tmp_path / "secret"
    secret.write_text("Fresh water tank: 77 L")
    page = f'<!DOCTYPE a [<!ENTITY x SYSTEM "file://{secret}">]><p>Marrowfen Drift 21 2026 &x; </p><p>Sleeps: 2</p>'
    document = read_document(page.encode(), "page.html", "html", examiner.hints)
    assert not any("77" in passage.text for passage in document.passages)
