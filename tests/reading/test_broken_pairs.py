"""A line of pairs that breaks amid the name of a van goes on in the next."""

from tests.reading.drawn import Page


def test_the_price_of_a_package_for_a_van_whose_name_is_broken(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=20, bold=True)
    page.row(90, (50, "Length"), (200, "Drift 19 P"), (300, "Drift 21 LX"), (400, "Drift 24 TB"), bold=True)
    page.row(105, (50, "Overall length"), (200, "5.99 m"), (300, "6.36 m"), (400, "6.80 m"))
    page.row(120, (50, "Sleeps"), (200, "2"), (300, "2"), (400, "4"))
    page.row(135, (50, "Wheelbase"), (200, "3.80 m"), (300, "4.04 m"), (400, "4.04 m"))
    page.text(50, 180, "Ski package", size=12, bold=True)
    page.text(50, 198, "19 P: $1,000 · 21 LX: included · 24")
    page.text(50, 209, "TB: $1,000")
    for number, line in enumerate(["190 watts of solar", "Inverter, 1,500 watts", "Composting toilet"]):
        page.text(50, 224 + 12 * number, f"• {line}")
    solar = {(f.model, f.availability) for f in facts_of_pdf(page) if f.field == "solar_w"}
    assert solar == {("Drift 19 P", "optional"), ("Drift 21 LX", "standard"), ("Drift 24 TB", "optional")}
