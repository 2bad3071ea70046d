"""Vans whose maker and model year stand in the part of the text on each, behind a label and in one line."""

import pytest

ROWS = {
    "en": ("Van", "Length", "MTPLM", "Berths", "Converter: {}. Model year {}."),
    "de": ("Fahrzeug", "Länge", "Gesamtmasse", "Schlafplätze", "Hersteller: {}. Modelljahr {}."),
    "fr": ("Fourgon", "Longueur", "PTAC", "Couchages", "Constructeur : {}. Millésime {}."),
}
VANS = (("Shingle 54", "5.41 m", "3300 kg", "2", "Tarnholt", 2027),
        ("Shingle 60", "5.99 m", "3500 kg", "3", "Tarnholt", 2027),
        ("Wicket 63", "6.33 m", "4100 kg", "2", "Oversley", 2026))  # fmt: skip


@pytest.mark.parametrize("language", list(ROWS))
def test_each_van_of_a_table_has_the_maker_and_year_of_its_own_part(vans_of, language):
    *heads, told = ROWS[language]
    table = "\n".join(f"| {' | '.join(row)} |" for row in (heads, ["---"] * 4, *(van[:4] for van in VANS)))
    parts = "\n\n".join(f"## {van[0]}\n\n{told.format(*van[4:])}\n\n{heads[1]}: {van[1]}" for van in VANS)
    text = f"# {len(VANS)} x {heads[0]}\n\n{table}\n\n{parts}\n"
    assert vans_of(text) == {(maker, name, year) for name, *_, maker, year in VANS}
