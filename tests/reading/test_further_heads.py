"""A further table whose heads stand right below its title is not the last rows of the table above."""

from specscan.reading.read import read_document
from tests.reading.drawn import Page

COMMON = (("Overall length", "6.36 m"), ("Wheelbase", "4.04 m"), ("Fresh water", "95 l"))
OWN = (("Gray water", "70 l", "85 l"), ("Solar", "180 W", "360 W"), ("Heat output", "2.0 kW", "4.5 kW"))


def sheet():
    """Draw what both trims have in one column, and close below it, under its title, what parts them in two."""
    page = Page()
    page.text(50, 40, "In both trims", size=12, bold=True)
    top = 56
    for label, value in COMMON:
        page.row(top, (52, label), (240, value))
        top += 13
    page.text(50, top + 4, "In one of them", size=12, bold=True)
    page.row(top + 18, (210, "Marrow"), (370, "Fenland"), bold=True)
    for place, (label, first, second) in enumerate(OWN):
        page.row(top + 31 + 13 * place, (52, label), (210, first), (370, second))
    for place in range(9):
        page.rule(50, 520, 67 + 13 * place)
    return page


def test_heads_below_a_title_head_a_table_of_their_own(examiner):
    document = read_document(sheet().data(), "sheet.pdf", "pdf", examiner.hints)
    cells = {
        (passage.row.text, passage.column.text): passage.text
        for passage in document.passages
        if passage.row is not None and passage.column is not None
    }
    assert cells["Solar", "Marrow"] == "180 W"
    assert cells["Solar", "Fenland"] == "360 W"
    assert cells["Heat output", "Fenland"] == "4.5 kW"
    assert cells["Wheelbase", ""] == "4.04 m"
