"""Sister models in one text, and several documents on one van that do not say the same."""

import pytest

from tests.finding.conftest import value_of

ROWS = {
    "en": "Marrowfen Drift 2026\n\n| Model | Overall length (m) | Wheelbase (mm) | Berths |\n|---|---|---|---|\n"
    "| Drift 19 | 5.90 | 3450 | 2 |\n| Drift 21 | 6.40 | 4040 | 3 |\n\n",
    "fr": "Marrowfen Drift 2026\n\n| Modèle | Longueur (m) | Empattement (mm) | Couchages |\n|---|---|---|---|\n"
    "| Drift 19 | 5,90 | 3450 | 2 |\n| Drift 21 | 6,40 | 4040 | 3 |\n\n",
    "de": "Marrowfen Drift 2026\n\n| Modell | Länge (m) | Radstand (mm) | Schlafplätze |\n|---|---|---|---|\n"
    "| Drift 19 | 5,90 | 3450 | 2 |\n| Drift 21 | 6,40 | 4040 | 3 |\n\n",
}
US_GALLON = 3.785411784  # litres; NIST SP 811 (2008), Appendix B.8
SISTERS = [
    (
        "en",
        "The 19 carries 20 gal of fresh water, the 21 carries 30 gal.",
        "fresh_tank_l",
        20 * US_GALLON,
        30 * US_GALLON,
    ),
    (
        "en",
        "The Drift 19 has a 20 gal gray tank and the Drift 21 has one of 30 gal.",
        "gray_tank_l",
        20 * US_GALLON,
        30 * US_GALLON,
    ),
    ("en", "Solar is 200 W on the Drift 19 and 400 W on the Drift 21.", "solar_w", 200, 400),
    ("fr", "Le 19 emporte 80 l d'eau propre, le 21 emporte 110 l.", "fresh_tank_l", 80, 110),
    ("de", "Der 19 fasst 80 l Frischwasser, der 21 fasst 110 l.", "fresh_tank_l", 80, 110),
]


@pytest.mark.parametrize(("language", "sentence", "field", "short", "long"), SISTERS)
def test_each_sister_gets_her_own_figure(settled_of, language, sentence, field, short, long):
    rows = settled_of(ROWS[language] + sentence + "\n", name="brochure.md")
    stated = {
        model.split()[-1]: value_of(row)
        for (model, name, kind), row in rows.items()
        if (name, kind) == (field, "standard")
    }
    wrong = {
        model: value for model, value in stated.items() if value != pytest.approx({"19": short, "21": long}[model])
    }
    assert stated and not wrong


SET_AGAINST = [
    (
        "en",
        "The 19 has single-pane windows in the living area, while the 21 has double-glazed windows.",
        "window_glazing",
        "single",
        "double",
    ),
    (
        "en",
        "The 19 runs its water lines under the floor, the 21 runs its water lines inside the cabin.",
        "water_lines_location",
        "exterior",
        "interior",
    ),
    ("en", "The 19 stands 105 in. tall and weighs in light. The 21 stands 111 in.", "height_mm", 2667, None),
    ("en", "The 19 is tested down to 5 F, the 21 is tested down to -4 F.", "rated_min_temp_c", -15, -20),
    (
        "en",
        "The 19 is built on the Bruska Haul 35, the 21 is built on the Bruska Haul 45 L4.",
        "chassis",
        "Bruska Haul 35",
        "Bruska Haul 45 L4",
    ),
    ("en", "The 19 has a heater output of 4.0 kW; the 21 6.0 kW.", "heater_output_w", 4000, 6000),
    (
        "fr",
        "Le 19 porte le réservoir d'eau propre dans le double plancher et le 21 porte le réservoir d'eau propre à "
        "l'intérieur de la cellule.",
        "fresh_tank_location",
        "enclosed",
        "interior",
    ),
    (
        "de",
        "Der 19 hat einen unbeheizten Abwassertank, der 21 hat eine 12-V-Heizmatte am Abwassertank.",
        "gray_tank_heat",
        "none",
        "electric_pad",
    ),
]


@pytest.mark.parametrize(("language", "sentence", "field", "short", "long"), SET_AGAINST)
def test_what_is_said_of_one_sister_is_not_said_of_the_other(settled_of, language, sentence, field, short, long):
    rows = settled_of(ROWS[language] + sentence + "\n", name="brochure.md")
    stated = {model.split()[-1]: value_of(row) for (model, name, kind), row in rows.items() if name == field}
    expected = {model: value for model, value in (("19", short), ("21", long)) if value is not None}
    assert {model: stated.get(model) for model in expected} == pytest.approx(expected)


