"""What the tests of reading share."""

import pytest


@pytest.fixture
def facts_of_pdf(read_file, tmp_path):
    """Give a function that stores a drawn page, reads it and returns its counting facts."""

    def read(page):
        path = tmp_path / "brochure.pdf"
        path.write_bytes(page.data())
        return [fact for fact in read_file(path).found.facts if not fact.rejected]

    return read
