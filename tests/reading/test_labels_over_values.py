"""Vans side by side, each with the same labels over its values, and regular letters with sturdy stems."""

import pytest
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

from tests.reading.drawn import HEIGHT, Page

SHEETS = {
    "de": ("Drei Wagen, Modelljahr 2026", "Ein Prospekt der Marrowfen GmbH für alle, die im Winter mit uns reisen.",
           ("Basisfahrzeug", "Gesamtlänge", "Schlafplätze", "Frischwassertank", "Heizung", "Bordbatterie"),
           "Warmluftheizung, Diesel", "Kombiheizung für Luft", "und Wasser, Gas"),
    "en": ("Three vans, model year 2026", "A brochure by Marrowfen Vans Ltd for those of us who travel in the winter.",
           ("Base vehicle", "Overall length", "Sleeps", "Fresh water tank", "Heating", "House battery"),
           "Diesel air heater", "Combined heater for air", "and water, propane"),
}  # fmt: skip
VANS = (("Alder 541", "Kelmar Drover 33", "5.41 m", "2", "70 l", "95 Ah Gel"),
        ("Gorse 600", "Kelmar Drover 35", "5.99 m", "3", "95 l", "120 Ah AGM"),
        ("Teasel 636", "Kelmar Drover 37", "6.36 m", "4", "110 l", "200 Ah AGM"))  # fmt: skip


def by_van(facts, field):
    return {fact.model: fact.value for fact in facts if fact.field == field}


def draw(page, language, draw_line):
    title, said, labels, plain, first, second = SHEETS[language]
    page.text(50, 40, title, size=20, bold=True)
    draw_line(page, 50, 80, said)
    for number, (name, base, length, sleeps, water, battery) in enumerate(VANS):
        x, top = 50 + 170 * number, 120
        page.text(x, top, name, bold=True)
        page.box(x, top + 12, x + 150, top + 13.5, (0.2, 0.5, 0.2))
        top += 24
        for label, value in zip(labels, (base, length, sleeps, water, "", battery), strict=True):
            draw_line(page, x, top, label, (0.47, 0.47, 0.47))
            for line in [value] if value else [plain] if not number else [first, second]:
                top += 11
                draw_line(page, x, top, line)
            top += 14
    return page


def plain_line(page, x, top, text, color=(0.13, 0.13, 0.13)):
    page.text(x, top, text, color=color)


def check(facts):
    assert by_van(facts, "length_mm") == {"Alder 541": 5410, "Gorse 600": 5990, "Teasel 636": 6360}
    assert by_van(facts, "sleeps") == {"Alder 541": 2, "Gorse 600": 3, "Teasel 636": 4}
    assert by_van(facts, "fresh_tank_l") == {"Alder 541": 70, "Gorse 600": 95, "Teasel 636": 110}
    assert by_van(facts, "battery_ah") == {"Alder 541": 95, "Gorse 600": 120, "Teasel 636": 200}


@pytest.mark.parametrize("language", list(SHEETS))
def test_lists_of_the_same_labels_over_values_side_by_side_are_no_table(facts_of_pdf, language):
    check(facts_of_pdf(draw(Page(), language, plain_line)))


@pytest.mark.parametrize("language", list(SHEETS))
def test_sturdy_letters_of_a_font_called_regular_are_not_bold(facts_of_pdf, language):
    font = TTFont("Sturdy", "Vera.ttf")  # whose own name ends in "Roman"
    font.face.stemV = 130
    pdfmetrics.registerFont(font)

    def sturdy_line(page, x, top, text, color=(0.13, 0.13, 0.13)):
        page.canvas.setFillColorRGB(*color)
        page.canvas.setFont("Sturdy", 8)
        page.canvas.drawString(x, HEIGHT - top - 8, text)

    check(facts_of_pdf(draw(Page(), language, sturdy_line)))