SHEET = "Marrowfen Drift 21\nModel year 2026\n\nOverall length: 6.36 m\nMTPLM: 3500 kg\nWheelbase: 3.80 m\n"


def settled(rows, field, equipment="standard"):
    return next((row for (_, name, kind), row in rows.items() if (name, kind) == (field, equipment)), None)


def test_a_document_that_is_silent_does_not_take_back_what_another_states(settled_of):
    rows = settled_of(SHEET + "Waste tank: 70 litres, heated\n", SHEET + "Fresh water: 100 litres\n")
    assert value_of(settled(rows, "gray_tank_l")) == 70
    assert value_of(settled(rows, "gray_tank_heat")) == "unspecified"
    assert value_of(settled(rows, "fresh_tank_l")) == 100


def test_the_more_exact_of_two_documents_says_how_a_tank_is_heated(settled_of):
    rows = settled_of(SHEET + "Waste tank: heated\n", SHEET + "Waste tank heating: 12 V heating pad\n")
    assert value_of(settled(rows, "gray_tank_heat")) == "electric_pad"


def test_two_documents_that_differ_are_a_conflict_and_no_average(settled_of):
    rows = settled_of(SHEET + "Fresh water: 100 litres\n", SHEET + "Fresh water: 120 litres\n")
    assert settled(rows, "fresh_tank_l").status == "conflicting"


def test_a_word_behind_the_code_names_all_vans_that_have_it(facts_of):
    text = (
        "# Marrowfen Drift\n\nRange 2026: 540, 600, 600 Polar, 636 Polar\n\n"
        "The Polar versions are our four-season vans. Every Drift has a 16 A hook-up and a 90 litre "
        "fresh water tank.\n\n"
        "| | Drift 540 | Drift 600 | Drift 600 Polar | Drift 636 Polar |\n|---|---|---|---|---|\n"
        "| Length (mm) | 5410 | 5990 | 5990 | 6360 |\n| MTPLM (kg) | 3300 | 3500 | 3500 | 3500 |\n"
        "| Berths | 2 | 2 | 2 | 4 |\n"
    )
    facts = [f for f in facts_of(text, "drift.md") if not f.rejected]
    assert {f.model for f in facts if f.field == "season_claim"} == {"Drift 600 Polar", "Drift 636 Polar"}
    assert len({f.model for f in facts if f.field == "fresh_tank_l"}) == 4


def test_the_title_of_a_document_does_not_keep_its_variant_from_what_all_have(facts_of):
    text = (
        "# 2026 Drift 21\n\n## What every Drift has\n\n"
        "A fuel tank of 90 litres and a fresh water tank of 100 litres.\n\n"
        "## Versions\n\n| | Drift 21 | Drift 21 Polar |\n|---|---|---|\n| Length (mm) | 5990 | 5990 |\n"
        "| MTPLM (kg) | 3500 | 3500 |\n| Sleeps | 2 | 2 |\n"
    )
    facts = [f for f in facts_of(text, "drift.md") if not f.rejected]
    assert {f.model for f in facts if f.field == "fresh_tank_l"} == {"Drift 21", "Drift 21 Polar"}


def test_units_told_once_for_all_hold_for_bare_figures(facts_of):
    text = (
        "# Marrowfen Drift 21\n\nModel year 2026. All capacities in U.S. gallons, weights in pounds.\n\n"
        "| Specification | Drift 21 |\n|---|---|\n| Fresh water | 20 |\n| GVWR | 9350 |\n| Sleeps | 2 |\n"
        "| Length | 20 ft |\n"
    )
    found = {f.field: f.value for f in facts_of(text, "drift.md") if not f.rejected}
    assert found["fresh_tank_l"] == pytest.approx(75.7, rel=0.01)
    assert found["gvwr_kg"] == pytest.approx(4241, rel=0.01)
    assert found["sleeps"] == 2


def test_the_beginning_of_a_name_that_no_sister_shares_names_the_van(facts_of):
    text = (
        "# Drift 2026\n\nThe Drift L is the one for winter: we tested it down to -20 °C.\n\n"
        "| | Drift S | Drift M | Drift L Polar |\n|---|---|---|---|\n"
        "| Length (mm) | 5410 | 5990 | 6360 |\n| MTPLM (kg) | 3300 | 3500 | 3500 |\n| Berths | 2 | 2 | 2 |\n"
    )
    facts = [f for f in facts_of(text, "drift.md") if not f.rejected]
    assert {f.model: f.value for f in facts if f.field == "rated_min_temp_c"} == {"Drift L Polar": -20}


