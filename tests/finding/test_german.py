"""German tables and prose: units behind "in", abbreviations, whom a pronoun or a bracket means."""

import pytest

TABLE = """Marrowfen GmbH

Rauhtann
Modelljahr 2026

| | 541 | 599 | 636 Nord |
|---|---|---|---|
| Länge / Breite / Höhe in cm | 541 / 205 / 258 | 599 / 205 / 258 | 636 / 205 / 281 |
| Zul. Gesamtmasse in kg | 3.300 | 3.500 | 3.880 |
| Schlafplätze | 2 | 2 | 3 |
| Frischwasser / Abwasser in l | 100 / 75 | 110 / 90 | 120 / 95 |
| Heizung | Luftheizung, Diesel | Gasheizung | Warmwasserheizung, Diesel |
| Heizleistung in kW¹ | 0,9–2,2 | 4,4 | 5,5 |

¹ Abgegebene Wärme; beim 599 Nennwärmebelastung des Brenners.
"""


def by_van(facts, field):
    return {fact.model.removeprefix("Rauhtann "): fact.value for fact in facts if fact.field == field}


def test_units_behind_in_hold_for_bare_figures(facts_of):
    facts = facts_of(TABLE)
    assert by_van(facts, "height_mm") == {"541": 2580, "599": 2580, "636 Nord": 2810}
    assert by_van(facts, "gvwr_kg") == {"541": 3300, "599": 3500, "636 Nord": 3880}
    assert by_van(facts, "gray_tank_l") == {"541": 75, "599": 90, "636 Nord": 95}


def test_a_note_on_one_van_goes_before_the_label(facts_of):
    facts = facts_of(TABLE)
    assert by_van(facts, "heater_output_w") == {"541": 2200, "636 Nord": 5500}
    assert by_van(facts, "heater_input_w") == {"599": 4400}


def test_a_pronoun_means_the_van_named_last(facts_of):
    prose = (
        "\nDer 541 ist für den Feierabend, der 599 für den Urlaub. Er hat 125 Liter Frischwasser an Bord, sagt man.\n"
    )
    stated = {(f.model, f.value) for f in facts_of(TABLE + prose) if f.field == "fresh_tank_l" and f.how == "prose"}
    assert stated == {("Rauhtann 599", 125)}


def test_a_claim_that_the_others_do_not_share_is_of_one_van(facts_of):
    prose = (
        "\nDer 636 Nord bleibt draußen. Er ist ganzjahrestauglich, die beiden anderen sind es nicht, und das ist gut.\n"
    )
    assert by_van(facts_of(TABLE + prose), "season_claim") == {"636 Nord": "ganzjahrestauglich"}


def test_a_bracket_at_the_end_of_a_line_names_the_vans_of_the_whole_line(facts_of):
    options = """
## Sonderausstattung

- zweite Lithiumbatterie, zusammen 240 Ah (599)
- Heizmatte 12 V am Abwassertank (541, 599)
"""
    facts = facts_of(TABLE + options)
    assert by_van(facts, "battery_chemistry") == {"599": "lithium"}
    assert by_van(facts, "gray_tank_heat") == {"541": "electric_pad", "599": "electric_pad"}


def test_never_to_be_covered_is_no_absent_tank(facts_of):
    facts = facts_of(TABLE + "\nAbgaskamin von Schnee freihalten, den Kohlenmonoxidwarner nie abdecken.\n")
    assert 0 not in by_van(facts, "gray_tank_l").values()


def test_words_made_of_boiler_and_of_what_keeps_a_tank_warm(states):
    states("DE", "Elektroboiler 8 l", {"water_heater_l": 8})
    states("DE", "Abwassertank: Isolierschale", {"gray_tank_insulated": True})
    states("DE", "Frischwassertank mit Isolierschale", {"fresh_tank_insulated": True})


@pytest.mark.parametrize(
    ("row", "field", "values"),
    [
        ("Entleerungs-Set Winter | Serie", "winterizing_bypass", {True}),
        ("Isolierte Hecktürabdeckung | Serie", "rear_shades_insulated", {True}),
        ("Heizung | Diesel-Kombiheizung mit Elektroheizstab", "heater_fuel", {"diesel", "electric"}),
        ("Diesel-Zusatztank, gesamt 150 l | 990 €", "fuel_tank_l", {150}),
        ("Diesel-Zusatztank, 30 l | 990 €", "fuel_tank_l", set()),
        ("Holme | thermisch von der Verkleidung entkoppelt", "thermal_break", {True}),
    ],
)
def test_words_of_price_lists_for_what_keeps_a_van_warm(facts_of, row, field, values):
    head = "# Drift 21\n\nMarrowfen GmbH, Modelljahr 2026\n\n| Länge | 5,99 m |\n|---|---|\n| Schlafplätze | 2 |\n"
    facts = facts_of(f"{head}| {row} |\n", "van.md")
    assert {fact.value for fact in facts if fact.field == field} == values


def test_what_takes_the_place_of_the_standard_part_at_extra_cost_is_an_option(states):
    line = "Lithium-Batterie mit 200 Ah anstelle der Serienbatterie gegen Aufpreis."
    states("DE", line, {"battery_ah": ("option", 200), "battery_chemistry": ("option", "lithium")})


@pytest.mark.parametrize(
    ("line", "expected"),
    [
        ("Isolierte Hecktürrollos", {"rear_shades_insulated": True}),
        ("Isolierende Fahrerhausplissees", {"cab_shades_insulated": True}),
        ("Abwassertank über Warmwasserkreis beheizt", {"gray_tank_heat": "hydronic"}),
        ("Höhe über alles in cm: 261", {"height_mm": 2610}),
    ],
)
def test_german_words_joined_to_one(states, line, expected):
    states("DE", line, expected)


def test_a_price_in_euros_that_the_legend_explains_makes_bare_figures_prices(facts_of):
    text = (
        "# Marrowfen Drift 2026\n\nS = Serie, Preis in Euro = auf Wunsch, entfällt = nicht lieferbar\n\n"
        "| | Drift 19 | Drift 21 |\n|---|---|---|\n| Gesamtlänge | 5,90 m | 6,40 m |\n"
        "| Gesamtgewicht | 3.500 kg | 3.500 kg |\n| Frischwassertank | 90 l | 120 l |\n"
        "| Abwassertank isoliert | 240 | S |\n| Fußbodenheizung | entfällt | 680 |\n"
    )
    told = {(f.field, f.model, f.availability) for f in facts_of(text, "drift.md") if f.value is True}
    assert told == {
        ("gray_tank_insulated", "Drift 19", "optional"),
        ("gray_tank_insulated", "Drift 21", "standard"),
        ("heated_floor", "Drift 19", "not_available"),
        ("heated_floor", "Drift 21", "optional"),
    }


@pytest.mark.parametrize("said", ["Das ist unser wintertaugliches Modell.", "Es gilt als wintertauglicher Wagen."])
def test_a_claim_before_a_noun_is_told_without_its_ending(states, said):
    states("DE", said, {"season_claim": "wintertauglich"})
