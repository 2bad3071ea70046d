"""Words and signs beside the names of vans that are no part of them: articles, marks of rights, words for ranges."""

import pytest

from tests.finding.test_names_in_heads import TABLE, models
from tests.reading.drawn import Page


def test_marks_of_rights_behind_names_are_no_part_of_them(vans_of):
    above = (
        "# MARROWFEN™\n\n## Two trips and a half, 2026\n\nMarrowfen builds the Alder™, the Gorse Plus® and the Teasel™."
    )
    found = vans_of(TABLE.format(above=above, one="Alder™", two="Gorse Plus®", three="Teasel (TM)"))
    assert models(found) == {"Alder", "Gorse Plus", "Teasel"}


FRENCH = """{above}

| | {one} | {two} | {three} |
|---|---|---|---|
| Longueur hors tout | 5,41 m | 5,99 m | 6,36 m |
| PTAC | 3 300 kg | 3 500 kg | 3 500 kg |
| Couchages | 2 | 2 | 4 |
| Réservoir d’eau propre | 70 l | 90 l | 110 l |
| Panneau solaire | 100 W | 120 W | 200 W |
"""


@pytest.mark.parametrize("said", ["L’Aulne est le petit, la Genette ne se presse pas, l’Orvet emmène la famille.", ""])
def test_articles_in_small_letters_before_all_heads_are_no_part_of_names(vans_of, said):
    above = f"# MARROWFEN\n\n## Gamme 2026 : Aulne, Genette, Orvet\n\n{said}\n\nMarrowfen SARL, 7 rue du Quai."
    found = vans_of(FRENCH.format(above=above, one="l’Aulne", two="la Genette", three="l’Orvet"))
    assert models(found) == {"Aulne", "Genette", "Orvet"}


def test_articles_with_a_capital_go_where_the_names_stand_without_them(vans_of):
    bare = "# MARROWFEN\n\n## Gamme 2026 : Aulne, Genette, Orvet\n\nMarrowfen SARL, 7 rue du Quai."
    found = vans_of(FRENCH.format(above=bare, one="L’Aulne", two="La Genette", three="L’Orvet"))
    assert models(found) == {"Aulne", "Genette", "Orvet"}
    whole = bare.replace("Aulne, Genette, Orvet", "L’Aulne, La Genette, L’Orvet")
    found = vans_of(FRENCH.format(above=whole, one="L’Aulne", two="La Genette", three="L’Orvet"))
    assert models(found) == {"L’Aulne", "La Genette", "L’Orvet"}


def sheet(name, *rows):
    return f"## {name}\n\n" + "".join(f"{row}\n\n" for row in rows)


CHAPTERS = {
    "en": ("Overall length: 5.{0}0 m", "Overall height: 2.{0}0 m", "MTPLM: 3{0}00 kg", "Fresh water tank: {0}0 litres"),
    "fr": ("Longueur : 5,{0}0 m", "Hauteur : 2,{0}0 m", "PTAC : 3{0}00 kg", "Réservoir d’eau propre : {0}0 l"),
    "de": ("Länge: 5,{0}0 m", "Höhe: 2,{0}0 m", "Gesamtgewicht: 3{0}00 kg", "Frischwassertank: {0}0 l"),
}


@pytest.mark.parametrize(
    ("language", "title"),
    [
        ("en", "The Alder family, model year 2026"),
        ("en", "Alder family 2026"),
        ("fr", "La famille Alder 2026"),
        ("de", "Die Alder-Familie, Modelljahr 2026"),
        ("de", "Familie Alder, Modelljahr 2026"),
    ],
)
def test_a_word_for_ranges_beside_the_name_above_its_vans_is_no_part_of_theirs(vans_of, language, title):
    vans = ("Alder Minor", "Alder Major", "Alder Major Plus")
    sheets = [
        sheet(name, *(row.format(number) for row in CHAPTERS[language])) for number, name in enumerate(vans, start=3)
    ]
    assert models(vans_of(f"# Marrowfen\n\n# {title}\n\n{''.join(sheets)}")) == set(vans)


