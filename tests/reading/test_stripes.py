"""A table of which only every other row is shaded is one table."""

from tests.reading.drawn import Page

WALLS = (45, 150, 260, 400, 480, 560)
HEADS = ("Model", "Wall insulation", "Gray tank", "Heated floor", "Sleeps")
ROWS = [
    (("Drift 540",), ("20 mm sheep wool",), ("80 L, underfloor",), ("–",), ("2",)),
    (("Drift 600",), ("20 mm sheep wool",), ("90 L, underfloor",), ("opt.",), ("2",)),
    (("Drift 600", "Winter"), ("35 mm cork",), ("85 L, lagged box,", "warm air"), ("std.",), ("2",)),
    (("Drift 636", "Winter"), ("40 mm cork",), ("95 L, double floor,", "warm air"), ("std.",), ("4",)),
]


def by_van(facts, field):
    return {fact.model: fact.value for fact in facts if fact.field == field}


def striped_page():
    """Draw a table whose head and every other row are filled cell by cell; cells are centred upright."""
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=20, bold=True)
    page.text(50, 420, "std. = standard, opt. = at extra cost, – = not offered")
    top = 100
    for number, row in enumerate([[(head,) for head in HEADS], *ROWS]):
        high = 26 if any(len(cell) > 1 for cell in row) else 15
        for left, right, cell in zip(WALLS, WALLS[1:], row, strict=False):
            if number == 0 or number % 2 == 1:
                page.box(left, top, right, top + high, (0.9, 0.9, 0.95))
            for place, text in enumerate(cell):
                offset = high / 2 - 5.5 * len(cell) + 11 * place
                page.text(left + 4, top + offset, text, bold=number == 0)
        top += high
    return page


def test_rows_between_shaded_rows_belong_to_the_table(facts_of_pdf):
    facts = facts_of_pdf(striped_page())
    assert by_van(facts, "gray_tank_l") == {
        "Drift 540": 80, "Drift 600": 90, "Drift 600 Winter": 85, "Drift 636 Winter": 95,
    }  # fmt: skip
    assert by_van(facts, "insulation_thickness_mm")["Drift 636 Winter"] == 40
    assert by_van(facts, "sleeps")["Drift 636 Winter"] == 4
    assert by_van(facts, "gray_tank_heat") == {"Drift 600 Winter": "warm_air", "Drift 636 Winter": "warm_air"}
    floors = {fact.model: fact.availability for fact in facts if fact.field == "heated_floor"}
    assert floors["Drift 600"] == "optional"
    assert floors["Drift 636 Winter"] == "standard"