def test_none_of_the_vans_has_it_in_german_too(settled_of):
    rows = settled_of(ROWS["de"] + "Keines der Modelle hat einen Fäkalientank.\n", name="preise.md")
    assert [value_of(rows[van, "black_tank_l", "standard"]) for van in ("Drift 19", "Drift 21")] == [0, 0]


PRESS = (
    "# The Drift by Marrowfen\n\nThe range opens with the Drift Bay. The Drift Coast and the Drift Coast 4x4 come."
    "\n\n{sentence}\n\n| | Drift Bay | Drift Coast | Drift Coast 4x4 |\n|---|---|---|---|"
    "\n| Length | 5.40 m | 5.99 m | 5.99 m |\n| GVWR | 3500 kg | 3500 kg | 4250 kg |\n| Solar | 90 W | 90 W | 90 W |\n"
)


@pytest.mark.parametrize(
    ("sentence", "field", "values"),
    [
        ("The Bay carries 70 litres of fresh water and the two Coasts 110.", "fresh_tank_l", (70, 110, 110)),
        ("Grey water capacity is 60 litres in the Bay and 90 in both Coasts.", "gray_tank_l", (60, 90, 90)),
        ("In every van the fresh tank is inside, and all supply lines run inside as well; on the Coast 4x4 they are "
         "insulated, too.", "water_lines_location", ("interior", "interior", "interior")),
        ("None of the vans has a black tank.", "black_tank_l", (0, 0, 0)),
        ("The Coasts have a dry toilet. A winterizing bypass is standard throughout.", "winterizing_bypass",
         (True, True, True)),
    ],
)  # fmt: skip
def test_several_vans_are_named_by_the_plural_of_their_word_or_all_of_them(settled_of, sentence, field, values):
    rows = settled_of(PRESS.format(sentence=sentence), name="press.md")
    models = ("Drift Bay", "Drift Coast", "Drift Coast 4x4")
    found = tuple(value_of(rows[model, field, "standard"]) for model in models)
    assert found == values


@pytest.mark.parametrize(
    ("sentence", "values"),
    [
        ("The Bay, the Coast and the Coast 4x4 are three-season vans; we rate them for 28 °F.", (-2.2, -2.2, -2.2)),
        ("With the Frost Pack the Coast and the Coast 4x4 are rated for 10 °F.", (None, -12.2, -12.2)),
    ],
)
def test_what_is_said_behind_a_list_of_vans_is_said_of_each(settled_of, sentence, values):
    rows = settled_of(PRESS.format(sentence=sentence), name="press.md")
    models = ("Drift Bay", "Drift Coast", "Drift Coast 4x4")
    found = [rows.get((model, "rated_min_temp_c", "optioned")) for model in models]
    assert [row and value_of(row) for row in found] == [value and pytest.approx(value, abs=0.1) for value in values]


def test_what_the_maker_says_of_one_van_and_of_another_below_a_question_about_the_first(facts_of):
    text = (
        "# Drift 19 and Drift 21\n\nFenwold Vans, model year 2026\n\n"
        "## Is the Drift 19 a winter van?\n\n"
        "We call the Drift 19 an all-season van and the Drift 21 a true four-season van. It is the floor.\n\n"
        "## Figures\n\n"
        "| | Drift 19 | Drift 21 |\n|---|---|---|\n| Length | 5.99 m | 6.36 m |\n| GVWR | 3500 kg | 4250 kg |\n"
    )
    found = {(f.model, f.value) for f in facts_of(text, "drift.md") if f.field == "season_claim" and not f.rejected}
    assert found == {("Drift 19", "all-season"), ("Drift 21", "four-season")}


def test_a_van_to_which_another_is_likened_is_not_told_of(facts_of):
    table = "| | Drift 19 | Drift 21 |\n|---|---|---|\n| Overall length | 5.90 m | 6.40 m |\n"
    table += "| GVWR | 3500 kg | 4000 kg |\n| Sleeps | 2 | 3 |\n"
    said = "The Drift 21 is a Drift 19 for people who ski: it has a heated floor and a heated gray tank."
    facts = facts_of(f"# Marrowfen Drift\n\nModel year 2026\n\n{said}\n\n{table}", "likened.md")
    assert {fact.model for fact in facts if fact.field in ("heated_floor", "gray_tank_heat")} == {"Drift 21"}


