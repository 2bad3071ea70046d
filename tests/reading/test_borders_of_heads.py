"""Columns of a table whose cells have borders below: those of the heads show them, where values are for several."""

from reportlab.pdfbase.pdfmetrics import stringWidth

from tests.reading.drawn import titled

EDGES = (50, 176, 273, 370, 467, 564)
HEADS = ("", "DR-170", "DR-190", "DR-220", "DR-220X")
ROWS = [
    ("Overall length", ("5.41 m", 1), ("5.99 m", 1), ("6.64 m", 2)),
    ("GVWR", ("4040 kg", 2), ("4700 kg", 1), ("4990 kg", 1)),
    ("Wheelbase", ("3.66 m", 1), ("4.04 m", 1), ("4.32 m", 2)),
    ("Fresh water", ("68 L", 1), ("91 L", 1), ("125 L", 2)),
    ("Fresh tank", ("indoors, under the bed", 2), ("indoors, over the axle", 2)),
    ("Gray water", ("57 L", 1), ("76 L", 1), ("106 L", 2)),
    ("Black water", ("none", 2), ("45 L", 2)),
    ("Dump valve", ("exposed, left side", 2), ("in a heated bay", 2)),
    ("Water heater", ("none", 1), ("9 L, electric", 1), ("23 L, propane", 1), ("10 L, glycol", 1)),
]


def test_a_value_for_two_vans_belongs_to_both_and_hides_no_column(facts_of_pdf):
    page = titled()
    for place, head in enumerate(HEADS):
        page.text((EDGES[place] + EDGES[place + 1] - stringWidth(head, "Helvetica-Bold", 9)) / 2, 100, head, bold=True)
        page.rule(EDGES[place], 112, EDGES[place + 1])
    for number, (label, *cells) in enumerate(ROWS):
        page.text(54, 118 + 18 * number, label)
        at = 1
        for text, span in cells:
            middle = (EDGES[at] + EDGES[at + span]) / 2
            page.text(middle - stringWidth(text, "Helvetica", 9) / 2, 118 + 18 * number, text)
            page.rule(EDGES[at], 130 + 18 * number, EDGES[at + span])
            at += span
        page.rule(EDGES[0], 130 + 18 * number, EDGES[1])
    facts = facts_of_pdf(page)
    by_van = {(fact.model.split()[-1], fact.field): fact.value for fact in facts if not fact.rejected}
    assert [by_van.get((head, "fresh_tank_l")) for head in HEADS[1:]] == [68, 91, 125, 125]
    assert [by_van.get((head, "black_tank_l")) for head in HEADS[1:]] == [0, 0, 45, 45]
    assert [by_van.get((head, "gvwr_kg")) for head in HEADS[1:]] == [4040, 4040, 4700, 4990]
    assert [by_van.get((head, "dump_valve_protection")) for head in HEADS[1:]] == [
        "exposed", "exposed", "heated_compartment", "heated_compartment",
    ]  # fmt: skip
