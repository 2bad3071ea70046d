"""Signs, rows of dots, sizes and names on scans, without the recogniser."""

import cv2
import numpy as np
import pytest

from specscan.reading.letters.sheet import Glyph, Letters, Sheet, Style
from specscan.reading.ocr.agree import names_agreed, sizes_agreed
from specscan.reading.ocr.align import Place
from specscan.reading.ocr.engine import Sign
from specscan.reading.ocr.leaders import find_leaders, leader_glyphs, without
from specscan.reading.ocr.measure import fine_size
from specscan.reading.ocr.sheet import Spelled
from specscan.reading.ocr.signs import find_signs
from specscan.records.text import Box

DPI = 200
SIDE = 24  # pixels of a sign of about 9 points


def paper():
    return np.full((120, 900), 245, np.uint8)


def polygon(picture, x, y, corners):
    points = np.array([(x + SIDE * across, y + SIDE * down) for across, down in corners])
    cv2.fillPoly(picture, [np.round(points).astype(np.int32)], (20,))


DIAMOND = [(0.5, 0), (1, 0.5), (0.5, 1), (0, 0.5)]


def test_a_diamond_and_one_of_four_parts_are_told_apart():
    picture = paper()
    polygon(picture, 40, 40, DIAMOND)
    polygon(picture, 140, 40, DIAMOND)
    cv2.line(picture, (140, 40), (164, 64), (245,), 2)
    cv2.line(picture, (164, 40), (140, 64), (245,), 2)
    cv2.circle(picture, (252, 52), SIDE // 2, (20,), -1)
    assert [sign for _, sign in find_signs(picture, picture < 128, DPI)] == ["◆", "❖"]


def dots(picture, start, number):
    for place in range(number):
        cv2.circle(picture, (start + 9 * place, 60), 1, (20,), -1)


def test_a_row_of_equal_dots_leads_and_three_dots_do_not():
    picture = paper()
    dots(picture, 200, 30)
    dots(picture, 700, 3)
    [row] = find_leaders(picture < 128, DPI)
    assert (row.x0, row.x1) == pytest.approx((200, 461), abs=3)
    assert (without([row], picture, DPI)[:, 190:480] > 200).all()
    text = Box(20, 40, 190, 66)
    assert "....." in "".join(glyph.text for glyph in leader_glyphs([row], [(text, 61.0, 28.0)], 72 / DPI))
    assert leader_glyphs([row], [(text, 90.0, 28.0)], 72 / DPI) == []  # a dotted rule between lines of text


@pytest.mark.parametrize("height", [19.0, 20.5])
def test_the_size_of_letters_is_measured_to_a_fraction_of_a_pixel(height):
    dark = np.zeros((40, 60), np.float32)
    dark[10 : 10 + int(height), 5:20] = 200.0
    dark[10 + int(height), 5:20] = 200.0 * (height % 1)
    place = Place(Sign("H", 1.0, 0.2), 5, 20, 10, 30)
    assert fine_size([place], dark) == pytest.approx(height / 0.72, rel=0.03)  # capitals reach 0.72 em, from memory


def page(*words):
    """A sheet with words in a row, each with how sure it was read."""
    glyphs, spelled = [], []
    for text, sure in words:
        first = len(glyphs)
        for sign in text + " ":
            x = 6.0 * len(glyphs)
            style = Style(em=10.0)
            glyphs.append(Glyph(sign, Box(x, 0, x + 6, 10), x, x + 6, 8.0, 10.0, style, False, False))
        spelled.append(Spelled(text, sure, first, first + len(text)))
    return Sheet(1, 600, 800, letters=Letters.of(glyphs)), glyphs, spelled


def test_a_name_that_was_read_differently_takes_the_surer_reading():
    first, foot = page(("Ysset", 1.0), ("Heizung", 1.0)), page(("Yssret", 0.62), ("Heizungen", 0.6))
    assert names_agreed([first, foot], lambda word: word.startswith("Heiz")) == [("Yssret", "Ysset")]
    assert foot[0].letters.text == "Ysset Heizungen "


def test_a_name_read_with_certainty_stays_and_so_does_one_that_could_be_two_others():
    sure, unsure = page(("Yssret", 1.0)), page(("Sallet", 1.0), ("Salret", 0.95), ("Saltet", 0.5))
    assert names_agreed([page(("Ysset", 1.0)), sure, unsure], lambda word: False) == []


def test_a_heading_is_as_large_on_every_page_of_a_scan():
    sheets = []
    for size in (14.1, 13.9):
        glyph = Glyph("A", Box(0, 0, 9, 14), 0, 9, 12, size, Style(em=size), False, False)
        sheets.append(Sheet(1, 600, 800, letters=Letters.of([glyph])))
    sizes_agreed(sheets)
    assert sheets[0].letters.size[0] == sheets[1].letters.size[0] == pytest.approx(14.0)
