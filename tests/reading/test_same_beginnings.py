"""Lists side by side whose lines begin with the same labels, each before its value, are of two vans."""

import pytest

from specscan.reading.read import read_document
from specscan.records.text import Kind
from tests.reading.drawn import Page

ROWS = (
    ("Length", "5.98 m", "6.94 m"),
    ("Width", "2.05 m", "2.05 m"),
    ("GVWR", "3,500 kg", "4,250 kg"),
    ("Fuel tank", "75 L", "90 L"),
    ("Solar", "200 W", "400 W"),
    ("Inverter", "1,500 W", "3,000 W"),
)


@pytest.mark.parametrize("east", [True, False])
def test_each_of_two_lists_stands_under_its_own_head(examiner, east):
    page = Page()
    page.text(50, 40, "Marrowfen Drift, model year 2026", size=18, bold=True)
    page.row(90, (50, "Drift 21"), (320, "Drift 24 TD"), size=11, bold=True)
    for place, (label, one, other) in enumerate(ROWS):
        page.row(112 + 14 * place, (50, f"{label} {one}"), (320, f"{label} {other}" if east else other))
    passages = read_document(page.data(), "vans.pdf", "pdf", examiner.hints).passages
    over = {p.text: p.sections[-1] for p in passages if p.kind is not Kind.HEADING and p.sections}
    told = [over.get(text) or over.get(f"GVWR {text}") for text in ("3,500 kg", "4,250 kg")]
    assert (told == ["Drift 21", "Drift 24 TD"]) is east
