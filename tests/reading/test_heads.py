"""Which row of a table heads its columns."""

import pytest

from specscan.finding.kit import labels_of
from specscan.reading.letters.glyphs import open_pdf, read_sheets
from specscan.reading.letters.spelling import build_words
from specscan.reading.read import read_document
from specscan.reading.tables.lattice import find_ruled
from tests.reading.drawn import Page

TABLE = """Marrowfen Drift 2026

| {corner} | 680 Larch | 680 Fell |
|---|---|---|
| Drive | front | AWD |
| Fresh tank | 80 L | 110 L |
"""


@pytest.mark.parametrize("corner", ["Models", "Layout", "Type"])
def test_a_corner_that_says_models_heads_the_names_beside_it(examiner, corner):
    page = "<html><body><table>{}</table></body></html>".format(
        "".join(
            "<tr>" + "".join(f"<td>{cell.strip()}</td>" for cell in line.strip("|").split("|")) + "</tr>"
            for line in TABLE.format(corner=corner).splitlines()
            if line.startswith("|") and "---" not in line
        )
    )
    document = read_document(page.encode(), "page.html", "html", examiner.hints)
    heads = {(p.row.text, p.column.text): p.text for p in document.passages if p.row and p.column}
    assert heads[("Fresh tank", "680 Fell")] == "110 L"


def test_a_label_with_one_value_is_no_head(examiner):
    page = b"<html><body><table><tr><td>Model</td><td>Drift 680</td></tr><tr><td>Berths</td><td>2</td></tr></table>"
    document = read_document(page, "page.html", "html", examiner.hints)
    assert labels_of(document) >= {"Model", "Berths"}


@pytest.mark.parametrize("corner", ["Model", ""])
def test_other_vans_that_head_the_columns_half_way_down_head_what_is_below(examiner, corner):
    rows = [(corner, "Drift 18 Q", "Drift 23 T"), ("Drive", "rear", "AWD"), ("Fresh tank", "80 L", "110 L"),
            ("Sleeps", "2", "3"), (corner, "Drift 23 X", "Drift 24 D"), ("Drive", "AWD", "rear"),
            ("Fresh tank", "95 L", "120 L"), ("Sleeps", "4", "2")]  # fmt: skip
    body = "".join("<tr>" + "".join(f"<td>{cell}</td>" for cell in row) + "</tr>" for row in rows)
    page = f"<html><body><h1>Marrowfen Drift 2026</h1><table>{body}</table></body></html>"
    document = read_document(page.encode(), "page.html", "html", examiner.hints)
    cells = {(p.row.text, p.column.text): p.text for p in document.passages if p.row and p.column}
    assert cells[("Fresh tank", "Drift 23 T")] == "110 L"
    assert cells[("Fresh tank", "Drift 24 D")] == "120 L"
    assert cells[("Sleeps", "Drift 23 X")] == "4"


def test_figures_with_units_in_the_first_row_head_no_columns(facts_of_pdf):
    page = Page()
    page.text(50, 30, "Marrowfen Drift 2026", size=18, bold=True)
    tops = [("Spec", "Drift 19", "Drift 21", "Drift 24"), ("Length (mm)", "5410", "5990", "6360")]
    more = [
        ("Fan power", "32 W", "35 W", "61 W"),
        ("Heater consumption", "0.22 l/h", "0.39 l/h", "0.59 l/h"),
        ("Sleeps", "2", "2", "3"),
    ]
    for block, (top, rows) in enumerate([(80, tops), (200, more)]):
        for number, row in enumerate(rows):
            places = zip((50, 240, 340, 440), row, strict=True)
            page.row(top + 16 * number, *places, size=9, bold=block == 0 and number == 0)
    by_van = {f.model: f.value for f in facts_of_pdf(page) if f.field == "heater_consumption_l_h" and not f.rejected}
    assert by_van in ({"Drift 19": 0.22, "Drift 21": 0.39, "Drift 24": 0.59}, {})


