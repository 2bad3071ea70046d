"""Ranges that lines name beside the model year or on the way to a page, and heads in quotation marks."""

import pytest

ROWS = {
    "en": "| | {} | {} |\n|---|---|---|\n| Overall length | 5.41 m | 5.99 m |\n| Sleeps | 2 | 2 |\n"
    "| Fresh water | 90 l | 110 l |\n| Waste water | 80 l | 95 l |\n| Heating | diesel air heater | combi, gas |\n",
    "fr": "| | {} | {} |\n|---|---|---|\n| Longueur | 5,41 m | 5,99 m |\n| Couchages | 2 | 2 |\n"
    "| Eau propre | 90 l | 110 l |\n| Eaux usées | 80 l | 95 l |\n| Chauffage | air pulsé, gazole | combiné, gaz |\n",
    "de": "| | {} | {} |\n|---|---|---|\n| Länge | 5,41 m | 5,99 m |\n| Schlafplätze | 2 | 2 |\n"
    "| Frischwasser | 90 l | 110 l |\n| Abwasser | 80 l | 95 l |\n| Heizung | Luftheizung, Diesel | Kombi, Gas |\n",
}
LIST = {
    "en": "- Chassis: Kelmar Drover\n- Overall width: 2.05 m\n"
    "- Overall length: {} m\n- Sleeps: {}\n- Fresh water tank: {} l\n- Solar panel: {} W\n- Inverter: {} W\n",
    "fr": "- Porteur : Kelmar Drover\n- Largeur hors tout : 2,05 m\n"
    "- Longueur hors tout : {} m\n- Couchages : {}\n- Eau propre : {} l\n- Panneau solaire : {} W\n"
    "- Convertisseur : {} W\n",
    "de": "- Basisfahrzeug: Kelmar Drover\n- Gesamtbreite: 2,05 m\n"
    "- Gesamtlänge: {} m\n- Schlafplätze: {}\n- Frischwasser: {} l\n- Solarmodul: {} W\n- Wechselrichter: {} W\n",
}
SHORT, LONG = ("5,41", 2, 90, 100, 600), ("5,99", 4, 110, 200, 1500)


def sheet(language, line):
    the = {"en": "The", "fr": "Le", "de": "Der"}[language]
    parts = [
        f"## {the} {name}\n\n{LIST[language].format(*values)}" for name, values in (("19 B", SHORT), ("21 R", LONG))
    ]
    return "\n\n".join(["# Marrowfen Vans", line, *parts, "Marrowfen Vans Ltd, Hythe\n"])


@pytest.mark.parametrize(
    ("language", "line", "series"),
    [
        ("fr", "Drift 2026 · fiche technique", "Drift "),
        ("en", "2026 Drift | data sheet", "Drift "),
        ("de", "Drift | Modelljahr 2026", "Drift "),
        ("en", "Hythe 2026 · Marrowfen Vans", ""),  # town and year
        ("de", "Herbst 2026 · Datenblatt", ""),
        ("en", "Alder | Gorse | Model year 2026", ""),  # two of them
    ],
)
def test_a_name_beside_the_model_year_is_the_range_of_mere_codes(vans_of, language, line, series):
    assert {van for _, van, _ in vans_of(sheet(language, line))} == {f"{series}19 B", f"{series}21 R"}


def page(title, way):
    rows = "".join(
        f"<tr><td>{label}</td><td>{value}</td></tr>"
        for label, value in (
            ("Overall length", "22 ft 2 in"), ("Sleeps", "3"), ("Fresh water tank", "30 gal"),
            ("Gray water tank", "20 gal"), ("Heating", "diesel air heater"), ("Inverter", "1,500 W"),
        )
    )  # fmt: skip
    return (
        f"<html><head><title>{title}</title></head><body><div>{way}</div><h1>22RB</h1><p>The one with the rear bed.</p>"
        f"<h2>Specifications</h2><table>{rows}</table><p>© Marrowfen Vans, Inc.</p></body></html>"
    )


