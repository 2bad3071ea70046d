"""Heads that say nothing of whose a column is are no part of a van's name."""

import pytest

from tests.reading.drawn import Page


@pytest.fixture
def facts_of_page(read_file, tmp_path):
    """Give a function that stores a web page, reads it and returns its counting facts."""

    def read(body):
        path = tmp_path / "page.html"
        path.write_text(f"<html><body><h1>Marrowfen Drift 2026</h1>{body}</body></html>")
        return [fact for fact in read_file(path).found.facts if not fact.rejected]

    return read


def by_van(facts, field):
    return {fact.model: fact.value for fact in facts if fact.field == field}


def offers(facts, field):
    return {fact.model: fact.availability for fact in facts if fact.field == field}


BASICS = """<table><thead><tr><th></th><th>Drift 5S</th><th>Drift 6S</th></tr></thead>
<tr><td>Length</td><td>5.41 m</td><td>5.98 m</td></tr><tr><td>GVWR</td><td>3500 kg</td><td>4000 kg</td></tr>
<tr><td>Wheelbase</td><td>3.45 m</td><td>4.04 m</td></tr><tr><td>Gray water</td><td>60 L</td><td>90 L</td></tr>
</table>"""


def table(head, *rows):
    body = "".join("<tr>" + "".join(f"<td>{cell}</td>" for cell in row) + "</tr>" for row in rows)
    return f"<table><thead>{head}</thead><tbody>{body}</tbody></table>"


UNITS = """<tr><th></th><th colspan="2">Short body</th><th colspan="4">Long body</th></tr>
<tr><th></th><th colspan="2">2026 Drift 5S</th><th colspan="2">2026 Drift 6S</th><th colspan="2">2026 Drift 6W</th></tr>
<tr><th></th><th>{0}</th><th>{1}</th><th>{0}</th><th>{1}</th><th>{0}</th><th>{1}</th></tr>"""


def test_units_and_groups_above_and_below_the_names_are_no_part_of_them(facts_of_page):
    rows = [("Length", "5.41 m", "213 in", "5.98 m", "235.5 in", "5.98 m", "235.5 in"),
            ("Fresh water", "70 L", "18.5 gal", "105 L", "27.7 gal", "90 L", "23.8 gal"),
            ("GVWR", "3500 kg", "7716 lb", "4037 kg", "8900 lb", "4037 kg", "8900 lb"),
            ("Sleeps", "2", "2", "3", "3", "2", "2")]  # fmt: skip
    facts = facts_of_page(table(UNITS.format("metric", "U.S."), *rows))
    assert set(by_van(facts, "model").values()) == {"Drift 5S", "Drift 6S", "Drift 6W"}
    assert by_van(facts, "sleeps") == {"Drift 5S": 2, "Drift 6S": 3, "Drift 6W": 2}
    assert by_van(facts, "fresh_tank_l") == pytest.approx({"Drift 5S": 70, "Drift 6S": 105, "Drift 6W": 90}, rel=0.01)


def test_a_unit_over_a_column_is_the_unit_of_its_bare_figures(facts_of_page):
    rows = [("Length", "5410", "213", "5980", "235.5", "5980", "235.5"),
            ("Wheelbase", "3450", "136", "4040", "159", "4040", "159"),
            ("Interior height", "1880", "74", "1880", "74", "1860", "73"),
            ("Height", "2690", "106", "2720", "107", "2840", "112")]  # fmt: skip
    facts = facts_of_page(table(UNITS.format("mm", "in"), *rows))
    assert by_van(facts, "height_mm") == pytest.approx({"Drift 5S": 2690, "Drift 6S": 2720, "Drift 6W": 2840}, rel=0.01)


@pytest.mark.parametrize(("first", "codes"), [("Code", ("W10", "W12", "R04")), ("", ("W10", "W12", "R04"))])
def test_order_codes_are_neither_labels_nor_figures(facts_of_page, first, codes):
    head = f"<tr><th>{first}</th><th>Item</th><th>Drift 5S</th><th>Drift 6S</th></tr>"
    rows = [(codes[0], "Insulated jacket for gray tank", "$145", "Std"),
            (codes[1], "12 V heating pad for gray tank", "$265", "Std"),
            (codes[2], "Solar panels, 220 W", "–", "$900")]  # fmt: skip
    legend = "<p>Std = standard. – = not available. A price means available at that price.</p>"
    facts = facts_of_page(BASICS + table(head, *rows) + legend)
    assert offers(facts, "gray_tank_insulated") == {"Drift 5S": "optional", "Drift 6S": "standard"}
    assert by_van(facts, "gray_tank_heat") == {"Drift 5S": "electric_pad", "Drift 6S": "electric_pad"}
    assert offers(facts, "solar_w") == {"Drift 5S": "not_available", "Drift 6S": "optional"}
    assert not by_van(facts, "insulation_r_si")


