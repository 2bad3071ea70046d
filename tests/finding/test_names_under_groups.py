"""Vans whose names stand below the heads of groups, or are told to be vans by how many a line says that there are."""

import pytest

from tests.finding.test_names_in_heads import models

PAGE = (
    "<html lang='de'><h1>{title}</h1><p>Modelljahr 2027</p><table>{heads}"
    "<tr><td>Länge (m)</td><td>5,41</td><td>5,99</td><td>5,99</td><td>6,36</td></tr>"
    "<tr><td>Schlafplätze</td><td>2</td><td>2</td><td>3</td><td>2</td></tr>"
    "<tr><td>Frischwasser (l)</td><td>85</td><td>100</td><td>100</td><td>115</td></tr>"
    "<tr><td>Abwasser (l)</td><td>80</td><td>90</td><td>90</td><td>95</td></tr>"
    "<tr><td>Bordbatterie</td><td>AGM 95 Ah</td><td>AGM 95 Ah</td><td>Lithium 100 Ah</td><td>Lithium 200 Ah</td></tr>"
    "</table><p>Marrowfen Mobile GmbH, Am Anger 3</p></html>"
)


def test_codes_that_come_again_under_a_longer_range_are_of_that_range(vans_of):
    heads = (
        "<tr><td></td><td colspan=2>Drift</td><td colspan=2>Drift Plus</td></tr>"
        "<tr><td>Grundriss</td><td>541 Q</td><td>600 L</td><td>600 L</td><td>640 E</td></tr>"
    )
    found = models(vans_of(PAGE.format(title="Zwei Baureihen", heads=heads), name="daten.html"))
    assert found == {"Drift 541 Q", "Drift 600 L", "Drift Plus 600 L", "Drift Plus 640 E"}


def test_a_row_of_sizes_may_stand_above_the_vans(vans_of):
    heads = (
        "<tr><td></td><td colspan=2>5,41 m</td><td colspan=2>5,99 m</td></tr>"
        "<tr><td></td><td>Drift P1</td><td>Drift P3</td><td>Drift T1</td><td>Drift T5</td></tr>"
    )
    found = models(vans_of(PAGE.format(title="Baureihe Drift", heads=heads), name="daten.html"))
    assert found == {"Drift P1", "Drift P3", "Drift T1", "Drift T5"}


@pytest.mark.parametrize(
    ("said", "heads"),
    [
        ("Le Drift 600 existe en trois finitions.", ["Source", "Solstice", "Grand Froid"]),
        ("Le Drift 600 se décline en trois versions.", ["Standard", "Solstice", "Nordique"]),
    ],
)
def test_heads_that_could_be_labels_are_trims_where_a_line_counts_as_many(vans_of, said, heads):
    table = (
        "# Drift 600 : les finitions 2026\n\n{said}\n\n| | {heads} |\n|---|---|---|---|\n"
        "| Longueur | 5,98 m | 5,98 m | 5,98 m |\n| Couchages | 2 | 2 | 2 |\n"
        "| Eau propre | 90 l | 100 l | 100 l |\n| Eaux usées | 80 l | 90 l | 90 l |\n"
        "| Batterie cellule | AGM 95 Ah | AGM 95 Ah | lithium 150 Ah |\n| Chauffage | 4 kW | 4 kW | 6 kW |\n\n"
        "Marrowfen SAS, 2 chemin de la Grève\n"
    )
    found = models(vans_of(table.format(said=said, heads=" | ".join(heads))))
    assert found == {f"Drift 600 {head}" for head in heads}


def test_a_heading_above_the_price_of_a_van_names_one_though_it_could_be_a_label(vans_of):
    trims = [("Basis", "54.990", "AGM-Batterie 80 Ah"), ("Komfort", "59.490", "AGM-Batterie 95 Ah")]
    parts = [
        f"## {name}\n\nab {price} €\n\n- Gas-Luftheizung 3,5 kW\n- Abwassertank 85 l\n- {battery}\n"
        "- Dämmung 15 mm PE-Schaum\n- Solaranlage 100 W\n"
        for name, price, battery in trims
    ]
    text = (
        "# Drift 600\n\nModelljahr 2026. Der Drift misst 5,98 m und hat zwei Schlafplätze für die Reise.\n\n"
        + "\n".join(parts)
        + "\nMarrowfen AG, Torfstraße 8\n"
    )
    assert models(vans_of(text)) == {"Drift 600 Basis", "Drift 600 Komfort"}


@pytest.mark.parametrize(
    ("word", "label", "told"),
    [("Baureihe {}", "Allrad", "de"), ("The {} range", "AWD", "en"), ("Gamme {}", "4x4", "fr")],
)
def test_letters_in_rows_under_what_is_said_to_be_their_range(vans_of, word, label, told):
    heads = {
        "de": "Modell|Länge in mm|Höhe in mm|Schlafplätze|Frischwasser in l",
        "en": "Model|Length in mm|Height in mm|Berths|Fresh water in litres",
        "fr": "Modèle|Longueur en mm|Hauteur en mm|Couchages|Eau propre en l",
    }[told]
    rows = [(word.format("Drift"), ["S", "L", f"L {label}"]), (word.format("Gorse"), ["L", "XL"])]
    body = "".join(
        f'<tr><td colspan="5"><b>{group}</b></td></tr>'
        + "".join(
            f"<tr><td>{one}</td><td>{4960 + 340 * n}</td><td>2080</td><td>2</td><td>{45 + 5 * n}</td></tr>"
            for n, one in enumerate(names)
        )
        for group, names in rows
    )
    head = "".join(f"<th>{one}</th>" for one in heads.split("|"))
    page = (
        f"<html lang='{told}'><body><h1>Marrowfen</h1><table><tr>{head}</tr>{body}</table>"
        "<p>Marrowfen GmbH, Obere Gasse 12, Ost.</p></body></html>"
    )
    found = vans_of(page, name="marrowfen.html")
    assert models(found) == {"Drift S", "Drift L", f"Drift L {label}", "Gorse L", "Gorse XL"}
