"""Parts of a page that belong together are read together, others are not."""

from tests.reading.drawn import Page


def by_van(facts, field):
    return {fact.model: fact.value for fact in facts if fact.field == field}


def test_a_shaded_bar_of_wrapped_heads_heads_the_table_below_it(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=20, bold=True)
    page.box(45, 100, 550, 128, (0.1, 0.2, 0.3))
    white = {"bold": True, "color": (1, 1, 1)}
    page.row(102, (150, "Overall length"), (250, "Fresh water"), (350, "Gray water"), (450, "Sleeps"), **white)
    page.row(113, (50, "Model"), (150, "(m)"), (250, "tank (L)"), (350, "tank (L)"), **white)
    page.row(135, (50, "Drift 19"), (150, "5.90"), (250, "90"), (350, "70"), (450, "2"))
    page.row(153, (50, "Drift 21"), (150, "6.40"), (250, "120"), (350, "100"), (450, "3"))
    page.row(171, (50, "Drift 23"), (150, "6.90"), (250, "140"), (350, "110"), (450, "4"))
    facts = facts_of_pdf(page)
    assert by_van(facts, "length_mm") == {"Drift 19": 5900, "Drift 21": 6400, "Drift 23": 6900}
    assert by_van(facts, "gray_tank_l") == {"Drift 19": 70, "Drift 21": 100, "Drift 23": 110}
