"""Numbered clauses whose further lines begin below the number, not below the text."""

from tests.reading.drawn import Page

CLAUSES = [
    ("1.1", "This sheet gives the particulars of the camper vans Drift 58 and Drift 64 X made",
     "by Marrowfen Coachworks Ltd."),
    ("1.2", "Model year: 2026 for both versions.", ""),
    ("2.1", "Overall length: 5980 mm (Drift 58); 6430 mm (Drift 64 X).", ""),
    ("2.2", "Technically permissible maximum laden mass: 3500 kg (Drift 58);", "4250 kg (Drift 64 X)."),
    ("2.3", "Wheelbase: 4020 mm.", ""),
    ("3.1", "Fresh water tank: 105 litres, placed inside the living space under the dinette", "seat."),
    ("3.2", "Hot water storage: 10 litres.", ""),
]  # fmt: skip


def test_the_number_of_a_clause_is_no_label_beside_its_text(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 58 and Drift 64 X", size=16, bold=True)
    top = 90
    for number, first, second in CLAUSES:
        page.row(top, (50, number), (85, first))
        if second:
            page.text(50, top + 11, second)
        top += 30
    facts = facts_of_pdf(page)
    masses = {fact.model: fact.value for fact in facts if fact.field == "gvwr_kg" and not fact.rejected}
    assert masses == {"Drift 58": 3500, "Drift 64 X": 4250}