@pytest.mark.parametrize(
    ("language", "text"),
    [
        ("en", "The Drift 21 is our winter van. It carries Grade 3 under EN 1646-1; the Drift 19 carries Grade 2."),
        (
            "fr",
            "Le Drift 21 est un fourgon d'hiver. Il répond au grade 3 de la norme EN 1646-1 ; le Drift 19 au grade 2.",
        ),
    ],
)
def test_what_a_pronoun_tells_up_to_a_semicolon_is_of_the_van_before(facts_of, language, text):
    facts = [fact for fact in facts_of(ROWS[language] + text) if fact.field == "en_grade"]
    assert {fact.model for fact in facts if fact.value == 3} == {"Drift 21"}


def test_the_grade_of_a_second_van_needs_the_standard_no_second_time(read_file, tmp_path):
    rows = ("| | Tusk 5.4 | Tusk 6.0 |", "|---|---|---|", "| Length | 5.41 m | 5.99 m |", "| Sleeps | 2 | 3 |")
    table = "\n".join((*rows, "| Height | 2.6 m | 2.6 m |", ""))
    run_together = "Grade to EN 1646-1 1 2\n\n"
    said = "Only the 6.0 is sold as a winterised van, and it carries Grade III to EN 1646-1. The 5.4 carries Grade II."
    path = tmp_path / "tusk.md"
    path.write_text(
        f"# Marrowfen Tusk 2026\n\n{table}\n{run_together}{said}\n\nMarrowfen Ltd, 4 Mill Lane\n", encoding="utf-8"
    )
    grades = {(f.model, f.value) for f in read_file(path).found.facts if f.field == "en_grade" and not f.rejected}
    assert grades == {("Tusk 6.0", 3.0), ("Tusk 5.4", 2.0)}


THREE = """# Marrowfen Drift 2026

{sentence}

| | Drift S | Drift M | Drift L |
|---|---|---|---|
| Länge | 5,41 m | 5,99 m | 6,36 m |
| Gesamtgewicht | 3.300 kg | 3.500 kg | 4.000 kg |
| Schlafplätze | 2 | 2 | 4 |
"""


@pytest.mark.parametrize(
    "sentence",
    [
        "Auf Frost haben wir beim M und beim L eine Antwort: Beide sind wintertauglich.",
        "Der Drift M ist ein Wagen für zwei. Der Drift L ist der für vier. Beide sind wintertauglich.",
    ],
)
def test_both_of_three_vans_are_the_two_named_before(facts_of, sentence):
    facts = facts_of(THREE.format(sentence=sentence), "drift.md")
    assert {f.model for f in facts if f.field == "season_claim" and not f.rejected} == {"Drift M", "Drift L"}


@pytest.mark.parametrize(
    ("language", "sentence"),
    [
        ("en", "Water pipes run inside the living space on the 19 and in the double floor on the 21."),
        ("en", "The water lines are inside the living space in the 19, in the double floor in the 21."),
        ("fr", "Les conduites d'eau passent à l'intérieur sur le 19 et dans le double plancher sur le 21."),
        ("de", "Die Wasserleitungen liegen im Drift 19 im Wohnraum und im Drift 21 im Doppelboden."),
    ],
)
def test_places_and_vans_take_turns(settled_of, language, sentence):
    rows = settled_of(ROWS[language] + sentence + "\n", name="brochure.md")
    stated = {model[-2:]: value_of(row) for (model, field, _), row in rows.items() if field == "water_lines_location"}
    assert stated == {"19": "interior", "21": "enclosed"}


@pytest.mark.parametrize(
    ("language", "text"),
    [
        ("de", "Der Drift 21 ist der warme. Er erfüllt die Klasse 3 nach EN 1646-1, der 19 die Klasse 2."),
    ],
)
def test_behind_a_comma_an_article_begins_what_is_told_of_the_sister(settled_of, language, text):
    rows = settled_of(ROWS[language] + text + "\n", name="brochure.md")
    stated = {model[-2:]: value_of(row) for (model, field, _), row in rows.items() if field == "en_grade"}
    assert stated == {"19": 2, "21": 3}


def test_what_a_text_would_not_say_of_others_is_of_the_van_before(facts_of):
    text = (
        ROWS["en"]
        + "The Drift 19 is our smallest. The Drift 21 is the winter version. It stood for two nights in a cold "
        "store at −18 °C with its taps working, and we would not say that of the Drift 19.\n"
    )
    cold = {fact.model: fact.value for fact in facts_of(text) if fact.field == "rated_min_temp_c"}
    assert cold == {"Drift 21": -18}
