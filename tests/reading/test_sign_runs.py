"""Signs of several vans that stand before an item, one for each: whose they are the legend or the letters above say."""

import pytest

from tests.reading.drawn import Page

LEGENDS = {
    "en": "How to read the marks: first mark: Base; second: Comfort; third: Tundra.",
    "en order": "The marks stand for, from left to right, Base, Comfort and Tundra.",
    "de": "So lesen Sie die Zeichen: erstes Zeichen: Base; zweites: Comfort; drittes: Tundra.",
    "fr": "Comment lire les signes : premier signe : Base ; deuxième : Comfort ; troisième : Tundra.",
}
WORDS = {
    "en": (
        "• standard   + option   × not available",
        (
            "Overall length 6.36 m",
            "GVWR 3500 kg",
            "Wheelbase 4.04 m",
            "Sleeps 2",
            "Fresh tank, 90 l",
            "Gray tank, 70 l",
            "Underfloor heating",
            "Solar panel, 200 W",
        ),
        "The Curlew 21 Base is for summer. The Curlew 21 Comfort is for most of us. The Curlew 21 Tundra is for snow.",
    ),
    "de": (
        "• Serie   + Option   × nicht lieferbar",
        (
            "Länge 6,36 m",
            "Zulässige Gesamtmasse 3500 kg",
            "Radstand 4,04 m",
            "Schlafplätze: 2",
            "Frischwassertank 90 l",
            "Abwassertank 70 l",
            "Fußbodenheizung",
            "Solarmodul 200 W",
        ),
        "Der Curlew 21 Base ist für den Sommer. Der Curlew 21 Comfort ist für alle. Der Curlew 21 Tundra mag Schnee.",
    ),
    "fr": (
        "• série   + option   × non disponible",
        (
            "Longueur 6,36 m",
            "PTAC 3500 kg",
            "Empattement 4,04 m",
            "Couchages : 2",
            "Eau propre 90 l",
            "Eaux usées 70 l",
            "Plancher chauffant",
            "Panneau solaire 200 W",
        ),
        "Le Curlew 21 Base est pour l’été. Le Curlew 21 Comfort est pour tous. Le Curlew 21 Tundra aime la neige.",
    ),
}
MARKS = (*["•••"] * 5, "••×", "×+•", "++•")


def page(legend, language, letters="BCT", marks=MARKS):
    made = Page()
    signs, items, prose = WORDS[language]
    made.text(40, 40, "Curlew 21", size=20, bold=True)
    joint = {"en": "and", "de": "und", "fr": "et"}[language]
    made.text(40, 64, f"Base, Comfort {joint} Tundra", bold=True)
    made.text(40, 80, prose)
    made.text(40, 100, legend)
    made.text(40, 114, signs)
    for n, head in enumerate(letters):
        made.text(40 + 14 * n, 140, head, bold=True)
    made.text(86, 140, {"en": "Equipment", "de": "Ausstattung", "fr": "Équipement"}[language], bold=True)
    for row, (own, item) in enumerate(zip(marks, items, strict=True)):
        for n, mark in enumerate(own):
            made.text(40 + 14 * n, 156 + 13 * row, mark)
        made.text(86, 156 + 13 * row, item)
    return made


def told(facts, field):
    return {fact.model.split()[-1]: fact.availability for fact in facts if fact.field == field}


@pytest.mark.parametrize("legend", LEGENDS)
def test_each_sign_is_of_the_van_that_the_legend_says(facts_of_pdf, legend):
    facts = facts_of_pdf(page(LEGENDS[legend], legend[:2], letters=""))
    assert told(facts, "gray_tank_l") == {"Base": "standard", "Comfort": "standard", "Tundra": "not_available"}
    assert told(facts, "heated_floor") == {"Base": "not_available", "Comfort": "optional", "Tundra": "standard"}
    assert told(facts, "solar_w") == {"Base": "optional", "Comfort": "optional", "Tundra": "standard"}


def test_each_sign_is_of_the_van_whose_name_begins_with_the_letter_above(facts_of_pdf):
    facts = facts_of_pdf(
        page("Base, Comfort and Tundra on one page.", "en", letters="TBC", marks=(*["•••"] * 5, "×••", "•×+", "•++"))
    )
    assert told(facts, "gray_tank_l") == {"Base": "standard", "Comfort": "standard", "Tundra": "not_available"}
    assert told(facts, "heated_floor") == {"Base": "not_available", "Comfort": "optional", "Tundra": "standard"}


def test_signs_of_which_nobody_says_whose_they_are_tell_only_where_they_agree(facts_of_pdf):
    facts = facts_of_pdf(page("Base, Comfort and Tundra on one page.", "en", letters="XYZ"))
    assert told(facts, "fresh_tank_l") == dict.fromkeys(("Base", "Comfort", "Tundra"), "standard")
    assert told(facts, "gray_tank_l") == told(facts, "heated_floor") == {}


def test_such_lists_may_be_typed(facts_of):
    signs, items, prose = WORDS["en"]
    rows = "\n".join(f"{' '.join(own)}  {item}" for own, item in zip(MARKS, items, strict=True))
    facts = facts_of(f"Curlew 21\nBase, Comfort and Tundra\n\n{prose}\n\n{LEGENDS['en']}\n{signs}\n\n{rows}\n")
    assert told(facts, "gray_tank_l") == {"Base": "standard", "Comfort": "standard", "Tundra": "not_available"}
    assert told(facts, "heated_floor") == {"Base": "not_available", "Comfort": "optional", "Tundra": "standard"}


def test_signs_behind_labels_are_cells_of_their_columns(facts_of_pdf):
    made = Page()
    made.text(40, 40, "Pellmarsh Curlew 21", size=20, bold=True)
    made.text(40, 100, WORDS["en"][0])
    made.row(140, (40, "Equipment"), (190, "Curlew 21"), (250, "Curlew 23"), (310, "Curlew 25"), bold=True)
    for row, (own, item) in enumerate(zip(MARKS, WORDS["en"][1], strict=True)):
        marks = [(206 + 60 * n, mark) for n, mark in enumerate(own)]
        made.row(156 + 13 * row, (40, item), *marks)
    facts = facts_of_pdf(made)
    assert told(facts, "heated_floor") == {"21": "not_available", "23": "optional", "25": "standard"}


def test_a_dash_before_the_sign_of_an_item_is_the_bullet_of_the_list(facts_of):
    signs = "■ – standard; □ – option"
    rows = "- ■ Overall length 6.36 m\n- ■ Wheelbase 4.04 m\n- ■ Gray tank, 70 l\n- □ Underfloor heating\n- ■ Sleeps 2"
    facts = facts_of(f"# Pellmarsh Curlew 21\n\n{signs}\n\n{rows}\n", "brochure.md")
    assert told(facts, "gray_tank_l") == {"21": "standard"}
    assert told(facts, "heated_floor") == {"21": "optional"}
