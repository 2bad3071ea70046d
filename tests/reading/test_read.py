"""Files that cannot be read are refused by name, never passed over."""

import pytest

from specscan.reading.read import read_document
from specscan.records.errors import DocumentError


@pytest.mark.parametrize(
    ("name", "kind", "content"),
    [
        ("empty.pdf", "pdf", b""),
        ("damaged.pdf", "pdf", b"%PDF-1.4 and then nothing of use"),
        ("picture.png", None, b"\x89PNG"),
        ("blank.txt", "text", b"  \n\n "),
        ("blank.html", "html", b"<html><body> </body></html>"),
    ],
)
def test_unreadable_file_is_named(examiner, name, kind, content):
    with pytest.raises(DocumentError, match=name):
        read_document(content, name, kind, examiner.hints)
