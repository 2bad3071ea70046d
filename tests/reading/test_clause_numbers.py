"""Numbers of clauses and chapters are no labels and no part of headings; other figures stay."""

from specscan.reading.read import read_document
from specscan.records.text import Kind
from tests.reading.drawn import Page

CLAUSES = (
    ("1", "Identification", None),
    ("1.1", "Manufacturer: Marrowfen Vans. Product: Drift 590 and Drift 640.", 9),
    ("1.2", "Engine. Both types: 2.1 L diesel.", 9),
    ("2", "Dimensions", None),
    ("2.1", "Overall length. 590: 5 932 mm. 640: 6 412 mm.", 9),
    ("2.2", "Wheelbase. Both types: 3 665 mm.", 9),
    ("3", "Water", None),
    ("3.1", "Fresh water tank. 590: 80 l. 640: 100 l.", 9),
)


def sheet(clauses):
    """Draw a data sheet of numbered clauses."""
    page = Page()
    page.text(50, 40, "Data sheet 17", size=18, bold=True)
    for place, (number, text, size) in enumerate(clauses):
        page.row(80 + 24 * place, (50, number), (90, text), size=size or 13, bold=size is None)
    return page.data()


def test_a_clause_is_text_and_a_chapter_is_its_heading_without_their_numbers(examiner):
    document = read_document(sheet(CLAUSES), "sheet.pdf", "pdf", examiner.hints)
    told = [p for p in document.passages if p.text.startswith("Overall length")]
    assert [(p.kind, p.row, p.sections[-1:]) for p in told] == [(Kind.PROSE, None, ("Dimensions",))]
    headings = [p.text for p in document.passages if p.kind is Kind.HEADING]
    assert headings[-3:] == ["Identification", "Dimensions", "Water"]
    assert not any(title.text.startswith("1 ") for title in document.titles)


def test_figures_that_do_not_go_on_from_one_another_are_labels_still(examiner):
    sizes = (("5.4", "short"), ("5.9", "medium"), ("6.4", "long"), ("6.9", "extra long"), ("7.4", "longest"))
    document = read_document(sheet([(*one, 9) for one in sizes]), "sheet.pdf", "pdf", examiner.hints)
    texts = " ".join(f"{p.row.text if p.row else ''} {p.text}" for p in document.passages)
    assert all(number in texts for number, _ in sizes)