def test_a_heading_over_columns_that_say_all_by_themselves_is_no_part_of_their_labels(examiner):
    page = Page()
    page.text(40, 30, "Marrowfen Drift 2026", size=18, bold=True)
    edges = (40, 90, 170, 250, 330, 410, 490)
    for top, bottom, cols in ((70, 90, (1, 4, 6)), (90, 110, range(7)), (110, 130, range(7)), (130, 150, range(7))):
        for x0, x1 in zip([edges[c] for c in cols], [edges[c] for c in cols][1:], strict=False):
            page.frame(x0, top, x1, bottom)
    page.row(75, (150, "Plumbing"), (390, "Weights (lb)"), size=8, bold=True)
    heads = ("Van", "Fresh tank", "Gray tank", "Supply lines", "GVWR", "Cargo")
    rows = [
        ("170", "inside", "under van", "inside", "8,500", "900"),
        ("190", "inside", "heated", "inside", "9,050", "1,100"),
    ]
    for number, row in enumerate([heads, *rows]):
        page.row(95 + 20 * number, *zip((45, 95, 175, 255, 335, 415), row, strict=True), size=8, bold=number == 0)
    document = read_document(page.data(), "fleet.pdf", "pdf", examiner.hints)
    cells = {(p.row.text, p.column.text): p for p in document.passages if p.row and p.column}
    assert cells[("170", "Gray tank")].text == "under van"
    assert cells[("170", "Gray tank")].sections[-1] == "Plumbing"
    assert cells[("190", "Weights (lb) GVWR")].text == "9,050"


def test_a_chart_of_many_cells_each_with_borders_of_its_own_is_one_table():
    page = Page()
    heads = ["Van", "Length", "Width", "Height", "GVWR", "Fresh", "Gray", "Black", "Fuel", "Solar", "Belts", "Berths"]
    for row in range(12):
        for col, head in enumerate(heads):
            left, top = 20 + 46 * col, 60 + 26 * row
            for y in (top, top + 26):
                page.box(left, y - 0.25, left + 46, y + 0.25, (0, 0, 0))
            for x in (left, left + 46):
                page.box(x - 0.25, top, x + 0.25, top + 26, (0, 0, 0))
            text = head if row == 0 else f"{150 + 10 * row}" if col == 0 else f"of row {row}|{col} to be"
            for number, line in enumerate(text.split("|")):
                page.text(22 + 46 * col, 63 + 26 * row + 12 * number, line, size=9, bold=row == 0)
    [sheet] = read_sheets(open_pdf(page.data()), lambda sheet: True)
    [grid], _ = find_ruled(sheet, build_words(sheet.letters))
    assert (grid.rows, grid.cols) == (12, 12)
    assert grid.at(11, 11).plain == "of row 11 11 to be" and grid.at(1, 4).plain == "of row 1 4 to be"


def test_a_van_alone_over_the_only_column_of_values_heads_it(facts_of_pdf):
    page = Page()
    page.text(50, 30, "Marrowfen Drift 2026", size=20, bold=True)
    page.text(50, 56, "Drift 19, Drift 21", size=10)
    rows = [("Wheelbase", "3.45 m", "4.04 m"), ("Sleeps", "2", "3"), ("Fresh water", "90 L", "120 L"),
            ("Inverter", "no", "2000 W"), ("Toilet", "cassette", "dry")]  # fmt: skip
    for place, (van, corner) in enumerate([("Drift 19", ""), ("Drift 21", "Model")]):
        page.text(50, 90, "Technical data", size=14, bold=True)
        page.row(114, (50, corner), (220, van), size=9, bold=True)
        for number, row in enumerate(rows):
            page.row(130 + 15 * number, (50, row[0]), (220, row[1 + place]), size=9)
        if not place:
            page.canvas.showPage()
    facts = facts_of_pdf(page)
    found = {(f.model, f.field): f.value for f in facts}
    assert (found["Drift 19", "fresh_tank_l"], found["Drift 21", "fresh_tank_l"]) == (90, 120)
    assert (found["Drift 19", "inverter_w"], found["Drift 21", "inverter_w"]) == (0, 2000)
    assert (found["Drift 19", "toilet"], found["Drift 21", "toilet"]) == ("cassette", "dry")
    assert len([f for f in facts if f.field == "sleeps"]) == 2


