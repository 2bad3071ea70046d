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
