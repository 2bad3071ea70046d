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
