"""Vans that stand in the rows of tables."""

from tests.finding.test_names_in_heads import models

TITLE = "# Marrowfen Campers\n\nThe Tusk\n\nMY 2027\n\n"
WATER = """| Van | Fresh water tank | Gray water tank | WC |
|---|---|---|---|
| Solo Plus | 90 L | 80 L | cassette toilet |
| {name} | 110 L | 95 L | cassette toilet |
| Duo | 120 L | 95 L | dry toilet |

"""
SIZES = """| Van | Length | Wheelbase | Sleeps |
|---|---|---|---|
| Solo Plus | 5.90 m | 3.45 m | 2 |
| {name} | 6.08 m | 4.04 m | 3 |
| Duo | 6.44 m | 4.04 m | 4 |

"""


def test_rows_that_several_tables_have_are_vans_though_one_is_called_by_words_of_lists(vans_of):
    both = TITLE + (SIZES + WATER).format(name="Shore Plus")
    assert models(vans_of(both)) == {"Tusk Solo Plus", "Tusk Shore Plus", "Tusk Duo"}


def test_rows_of_one_table_are_no_vans_where_one_is_a_label(vans_of):
    assert not models(vans_of(TITLE + SIZES.format(name="Shore power"))) & {"Tusk Shore power", "Shore power"}


def test_what_stands_over_one_more_value_of_vans_in_rows_is_no_van(vans_of):
    table = (
        "# Marrowfen\n\n## Fourgons aménagés\n\nAnnée-modèle 2026\n\n"
        "| Version | Largeur | Hauteur | Empattement | PTAC |\n|---|---|---|---|---|\n"
        "| Long Teasel | 2,01 m | 2,72 m | 345 cm | 4 250 kg |\n"
        "| Silver Kindle | 2,01 m | 2,89 m | 432 cm | 4 250 kg |\n"
        "\n| Version | Usage |\n|---|---|\n| Long Teasel | Toutes saisons |\n| Silver Kindle | Trois saisons |\n"
    )
    assert models(vans_of(table)) == {"Long Teasel", "Silver Kindle"}
