"""Vans of several makers in one document: each has the maker with whose name its own begins."""

import pytest

ROWS = "| Length | 5.41 m | 5.99 m |\n| Berths | 2 | 3 |\n| Fresh water | 70 L | 110 L |\n| Solar | 100 W | 240 W |\n"
TRIAL = "# Two for the coast road\n\n{}\n\n| | Thornleigh Hearth | Ossvane Tamarsk 60 |\n|---|---|---|\n" + ROWS
COMPANIES = (
    "Thornleigh has built small vans in Hythe since the flood; the Tamarsk is the second van by Ossvane. "
    "The Ossvane has a gray tank of 80 litres."
)
FAIR = """# Hythe Camper Days

Programme for visitors.

## Pier 4: Thornleigh Hearth

Built by Thornleigh in Hythe, model year 2027.

- Length: 5.41 m
- Berths: 2
- Fresh water: 70 L
- Solar: 100 W
- Battery: 95 Ah AGM

## Pier 9: Ossvane Tamarsk 60

Ossvane calls it a van for all seasons.

- Length: 5.99 m
- Berths: 3
- Fresh water: 110 L
- Solar: 240 W
- Battery: 200 Ah lithium
"""
VANS = {("Thornleigh", "Hearth", 2027), ("Ossvane", "Tamarsk 60", None)}


def values(facts, field):
    return {fact.model: fact.value for fact in facts if fact.field == field and not fact.rejected}


def test_heads_that_begin_with_companies_name_vans_with_makers_of_their_own(vans_of):
    assert vans_of(TRIAL.format(COMPANIES)) == {("Thornleigh", "Hearth", None), ("Ossvane", "Tamarsk 60", None)}


def test_a_makers_name_alone_names_its_only_van(facts_of):
    facts = facts_of(TRIAL.format(COMPANIES), "trial.md")
    assert values(facts, "gray_tank_l") == {"Tamarsk 60": 80}
    assert values(facts, "fresh_tank_l") == {"Hearth": 70, "Tamarsk 60": 110}


@pytest.mark.parametrize("said", ["", "The Thornleigh Hearth makes the better first van."])
def test_heads_keep_their_first_words_where_these_are_not_all_said_to_be_companies(vans_of, said):
    found = {model for _, model, _ in vans_of(TRIAL.format(said))}
    assert found == {"Thornleigh Hearth", "Ossvane Tamarsk 60"}


def test_headings_of_a_fair_name_vans_with_makers_and_years_of_their_own(vans_of, facts_of):
    assert vans_of(FAIR) == VANS
    facts = facts_of(FAIR, "fair.md")
    assert values(facts, "maker") == {"Hearth": "Thornleigh", "Tamarsk 60": "Ossvane"}
    assert values(facts, "solar_w") == {"Hearth": 100, "Tamarsk 60": 240}


@pytest.mark.parametrize(
    ("name", "one", "other"),
    [
        ("de", "Gebaut von Thornleigh in Hythe.", "Ossvane nennt ihn wintertauglich."),
        ("fr", "Construit par Thornleigh, à Hythe.", "Ossvane l’appelle quatre saisons."),
    ],
)
def test_so_do_those_of_german_and_french_fairs(vans_of, name, one, other):
    rows = {
        "de": "- Länge: {} m\n- Schlafplätze: 2\n- Frischwasser: 100 l\n- Abwasser: 90 l\n- Solaranlage: 110 W\n",
        "fr": "- Longueur : {} m\n- Couchages : 2\n- Eau propre : 90 l\n- Panneau solaire : 110 W\n- Batterie : 9 Ah\n",
    }[name]
    first, second = rows.format("5,41"), rows.format("5,99")
    text = (
        f"# Hythe 2027\n\n## 4: Thornleigh Hearth\n\n{one}\n\n{first}\n## 9: Ossvane Tamarsk 60\n\n{other}\n\n{second}"
    )
    assert {(maker, model) for maker, model, _ in vans_of(text)} == {
        ("Thornleigh", "Hearth"),
        ("Ossvane", "Tamarsk 60"),
    }


def test_a_row_that_names_the_makers_parts_them_from_the_vans_of_all_tables(vans_of, facts_of):
    text = (
        "# Two for the coast road\n\n## At a glance\n\n| | Thornleigh Hearth | Ossvane Tamarsk 60 |\n|---|---|---|\n"
        f"| Made by | Thornleigh Ltd | Ossvane Ltd |\n{ROWS}\n## Water\n\n| | Hearth | Tamarsk 60 |\n|---|---|---|\n"
        "| Waste water | 55 L, heated | 80 L, not heated |\n| Toilet | cassette | composting |\n"
    )
    assert vans_of(text) == {("Thornleigh", "Hearth", None), ("Ossvane", "Tamarsk 60", None)}
    assert values(facts_of(text, "two.md"), "gray_tank_l") == {"Hearth": 55, "Tamarsk 60": 80}


def test_vans_of_several_makers_need_not_begin_with_their_names(vans_of):
    text = (
        "# Two for the coast road\n\n| | Hearth | Tamarsk 60 |\n|---|---|---|\n"
        f"| Manufacturer | Thornleigh Ltd | Ossvane Ltd |\n{ROWS}"
    )
    assert vans_of(text) == {("Thornleigh", "Hearth", None), ("Ossvane", "Tamarsk 60", None)}


def test_a_converter_of_current_is_no_maker(vans_of):
    table = f"| | Hearth | Hearth L |\n|---|---|---|\n| Converter | 45 A | 60 A |\n{ROWS}"
    text = f"# Hearth\n\nBuilt by Thornleigh.\n\n{table}"
    assert {maker for maker, _, _ in vans_of(text)} == {"Thornleigh"}


@pytest.mark.parametrize("said", ["Solo is the van for people who stay at home.", "The Solo is a small van."])
def test_what_a_sentence_calls_a_van_is_no_maker(vans_of, said):
    text = f"# Hearth 2026\n\n{said}\n\n| | Hearth Solo | Hearth Duo |\n|---|---|---|\n{ROWS}"
    assert vans_of(text) == {("", "Hearth Solo", 2026), ("", "Hearth Duo", 2026)}
