"""A table below a larger title, whose columns stand otherwise than those of the table above it."""

from specscan.reading.read import read_document
from tests.reading.drawn import Page


def test_a_table_below_a_title_with_columns_of_its_own_is_another(examiner):
    page = Page()
    page.text(40, 40, "Marrowfen Drift 2026", size=18, bold=True)
    page.row(80, (140, "Drift 19"), (265, "Drift 24"), bold=True)
    rows = [("Fresh water", "26 gal", "34 gal"), ("Gray water", "22 gal", "30 gal"), ("Propane", "20 lb", "40 lb"),
            ("Shore cord", "30 A", "50 A")]  # fmt: skip
    for number, row in enumerate(rows):
        page.text(40, 96 + 16 * number, row[0], bold=True)
        page.row(96 + 16 * number, *zip((140, 265), row[1:], strict=True))
    page.text(40, 160, "Packages", size=13, bold=True)
    page.row(178, (300, "Drift 19"), (345, "Drift 24"), bold=True)
    for number, (name, *prices) in enumerate([("Campfire Package (awning lights, grill, rug)", "$1,180", "$1,190"),
                                              ("Reader Package (lamps, bookshelf)", "$640", "$820")]):  # fmt: skip
        page.text(40, 194 + 16 * number, name, bold=True)
        page.row(194 + 16 * number, *zip((300, 345), prices, strict=True))
    passages = read_document(page.data(), "drift.pdf", "pdf", examiner.hints).passages
    cells = {(p.row.text, p.column.text, p.text) for p in passages if p.row is not None and p.column is not None}
    assert ("Fresh water", "Drift 19", "26 gal") in cells
    assert ("Propane", "Drift 24", "40 lb") in cells
    assert ("Reader Package (lamps, bookshelf)", "Drift 24", "$820") in cells
