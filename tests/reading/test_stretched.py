"""Tables whose cells are set to the width of their column, so that a short line of a broken cell has wide gaps."""

from tests.reading.drawn import Page

ROWS = (
    ("Länge", "5,40 m", "5,99 m"),
    ("Schlafplätze", "2", "4"),
    ("Frischwasser", "90 l", "110 l"),
    ("Lage Abwassertank", "Unterflur", "im beheizten Doppelboden"),
    ("Heizung", "Gas-Kombiheizung", "Diesel-Kombiheizung"),
    ("Solar", "100 W", "200 W"),
    *((label, "ja", "ja") for label in ("Radio", "Markise", "Rollos", "Licht", "Tisch", "Bad", "Tür", "Regal", "Bett")),
    *((label, "2", "3") for label in ("Lampen", "Dosen", "Haken", "Fächer", "Sitze", "Polster", "Fenster", "Luken")),
    ("Gedämmte Flächen", "Wände, Dach", "Wände, Dach, Boden, Türen"),
)
PLACES = (60, 210, 360)


def headed_page():
    """Give a page with the title of a range and the names of two vans over their columns."""
    page = Page()
    page.text(60, 50, "Milan", size=20, bold=True)
    page.text(60, 80, "Technische Daten, Modelljahr 2026", size=12)
    page.rule(60, 98, 490)
    for x, head in zip(PLACES[1:], ("Milan 54", "Milan 60"), strict=True):
        page.text(x, 101, head, bold=True)
    return page


def by_van_and_field(facts):
    """Give the values of facts by van and field."""
    found = {}
    for fact in facts:
        found.setdefault((fact.model, fact.field), set()).add(fact.value)
    return found


def test_the_gap_in_a_line_set_to_the_width_of_its_column_parts_no_columns(facts_of_pdf):
    page = headed_page()
    top = 116
    for row in ROWS:
        for x, text in zip(PLACES, row, strict=True):
            page.text(x, top, text)
        if row[0] == "Heizung":
            page.text(456, top, "mit")
            page.text(360, top + 11, "Elektropatrone")
            top += 11
        top += 12
    found = by_van_and_field(facts_of_pdf(page))
    assert found["Milan 54", "insulated_surfaces"] == {"walls", "ceiling"}
    assert ("Milan 54", "gray_tank_heat") not in found
    assert found["Milan 60", "heater_fuel"] == {"diesel", "electric"}


def test_a_line_with_even_gaps_is_one_whatever_its_words_begin_with(facts_of_pdf):
    page = headed_page()
    top = 116
    for row in (*ROWS[:3], ("Batterie", "1 x 90 Ah AGM", "2 x 200 Ah Lithium, 12,8 V"), *ROWS[4:]):
        for x, text in zip(PLACES, row, strict=True):
            if row[0] != "Heizung" or x != PLACES[2]:
                page.text(x, top, text)
        if row[0] == "Heizung":
            for x, word in ((360, "Diesel,"), (398, "Heizschleife"), (457, "der"), (480, "Warmwasser-")):
                page.text(x, top, word)
            page.text(360, top + 11, "heizung")
            top += 11
        top += 12
    found = by_van_and_field(facts_of_pdf(page))
    assert found["Milan 54", "battery_ah"] == {90}
    assert found["Milan 60", "battery_ah"] == {400}
    assert found["Milan 60", "heater_type"] == {"hydronic"}
