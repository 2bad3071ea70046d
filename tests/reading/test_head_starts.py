"""Cells between which hardly a space is left are parted where the next head begins."""

import pytest
from reportlab.pdfbase.pdfmetrics import stringWidth

from tests.reading.drawn import titled

HEADS = ("Model", "Sleeps", "Water", "House", "Cells", "Solar (W)")
LEFT = (40, 120, 170, 250, 0, 420)  # the cells begin right behind the batteries
ROWS = [("Curlew 54", "2", "90", "100 Ah × 12.8", "lithium", "160"),
        ("Curlew 60", "2", "95", "200 Ah × 12.8", "lithium", "320"),
        ("Curlew 64 Plus", "4", "120", "300 Ah × 12.8", "AGM", "400")]  # fmt: skip
SPACES = (4.2, 4.4, 4.7)  # points, at a size of 8


def page_with_cells_from(x):
    page = titled()
    left = [x if place == 4 else edge for place, edge in enumerate(LEFT)]
    page.row(100, *zip(left, HEADS, strict=True), size=8, bold=True)
    page.row(110, (left[2], "(L)"), (left[3], "battery"), size=8, bold=True)
    for number, cells in enumerate(ROWS):
        for place, (edge, text) in enumerate(zip(left, cells, strict=True)):
            page.text(edge, 132 + 28 * number, text, size=8, bold=not place)
        page.text(left[3], 142 + 28 * number, "volts", size=8)
    return page


@pytest.mark.parametrize("space", SPACES)
def test_cells_that_run_up_to_the_next_column_are_parted_where_its_head_begins(space, facts_of_pdf):
    end = LEFT[3] + max(stringWidth(row[3], "Helvetica", 8) for row in ROWS)
    facts = facts_of_pdf(page_with_cells_from(end + space))
    found = {(fact.model, fact.field, fact.value) for fact in facts}
    for van, (ah, chemistry, solar) in {
        "Curlew 54": (100, "lithium", 160),
        "Curlew 60": (200, "lithium", 320),
        "Curlew 64 Plus": (300, "agm", 400),
    }.items():
        expected = {"battery_ah": ah, "battery_chemistry": chemistry, "solar_w": solar}
        assert {(van, field, value) for field, value in expected.items()} <= found
