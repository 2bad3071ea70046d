"""Rules that part only groups of rows do not make one row of each group."""

import pytest

from tests.reading.drawn import Page

GROUPS = [
    ("Body", [("Length", "5.99 m", "6.36 m"), ("Headroom", "1.90 m", ""), ("Berths", "2", "3")]),
    ("Water", [("Fresh water", "90 L", "110 L"), ("Gray water", "80 L", "95 L")]),
]


def by_van(facts, field):
    return {fact.model: fact.value for fact in facts if fact.field == field}


def grouped_page():
    """Draw a table with a rule above its heads and below each group, and lines set close."""
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=20, bold=True)
    page.box(50, 98, 520, 98.6, (0, 0, 0))
    page.row(101, (250, "Drift 599"), (400, "Drift 636"))
    page.box(50, 113, 520, 113.6, (0, 0, 0))
    top = 116
    for name, rows in GROUPS:
        page.text(50, top, name)
        for label, *values in rows:
            top += 11
            page.row(top, (50, label), *((x, v) for x, v in zip((250, 400), values, strict=True) if v))
        top += 13
        page.box(50, top, 520, top + 0.6, (0, 0, 0))
        top += 3
    return page


def test_rules_between_groups_leave_each_line_a_row(facts_of_pdf):
    facts = facts_of_pdf(grouped_page())
    assert by_van(facts, "length_mm") == {"Drift 599": 5990, "Drift 636": 6360}
    assert by_van(facts, "sleeps") == {"Drift 599": 2, "Drift 636": 3}
    assert by_van(facts, "gray_tank_l") == {"Drift 599": 80, "Drift 636": 95}


def test_a_wrapped_label_between_rules_stays_one_row(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=20, bold=True)
    page.row(101, (250, "Drift 599"), (400, "Drift 636"), bold=True)
    wrapped = [
        [("Gray water tank,", "80 L, lagged and", "95 L, lagged and"), ("under the floor", "heated", "heated")],
        [("Fresh water tank", "90 L, in the", "110 L, in the"), ("capacity", "double floor", "double floor")],
        [("Overall length of", "5.99 m", "6.36 m"), ("the vehicle", "", "")],
    ]
    for number, lines in enumerate(wrapped):
        top = 116 + 30 * number
        page.box(50, top - 2, 520, top - 1.4, (0, 0, 0))
        for offset, (label, *values) in enumerate(lines):
            page.row(top + 11 * offset, (50, label), *((x, v) for x, v in zip((250, 400), values, strict=True) if v))
    facts = facts_of_pdf(page)
    assert by_van(facts, "gray_tank_l") == {"Drift 599": 80, "Drift 636": 95}
    assert by_van(facts, "fresh_tank_location") == {"Drift 599": "enclosed", "Drift 636": "enclosed"}
    assert by_van(facts, "length_mm") == pytest.approx({"Drift 599": 5990, "Drift 636": 6360})


PACKAGES = [
    ("November", ["12 V heaters under the waste tanks", "Insulated water lines", "Insulated cab shades"],
     ["$1,980", "$2,240"]),
    ("Far", ["Lithium batteries, 360 Ah in all", "Solar panels, 320 W in all", "Inverter, 2,800 W"],
     ["$6,900", "included"]),
    ("Snow", ["All-wheel drive", "Raised suspension", "Skid plate"], ["not offered", "$8,600"]),
]  # fmt: skip
SPECIFICATION = [("", "Drift 19", "Drift 21"), ("Overall length", "19 ft 7 in", "21 ft 0 in"), ("Sleeps", "2", "3"),
                 ("Wheelbase", "144 in", "159 in"), ("GVWR", "8,990 lb", "9,350 lb")]  # fmt: skip


def test_rules_part_the_rows_of_packages_that_hold_long_lists(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=20, bold=True)
    for place, (label, *values) in enumerate(SPECIFICATION):
        page.row(80 + 14 * place, (50, label), (300, values[0]), (400, values[1]), bold=not label)
    page.text(50, 170, "Packages", size=14, bold=True)
    page.text(50, 192, "Prices are in dollars; included means that all that a package holds is standard on the van.")
    page.row(210, (50, "Package"), (130, "Contents"), (360, "Drift 19"), (450, "Drift 21"), bold=True)
    page.rule(50, 224, 540)
    top = 228
    for name, contents, prices in PACKAGES:
        for place, line in enumerate(contents):
            page.text(130, top + 13 * place, line)
        middle = top + 13 * (len(contents) - 1) / 2
        page.text(50, middle, name, bold=True)
        page.row(middle, (360, prices[0]), (450, prices[1]))
        top += 13 * len(contents) + 3
        page.rule(50, top, 540)
        top += 4
    facts = facts_of_pdf(page)
    said = {(fact.model, fact.availability) for fact in facts if fact.field == "inverter_w"}
    assert said == {("Drift 19", "optional"), ("Drift 21", "standard")}
    drive = {(fact.model, fact.availability) for fact in facts if fact.field == "drive"}
    assert drive == {("Drift 19", "not_available"), ("Drift 21", "optional")}


