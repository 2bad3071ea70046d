"""Headings that name one thing in two languages, above what is told of it."""

import pytest

PAGE = """# Marrowfen Drift 18

Fourgon aménagé · Camper van · année-modèle 2026

Longueur hors tout : 5,69 m. PTAC : 4080 kg. Couchages : 2.

## {water}

95 L, sous le lit

## {toilet}

sèche, à séparation

## {valve}

dans un caisson chauffé

Marrowfen ltée, 3, chemin de la Rive, Pont-du-Lac.
"""


@pytest.mark.parametrize("turned", [False, True])
def test_they_are_labels_as_in_one_language(read_file, tmp_path, turned):
    pairs = {
        "water": ("Eau propre", "Fresh water"),
        "toilet": ("Toilette", "Toilet"),
        "valve": ("Vanne de vidange", "Dump valve"),
    }
    heads = {name: " / ".join(pair[::-1] if turned else pair) for name, pair in pairs.items()}
    path = tmp_path / "poster.md"
    path.write_text(PAGE.format(**heads), encoding="utf-8")
    told = {fact.field: fact.value for fact in read_file(path).found.facts if not fact.rejected}
    assert told["fresh_tank_l"] == 95
    assert told["toilet"] == "dry"
    assert told["dump_valve_protection"] == "heated_compartment"


def test_two_things_beside_each_other_are_no_label(read_file, tmp_path):
    path = tmp_path / "poster.md"
    path.write_text(
        PAGE.format(water="Eau propre / Grey water", toilet="Toilette / Shower", valve="Vanne de vidange"),
        encoding="utf-8",
    )
    told = {fact.field for fact in read_file(path).found.facts if not fact.rejected}
    assert "fresh_tank_l" not in told
