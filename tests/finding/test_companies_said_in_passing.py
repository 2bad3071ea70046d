"""Companies behind a label at the foot, with "of the" in their names, or said in passing to build the vans."""

import pytest

ROWS = {
    "en": "| | S | SE |\n|---|---|---|\n| Overall length | 5.41 m | 5.99 m |\n| Sleeps | 2 | 2 |\n"
    "| Fresh water | 90 l | 110 l |\n| Waste water | 80 l | 95 l |\n| Heating | diesel air heater | combi, gas |\n",
    "fr": "| | S | SE |\n|---|---|---|\n| Longueur | 5,41 m | 5,99 m |\n| Couchages | 2 | 2 |\n"
    "| Eau propre | 90 l | 110 l |\n| Eaux usées | 80 l | 95 l |\n| Chauffage | air pulsé, gazole | combiné, gaz |\n",
    "de": "| | S | SE |\n|---|---|---|\n| Länge | 5,41 m | 5,99 m |\n| Schlafplätze | 2 | 2 |\n"
    "| Frischwasser | 90 l | 110 l |\n| Abwasser | 80 l | 95 l |\n| Heizung | Luftheizung, Diesel | Kombi, Gas |\n",
}
TITLE = {"en": "# The 2026 Drift", "fr": "# Drift\n\nMillésime 2026", "de": "# Drift\n\nModelljahr 2026"}


def leaflet(language, said, foot=""):
    return f"{TITLE[language]}\n\n{said}\n\n{ROWS[language]}\n{foot}\n"


@pytest.mark.parametrize(
    ("language", "foot", "maker"),
    [
        ("en", "Manufacturer: Marrowfen. Base vehicle of both: Kelmar Drover 35.", "Marrowfen"),
        ("fr", "Constructeur : Marrowfen. Porteur commun : Kelmar Drover 35 L2H2.", "Marrowfen"),
        ("de", "Alle Preise mit Steuer. Hersteller: Marrowfen & Holt. Irrtum vorbehalten.", "Marrowfen & Holt"),
        ("en", "Base vehicle of both: Kelmar Drover 35. Manufacturer: Kelmar. Errors excepted.", ""),
        ("de", "Ausbau: Pappel. Alle Kanten sind gerundet, alle Griffe aus Leder.", ""),
    ],
)
def test_a_label_for_the_company_in_a_line_of_several_statements(vans_of, language, foot, maker):
    vans = vans_of(leaflet(language, "", foot))
    assert {van[1:] for van in vans} == {("Drift S", 2026), ("Drift SE", 2026)}
    assert {van[0] for van in vans} == {maker}


@pytest.mark.parametrize(
    ("language", "foot", "maker"),
    [
        ("en", "The Drift is a range of Makers of the Fen Ltd, 3 Quay Road, Hythe.", "Makers of the Fen"),
        ("fr", "Drift est une gamme de Carrossiers du Marais SAS, 3 quai des Ajoncs, Ost.", "Carrossiers du Marais"),
        ("fr", "Drift est une gamme de Compagnie de l’Orme SARL, 3 quai des Ajoncs, Ost.", "Compagnie de l’Orme"),
        ("de", "Drift ist eine Marke der Werkstatt am Moor GmbH, Kaiweg 3, Ost.", "Werkstatt am Moor"),
        ("fr", "Les Drift de Marrowfen SAS, 3 quai des Ajoncs, Ost.", "Marrowfen"),
    ],
)
def test_small_words_amid_the_name_of_a_company_with_a_legal_form(vans_of, language, foot, maker):
    assert {van[0] for van in vans_of(leaflet(language, "", foot))} == {maker}


@pytest.mark.parametrize(
    ("language", "said"),
    [
        ("en", "Every Drift is built by Marrowfen & Holt in a former mill. There are two trims, S and SE."),
        ("fr", "Chaque Drift est construit par Marrowfen & Holt dans un ancien moulin. Deux finitions, S et SE."),
        ("de", "Jeder Drift wird von Marrowfen & Holt in einer alten Mühle gebaut. Zwei Linien, S und SE."),
    ],
)
def test_the_company_by_which_a_sentence_says_that_the_range_is_built(vans_of, language, said):
    assert {van[0] for van in vans_of(leaflet(language, said))} == {"Marrowfen & Holt"}