@pytest.mark.parametrize(
    "vans", [("Drift 19 Shore", "Drift 19 Ridge"), ("19 Shore", "19 Ridge"), ("540", "600")], ids=str
)
def test_a_van_alone_over_its_values_is_named_by_a_code_or_though_its_last_word_is_that_of_a_label(vans, facts_of_pdf):
    page = Page()
    page.text(50, 30, "Marrowfen Drift 2026", size=20, bold=True)
    rows = [("Wheelbase", "3.45 m", "4.04 m"), ("Sleeps", "2", "3"), ("Fresh water", "90 L", "120 L")]
    for place, van in enumerate(vans):
        page.text(50, 90, "Technical data", size=14, bold=True)
        for number, (label, *values) in enumerate([("", van, van), *rows]):
            top = 114 + 16 * number
            page.frame(46, top - 3, 216, top + 13)
            page.frame(216, top - 3, 500, top + 13)
            page.row(top, (50, label), (220, values[place]), size=9, bold=not number)
        if not place:
            page.canvas.showPage()
    found = {f.model.partition("Drift ")[2]: f.value for f in facts_of_pdf(page) if f.field == "fresh_tank_l"}
    assert found == {van.removeprefix("Drift "): value for van, value in zip(vans, (90, 120), strict=True)}


def test_groups_set_like_the_heads_or_between_shaded_rows_go_on_with_no_label(facts_of_pdf):
    page = Page()
    page.text(50, 30, "Marrowfen Drift 2026", size=20, bold=True)
    page.row(70, (50, "Models"), (250, "Drift 19"), (400, "Drift 21"), size=9, bold=True)
    page.text(50, 82.5, "Base vehicle and measures", size=9, bold=True)
    lines = [(96, "Wheelbase", "3.45 m", "4.04 m"), (112, "Sleeps", "2", "3"), (128, "Fuel tank", "90 L", "75 L"),
             (144, "Width with mirrors", "2.5 m", "2.5 m"), (156.5, "Water"), (170, "Fresh water", "90 L", "120 L"),
             (186, "Gray water", "80 L", "95 L"), (202, "Inverter", "800 W", "2000 W")]  # fmt: skip
    for top, label, *values in lines:
        if label in ("Fuel tank", "Gray water"):
            page.box(46, top - 3, 520, top + 13, (0.93, 0.94, 0.95))
        page.row(top, (50, label), *zip((250, 400), values, strict=False), size=9, bold=not values)
    facts = facts_of_pdf(page)
    assert {f.model: f.value for f in facts if f.field == "wheelbase_mm"} == {"Drift 19": 3450, "Drift 21": 4040}
    assert {f.model: f.value for f in facts if f.field == "fresh_tank_l"} == {"Drift 19": 90, "Drift 21": 120}


@pytest.mark.parametrize("heads, found", [(("19 Fell", "19 Moor", "21 Fell"), True), (("The 2026 Drift",), False)])
def test_a_bar_over_a_ruled_table_may_hold_its_heads_undivided(facts_of_pdf, heads, found):
    rows = [("Fresh water (litres)", "70", "95", "110"), ("Waste water (litres)", "60", "80", "95"),
            ("Berths", "2", "2", "4"), ("Length (mm)", "5410", "5990", "6360")]  # fmt: skip
    page = Page()
    page.text(40, 20, "Drift, technical data 2026", size=14, bold=True)
    page.box(40, 60, 520, 74, (0.1, 0.2, 0.4))
    for place, head in zip((215, 320, 430), heads, strict=False):
        page.text(place, 63, head, size=8, bold=True, color=(1, 1, 1))
    page.box(40, 74, 520, 88, (0.85, 0.9, 0.95))
    page.text(45, 77, "Base and measurements", size=8, bold=True)
    for number, row in enumerate(rows):
        page.row(91 + 14 * number, *zip((45, 215, 320, 430), row, strict=True), size=8)
        for left, right in ((40, 200), (200, 305), (305, 415), (415, 520)):
            page.frame(left, 88 + 14 * number, right, 102 + 14 * number)
    tanks = {fact.model: fact.value for fact in facts_of_pdf(page) if fact.field == "fresh_tank_l"}
    assert tanks == ({"Drift 19 Fell": 70, "Drift 19 Moor": 95, "Drift 21 Fell": 110} if found else {})


