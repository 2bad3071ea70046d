"""Priced lines that begin with a figure, names of vans that go on over two lines, and a minus behind a label."""

import pytest

from tests.reading.drawn import Page

PRICED = [
    "Swivel seats for the cab: $1,350",
    "2,000 W inverter: $2,400",
    "4x4 drivetrain: $5,750",
    "Heating pad, 12 V, switched, for the fresh water tank: $640",
    "Heated dump valve: $350",
    "Bike rack: $900",
]


def test_priced_lines_are_options_whatever_they_begin_with(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 21", size=20, bold=True)
    page.text(
        50, 70, "The Drift is built for long roads and for those who are in no hurry at all, in any season.", size=8
    )
    page.text(
        50, 82, "It is a van like few others, made by hand in a mill by the river, one a week, and no faster.", size=8
    )
    page.text(50, 94, "Overall length: 6.36 m", size=8)
    page.text(50, 120, "Price list of options", size=14, bold=True)
    for number, line in enumerate(PRICED):
        page.text(50, 142 + 13 * number, line, size=10)
    for number in range(6):  # most of the page is small print
        page.text(
            50,
            300 + 10 * number,
            "All that is said here was true when it was printed, and may change at any time.",
            size=8,
        )
    said = {(fact.field, fact.value, fact.availability) for fact in facts_of_pdf(page)}
    assert {
        ("inverter_w", 2000, "optional"),
        ("drive", "all", "optional"),
        ("fresh_tank_heat", "electric_pad", "optional"),
        ("dump_valve_protection", "heated", "optional"),
    } <= said


WRAPPED = [
    (("Models",), ("Drive", ""), ("Fresh / gray", "water"), ("Inverter", ""), ("Shore", "power")),
    (("Drift 18", "Fell"), ("rear", "wheels"), ("30 / 22", "gallons"), ("1,000 W", ""), ("30 A", "")),
    (("Drift 19", "Moor"), ("front", "wheels"), ("26 / 18", "gallons"), ("2,000 W", ""), ("30 A", "")),
]


def test_names_in_rows_go_on_over_two_lines(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=18, bold=True)
    top = 90.0
    for row in WRAPPED:
        for number, x in enumerate((50, 120, 210, 310, 400)):
            for line, text in enumerate(row[number]):
                page.text(x, top + 11.25 * line, text, size=9, bold=row is WRAPPED[0])
        top += 26.25
    facts = facts_of_pdf(page)
    tanks = {(fact.model, round(fact.value / 3.785411784)) for fact in facts if fact.field == "fresh_tank_l"}
    assert tanks == {("Drift 18 Fell", 30), ("Drift 19 Moor", 26)}


@pytest.mark.parametrize(
    ("line", "expected"),
    [
        ("<p><b>Lowest outside temperature:</b> -15 °F (-26 °C)</p>", {("rated_min_temp_c", -26)}),
        ("<ul><li><b>Lowest outside temperature</b>: –20 °C</li></ul>", {("rated_min_temp_c", -20)}),
        ("<p><b>Overall width</b> – 2.05 m</p>", {("width_mm", 2050)}),
        ("<p><b>Inverter:</b> - none</p>", {("inverter_w", 0)}),
    ],
)
def test_a_minus_behind_a_label_in_bold_is_kept_and_a_dash_is_not(facts_of, line, expected):
    more = "<p><b>Solar:</b> 200 W</p><p><b>Gray tank:</b> 80 l</p>"
    page = f"<html><body><h1>Marrowfen Drift 21</h1>{line}{more}</body></html>"
    facts = facts_of(page, "page.html")
    assert {
        (f.field, round(f.value)) for f in facts if f.field not in ("model", "maker", "solar_w", "gray_tank_l")
    } == expected
