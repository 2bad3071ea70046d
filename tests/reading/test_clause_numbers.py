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


def chaptered(*lines, wrapped=()):
    """Draw clauses below bold titles of chapters; what is ``wrapped`` is set right below the line before it."""
    page = Page()
    page.text(50, 40, "Data sheet 17", size=18, bold=True)
    y = 80
    for number, text in lines:
        bold = "." not in number
        y += 13 if text in wrapped else 16
        if text in wrapped:
            page.text(80, y, text, size=9.5)
        elif bold:
            page.text(50, y, f"{number}   {text}", size=9.5, bold=True)
        else:
            page.row(y, (50, number), (72, text), size=9.5)
    return page.data()


def test_a_title_among_clauses_is_no_part_of_their_numbers_and_each_chapter_ends_the_one_before(examiner):
    lines = (
        ("1", "General"),
        ("1.1", "Manufacturer: Marrowfen Vans. Product: Drift 590 and Drift 640."),
        ("1.2", "Engine. Both types: 2.1 L diesel."),
        ("2", "Water"),
        ("2.1", "Fresh water tank: 80 l, in the living space of both of the vans."),
        ("2.2", "Waste tank: 70 l."),
        ("3", "Not offered"),
        ("3.1", "Floor heating: both vehicles."),
    )
    document = read_document(chaptered(*lines), "sheet.pdf", "pdf", examiner.hints)
    assert not any(p.row is not None for p in document.passages)
    over = {p.text.partition(":")[0]: p.sections[-1] for p in document.passages if ":" in p.text}
    assert over["Waste tank"] == "Water"
    assert over["Floor heating"] == "Not offered"
    assert all(len(p.sections) <= 2 for p in document.passages)


def test_a_long_line_in_line_with_the_text_of_a_clause_goes_on_with_it(examiner):
    long = "House battery of the type 590: 200 Ah lithium iron phosphate, 12.8 V; of the type 640, as delivered: 600"
    rest = "Ah lithium iron phosphate, 12.8 V. All batteries stand inside the body and they have no heater."
    lines = (
        ("1.1", "Manufacturer: Marrowfen Vans. Product: Drift 590 and Drift 640."),
        ("1.2", "Engine. Both types: 2.1 L diesel."),
        ("1.3", long),
        ("1.3", rest),
        ("1.4", "Solar: 200 W."),
        ("1.5", "Inverter: 1,500 W."),
    )
    document = read_document(chaptered(*lines, wrapped=(rest,)), "sheet.pdf", "pdf", examiner.hints)
    assert f"{long} {rest}" in [p.text for p in document.passages]
