"""A maker who writes all in small letters, and vans whose names open paragraphs and end with a full stop."""

import pytest

from tests.finding.test_names_in_heads import models
from tests.reading.drawn import Page

SMALL = [
    ("houle une", "pour deux et un chien", ("base", "Calder Porter 30, diesel"), ("longueur", "4,99 m"),
     ("hauteur", "1,99 m"), ("couchages", "2"), ("eau propre", "40 litres"), ("eaux grises", "30 litres")),
    ("houle deux", "la même, un mètre plus loin", ("base", "Calder Porter 35, diesel"), ("longueur", "5,98 m"),
     ("hauteur", "2,65 m"), ("couchages", "4"), ("eau propre", "100 litres"), ("eaux grises", "80 litres")),
    ("houle trois", "pour les grandes", ("base", "Calder Porter 40, diesel"), ("longueur", "6,36 m"),
     ("hauteur", "2,70 m"), ("couchages", "4"), ("eau propre", "110 litres"), ("eaux grises", "90 litres")),
]  # fmt: skip


def test_names_in_small_letters_head_the_parts_of_a_leaflet(examiner):
    page = Page()
    page.text(40, 40, "houle", size=36, bold=True)
    page.text(40, 80, "un nom, trois fourgons. millésime 2027.", size=11)
    top = 110
    for name, said, *rows in SMALL:
        page.text(40, top, name, size=14, bold=True)
        page.text(40, top + 18, said)
        for number, (label, value) in enumerate(rows):
            page.row(top + 34 + 14 * number, (40, label), (180, value))
        top += 34 + 14 * len(rows) + 16
    page.text(40, top + 20, "atelier marrovent sarl · 3 quai des tanneurs · saint-oste")
    found = examiner.examine("houle.pdf", page.data(), "pdf").found
    assert {van.model for van in found.vans} == {"houle une", "houle deux", "houle trois"}
    lengths = {fact.model: fact.value for fact in found.facts if fact.field == "length_mm" and not fact.rejected}
    assert lengths == {"houle une": 4990, "houle deux": 5980, "houle trois": 6360}


LED = [
    "Drift City. {} misst 4,85 m in der Länge und 1,98 m in der Höhe. Zwei Schlafplätze, 30 Liter Frischwasser, 25 "
    "Liter Abwasser. Die Bordbatterie hat 75 Ah (AGM).",
    "Drift Tour. Mit 5,45 m Länge und 2,61 m Höhe {} für den See. Drei Schlafplätze, 80 Liter Frischwasser, 70 Liter "
    "Abwasser. Bordbatterie 95 Ah (AGM).",
]


@pytest.mark.parametrize("said", ["der Kurze", "der Richtige"])
def test_a_name_that_goes_on_from_the_title_and_a_full_stop_open_a_paragraph(vans_of, said):
    paragraphs = "\n\n".join(LED).format(said[0].upper() + said[1:], said)
    title = "# Marrowfen Drift 2027: Produktinformation"
    text = f"{title}\n\nZum Modelljahr 2027 gibt es den Drift zweimal.\n\n{paragraphs}\n"
    assert models(vans_of(text)) == {"Drift City", "Drift Tour"}


def test_paragraphs_on_parts_of_a_van_name_none(vans_of):
    text = (
        "# Marrowfen Drift 2027\n\nZum Modelljahr 2027 gibt es den Drift. Er ist 5,93 m lang und wiegt 3.100 kg.\n\n"
        "Drift Wasser. Frischwasser 80 Liter, Abwasser 70 Liter.\n\n"
        "Schlafen. Zwei Schlafplätze, 5,45 m Länge, Bordbatterie 95 Ah (AGM).\n"
    )
    assert models(vans_of(text)) <= {"Drift"}
