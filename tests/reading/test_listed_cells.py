"""Packages as rows of a table: name, list of what they hold, and a price for each van."""

import pytest

from tests.reading.drawn import Page

PACKAGES = [
    ("Hoarfrost", ["12 V heat pad on the gray tank", "Insulated cab window covers"], ("$900", "in base price")),
    (
        "Long Night",
        ["Lithium house battery, 300 Ah,|with a place of its own", "Solar raised to 400 W"],
        ("—", "$6,900"),
    ),
    ("Rough Road", ["All-wheel drive"], ("—", "$8,900")),
]
BETWEEN = "Both vans leave the yard with what is told here, and what else they can have comes in the packages below."
LEGEND = "A price means that the package can be ordered for that van; a dash (—) that it cannot."


def drawn():
    page = Page()
    page.text(50, 20, "Marrowfen Drift 2026", size=18, bold=True)
    page.row(45, (200, "Drift 19"), (350, "Drift 24"), size=9, bold=True)
    for number, row in enumerate(
        [("Length", "5.41 m", "6.36 m"), ("GVWR", "3,300 kg", "4,250 kg"), ("Sleeps", "2", "2")]
    ):
        page.row(57 + 12 * number, *zip((50, 200, 350), row, strict=True), size=9)
    page.text(50, 110, BETWEEN, size=9)
    page.text(50, 150, "Packages", size=14, bold=True)
    page.row(180, (50, "Package"), (150, "What it holds"), (400, "19"), (480, "24"), size=8.5, bold=True)
    y = 192
    for name, items, prices in PACKAGES:
        page.rule(46, y + 1, 560)
        page.row(y + 4, (50, name), size=8.5, bold=True)
        page.row(y + 4, *zip((400, 480), prices, strict=True), size=8.5)
        for item in items:
            for number, line in enumerate(item.split("|")):
                y += 14 * (number > 0)
                page.row(y + 4, *([(150, "–"), (159, line)] if number == 0 else [(159, line)]), size=8.5)
            y += 11
        y += 6
    page.rule(46, y + 1, 560)
    page.text(50, y + 20, LEGEND, size=8.5)
    return page


@pytest.fixture
def found(facts_of_pdf):
    facts = [fact for fact in facts_of_pdf(drawn()) if not fact.rejected]
    return {(fact.field, fact.model[-2:], fact.value, fact.availability) for fact in facts}


def test_each_item_of_a_package_is_an_option_of_the_vans_that_have_a_price(found):
    assert ("gray_tank_heat", "19", "electric_pad", "optional") in found
    assert ("gray_tank_heat", "24", "electric_pad", "standard") in found
    assert ("cab_shades_insulated", "19", True, "optional") in found
    assert ("battery_ah", "24", 300, "optional") in found
    assert ("solar_w", "24", 400, "optional") in found
    assert ("drive", "24", "all", "optional") in found


def test_a_dash_that_the_legend_explains_in_a_sentence_says_that_it_cannot_be_had(found):
    assert ("solar_w", "19", 400, "not_available") in found
    assert ("drive", "19", "all", "not_available") in found


def test_lines_without_bullets_that_end_early_are_items_of_a_package(facts_of_pdf):
    page = Page()
    page.text(50, 20, "Marrowfen Drift 2026", size=18, bold=True)
    page.row(45, (300, "Drift 19"), (430, "Drift 24"), size=9, bold=True)
    rows = [("Length", "5.41 m", "6.36 m"), ("GVWR", "3,300 kg", "4,250 kg"), ("Sleeps", "2", "2")]
    for number, row in enumerate(rows):
        page.row(57 + 12 * number, *zip((50, 300, 430), row, strict=True), size=9)
    page.text(50, 130, "Packages", size=14, bold=True)
    page.row(160, (50, "Package"), (140, "In it"), (400, "Drift 19"), (480, "Drift 24"), size=8.5, bold=True)
    packs = [("Hoarfrost", ["12 V heat pad on the gray tank", "Insulated cab covers"], ("$900", "Std")),
             ("Far Off", ["Lithium house battery, 300 Ah", "Solar, 400 W in all", "Inverter, 3,000 W"], ("–", "$69")),
             ("Rough Road", ["All-wheel drive", "A plate under the engine"], ("$8,000", "n/a"))]  # fmt: skip
    y = 172
    for name, items, prices in packs:
        page.rule(46, y, 560)
        page.row(y + 6, (50, name), *zip((400, 480), prices, strict=True), size=8.5)
        for number, item in enumerate(items):
            page.text(140, y + 6 + 14 * number, item, size=8.5)
        y += 14 * len(items) + 10
    page.rule(46, y, 560)
    page.text(50, y + 20, "A dash means that the package is not offered on that van.", size=8.5)
    found = {(fact.field, fact.model[-2:], fact.value, fact.availability) for fact in facts_of_pdf(page)}
    assert {("gray_tank_heat", "19", "electric_pad", "optional"), ("gray_tank_heat", "24", "electric_pad", "standard"),
            ("cab_shades_insulated", "19", True, "optional"), ("battery_ah", "19", 300, "not_available"),
            ("battery_ah", "24", 300, "optional"), ("solar_w", "24", 400, "optional"),
            ("solar_w", "19", 400, "not_available"),
            ("inverter_w", "24", 3000, "optional"), ("drive", "19", "all", "optional"),
            ("drive", "24", "all", "not_available")} <= found  # fmt: skip
    assert {value for field, _, value, _ in found if field in ("inverter_w", "solar_w")} == {400, 3000}