@pytest.mark.parametrize(
    ("title", "way", "van"),
    [
        ("22RB | 2026 Drift | Marrowfen Vans", "Home &gt; Class B &gt; 2026 Drift &gt; 22RB", "Drift 22RB"),
        ("22RB | Drift | Marrowfen Vans", "Home &gt; Class B &gt; Drift &gt; 22RB", "Drift 22RB"),
        ("22RB | Marrowfen Vans", "Home &gt; 2026 &gt; Class B &gt; 22RB", "22RB"),
    ],
)
def test_the_only_van_of_a_page_has_its_range_from_title_and_way(vans_of, title, way, van):
    assert {one for _, one, _ in vans_of(page(title, way), name="page.html")} == {van}


def test_a_group_amid_a_table_is_no_range(vans_of):
    rows = (
        ("Heizung und Warmwasser",), ("Gesamtlänge", "5,95 m", "6,30 m"), ("Schlafplätze", "3", "2"),
        ("Frischwasser", "91 l", "124 l"), ("Abwasser", "95 l", "99 l"), ("Heizungssystem", "Luft", "Luft"), (),
        ("Elektrik",), ("Bordbatterie", "150 Ah", "210 Ah"), ("Netzanschluss 230 V", "16 A", "16 A"),
        ("Solar", "100 W", "200 W"), (),
    )  # fmt: skip
    lines = ["".join(cell.ljust(30) for cell in row).rstrip() for row in (("", "640", "660"), ("-" * 70,), (), *rows)]
    text = "Marrowfen\nDrift | Modelljahr 2026\n640, 660\n\nDATEN UND MASSE\n---------------\n\n"
    text += "\n".join(lines) + "\nHeizung und Elektrik jährlich von einer Fachwerkstatt prüfen lassen.\n"
    assert vans_of(text, name="leaflet.txt") == {("Marrowfen", "Drift 640", 2026), ("Marrowfen", "Drift 660", 2026)}


@pytest.mark.parametrize(
    ("language", "heads", "vans"),
    [
        ("fr", ("« la Marjolaine »", "« la Grande Marjolaine »"), {"Marjolaine", "Grande Marjolaine"}),
        ("de", ("„Bachstelze“", "„Rohrdommel“"), {"Bachstelze", "Rohrdommel"}),
        ("en", ("“Wagtail”", "“Great Wagtail”"), {"Wagtail", "Great Wagtail"}),
    ],
)
def test_quotation_marks_round_heads_are_no_part_of_names(vans_of, language, heads, vans):
    year = {"en": "model year", "fr": "année-modèle", "de": "Modelljahr"}[language]
    text = f"# Marrowfen Campers\n\n{year} 2026\n\n{ROWS[language].format(*heads)}\nMarrowfen Campers Ltd\n"
    assert {van for _, van, _ in vans_of(text)} == vans


@pytest.mark.parametrize(
    ("language", "heads"),
    [
        ("en", ("Drift Near (formerly Short)", "Drift Far (new)")),
        ("fr", ("Drift Near (auparavant Short)", "Drift Far (nouveau)")),
        ("de", ("Drift Near (bisher Short)", "Drift Far (neu)")),
    ],
)
def test_what_a_van_was_called_before_is_no_part_of_its_name(vans_of, language, heads):
    text = f"Marrowfen Campers Ltd · 2026\n\n# Drift\n\n{ROWS[language].format(*heads)}\n"
    assert {van for _, van, _ in vans_of(text)} == {"Drift Near", "Drift Far"}


@pytest.mark.parametrize(
    ("address", "vans"),
    [
        ("www.holtvans.example · ask@holtvans.example", {("", "Wading Drift 20", 2026), ("", "Wading Drift 21", 2026)}),
        ("www.wading.example", {("Wading", "Drift 20", 2026), ("Wading", "Drift 21", 2026)}),
    ],
)
def test_the_first_word_of_a_range_is_no_company_where_the_address_is_another_s(vans_of, address, vans):
    parts = [
        f"## Wading Drift {code}\n\n| | |\n|---|---|\n| Chassis | Kelmar Drover |\n| Drive | rear |\n"
        f"| Overall length | {length} m |\n| Sleeps | {sleeps} |\n| Heating | diesel air heater |\n"
        for code, length, sleeps in ((20, "5.93", 2), (21, "6.36", 4))
    ]
    text = "\n".join(
        ["# Wading Drift, and what is new\n\nWhat is listed here is of model year 2026.\n", *parts, address]
    )
    assert vans_of(f"{text}\n") == vans
