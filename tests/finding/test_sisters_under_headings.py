"""Vans that are named once, each in a heading above what is told of it, and the range that they share."""

import pytest


@pytest.fixture
def read(read_file, tmp_path):
    """Give a function that reads a text under a name, and gives its vans with how many sleep in each."""

    def read_text(name, text):
        path = tmp_path / name
        path.write_text(text, encoding="utf-8")
        found = read_file(path).found
        sleeps = {fact.model: fact.value for fact in found.facts if fact.field == "sleeps" and not fact.rejected}
        return {van.model: sleeps.get(van.model) for van in found.vans}

    return read_text


def test_vans_whose_names_stand_in_their_headings_alone_are_vans(read):
    told = "<h3>{}</h3><p>Longueur {} m. {} couchages. Eau propre {} litres. Batterie lithium 150 Ah.</p>"
    vans = "".join(told.format(*one) for one in (("Galet 54", "5,41", 2, 80), ("Galet 60 Duo", "5,99", 4, 100)))
    page = f"<title>Gamme Galet 2027 – Penmarec</title><h1>La gamme Galet</h1>{vans}<p>Penmarec SAS, quai Sud.</p>"
    assert read("gamme.html", f"<html lang='fr'>{page}</html>") == {"Galet 54": 2, "Galet 60 Duo": 4}


def test_an_edition_in_the_title_and_the_van_it_is_of_are_two_vans(read):
    told = "<h2>{}</h2><ul><li>Length 5.85 m</li><li>Sleeps {}</li><li>Fresh water tank: 80 litres</li><li>{}</li></ul>"
    vans = told.format("Teasel", 2, "AGM leisure battery, 120 Ah")
    vans += told.format("Teasel Jubilee 30", 3, "Lithium leisure battery, 200 Ah")
    page = f"<h1>Teasel Jubilee 30</h1><p>The birthday edition of the Teasel.</p>{vans}<p>Marrowfen Ltd, Hythe.</p>"
    assert read("edition.html", page) == {"Teasel": 2, "Teasel Jubilee 30": 3}


def test_trims_below_groups_of_which_a_dash_parts_a_measure_are_vans_of_each(read):
    same = "<td>Gaz, air pulsé</td><td>90 Ah AGM</td>"
    rows = "".join(
        f"<tr><td colspan='6'>Galet {code} – longueur {length} m</td></tr>"
        + "".join(
            f"<tr><td>{trim}</td><td>{price} €</td><td>{sleeps}</td><td>{water} l</td>{same}</tr>" for trim in trims
        )
        for code, length, price, sleeps, water, trims in (
            ("K1", "5,45", "54 300", 2, 72, ("Brise", "Tempête")),
            ("K2", "6,05", "58 600", 4, 98, ("Brise", "Tempête")),
        )
    )  # fmt: skip
    head = "<tr><th>Finition</th><th>Prix TTC</th><th>Couchages</th><th>Eau propre</th><th>Chauffage</th>"
    head += "<th>Batterie</th></tr>"
    text = "<p>Le Galet K1 Brise est livrable sous huit semaines.</p><p>Penmarec SAS, quai Sud.</p>"
    page = f"<html lang='fr'><h1>Tarif Galet 2027</h1><table>{head}{rows}</table>{text}</html>"
    names = {"Galet K1 Brise": 2, "Galet K1 Tempête": 2, "Galet K2 Brise": 4, "Galet K2 Tempête": 4}
    assert read("tarif.html", page) == names


SHEET = """PENMAREC                                Fiche technique
Gamme LANDE LONGUE                      Collection 2026

                        LL2         LL4       LL4 Nord
Longueur (mm)           5 380       5 980     5 980
Hauteur (mm)            2 580       2 680     2 680
Couchages               2           4         3
Eau propre (l)          70          95        95

Penmarec SA, quai Sud, Saint-Orvain
"""


def test_company_and_paper_above_the_heads_are_no_rows_and_a_range_may_have_a_word_of_labels(read):
    assert read("fiche.txt", SHEET) == {"Lande Longue LL2": 2, "Lande Longue LL4": 4, "Lande Longue LL4 Nord": 3}


def test_a_list_of_options_below_a_van_is_of_it_though_the_title_is_the_same(read_file, tmp_path):
    rows = "<tr><th>Length</th><td>5.99 m</td><td>6.04 m</td></tr><tr><th>Berths</th><td>2</td><td>2</td></tr>"
    table = f"<table><tr><th></th><th>Teasel 6</th><th>Teasel 6 Alpine</th></tr>{rows}</table>"
    options = "<h2>Options</h2><h3>Teasel 6</h3><ul><li>300 Ah lithium battery £2,300</li></ul>"
    options += "<h3>Teasel 6 Alpine</h3><ul><li>Bull bar £900</li></ul>"
    path = tmp_path / "page.html"
    path.write_text(f"<h1>Teasel 6</h1>{table}{options}<p>Marrowfen Ltd, Hythe.</p>")
    batteries = [fact.model for fact in read_file(path).found.facts if fact.field == "battery_ah"]
    assert batteries == ["Teasel 6"]


def test_a_label_that_fills_its_column_ends_at_its_colon(read_file, tmp_path):
    lines = ("Length:          5.99 m", "Fresh water:     80 litres", "Heater:          Gas, 4 kW",
             "Leisure battery: 200 Ah AGM", "Berths:          2")  # fmt: skip
    path = tmp_path / "van.txt"
    path.write_text("Marrowfen Drift 21\n\n" + "\n".join(lines) + "\n\nMarrowfen Ltd, Hythe.\n")
    stated = {fact.field: fact.value for fact in read_file(path).found.facts}
    assert stated["battery_ah"] == 200
    assert stated["heater_rating_w"] == 4000
