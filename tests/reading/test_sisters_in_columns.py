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


def test_the_names_that_a_cover_sets_one_below_the_other_lead_nothing_that_follows(facts_of_pdf):
    page = Page()
    for number, name in enumerate(("Whinlow", "Dabrell", "Fenfare")):
        page.text(50, 60 + 42 * number, name, size=40, bold=True)
    page.text(50, 20, "MARROWFEN", size=20, bold=True)
    page.text(50, 192, "Campers from the marshes. Season 2026.", size=16)
    page.canvas.showPage()
    page.text(50, 40, "Three small birds", size=18, bold=True)
    page.text(50, 70, "Nobody ever bought a Marrowfen to be looked at. Marrowfen Ltd builds by hand.", size=10)
    page.text(50, 100, "How we build", size=18, bold=True)
    page.text(50, 130, "With patience, and with tea.", size=10)
    page.canvas.showPage()
    page.text(50, 40, "Technical data", size=13, bold=True)
    page.row(70, (220, "Whinlow"), (330, "Dabrell"), (440, "Fenfare"), bold=True)
    rows = [("Overall length", "5.41 m", "5.99 m", "6.36 m"), ("MTPLM", "3500 kg", "3500 kg", "4250 kg"),
            ("Overall height", "2.60 m", "2.60 m", "2.80 m"), ("Fresh water", "70 l", "95 l", "110 l"),
            *((f"Drawer {n}, depth", "40 cm", "50 cm", "60 cm") for n in range(12))]  # fmt: skip
    for number, (label, *values) in enumerate(rows):
        page.row(88 + 16 * number, (50, label), *zip((220, 330, 440), values, strict=True))
    page.text(50, 400, "Dimensions may vary by 2 per cent. The third berth of the Fenfare is for a child.", size=8)
    berths = {(f.model, f.value) for f in facts_of_pdf(page) if f.field == "sleeps"}
    assert berths == {("Fenfare", 3)}


def test_titles_between_rows_of_pairs_side_by_side_head_both_pairs_below_them_and_none_above(facts_of_pdf):
    page = Page()
    page.text(50, 30, "Marrowfen Drift 2026", size=18, bold=True)
    vans = [
        ("Drift 19", "5.41 m", "70 l", "100 Ah AGM", "1,200 W"),
        ("Drift 21", "6.36 m", "95 l", "200 Ah lithium", "2,000 W"),
    ]
    top = 60
    for name, length, fresh, battery, inverter in vans:
        page.text(50, top, name, size=13, bold=True)
        rows = [("Length", length, "Fresh water", fresh), ("GVWR", "3,500 kg", "House battery", battery),
                ("Height", "2.65 m", "Inverter", inverter), ("Sleeps", "2", "Toilet", "Cassette"),
                ("Wheelbase", "3.4 m", "Gray water", "60 l"), ("Drive", "Front", "Hot water", "10 l")]  # fmt: skip
        for number, row in enumerate(rows):
            page.row(top + 18 + 14 * number, *zip((50, 150, 300, 400), row, strict=True))
            page.rule(50, top + 30 + 14 * number, 500)
        top += 108
    facts = facts_of_pdf(page)
    assert {f.model: f.value for f in facts if f.field == "inverter_w"} == {"Drift 19": 1200, "Drift 21": 2000}
    assert {f.model: f.value for f in facts if f.field == "fresh_tank_l"} == {"Drift 19": 70, "Drift 21": 95}
