"""Web pages whose tables are made of boxes without a table's marks."""

import pytest

from specscan.reading.read import read_document

HEAD = "<div class=r><div></div><div>S</div><div>M</div><div>L Winter</div></div>"
GROUPS = [
    ("Dimensions", [("Length", "4,980 mm", "5,980 mm", "6,360 mm"), ("Height", "1,990 mm", "2,690 mm", "2,840 mm"),
                    ("Sleeps", "4", "3", "2"), ("GVWR", "3,300 kg", "3,500 kg", "4,100 kg")]),
    ("Water", [("Fresh water", "30 L", "98 L", "115 L"), ("Heated floor", "-", "optional", "standard")]),
]  # fmt: skip


@pytest.fixture
def facts_of_page(read_file, tmp_path):
    """Give a function that stores a web page, reads it and returns its counting facts."""

    def read(body):
        path = tmp_path / "page.html"
        path.write_text(f"<html><body><main>{body}</main></body></html>")
        return [fact for fact in read_file(path).found.facts if not fact.rejected]

    return read


def boxes(*cells):
    return "<div class=r>" + "".join(f"<div><span>{cell}</span></div>" for cell in cells) + "</div>"


def by_van(facts, field):
    return {fact.model: fact.value for fact in facts if fact.field == field}


def test_rows_of_boxes_among_headings_and_text_are_one_table(facts_of_page):
    body = "".join(f"<h3>{name}</h3>" + "".join(boxes(*row) for row in rows) for name, rows in GROUPS)
    facts = facts_of_page(
        "<p>Start / Models / Drift</p><h1>Marrowfen Drift 2026: three compared</h1>"
        f"<p>The Drift S is for weekends.</p>{HEAD}{body}<h3>Safety</h3><p>Test the carbon monoxide alarm.</p>"
    )
    names = ("Drift S", "Drift M", "Drift L Winter")
    assert by_van(facts, "length_mm") == dict(zip(names, (4980, 5980, 6360), strict=True))
    assert by_van(facts, "fresh_tank_l") == dict(zip(names, (30, 98, 115), strict=True))
    offers = {fact.model: fact.availability for fact in facts if fact.field == "heated_floor"}
    assert offers[names[1]] == "optional"
    assert offers[names[2]] == "standard"


def test_cards_side_by_side_are_no_table(examiner):
    card = "<div class=card><h3>Drift {}</h3><p>Length: {} mm</p><p>Fresh water: {} L</p></div>"
    cards = "".join(card.format(*row) for row in (("S", 4980, 30), ("M", 5980, 98), ("W", 6360, 115)))
    page = f"<h1>Marrowfen Drift 2026</h1><div class=cards>{cards}</div>"
    document = read_document(page.encode(), "page.html", "html", examiner.hints)
    sections = {p.text: p.sections for p in document.passages}
    assert sections["Fresh water: 98 L"] == ("Marrowfen Drift 2026", "Drift M")


CARD = (
    "<div class=card><div class=pic></div><div class=name>{}</div><div class=say>Nimble</div>"
    + "".join(
        f"<div class=line><span>{label}</span><span>{value}</span></div>"
        for label, value in (("Length", "{} m"), ("GVWR", "3,500 kg"), ("Sleeps", "2"), ("Fresh tank", "{} L"),
                             ("Grey tank", "50 L"), ("Solar", "100 W"), ("Inverter", "1,000 W"))
    )
    + "</div>"
)  # fmt: skip


def test_cards_have_titles_and_rows_without_space_between_their_parts(facts_of_page):
    cards = CARD.format("Drift X5", "5.41", "70") + CARD.format("Drift X6", "5.99", "95")
    facts = facts_of_page(f"<h1>Our vans, model year 2026</h1><p>Marrowfen makes vans.</p><div>{cards}</div>")
    assert by_van(facts, "length_mm") == {"Drift X5": 5410, "Drift X6": 5990}
    assert by_van(facts, "fresh_tank_l") == {"Drift X5": 70, "Drift X6": 95}


def test_labels_that_alternate_with_values_are_rows(facts_of_page):
    def panel(name, drive, length, water):
        rows = (("Drive", drive), ("Length", length), ("GVM", "3,500 kg"), ("Berths", "2"), ("Fresh water", water),
                ("Grey water", "60 L"), ("Battery", "100 Ah lithium"), ("Solar", "170 W"))  # fmt: skip
        cells = "".join(f"<div>{label}</div><div>{value}</div>" for label, value in rows)
        return f"<div class=panel><div class=n>{name}</div><div class=grid>{cells}</div></div>"

    facts = facts_of_page(
        "<h1>Three ways to go</h1><p>Every Drift starts as the same box. The Drift has a bed.</p><div>"
        + panel("Touring", "Rear", "5,910 mm", "100 L")
        + panel("Touring 4x4", "4x4", "5,930 mm", "140 L")
        + "</div>"
    )
    assert by_van(facts, "length_mm") == {"Drift Touring": 5910, "Drift Touring 4x4": 5930}
    assert by_van(facts, "fresh_tank_l") == {"Drift Touring": 100, "Drift Touring 4x4": 140}


CELLS = [
    ("", "S", "M", "L Winter"),
    ("Length", "4,980 mm", "5,980 mm", "6,360 mm"),
    ("Sleeps", "4", "3", "2"),
    ("GVWR", "3,300 kg", "3,500 kg", "4,100 kg"),
    ("Fresh water", "30 L", "98 L", "115 L"),
    ("Heated floor", "-", "optional", "standard"),
]


