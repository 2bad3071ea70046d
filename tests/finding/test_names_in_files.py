"""What the name of a file tells of a document's vans, and names that are put together from parts."""

import pytest

from specscan.finding.naming.file_names import file_runs
from tests.finding.test_ways_of_naming import FOOT, TABLE

LETTER = """Dear reader,

thank you for asking. Most of what you want to know of the winter side is below, as the workshop wrote it down for us.
Ours is the only Ferrule 62 on the yard, and it goes out in May.

Overall length: 6.24 m
Width: 2.05 m
Height: 2.70 m
MTPLM: 3500 kg
Fresh water tank: 100 litres, inside, heated by warm air
Waste water tank: 90 litres
Heater: diesel, 4 kW
"""


@pytest.mark.parametrize(
    "stem, texts, runs",
    [
        ("marrowfen_drift_21_2026", ["The Drift 21 is by Marrowfen."], ["Marrowfen", "Drift 21"]),
        ("pfnuestel-541-preise", ["PFNÜSTEL 541"], ["PFNÜSTEL 541"]),
        ("gelinou_55", ["Le Gélinou 55, prêt", "Gélinou"], ["Gélinou 55"]),
        ("drift_21", ["Drift. 21 vans were sold."], ["Drift", "21"]),
        ("brochure (3)", ["Drift 21"], []),
    ],
)
def test_runs_of_words_are_as_the_document_prints_them(stem, texts, runs):
    assert file_runs(stem, texts) == runs


@pytest.fixture
def named(read_file, tmp_path):
    """Give a function that reads a text under a file's name and gives its vans and the grounds of their names."""

    def read(name, text):
        path = tmp_path / name
        path.write_text(text, encoding="utf-8")
        facts = [fact for fact in read_file(path).found.facts if fact.field == "model"]
        return {fact.text: fact.grounds for fact in facts}

    return read


def test_a_file_is_named_after_a_van_that_its_text_names(named):
    assert set(named("kerrabin_letter_ferrule_62.txt", LETTER)) == {"Ferrule 62"}


def test_a_name_that_only_the_file_has_is_no_van(named):
    assert "Larder 70" not in " ".join(named("kerrabin_larder_70.txt", LETTER))


def test_a_title_that_lists_two_ranges_is_no_range(named):
    table = TABLE.format(corner="", a="F190", b="L240")
    names = named("prices.md", f"# Ferrule & Larder\n\nPrices and technical data 2026\n\n{table}{FOOT}")
    assert not any("Ferrule Larder" in name for name in names)


def test_heads_that_differ_in_capitals_alone_end(named):
    text = TABLE.format(corner="", a="Ferrule 62", b="FERRULE 62")
    assert {name.casefold() for name in named("prices.md", f"# Vans 2026\n\n{text}{FOOT}")} == {"ferrule 62"}


def test_a_name_put_together_is_doubtful_unless_a_line_has_the_range_alone(named):
    table = TABLE.format(corner="", a="190", b="240 X")
    told = named("a.md", f"# The Ferrule range 2026\n\n{table}{FOOT}")
    alone = named("a.md", f"# Ferrule\n\nPrices and technical data 2026\n\n{table}{FOOT}")
    whole = named("a.md", f"# Ferrule\n\n{TABLE.format(corner='', a='Ferrule 190', b='Ferrule 240 X')}{FOOT}")
    assert told == {"Ferrule 190": ("pieced",), "Ferrule 240 X": ("pieced",)}
    assert alone == whole == {"Ferrule 190": (), "Ferrule 240 X": ()}


def test_words_for_a_list_of_prices_behind_the_maker_are_no_range(named):
    table = TABLE.format(corner="", a="190", b="240 X")
    names = named("marrowfen.md", f"# Marrowfen Retail price guide\n\n## The Ferrule models\n\n{table}{FOOT}")
    assert not any("Retail" in name for name in names)


def test_the_company_above_the_range_is_no_range_though_the_file_has_its_name(named):
    rows = (("Modèle", "540 Fell", "540 Dune"), ("Débit calorifique du chauffage, kW", "4,7", "2"),
            ("Puissance solaire, W", "150", "400"), ("Onduleur, W", "3 600", "3 000"),
            ("Raccordement 230 V, A", "16", "16"), ("Rideaux isothermes des portes arrière", "Non", "Non"),
            ("Volets isothermes de cabine", "✓", "✓"))  # fmt: skip
    table = "".join(f"| {' | '.join(row)} |\n" for row in rows)
    text = (
        "# Kerrabin\n\nFerrule, année-modèle 2027\n\n540 Fell | 540 Dune\n\n\n### Équipement de base\n\n\n"
        f"### Options\n\n\n## Caractéristiques techniques\n\n{table}\n"
    )
    assert set(named("kerrabin_2027.md", text)) == {"Ferrule 540 Fell", "Ferrule 540 Dune"}


def test_letters_that_a_file_is_named_by_are_not_set_before_codes_that_begin_with_them(named):
    table = TABLE.format(corner="", a="QF-190", b="QF-240")
    said = "The QF-240 is a four-season van. The QF-190 likes long evenings."
    text = (
        f"# KERRABIN\n\nQF-190 and QF-240\n\n{said}\n\n## As it comes\n\n{table}\nKerrabin Inc., 12 Quay Road, Hythe.\n"
    )
    assert set(named("kerrabin_qf_packages.md", text)) == {"QF-190", "QF-240"}
