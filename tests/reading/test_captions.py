"""A side-bar of small labels, each with its value in larger type below it, is read as labels and values."""

import pytest

from specscan.reading.read import read_document
from tests.reading.drawn import Page

GROUPS = [
    (
        "BASE",
        [
            ("Chassis", "Tolvar Freightbox 350"),
            ("Length", "5.99 m"),
            ("Wheelbase", "3.64 m"),
        ],
    ),
    (
        "TANKS",
        [
            ("Fresh", "110 l, indoors, under the bench"),
            ("Gray", "85 l, under the van"),
            ("Gray tank insulation", "None"),
            ("Toilet", "Dry, with a fan and a hatch for|emptying it from outside"),
            ("Drain valve", "Exposed"),
        ],
    ),
    ("WARMTH", [("Heater", "Diesel, forced air"), ("Hot water", "10 l")]),
]

STORY = [
    "Built for one long road after another, and for those who are in no",
    "hurry to turn. The Wren is a small van with a large door, and most of",
    "what it can do was asked for by people who had slept in an older one.",
    "We have built them by hand since the mill closed, two in a good month,",
    "and each goes out with the name of the person who hung its doors.",
]


@pytest.fixture
def page():
    page = Page()
    page.text(250, 40, "Osterby Wren 6", size=22)
    for line, text in enumerate(STORY):
        page.text(250, 80 + 13 * line, text, size=9.5)
    y = 60
    for head, pairs in GROUPS:
        page.text(30, y, head, size=8, bold=True)
        y += 16
        for label, value in pairs:
            page.text(30, y, label, size=6.5)
            for text in value.split("|"):
                y += 10
                page.text(30, y - 1.5, text, size=8.5)
            y += 12
        y += 6
    return page


def test_a_small_label_over_a_larger_value_is_its_label_even_if_the_value_is_words(facts_of_pdf, page):
    found = {fact.field: fact.value for fact in facts_of_pdf(page)}
    assert found["chassis"] == "Tolvar Freightbox 350"
    assert found["fresh_tank_l"] == 110
    assert found["fresh_tank_location"] == "interior"
    assert found["gray_tank_l"] == 85
    assert found["gray_tank_insulated"] is False
    assert found["dump_valve_protection"] == "exposed"
    assert found["water_heater_l"] == 10


def test_headings_between_groups_of_such_pairs_stay_headings_and_values_are_read_to_their_end(examiner, page):
    passages = read_document(page.data(), "wren.pdf", "pdf", examiner.hints).passages
    cells = {passage.row.text: passage for passage in passages if passage.row}
    assert cells["Heater"].sections[-1] == "WARMTH"
    assert cells["Gray"].sections[-1] == "TANKS"
    assert cells["Toilet"].text == "Dry, with a fan and a hatch for emptying it from outside"
    assert not any("long road" in text for text in cells)


def test_a_caption_under_a_picture_with_running_text_below_it_is_no_label(examiner):
    page = Page()
    for number in range(5):
        top = 60 + 120 * number
        page.text(50, top, "Heater and gray tank of the first series", size=7)
        for line, text in enumerate(
            [
                "We built forty of these vans before the first was painted, and",
                "drove each of them over the pass at Gamsrud in the snow.",
            ]
        ):
            page.text(50, top + 26 + 13 * line, text, size=10)
    passages = read_document(page.data(), "story.pdf", "pdf", examiner.hints).passages
    assert not [passage for passage in passages if passage.row]