def test_codes_that_look_like_watts_head_columns_where_they_are_set_apart_over_an_open_corner(facts_of_pdf):
    page = Page()
    page.text(50, 30, "Drift 2026", size=18, bold=True)
    page.row(70, (200, "19W"), (300, "21W"), (400, "24S"), size=13, color=(0.6, 0.3, 0.1))
    page.box(48, 92, 520, 104, (0.2, 0.3, 0.25))
    page.text(50, 94, "Vehicle", bold=True, color=(1, 1, 1))
    rows = [("Length", "5.41 m", "5.99 m", "6.36 m"), ("GVWR", "3500 kg", "4100 kg", "4250 kg"),
            ("Fresh water", "70 L", "90 L", "110 L"), ("Solar", "110 W", "200 W", "300 W"),
            ("Inverter", "1000 W", "2000 W", "3000 W")]  # fmt: skip
    for number, row in enumerate(rows):
        page.row(110 + 16 * number, *zip((50, 200, 300, 400), row, strict=True))
    found = {(fact.model, fact.value) for fact in facts_of_pdf(page) if fact.field == "solar_w"}
    assert found == {("Drift 19W", 110), ("Drift 21W", 200), ("Drift 24S", 300)}


@pytest.mark.parametrize("codes", [("540", "540 Fell", "600"), ("540", "570", "600")])
def test_codes_behind_the_name_of_a_section_head_the_columns(facts_of_pdf, codes):
    """The corner of each part of the table says what it is about, as a label would: "Water | 540 | 600"."""
    page = Page()
    page.text(50, 30, "Drift", size=24, bold=True)
    page.text(50, 60, "Marrowfen Ltd, model year 2026")
    rows = [
        ("Size", *codes), ("Length", "5.41 m", "5.41 m", "5.99 m"), ("Width", "2.05 m", "2.05 m", "2.08 m"),
        ("Height", "2.65 m", "2.85 m", "2.65 m"), ("Sleeps", "2", "4", "2"),
        ("Water", *codes), ("Fresh water tank", "70 l", "85 l", "100 l"), ("Waste water tank", "60 l", "75 l", "90 l"),
    ]  # fmt: skip
    for number, row in enumerate(rows):
        head = row[1:] == codes
        if head:
            page.box(45, 98 + 18 * number, 505, 114 + 18 * number, (0.2, 0.15, 0.15))
        color = (1, 1, 1) if head else (0, 0, 0)
        page.row(100 + 18 * number, *zip((50, 220, 320, 420), row, strict=True), bold=head, color=color)
    found = {(f.model, f.field): f.value for f in facts_of_pdf(page) if not f.rejected}
    assert [found.get((f"Drift {code}", "fresh_tank_l")) for code in codes] == [70, 85, 100]
    assert [found.get((f"Drift {code}", "sleeps")) for code in codes] == [2, 4, 2]


def test_a_table_that_begins_with_the_corner_of_the_one_above_names_another_van(read_file, tmp_path):
    """The first table fills its page, and the second has one column at the same place."""
    page = Page()
    page.text(50, 30, "MARROWFEN CAMPERS", size=16)
    page.text(50, 60, "5.9 Shore | 7.2", size=11)
    for van, length, fresh in (("5.9 Shore", "5.90 m", "90 L"), ("7.2", "7.20 m", "120 L")):
        page.canvas.showPage()
        page.text(50, 90, "The figures", size=14, bold=True)
        rows = [("Tusk models", van), ("Overall length", length), ("Sleeps", "2"), ("Fresh water tank", fresh),
                ("Gray water tank", "70 L"), ("Solar", "200 W"), ("Inverter", "1000 W")]  # fmt: skip
        for place, row in enumerate(rows):
            top = 114 + 16 * place
            if not place:
                page.box(46, top - 3, 500, top + 13, (0.85, 0.85, 0.85))
            page.frame(46, top - 3, 296, top + 13)
            page.frame(296, top - 3, 500, top + 13)
            page.row(top, *zip((50, 300), row, strict=True), bold=not place)
    path = tmp_path / "two.pdf"
    path.write_bytes(page.data())
    found = read_file(path).found
    assert {(f.model, f.value) for f in found.facts if f.field == "length_mm" and not f.rejected} == {
        ("Tusk 5.9 Shore", 5900.0),
        ("Tusk 7.2", 7200.0),
    }


