"""Pages of floorplans and photographs: what is drawn on them says nothing, what is written on them is still read."""

import pytest

from specscan.reading.read import read_document
from specscan.records.text import Kind
from tests.reading.drawn import HEIGHT, Page

CLAIM = "The fresh water tank is insulated and stands inside."


def floorplan(*names):
    """Give a page with a title, a claim, names level with drawn shapes, and hundreds of these."""
    page = Page()
    page.text(50, 40, "Marrowfen Drift 599", size=22, bold=True)
    page.text(50, 70, CLAIM)
    for number, name in enumerate(names):
        page.text(50 + 90 * number, 120 + 31 * number, name, size=7)
    page.canvas.setLineWidth(0.3)
    for number in range(400):
        x, y = 40 + number * 37 % 500, 100 + number * 53 % 700
        page.canvas.rect(x, HEIGHT - y, 9, 7, fill=0)
        page.canvas.line(x, HEIGHT - y, x + 30, HEIGHT - y)
        page.canvas.circle(x + 14, HEIGHT - y, 3, fill=1)
    return page


@pytest.fixture
def read_page(examiner):
    """Give a function that reads a page into a document of passages."""
    return lambda page: read_document(page.data(), "brochure.pdf", "pdf", examiner.hints)


def cells_of(document):
    """Give the cells of tables: row label, column head and text."""
    cells = [passage for passage in document.passages if passage.kind is Kind.CELL]
    return [(cell.row.text, cell.column.text, cell.text) for cell in cells]


def test_a_floorplan_keeps_its_title_and_the_claim_beside_it(read_page):
    document = read_page(floorplan("GALLEY", "REAR BED", "WARDROBE"))

    texts = [(passage.kind, passage.text) for passage in document.passages]
    assert (Kind.HEADING, "Marrowfen Drift 599") in texts
    assert (Kind.PROSE, CLAIM) in texts
    assert "Marrowfen Drift 599" in [title.text for title in document.titles]


def test_shapes_of_a_floorplan_are_no_marks_and_no_table(read_page):
    document = read_page(floorplan("GALLEY", "REAR BED", "WARDROBE"))

    written = " ".join([*(passage.text for passage in document.passages), *(title.text for title in document.titles)])
    assert not set(written) & set("●○■□")
    assert not cells_of(document)


def test_a_ruled_table_of_two_figures_is_read_with_its_rules(read_page):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 599", size=22, bold=True)
    for top, label, value in ((120, "Fresh water tank", "100 l"), (140, "Gray water tank", "80 l")):
        page.row(top, (60, label), (134, value))  # too close for a gap between columns: the rule parts them
        for x0, x1 in ((55, 132), (132, 200)):
            page.canvas.rect(x0, HEIGHT - top - 15, x1 - x0, 20, fill=0)

    assert cells_of(read_page(page)) == [("Fresh water tank", "", "100 l"), ("Gray water tank", "", "80 l")]


def test_a_page_of_drawn_marks_keeps_them(read_page):
    page = Page()
    page.text(50, 40, "Marrowfen Drift", size=22, bold=True)
    page.row(80, (60, "Equipment"), (300, "Drift 599"), (400, "Drift 684"), bold=True)
    for top, label, second in ((110, "Fresh water tank insulated", False), (130, "Heated floor", True)):
        page.text(60, top, label)
        mark(page, 320, top, True)
        mark(page, 420, top, second)
    for x, word, filled in ((60, "standard", True), (160, "optional", False)):
        mark(page, x, 200, filled)
        page.text(x + 8, 200, f"= {word}")

    assert cells_of(read_page(page)) == [
        ("Fresh water tank insulated", "Drift 599", "●"),
        ("Fresh water tank insulated", "Drift 684", "○"),
        ("Heated floor", "Drift 599", "●"),
        ("Heated floor", "Drift 684", "●"),
    ]


def mark(page, x, top, filled):
    """Draw a disc or a ring beside a line of text."""
    page.canvas.setFillColorRGB(0, 0, 0)
    page.canvas.circle(x, HEIGHT - top - 6, 3, fill=filled)


def test_ornaments_leave_running_text_in_columns_as_it_is(read_page):
    page = Page()
    sentence = "At the end of the road the kettle sings"
    for number in range(32):
        for x in (50, 310):
            page.text(x, 60 + 14 * number, sentence if number % 8 != 7 else "while it rains.")
    for number in range(300):  # a wave of little boxes and strokes through both columns
        x, y = 40 + number * 37 % 500, 60 + number * 53 % 460
        page.canvas.rect(x, HEIGHT - y, 5, 5, fill=1)
        page.canvas.line(x, HEIGHT - y, x + 90, HEIGHT - y)

    document = read_page(page)
    assert not cells_of(document)
    assert {passage.kind for passage in document.passages} == {Kind.PROSE}
    assert not set(" ".join(passage.text for passage in document.passages)) & set("●○■□")


def test_known_names_scattered_over_a_floorplan_are_no_list(read_page):
    document = read_page(floorplan("FRESH WATER TANK", "WATER HEATER", "REAR BED"))

    written = " ".join(passage.text for passage in document.passages)
    assert not set(written) & set("●○■□")
    assert not cells_of(document)


def test_a_list_with_drawn_bullets_keeps_them_among_ornaments(read_page):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 599", size=22, bold=True)
    for top, label in ((110, "Fresh water tank insulated"), (130, "Heated floor")):
        page.text(60, top, label)
        mark(page, 52, top, True)
    for number in range(300):
        page.canvas.line(40 + number, HEIGHT - 400, 70 + number, HEIGHT - 420 - number)

    bullets = [passage for passage in read_page(page).passages if passage.kind is Kind.BULLET]
    assert [(bullet.mark, bullet.text) for bullet in bullets] == [
        ("●", "Fresh water tank insulated"), ("●", "Heated floor"),
    ]  # fmt: skip


def test_running_text_that_names_known_things_is_no_list(read_page):
    page = Page()
    lines = ("Insulated fresh water tank and", "heated floor keep the cold out of", "the water heater and of the bed.")
    for number, line in enumerate(4 * lines):
        page.text(60, 60 + 12 * number, line)
    for number in range(300):  # discs among the lines, which would pass for bullets
        page.canvas.circle(52 + number % 3, HEIGHT - 66 - number % 140, 2, fill=1)

    assert {passage.kind for passage in read_page(page).passages} == {Kind.PROSE}
