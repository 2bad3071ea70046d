"""Lists and headings in plain text that nothing but their place sets apart."""

import pytest

from specscan.reading.read import read_document
from specscan.records.text import Kind

TEXT = """Marrowfen Drift 21

The Drift is a van for those who like to stand in the snow and wait for the sun, as we do.

Equipment as standard

fresh tank 100 l, inside
gray tank 80 l, underslung
cassette toilet, 18 l
heated floor

Extras:
awning, 3 m
second solar panel, 240 W
bike rack

Winter

The heater was tried on a long night in a cold valley, and it
went on until the morning without a sign of being tired or of
giving up.
"""


@pytest.fixture(scope="module")
def passages(examiner):
    return read_document(TEXT.encode(), "drift.txt", "text", examiner.hints).passages


def sections(passages, text):
    return next(passage.sections for passage in passages if passage.text == text)


def test_short_lines_that_begin_small_are_items_of_their_own(passages):
    assert sections(passages, "gray tank 80 l, underslung")[-1] == "Equipment as standard"
    assert any(passage.text == "heated floor" for passage in passages)


def test_a_short_line_alone_heads_what_follows(passages):
    headings = [passage.text for passage in passages if passage.kind is Kind.HEADING]
    assert {"Equipment as standard", "Winter"} <= set(headings)
    assert sections(passages, "bike rack")[-1] == "Extras:"


def test_running_text_that_begins_small_stays_one_paragraph(passages):
    assert any(passage.text.endswith("and it went on until the morning without a sign of being tired or of giving up.")
               for passage in passages)  # fmt: skip


def test_a_long_list_may_hold_lines_as_long_as_running_text_and_short_terms_in_capitals(examiner):
    listed = [
        "chassis Bruska Hauler 3500, three-liter turbo diesel, all-wheel drive", "GVWR 11,030 lb", "sleeps 2",
        "fresh tank 28 gal", "water lines all inside the coach, winterizing bypass behind the drawer",
        "6 gal water heater", "A/C on the roof", "LP tank 11.5 gal", "solar 190 W",
    ]  # fmt: skip
    text = "Marrowfen Drift 21\n\nQUICK SPECS\n" + "\n".join(listed) + "\n"
    found = [p.text for p in read_document(text.encode(), "drift.txt", "text", examiner.hints).passages]
    assert found[-len(listed) :] == listed


def test_a_line_below_the_number_of_a_page_heads_the_list_under_it(facts_of):
    text = (
        "Marrowfen Drift 21\n\nOverall length: 6.40 m\nFresh water: 110 l\nGray water: 90 l\nSleeps: 2\n"
        "Drift 2026 · page 4\n\n4\nExtras worth a thought\n• Lithium battery, 200 Ah\n• Heated floor\n• Bike rack\n"
    )
    said = {fact.field: fact.availability for fact in facts_of(text, "drift.txt")}
    assert said["battery_ah"] == said["heated_floor"] == "optional"
