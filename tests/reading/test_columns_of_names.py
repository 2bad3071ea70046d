"""Price lists below a table of vans: a column says for which vans an item is, and is not that of one of them."""

from tests.reading.drawn import Page

VANS = ("Drift 21", "Drift 23", "Drift 25 Frost")
PLACES = (220, 330, 440)


def test_a_column_that_names_vans_goes_on_no_column_of_the_table_above(facts_of_pdf):
    page = Page()
    page.text(40, 30, "Marrowfen Drift 2026", size=16, bold=True)
    page.row(63, *zip(PLACES, VANS, strict=True), size=8, bold=True)
    table = [("Overall length", "5,410 mm", "5,998 mm", "6,360 mm"), ("GVWR", "3,300 kg", "3,500 kg", "4,250 kg"),
             ("Fresh water", "70 litres", "95 litres", "110 litres"), ("Sleeps", "2", "2", "4")]  # fmt: skip
    for number, (label, *cells) in enumerate(table):
        page.text(45, 80 + 15 * number, label, size=8)
        page.row(80 + 15 * number, *zip(PLACES, cells, strict=True), size=8)
    page.text(40, 260, "Options", size=14, bold=True)
    extras = [("Solar, 300 W in total", "Drift 21", "$1,900"), ("Heated floor", "Drift 21, Drift 23", "$1,150"),
              ("Inverter, 2,000 W", "Drift 23", "$990"), ("Awning", "All models", "$1,240")]  # fmt: skip
    for number, (label, vans, price) in enumerate(extras):
        page.text(45, 300 + 15 * number, label, size=8)
        page.row(300 + 15 * number, (330, vans), (440, price), size=8)
    optional = {(f.field, f.model, f.availability) for f in facts_of_pdf(page) if f.found_by and f.field in FIELDS}
    assert optional == {("solar_w", "Drift 21", "optional"), ("heated_floor", "Drift 21", "optional"),
                        ("heated_floor", "Drift 23", "optional"), ("inverter_w", "Drift 23", "optional")}  # fmt: skip


FIELDS = ("solar_w", "heated_floor", "inverter_w")
