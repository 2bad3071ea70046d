"""Heads of tables that name each van with the base vehicle behind it."""

import pytest

LABELS = {
    "en": ("Overall length", "Sleeps", "Fresh water", "Solar"),
    "fr": ("Longueur hors tout", "Couchages", "Eau propre", "Solaire"),
    "de": ("Gesamtlänge", "Schlafplätze", "Frischwasser", "Solarmodule"),
}
LINES = {
    "en": "All of them are built by Bruneck for the 2026 model year and come with a gas heater.",
    "fr": "Tous sont construits par Bruneck pour le millésime 2026 et ont un chauffage au gaz.",
    "de": "Alle sind gebaut von Bruneck für das Modelljahr 2026 und haben eine Heizung mit Gas.",
}
VALUES = (("5,41 m", "2", "75 l", "90 W"), ("5,99 m", "2", "100 l", "120 W"), ("6,36 m", "4", "110 l", "180 W"))
BASES = ("Kelmar Drover 33 L2H2", "Kelmar Drover 35 L3H2", "Kelmar Drover 35 L4H2")


def table(corner, heads, labels, *, turned):
    rows = [[corner, *labels], *([head, *values] for head, values in zip(heads, VALUES, strict=True))]
    if turned:
        rows = [list(row) for row in zip(*rows, strict=True)]
    first, *others = [f"| {' | '.join(row)} |" for row in rows]
    return "\n".join((first, "|---" * len(rows[0]) + "|", *others))


@pytest.mark.parametrize("turned", [False, True])
@pytest.mark.parametrize(
    ("language", "corner", "on"),
    [
        ("en", "Model", "on"),
        ("en", "Model and base", "on the"),
        ("fr", "Modèle et porteur", "sur"),
        ("de", "Modell", "auf"),
    ],
)
def test_the_base_behind_each_name_is_no_part_of_it_and_is_told(read_file, tmp_path, language, corner, on, turned):
    corner = corner.partition(" ")[0] if turned else corner
    heads = [f"{name} {on} {base}" for name, base in zip(("Larch 54", "Larch 60", "Larch 60 Q"), BASES, strict=True)]
    path = tmp_path / "vans.md"
    path.write_text(f"# Larch\n\n{LINES[language]}\n\n{table(corner, heads, LABELS[language], turned=turned)}\n")
    found = read_file(path).found
    assert [van.model for van in found.vans] == ["Larch 54", "Larch 60", "Larch 60 Q"]
    chassis = {fact.model: (fact.value, fact.printed) for fact in found.facts if fact.field == "chassis"}
    assert chassis == {van.model: (base, head) for van, base, head in zip(found.vans, BASES, heads, strict=True)}


def test_where_one_head_has_no_base_nothing_is_taken_from_the_others(vans_of):
    heads = ("Larch 54 on Kelmar Drover 33", "Larch 60 on Tour", "Larch 60 Q on Kelmar Drover 35")
    found = vans_of(f"# Larch\n\n{LINES['en']}\n\n{table('Model', heads, LABELS['en'], turned=False)}\n")
    assert "Larch 54" not in {model for _, model, _ in found}


@pytest.mark.parametrize(("language", "on"), [("en", "on"), ("fr", "sur"), ("de", "auf")])
def test_so_it_is_with_headings_over_the_labels_of_each_van(read_file, tmp_path, language, on):
    heads = [f"{name} {on} {base}" for name, base in zip(("Larch 54", "Larch 60", "Larch 60 Q"), BASES, strict=True)]
    parts = [
        f"## {head}\n\n" + "\n\n".join(f"{a}: {b}" for a, b in zip(LABELS[language], values, strict=True))
        for head, values in zip(heads, VALUES, strict=True)
    ]
    path = tmp_path / "vans.md"
    path.write_text(f"# Larch\n\n{LINES[language]}\n\n" + "\n\n".join(parts) + "\n")
    found = read_file(path).found
    assert [van.model for van in found.vans] == ["Larch 54", "Larch 60", "Larch 60 Q"]
    assert {fact.printed: fact.value for fact in found.facts if fact.field == "chassis"} == dict(
        zip(heads, BASES, strict=True)
    )


def test_headings_on_places_tell_no_base(read_file, tmp_path):
    path = tmp_path / "trip.md"
    rows = "\n\n".join(f"{a}: {b}" for a, b in zip(LABELS["en"], VALUES[0], strict=True))
    trips = "## Weekend on Lake Orin\n\nA trip.\n\n## Winter on Mount Ost\n\nCold.\n"
    path.write_text(f"# Larch 54\n\nThe Larch 54 of 2026.\n\n{rows}\n\n{trips}")
    assert not [fact for fact in read_file(path).found.facts if fact.field == "chassis"]
