"""Vans whose names lead the items of a list, or stand beside labels in two parts, the range and its model."""

import pytest

from tests.finding.test_names_in_heads import models

ALL = "Alle drei sind 5,93 m lang, haben 90 l Frischwasser, 70 l Abwasser und zwei Schlafplätze.\n\n"
FOOT = "\nGedämmt wird bei uns immer mit 20 mm Kork. Modelljahr 2027.\n\nMarrowfen Ausbauten OHG, Rossmarkt 12, Ost\n"
ITEMS = [
    "Gesamthöhe 2,28 m, Heckantrieb, Luftheizung (Diesel, 2 kW), Batterie 100 Ah Lithium.",
    "Gesamthöhe 2,71 m, Heckantrieb, Luftheizung (Diesel, 4 kW), Batterie 100 Ah Lithium.",
    "Gesamthöhe 2,83 m, Allradantrieb, Luftheizung (Diesel, 4 kW), Batterie 200 Ah Lithium.",
]


@pytest.mark.parametrize(
    "names",
    [["Drift 60 FD", "Drift 60 HD", "Drift 60 HD Allrad"], ["Drift 60 Solo", "Drift 60 Duett", "Drift 60 Trio"]],
)
@pytest.mark.parametrize("joint", [":", " –"])
def test_each_item_of_a_list_begins_with_its_van(vans_of, names, joint):
    items = "\n".join(f"- {name}{joint} {told}" for name, told in zip(names, ITEMS, strict=True))
    assert models(vans_of(f"# Drift 60: drei Wege nach oben\n\n{ALL}{items}\n{FOOT}")) == set(names)


def test_items_on_parts_of_one_van_name_none(vans_of):
    items = (
        "- Küche: Kocher mit zwei Flammen, Kühlschrank 90 l, Frischwasser 90 l\n"
        "- Paket Winter: Abwassertank beheizt, Batterie 200 Ah, Luftheizung (Diesel, 4 kW)\n"
    )
    assert models(vans_of(f"# Drift 60\n\n{ALL.replace('Alle drei sind', 'Er ist')}{items}{FOOT}")) <= {"Drift 60"}


LISTS = {
    "en": "- Length: 5.99 m\n- Berths: 2\n- Fresh water: 110 litres\n- Waste water: 95 litres\n- Base: Calder L3\n",
    "de": "- Länge: 5,99 m\n- Schlafplätze: 2\n- Frischwasser: 110 l\n- Abwasser: 95 l\n- Basisfahrzeug: Calder L3\n",
    "fr": "- Longueur : 5,99 m\n- Couchages : 2\n- Eau propre : 110 l\n- Eaux usées : 95 l\n- Porteur : Calder L3\n",
}


@pytest.mark.parametrize(
    ("language", "line", "model"),
    [
        ("fr", "Gamme : Drift   Modèle : 5.99 C   Millésime : 2027   Réf. : DR599-27/1", "Drift 5.99 C"),
        ("fr", "Gamme : Drift\n\nModèle : 5.99 C", "Drift 5.99 C"),
        ("de", "Baureihe: Drift | Modell: 599 C | Modelljahr: 2027", "Drift 599 C"),
        ("en", "Range: Drift · Model: 599 C · Model year: 2027", "Drift 599 C"),
        ("fr", "Gamme : Drift\n\nImplantation : couchage transversal", "Drift"),
    ],
)
def test_one_label_gives_the_range_and_another_the_van(vans_of, language, line, model):
    titles = {"en": "Data sheet", "de": "Datenblatt", "fr": "Fiche technique"}
    text = f"# {titles[language]}\n\n{line}\n\n{LISTS[language]}\nMarrowfen Ltd, 4 Quay Road, Ost\n"
    assert models(vans_of(text)) == {model}
