"""A line too long for its cell runs out over the edge, as a spreadsheet prints it beside cells that are empty."""

from tests.reading.drawn import Page

ROWS = [("", "M", "L"), ("Inverter 1800 W", "S", "X"), ("Heated floor", "X", "S"), ("Bypass kit", "O", "S")]


def test_what_runs_out_over_the_edge_of_its_cell_still_belongs_to_it(facts_of_pdf):
    page = Page()
    page.text(50, 30, "Marrowfen Drift 2026", size=20, bold=True)
    page.text(50, 60, "Drift M and Drift L")
    page.frame(48, 98, 254, 112)
    page.text(50, 100, "Fittings: S series O order at extra cost X cannot be ordered")
    for number, row in enumerate(ROWS):
        for x0, x1, text in zip((48, 254, 354), (254, 354, 454), row, strict=True):
            page.frame(x0, 112 + 14 * number, x1, 126 + 14 * number)
            page.text(x0 + 2, 114 + 14 * number, text)
    found = {(f.model, f.field): f.availability for f in facts_of_pdf(page)}
    assert found[("Drift L", "inverter_w")] == found[("Drift M", "heated_floor")] == "not_available"