def test_a_van_called_by_words_heads_its_values_alone_beside_the_table_of_its_sisters(facts_of_pdf):
    page = Page()
    page.text(50, 30, "MARROWFEN CAMPERS", size=16)
    page.text(50, 60, "Pale Cairn, Quiet Haven, Long Hearth", size=11)
    rows = [("Overall length", "5.90 m", "6.40 m"), ("Sleeps", "2", "3"), ("Fresh water tank", "90 L", "120 L"),
            ("Gray water tank", "70 L", "80 L"), ("Solar", "200 W", "300 W"), ("Inverter", "1000 W", "2000 W"),
            ("Water heater", "6 L", "10 L"), ("Wheelbase", "3.45 m", "4.04 m"),
            ("Fuel tank", "60 L", "75 L")]  # fmt: skip
    for vans in (("Pale Cairn", "Quiet Haven"), ("Long Hearth",)):
        page.canvas.showPage()
        for place, (label, *values) in enumerate([("", *vans), *rows]):
            top, cells = 114 + 16 * place, (label, *values[: len(vans)])
            for x0, x1 in ((46, 216), (216, 356), (356, 496))[: len(cells)]:
                page.frame(x0, top - 3, x1, top + 13)
            page.row(top, *zip((50, 220, 360), cells, strict=False), bold=not place)
    tanks = {(fact.model, fact.value) for fact in facts_of_pdf(page) if fact.field == "fresh_tank_l"}
    assert tanks == {("Pale Cairn", 90.0), ("Quiet Haven", 120.0), ("Long Hearth", 90.0)}


def test_heads_in_one_shaded_box_over_the_band_of_the_first_group_stand_each_over_its_column(facts_of_pdf):
    page = Page()
    page.text(40, 40, "MARROWFEN 2026", size=16, bold=True)
    page.box(180, 100, 540, 112, (0.85, 0.9, 0.85))
    page.row(102, (230, "Drift 54"), (340, "Drift 60"), (450, "Gorse 64"), size=8, bold=True)
    size = (("Length", "5,410 mm", "5,998 mm", "6,363 mm"), ("MTPLM", "3500 kg", "3500 kg", "4100 kg"))
    water = (("Fresh water", "70 litres", "95 litres", "110 litres"), ("Berths", "2", "2", "3"))
    groups = (("BASE AND SIZE", size), ("WATER", water))
    top = 112
    for group, rows in groups:
        page.box(40, top, 540, top + 12, (0.3, 0.45, 0.3))
        page.text(42, top + 2, group, size=7, bold=True, color=(1, 1, 1))
        top += 12
        for label, *values in rows:
            page.text(42, top + 2, label, size=7)
            for x, value in zip((232, 342, 452), values, strict=True):
                page.text(x, top + 2, value, size=7)
            page.rule(40, top + 12, 540)
            top += 12
    lengths = {fact.model: fact.value for fact in facts_of_pdf(page) if fact.field == "length_mm"}
    assert lengths == {"Drift 54": 5410, "Drift 60": 5998, "Gorse 64": 6363}


def test_groups_in_the_column_of_codes_go_on_with_no_code(examiner):
    page = Page()
    head = ("Code", "Description", "Trek", "Trek Polar", "Price")
    rows = [("Water", ""), ("W10", "Fresh tank, 31 gal"), ("W50", "Outside shower"), ("Heat", ""),
            ("H10", "LP furnace"), ("H20", "Heated floor in galley and bath"), ("Body", ""),
            ("B10", "Mineral wool in walls"), ("B12", "Awning")]  # fmt: skip
    page.row(100, *zip((92, 124, 400, 440, 490), head, strict=True), size=9)
    for number, (code, said) in enumerate(rows, 1):
        page.text(92, 100 + 11 * number, code, size=9)
        if said:
            page.row(100 + 11 * number, (124, said), (408, "S"), (452, "O"), (490, "$420"), size=9)
    document = read_document(page.data(), "guide.pdf", "pdf", examiner.hints)
    under = {(p.row.text, p.sections[-1:]) for p in document.passages if p.row is not None and p.column is not None}
    assert {("Outside shower", ("Water",)), ("LP furnace", ("Heat",)), ("Awning", ("Body",))} <= under


