"""A table of which only every other row is shaded is one table."""

from specscan.reading.letters.sheet import Fill, Sheet
from specscan.reading.tables import stripes
from specscan.records.text import Box
from tests.reading.drawn import Page

WALLS = (45, 150, 260, 400, 480, 560)
HEADS = ("Model", "Wall insulation", "Gray tank", "Heated floor", "Sleeps")
ROWS = [
    (("Drift 540",), ("20 mm sheep wool",), ("80 L, underfloor",), ("–",), ("2",)),
    (("Drift 600",), ("20 mm sheep wool",), ("90 L, underfloor",), ("opt.",), ("2",)),
    (("Drift 600", "Winter"), ("35 mm cork",), ("85 L, lagged box,", "warm air"), ("std.",), ("2",)),
    (("Drift 636", "Winter"), ("40 mm cork",), ("95 L, double floor,", "warm air"), ("std.",), ("4",)),
]


def by_van(facts, field):
    return {fact.model: fact.value for fact in facts if fact.field == field}


def striped_page():
    """Draw a table whose head and every other row are filled cell by cell; cells are centred upright."""
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=20, bold=True)
    page.text(50, 420, "std. = standard, opt. = at extra cost, – = not offered")
    top = 100
    for number, row in enumerate([[(head,) for head in HEADS], *ROWS]):
        high = 26 if any(len(cell) > 1 for cell in row) else 15
        for left, right, cell in zip(WALLS, WALLS[1:], row, strict=False):
            if number == 0 or number % 2 == 1:
                page.box(left, top, right, top + high, (0.9, 0.9, 0.95))
            for place, text in enumerate(cell):
                offset = high / 2 - 5.5 * len(cell) + 11 * place
                page.text(left + 4, top + offset, text, bold=number == 0)
        top += high
    return page


def test_rows_between_shaded_rows_belong_to_the_table(facts_of_pdf):
    facts = facts_of_pdf(striped_page())
    assert by_van(facts, "gray_tank_l") == {
        "Drift 540": 80, "Drift 600": 90, "Drift 600 Winter": 85, "Drift 636 Winter": 95,
    }  # fmt: skip
    assert by_van(facts, "insulation_thickness_mm")["Drift 636 Winter"] == 40
    assert by_van(facts, "sleeps")["Drift 636 Winter"] == 4
    assert by_van(facts, "gray_tank_heat") == {"Drift 600 Winter": "warm_air", "Drift 636 Winter": "warm_air"}
    floors = {fact.model: fact.availability for fact in facts if fact.field == "heated_floor"}
    assert floors["Drift 600"] == "optional"
    assert floors["Drift 636 Winter"] == "standard"


def test_heads_on_bars_of_colour_head_the_rows_that_stand_below_without_rules(facts_of_pdf):
    page = Page()
    page.text(50, 20, "Marrowfen Campers", bold=True)
    page.text(50, 40, "Drift 2026", size=20, bold=True)
    walls = (50, 200, 300, 400, 520)
    for left, right in zip(walls, walls[1:], strict=False):
        page.box(left, 100, right - 0.8, 114, (0.4, 0.2, 0.1))
    page.box(50, 114.5, 520, 128, (0.95, 0.9, 0.85))
    page.row(103, (54, "Drift"), (230, "540"), (330, "600 Q"), (430, "640 E"), bold=True)
    page.row(117, (54, "Measures"), bold=True)
    rows = [("Overall length", "5.41 m", "5.99 m", "6.45 m"), ("GVWR", "3300 kg", "3500 kg", "4500 kg"),
            ("Fresh water tank", "80 l", "100 l", "130 l"), ("Gray water tank", "70 l", "85 l", "115 l"),
            ("Water lines", "underfloor", "inside", "inside")]  # fmt: skip
    for number, values in enumerate(rows):
        page.row(133 + 16 * number, *zip((54, 230, 330, 430), values, strict=True))
        page.box(50, 131 + 16 * number, 520, 131.4 + 16 * number, (0.6, 0.6, 0.6))
    facts = facts_of_pdf(page)
    assert by_van(facts, "fresh_tank_l") == {"Drift 540": 80, "Drift 600 Q": 100, "Drift 640 E": 130}
    assert by_van(facts, "gvwr_kg") == {"Drift 540": 3300, "Drift 600 Q": 3500, "Drift 640 E": 4500}


