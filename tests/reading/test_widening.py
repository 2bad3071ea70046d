"""A value alone in the middle of a row is true of all vans, if the table leaves no cell empty."""

from tests.reading.drawn import Page

ROWS = [
    ("Length (mm)", "5,380", "5,980", "5,980"),
    ("GVM (kg)", "3,510", "4,005", "4,250"),
    ("Fresh water (L)", "80", "95", "95"),
    ("Sleeps", "2", "2", "3"),
    ("Toilet", "None", "Cassette, 18 L", "Cassette, 18 L"),
]


def page_with(*more):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=20, bold=True)
    page.row(100, (296, "Drift A"), (386, "Drift B"), (476, "Drift C"), bold=True)
    for number, (label, *values) in enumerate([*ROWS, *more]):
        page.text(50, 116 + 16 * number, label)
        for x, value in zip((310, 400, 490), values, strict=True):
            page.text(x - 2.2 * len(value), 116 + 16 * number, value)
    return page


def by_van(facts, field):
    return {fact.model: fact.value for fact in facts if fact.field == field}


def test_a_lone_figure_in_the_middle_of_a_full_table_is_true_of_all(facts_of_pdf):
    facts = facts_of_pdf(page_with(("Diesel tank (L)", "", "90", "")))
    assert set(by_van(facts, "fuel_tank_l").values()) == {90}
    assert len(by_van(facts, "fuel_tank_l")) == 3


def test_where_other_cells_are_empty_it_is_true_of_its_column_alone(facts_of_pdf):
    facts = facts_of_pdf(page_with(("Diesel tank (L)", "", "90", ""), ("Hot water (L)", "10", "", "12")))
    assert len(by_van(facts, "fuel_tank_l")) == 1


def centred(page, top, x, text):
    page.text(x - 2.2 * len(text), top, text)


def test_values_for_all_in_the_gutter_between_two_columns_do_not_hide_the_columns(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=20, bold=True)
    columns = (250, 340, 430, 520)
    page.row(100, *zip((236, 326, 416, 506), ("Drift A", "Drift B", "Drift C", "Drift D"), strict=True), bold=True)
    rows = [
        ("Base vehicle", *["Kelmar Drover"] * 4),
        ("Length (mm)", "5,380", "5,980", "5,980", "6,360"),
        ("Width (mm)", "2,050"),
        ("Wheelbase (mm)", "3,450", "4,035", "4,035", "4,035"),
        ("Drive", "Front-wheel drive"),
        ("Fresh water (L)", "80", "95", "95", "110"),
        ("Gray water (L)", "70", "85", "85", "90"),
        ("Shore power", "30 A"),
        ("Sleeps", "2", "2", "3", "4"),
    ]
    for number, (label, *values) in enumerate(rows):
        top = 116 + 16 * number
        page.text(50, top, label)
        for x, value in zip(columns if len(values) > 1 else (385,), values, strict=True):
            centred(page, top, x, value)
    facts = facts_of_pdf(page)
    vans = [f"Drift {letter}" for letter in "ABCD"]
    assert by_van(facts, "length_mm") == dict(zip(vans, (5380, 5980, 5980, 6360), strict=True))
    assert by_van(facts, "fresh_tank_l") == dict(zip(vans, (80, 95, 95, 110), strict=True))
    assert by_van(facts, "width_mm") == dict.fromkeys(vans, 2050)
    assert by_van(facts, "drive") == dict.fromkeys(vans, "front")
    assert by_van(facts, "shore_power_a") == dict.fromkeys(vans, 30)


def test_the_middle_is_that_of_the_cells_where_the_values_on_one_side_are_longer(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=20, bold=True)
    page.row(100, (206, "Drift A"), (326, "Drift B"), (446, "Drift C"), bold=True)
    rows = [
        ("Length (mm)", "5,380", "5,980", "6,360"),
        ("GVM (kg)", "3,500", "3,500", "4,250"),
        ("Sleeps", "2", "2", "4"),
        ("Insulation", "Cork", "Cork", "Closed-cell sheet foam"),
        ("Surfaces", "Walls", "Walls, roof", "Walls, roof, floor, rear doors"),
        ("Windows", "", "Double glazing", ""),
        ("Fresh water (L)", "80", "95", "110"),
    ]
    for number, (label, *values) in enumerate(rows):
        page.text(50, 116 + 16 * number, label)
        for x, value in zip((220, 340, 460), values, strict=True):
            centred(page, 116 + 16 * number, x, value)
    glazing = by_van(facts_of_pdf(page), "window_glazing")
    assert glazing == {"Drift A": "double", "Drift B": "double", "Drift C": "double"}
