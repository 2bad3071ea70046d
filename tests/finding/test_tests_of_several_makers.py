"""Magazines that set vans of two makers side by side: each van has its maker and year, and the magazine made none."""

import pytest

ROWS = {
    "de": ["Modelljahr", "Länge", "Schlafplätze", "Frischwasser", "Abwasser", "Heizung", "Batterie"],
    "fr": ["Millésime", "Longueur", "Couchages", "Eau propre", "Eaux usées", "Chauffage", "Batterie"],
}
VALUES = {
    "de": [("5,99 m", "2", "95 l", "80 l", "Luftheizung, Gas", "95 Ah Gel"),
           ("6,04 m", "3", "115 l", "90 l", "Kombiheizung, Diesel", "200 Ah Lithium")],
    "fr": [("5,99 m", "2", "95 l", "80 l", "air pulsé, gaz", "95 Ah gel"),
           ("6,04 m", "3", "115 l", "90 l", "combiné air-eau, gazole", "200 Ah lithium")],
}  # fmt: skip
VANS = {("Marrowfen", "Drift 600 Q", 2026), ("Thornleigh", "Hearth T6", 2027)}


def test_headings_name_vans_of_two_makers_one_of_which_the_text_says_to_build(vans_of):
    chapters = ""
    said = ("Der Drift ist ein alter Bekannter.", "Thornleigh baut erst seit vier Jahren, das aber mit Ehrgeiz.")
    for (maker, model, year), text, values in zip(sorted(VANS), said, VALUES["de"], strict=True):
        rows = "\n".join(f"  {a:19}{b}" for a, b in zip(ROWS["de"], (year, *values), strict=True))
        chapters += f"{maker} {model}\n{'-' * 20}\n{text}\n\n{rows}\n\n"
    text = (
        "NEBELHORN - Das Heft für unterwegs\nVERGLEICHSTEST KASTENWAGEN\n\n"
        f"Marrowfen Drift 600 Q gegen Thornleigh Hearth T6\n{'=' * 48}\n\nZwei Wochen fuhren wir beide.\n\n{chapters}"
        "FAZIT: Der Drift 600 Q gewinnt das Herz, der Hearth T6 die Wertung, mit 411 zu 402 Punkten.\n"
    )
    assert vans_of(text) == VANS


@pytest.mark.parametrize("joint", ["de", "signé"])
def test_a_text_sets_the_makers_behind_the_vans_in_the_heads(vans_of, joint):
    heads = [f"{maker} {model}" for maker, model, _ in sorted(VANS)]
    years = [year for _, _, year in sorted(VANS)]
    columns = zip(*((year, *values) for year, values in zip(years, VALUES["fr"], strict=True)), strict=True)
    rows = "".join(
        f"<tr><td>{label}</td><td>{one}</td><td>{two}</td></tr>"
        for label, (one, two) in zip(ROWS["fr"], columns, strict=True)
    )
    page = (
        "<html lang='fr'><head><title>Face à face - Route Douce</title></head><body><header>ROUTE DOUCE, le magazine"
        " du fourgon</header><h1>Face à face : deux six-mètres au col</h1>"
        f"<p>D'un côté le Drift 600 Q {joint} Marrowfen, lit transversal et bois clair ; de l'autre le Hearth T6"
        f" {joint} Thornleigh, lits jumeaux. Nous les avons menés au col.</p>"
        f"<table><tr><th></th><th>{heads[0]}</th><th>{heads[1]}</th></tr>{rows}</table></body></html>"
    )
    assert vans_of(page, name="essai.html") == VANS


def test_two_ranges_of_one_maker_are_no_makers(vans_of):
    chapters = ""
    for name, values in zip(("Drift Solo", "Hearth Duo"), VALUES["de"], strict=True):
        rows = "\n".join(f"{a}: {b}" for a, b in zip(ROWS["de"][1:], values, strict=True))
        chapters += f"## {name}\n\nDer {name} wird in Ost gebaut. Der {name.split()[0]} gefällt.\n\n{rows}\n\n"
    text = (
        "# Marrowfen\n\nModelljahr 2027. Marrowfen baut seit 1998 Kastenwagen.\n\n"
        f"{chapters}Marrowfen GmbH, Am Anger 3, Ost\n"
    )
    assert vans_of(text) == {("Marrowfen", "Drift Solo", 2027), ("Marrowfen", "Hearth Duo", 2027)}
