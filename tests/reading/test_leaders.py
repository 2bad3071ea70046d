"""Labels and values joined by dots are pairs line by line, whatever stands between the lines."""

import pytest

from tests.reading.drawn import Page


def by_van(facts, field):
    return {fact.model: fact.value for fact in facts if fact.field == field}


def led(page, top, label, value, *, x=50, end=300):
    """Set a label, dots up to ``end`` and a value behind them."""
    start = x + 4 + page.canvas.stringWidth(label, "Helvetica", 9)
    dots = "." * int((end - start) / page.canvas.stringWidth(".", "Helvetica", 9))
    page.row(top, (x, label), (start, dots), (end + 4, value))


@pytest.fixture
def page():
    page = Page()
    page.text(50, 40, "Marrowfen Drift 21", size=20, bold=True)
    page.text(50, 70, "Model year 2026")
    return page


def test_values_of_any_width_belong_to_the_label_before_the_dots(facts_of_pdf, page):
    led(page, 100, "Overall length", "6.36 m", end=140)
    led(page, 113, "Sleeps", "3", end=110)
    led(page, 126, "GVWR", "3500 kg", end=100)
    led(page, 139, "Fresh water tank", "110 L, inside the heated living area", end=180)
    led(page, 152, "Gray water tank, with the valve that is heated by the furnace", "90 L", end=420)
    led(page, 165, "Solar panels, with the controller and the cables on the roof", "400 W", end=400)
    facts = facts_of_pdf(page)
    assert by_van(facts, "length_mm") == {"Marrowfen Drift 21": 6360}
    assert by_van(facts, "sleeps") == {"Marrowfen Drift 21": 3}
    assert by_van(facts, "fresh_tank_l") == {"Marrowfen Drift 21": 110}
    assert by_van(facts, "fresh_tank_location") == {"Marrowfen Drift 21": "interior"}
    assert by_van(facts, "gray_tank_l") == {"Marrowfen Drift 21": 90}


def test_a_line_between_pairs_is_a_heading_and_takes_no_value(facts_of_pdf, page):
    led(page, 100, "Overall length", "6.36 m")
    led(page, 113, "Sleeps", "3")
    page.text(50, 130, "Fresh water tank")
    led(page, 144, "Capacity", "110 L")
    led(page, 157, "Location", "inside")
    page.text(50, 174, "Gray water tank")
    led(page, 188, "Capacity", "90 L")
    led(page, 201, "Location", "underfloor")
    facts = facts_of_pdf(page)
    assert by_van(facts, "sleeps") == {"Marrowfen Drift 21": 3}
    assert by_van(facts, "fresh_tank_l") == {"Marrowfen Drift 21": 110}
    assert by_van(facts, "gray_tank_l") == {"Marrowfen Drift 21": 90}


def test_a_value_goes_on_below_itself_and_a_label_above_itself(facts_of_pdf, page):
    led(page, 100, "Overall length", "6.36 m")
    led(page, 113, "Fresh water tank", "110 L, mounted")
    page.text(304, 124, "inside the living area")
    page.text(50, 140, "Gross vehicle weight rating")
    led(page, 151, "(with all fluids)", "3500 kg")
    led(page, 164, "Sleeps", "3")
    facts = facts_of_pdf(page)
    assert by_van(facts, "fresh_tank_location") == {"Marrowfen Drift 21": "interior"}
    assert by_van(facts, "gvwr_kg") == {"Marrowfen Drift 21": 3500}
    assert by_van(facts, "sleeps") == {"Marrowfen Drift 21": 3}


def test_dots_that_lead_over_columns_of_several_vans_leave_each_its_value(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=20, bold=True)
    page.row(100, (254, "Drift 19"), (384, "Drift 21"), bold=True)
    rows = [("Overall length", "5.90 m", "6.40 m"), ("Sleeps", "2", "3"), ("Fresh water tank", "90 L", "120 L"),
            ("Gray water tank", "70 L", "100 L")]  # fmt: skip
    for number, (label, first, second) in enumerate(rows):
        top = 116 + 14 * number
        led(page, top, label, first, end=250)
        page.row(top, (290, "." * 34), (384, second))
    facts = facts_of_pdf(page)
    assert by_van(facts, "length_mm") == {"Drift 19": 5900, "Drift 21": 6400}
    assert by_van(facts, "gray_tank_l") == {"Drift 19": 70, "Drift 21": 100}


def test_labels_with_dots_behind_them_are_no_running_text(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Tusk 599", size=20, bold=True)
    rows = [("Base vehicle", "Kelmar Porter 35"), ("Engine", "diesel 2.2 l"), ("Length", "5.99 m"), ("Width", "2.05 m"),
            ("Height", "2.62 m"), ("Wheelbase", "4.04 m"), ("GVWR", "3500 kg"), ("Fuel tank", "90 l")]  # fmt: skip
    for place, (label, value) in enumerate(rows):
        dots = "" if place < 2 else " ." * int((200 - page.canvas.stringWidth(label, "Helvetica", 9)) / 5.1)
        page.row(100 + 15 * place, (60, f"{label}{dots}"), (290, value))
    found = {fact.field: fact.value for fact in facts_of_pdf(page)}
    assert (found["length_mm"], found["gvwr_kg"], found["fuel_tank_l"]) == (5990, 3500, 90)


def test_dots_on_a_grid_that_touch_the_words_are_no_part_of_them(facts_of_pdf, page):
    step = 4.4
    rows = [("Overall length", "6.36 m"), ("Sleeps", "3"), ("Consumption of the furnace", ".18 gal/h")]
    for top, (label, value) in zip((100, 113, 126), rows, strict=True):
        begin, dot = 50 + page.canvas.stringWidth(label, "Helvetica", 9), page.canvas.stringWidth(".", "Helvetica", 9)
        grid = [50 + n * step for n in range(80) if begin + 0.4 < 50 + n * step < 300]
        page.row(top, (50, label), *[(x, ".") for x in grid], (grid[-1] + dot + 0.6, value))
    facts = facts_of_pdf(page)
    assert {f.printed for f in facts if f.field == "length_mm"} == {"Overall length: 6.36 m"}
    assert by_van(facts, "heater_consumption_l_h") == {"Marrowfen Drift 21": pytest.approx(0.681, abs=0.001)}
