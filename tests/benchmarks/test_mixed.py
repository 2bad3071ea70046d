"""Whole brochures for measuring speed: as many pages as real ones have, the same for the same seed."""

import pypdfium2 as pdfium
import pytest

from tests.benchmarks.mixed import mixed_brochures, what_it_holds


@pytest.fixture(scope="module")
def brochure(tmp_path_factory):
    return mixed_brochures(tmp_path_factory.mktemp("first"), 1, 5)[0]


def test_the_same_seed_draws_the_same_brochure(brochure, tmp_path):
    again = mixed_brochures(tmp_path / "again", 1, 5)[0]

    assert (again.name, again.read_bytes()) == (brochure.name, brochure.read_bytes())


def test_a_brochure_has_pictures_drawings_running_text_and_the_specification(brochure):
    held = what_it_holds([brochure])
    document = pdfium.PdfDocument(brochure)
    text = "".join(page.get_textpage().get_text_range() for page in document)

    assert 10 <= held["pages"] <= 16
    assert held["drawn objects a page"] > 100
    assert held["characters a page"] > 500
    assert any(letter.isdigit() for letter in text)