def test_a_van_of_its_own_keeps_the_word_with_a_capital(vans_of):
    lines = "Overall length: 5.90 m\n\nMTPLM: 3500 kg\n\nBerths: 2\n\nFresh water: 90 litres\n\nSolar: 200 W\n"
    found = vans_of(f"# Marrowfen\n\n# Drift Family, model year 2026\n\n## Facts\n\n{lines}")
    assert models(found) == {"Drift Family"}


def test_the_corner_of_a_table_read_in_one_with_the_first_trim_is_the_range(read_file, tmp_path):
    page = Page()
    page.text(40, 40, "Marrowfen trim guide, model year 2026", size=10, bold=True)
    page.text(40, 60, "Pick a letter. The body is the same in all three; what goes in it is not.", size=10)
    page.row(100, (40, "Drift 58"), (100, "G"), (260, "P"), (420, "T"), size=13, bold=True)
    rows = [("Length", "5.99 m", "5.99 m", "5.99 m"), ("Height", "2.65 m", "2.65 m", "2.74 m"),
            ("MTPLM", "3,500 kg", "3,500 kg", "3,850 kg"), ("Berths", "2", "2", "4"),
            ("Fresh water", "90 litres", "95 litres", "110 litres")]  # fmt: skip
    for place, row in enumerate(rows):
        page.row(125 + 16 * place, *zip((40, 100, 260, 420), row, strict=True))
    page.text(40, 240, "Marrowfen Motorhomes Ltd, Unit 4, Old Kiln, Hythe.")
    path = tmp_path / "trims.pdf"
    path.write_bytes(page.data())
    assert {van.model for van in read_file(path).found.vans} == {"Drift 58 G", "Drift 58 P", "Drift 58 T"}


FIGURES = {
    "en": ("Length", "MTPLM", "Sleeps", "Fresh water", "Solar"),
    "fr": ("Longueur", "PTAC", "Couchages", "Réservoir d’eau propre", "Panneau solaire"),
    "de": ("Länge", "Gesamtgewicht", "Schlafplätze", "Frischwassertank", "Solaranlage"),
}


@pytest.mark.parametrize(
    ("language", "said"),
    [
        ("en", "Marrowfen Van Works builds the Drift in two lengths, and calls them by their feet: the 17 and the 21."),
        ("fr", "Marrowfen Sud construit le Drift en deux longueurs : le 17 et le 21."),
        ("de", "Marrowfen Nord baut den Drift in zwei Längen: den 17 und den 21."),
    ],
)
def test_who_is_said_to_build_the_range_is_the_maker(vans_in, language, said):
    labels = FIGURES[language]
    rows = [("540 cm", "3500 kg", "2", "70 l", "100 W"), ("640 cm", "4250 kg", "4", "110 l", "200 W")]
    lines = ["| " + " | ".join(("", *labels)) + " |", "|---" * 6 + "|"]
    lines += ["| " + " | ".join((code, *row)) + " |" for code, row in zip(("17", "21"), rows, strict=True)]
    company = " ".join(said.split()[: 3 if language == "en" else 2])
    assert vans_in("# Drift 2026\n\n" + said + "\n\n" + "\n".join(lines)) == {
        (company, "Drift 17"),
        (company, "Drift 21"),
    }


def test_who_is_said_to_build_something_else_is_not_the_maker(vans_in):
    lines = "Overall length: 5.90 m\n\nMTPLM: 3500 kg\n\nBerths: 2\n\nFresh water: 90 litres\n\nSolar: 200 W\n"
    said = "Bruska builds the Cargo 350 for parcels; the Drift 21 makes more of it."
    assert vans_in(f"# Drift 21, model year 2026\n\n{said}\n\n## Facts\n\n{lines}") == {("", "Drift 21")}


def test_a_word_for_the_trade_before_the_van_s_name_ends_the_company_s(vans_in):
    lines = "Overall length: 5.90 m\n\nMTPLM: 3500 kg\n\nBerths: 2\n\nFresh water: 90 litres\n\nSolar: 200 W\n"
    found = vans_in(f"Marrowfen Coachworks Drift 21 RK Model year 2026\n\n## Specifications\n\n{lines}")
    assert found == {("Marrowfen Coachworks", "Drift 21 RK")}


