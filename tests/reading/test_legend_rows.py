"""A legend set in columns below a table explains the signs of the table and is no row of it."""

from specscan.reading.read import read_document
from tests.reading.drawn import Page

ROWS = [
    ("Overall length", "5.41 m", "5.99 m", "6.36 m"),
    ("GVWR", "3500 kg", "3500 kg", "3880 kg"),
    ("Wheelbase", "3.45 m", "4.04 m", "4.04 m"),
    ("Heated floor", "–", "¢", "¤"),
    ("Winterizing bypass", "¤", "¤", "¤"),
]
LEGEND = ("¤ standard", "¢ optional", "– not offered")


def page_with(rows, legend):
    """Draw a table without rules and its legend in the same columns."""
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=20, bold=True)
    page.row(90, (220, "Drift 19"), (330, "Drift 21"), (440, "Drift 24"), bold=True)
    for place, row in enumerate(rows):
        page.row(110 + 16 * place, *zip((50, 220, 330, 440), row, strict=True))
    page.row(110 + 16 * len(rows), *zip((50, 220, 330), legend, strict=True))
    return page


def test_a_legend_in_the_columns_of_a_table_is_no_row_of_it(facts_of_pdf):
    facts = facts_of_pdf(page_with(ROWS, LEGEND))
    floors = {fact.model: fact.availability for fact in facts if fact.field == "heated_floor"}
    assert floors == {"Drift 19": "not_available", "Drift 21": "optional", "Drift 24": "standard"}
    bypass = {fact.model: fact.availability for fact in facts if fact.field == "winterizing_bypass"}
    assert set(bypass.values()) == {"standard"}
    assert len(bypass) == 3


def test_a_legend_over_the_labels_leaves_the_names_below_it_their_columns(examiner):
    page = Page()
    page.row(74, (90, "S standard"), (150, "O option at extra cost"), (270, "– not offered on this trim"))
    page.row(90, (50, "Code"), (90, "Line"), (330, "Coast"), (400, "Ridge"), (480, "Price"), bold=True)
    lines = [
        ("A10", "Heat pad for gray tank, 12 V", "O", "S", "$340"),
        ("A11", "Heated floor", "–", "O", "$1,310"),
        ("A12", "Second 200 W solar panel, 400 W in total", "O", "O", "$780"),
        ("A13", "Winterizing bypass", "O", "S", "$195"),
    ]
    for place, line in enumerate(lines):
        page.row(108 + 16 * place, *zip((50, 90, 330, 400, 480), line, strict=True))
    read = read_document(page.data(), "order-guide.pdf", "pdf", examiner.hints)
    cells = {(p.row.text, p.column.text): p.text for p in read.passages if p.row and p.column}
    assert cells["Winterizing bypass", "Coast"] == "O"
    assert cells["Winterizing bypass", "Ridge"] == "S"


def test_a_legend_beside_the_title_over_a_table_heads_no_column(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=20, bold=True)
    page.row(74, (50, "Equipment"), (300, "¤ standard  ¢ at extra cost"), (470, "– not offered"))
    page.row(92, (320, "Drift 19"), (400, "Drift 21"), (480, "Drift 24"))
    for place, row in enumerate(ROWS):
        page.row(110 + 16 * place, *zip((50, 330, 410, 490), row, strict=True))
    facts = facts_of_pdf(page)
    floors = {fact.model: fact.availability for fact in facts if fact.field == "heated_floor"}
    assert floors == {"Drift 19": "not_available", "Drift 21": "optional", "Drift 24": "standard"}