def test_rows_without_an_outer_edge_keep_their_first_cell(facts_of_pdf):
    page = Page()
    page.text(50, 20, "Marrowfen Campers", bold=True)
    page.text(50, 40, "Drift 2026", size=20, bold=True)
    walls, top = (50, 160, 300, 400, 500), 100
    rows = [
        ("Model", "Fresh water (L)", "Gray water (L)", "Sleeps"),
        ("Drift 18", "90", "70", "2"),
        ("Drift 20", "100", "80", "2"),
        ("Fellow 22", "120", "90", "3"),
        ("Fellow 24", "130", "95", "4"),
    ]
    for number, row in enumerate(rows):
        y = top + 18 * number
        for place, (left, right) in enumerate(zip(walls, walls[1:], strict=False)):
            if number % 2 == 0:
                page.box(left, y, right, y + 18, (0.9, 0.95, 0.9))
            page.text(left + 4, y + 4, row[place], bold=number == 0)
        for wall in walls[1:]:
            page.box(wall - 0.2, y, wall + 0.2, y + 18, (0.5, 0.5, 0.5))
        page.box(walls[0], y, walls[-1], y + 0.4, (0.5, 0.5, 0.5))
    page.box(walls[0], top + 18 * len(rows), walls[-1], top + 18 * len(rows) + 0.4, (0.5, 0.5, 0.5))
    expected = {"Drift 18": 90, "Drift 20": 100, "Fellow 22": 120, "Fellow 24": 130}
    assert by_van(facts_of_pdf(page), "fresh_tank_l") == expected


def banded_page(**more):
    """Draw heads on white over a band of colour, every other row filled cell by cell, a band for each group."""
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=20, bold=True)
    walls = (50, 200, 310, 420, 530)
    page.row(88, *zip((206, 316, 426), ("Drift 540", "Drift 600", "Drift 640"), strict=True), size=10, bold=True)
    groups = {
        "Vehicle": [("Length", "5.41 m", "5.99 m", "6.38 m"), ("Berths", "2", "3", "4"),
                    ("Wheelbase", "3.45 m", "4.04 m", "4.04 m")],
        "Water": [("Fresh water", "75 l", "100 l", "125 l"), ("Waste water", "65 l", "85 l", "95 l"),
                  ("Toilet", "Cassette, 17 l", "Cassette, 17 l", "Composting")],
        **more,
    }  # fmt: skip
    top = 104
    for group, rows in groups.items():
        page.box(50, top, 530, top + 16, (0.5, 0.2, 0.1))
        page.text(54, top + 3, group, bold=True, color=(1, 1, 1))
        top += 16
        for number, row in enumerate(rows):
            for left, right, text in zip(walls, walls[1:], row, strict=False):
                if number % 2 == 0 and group not in more:
                    page.box(left, top, right, top + 16, (0.95, 0.93, 0.88))
                page.text(left + 6, top + 3, text)
            top += 16
    return page


def test_bands_of_groups_part_no_table_and_heads_above_the_first_are_its_heads(facts_of_pdf):
    facts = facts_of_pdf(banded_page())
    assert by_van(facts, "length_mm") == {"Drift 540": 5410, "Drift 600": 5990, "Drift 640": 6380}
    assert by_van(facts, "sleeps") == {"Drift 540": 2, "Drift 600": 3, "Drift 640": 4}
    assert by_van(facts, "gray_tank_l") == {"Drift 540": 65, "Drift 600": 85, "Drift 640": 95}
    assert by_van(facts, "toilet") == {"Drift 540": "cassette", "Drift 600": "cassette", "Drift 640": "dry"}


def test_the_only_row_of_the_last_group_on_a_page_belongs_to_the_table(facts_of_pdf):
    facts = facts_of_pdf(banded_page(Power=[("Leisure battery", "95 Ah gel", "150 Ah lithium", "230 Ah lithium")]))
    assert by_van(facts, "battery_ah") == {"Drift 540": 95, "Drift 600": 150, "Drift 640": 230}
    assert by_van(facts, "battery_chemistry")["Drift 540"] == "gel"


