"""The characters of a page as columns: what the readers before and after them rely on."""

import re

import numpy as np
import pytest

from specscan.reading.letters.glyphs import open_pdf, read_sheets
from specscan.reading.letters.sheet import Glyph, Letters, Style, text_of, told
from specscan.reading.letters.spelling import build_words
from specscan.records.text import Box
from tests.reading.drawn import HEIGHT, WIDTH, Page


def sheets_of(data):
    return list(read_sheets(open_pdf(data), lambda sheet: True))


def words_of(data):
    return [word for sheet in sheets_of(data) for word in build_words(sheet.letters)]


def glyph(text, start, stop):
    return Glyph(text, Box(start, 0, stop, 10), start, stop, 8.0, 10.0, Style(), False, False)


def test_a_glyph_of_several_letters_gives_each_its_share():
    letters = Letters.of([glyph("a", 0, 5), glyph("ffi", 5, 11), glyph("x", 11, 16)])

    assert letters.text == "affix"
    assert letters.start.tolist() == [0, 5, 7, 9, 11]
    assert [word.text for word in build_words(letters)] == ["affix"]


def test_the_tail_of_a_letter_below_the_next_ends_no_word():
    letters = Letters.of([glyph("Q", 0, 15), glyph("u", 7, 12), glyph("e", 12, 16)])

    assert [word.text for word in build_words(letters)] == ["Que"]


def test_letters_beyond_the_table_are_told_too():
    codes = np.array([ord("a"), ord(" "), ord("漢"), 0x1F600, 0x1D7D9], np.uint32)

    assert told(codes, str.isalnum).tolist() == [True, False, True, False, True]
    assert text_of(codes) == "a 漢\U0001f600\U0001d7d9"


@pytest.mark.parametrize("turn", [0, 90, 180, 270])
def test_words_of_a_turned_page_stand_where_a_viewer_shows_them(turn):
    page = Page()
    page.canvas.setPageRotation(turn)
    page.text(100, 400, "Gray water")
    (sheet,) = sheets_of(page.data())

    first = build_words(sheet.letters)[0]
    x, y = 100, HEIGHT - 400 - 9  # where the word begins in the file; ReportLab swaps the sides of a page on its side
    expected = {0: (x, HEIGHT - y), 90: (y, x), 180: (WIDTH - x, y), 270: (WIDTH - y, HEIGHT - x)}[turn]
    assert (sheet.width, sheet.height) == (WIDTH, HEIGHT)
    assert (first.text, first.direction) == ("Gray", turn)
    assert first.box.holds(*expected, slack=3)


def test_the_size_of_pages_is_read_where_the_file_names_it_once_for_all():
    page = Page()
    page.canvas.setPageSize((900, 500))
    page.canvas.drawString(800, 400, "Gray water")
    data = page.data()
    own = re.search(rb"/MediaBox \[.*?\]", data).group()
    once = data.replace(own, b"").replace(b"/Type /Pages", b"/Type /Pages " + own)
    (sheet,) = sheets_of(once)

    assert once.count(b"/MediaBox") == 1
    assert (sheet.width, sheet.height) == (900, 500)
    assert [word.text for word in build_words(sheet.letters)] == ["Gray", "water"]


def test_a_letter_spaced_heading_is_words_and_a_wide_gap_parts_them():
    page = Page()
    page.canvas.setFont("Helvetica", 12)
    page.canvas.drawString(60, 700, "TANKS AND LINES", charSpace=4)
    page.text(60, 200, "100 l")
    page.text(84, 200, "80 l")

    assert [word.text for word in words_of(page.data())] == ["TANKS", "AND", "LINES", "100", "l", "80", "l"]


def test_marks_at_even_gaps_in_narrow_columns_are_no_word():
    page = Page()
    page.text(40, 60, "Heated floor")
    page.canvas.drawString(300, HEIGHT - 69, "XOO", charSpace=16)

    assert [word.text for word in words_of(page.data())] == ["Heated", "floor", "X", "O", "O"]


def test_small_capitals_are_one_word_with_the_capital_before_them():
    page = Page()
    x = 60.0
    for text, size in (
        ("S", 14),
        ("EDGE", 11),
        (" ", 14),
        ("M", 14),
        ("ARSH", 11),
        (" ", 14),
        ("A", 14),
        (" CREEK", 11),
    ):
        page.canvas.setFont("Helvetica", size)
        page.canvas.drawString(x, 700, text)
        x += page.canvas.stringWidth(text, "Helvetica", size)

    assert [word.text for word in words_of(page.data())] == ["SEDGE", "MARSH", "A", "CREEK"]


def test_styles_change_in_the_middle_of_a_line():
    page = Page()
    page.row(100, (60, "plain"))
    page.text(90, 100, "bold", bold=True, color=(1, 0, 0))

    plain, bold = words_of(page.data())
    assert (plain.bold, plain.color) == (False, (0, 0, 0))
    assert (bold.bold, bold.color) == (True, (255, 0, 0))


def test_a_table_drawn_inside_a_form_at_another_scale_keeps_its_rules():
    page = Page()
    canvas = page.canvas
    canvas.beginForm("table")
    for x in (0, 50, 100):
        canvas.line(x, 0, x, 40)
    canvas.rect(0, 0, 100, 40, fill=0)
    canvas.endForm()
    canvas.translate(100, 300)
    canvas.scale(2, 2)
    canvas.doForm("table")
    (sheet,) = sheets_of(page.data())

    assert sorted(round(stroke.x0) for stroke in sheet.strokes) == [100, 200, 300]
    (frame,) = sheet.fills
    assert (frame.box.width, frame.box.height) == pytest.approx((200, 80), abs=5)  # with its line


def test_a_space_of_the_smaller_letters_behind_a_large_name_parts_them():
    page = Page()
    page.text(50, 40, "Tusk", size=30, bold=True)
    end = 50 + page.canvas.stringWidth("Tusk", "Helvetica-Bold", 30)
    page.text(end + 3, 57, "48 and 56 Fell", size=13)
    page.text(50, 100, "CO", size=20)
    page.text(50 + page.canvas.stringWidth("CO", "Helvetica", 20) + 0.5, 114, "2", size=11)
    assert [word.text for word in words_of(page.data())] == ["Tusk", "48", "and", "56", "Fell", "CO2"]
