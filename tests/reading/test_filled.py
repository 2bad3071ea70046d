"""Values in a shaded cell that reaches over several columns of a table without vertical rules."""

from tests.reading.drawn import Page

VANS = ("Drift 21", "Drift 23", "Drift 25 Frost")
PLACES = (204, 306, 408)
SHADE = (0.96, 0.95, 0.92)
ROWS = [
    ("Overall length", "5,410 mm", "5,998 mm", "6,360 mm"),
    ("GVWR", "3,300 kg", "3,500 kg", "4,250 kg"),
    ("Fresh water", "70 litres", "95 litres", "110 litres"),
    ("Solar", "100 W", "200 W", "200 W"),
    ("House battery", "95 Ah AGM", "120 Ah lithium", "2 x 105 Ah lithium"),
]


def drawn(shared):
    page = Page()
    page.text(40, 30, "Marrowfen Drift 2026", size=16, bold=True)
    for place, van in zip(PLACES, VANS, strict=True):
        page.text(place, 63, van, size=8, bold=True)
    top = 80
    for label, *cells in ROWS:
        page.text(45, top, label, size=8)
        page.row(top, *zip(PLACES, cells, strict=True), size=8)
        top += 15
    for label, value, left, right in shared:
        page.box(left, top - 2, right, top + 12, SHADE)
        page.text(45, top, label, size=8)
        page.canvas.setFont("Helvetica", 8)
        page.text((left + right - page.canvas.stringWidth(value)) / 2, top, value, size=8)
        top += 15
    return page


def by_van(facts, field):
    return {fact.model: fact.value for fact in facts if fact.field == field}


def test_a_value_holds_for_all_vans_whose_columns_its_shade_covers(facts_of_pdf):
    shared = [("Overall width", "2,050 mm", 200, 558), ("Engine", "2.2 litre diesel, 120 kW", 200, 558),
              ("Inverter", "1,500 W", 200, 404)]  # fmt: skip
    facts = facts_of_pdf(drawn(shared))
    assert by_van(facts, "width_mm") == dict.fromkeys(VANS, 2050)
    assert by_van(facts, "engine_fuel") == dict.fromkeys(VANS, "diesel")
    assert by_van(facts, "inverter_w") == {"Drift 21": 1500, "Drift 23": 1500}
