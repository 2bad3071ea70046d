"""Offers of a dealer, each a sheet that opens with a van's name and tells its maker by a label."""

import pytest

LABELS = {
    "en": ("Maker", "Overall length", "Sleeps", "Fresh water", "Solar"),
    "fr": ("Constructeur", "Longueur hors tout", "Couchages", "Eau propre", "Solaire"),
    "de": ("Hersteller", "Gesamtlänge", "Schlafplätze", "Frischwasser", "Solarmodule"),
}
SAID = {
    "en": "Demonstrator, model year {} £{}",
    "fr": "Véhicule de démonstration, millésime {} {} €",
    "de": "Vorführwagen, Modelljahr {} {} €",
}
ABOVE = {
    "en": "Your dealer in Hythe. We sell vans of several makers.",
    "fr": "Votre concession à Ost. Nous vendons des fourgons de plusieurs constructeurs.",
    "de": "Ihr Händler an der Weide. Wir verkaufen Fahrzeuge mehrerer Hersteller.",
}
VANS = (("Larch 60", "2025", "61.900", "Bruneck", "5,99 m", "2", "100 l", "110 W"),
        ("Alder 54 F", "2024", "47.500", "Thornleigh", "5,39 m", "4", "60 l", "90 W"))  # fmt: skip
EXPECTED = {("Bruneck", "Larch 60", 2025), ("Thornleigh", "Alder 54 F", 2024)}


@pytest.mark.parametrize("language", list(LABELS))
def test_the_first_row_of_each_sheet_in_one_table_names_a_van_of_its_own_maker(vans_of, language):
    rows = []
    for name, year, price, *values in VANS:
        rows.append((name, SAID[language].format(year, price)))
        rows += zip(LABELS[language], values, strict=True)
    table = "\n".join(f"| {label} | {value} |" for label, value in rows)
    assert vans_of(f"# Weir Lane Center\n\n{ABOVE[language]}\n\n## Offers\n\n{table}\n") == EXPECTED


@pytest.mark.parametrize("language", list(LABELS))
@pytest.mark.parametrize("between", [", ", " – ", ": "])
def test_so_do_lines_above_lists_of_labels(vans_of, language, between):
    parts = []
    for name, year, price, *values in VANS:
        lines = "\n\n".join(f"{label}: {value}" for label, value in zip(LABELS[language], values, strict=True))
        parts.append(f"## {name}{between}{SAID[language].format(year, price)}\n\n{lines}\n\n")
    assert vans_of(f"# Weir Lane Center\n\n{ABOVE[language]}\n\n{''.join(parts)}") == EXPECTED


def test_a_sheet_whose_maker_is_not_told_makes_no_listing_of_the_others(vans_of):
    parts = []
    for name, year, price, *values in VANS:
        pairs = [*zip(LABELS["en"], values, strict=True)][name == "Alder 54 F" :]
        parts.append(f"## {name}, {SAID['en'].format(year, price)}\n\n" + "\n\n".join(f"{a}: {b}" for a, b in pairs))
    found = vans_of(f"# Weir Lane Center\n\n{ABOVE['en']}\n\n" + "\n\n".join(parts))
    assert ("Bruneck", "Alder 54 F", 2024) not in found
