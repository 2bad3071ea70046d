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


@pytest.fixture
def found_in(read_file, tmp_path):
    """Give a function that reads a text: the values of each field by van, of the facts that count."""

    def read(text):
        path = tmp_path / "pasted.txt"
        path.write_text(text, encoding="utf-8")
        found = {}
        for fact in read_file(path).found.facts:
            if not fact.rejected:
                found.setdefault(fact.field, {}).setdefault(fact.model, set()).add(fact.value)
        return found

    return read