def test_vans_in_close_rows_between_the_rules_of_head_and_foot_stay_apart(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=20, bold=True)
    columns = (50, 150, 210, 270, 340, 410, 480)
    page.box(50, 98, 545, 98.4, (0, 0, 0))
    heads = ("Model", "Length", "Height", "GVWR", "Sleeps", "Fresh water", "Battery")
    page.row(101, *zip(columns, heads, strict=True))
    page.box(50, 113, 545, 113.4, (0, 0, 0))
    rows = (
        ("Drift 54", "5.41 m", "2.55 m", "3300 kg", "2", "75 L", "90 Ah AGM"),
        ("Drift 60", "5.99 m", "2.55 m", "3500 kg", "3", "100 L", "110 Ah"),
        ("", "", "", "", "", "", "lithium"),
        ("Drift 60 Q", "5.99 m", "2.71 m", "3500 kg", "4", "100 L", "150 Ah"),
        ("", "", "", "", "", "", "lithium"),
    )
    for number, row in enumerate(rows):
        page.row(116 + 11 * number, *((x, text) for x, text in zip(columns, row, strict=True) if text))
    page.box(50, 172, 545, 172.4, (0, 0, 0))
    facts = facts_of_pdf(page)
    assert by_van(facts, "sleeps") == {"Drift 54": 2, "Drift 60": 3, "Drift 60 Q": 4}
    assert by_van(facts, "battery_chemistry") == {"Drift 54": "agm", "Drift 60": "lithium", "Drift 60 Q": "lithium"}


def test_codes_of_one_form_each_begin_a_row_between_the_rules_of_head_and_foot(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=20, bold=True)
    columns = (50, 100, 200, 320, 400)
    page.box(50, 98, 450, 98.4, (0, 0, 0))
    page.row(101, *zip(columns, ("Code", "Model", "Base vehicle", "Sleeps", "Price"), strict=True), bold=True)
    page.box(50, 113, 450, 113.4, (0, 0, 0))
    rows = (
        ("M10", "Drift 541", "Bruska Hauler 33", "2", "58,990"),
        ("M20", "Drift 600", "Bruska Hauler 35", "3", "63,490"),
        ("M30", "Drift 636 A", "Bruska Hauler 40", "4", "84,900"),
    )
    for number, row in enumerate(rows):
        page.row(116 + 11 * number, *zip(columns, row, strict=True))
    page.box(50, 151, 450, 151.4, (0, 0, 0))
    for number, text in enumerate(("Fresh water: 90 L", "Length: 5.41 m to 6.36 m", "Diesel heater, 4 kW")):
        page.text(50, 180 + 14 * number, text)
    facts = facts_of_pdf(page)
    assert by_van(facts, "sleeps") == {"Drift 541": 2, "Drift 600": 3, "Drift 636 A": 4}


def test_a_label_in_small_letters_below_another_is_a_row_between_rules_too(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=20, bold=True)
    page.box(50, 98, 520, 98.6, (0, 0, 0))
    page.row(101, (250, "Drift 599"), (400, "Drift 636"))
    page.box(50, 113, 520, 113.6, (0, 0, 0))
    rows = (
        ("Overall length", "5.99 m", "6.36 m"), ("Headroom", "1.90 m", "1.94 m"), ("Berths", "2", "3"),
        ("Fresh water", "90 litres", "110 litres"), ("  placed", "inboard", "inboard"),
        ("Waste water", "80 litres", "95 litres"), ("  placed", "underslung", "heated locker"),
        ("Wheelbase", "4,035 mm", "4,325 mm"),
    )  # fmt: skip
    for number, row in enumerate(rows):
        page.row(116 + 11 * number, *zip((50, 250, 400), row, strict=True))
    page.box(50, 206, 520, 206.6, (0, 0, 0))
    facts = facts_of_pdf(page)
    assert by_van(facts, "length_mm") == {"Drift 599": 5990, "Drift 636": 6360}
    assert by_van(facts, "gray_tank_l") == {"Drift 599": 80, "Drift 636": 95}
