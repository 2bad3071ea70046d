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


def test_signs_set_apart_from_their_words_are_a_legend_and_no_cells(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=24, bold=True)
    page.row(90, (50, "F"), (66, "fitted"), (130, "C"), (146, "costs extra"), (240, "W"))
    page.row(90, (256, "part of the Winter Pack, which costs extra"), (460, "x"), (476, "cannot be had"))
    page.row(120, (220, "Drift 19"), (300, "Drift 21"), (380, "Drift 24"), bold=True)
    rows = [
        ("Waste tank lagged", "WFF"),
        ("Heated floor", "xCF"),
        ("Winter drain kit", "FFF"),
        ("Thermal break", "xxF"),
    ]
    for n, (label, marks) in enumerate(rows):
        page.row(136 + 14 * n, (50, label), *zip((234, 314, 394), marks, strict=True))
    page.row(200, (50, "Overall length"), (220, "5.41 m"), (300, "5.99 m"), (380, "6.36 m"))
    page.row(214, (50, "GVWR"), (220, "3,300 kg"), (300, "3,500 kg"), (380, "4,250 kg"))
    asked = ("heated_floor", "gray_tank_insulated")
    told = {(f.field, f.model, f.availability) for f in facts_of_pdf(page) if f.field in asked}
    assert told == {
        ("gray_tank_insulated", "Drift 19", "optional"),
        ("gray_tank_insulated", "Drift 21", "standard"),
        ("gray_tank_insulated", "Drift 24", "standard"),
        ("heated_floor", "Drift 19", "not_available"),
        ("heated_floor", "Drift 21", "optional"),
        ("heated_floor", "Drift 24", "standard"),
    }