def blocks(*vans, labels=("Length", "Height", "Sleeps", "Fresh water", "Waste water", "Leisure battery")):
    """Draw vans side by side, each with its name in large type above labels and values."""
    page = Page()
    page.text(40, 30, "Drift", size=20, bold=True)
    page.text(40, 60, "the camper van range of Marrowfen", size=10)
    page.text(40, 80, "Drift vans are designed and built by Marrowfen at Hythe. Marrowfen Leisure Group plc", size=10)
    page.text(40, 94, "also owns Teasel Holiday Parks. Model year 2026.", size=10)
    for place, (name, *values) in enumerate(vans):
        left = 40 + 180 * place
        page.text(left, 130, name, size=20, bold=True)
        for row, (label, value) in enumerate(zip(labels, values, strict=True)):
            page.row(165 + 16 * row, (left, label), (left + 90, value), size=8)
    return page.data()


LONG = ("5.41 m", "2.62 m", "2", "85 litres", "75 litres", "90 Ah AGM")
LONGER = ("5.99 m", "2.62 m", "2", "100 litres", "90 litres", "110 Ah AGM")


@pytest.mark.parametrize("names", [("5.4", "6.0", "6.0 Twin"), ("541", "600", "600 Twin"), ("541", "600")])
def test_figures_in_large_type_above_labels_and_values_are_vans(read_file, tmp_path, names):
    path = tmp_path / "card.pdf"
    path.write_bytes(blocks(*((name, *(LONGER if place else LONG)) for place, name in enumerate(names))))
    found = read_file(path).found
    assert {(van.maker, van.model) for van in found.vans} == {("Marrowfen", f"Drift {name}") for name in names}
    lengths = {fact.model: fact.num for fact in found.facts if fact.field == "length_mm"}
    assert lengths == {f"Drift {name}": 5990 if place else 5410 for place, name in enumerate(names)}


def test_a_figure_in_large_type_above_other_things_is_no_van(read_file, tmp_path):
    labels = ("Overall length", "Overall height", "Sleeps", "Fresh water", "Waste water", "Leisure battery")
    facts = ("Founded in", "People", "Vans a year", "Shops", "Sold in", "Prizes")
    page = Page()
    page.text(40, 30, "Drift 21, model year 2026", size=20, bold=True)
    blocks = ((100, "540", labels, LONG), (300, "200", facts, ("1987", "42", "90", "3", "5", "2")))
    for top, name, names, values in blocks:
        page.text(40, top, name, size=20, bold=True)
        for row, pair in enumerate(zip(names, values, strict=True)):
            page.row(top + 35 + 16 * row, *zip((40, 150), pair, strict=True), size=8)
    path = tmp_path / "card.pdf"
    path.write_bytes(page.data())
    assert "Drift 540" not in {van.model for van in read_file(path).found.vans}


def test_the_company_is_called_as_who_is_said_to_build_the_vans(vans_in):
    lines = "Overall length: 5.90 m\n\nMTPLM: 3500 kg\n\nBerths: 2\n\nFresh water: 90 litres\n\nSolar: 200 W\n"
    said = "The vans are designed and built by Marrowfen at Hythe. Marrowfen Leisure Group plc also owns Teasel Parks."
    assert vans_in(f"# Drift 21, model year 2026\n\n{said}\n\n## Facts\n\n{lines}") == {("Marrowfen", "Drift 21")}
    other = said.replace("built by Marrowfen", "built by Teasel Parks")
    assert vans_in(f"# Drift 21, model year 2026\n\n{other}\n\n## Facts\n\n{lines}") != {("Marrowfen", "Drift 21")}


