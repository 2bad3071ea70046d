"""Values in the middle of several columns, as merged cells print them without rules between the columns."""

import pytest

from tests.reading.drawn import Page

VANS = ("Drift 21", "Drift 23", "Drift 23 R", "Drift 25")
PLACES = (240, 330, 420, 510)


def drawn(rows):
    page = Page()
    page.text(40, 30, "Marrowfen Drift 2026", size=16, bold=True)
    page.box(40, 60, 560, 76, (0.1, 0.2, 0.4))
    for place, van in zip(PLACES, VANS, strict=True):
        page.canvas.setFont("Helvetica-Bold", 8)
        page.text(place - page.canvas.stringWidth(van) / 2, 63, van, size=8, bold=True, color=(1, 1, 1))
    for number, (label, *cells) in enumerate(rows):
        top = 80 + 15 * number
        page.text(45, top, label, size=8)
        at = 0
        for text, count in cells:
            middle = (PLACES[at] + PLACES[at + count - 1]) / 2
            page.canvas.setFont("Helvetica", 8)
            page.text(middle - page.canvas.stringWidth(text) / 2, top, text, size=8)
            at += count
        page.rule(40, top + 12, 560)
    return page


def each(*texts):
    return [(text, 1) for text in texts]


FULL = [
    ("Overall length (mm)", *each("5410", "5998", "5998", "6360")),
    ("GVWR (kg)", *each("3300", "3500", "3500", "4250")),
    ("Fresh water (litres)", *each("70", "95", "95", "110")),
    ("Solar (W)", *each("100", "200", "200", "300")),
]


def by_van(facts, field):
    return {fact.model: fact.value for fact in facts if fact.field == field}


def test_a_value_holds_for_the_columns_in_whose_middle_it_stands(facts_of_pdf):
    rows = [*FULL, ("Gray water (litres)", ("60", 1), ("80", 2), ("95", 1)), ("Inverter (W)", ("1000", 3), ("2000", 1)),
            ("Overall height (mm)", ("2640", 2), ("2660", 2)), ("Sleeps", ("2", 4))]  # fmt: skip
    facts = facts_of_pdf(drawn(rows))
    assert by_van(facts, "gray_tank_l") == dict(zip(VANS, (60, 80, 80, 95), strict=True))
    assert by_van(facts, "inverter_w") == dict(zip(VANS, (1000, 1000, 1000, 2000), strict=True))
    assert by_van(facts, "height_mm") == dict(zip(VANS, (2640, 2640, 2660, 2660), strict=True))
    assert by_van(facts, "sleeps") == dict.fromkeys(VANS, 2)


@pytest.mark.parametrize("van", range(4))
def test_a_value_below_one_van_alone_is_only_its_own(facts_of_pdf, van):
    lone = [("", 1)] * van + [("3000", 1)] + [("", 1)] * (3 - van)
    facts = facts_of_pdf(drawn([*FULL, ("Inverter (W)", *lone), ("Sleeps", *each("2", "2", "2", "4"))]))
    assert by_van(facts, "inverter_w") == {VANS[van]: 3000}


EDGES = (205, 300, 390, 590)  # of columns of three widths, as browsers make them by what is in them


def test_columns_of_different_widths_are_spanned_too(facts_of_pdf):
    page = Page()
    page.text(40, 30, "Marrowfen Drift 2026", size=16, bold=True)
    page.box(40, 60, 590, 76, (0.1, 0.2, 0.4))

    def centred(first, count, top, text, **style):
        page.canvas.setFont("Helvetica-Bold" if style else "Helvetica", 8)
        middle = (EDGES[first] + EDGES[first + count]) / 2
        page.text(middle - page.canvas.stringWidth(text) / 2, top, text, size=8, **style)

    for number, van in enumerate(VANS[:3]):
        centred(number, 1, 63, van, bold=True, color=(1, 1, 1))
    rows = [
        ("Overall length (mm)", *each("5998", "5998", "6360")), ("Base vehicle", *each(
            "Ordwell Carter 350", "Ordwell Carter 350", "Ordwell Carter 450 extended")),
        ("GVWR (kg)", *each("3500", "3500", "4250")), ("Fresh water (litres)", *each("95", "95", "110")),
        ("Sleeps", *each("2", "2", "3")), ("Overall height (mm)", *each("2640", "2640", "2720")),
        ("Wheelbase (mm)", *each("3640", "3640", "4100")), ("Battery", *each("100 Ah", "100 Ah", "200 Ah")),
        ("Gray water", *each("80 L, below the floor", "80 L, below the floor", "95 L, in an insulated and heated box")),
        ("Overall width (mm)", ("2080", 3)), ("Solar (W)", ("100", 1), ("300", 2)), ("Inverter (W)", ("1000", 2),
                                                                                  ("2000", 1)),
    ]  # fmt: skip
    for number, (label, *cells) in enumerate(rows):
        page.text(45, 80 + 15 * number, label, size=8)
        at = 0
        for text, count in cells:
            centred(at, count, 80 + 15 * number, text)
            at += count
        page.rule(40, 92 + 15 * number, 590)
    facts = facts_of_pdf(page)
    assert by_van(facts, "width_mm") == dict.fromkeys(VANS[:3], 2080)
    assert by_van(facts, "solar_w") == dict(zip(VANS[:3], (100, 300, 300), strict=True))
    assert by_van(facts, "inverter_w") == dict(zip(VANS[:3], (1000, 1000, 2000), strict=True))
