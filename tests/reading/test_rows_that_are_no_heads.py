"""On a page that goes on with a table without its heads, the first row is one of values, whatever it says."""

import pytest

from tests.reading.drawn import Page

HEADS = ("Drift 19 P", "Drift 21 LX", "Drift 24 TB")
PLACES = (200, 300, 400)
SPANNING = [("Propane capacity", (("none on board", 300),)), ("Solar", ("150 W", "200 W", "300 W"))]
REPEATED = [
    ("Heat source", ("Diesel furnace", "Diesel heater", "Diesel heater")),
    ("Solar", ("150 W", "200 W", "300 W")),
]


@pytest.mark.parametrize("going_on", [SPANNING, REPEATED], ids=["spanning", "repeated"])
def test_the_first_row_of_the_next_page_is_no_row_of_heads(facts_of_pdf, going_on):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=20, bold=True)
    page.row(90, *zip(PLACES, HEADS, strict=True), bold=True)
    for number, (label, *values) in enumerate(
        [
            ("Overall length", "5.99 m", "6.36 m", "6.80 m"),
            ("Sleeps", "2", "2", "4"),
            ("Wheelbase", "3.8 m", "4.0 m", "4.0 m"),
        ]
    ):
        page.row(108 + 15 * number, (50, label), *zip(PLACES, values, strict=True))
    page.canvas.showPage()
    rows = [*going_on, ("Inverter", ("1000 W", "1500 W", "2000 W")), ("Shore power", ("30 A", "30 A", "50 A"))]
    rows += [("Fresh water", ("90 l", "100 l", "120 l")), ("Gray water", ("70 l", "80 l", "90 l"))]
    for number, (label, values) in enumerate(rows):
        placed = [(x, text) for text, x in values] if isinstance(values[0], tuple) else zip(PLACES, values, strict=True)
        page.row(60 + 15 * number, (50, label), *placed)
    solar = {(f.model, f.value) for f in facts_of_pdf(page) if f.field == "solar_w"}
    assert solar == {("Drift 19 P", 150), ("Drift 21 LX", 200), ("Drift 24 TB", 300)}


def test_the_first_row_below_the_vans_is_no_row_of_heads_though_every_other_row_is_shaded(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=20, bold=True)
    rows = [("", *HEADS), ("Driven wheels", "FWD", "FWD", "FWD"), ("Sleeps", "2", "2", "4"),
            ("Overall length", "5.99 m", "6.36 m", "6.80 m"), ("Fresh water", "90 l", "100 l", "120 l"),
            ("Wheelbase", "3.8 m", "4.0 m", "4.0 m"), ("Gray water", "70 l", "80 l", "90 l")]  # fmt: skip
    for number, row in enumerate(rows):
        top = 90 + 16 * number
        shade = (0.8, 0.85, 0.9) if not number else (0.95, 0.95, 0.95)
        if number % 2 or not number:
            page.box(46, top - 3, 500, top + 13, shade)
        page.row(top, *zip((50, *PLACES), row, strict=True), bold=not number)
    drives = {(f.model, f.value) for f in facts_of_pdf(page) if f.field == "drive"}
    assert drives == {(van, "front") for van in HEADS}
