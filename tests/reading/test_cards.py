"""Ruled boxes that hold lists are cards: each is read by itself, and no box is the head of another."""

from specscan.reading.read import read_document
from specscan.records.text import Kind
from tests.reading.drawn import Page

PACKAGES = {
    "Winter package": ("12 V heating pad for gray water tank", "Insulated fresh water tank"),
    "Solar package": ("Solar panels, 400 W", "Battery 200 Ah LiFePO4"),
    "Comfort package": ("Electric floor heating", "Roof fan"),
    "Towing package": ("Trailer hitch", "7-pin socket"),
}


def drawn():
    page = Page()
    page.text(50, 40, "Marrowfen Drift 21", size=20, bold=True)
    for number, line in enumerate(("Model year: 2026", "Overall length: 6.36 m", "Sleeps: 3", "GVWR: 3500 kg")):
        page.text(50, 70 + 13 * number, line)
    page.text(50, 135, "Optional packages", size=13, bold=True)
    for wall in (50, 295, 540):
        page.box(wall, 165, wall + 0.6, 305, (0, 0, 0))
    for floor in (165, 235, 305):
        page.box(50, floor, 540, floor + 0.6, (0, 0, 0))
    for place, (title, items) in enumerate(PACKAGES.items()):
        left, top = 58 + 245 * (place % 2), 170 + 70 * (place // 2)
        page.text(left, top, title, bold=True)
        for number, item in enumerate(items):
            page.text(left, top + 16 + 14 * number, f"• {item}")
    return page


def test_packages_side_by_side_in_ruled_boxes_are_lists_of_their_own(examiner):
    passages = read_document(drawn().data(), "drift.pdf", "pdf", examiner.hints).passages
    items = {p.text: p.sections[-1] for p in passages if p.kind is Kind.BULLET}
    assert items == {item: title for title, held in PACKAGES.items() for item in held}


def test_the_heading_above_all_cards_says_of_each_that_its_things_are_options(facts_of_pdf):
    facts = facts_of_pdf(drawn())
    stated = {fact.field: (fact.value, fact.availability) for fact in facts}
    assert stated["gray_tank_heat"] == ("electric_pad", "optional")
    assert stated["solar_w"] == (400, "optional")
    assert stated["battery_ah"] == (200, "optional")
    assert stated["heated_floor"] == (True, "optional")


def test_cells_of_a_table_that_hold_bullets_now_and_then_stay_a_table(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=20, bold=True)
    walls, floors = (50, 200, 350, 500), (100, 120, 140, 160, 180, 200, 220, 260)
    for top, bottom in zip(floors, floors[1:], strict=False):
        for left, right in zip(walls, walls[1:], strict=False):
            page.frame(left, top, right, bottom)
    page.row(105, (206, "Drift 19"), (356, "Drift 21"), bold=True)
    rows = [("Overall length", "5.90 m", "6.40 m"), ("Sleeps", "2", "3"), ("GVWR", "3500 kg", "4250 kg"),
            ("Fresh water tank", "90 L", "120 L"), ("Gray water tank", "70 L", "100 L")]  # fmt: skip
    for number, values in enumerate(rows):
        page.row(125 + 20 * number, *zip((56, 206, 356), values, strict=True))
    page.row(225, (56, "Electrics"), (206, "• Solar panels, 200 W"), (356, "• Solar panels, 400 W"))
    page.row(240, (206, "• Shore power inlet"), (356, "• Shore power inlet"))
    facts = facts_of_pdf(page)
    assert {f.model: f.value for f in facts if f.field == "gray_tank_l"} == {"Drift 19": 70, "Drift 21": 100}
    assert {f.model: f.value for f in facts if f.field == "solar_w"} == {"Drift 19": 200, "Drift 21": 400}


def test_in_cards_set_larger_than_the_page_wrapped_items_and_prices_are_no_headings(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen", size=20, bold=True)
    page.row(80, (200, "Drift 19"), (380, "Drift 21"), size=8, bold=True)
    rows = [("Overall length", "5.41 m", "6.36 m"), ("Height", "2.65 m", "2.70 m"), ("GVWR", "3300 kg", "3500 kg"),
            ("Fresh water tank", "70 l", "95 l"), ("Waste water tank", "60 l", "80 l"), ("Lines", "cabin", "cabin"),
            ("House battery", "100 Ah AGM", "100 Ah AGM"), ("Sleeps", "2", "2"), ("Belts", "2", "4")]  # fmt: skip
    for number, (label, *values) in enumerate(rows):
        page.row(96 + 15 * number, (50, label), *zip((200, 380), values, strict=True), size=8)
    page.text(50, 260, "Then the packages", size=16, bold=True)
    page.text(50, 292, "Warm Floor", size=11, bold=True)
    page.text(50, 306, "Drift 19 not available · Drift 21 $7,450", size=8.2, bold=True)
    for number, line in enumerate(
        ["• Gasoline-fired hydronic heater, 5 kW output,", "   in place of the furnace", "• Heated floor"]
    ):
        page.text(60, 320 + 13 * number, line, size=9.6)
    floor = {(f.model, f.availability) for f in facts_of_pdf(page) if f.field == "heated_floor" and not f.rejected}
    assert floor == {("Drift 19", "not_available"), ("Drift 21", "optional")}