def test_the_name_of_a_group_beside_one_label_alone_is_no_part_of_it(examiner):
    page = Page()
    rows = [
        ("Specification", "Drift 17", "Drift 18", "Drift 23"),
        ("Driveline", "all-wheel", "rear-wheel", "front-wheel"),
        ("Ext. length", "18 ft 11 in", "18 ft 11 in", "21 ft 2 in"),
        ("Wheelbase length", "159", "144", "170"),
        ("Insulated freshwater tank", "Standard", "Standard", "No"),
        ("Gray water tank", "21 gal", "17 gal", "20 gal"),
        ("Water heater tank", "6 gal", "6 gal", "3 gal"),
        ("Winterization kit", "Standard", "No", "Standard"),
        ("Dump valve", "in heated bay", "insulated", "exposed"),
        ("Solar", "200 W", "300 W", "400 W"),
        ("Shore power", "30 A", "30 A", "30 A"),
    ]
    for number, row in enumerate(rows):
        page.row(80 + 14 * number, *zip((150, 300, 390, 480), row, strict=True), size=8, bold=not number)
    page.text(40, 80 + 14 * 4, "Tanks and plumbing", size=8)
    document = read_document(page.data(), "guide.pdf", "pdf", examiner.hints)
    labels = {p.row.text for p in document.passages if p.row is not None and p.column is not None}
    assert {label for label, *_ in rows[1:]} <= labels


def test_values_in_words_of_a_known_label_at_the_top_of_a_further_page_head_no_columns(facts_of_pdf):
    page = Page()
    page.text(40, 30, "Marrowfen Drift 2026", size=16, bold=True)
    first = [
        ("Modelle", "Drift 630", "Drift 640"),
        ("L\u00e4nge", "5.413 mm", "5.998 mm"),
        ("Radstand", "3.450 mm", "4.035 mm"),
        ("Frischwasser", "109 l", "82 l"),
        ("Schlafpl\u00e4tze", "2", "3"),
    ]
    further = [
        ("Art der Heizung", "Diesel-Luftheizung", "Kombiheizung, Diesel"),
        ("Stromaufnahme der Heizung [W]", "87", "57"),
        ("Sinus-Wechselrichter [W]", "2.000", "3.000"),
        ("Einspeisung 230 V [A]", "10", "16"),
    ]
    for sheet, rows in enumerate((first, further)):
        if sheet:
            page.canvas.showPage()
        for x in (40, 240, 390, 550):
            page.frame(x, 80, x + 0.5, 80 + 16 * len(rows))
        for number, row in enumerate(rows):
            page.rule(40, 80 + 16 * number, 550)
            page.row(84 + 16 * number, *zip((44, 244, 394), row, strict=True), size=8)
        page.rule(40, 80 + 16 * len(rows), 550)
    facts = {(fact.model, fact.field): fact.value for fact in facts_of_pdf(page) if not fact.rejected}
    assert facts["Drift 630", "inverter_w"] == 2000 and facts["Drift 640", "inverter_w"] == 3000
    assert facts["Drift 630", "heater_type"] == "forced_air" and facts["Drift 640", "heater_type"] == "combined"


def test_a_full_line_below_one_with_blank_cells_begins_a_row_however_near(examiner):
    page = Page()
    lines = [
        ("Modèle", "Drift 540", "Drift 630"), ("Isolation des", "Oui", "non"), ("canalisations",),
        ("Cordon chauffant sur les", "Oui", "non"), ("conduites d'eau",),
        ("Robinet de vidange des", "exposé", "dans un caisson"), ("eaux usées", "", "chauffé"),
    ]  # fmt: skip
    lines += [(label, first, second) for label, first, second in (("Masse maximale", "4 100 kg", "4 250 kg"),)]
    lines += [
        ("Places de couchage", "2", "3"),
        ("Panneaux solaires", "380 W", "150 W"),
        ("Prise extérieure", "16 A", "16 A"),
    ]
    top = 80
    for number, line in enumerate(lines):
        top += 11 if 1 < number < 7 else 19
        page.row(
            top, *((x, cell) for x, cell in zip((60, 200, 330), line, strict=False) if cell), size=8, bold=not number
        )
    document = read_document(page.data(), "guide.pdf", "pdf", examiner.hints)
    labels = {p.row.text for p in document.passages if p.row is not None and p.column is not None}
    assert {"Isolation des canalisations", "Cordon chauffant sur les conduites d'eau"} <= labels
