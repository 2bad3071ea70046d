"""A vertical rule between the columns of two vans that is left out where both have one value."""

import pytest

from specscan.reading.read import read_document
from tests.reading.drawn import HEIGHT, Page

ROWS = [
    ("", "Drift 19", "Drift 21"),
    ("Overall length", "5,410 mm", "6,360 mm"),
    ("GVWR", "3,500 kg", "4,250 kg"),
    ("Drive", "Front", "Rear"),
    ("Shore inlet", "16 A", ""),
    ("Inverter", "1,000 W", "2,000 W"),
    ("Solar", "", "200 W"),
    ("Cab mats", "Option", ""),
    ("Fuel tank", "80 L", "90 L"),
]
JOINED, LEFT_OPEN = "Shore inlet", "Cab mats"


@pytest.fixture(scope="module")
def cells(examiner):
    page = Page()
    for place, (label, *values) in enumerate(ROWS):
        top = 100 + 16 * place
        page.row(top, (60, label), *[(x, value) for x, value in zip((220, 380), values, strict=True) if value])
        if label != JOINED:
            page.canvas.line(360, HEIGHT - top + 3, 360, HEIGHT - top - 13)
    page.rule(50, 113, 500)
    found = read_document(page.data(), "sheet.pdf", "pdf", examiner.hints).passages
    return {(p.row.text, p.column.text): p.text for p in found if p.column is not None and p.row is not None}


def test_a_value_goes_on_over_the_rule_that_is_left_out_beside_it(cells):
    assert cells[JOINED, "Drift 19"] == cells[JOINED, "Drift 21"] == "16 A"


def test_beside_a_rule_it_is_that_of_its_column_alone(cells):
    assert cells[LEFT_OPEN, "Drift 19"] == "Option"
    assert (LEFT_OPEN, "Drift 21") not in cells
    assert ("Solar", "Drift 19") not in cells


def test_banded_rows_without_walls_are_rows_of_the_table_as_those_between_them(facts_of_pdf):
    page = Page()
    page.text(40, 30, "Marrowfen Drift 2026", size=18, bold=True)
    page.text(40, 60, "S standard   O extra-cost option   X not available")
    rows = [("", "Drift 19", "Drift 21"), ("Length", "5.41 m", "5.99 m"), ("Fresh water", "70 L", "90 L"),
            ("Sleeps", "2", "3"), ("Solar panel, 200 W", "X", "S"), ("GVWR", "3500 kg", "4250 kg"),
            ("Heated floor", "O", "S"), ("Wheelbase", "3.45 m", "4.04 m"), ("Shell", "", "")]  # fmt: skip
    for number, row in enumerate(rows):
        top = 90 + 14 * number
        page.rule(40, top, 520)
        page.row(
            top + 3, *((x + 4, text) for x, text in zip((40, 220, 370), row, strict=True) if text), bold=not number
        )
        for x in (40, 220, 370, 520) if number % 2 else (40, 520):
            page.canvas.line(x, HEIGHT - top, x, HEIGHT - top - 14)
    page.rule(40, 90 + 14 * len(rows), 520)
    facts = facts_of_pdf(page)
    assert {(f.model, f.value) for f in facts if f.field == "fresh_tank_l"} == {("Drift 19", 70), ("Drift 21", 90)}
    assert {(f.model, f.availability) for f in facts if f.field == "heated_floor"} == {
        ("Drift 19", "optional"),
        ("Drift 21", "standard"),
    }
