"""Pages without a text layer: read from their pictures, set straight, and silent where a figure is in doubt."""

import re
from io import BytesIO
from pathlib import Path
from string import ascii_letters

import matplotlib
import numpy as np
import pypdfium2 as pdfium
import pytest
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

from specscan.reading.ocr.reader import OcrReader
from specscan.reading.read import read_document
from tests.reading.drawn import Page
from tests.reading.scans import Spoil, as_pdf, render, scanned

ROWS = [
    ("Model year", "2026", "model_year", 2026),
    ("Sleeps", "3", "sleeps", 3),
    ("Overall length", "6,360 mm", "length_mm", 6360),
    ("GVWR", "9,350 lb", "gvwr_kg", 4241.1),
    ("Fresh water tank", "27.5 gal", "fresh_tank_l", 104.1),
    ("Gray water tank", "21 gal", "gray_tank_l", 79.5),
    ("Furnace output", "16,000 BTU/h", "heater_output_w", 4689.1),
    ("Lithium battery", "280 Ah", "battery_ah", 280),
    ("Solar panels", "330 W", "solar_w", 330),
    ("Inverter", "2000 W", "inverter_w", 2000),
]
TRUTH = {field: value for *_, field, value in ROWS}
BAD = Spoil(dpi=200, skew=1.2, noise=14, paper=225, ink=50, shade=25, blur=0.5, specks=20, jpeg=60)
WORN = Spoil(dpi=100, skew=0.5, noise=30, paper=205, ink=90, blur=0.8, specks=40, jpeg=35)


def sheet(rows=ROWS):
    page = Page()
    page.text(60, 50, "Marrowfen Drift 21", size=20, bold=True)
    for number, (label, value, *_) in enumerate(rows):
        page.row(100 + 24 * number, (60, label), (260, value), size=11)
    return page.data()


@pytest.fixture(scope="module")
def read_bytes(read_file, tmp_path_factory):
    def read(data):
        path = tmp_path_factory.mktemp("scan") / "marrowfen_drift_21.pdf"
        path.write_bytes(data)
        return read_file(path)

    return read


@pytest.fixture(scope="module")
def bad_scan(read_bytes):
    return read_bytes(scanned(sheet(), BAD))


def stated(read):
    return {fact.field: fact.num for fact in read.found.facts if not fact.rejected and fact.num is not None}


def wrong(values):
    return {name: value for name, value in values.items() if value != pytest.approx(TRUTH[name], rel=0.02)}


def test_a_skewed_noisy_scan_gives_what_is_printed(bad_scan):
    values = stated(bad_scan)
    assert wrong(values) == {} and len(values) >= 0.85 * len(TRUTH)
    assert "optical character recognition" in bad_scan.record.message


def test_facts_from_a_picture_lie_where_the_words_are_and_say_so(bad_scan, read_bytes):
    printed = {fact.field: fact for fact in read_bytes(sheet()).found.facts}
    for fact in bad_scan.found.facts:
        if fact.num is None or fact.field == "model_year" or fact.rejected:
            continue
        as_text = printed[fact.field]
        # a turn by 1.2 degrees moves the page's corner by 11 points
        assert abs(fact.box.top - as_text.box.top) < 12 and abs(fact.box.x0 - as_text.box.x0) < 12
        assert "picture" in fact.grounds and "picture" not in as_text.grounds


def test_what_cannot_be_read_with_certainty_is_left_out_and_said(read_bytes):
    read = read_bytes(scanned(sheet(), WORN))
    assert wrong(stated(read)) == {}
    if len(stated(read)) < len(TRUTH):
        assert read.record.status in ("partly_read", "unreadable") and read.record.message


@pytest.mark.parametrize("quarters", [2, 3])
def test_a_page_scanned_head_down_or_on_its_side_is_turned(read_bytes, quarters):
    picture = np.rot90(render(pdfium.PdfDocument(sheet()), 1, 150), quarters)
    values = stated(read_bytes(as_pdf([picture], 150)))
    assert wrong(values) == {} and {"fresh_tank_l", "heater_output_w", "solar_w"} <= set(values)


@pytest.mark.parametrize("fault", ["no map", "wrong map"])
def test_a_text_layer_that_says_other_than_is_drawn_is_read_from_the_picture(read_bytes, fault):
    values = stated(read_bytes(garbled(fault)))
    assert wrong(values) == {} and {"fresh_tank_l", "gray_tank_l", "heater_output_w"} <= set(values)


def test_a_page_in_a_language_that_nobody_knows_keeps_its_text(examiner):
    """Recognition would say no more than the text layer; what stands there is not put at risk."""
    page = Page()
    for number in range(8):
        page.text(
            60, 60 + 20 * number, "Tervetuloa matkailuautojen maailmaan, talvi tulee ja lumi peittää tiet", size=11
        )
    document = read_document(page.data(), "esite.pdf", "pdf", examiner.hints)
    assert document.message == "" and document.passages[0].source == "text"


def test_pages_with_text_are_read_as_text_beside_a_scanned_one(read_bytes):
    both = pdfium.PdfDocument(sheet(ROWS[:5]))
    both.import_pages(pdfium.PdfDocument(scanned(sheet(ROWS[5:]), Spoil(dpi=150))))
    buffer = BytesIO()
    both.save(buffer)
    read = read_bytes(buffer.getvalue())
    pages = {fact.field: fact.page for fact in read.found.facts if not fact.rejected}
    assert pages["fresh_tank_l"] == 1 and pages["heater_output_w"] == 2
    assert read.record.message.startswith("page 2 read by optical character recognition")


def test_without_the_extra_the_page_is_named_with_the_command(read_bytes, monkeypatch):
    monkeypatch.setattr(OcrReader, "available", False)
    read = read_bytes(scanned(sheet(), Spoil(dpi=100)))
    assert read.record.status == "unreadable" and not read.found.facts
    assert "pip install 'specscan[ocr]'" in read.record.message


def garbled(fault):
    """Give the sheet in a font without a map from its codes to letters, or with a map to wrong ones."""
    font = Path(matplotlib.get_data_path()) / "fonts" / "ttf" / "DejaVuSans.ttf"
    pdfmetrics.registerFont(TTFont("Coded", font))
    page = Page()
    page.canvas.setPageCompression(0)
    rows = [*ROWS, *((f"Reserve number {n}", f"code {n}", "", 0) for n in "ABCDEFGH")]
    page.canvas.setFont("Coded", 20)
    page.canvas.drawString(60, 770, "Marrowfen Drift 21")
    page.canvas.setFont("Coded", 11)
    for number, (label, value, *_) in enumerate(rows):
        page.canvas.drawString(60, 730 - 24 * number, label)
        page.canvas.drawString(260, 730 - 24 * number, value)
    data = page.data()

    def other(entry):
        code = int(entry.group(2), 16)
        told = 0xFFFD if fault == "no map" else code + 1 if chr(code) in ascii_letters else code
        return entry.group(1) + b"<%04X>" % told

    return re.sub(rb"(\n<[0-9A-F]{2}> )<([0-9A-F]{4})>", other, data)
