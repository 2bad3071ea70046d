"""Vans that only their data tell apart, nicknames beside names, and companies that write themselves small."""

import pytest

VALUES = (
    ("Cudgee Carrier LWB", "5.41 m", "3500 kg", "2", "60 l", "200 Ah lithium", "400 W"),
    ("Cudgee Carrier LWB", "5.99 m", "3850 kg", "3", "75 l", "100 Ah lithium", "200 W"),
    ("Cudgee Carrier LWB", "6.36 m", "4250 kg", "4", "90 l", "300 Ah lithium", "330 W"),
)
LABELS = {
    "en": ("Chassis", "Overall length", "GVM", "Sleeps", "Fresh water tank", "House battery", "Solar"),
    "de": ("Basisfahrzeug", "Länge", "Gesamtgewicht", "Schlafplätze", "Frischwassertank", "Bordbatterie", "Solar"),
    "fr": ("Porteur", "Longueur", "PTAC", "Couchages", "Eau propre", "Batterie cellule", "Solaire"),
}


def sheets(language, *names):
    found = []
    for name, values in zip(names, VALUES, strict=False):
        rows = "\n".join(f"- {label}: {value}" for label, value in zip(LABELS[language], values, strict=True))
        found.append(f"## {name}\n\n{rows}\n")
    return "\n".join(found)


@pytest.mark.parametrize(
    ("head", "language", "names"),
    [
        ("Marrowfen & Töchter\n\nWir bauen Vans seit 1998.\n\n", "de", ("Montag", "Dienstag", "Sonntag")),
        ("Marrowfen & Filles\n\nNous construisons des fourgons.\n\n", "fr", ("Mardi", "Jeudi", "Samedi")),
        ("Marrowfen & Daughters\n\nWe build vans.\n\n", "en", ("Monday", "Thursday", "Sunday")),
    ],
)
def test_lists_of_the_same_labels_with_other_values_are_vans(vans_in, head, language, names):
    assert {model for _, model in vans_in(head + sheets(language, *names))} == set(names)


def test_the_same_values_again_are_those_of_one_van(vans_in):
    text = "# Drift\n\nMarrowfen Vans\n\n" + sheets("en", "Drift") + sheets("en", "Fellow").replace("5.41", "5.42")
    assert {model for _, model in vans_in(text)} != {"Drift", "Fellow"}


@pytest.mark.parametrize(
    ("language", "names"),
    [
        ("en", ("Drift 5.9 “Shorty”", "Drift 6.9 “Big Fella”")),
        ("de", ("Drift 5.9 „Der Kurze“", "Drift 6.9 „Der Lange“")),
        ("fr", ("Drift 5.9 « Le Court »", "Drift 6.9 « Le Long »")),
    ],
)
def test_nicknames_in_quotes_are_no_part_of_names_with_figures(vans_in, language, names):
    text = "Marrowfen Campers\n\n# Two Drifts\n\n" + sheets(language, *names)
    assert vans_in(text) == {("Marrowfen Campers", "Drift 5.9"), ("Marrowfen Campers", "Drift 6.9")}


def test_nicknames_head_columns_too(vans_in):
    rows = "\n".join(
        f"| {label} | {one} | {other} |" for label, one, other in zip(LABELS["en"], *VALUES[:2], strict=True)
    )
    text = f"Marrowfen Campers\n\n| | Drift 5.9 “Shorty” | Drift 6.9 “Big Fella” |\n|---|---|---|\n{rows}\n"
    assert {model for _, model in vans_in(text)} == {"Drift 5.9", "Drift 6.9"}


def test_quotes_that_tell_vans_apart_are_kept(vans_in):
    found = vans_in("Marrowfen Campers\n\n# Two Drifts\n\n" + sheets("en", "Drift 5.9 “Polar”", "Drift 5.9 “Sun”"))
    assert "Drift 5.9" not in {model for _, model in found}


@pytest.mark.parametrize(
    ("last", "maker"),
    [
        ("marrowfen vans are built to order.", "marrowfen"),
        ("All our campers by marrowfen are built to order.", "marrowfen"),
        ("They are built to order.", ""),
    ],
)
def test_a_company_may_write_itself_in_small_letters(vans_in, last, maker):
    rows = "\n".join(
        f"| {label} | {one} | {other} |" for label, one, other in zip(LABELS["en"], *VALUES[:2], strict=True)
    )
    table = f"| | Drift 5.9 | Drift 6.4 |\n|---|---|---|\n{rows}"
    text = f"marrowfen\n\nquietly, since the flood\n\n# Drift\n\n{table}\n\n{last}\n"
    assert vans_in(text) == {(maker, "Drift 5.9"), (maker, "Drift 6.4")}
