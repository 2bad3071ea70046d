"""Vans of a stock list, each in a line with its maker behind the name, and names with figures that look like years."""

import pytest

LABELS = {
    "en": ("Base vehicle:", "Length:", "Sleeps:", "Fresh water:"),
    "fr": ("Porteur :", "Longueur :", "Couchages :", "Eau propre :"),
    "de": ("Basisfahrzeug:", "Länge:", "Schlafplätze:", "Frischwasser:"),
}
ROWS = {
    language: "    {} Kelmar Drover {{}}\n    {} {{}} m\n    {} {{}}\n    {} {{}} l\n    Solar: 100 W\n".format(*labels)
    for language, labels in LABELS.items()
}


@pytest.mark.parametrize(
    ("language", "lines", "last"),
    [
        (
            "en",
            ("#0311  Larch 20 TB, by Bruneck, model year 2023", "#0318  Larch 22, by Bruneck, model year 2024",
             "#0297  Alder 60 GT, by Thornleigh, model year 2022"),
            "Weir Lane Yard is an independent dealer. The number counts, not the name.",
        ),
        (
            "fr",
            ("Larch 20 TB, par Bruneck, millésime 2023", "Larch 22, par Bruneck, millésime 2024",
             "Alder 60 GT, par Thornleigh, millésime 2022"),
            "Nous vendons et entretenons les fourgons de plusieurs constructeurs.",
        ),
        (
            "de",
            ("Larch 20 TB (von Bruneck), Modelljahr 2023", "Larch 22 (von Bruneck), Modelljahr 2024",
             "Alder 60 GT (von Thornleigh), Modelljahr 2022"),
            "Wir sind Händler für mehrere Marken und der Zwischenverkauf ist vorbehalten.",
        ),
    ],
)  # fmt: skip
def test_the_maker_behind_each_name_of_a_stock_list_is_that_vans(vans_of, read_file, tmp_path, language, lines, last):
    sizes = (("250", "5.9", 2, 80), ("350", "6.4", 4, 110), ("350", "6.0", 2, 95))
    parts = [f"{line}\n{ROWS[language].format(*size)}" for line, size in zip(lines, sizes, strict=True)]
    text = "\n".join((*parts, last))
    assert vans_of(text, "stock.txt") == {
        ("Bruneck", "Larch 20 TB", 2023),
        ("Bruneck", "Larch 22", 2024),
        ("Thornleigh", "Alder 60 GT", 2022),
    }
    found = read_file(tmp_path / "stock.txt").found
    assert {(f.model, f.value) for f in found.facts if f.field == "chassis" and f.how != "prose"} == {
        ("Larch 20 TB", "Kelmar Drover 250"),
        ("Larch 22", "Kelmar Drover 350"),
        ("Alder 60 GT", "Kelmar Drover 350"),
    }


@pytest.mark.parametrize(
    ("one", "two"),
    [
        ("Larch 20 TB by Bruneck (2023)", "Alder 22 by Thornleigh (2024)"),
        ("Larch 20 TB — built by Bruneck — model year 2023", "Alder 22 — built by Thornleigh — model year 2024"),
    ],
)
def test_so_do_headings_with_the_maker_behind_a_dash_and_a_bare_year(vans_of, one, two):
    plain = ROWS["en"].replace("    ", "").replace("\n", "\n\n")
    vans = f"## {one}\n\n{plain.format('250', '5.9', 2, 80)}\n\n## {two}\n\n{plain.format('350', '6.4', 4, 110)}\n"
    text = f"# Weir Lane Yard\n\nWe sell vans, and others build them.\n\n{vans}"
    assert vans_of(text) == {("Bruneck", "Larch 20 TB", 2023), ("Thornleigh", "Alder 22", 2024)}


def test_things_with_their_makers_behind_them_are_no_vans(vans_in):
    rows = ROWS["en"].format("250", "5.9", 2, 80).replace("    ", "")
    text = f"# Larch 20\n\nThe Larch 20 is built by Bruneck.\n\n{rows}\n\n## Awning by Thornleigh\n\n{rows}"
    assert {model for _, model in vans_in(text)} == {"Larch 20"}


TABLE = """# Bruneck: the Larch family, {said}

The Larch {one} bears the year of our first van, the Larch {two} that in which we moved.

| | Larch {one} | Larch {two} |
|---|---|---|
| Overall length | 5.90 m | 6.40 m |
| GVWR | 3500 kg | 4250 kg |
| Sleeps | 2 | 3 |
| Fresh water tank | 90 L | 120 L |
| Solar | 100 W | 200 W |
"""


def test_figures_like_years_that_alone_part_two_names_belong_to_them_beside_the_model_year(vans_of):
    found = vans_of(TABLE.format(said="model year 2026", one=1987, two=2001))
    assert {(model, year) for _, model, year in found} == {("Larch 1987", 2026), ("Larch 2001", 2026)}


def test_heads_with_the_model_year_or_beside_none_are_one_van(vans_of):
    for said, one, two in (("model year 2026", 2025, 2026), ("at a glance", 2019, 2024)):
        assert {model for _, model, _ in vans_of(TABLE.format(said=said, one=one, two=two))} == {"Larch"}
