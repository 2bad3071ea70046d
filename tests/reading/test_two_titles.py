"""Lines of one style below each other that are two, and rows of marks set as closely as the lines of a cell."""

from specscan.reading.read import read_document
from tests.reading.drawn import Page


def test_two_lines_of_one_style_with_room_behind_the_first_are_two_titles(examiner):
    page = Page()
    page.text(60, 50, "Made for the long night", size=20, bold=True)
    page.text(60, 84, "Specifications by Marrowfen", size=12)
    page.text(60, 99, "Early Alder", size=12)
    page.text(
        60, 126, "A good van is a short list of things that work, and of things that it leaves at home for others."
    )
    page.text(
        60, 138, "Every drawer has been opened ten thousand times by a machine that has never once got tired of it."
    )
    passages = read_document(page.data(), "alder.pdf", "pdf", examiner.hints).passages
    assert {"Specifications by Marrowfen", "Early Alder"} <= {passage.text for passage in passages}


def test_a_row_of_marks_right_below_the_heads_or_another_row_is_a_row(examiner):
    page = Page()
    page.text(60, 20, "Marrowfen Tusk 2026", size=20, bold=True)
    vans = (330, 390, 450)
    page.row(60, *zip(vans, ("18 FB", "19 E", "24 S"), strict=True), bold=True)
    rows = {"Heated floor": (71, "+-+"), "Reversing camera": (86, "--+"), "Roof vent": (102, "+--"),
            "Insulated fresh tank": (118, "++-"), "Heated dump valve": (129, "-++"), "Insulated shades": (145, "+-+"),
            "Awning": (161, "-+-"), "Second bed": (177, "--+")}  # fmt: skip
    for label, (top, marks) in rows.items():
        page.row(top, (60, label), *zip(vans, marks, strict=True))
    passages = read_document(page.data(), "tusk.pdf", "pdf", examiner.hints).passages
    cells = {(p.row.text, p.column.text): p.text for p in passages if p.row and p.column}
    for label, (_, marks) in rows.items():
        assert [cells.get((label, van)) for van in ("18 FB", "19 E", "24 S")] == list(marks)


def test_a_line_that_lists_codes_below_a_title_of_its_style_is_a_line_of_its_own(examiner):
    page = Page()
    page.text(60, 50, "MARROWFEN", size=20, bold=True)
    page.text(60, 84, "Tusk: the 2026 model year", size=12)
    page.text(60, 99, "630 Fell, 630 Larch, 630 Moor", size=12)
    page.text(60, 126, "The 630 Fell has rear-wheel drive, the 630 Larch front-wheel drive, and so has the 630 Moor.")
    passages = read_document(page.data(), "tusk.pdf", "pdf", examiner.hints).passages
    assert "630 Fell, 630 Larch, 630 Moor" in {passage.text for passage in passages}
