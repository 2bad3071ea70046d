"""Titles between rows as large as the heading above them are its sisters, and govern themselves not."""

from specscan.reading.read import read_document
from tests.reading.drawn import Page

ROWS = (("Base", "Kelmar Drover {}"), ("Overall length", "{} cm"), ("Sleeps", "{}"), ("Fresh water", "{} litres"))


def test_a_title_between_rows_stands_under_the_headings_of_its_sister(examiner):
    page = Page()
    page.text(40, 40, "marrowfen", size=30)
    page.text(40, 80, "two vans, model year 2026. brook is the little one, heath is the great one.", size=10)
    top = 110
    for name, values in (("brook", ("33", "541", "2", "70")), ("heath", ("35", "599", "4", "100"))):
        page.text(40, top, name, size=16)
        for number, ((label, said), value) in enumerate(zip(ROWS, values, strict=True)):
            page.row(top + 24 + 13 * number, (40, label), (200, said.format(value)))
        top += 24 + 13 * len(ROWS) + 10
    document = read_document(page.data(), "two.pdf", "pdf", examiner.hints)
    assert {p.text: p.sections for p in document.passages if p.text in ("brook", "heath")} == {
        "brook": ("marrowfen",),
        "heath": ("marrowfen",),
    }
    told = {p.text: p.sections for p in document.passages if p.text in ("541 cm", "599 cm")}
    assert told == {"541 cm": ("marrowfen", "brook"), "599 cm": ("marrowfen", "heath")}
