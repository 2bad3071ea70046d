"""Letters that introduce vans one after another, and companies that sign with what they do."""

import pytest

HEADS = {
    "en": (
        "Hi M.,\n\nhere are the plain figures of our 2026 vans. First the {}:",
        "And the {}:",
        "-- \n{} we build them",
    ),
    "de": ("Hallo M.,\n\nhier die Zahlen unserer Vans 2026. Zuerst der {}:", "Und der {}:", "-- \n{}, wir bauen sie"),
}
LINES = {
    "en": "chassis: Cudgee Hauler {}\noverall length: {} in\nGVWR: {} lb\nsleeps: 2\nfresh water tank: {} gal",
    "de": "Basisfahrzeug: Cudgee Hauler {}\nLänge: {} cm\nGesamtgewicht: {} kg\nSchlafplätze: 2\nFrischwasser: {} l",
}


def letter(language, shorter, longer, company):
    first, second, signed = HEADS[language]
    one, other = (
        LINES[language].format(*values).replace("\n", "\n  ")
        for values in ((2500, 234, 8550, 27), (3500, 259, 9350, 24))
    )
    return (
        f"{first.format(shorter)}\n\n  {one}\n\n{second.format(longer)}\n\n  {other}\n\n"
        f"Come and sit in both.\n\nJorun\n{signed.format(company)}\n"
    )


@pytest.mark.parametrize("language", ["en", "de"])
def test_lines_that_end_in_a_name_and_a_colon_introduce_vans(read_file, tmp_path, language):
    path = tmp_path / "letter.txt"
    path.write_text(letter(language, "Drift", "Drift Max", "Marrowfen Reisemobile"), encoding="utf-8")
    found = read_file(path).found
    assert {van.model for van in found.vans} == {"Drift", "Drift Max"}
    chassis = {(fact.model, fact.value) for fact in found.facts if fact.field == "chassis" and not fact.rejected}
    assert chassis == {("Drift", "Cudgee Hauler 2500"), ("Drift Max", "Cudgee Hauler 3500")}


def test_a_line_with_nothing_below_it_introduces_no_van(vans_in):
    text = (
        "Drift\n\nMarrowfen Vans\n\nIn short, the Drift:\n\nCome and see it.\n\nAnd the Drift Winter:\n\nIt is warm.\n"
    )
    assert "Drift Winter" not in {model for _, model in vans_in(text, "letter.txt")}


@pytest.mark.parametrize(
    ("language", "company", "maker"),
    [
        ("en", "Marrowfen Vans", "Marrowfen Vans"),
        ("de", "Marrowfen Reisemobile", "Marrowfen Reisemobile"),
        ("en", "Jorun Marrowfen", ""),
    ],
)
def test_who_signs_and_builds_is_the_maker(vans_in, language, company, maker):
    found = vans_in(letter(language, "Drift", "Drift Max", company), "letter.txt")
    assert {one for one, _ in found} == {maker}