def test_codes_of_vans_that_head_rows_stay(facts_of_page):
    head = "<tr><th>Layout</th><th>Length</th><th>Sleeps</th><th>Fresh water</th><th>GVWR</th></tr>"
    rows = ("Q59", "5.99 m", "2", "90 L", "3500 kg"), ("Q64", "6.36 m", "3", "110 L", "4250 kg")
    facts = facts_of_page(table(head, *rows))
    assert by_van(facts, "sleeps") == {"Marrowfen Drift Q59": 2, "Marrowfen Drift Q64": 3}


def test_a_weight_column_of_an_option_list_is_no_van(facts_of_page):
    head = "<tr><th>No.</th><th>Equipment</th><th>Weight kg</th><th>Drift 5S</th><th>Drift 6S</th></tr>"
    rows = [("4011", "Heating pad for gray tank, 12 V", "1.2", "$290", "S"),
            ("4030", "Electric floor heat", "9.5", "–", "$890")]  # fmt: skip
    facts = facts_of_page(BASICS + table(head, *rows) + "<p>S = standard, – = not available</p>")
    assert set(by_van(facts, "model")) == {"Drift 5S", "Drift 6S"}
    assert by_van(facts, "gray_tank_heat") == {"Drift 5S": "electric_pad", "Drift 6S": "electric_pad"}


def test_a_drawn_head_without_a_body_heads_the_lines_below_it(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=20, bold=True)
    walls = (200, 280, 360, 440, 520)
    for left, right in ((200, 360), (360, 520)):
        page.box(left, 100, right, 116, (0.85, 0.85, 0.9))
    for left, right in zip(walls, walls[1:], strict=False):
        page.box(left, 116.5, right, 132, (0.85, 0.85, 0.9))
    page.row(104, (254, "For the summer"), (414, "For the winter"), size=8, bold=True)
    names = ("T 5.4", "T 6.0", "T 6.0 W", "T 6.4 W")
    page.row(120, *zip((228, 308, 384, 464), names, strict=True), size=8, bold=True)
    rows = [("Overall length", "5.41 m", "5.98 m", "5.98 m", "6.36 m"), ("Sleeps", "2", "3", "2", "2"),
            ("GVWR", "3300 kg", "3500 kg", "3500 kg", "4250 kg"), ("Gray water", "80 L", "90 L", "90 L", "110 L"),
            ("Fresh water", "85 L", "100 L", "100 L", "130 L")]  # fmt: skip
    for number, (label, *values) in enumerate(rows):
        page.row(140 + 16 * number, (50, label), *zip((228, 308, 388, 468), values, strict=True), size=8)
    facts = facts_of_pdf(page)
    expected = {f"Marrowfen Drift {name}": int(rows[-1][place].split()[0]) for place, name in enumerate(names, 1)}
    assert by_van(facts, "fresh_tank_l") == expected


def test_a_label_beside_a_tall_cell_speaks_of_what_that_cell_names(facts_of_page):
    head = '<tr><th colspan="2"></th><th>Drift 5S</th><th>Drift 6S</th></tr>'
    rows = [('Fresh</td><td>Gallons', 16, 36), ("Where", "Indoors, rear bench", "Indoors"),
            ("Pipes", "Indoors", "Under the floor")]  # fmt: skip
    body = "".join(f"<tr><td>{a}</td><td>{b}</td><td>{c}</td></tr>" for a, b, c in rows)
    gray = "".join(
        f"<tr><td>{a}</td><td>{b}</td><td>{c}</td></tr>"
        for a, b, c in (("Gray</td><td>Gallons", 12, 30), ("Heat", "None", "12-volt pad"))
    )
    body = body.replace("<td>Fresh", '<td rowspan="3">Fresh') + gray.replace("<td>Gray", '<td rowspan="2">Gray')
    facts = facts_of_page(BASICS.replace("Gray water", "Towing") + f"<table><thead>{head}</thead>{body}</table>")
    assert by_van(facts, "fresh_tank_l") == pytest.approx({"Drift 5S": 60.6, "Drift 6S": 136.3}, rel=1e-2)
    assert by_van(facts, "fresh_tank_location") == {"Drift 5S": "interior", "Drift 6S": "interior"}
    assert by_van(facts, "gray_tank_l") == pytest.approx({"Drift 5S": 45.4, "Drift 6S": 113.6}, rel=1e-2)
    assert by_van(facts, "gray_tank_heat") == {"Drift 5S": "none", "Drift 6S": "electric_pad"}
    assert by_van(facts, "water_lines_location")["Drift 5S"] == "interior"


