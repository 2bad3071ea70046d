"""Vans side by side whose names stand only over their own figures."""

from tests.reading.drawn import Page

COMMON = ["Overall length: {length} m", "Overall height: 2.75 m", "Wheelbase: 3.80 m"]
WATER = ["Fresh water: {fresh} l", "Gray water: 70 l", "Water heater: 10 l"]
POWER = ["Solar: 200 W", "Inverter: 1500 W", "Shore power: 30 A"]
GROUPS = {"Body": COMMON, "Tanks": WATER, "Electrical": POWER}


def side_by_side(first, second, *, line="", rank=11.0, groups=GROUPS):
    """Draw two lists in columns: name, then groups with headings of size ``rank``, the name set in 11 points."""
    page = Page()
    page.text(50, 40, "Marrowfen", size=20, bold=True)
    if line:
        page.text(50, 70, line, size=12, bold=True)
    page.text(50, 100, "Technical data", size=14, bold=True)
    for x, name, length, fresh in ((50, first, "5.99", 90), (320, second, "6.36", 120)):
        page.text(x, 130, name, size=11, bold=True)
        top = 146
        for heading, lines in groups.items():
            page.text(x, top, heading, size=rank, bold=True)
            for text in lines:
                top += 14
                page.text(x, top, text.format(length=length, fresh=fresh), size=9)
            top += 18
    page.text(50, 700, "Marrowfen Ltd, Holmbeck. Weights may vary.", size=7)
    return page


def tanks(facts):
    return {(fact.model, round(fact.value)) for fact in facts if fact.field == "fresh_tank_l"}


def test_names_above_groups_of_the_same_rank(facts_of_pdf):
    facts = facts_of_pdf(side_by_side("Pale Cairn", "Quiet Haven"))
    assert tanks(facts) == {("Pale Cairn", 90), ("Quiet Haven", 120)}


def test_a_line_on_the_first_page_that_lists_two_headings_names_vans(facts_of_pdf):
    facts = facts_of_pdf(side_by_side("Bracken", "Long Inglenook", line="Bracken | Long Inglenook", rank=10.0))
    assert tanks(facts) == {("Bracken", 90), ("Long Inglenook", 120)}


def test_the_heading_of_a_group_that_each_van_has_names_no_van(facts_of_pdf):
    one_group = {"Frostwork": [*COMMON, *WATER, *POWER]}
    page = side_by_side("Alcove", "Haven", line="Alcove · Haven", groups=one_group)
    page.canvas.showPage()
    page.text(50, 100, "Equipment", size=14, bold=True)
    page.row(130, (300, "Alcove"), (400, "Haven"), size=9, bold=True)
    for place, line in enumerate(("Thermal break", "Roller blinds", "Insulated dump valve", "Water heater bypass")):
        page.row(146 + 15 * place, (50, line), (300, "yes"), (400, "no"))
    assert {fact.model for fact in facts_of_pdf(page)} == {"Alcove", "Haven"}
