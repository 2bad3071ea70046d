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
