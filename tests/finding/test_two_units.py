"""Labels and columns that name two units, and figures printed in both."""

import pytest

GALLON, IMPERIAL = 3.785411784, 4.54609  # NIST SP 811 (2008), Appendix B

LINES = [
    ("UK", "Fresh water tank, L (gal): 70 (15.4)", {"fresh_tank_l": 70}),
    ("US", "Fresh water tank, gal (L): 19 (72)", {"fresh_tank_l": 19 * GALLON}),
    ("US", "Fresh water tank (gal/L): 19/72", {"fresh_tank_l": 19 * GALLON}),
    ("US", "Gray water tank [gal (L)]: 15 (57)", {"gray_tank_l": 15 * GALLON}),
    ("UK", "Overall height, mm (in): 2,790 (109.8)", {"height_mm": 2790}),
    ("US", "Overall height in. (mm): 110 (2794)", {"height_mm": 2794}),
]

MATRIX = """Marrowfen Vans
Model year 2026

| | Unit | Drift 19 | Drift 22 |
|---|---|---|---|
| Length | m (in) | 5.91 (232.7) | 6.40 (252) |
| Berths | | 2 | 3 |
| Fresh water | gal / L | 19 / 72 | 25 / 95 |
| Waste water | L (gal) | 57 (15) | 80 (15) |
| Solar | W | 200 | 400 |
"""


@pytest.mark.parametrize(("region", "line", "expected"), LINES)
def test_the_first_unit_of_a_label_goes_with_the_first_figure(states, region, line, expected):
    states(region, line, expected)


def test_a_column_of_units_names_two(facts_of):
    facts = {(fact.field, fact.model): fact.value for fact in facts_of(MATRIX, "matrix.md")}
    assert facts["length_mm", "Drift 22"] == pytest.approx(6400)
    assert facts["fresh_tank_l", "Drift 19"] == pytest.approx(19 * GALLON)
    assert facts["gray_tank_l", "Drift 19"] == pytest.approx(57)
    assert facts["solar_w", "Drift 22"] == 400


def test_two_figures_that_are_not_one_amount_are_left_out(facts_of):
    assert not [f for f in facts_of(MATRIX, "matrix.md") if (f.field, f.model) == ("gray_tank_l", "Drift 22")]


def test_litres_in_the_next_column_tell_which_gallons_a_british_sheet_prints(facts_of):
    rows = ("Berths | 2 | 2", "Length | 6.36 m | 20 ft 10 in", "MTPLM | 3500 kg | 7716 lb",
            "Leisure battery | 100 Ah | 100 Ah",
            "Waste water tank | 79 ltr | 21 gal", "Fresh water tank | 114 ltr | 30 gal")  # fmt: skip
    table = "".join(f"| {row} |\n" for row in ("Habitation | SI | U.S.", "---|---|---", *rows))
    facts = facts_of(f"Marrowfen Motorhomes\n\nMarrowfen Drift 21, model year 2026\n\n{table}", "export.md")
    gallons = {fact.field: fact.value for fact in facts if fact.printed_unit.startswith("gal")}
    assert gallons == {"gray_tank_l": pytest.approx(21 * GALLON), "fresh_tank_l": pytest.approx(30 * GALLON)}
