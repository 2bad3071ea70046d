"""Bold labels, each before its value on the same line and with no colon, are read as labels and values."""

import pytest
from reportlab.pdfbase.pdfmetrics import stringWidth

from tests.reading.drawn import Page

PAIRS = [
    ("Model", "Larch 20K (twin beds)"),
    ("Model year", "2027"),
    ("Built on", "Tolvar Freightbox 350"),
    ("Overall length", "5.99 m"),
    ("Sleeping places", "3"),
    ("Fresh water tank", "110 l, indoors, under the bench that"),
    ("", "stands behind the driver"),
    ("Grey water tank", "85 l"),
    ("Heater", "diesel, forced air"),
]


@pytest.fixture
def page():
    page = Page()
    page.text(40, 40, "Your van at a glance", size=14, bold=True)
    for line, (label, value) in enumerate(PAIRS):
        top = 70 + 15 * line - (4 if not label else 0)
        page.text(40, top, label, size=10, bold=True)
        page.text(40 + (stringWidth(f"{label} ", "Helvetica-Bold", 10) + 1 if label else 0), top, value, size=10)
    page.text(40, 260, "Bruneck Ltd., 5 Weir Street, Tollan", size=8)
    return page


def test_the_label_of_the_model_names_the_van_and_values_may_go_on(facts_of_pdf, page):
    found = {fact.field: fact.value for fact in facts_of_pdf(page)}
    assert (found["maker"], found["model"], found["model_year"]) == ("Bruneck", "Larch 20K", 2027)
    assert (found["length_mm"], found["sleeps"], found["gray_tank_l"]) == (5990, 3, 85)
    assert found["fresh_tank_location"] == "interior"
    assert found["heater_fuel"] == "diesel"
