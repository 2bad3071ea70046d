"""A van's name a little above its figures, with a remark in small type below it, names the row and is no heading."""

from tests.reading.drawn import Page

VANS = [("Larch 54", "rear kitchen", "5.41 m", "2", "70 L"),
        ("Larch 60 Plus", "east-west bed, bathroom", "5.99 m", "2", "95 L"),
        ("Alder 70", "bunks, bathroom", "6.98 m", "5", "160 L")]  # fmt: skip


def test_the_line_in_bold_is_the_name_and_the_small_one_below_it_a_remark(facts_of_pdf):
    page = Page()
    page.text(40, 30, "Tollan range overview 2027", size=18, bold=True)
    page.row(70, (40, "Model"), (180, "Length"), (260, "Sleeps"), (340, "Fresh water"), size=9)
    for number, (name, remark, *values) in enumerate(VANS):
        top = 90 + 30 * number
        page.text(40, top, name, size=10, bold=True)
        page.row(top + 6, *zip((180, 260, 340), values, strict=True), size=9)
        page.text(40, top + 15, remark, size=7)
    page.text(40, 200, "Every Tollan has a diesel air heater. The photograph shows the Alder 70 in Dust.", size=9)
    page.text(40, 230, "Tollan Pty Ltd, 20 Weir Road, Holt", size=8)
    sleeps = {fact.model: fact.value for fact in facts_of_pdf(page) if fact.field == "sleeps"}
    assert sleeps == {"Larch 54": 2, "Larch 60 Plus": 2, "Alder 70": 5}