@pytest.mark.parametrize(
    ("opening", "label"),
    [
        ("<style>.c{display:grid;grid-template-columns:minmax(9em, 2fr) repeat(3, 1fr)}</style><div class=c>", "<div>"),
        ('<div style="display: grid; grid-template-columns: 2fr 1fr 1fr 1fr">', "<div>"),
        ("<div class=c>", "<div class=label>"),
    ],
)
def test_cells_one_after_another_are_rows_of_as_many_as_the_style_or_their_labels_say(facts_of_page, opening, label):
    cells = "".join(f"{label}{row[0]}</div>" + "".join(f"<div>{cell}</div>" for cell in row[1:]) for row in CELLS)
    facts = facts_of_page(f"<h1>Marrowfen Drift 2026</h1><p>The Drift S is for two.</p>{opening}{cells}</div>")
    assert by_van(facts, "fresh_tank_l") == {"Drift S": 30, "Drift M": 98, "Drift L Winter": 115}
    assert by_van(facts, "sleeps") == {"Drift S": 4, "Drift M": 3, "Drift L Winter": 2}


def test_a_list_of_terms_with_as_many_descriptions_each_is_a_table(facts_of_page):
    rows = "".join(f"<dt>{row[0]}</dt>" + "".join(f"<dd>{cell}</dd>" for cell in row[1:]) for row in CELLS)
    facts = facts_of_page(f"<h1>Marrowfen Drift 2026</h1><p>The Drift S is for two.</p><dl>{rows}</dl>")
    assert by_van(facts, "fresh_tank_l") == {"Drift S": 30, "Drift M": 98, "Drift L Winter": 115}
    assert by_van(facts, "sleeps") == {"Drift S": 4, "Drift M": 3, "Drift L Winter": 2}


def test_a_row_of_a_label_and_one_value_holds_for_all_columns_and_parts_no_table(facts_of_page):
    rows = [("Length", "5,410 mm", "5,990 mm"), ("Height", "2,640 mm", "2,800 mm"), ("Wheelbase", "3,450 mm"),
            ("Sleeps", "2", "4"), ("GVWR", "3,300 kg", "3,500 kg")]  # fmt: skip
    head = "<div class=r><div></div><div><b>Drift 19</b></div><div><b>Drift 21</b></div></div>"
    water = "<h2>Water</h2>" + boxes("Fresh water", "30 L", "98 L") + boxes("Gray water", "25 L", "70 L")
    body = "<h1>Marrowfen Drift 2026</h1><h2>Road</h2>" + head + "".join(boxes(*row) for row in rows)
    facts = facts_of_page(body + water + boxes("Heated floor", "optional", "standard"))
    told = {field: {(f.model, f.value) for f in facts if f.field == field} for field in ("wheelbase_mm", "gvwr_kg")}
    assert told["wheelbase_mm"] == {("Drift 19", 3450), ("Drift 21", 3450)}
    assert told["gvwr_kg"] == {("Drift 19", 3300), ("Drift 21", 3500)}
    assert {(f.model, f.value) for f in facts if f.field == "gray_tank_l"} == {("Drift 19", 25), ("Drift 21", 70)}


def test_tiles_may_have_the_value_above_its_label(facts_of_page):
    tiles = {"Marrow 3500": "base van", "20 ft 4 in": "long", "6 ft 9 in": "wide without mirrors", "9,500 lb": "GVWR",
             "2": "people asleep", "28 gal": "fresh water", "24 gal": "gray water", "11,500 BTU/h": "heater output",
             "1,150 W": "draw at full output", "Electric": "floor heat, aisle and bath"}  # fmt: skip
    made = "".join(f"<div class=t><span>{value}</span><span>{label}</span></div>" for value, label in tiles.items())
    facts = facts_of_page(f"<h1>Marrowfen Drift 2026</h1><p>The Drift is for two.</p><div class=grid>{made}</div>")
    found = {fact.field: fact.value for fact in facts if not fact.rejected}
    assert round(found["length_mm"]) == 6198
    assert round(found["width_mm"]) == 2057
    assert found["sleeps"] == 2
    assert round(found["fresh_tank_l"]) == 106
    assert found["heater_power_draw_w"] == 1150
    assert found["heated_floor"] is True


def test_a_short_text_alone_heads_rows_and_the_head_above_holds_for_all_groups(facts_of_page):
    def span_row(*cells):
        return "<div class=r role=row>" + "".join(f"<span>{cell}</span>" for cell in cells) + "</div>"

    head = "<div class=head role=row><span></span><span>Drift 19</span><span>Drift 21 Winter</span></div>"
    groups = {"Size": [("Length", "5,410 mm", "5,990 mm"), ("Height", "2,640 mm", "2,800 mm"),
                       ("GVWR", "3,300 kg", "3,500 kg")],
              "Water": [("Fresh water", "30 L", "98 L"), ("Gray water", "25 L", "70 L")]}  # fmt: skip
    table = "".join(
        f"<div class=grp role=row>{title}</div>" + "".join(span_row(*row) for row in rows)
        for title, rows in groups.items()
    )
    facts = facts_of_page(f"<h1>Marrowfen Drift 2026</h1><p>Two trims.</p>{head}{table}<h3>More</h3><p>Ask us.</p>")
    assert by_van(facts, "height_mm") == {"Drift 19": 2640, "Drift 21 Winter": 2800}
    assert by_van(facts, "gray_tank_l") == {"Drift 19": 25, "Drift 21 Winter": 70}