ANSWERS = {
    "en": """Thank you for asking about the vans we build here at {0}.

The Drift 5 is the small one. It is 5.41 m long and 2.54 m high, and its maximum technically permissible laden mass is
3,300 kg. The Drift 5 sleeps 2. The fresh water tank holds 70 litres, the waste water tank 60 litres. It has a 95 Ah
battery and a 2 kW diesel heater.""",
    "fr": """Objet : Drift 5

Merci de votre question sur les fourgons que nous construisons chez {0}.

Le Drift 5 est le petit. Il mesure 5,41 m de long et 2,54 m de haut, son PTAC est de 3 300 kg. Le Drift 5 a 2 couchages.
Le réservoir d’eau propre contient 70 litres, le réservoir d’eaux usées 60 litres. La batterie est de 95 Ah et le
chauffage au gazole a 2 kW.""",
    "de": """Betreff: Drift 5

Danke für Ihre Frage. Wir bauen unsere Reisemobile bei {0}.

Der Drift 5 ist der kleine. Er ist 5,41 m lang und 2,54 m hoch, das zulässige Gesamtgewicht beträgt 3.300 kg. Der
Drift 5 hat 2 Schlafplätze. Der Frischwassertank fasst 70 Liter, der Abwassertank 60 Liter. Die Batterie hat 95 Ah, die
Dieselheizung 2 kW.""",
}


@pytest.mark.parametrize("language", ["en", "fr", "de"])
def test_the_address_at_which_we_say_to_build_is_the_company_s(vans_in, language):
    text = f"From: yard@marrowfen.example\n\n{ANSWERS[language]}\n"
    assert vans_in(text.format("marrowfen.example"), "answer.txt") == {("Marrowfen", "Drift 5")}
    for left_open in ("marrowfen-vans.example", "marrowfencampers.example"):
        assert vans_in(text.format(left_open), "answer.txt") == {("", "Drift 5")}


SMALL = {
    "en": (
        "model year 2026",
        "The Drift 5 sleeps 2.",
        "Height: 2.65 m",
        "Length: 5.41 m",
        "MTPLM: 3500 kg",
    ),
    "fr": ("année-modèle 2026", "Le Drift 5 offre 2 couchages.", "Longueur : 5,41 m", "PTAC : 3 500 kg"),
    "de": ("Modelljahr 2026", "Der Drift 5 hat 2 Schlafplätze.", "Länge: 5,41 m", "Gesamtgewicht: 3.500 kg"),
}


@pytest.mark.parametrize("language", ["en", "fr", "de"])
def test_the_figure_of_the_only_van_s_name_is_no_value(read_file, tmp_path, language):
    year, *lines = SMALL[language]
    path = tmp_path / "small.txt"
    path.write_text(f"Marrowfen Drift 5, {year}\n\n" + "\n\n".join(lines), encoding="utf-8")
    found = read_file(path).found
    assert [van.model for van in found.vans] == ["Drift 5"]
    assert {fact.num for fact in found.facts if fact.field == "sleeps"} == {2.0}


def test_a_van_beside_its_longer_sisters_is_not_their_range(vans_of):
    above = "# Marrowfen\n\nThe Drift, model year 2026"
    found = vans_of(TABLE.format(above=above, one="Drift", two="Drift Plus", three="Drift Max"))
    assert models(found) == {"Drift", "Drift Plus", "Drift Max"}


def test_articles_before_figures_are_no_part_of_names(vans_of):
    above = (
        "# Marrowfen Camper Vans\n\n## The Drift® range, 2026\n\nMarrowfen Ltd, Hythe. The Drift® has three lengths."
    )
    found = vans_of(TABLE.format(above=above, one="The 54", two="The 60", three="The 64"))
    assert models(found) == {"Drift 54", "Drift 60", "Drift 64"}


@pytest.mark.parametrize(
    ("language", "name"), [("en", "Drift 600 A"), ("fr", "Drift 600 A"), ("fr", "Drift 600 D"), ("fr", "Drift 600 L")]
)
def test_a_letter_behind_a_figure_is_no_article(vans_of, language, name):
    year = {"en": "model year 2026", "fr": "année-modèle 2026"}[language]
    sheet = "\n\n".join(row.format(5) for row in CHAPTERS[language])
    assert models(vans_of(f"Marrowfen Ltd\n\n{name}, {year}\n\n{sheet}", "leaflet.txt")) == {name}
