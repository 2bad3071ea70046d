"""Notes set one behind the other below a table, whose numbers are not raised: "1 Usable. 2 Heat output."."""

import pytest

from tests.reading.drawn import Page

LABELS = ("", "LENGTH m", "HEIGHT m", "GVM kg", "SLEEPS", "FURNACE W²", "LPG L¹")
ROWS = [("Drift 19", "5.90", "2.61", "3500", "2", "3500", "21"), ("Drift 21", "6.40", "2.84", "4250", "2", "³", "30")]
NOTES = "1 Usable amount. 2 Heat output. 3 No furnace; ask us. Sold in 4 states."


@pytest.fixture
def facts(facts_of_pdf):
    """Give what a page with such notes states, by van and field."""
    page = Page()
    page.text(40, 40, "Marrowfen Drift", size=20, bold=True)
    page.text(40, 70, "Model year 2026")
    for number, cells in enumerate((LABELS, *ROWS)):
        page.row(110 + 16 * number, *zip(range(40, 560, 72), cells, strict=False), bold=not number)
    page.text(40, 170, NOTES, size=8)
    found = {(fact.model, fact.field): fact for fact in facts_of_pdf(page)}
    assert {model for model, _ in found} == {"Drift 19", "Drift 21"}
    return {(model.split()[-1], field): fact for (model, field), fact in found.items()}


def test_each_note_says_what_the_figures_of_its_sign_are(facts):
    assert facts["19", "heater_output_w"].value == 3500
    assert ("19", "heater_rating_w") not in facts
    assert facts["21", "propane_tank_l"].basis == "usable"


def test_other_signs_than_numbers_part_notes_too(facts_of_pdf):
    page = Page()
    page.text(40, 40, "Marrowfen Drift", size=20, bold=True)
    page.text(40, 70, "Model year 2026")
    labels = ("", "LENGTH m", "HEIGHT m", "GVM kg", "SLEEPS", "FURNACE W†", "LPG L*")
    for number, cells in enumerate((labels, ROWS[0], ("Drift 21", "6.40", "2.84", "4250", "2", "4000", "30"))):
        page.row(110 + 16 * number, *zip(range(40, 560, 72), cells, strict=False), bold=not number)
    page.text(40, 170, "* Usable amount. † Heat output, not input. Sold in 4 states.", size=8)
    found = {(fact.model, fact.field): fact for fact in facts_of_pdf(page)}
    assert found["Drift 19", "heater_output_w"].value == 3500
    assert found["Drift 21", "propane_tank_l"].basis == "usable"


def test_a_cell_that_holds_only_the_sign_of_a_note_says_nothing_of_its_label(facts):
    assert facts["19", "heater_type"].value == "forced_air"
    assert ("21", "heater_type") not in facts


def test_a_note_below_the_last_row_is_none_of_the_table_however_much_follows(facts_of_pdf):
    page = Page()
    page.text(40, 40, "Marrowfen Drift", size=20, bold=True)
    page.text(40, 70, "Model year 2026")
    heat = ("MODEL", "HEATER", "RATING (BTU/h)*", "SOLAR (W)", "INVERTER (W)")
    rows = [("Drift 19", "LP furnace", "12,000", "100", "1,000"), ("Drift 21", "LP furnace", "16,000", "200", "2,000"),
            ("Drift 23", "Diesel hydronic", "18,000", "400", "3,000")]  # fmt: skip
    body = ("MODEL", "FRESH TANK (gal)", "GRAY TANK (gal)", "SLEEPS", "GVWR (lb)")
    sizes = [(name, "20", "18", "2", "9,350") for name, *_ in rows]
    for top, cells in ((110, [heat, *rows]), (220, [body, *sizes])):
        page.box(36, top - 3, 560, top + 13, (0.25, 0.15, 0.1))
        for number, line in enumerate(cells):
            columns = zip((40, 130, 250, 360, 460), line, strict=True)
            page.row(top + 16 * number, *columns, bold=not number, color=(0, 0, 0) if number else (1, 1, 1))
            page.rule(35.5, top + 13 + 16 * number, 560.5)
    page.text(38, 178, "* LP furnaces: input, as on the plate. Diesel hydronic heater: output.", size=8)
    page.text(38, 198, "Tanks and sizes", size=14, bold=True)
    found = {(fact.model[-2:], fact.field): fact.value for fact in facts_of_pdf(page) if not fact.rejected}
    assert [round(found[van, "heater_input_w"]) for van in ("19", "21")] == [3517, 4689]
    assert (round(found["23", "heater_output_w"]), found["23", "solar_w"]) == (5275, 400)
    assert {found[van, "heater_fuel"] for van in ("19", "21")} == {"propane"} and found["23", "heater_fuel"] == "diesel"


def test_notes_set_in_a_row_with_wide_gaps_are_no_cells_of_the_table_above(facts_of_pdf):
    page = Page()
    page.text(40, 40, "Marrowfen Drift", size=20, bold=True)
    page.text(40, 70, "Model year 2026")
    labels = ("", "LENGTH m", "HEIGHT m", "GVM kg", "SLEEPS", "FURNACE W‡", "LPG L†")
    for number, cells in enumerate((labels, ROWS[0], ("Drift 21", "6.40", "2.84", "4250", "2", "4000", "30"))):
        page.row(110 + 16 * number, *zip(range(40, 560, 72), cells, strict=False), bold=not number)
    page.row(
        156, (40, "† Usable amount, in litres."), (200, "‡ Heat output at sea level."), (360, "Width 2.05 m."), size=8
    )
    found = {(fact.model, fact.field): fact for fact in facts_of_pdf(page)}
    assert found["Drift 19", "heater_output_w"].value == 3500
    assert found["Drift 21", "propane_tank_l"].basis == "usable"
    assert found["Drift 21", "width_mm"].value == 2050
