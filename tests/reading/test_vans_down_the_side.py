"""Vans whose names stand down the side of tables: codes under "Code", groups in bars, titles between their rows."""

import pytest

from tests.reading.drawn import Page


@pytest.fixture
def models_of(read_file, tmp_path):
    def read(page):
        path = tmp_path / "liste.pdf"
        path.write_bytes(page.data())
        return {van.model for van in read_file(path).found.vans}

    return read


def test_codes_of_vans_under_code_are_no_codes_of_options(models_of):
    page = Page()
    page.text(40, 30, "Deux gammes de fourgons, millésime 2027", size=16, bold=True)
    columns = (42, 90, 170, 230, 310, 400)
    for top, name, codes in ((70, "Gamme Drift", ("E54", "E60")), (190, "Gamme Sorrel", ("C60", "C64"))):
        page.box(40, top, 500, top + 18, (0.9, 0.9, 0.9))
        page.text(44, top + 4, name, size=11, bold=True)
        heads = ("Code", "Porteur", "Longueur", "Couchages", "Eau propre", "Batterie")
        page.row(top + 30, *zip(columns, heads, strict=True), bold=True)
        for n, code in enumerate(codes, 2):
            cells = (code, f"Calder D3{n}", f"5,{n}9 m", "2", f"{n}0 l", f"lithium {n}40 Ah")
            page.row(top + 18 * (n - 2) + 48, *zip(columns, cells, strict=True))
            page.rule(40, top + 18 * (n - 2) + 62, 500)
    page.text(40, 300, "Les prix s'entendent toutes taxes comprises. Marrowfen SA, 20 boulevard de l'Est, Ost.")
    assert models_of(page) == {"Drift E54", "Drift E60", "Sorrel C60", "Sorrel C64"}


def test_a_group_whose_letters_stand_apart_in_a_bar_is_in_one_piece(models_of):
    page = Page()
    page.text(40, 30, "Preise und Technik auf einen Blick", size=14, bold=True)
    page.text(40, 52, "Modelljahr 2026, gültig bis zum Erscheinen einer neuen Liste")
    columns = (44, 110, 190, 260, 340, 420)
    heads = ("Grundriss", "Basis", "Länge mm", "Schlafplätze", "Frischwasser l", "Batterie")
    page.row(80, *zip(columns, heads, strict=True), bold=True)
    rows = (("DRIFT", ("540", "600")), ("FELL", ("600", "680")))
    top = 98
    for name, codes in rows:
        page.box(40, top, 500, top + 16, (0.05, 0.3, 0.4))
        page.canvas.setFillColorRGB(1, 1, 1)
        page.canvas.setFont("Helvetica", 9)
        page.canvas.drawString(44, 842 - top - 11, f"BAUREIHE {name}", charSpace=1.7)
        for n, code in enumerate(codes, 1):
            cells = (code, "Dorn 35", f"{code}0", "2", f"1{n}0", f"AGM {n}90 Ah")
            page.row(top + 18 * n + 2, *zip(columns, cells, strict=True))
            page.rule(40, top + 18 * n + 15, 500)
        top += 56
    page.text(40, top + 10, "Marrowfen GmbH, Deichstraße 1, Ost")
    assert {name.title() for name in models_of(page)} == {"Drift 540", "Drift 600", "Fell 600", "Fell 680"}


def test_a_title_above_small_letters_parts_the_rows_of_one_van_from_those_of_the_next(models_of):
    page = Page()
    page.text(40, 30, "Wohin der Wind weht", size=18, bold=True)
    page.text(40, 56, "Alle Fahrzeuge, Modelljahr 2026, auf Calder Express.")
    rows = [("Länge", "5,99 m"), ("Schlafplätze", "2"), ("Frischwasser", "100 l"), ("Abwasser", "80 l")]
    rows += [("Batterie", "Lithium 100 Ah"), ("Dämmung", "19 mm")]
    top = 80
    for name, motto in (("540", "Der Kleine."), ("600 Sport", "Mit Platz für Bretter."), ("600 Lang", "Für alle.")):
        page.text(40, top, f"Drift {name}", size=13, bold=True)
        page.text(40, top + 14, f"{motto} 60.200 €", size=9, color=(0.4, 0.4, 0.4))
        for n, (label, value) in enumerate(rows):
            page.row(top + 32 + 15 * n, (45, label), (120, value))
            page.rule(40, top + 44 + 15 * n, 330)
        top += 142
    page.text(40, 800, "Marrowfen GmbH, Kai 4, Ost", size=7)
    assert models_of(page) == {"Drift 540", "Drift 600 Sport", "Drift 600 Lang"}


def test_base_vehicles_wrapped_around_the_lines_of_their_vans_are_no_part_of_their_names(models_of):
    page = Page()
    page.text(40, 10, "MARROWFEN COACHES", size=9, bold=True)
    page.text(40, 24, "Drift", size=20, bold=True)
    page.text(40, 46, "2026 specification guide for L-18, L-21 and L-24", size=11)
    page.box(36, 62, 576, 85, (0.85, 0.9, 0.95))
    page.box(36, 85, 81, 157, (0.95, 0.95, 0.95))
    columns = (47, 90, 168, 219, 261, 300, 344, 384, 420, 465, 509, 544)
    measured = (*columns[3:10], columns[10])
    heads = ("Length,", "Width,", "Height,", "Inside,", "W.B.,", "GVWR,", "GCWR,", "Fuel,")
    page.row(66, *zip(measured, heads, strict=True), bold=True, size=7.5)
    whole = (columns[0], columns[1], columns[2], columns[11])
    page.row(70.5, *zip(whole, ("Model", "Chassis", "Engine", "Sleeps"), strict=True), bold=True, size=7.5)
    page.row(
        75, *zip(measured, ("ft-in", "in", "ft-in", "in", "in", "lb", "lb", "gal"), strict=True), bold=True, size=7.5
    )
    for n, code in enumerate(("L-18", "L-21", "L-24")):
        top = 89 + 24 * n
        page.text(90, top, "Calder Drover", size=8)
        cells = (code, "Gas V6", f"2{n}-4", "79", "9-0", "76", "159", f"{9 + n},350", f"1{3 + n},500", "25", "2")
        page.row(top + 4.7, *zip((47, *columns[2:]), cells, strict=True), size=8)
        page.text(108, top + 9.4, f"{n + 2}50", size=8)
        page.rule(36, top + 19.8, 576)
    page.text(
        40, 180, "Every Drift drives its rear wheels and comes with a winterizing bypass. Marrowfen Coaches Inc., Ost."
    )
    assert models_of(page) == {"Drift L-18", "Drift L-21", "Drift L-24"}
