"""Tables of vans side by side whose first rows give maker, range and model of each, with labels of their own."""

import pytest

TABLES = {
    "en": ("Maker", "Range", "Layout", "Model year", "Overall length", "Sleeps", "Fresh water"),
    "fr": ("Constructeur", "Gamme", "Implantation", "Année-modèle", "Longueur hors tout", "Couchages", "Eau propre"),
    "de": ("Hersteller", "Baureihe", "Grundriss", "Modelljahr", "Gesamtlänge", "Schlafplätze", "Frischwasser"),
}
LAST = {
    "en": "Weir Lane Vans is a dealer for several makes.",
    "fr": "Nous vendons et entretenons les fourgons de plusieurs constructeurs.",
    "de": "Wir sind Händler für mehrere Marken und der Zwischenverkauf ist vorbehalten.",
}


@pytest.mark.parametrize("language", list(TABLES))
@pytest.mark.parametrize(
    ("makers", "ranges"),
    [(("Bruneck", "Bruneck"), ("Larch", "Larch")), (("Bruneck", "Thornleigh"), ("Larch", "Alder"))],
)
def test_range_and_layout_in_rows_of_their_own_name_the_vans(vans_of, language, makers, ranges):
    codes = ("600 DF", "636 LJ")
    values = (makers, ranges, codes, ("2026", "2026"), ("5,99 m", "6,36 m"), ("2", "4"), ("90 l", "115 l"))
    rows = [f"| {label} | {one} | {two} |" for label, (one, two) in zip(TABLES[language], values, strict=True)]
    table = "\n".join((rows[0], "|---|---|---|", *rows[1:]))
    assert vans_of(f"# Weir Lane Vans\n\n{table}\n\n{LAST[language]}\n") == {
        (maker, f"{series} {code}", 2026) for maker, series, code in zip(makers, ranges, codes, strict=True)
    }


@pytest.mark.parametrize(
    ("models", "versions"), [(("Larch", "Alder"), ("600 DF", "636 LJ")), (("Larch 600", "Larch 600"), ("Solo", "Snow"))]
)
def test_so_do_model_and_version_where_the_model_alone_tells_no_vans_apart(vans_of, models, versions):
    labels = ("Make", "Model", "Version", "Model year", "Overall length", "Sleeps", "Fresh water")
    sizes = (("5.99 m", "6.36 m"), ("2", "4"), ("90 l", "110 l"))
    values = (("Bruneck", "Bruneck"), models, versions, ("2026", "2026"), *sizes)
    rows = [f"| {label} | {one} | {two} |" for label, (one, two) in zip(labels, values, strict=True)]
    table = "\n".join((rows[0], "|---|---|---|", *rows[1:]))
    found = vans_of(f"# Weir Lane Vans\n\n{table}\n\n{LAST['en']}\n")
    assert found == {("Bruneck", f"{a} {b}", 2026) for a, b in zip(models, versions, strict=True)}


def test_the_name_of_a_section_over_names_of_vans_is_no_row_of_makers(vans_of):
    head = "| Conversion | Larch 600 | Larch 636 |\n|---|---|---|\n| Layout | twin beds | island bed |"
    rows = "| Overall length | 5.99 m | 6.36 m |\n| Sleeps | 2 | 4 |\n| Fresh water | 90 l | 115 l |"
    found = vans_of(f"# The Larch, model year 2026\n\n{head}\n{rows}\n")
    assert {model for _, model, _ in found} == {"Larch 600", "Larch 636"}
