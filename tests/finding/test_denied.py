"""What "no" denies: among options that one is to be had, of a label that names a kind this kind alone."""

import pytest


def told(facts, field):
    return {(fact.model, fact.value, fact.availability) for fact in facts if fact.field == field}


OPTIONS = """# Marrowfen Drift 2026

| Options | Drift 19 | Drift 21 |
|---|---|---|
| Heated floor | no | $900 |
| Inverter 2000 W | $400 | none |

| Equipment | Drift 19 | Drift 21 |
|---|---|---|
| Sleeps | 2 | 3 |
| Overall length | 5.99 m | 6.36 m |
| Thermal break | no | yes |
| Toilet cassette | 18 L | none |
"""


def test_no_in_a_table_of_options_says_that_an_option_is_not_to_be_had(facts_of):
    facts = facts_of(OPTIONS, "options.md")
    assert told(facts, "heated_floor") == {("Drift 19", True, "not_available"), ("Drift 21", True, "optional")}
    assert told(facts, "inverter_w") == {("Drift 19", 2000, "optional"), ("Drift 21", 2000, "not_available")}
    assert told(facts, "thermal_break") == {("Drift 19", False, "standard"), ("Drift 21", True, "standard")}


def test_a_van_without_a_cassette_may_have_another_toilet(facts_of):
    assert told(facts_of(OPTIONS, "options.md"), "toilet") == {("Drift 19", "cassette", "standard")}


def test_of_two_signs_before_an_item_the_one_that_the_legend_explains_counts(facts_of):
    text = "# Marrowfen Drift 19 2026\n\n● fitted · ○ on request · – not available\n\n- ● Heated floor\n"
    facts = facts_of(f"{text}- ○ Inverter 1500 W\n- – Solar panels 200 W\n- ● Sleeps 2\n", "signs.md")
    found = {fact.field: fact.availability for fact in facts}
    assert (found["heated_floor"], found["inverter_w"], found["solar_w"]) == ("standard", "optional", "not_available")


def test_stops_of_units_end_no_label(facts_of):
    lines = [
        "Marrowfen Drift 19 2026", "", "Fuel tank (engine) [U.S. gal]: 20", "Gray / fresh water (U.S. gal): 20 / 30",
        "Height / width / length: 9 ft. 6 in. / 6 ft. 9 in. / 19 ft. 0 in.", "Hot water storage [U.S. gal]: 2.5",
    ]  # fmt: skip
    found = {fact.field: round(fact.value, 1) for fact in facts_of("\n".join(lines)) if fact.num is not None}
    assert (found["fuel_tank_l"], found["gray_tank_l"], found["fresh_tank_l"]) == (75.7, 75.7, 113.6)
    assert (found["height_mm"], found["width_mm"], found["length_mm"]) == (2895.6, 2057.4, 5791.2)
    assert found["water_heater_l"] == 9.5


BASE = "# Marrowfen Drift 19 2026\n\n{sleeps}: 2\n\n{length}: 5.99 m\n\n"


def values(facts):
    skipped = ("model", "maker", "model_year", "sleeps", "length_mm")
    return {(fact.field, fact.value) for fact in facts if fact.field not in skipped}


def test_short_items_of_a_list_say_what_a_van_does_without(facts_of):
    english = BASE.format(sleeps="Sleeps", length="Length") + "- No inverter\n- Without solar\n- No toilet\n- Awning\n"
    assert values(facts_of(english, "en.md")) == {("inverter_w", 0), ("solar_w", 0), ("toilet", "none")}
    french = BASE.format(sleeps="Couchages", length="Longueur") + "- Sans onduleur\n- Pas de toilettes\n- Store\n"
    assert values(facts_of(french, "fr.md")) == {("inverter_w", 0), ("toilet", "none")}
    german = BASE.format(sleeps="Schlafplätze", length="Länge") + "- Ohne Toilette\n- Kein Wechselrichter\n- Markise\n"
    assert values(facts_of(german, "de.md")) == {("inverter_w", 0), ("toilet", "none")}


def test_what_is_not_needed_or_only_missing_for_a_while_is_not_absent(facts_of):
    english = "- Without shore power, the fridge runs for two days\n- You need no inverter for the sockets\n"
    assert values(facts_of(BASE.format(sleeps="Sleeps", length="Length") + english, "en.md")) == set()
    german = "- Für die Steckdosen braucht es keinen Wechselrichter\n- Ohne Landstrom hält der Kühlschrank zwei Tage\n"
    assert values(facts_of(BASE.format(sleeps="Schlafplätze", length="Länge") + german, "de.md")) == set()
    french = "- Sans prise de quai, le réfrigérateur tient deux jours\n"
    assert values(facts_of(BASE.format(sleeps="Couchages", length="Longueur") + french, "fr.md")) == set()


def test_the_letter_of_a_vans_code_denies_nothing(facts_of):
    text = (
        BASE.format(sleeps="Couchages", length="Longueur").replace("Drift 19", "Drift 25 N") + "Eau propre : 90 l\n\n"
    )
    text += "PTAC : 3 500 kg\n\nLe Drift 25 N chauffe le réservoir d'eaux usées par une gaine d'air chaud.\n"
    assert ("gray_tank_heat", "warm_air") in values(facts_of(text, "code.md"))


@pytest.mark.parametrize(
    ("head", "said"),
    [
        ("millésime 2026\n\n| Couchages | 2 |\n|---|---|\n| Longueur | 5,99 m |\n| Eau propre | 90 l |",
         "Les bouteilles de gaz ne sont pas fournies."),
        ("Modelljahr 2026\n\n| Schlafplätze | 2 |\n|---|---|\n| Länge | 5,99 m |\n| Frischwassertank | 90 l |",
         "Mobile Gasheizungen dürfen innen nicht verwendet werden."),
        ("model year 2026\n\n| Sleeps | 2 |\n|---|---|\n| Length | 5.99 m |",
         "Gas-free means gas-free: please do not use portable propane heaters inside."),
    ],
)  # fmt: skip
def test_what_comes_without_its_bottles_or_is_not_to_be_used_is_told_of_no_van(facts_of, head, said):
    facts = facts_of(f"# Marrowfen Drift 19, {head}\n\n{said}\n", "van.md")
    assert {fact.field for fact in facts}.isdisjoint({"propane_tank_l", "heater_fuel", "heater_type"})