def test_values_of_all_vans_span_the_columns_in_shaded_rows_and_between_them(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=20, bold=True)
    walls = (50, 200, 310, 420, 530)
    page.row(88, *zip((206, 316, 426), ("Drift 540", "Drift 600", "Drift 640"), strict=True), size=10, bold=True)
    page.box(50, 104, 530, 120, (0.5, 0.2, 0.1))
    page.text(54, 107, "Vehicle", bold=True, color=(1, 1, 1))
    rows = [
        ("Base vehicle", "Orben Tall 3500"),
        ("Wheelbase", "4.04 m"),
        ("Length", "5.41 m", "5.99 m", "6.38 m"),
        ("Engine and box", "Turbo diesel of 2.2 litres with a gearbox of eight gears"),
        ("Width", "2.05 m"),
        ("Berths", "2", "3", "4"),
        ("Fresh water", "75 l", "100 l", "125 l"),
    ]
    for number, (label, *values) in enumerate(rows):
        top = 120 + 16 * number
        ends = walls[1:] if len(values) > 1 else (walls[1], walls[-1])
        if number % 2 == 0:
            page.box(50, top, walls[1], top + 16, (0.95, 0.93, 0.88))
        for left, right, text in zip(ends, ends[1:], values, strict=False):
            if number % 2 == 0:
                page.box(left, top, right, top + 16, (0.95, 0.93, 0.88))
            page.canvas.setFillColorRGB(0, 0, 0)
            page.canvas.setFont("Helvetica", 9)
            page.canvas.drawCentredString((left + right) / 2, 842 - top - 12, text)
        page.text(54, top + 3, label)
    facts = facts_of_pdf(page)
    assert by_van(facts, "length_mm") == {"Drift 540": 5410, "Drift 600": 5990, "Drift 640": 6380}
    assert by_van(facts, "fresh_tank_l") == {"Drift 540": 75, "Drift 600": 100, "Drift 640": 125}
    assert by_van(facts, "wheelbase_mm") == dict.fromkeys(("Drift 540", "Drift 600", "Drift 640"), 4040)
    assert by_van(facts, "engine_fuel") == dict.fromkeys(("Drift 540", "Drift 600", "Drift 640"), "diesel")


WHITE_GROUPS = [
    ("DIMENSIONS",),
    ("Overall length", "5.41 m", "5.99 m", "6.45 m"),
    ("GVWR", "3300 kg", "3500 kg", "4500 kg"),
    ("Sleeps", "2", "2", "3"),
    ("Wheelbase", "3.25 m", "3.80 m", "4.33 m"),
    ("WATER",),
    ("Fresh water", "70 L", "95 L", "110 L"),
    ("Gray water", "60 L", "80 L", "90 L"),
    ("Water heater", "6 L", "10 L", "10 L"),
]


def test_white_bands_of_groups_part_no_striped_table_and_heads_of_two_lines_stay_whole(facts_of_pdf):
    page = Page()
    page.text(50, 20, "Marrowfen Campers", bold=True)
    page.text(50, 40, "Drift 2026", size=20, bold=True)
    walls = (45, 200, 290, 380, 480)
    for left, right in zip(walls, walls[1:], strict=False):
        page.box(left, 86, right, 118, (0.15, 0.2, 0.27))
    page.row(104, (230, "540"), (320, "600"), (405, "POLAR"), bold=True, color=(1, 1, 1))
    page.row(90, (412, "600"), bold=True, color=(1, 1, 1))
    top, shade = 118, False
    for row in WHITE_GROUPS:
        if len(row) == 1:
            page.box(walls[0], top, walls[-1], top + 22, (1, 1, 1))
            page.text(50, top + 8, row[0], bold=True)
            top, shade = top + 22, row[0] == "DIMENSIONS"
            continue
        for left, right, text in zip(walls, walls[1:], row, strict=False):
            if shade:
                page.box(left, top, right, top + 20, (0.93, 0.95, 0.94))
            page.text(left + (5 if left == walls[0] else 30), top + 6, text)
        top, shade = top + 20, not shade
    facts = facts_of_pdf(page)
    assert by_van(facts, "sleeps") == {"Drift 540": 2, "Drift 600": 2, "Drift 600 POLAR": 3}
    assert by_van(facts, "fresh_tank_l") == {"Drift 540": 70, "Drift 600": 95, "Drift 600 POLAR": 110}
    assert by_van(facts, "wheelbase_mm") == {"Drift 540": 3250, "Drift 600": 3800, "Drift 600 POLAR": 4330}


def test_white_cells_of_a_grid_are_not_each_looked_through_for_a_title(monkeypatch):
    asked = []
    monkeypatch.setattr(stripes, "_holds_title", lambda fill, words: asked.append(fill) or False)
    cells = [Fill(Box(60 * x, 20 * y, 60 * x + 60, 20 * y + 20), (255, 255, 255), False)
             for x in range(9) for y in range(40)]  # fmt: skip
    shaded = [Fill(cell.box, (230, 230, 240), False) for cell in cells if cell.box.top in (0, 20, 60)]
    stripes.stripe_edges(Sheet(1, 595, 842, fills=[*cells, *shaded]), [])
    assert asked == []
