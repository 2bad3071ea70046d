"""Heads that alone are drawn, in bars of colour, head the rows without walls below them."""

from reportlab.pdfbase.pdfmetrics import stringWidth

from tests.reading.drawn import Page

NIGHT, SAND = (0.15, 0.25, 0.3), (0.93, 0.9, 0.85)
WHITE = {"bold": True, "color": (1, 1, 1)}


def by_van(facts, field):
    return {fact.model: fact.value for fact in facts if fact.field == field}


def centred(page, top, x, text, **style):
    font = "Helvetica-Bold" if style.get("bold") else "Helvetica"
    page.text(x - stringWidth(text, font, 9) / 2, top, text, **style)


def comparison(vans, walls, groups):
    """Draw heads in cells of colour, bands that name groups, and rows parted by rules alone.

    A row with one value has it in the middle of all vans.
    """
    page = Page()
    page.text(40, 40, "Marrowfen Sandpiper 2026", size=20, bold=True)
    for x0, x1 in zip(walls, walls[1:], strict=False):
        page.box(x0, 80, x1, 100, NIGHT)
    middles = [(x0 + x1) / 2 for x0, x1 in zip(walls[1:], walls[2:], strict=False)]
    for x, van in zip(middles, vans, strict=True):
        centred(page, 84, x, van, **WHITE)
    top = 100
    for group, rows in groups:
        page.box(walls[0], top, walls[-1], top + 18, SAND)
        page.text(walls[0] + 4, top + 4, group, bold=True)
        top += 18
        for label, *values in rows:
            page.text(walls[0] + 4, top + 4, label)
            places = middles if len(values) > 1 else [(walls[1] + walls[-1]) / 2]
            for x, value in zip(places, values, strict=True):
                centred(page, top + 4, x, value)
            top += 16
            page.rule(walls[0], top, walls[-1])
    return page


BODY = [
    ("Overall width", "2,050 mm"),
    ("Overall height", "2,640 mm", "2,910 mm"),
    ("GVM", "3,500 kg", "4,005 kg"),
    ("Fuel tank", "90 L"),
    ("Sleeps", "2", "3"),
]
WATER = [
    ("Fresh water", "80 L", "130 L"),
    ("Grey water", "45 L", "90 L"),
    ("Plumbing", "Inside living area"),
    ("Toilet", "Portable, 20 L", "Cassette, 18 L"),
]


def test_heads_of_two_vans_above_the_band_of_the_first_group(facts_of_pdf):
    walls = (30, 215, 375, 540)
    facts = facts_of_pdf(comparison(("Wader 5.4", "Dunlin 6.4"), walls, [("VEHICLE", BODY), ("WATER", WATER)]))
    assert by_van(facts, "fresh_tank_l") == {"Wader 5.4": 80, "Dunlin 6.4": 130}
    assert by_van(facts, "gvwr_kg") == {"Wader 5.4": 3500, "Dunlin 6.4": 4005}


def test_values_in_the_middle_are_true_of_both_vans_and_are_no_column(facts_of_pdf):
    walls = (30, 215, 375, 540)
    facts = facts_of_pdf(comparison(("Wader 5.4", "Dunlin 6.4"), walls, [("VEHICLE", BODY), ("WATER", WATER)]))
    assert by_van(facts, "width_mm") == {"Wader 5.4": 2050, "Dunlin 6.4": 2050}
    assert by_van(facts, "fuel_tank_l") == {"Wader 5.4": 90, "Dunlin 6.4": 90}
    assert by_van(facts, "water_lines_location") == {"Wader 5.4": "interior", "Dunlin 6.4": "interior"}


def test_first_rows_with_one_value_for_three_vans_do_not_part_the_heads_from_the_rows(facts_of_pdf):
    walls = (30, 180, 300, 420, 540)
    rows = [
        ("Overall length", "5,985 mm"),
        ("Overall width", "2,050 mm"),
        ("Overall height", "2,790 mm", "2,790 mm", "2,860 mm"),
        ("Interior headroom", "1,980 mm", "1,980 mm", "1,900 mm"),
        ("Fresh water", "85 litres", "100 litres", "110 litres"),
        ("Hot water", "10 litres"),
    ]
    facts = facts_of_pdf(comparison(("Sandpiper K", "Sandpiper L", "Sandpiper TW"), walls, [("On the road", rows)]))
    assert by_van(facts, "fresh_tank_l") == {"Sandpiper K": 85, "Sandpiper L": 100, "Sandpiper TW": 110}
    assert by_van(facts, "length_mm") == dict.fromkeys(("Sandpiper K", "Sandpiper L", "Sandpiper TW"), 5985)


