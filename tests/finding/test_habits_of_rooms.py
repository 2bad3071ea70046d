"""Where valves sit and what a wall is made of, as makers word it: rooms for tanks, faces of foil."""

import pytest

HEADS = {
    "en": "# Drift 21\n\nMarrowfen Ltd, model year 2026\n\n| Length | 5.99 m |\n|---|---|\n| Sleeps | 2 |\n",
    "de": "# Drift 21\n\nMarrowfen GmbH, Modelljahr 2026\n\n| Länge | 5,99 m |\n|---|---|\n| Schlafplätze | 2 |\n",
    "fr": "# Drift 21\n\nMarrowfen SARL, millésime 2026\n\n| Longueur | 5,99 m |\n|---|---|\n| Couchages | 2 |\n",
}


@pytest.fixture
def told_of(facts_of):
    """Give a function that reads a row in a language and gives what it tells of a field."""

    def told(language, label, value, field):
        facts = facts_of(f"{HEADS[language]}| {label} | {value} |\n", "van.md")
        return {fact.value for fact in facts if fact.field == field}

    return told


@pytest.mark.parametrize(
    ("language", "label", "value", "protection"),
    [
        ("en", "Dump valves", "Inside the heated tank box", "heated_compartment"),
        ("en", "Drain valve", "In the heated plumbing cabinet", "heated_compartment"),
        ("en", "Dump valve", "in the insulated and heated utility cupboard", "heated_compartment"),
        ("fr", "Vanne de vidange", "apparente", "exposed"),
    ],
)
def test_a_valve_in_a_heated_room_for_tanks_or_pipes_is_in_a_heated_compartment(
    told_of, language, label, value, protection
):
    assert told_of(language, label, value, "dump_valve_protection") == {protection}


@pytest.mark.parametrize(
    ("language", "label", "value", "materials"),
    [
        ("en", "Insulation", "1 in hemp batts plus foil", {"natural_fiber", "reflective_foil"}),
        ("en", "Wall insulation", "30 mm sheep's wool with foil face", {"sheep_wool", "reflective_foil"}),
        ("en", "Wall insulation", "foil-faced PIR board, 40 mm", {"rigid_foam"}),
        ("de", "Dämmung Seitenwand", "20 mm Schafwolle, alukaschiert", {"sheep_wool", "reflective_foil"}),
        ("fr", "Isolation des parois", "25 mm, laine de mouton et film alu", {"sheep_wool", "reflective_foil"}),
        ("fr", "Isolation des parois", "15 mm, mousse en feuille", {"foam_sheet"}),
    ],
)
def test_a_face_of_foil_on_batts_is_one_of_their_materials(told_of, language, label, value, materials):
    assert told_of(language, label, value, "insulation_material") == materials
