"""Pages of which single columns are shaded, each cell for itself, under a bar of heads."""

from tests.reading.drawn import Page

PLACES = (50, 230, 330, 430)
ROWS = [
    ("Wechselrichter 1.500 W", "W", "W", "S"), ("Fußbodenheizung", "N", "W", "S"), ("Dachreling", "W", "W", "W"),
    ("Frischwassertank isoliert", "S", "S", "S"), ("Abwassertank isoliert", "N", "N", "S"), ("Markise", "W", "W", "W"),
    ("Winterablassventil", "W", "S", "S"),
]  # fmt: skip
OFFERED = {"S": "standard", "W": "optional", "N": "not_available"}


def test_shaded_columns_are_no_table_of_their_own_and_a_row_of_one_mark_is_no_head(facts_of_pdf):
    """The marks of a row may all read like the name of one van, "S"."""
    page = Page()
    page.text(50, 30, "Drift", size=24, bold=True)
    page.text(50, 58, "Marrowfen GmbH, Modelljahr 2026")
    page.text(50, 70, "Drift S, Drift M und Drift L Fell")
    page.text(50, 84, "S = Serie   W = Wunsch gegen Aufpreis   N = nicht lieferbar", size=8)
    for x0, x1 in ((45, 205), (205, 305), (305, 405), (405, 505)):
        page.box(x0, 98, x1, 114, (0.1, 0.3, 0.4))
    page.row(101, *zip(PLACES[1:], ("S", "M", "L Fell"), strict=True), bold=True, color=(1, 1, 1))
    for number, row in enumerate(ROWS):
        page.box(305, 114 + 16 * number, 405, 130 + 16 * number, (0.93, 0.95, 0.97))
        page.row(117 + 16 * number, *zip(PLACES, row, strict=True))
    found = {(f.field, f.model): f.availability for f in facts_of_pdf(page) if not f.rejected}
    for field, row in (("inverter_w", ROWS[0]), ("heated_floor", ROWS[1]), ("fresh_tank_insulated", ROWS[3])):
        marks = [found.get((field, f"Drift {van}")) for van in ("S", "M", "L Fell")]
        assert marks == [OFFERED[mark] for mark in row[1:]], field
