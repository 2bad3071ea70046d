"""Companies that lines with addresses and titles tell, and the model years of lines and titles without that word."""

import pytest

ROWS = {
    "fr": "| | {a} | {b} |\n|---|---|---|\n| Longueur | 5,41 m | 5,99 m |\n| Couchages | 2 | 2 |\n"
    "| Eau propre | 90 l | 110 l |\n| Eaux usées | 80 l | 95 l |\n| Chauffage | air pulsé | combiné |\n",
    "de": "| | {a} | {b} |\n|---|---|---|\n| Länge | 5,41 m | 5,99 m |\n| Schlafplätze | 2 | 2 |\n"
    "| Frischwasser | 90 l | 110 l |\n| Abwasser | 80 l | 95 l |\n| Heizung | Luftheizung (Diesel) | Kombiheizung |\n",
}
LIST = {
    "fr": "- Longueur 5,99 m\n- Couchages 2\n- Eau propre 110 l\n- Eaux usées 95 l\n- Chauffage combiné au gazole\n",
    "en": "- Length 5.99 m\n- Berths 2\n- Fresh water tank 110 litres\n- Waste water tank 95 litres\n- Diesel heater\n",
}


def test_a_title_before_its_address_is_the_company_and_no_range_of_numbers(vans_of):
    text = (
        "# Maison Marrowfen\n\nFourgons numérotés, faits main. Fiche technique 2026.\n\n"
        + ROWS["fr"].format(a="N° 3", b="N° 5")
        + "\nMaison Marrowfen, 7 passage des Imprimeurs, Ost.\n"
    )
    assert vans_of(text) == {("Maison Marrowfen", "N° 3", 2026), ("Maison Marrowfen", "N° 5", 2026)}


def test_what_a_list_says_of_each_code_is_no_range_of_the_next(vans_of):
    text = (
        "MARROWFEN · Prospekt\n\n# Die K-Linie\n\nK54 · Querbett K60 · Querbett K64 XL · Längsbetten\n\n"
        "## MARROWFEN · Technische Daten Modelljahr 2027\n\n| | K54 | K60 | K64 XL |\n|---|---|---|---|\n"
        "| Länge | 5,41 m | 5,99 m | 6,36 m |\n| Schlafplätze | 2 | 2 | 2 |\n| Frischwasser | 90 l | 100 l | 110 l |\n"
        "| Abwasser | 85 l | 90 l | 90 l |\n| Bordbatterie | 80 Ah Gel | 80 Ah Gel | 120 Ah LiFePO4 |\n"
    )
    assert vans_of(text) == {("Marrowfen", name, 2027) for name in ("K54", "K60", "K64 XL")}


def test_a_word_that_begins_all_heads_is_no_range_where_the_title_stands_before_them(vans_of):
    text = (
        "# Marrowfen Drift\n\nModelljahr 2026\n\nDrift Comfort 600 – Querbett, ab 59.990 €\n\n"
        "Drift Comfort Plus 600 – wie Comfort, ab 64.490 €\n\n## Technische Daten Drift\n\n"
        + ROWS["de"].format(a="Comfort 600", b="Comfort Plus 600")
        + "\nMarrowfen GmbH, Werkstraße 10, Ost\n"
    )
    assert {van for _, van, _ in vans_of(text)} == {"Drift Comfort 600", "Drift Comfort Plus 600"}


@pytest.mark.parametrize(
    ("text", "van"),
    [
        (
            "Atelier du Marais Drift 636\n\n# Le Drift 636, édition 2027\n\nChers voyageurs, voici le Drift 636.\n\n"
            "{fr}\nAtelier du Marais, coopérative, Les Granges d'Ost\n",
            ("Atelier du Marais", "Drift 636", 2027),
        ),
        ("# Drift 21, 2027 edition\n\n{en}\nMarrowfen Ltd, Hythe.\n", ("Marrowfen", "Drift 21", 2027)),
        ("# Drift 21\n\nVoici le Drift 21.\n\n{fr}\nMarrowfen SARL, aménageur à Ost   catalogue 2027\n",
         ("Marrowfen", "Drift 21", 2027)),
        ("Tarifs et caractéristiques 2027\n\n# Drift 21\n\n{fr}\nMarrowfen SARL\n", ("Marrowfen", "Drift 21", 2027)),
        ("# Drift 21\n\n{fr}\nMarrowfen SARL, Ost. Tarif 2027\n", ("Marrowfen", "Drift 21", None)),
        ("# Drift 21\n\n{fr}\nPrix du mois de mars, en euros taxes comprises · MY 2027\n", ("", "Drift 21", 2027)),
    ],
)  # fmt: skip
def test_the_company_and_the_year_are_told_without_their_words(vans_of, text, van):
    assert vans_of(text.format(**LIST), "leaflet.md") == {van}


def test_a_company_that_writes_itself_in_small_letters_is_told_by_its_legal_form(vans_of):
    text = (
        "marrowfen\n\n# drift\n\nWir bauen ein einziges Fahrzeug. drift ist 5,30 m lang und hat zwei Schlafplätze. "
        "Der Modelljahrgang 2026 bringt neue Griffe.\n\nIn drift fasst der Frischwassertank 60 Liter, der "
        "Abwassertank 40 Liter.\n\nGas gibt es in drift nicht. Eine Dieselluftheizung wärmt den Raum.\n\n"
        "marrowfen gmbh · werkstatt am anger 2 · ost\n"
    )
    assert vans_of(text) == {("marrowfen", "drift", 2026)}
