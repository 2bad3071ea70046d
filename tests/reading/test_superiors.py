"""Note signs set in the superior figures of a font, which the file calls plain figures of full size."""

from pathlib import Path

import pytest
import reportlab
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

from specscan.reading.read import read_document
from tests.reading.drawn import HEIGHT, Page

FONT = "Vera"
FIGURES = {"¹": "1", "²": "2", "³": "3"}


@pytest.fixture(scope="module")
def passages(examiner):
    """Give the passages of a page whose superior figures the file calls plain ones, as typesetting programs do."""
    if FONT not in pdfmetrics.getRegisteredFontNames():
        pdfmetrics.registerFont(TTFont(FONT, str(Path(reportlab.__file__).parent / "fonts" / "Vera.ttf")))
    page = Page()
    page.canvas.setPageCompression(0)
    page.canvas.setFont(FONT, 9)
    for row, cells in enumerate(
        [
            ("", "Drift 19", "Drift 21"),
            ("Overall height", "2,610 mm", "2,840 mm²"),
            ("Berths", "2", "2³"),
            ("Heater power¹", "4,000 W", "6,000 W"),
            ("Body surface", "21 m²", "25 m²"),
        ]
    ):
        for column, cell in enumerate(cells):
            page.canvas.drawString(60 + 160 * column, HEIGHT - 80 - 18 * row, cell)
    page.canvas.drawString(60, HEIGHT - 200, "¹ Heat given off. ² With roof rack (option) 2,990 mm. ³ More on request.")
    data = page.data()
    for sign, figure in FIGURES.items():
        data = data.replace(b"<%04X>" % ord(sign), b"<%04X>" % ord(figure))
    return read_document(data, "sheet.pdf", "pdf", examiner.hints).passages


def test_a_superior_figure_is_a_note_sign_and_no_digit(passages):
    cells = {(p.row.text, p.column.text): (p.text, p.notes) for p in passages if p.column is not None}
    assert cells["Berths", "Drift 21"] == ("2", ("3",))
    assert cells["Overall height", "Drift 21"] == ("2,840 mm", ("2",))
    assert ("Heater power", "Drift 19") in cells
    assert [p.text for p in passages if p.kind.value == "footnote"][:1] == ["Heat given off."]


def test_behind_a_unit_of_length_it_is_a_power(passages):
    assert {p.text for p in passages if p.row is not None and p.row.text == "Body surface"} == {"21 m²", "25 m²"}


def test_raised_primes_behind_figures_are_feet_and_inches(examiner):
    page = Page()
    page.canvas.setPageCompression(0)
    pdfmetrics.registerFont(TTFont(FONT, str(Path(reportlab.__file__).parent / "fonts" / "Vera.ttf")))
    x, top = 60, 80
    for text, size, lift in (
        ("Overall height 9", 10, 0),
        ("’", 7, 4),
        (" 5", 10, 0),
        ("’’", 7, 4),
        (" with fan", 10, 0),
    ):
        page.canvas.setFont(FONT, size)
        page.canvas.drawString(x, HEIGHT - top + lift, text)
        x += pdfmetrics.stringWidth(text, FONT, size)
    data = page.data().replace(b"<2019>", b"<2032>")  # the font has no primes of its own
    texts = [passage.text for passage in read_document(data, "sheet.pdf", "pdf", examiner.hints).passages]
    assert texts == ["Overall height 9′ 5″ with fan"]
