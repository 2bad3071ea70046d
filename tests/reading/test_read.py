"""Files that cannot be read are refused by name, never passed over."""

import pytest

from specscan.records.errors import DocumentError, NotFoundError


@pytest.mark.parametrize(
    ("name", "content"),
    [("empty.pdf", b""), ("damaged.pdf", b"%PDF-1.4 and then nothing of use"), ("picture.png", b"\x89PNG")],
)
def test_unreadable_file_is_named(scanner, tmp_path, name, content):
    (tmp_path / name).write_bytes(content)
    with pytest.raises(DocumentError, match=name):
        scanner.read(tmp_path / name)


def test_missing_file_is_named(scanner, tmp_path):
    with pytest.raises(NotFoundError, match=r"gone\.pdf"):
        scanner.read(tmp_path / "gone.pdf")
