"""Numbered captions around the drawing of a van; boxes that each hold a label over its value; bold labels in text."""

from specscan.reading.read import read_document
from specscan.records.text import Kind
from tests.reading.drawn import Page

AROUND = [
    ("Fresh water", ("95 L", "Inside, under the bed"), 40, 120),
    ("Grey water", ("80 L", "Slung under the floor", "12 V heating pad: option"), 40, 220),
    ("Toilet", ("Cassette, 18 L", "No black tank"), 40, 320),
    ("Warmth", ("Diesel air heater", "3.5 kW output"), 420, 120),
    ("House battery", ("2 × 110 Ah LiFePO4", "at 12.8 V"), 420, 220),
    ("Gas locker", ("One 5 kg LPG bottle,", "for the cooktop only"), 420, 320),
]
BOXES = [("Base vehicle", "Fenmoor Carrier 35"), ("Engine", "2.1 L turbo-diesel"), ("Length", "6,150 mm"),
         ("Drive", "AWD"), ("Width", "2,080 mm"), ("GVM", "4,250 kg")]  # fmt: skip


def drawn(*, boxes=False):
    page = Page()
    page.text(40, 40, "Marrowfen Drift 61", size=22, bold=True)
    page.text(40, 72, "Model year 2026")
    for number, (caption, lines, left, top) in enumerate(AROUND, start=1):
        page.text(left, top, f"{number} {caption}", size=9, bold=True)
        for place, line in enumerate(lines, start=1):
            page.text(left, top + 13 * place, line, size=8.5)
    for place, (label, value) in enumerate(BOXES):
        left, top = 60 + 160 * (place % 3), 430 + 36 * (place // 3)
        if boxes:
            page.frame(left, top, left + 160, top + 36)
            page.text(left + 5, top + 4, label, size=6)
            page.text(left + 5, top + 16, value, size=9, bold=True)
        else:
            page.text(left + 5, top + 10, f"{label}: {value}", size=8.5)
    page.text(40, 540, "Marrowfen Pty Ltd, 3 Mill Road, Farrow.", size=7)
    return page


def test_each_caption_heads_the_lines_below_it(examiner):
    passages = read_document(drawn().data(), "drift.pdf", "pdf", examiner.hints).passages
    items = {p.text: p.sections[-1] for p in passages if p.kind is Kind.BULLET}
    assert items["95 L"] == "Fresh water"
    assert items["80 L"] == "Grey water"
    assert items["One 5 kg LPG bottle, for the cooktop only"] == "Gas locker"
    assert "Slung under the floor" in items


def test_what_the_captions_say_is_read(facts_of_pdf):
    stated = {(fact.field, fact.value, fact.availability) for fact in facts_of_pdf(drawn(boxes=True))}
    assert ("model", "Drift 61", "standard") in stated
    for one in [("fresh_tank_l", 95), ("gray_tank_l", 80), ("gray_tank_location", "underbody"), ("black_tank_l", 0),
                ("heater_output_w", 3500), ("battery_ah", 220), ("propane_mass_kg", 5)]:  # fmt: skip
        assert (*one, "standard") in stated, one
    assert ("gray_tank_heat", "electric_pad", "optional") in stated


def test_boxes_with_a_small_label_over_a_value_are_pairs(facts_of_pdf):
    stated = {fact.field: fact.value for fact in facts_of_pdf(drawn(boxes=True))}
    assert stated["chassis"] == "Fenmoor Carrier 35"
    assert stated["engine_fuel"] == "diesel"
    assert (stated["length_mm"], stated["width_mm"], stated["gvwr_kg"]) == (6150, 2080, 4250)
    assert stated["drive"] == "all"


def test_bold_labels_amid_running_text_make_their_line_no_heading(facts_of_pdf):
    page = Page()
    page.text(40, 40, "Marrowfen Drift 61", size=22, bold=True)
    page.text(40, 70, "Model year 2026. Fresh water 95 L. Gray water 80 L. Gross weight 3500 kg.", size=9)
    lines = [
        (90, [(40, "Long"), (64, "6.15 m."), (100, "Wide"), (126, "2.05 m without mirrors.")]),
        (102, [(40, "Wheelbase"), (90, "4.04 m."), (130, "Sleeps")]),
        (114, [(40, "three.")]),
    ]
    for top, parts in lines:
        for number, (left, text) in enumerate(parts):
            page.text(left, top, text, size=9, bold=number % 2 == 0 and text != "three.")
    stated = {fact.field: fact.value for fact in facts_of_pdf(page)}
    assert stated["wheelbase_mm"] == 4040
    assert stated["sleeps"] == 3
