"""Titles of sections with their number set apart are headings, not the rows of a table."""

from specscan.reading.read import read_document
from specscan.records.text import Kind
from tests.reading.drawn import Page

BODY = (
    "The fresh tank stands under the bench, inside the van, and the gray tank hangs below the floor behind the axle.",
    "The furnace burns propane and blows warm air through four outlets; its thermostat is beside the sliding door.",
)


def manual():
    """Draw a page of a manual: titles whose numbers stand apart, and paragraphs below them."""
    page = Page()
    page.text(50, 40, "Marrowfen Drift 21", size=20, bold=True)
    page.text(50, 70, "Model year 2026. Overall length 6.36 m. Wheelbase 4.04 m. Sleeps 2. GVWR 3500 kg.")
    page.row(110, (50, "2"), (80, "Water system"), size=14, bold=True)
    page.row(140, (50, "2.1"), (80, "Tank heaters (if equipped)"), size=12, bold=True)
    page.text(50, 160, "The pads on the gray tank draw 5.8 A. Look for a switch on the panel by the door of the van.")
    page.row(190, (50, "2.2"), (80, "Where things are"), size=12, bold=True)
    page.text(50, 210, BODY[0])
    page.row(240, (50, "3"), (80, "Heat and power"), size=14, bold=True)
    page.row(270, (50, "3.1"), (80, "Furnace"), size=12, bold=True)
    page.text(50, 290, BODY[1])
    return page


def test_numbered_titles_are_headings_of_what_stands_below_them(examiner):
    document = read_document(manual().data(), "manual.pdf", "pdf", examiner.hints)
    headings = [passage.text for passage in document.passages if passage.kind is Kind.HEADING]
    assert "2.2 Where things are" in headings
    assert "3 Heat and power" in headings
    assert "3.1 Furnace" in headings
    tank = next(passage for passage in document.passages if passage.text.startswith("The fresh tank"))
    assert tank.sections[-2:] == ("2 Water system", "2.2 Where things are")


def test_a_raised_ring_behind_a_figure_is_a_degree_sign_in_stretched_lines_too(examiner):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 21", size=20, bold=True)
    page.text(50, 100, "The van is built for camping down to 5", size=10)
    right = 50 + page.canvas.stringWidth("The van is built for camping down to 5", "Helvetica", 10)
    page.text(right + 4.6, 98.4, "o", size=6)
    page.text(right + 9.5, 100, "F with water in the tanks.", size=10)
    document = read_document(page.data(), "manual.pdf", "pdf", examiner.hints)
    assert any("down to 5° F with water" in passage.text for passage in document.passages)


def test_a_heading_a_hair_smaller_ends_the_one_above_it(examiner):
    page = Page()
    page.text(40, 40, "Options at extra cost", size=12, bold=True)
    page.text(40, 60, "Awning, bike rack and roof bars can be ordered with every van that we make.", size=9)
    page.text(40, 100, "Data sheet", size=11.9, bold=True)
    page.text(40, 120, "The van is 5.9 m long and weighs no more than 3,500 kg with all that is in it.", size=9)
    document = read_document(page.data(), "sheet.pdf", "pdf", examiner.hints)
    assert [one.sections for one in document.passages if "weighs" in one.text] == [("Data sheet",)]
