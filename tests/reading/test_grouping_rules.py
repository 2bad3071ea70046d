"""Short rules part the rows of a group, long ones the groups: its name stands in a cell beside all of its rows."""

from tests.reading.drawn import Page

HEADS = ((54, "Series"), (104, "Variant"), (154, "Base vehicle"), (222, "Length (mm)"), (292, "Fresh (L)"))
VANS = (
    (("54", "Tarwick MWB", "5 413", "80"), ("60", "Tarwick LWB", "5 998", "110")),
    (("64", "Kesson XL", "6 430", "140"), ("64 Highroad", "Kesson XL", "6 430", "180")),
)


def by_van(facts, field):
    return {fact.model: fact.value for fact in facts if fact.field == field}


def draw_table(page, top, *, shaded):
    """Draw a table with two groups of two rows, whose names stand at half their height."""
    if shaded:
        page.box(50, top, 400, top + 16, (0.9, 0.85, 0.8))
    page.rule(50, top, 400)
    page.row(top + 4, *HEADS, bold=True, size=8)
    page.rule(50, top + 16, 400)
    top += 16
    for name, rows in zip(("Gorse", "Tarn"), VANS, strict=True):
        page.text(54, top + 9, name, size=8)
        for place, (code, base, length, fresh) in enumerate(rows):
            page.row(top + 2, (104, code), (154, base), (222, length), (292, fresh), size=8)
            top += 14
            page.rule(50 if place else 100, top, 400)
    return top


def check(facts_of_pdf, *, shaded):
    page = Page()
    page.text(50, 40, "Marrowfen Campers", size=18, bold=True)
    page.text(50, 65, "The 2026 range", size=12, bold=True)
    draw_table(page, 100, shaded=shaded)
    facts = facts_of_pdf(page)
    assert by_van(facts, "length_mm") == {"Gorse 54": 5413, "Gorse 60": 5998, "Tarn 64": 6430, "Tarn 64 Highroad": 6430}
    assert by_van(facts, "fresh_tank_l") == {"Gorse 54": 80, "Gorse 60": 110, "Tarn 64": 140, "Tarn 64 Highroad": 180}
    assert by_van(facts, "chassis")["Gorse 60"] == "Tarwick LWB"


def test_long_rules_part_groups_and_short_ones_their_rows_below_a_bar(facts_of_pdf):
    check(facts_of_pdf, shaded=True)


def test_the_heads_may_stand_between_two_long_rules(facts_of_pdf):
    check(facts_of_pdf, shaded=False)


def test_a_short_rule_below_a_head_of_several_columns_parts_no_rows(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=18, bold=True)
    page.rule(50, 100, 400)
    page.row(104, (230, "Drift"), bold=True, size=8)
    page.rule(150, 115, 400)
    page.row(118, (170, "540"), (250, "600"), (330, "640"), bold=True, size=8)
    page.rule(50, 130, 400)
    for place, (label, *values) in enumerate(
        [
            ("Length", "5 413 mm", "5 998 mm", "6 430 mm"),
            ("Fresh water", "80 L", "110 L", "140 L"),
            ("Gray water", "60 L", "90 L", "95 L"),
            ("GVM", "3 500 kg", "3 500 kg", "4 490 kg"),
        ]
    ):
        page.row(134 + 12 * place, (54, label), *zip((170, 250, 330), values, strict=True), size=8)
    page.rule(50, 184, 400)
    facts = facts_of_pdf(page)
    assert by_van(facts, "fresh_tank_l") == {"Drift 540": 80, "Drift 600": 110, "Drift 640": 140}