def test_heads_that_come_again_at_other_places_head_what_is_below_them(facts_of_page):
    upper = "<tr><th>Price</th><th>Drift 5S</th><th></th><th>Drift 6S</th></tr>"
    rows = [
        ("Ex works", "51,000", "", "56,000"),
        ("Extras", "", "Drift 5S", "Drift 6S", "kg"),
        ("Insulated gray tank", "", "$245", "S", "4"),
        ("Solar panel 120 W", "", "–", "$1,090", "9"),
    ]
    facts = facts_of_page(BASICS + table(upper, *rows) + "<p>S = standard, – = not available</p>")
    assert offers(facts, "gray_tank_insulated") == {"Drift 5S": "optional", "Drift 6S": "standard"}
    assert offers(facts, "solar_w") == {"Drift 5S": "not_available", "Drift 6S": "optional"}


@pytest.mark.parametrize("close", [12, 24])
def test_the_name_of_a_van_stands_left_over_its_columns_of_us_and_metric_units(read_file, tmp_path, close):
    page = Page()
    page.text(40, 40, "Marrowfen data sheet 2026", size=16, bold=True)
    page.row(100, (200, "Drift"), (380, "Drift Long"), bold=True)
    page.row(100 + close, (200, "US"), (290, "metric"), (380, "US"), (470, "metric"), bold=True)
    rows = (
        ("Length", "19 ft 7 in", "5970 mm", "22 ft 0 in", "6706 mm"),
        ("Width", "6 ft 9 in", "2057 mm", "6 ft 9 in", "2057 mm"),
        ("Wheelbase", "159 in", "4039 mm", "170 in", "4318 mm"),
        ("Fresh water tank", "27.7 gal", "105 L", "34.3 gal", "130 L"),
        ("Gray water tank", "23.2 gal", "88 L", "29.1 gal", "110 L"),
    )  # fmt: skip
    for number, row in enumerate(rows):
        page.row(140 + 20 * number, *zip((40, 200, 290, 380, 470), row, strict=True))
    path = tmp_path / "sheet.pdf"
    path.write_bytes(page.data())
    found = read_file(path).found
    assert {van.model for van in found.vans} == {"Drift", "Drift Long"}
    stated = {(f.model, round(f.value)) for f in found.facts if f.field == "fresh_tank_l" and not f.rejected}
    assert stated == {("Drift", 105), ("Drift Long", 130)}


def test_order_codes_with_a_space_are_no_labels_of_their_rows(read_file, tmp_path):
    page = Page()
    page.text(40, 30, "Marrowfen Preisliste 2026", size=16, bold=True)
    rows = [("", "Drift 541", "Drift 599"), ("Länge", "5,41 m", "5,99 m"), ("Radstand", "3.450 mm", "4.035 mm"),
            ("Höhe", "2,65 m", "2,80 m"), ("Gesamtmasse", "3.500 kg", "4.250 kg")]  # fmt: skip
    for number, row in enumerate(rows):
        page.row(70 + 16 * number, *zip((40, 200, 300), row, strict=True), bold=not number)
    page.text(40, 180, "S = Serie, Zahl = Aufpreis in Euro, – = nicht lieferbar")
    rows = [("Best.-Nr.", "Bezeichnung", "541", "599"), ("W 101", "Frischwassertank 90 l", "S", "–"),
            ("W 102", "Frischwassertank 120 l", "–", "S"), ("W 115", "Heizmatte 12 V für den Abwassertank", "295", "S"),
            ("H 201", "Luftheizung, Gas, 3,5 kW", "S", "S"), ("E 310", "Solaranlage 130 W", "490", "1.250"),
            ("E 320", "Wechselrichter 1.700 W", "1.090", "S")]  # fmt: skip
    for number, row in enumerate(rows):
        page.row(210 + 16 * number, *zip((40, 90, 400, 480), row, strict=True), bold=not number)
    path = tmp_path / "preise.pdf"
    path.write_bytes(page.data())
    facts = [fact for fact in read_file(path).found.facts if not fact.rejected]
    assert offers(facts, "inverter_w") == {"Drift 541": "optional", "Drift 599": "standard"}
    assert offers(facts, "gray_tank_heat") == {"Drift 541": "optional", "Drift 599": "standard"}
    held = {(f.model, f.value) for f in facts if f.field == "fresh_tank_l" and f.availability == "standard"}
    assert held == {("Drift 541", 90), ("Drift 599", 120)}