def test_turned_heads_in_one_undivided_band_stand_over_their_columns(facts_of_pdf):
    page = Page()
    page.text(40, 40, "Marrowfen Sandpiper 2026", size=20, bold=True)
    walls = (40, 150, 220, 290, 380, 470)
    page.box(40, 80, 470, 150, NIGHT)
    page.canvas.setFillColorRGB(1, 1, 1)
    page.canvas.setFont("Helvetica-Bold", 8)
    for x, head in zip((189, 259, 339, 429), ("Fresh tank", "Length", "Toilet", "Sleeps"), strict=True):
        page.canvas.saveState()
        page.canvas.translate(x, 842 - 146)
        page.canvas.rotate(90)
        page.canvas.drawString(0, 0, head)
        page.canvas.restoreState()
    rows = [("Wader 19", "80 L", "5.9 m", "Cassette", "2"), ("Dunlin 21", "114 L", "6.4 m", "Dry", "3")]
    for number, row in enumerate(rows):
        for x0, text in zip(walls, row, strict=False):
            page.text(x0 + 6, 156 + 20 * number, text)
    for y in (150, 170, 190):
        page.rule(walls[0], y, walls[-1])
    for x in walls:
        page.canvas.line(x, 842 - 150, x, 842 - 190)
    facts = facts_of_pdf(page)
    assert by_van(facts, "fresh_tank_l") == {"Wader 19": 80, "Dunlin 21": 114}
    assert by_van(facts, "toilet") == {"Wader 19": "cassette", "Dunlin 21": "dry"}


def test_heads_printed_above_the_band_of_a_drawn_table_whose_bands_reach_out_beyond_its_rows(facts_of_pdf):
    page = Page()
    page.text(40, 30, "MARROWFEN", size=20, bold=True)
    page.text(40, 60, "Sandpiper range, layouts 540 D and 600 E, 2026", size=13)
    page.row(90, (174, "540 D"), (334, "600 E"), bold=True)
    top = 108
    rows = {
        "On the road": [("Overall length", "5,410 mm", "5,980 mm"), ("GVM", "3,300 kg", "3,500 kg"),
                        ("Fuel tank", "60 L", "90 L")],
        "Water": [("Fresh water", "80 litres", "110 litres"), ("Grey water", "60 litres", "90 litres"),
                  ("Toilet", "Cassette toilet 17 litres", "Cassette toilet 19 litres"),
                  ("Water heater", "10 litres", "14 litres")],
    }  # fmt: skip
    for group, lines in rows.items():
        page.box(40, top, 540, top + 18, NIGHT)
        page.text(44, top + 4, group, **WHITE)
        top += 18
        for row in lines:
            for x, text in zip((44, 174, 334), row, strict=True):
                page.text(x, top + 4, text, bold=x == 44)
            page.rule(40, top + 16, 530)
            for x in (40, 170, 330, 530):
                page.canvas.line(x, 842 - top, x, 842 - top - 16)
            top += 16
        top += 10
    facts = facts_of_pdf(page)
    assert by_van(facts, "length_mm") == {"Sandpiper 540 D": 5410, "Sandpiper 600 E": 5980}
    assert by_van(facts, "fresh_tank_l") == {"Sandpiper 540 D": 80, "Sandpiper 600 E": 110}
    assert by_van(facts, "cassette_l") == {"Sandpiper 540 D": 17, "Sandpiper 600 E": 19}


def test_heads_printed_above_the_name_of_the_first_group_of_a_drawn_table(facts_of_pdf):
    page = Page()
    page.text(40, 30, "MARROWFEN", size=20, bold=True)
    page.text(40, 60, "Haddle and Skerry: the 2026 collection", size=13)
    page.row(92, (174, "Haddle 2"), (334, "Skerry 4T"), bold=True)
    page.text(41, 104, "VEHICLE", bold=True)
    top = 116
    groups = [
        [("Overall length", "5.43 m", "6.38 m"), ("MTPLM", "3300 kg", "4250 kg"), ("Berths", "2", "4")],
        [("Fresh water", "65 litres", "120 litres"), ("Waste water", "55 litres", "100 litres"),
         ("Water heater", "8 litres", "10 litres")],
    ]  # fmt: skip
    for number, rows in enumerate(groups):
        if number:
            page.text(41, top + 2, "WATER", bold=True)
            top += 14
        for row in rows:
            for x, text in zip((44, 174, 334), row, strict=True):
                page.text(x, top + 3, text)
            page.rule(40, top, 490)
            page.rule(40, top + 14, 490)
            for x in (40, 170, 330, 490):
                page.canvas.line(x, 842 - top, x, 842 - top - 14)
            top += 14
    facts = facts_of_pdf(page)
    assert by_van(facts, "length_mm") == {"Haddle 2": 5430, "Skerry 4T": 6380}
    assert by_van(facts, "fresh_tank_l") == {"Haddle 2": 65, "Skerry 4T": 120}
