"""A legend set across the page over two columns of marked items is read whole."""

from specscan.reading.read import read_document
from tests.reading.drawn import Page

LEFT = ["¤ Rear-wheel drive", "¤ Wheelbase 159 in", "¤ GVWR 9,350 lb", "¤ Sleeps 2", "¢ Electrically heated floor"]
RIGHT = ["¤ 24 gal gray tank", "¦ Insulated gray tank", "¤ 200 W of solar", "¢ 3,000 W inverter", "¦ Thermal break"]


def draw_columns(page, top):
    """Draw two columns of marked items side by side from a place on."""
    for place, (left, right) in enumerate(zip(LEFT, RIGHT, strict=True)):
        page.text(50, top + 14 * place, left)
        page.text(310, top + 14 * place, right)


def test_a_legend_over_two_columns_is_not_parted_by_them(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 21", size=24, bold=True)
    page.text(50, 66, "Field | Frost", size=14)
    page.text(50, 96, "Equipment", size=15, bold=True)
    page.text(50, 120, "¤ standard, Field and Frost")
    page.text(230, 120, "¢ option, Field and Frost")
    page.text(390, 120, "¦ standard on Frost,")
    page.text(50, 131, "not available on Field")
    draw_columns(page, 160)
    page.text(50, 300, "Marrowfen Ltd, Hythe. Field and Frost are the two trims of the Drift 21. Model year 2026.")
    told = {(f.field, f.model, f.availability) for f in facts_of_pdf(page) if f.value is True}
    assert told == {
        ("heated_floor", "Drift 21 Field", "optional"),
        ("heated_floor", "Drift 21 Frost", "optional"),
        ("gray_tank_insulated", "Drift 21 Field", "not_available"),
        ("gray_tank_insulated", "Drift 21 Frost", "standard"),
        ("thermal_break", "Drift 21 Field", "not_available"),
        ("thermal_break", "Drift 21 Frost", "standard"),
    }


def test_notes_that_run_on_below_the_columns_are_not_parted_by_them(examiner):
    page = Page()
    page.text(50, 96, "Equipment", size=15, bold=True)
    page.text(50, 120, "¤ standard")
    page.text(230, 120, "¢ option, at extra cost")
    page.text(390, 120, "¦ not available")
    draw_columns(page, 150)
    page.text(50, 240, "1 Without the vent; with it 10 ft.")
    page.text(240, 240, "2 Held by straps.")
    page.text(340, 240, "3 Burns 0.13 gal/h at full output")
    page.text(50, 251, "and draws 45 W while running.")
    read = read_document(page.data(), "drift.pdf", "pdf", examiner.hints)
    assert any("at full output and draws 45 W while running" in passage.text for passage in read.passages)
