"""Titles of which a text says that they build the vans, and names of vans in documents without capitals."""

import pytest

ROWS = {
    "en": ("Base vehicle: Kelmar Drover {}", "Overall length: {} cm", "Sleeps: {}", "Fresh water: {} l",
           "Heating: diesel air heater", "House battery: {} Ah AGM"),
    "fr": ("Porteur : Kelmar Drover {}", "Longueur hors tout : {} cm", "Couchages : {}", "Eau propre : {} l",
           "Chauffage : air pulsé, gazole", "Batterie cellule : AGM {} Ah"),
    "de": ("Basisfahrzeug: Kelmar Drover {}", "Gesamtlänge: {} cm", "Schlafplätze: {}", "Frischwasser: {} l",
           "Heizung: Warmluft, Diesel", "Bordbatterie: {} Ah AGM"),
}  # fmt: skip
SAID = {
    "en": "Two vans, model year 2026. Brook is the little one, Heath is the great one. {} both by hand.",
    "fr": "Deux fourgons, millésime 2026. Brook est le petit, Heath est le grand. {} tous deux à la main.",
    "de": "Zwei Reisemobile, Modelljahr 2026. Brook ist der Kleine, Heath ist der Große. {} von Hand.",
}
BUILDS = {"en": "Marrowfen builds", "fr": "Marrowfen les fabrique", "de": "Marrowfen baut beide"}
VALUES = (("33", "541", "2", "", "70", "95"), ("35", "599", "4", "", "100", "120"))


def leaflet(language, said):
    parts = [f"# Marrowfen\n\n{SAID[language].format(said)}"]
    for name, (base, length, sleeps, _, water, battery) in zip(("Brook", "Heath"), VALUES, strict=True):
        rows = ROWS[language]
        values = (base, length, sleeps, water, "", battery)
        lines = "\n\n".join(row.format(value) for row, value in zip(rows, values, strict=True))
        parts.append(f"## {name}\n\n{lines}")
    return "\n\n".join(parts) + "\n"


@pytest.mark.parametrize("language", list(ROWS))
def test_a_title_that_builds_the_vans_below_it_is_their_maker_and_no_range(vans_of, language):
    found = vans_of(leaflet(language, BUILDS[language]))
    assert found == {("Marrowfen", "Brook", 2026), ("Marrowfen", "Heath", 2026)}


@pytest.mark.parametrize("language", list(ROWS))
def test_so_are_names_in_small_letters_where_no_heading_has_a_capital(vans_of, language):
    text = leaflet(language, BUILDS[language])
    for name in ("Marrowfen", "Brook", "Heath"):
        text = text.replace(name, name.lower())
    assert vans_of(text) == {("marrowfen", "brook", 2026), ("marrowfen", "heath", 2026)}


def test_headings_in_small_letters_that_no_text_uses_are_no_vans(vans_of):
    text = leaflet("en", BUILDS["en"]).replace("## Brook", "## outside").replace("## Heath", "## inside")
    assert not {"outside", "inside"} & {model for _, model, _ in vans_of(text.lower())}
