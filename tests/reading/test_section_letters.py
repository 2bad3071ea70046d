"""Letters that count sections are no part of their headings; initials and codes stay."""

import pytest

from specscan.reading.read import read_document
from specscan.records.text import Kind

DATA = "Overall length: {length} m\n\nFresh water tank: 80 L\n\nGVWR: 3500 kg\n\n"


def headings(examiner, *texts):
    body = "".join(f"## {text}\n\n{DATA.format(length=5.4 + place)}" for place, text in enumerate(texts))
    document = read_document(f"# Marrowfen\n\n{body}".encode(), "data.md", "text", examiner.hints)
    assert {passage.sections[-1] for passage in document.passages if passage.kind is not Kind.HEADING} == set(
        passage.text for passage in document.passages[1:] if passage.kind is Kind.HEADING
    )
    return [passage.text for passage in document.passages[1:] if passage.kind is Kind.HEADING]


@pytest.mark.parametrize("marks", [("A. ", "B. "), ("A) ", "B) "), ("(A) ", "(B) "), ("I. ", "II. ")])
def test_letters_that_go_on_from_one_another_are_no_part_of_headings(examiner, marks):
    names = ("Drift 540", "Drift 600 Deep Snow")
    assert headings(examiner, *map("".join, zip(marks, names, strict=True))) == list(names)


@pytest.mark.parametrize("texts", [("A. Fenner", "K. Oldcastle"), ("B. Drift 540", "C. Drift 600"), ("A. Fenner",)])
def test_letters_that_do_not_are(examiner, texts):
    assert headings(examiner, *texts) == list(texts)
