"""Negations, hedges and questions: nothing is denied that the document does not deny."""

import pytest

DENIED = [
    ("US", "Gray tank: neither insulated nor heated", {"gray_tank_insulated": False, "gray_tank_heat": "none"}),
    ("US", "The gray tank is neither insulated nor heated.", {"gray_tank_insulated": False, "gray_tank_heat": "none"}),
    (
        "FR",
        "La cuve d'eaux usées n'est ni isolée ni chauffée.",
        {"gray_tank_insulated": False, "gray_tank_heat": "none"},
    ),
    ("FR", "Cuve eaux usées : ni isolée ni chauffée", {"gray_tank_insulated": False, "gray_tank_heat": "none"}),
    ("DE", "Abwassertank: weder isoliert noch beheizt", {"gray_tank_insulated": False, "gray_tank_heat": "none"}),
    (
        "DE",
        "Der Abwassertank ist weder isoliert noch beheizt.",
        {"gray_tank_insulated": False, "gray_tank_heat": "none"},
    ),
    ("US", "Shore power: 50 A? No, 30 A", {"shore_power_a": 30}),
    ("US", "Shore power 50 A? No, 30 A.", {"shore_power_a": 30}),
    ("US", "Prepared for solar panels, 200 W", {}),
    ("US", "Solar: prepared for 200 W", {}),
    ("DE", "Solaranlage 120 W: vorbereitet", {}),
    ("FR", "Prédisposition panneau solaire 120 W", {}),
    ("US", "Lithium battery 200 Ah: available soon", {}),
    ("US", "Available soon: lithium battery, 200 Ah", {}),
    ("US", "Solar: 200 W, if equipped", {"solar_w": ("option", 200)}),
    ("US", "Black tank (if equipped): 10 gal", {"black_tank_l": ("option", 37.854)}),
    ("US", "The van is winterized right now and stored in a barn.", {}),
    ("US", "No black tank", {"black_tank_l": 0}),
    ("FR", "Pas de toilettes", {"toilet": "none"}),
    ("DE", "Kein Wechselrichter", {"inverter_w": 0}),
    ("US", "Gray tank heat: none", {"gray_tank_heat": "none"}),
    ("US", "Gray tank heat: n/a", {}),
    ("US", "Gray tank heat: TBD", {}),
    ("US", "Black tank: —", {}),
    ("US", "Inverter: not available", {}),
    ("US", "Gray insulation: 1 in foam jacket", {"gray_tank_insulated": True}),
    ("US", "Gray tank insulation: 1 in foam jacket", {"gray_tank_insulated": True}),
    ("UK", "Waste tank insulation: 25 mm foam jacket", {"gray_tank_insulated": True}),
    ("DE", "Abwassertank Isolierung: 20 mm Schaummantel", {"gray_tank_insulated": True}),
    ("FR", "Isolation cuve eaux usées : jaquette mousse 25 mm", {"gray_tank_insulated": True}),
    ("US", "Water lines: insulated with 1/2 in foam sleeves", {"water_lines_insulated": True}),
]

ASKED = [
    ("US", "Is the gray tank heated? Ask your dealer.", {}),
    ("US", "Heated floor? Ask your dealer.", {}),
    ("US", "Is there a black tank? No.", {}),
    ("US", "No inverter, no generator, no worries.", {"inverter_w": 0}),
    ("US", "There is no room for a second battery of 100 Ah.", {}),
    ("US", "The van does not heat the gray tank.", {"gray_tank_heat": "none"}),
    (
        "US",
        "It has a 12 V heat pad on the fresh tank and neither heats nor insulates the gray tank.",
        {"fresh_tank_heat": "electric_pad", "gray_tank_insulated": False, "gray_tank_heat": "none"},
    ),
    ("US", "It neither heats nor insulates the gray tank.", {"gray_tank_insulated": False, "gray_tank_heat": "none"}),
    ("DE", "Der Wagen beheizt den Abwassertank nicht.", {"gray_tank_heat": "none"}),
    (
        "DE",
        "Der Abwassertank ist nicht beheizt, die Leitungen sind isoliert.",
        {"gray_tank_heat": "none", "water_lines_insulated": True},
    ),
    ("FR", "Le fourgon ne chauffe pas la cuve d'eaux usées.", {"gray_tank_heat": "none"}),
    ("FR", "La cuve d'eaux usées n'est pas chauffée.", {"gray_tank_heat": "none"}),
    ("US", "Waste tank jacketing: no", {}),
    ("US", "Black tank flush: no", {}),
    ("US", "Black tank rinse kit: none", {}),
    ("US", "Toilet fan: no", {}),
    ("US", "Solar controller: none", {}),
    ("US", "Propane detector: no", {}),
    ("US", "Inverter remote: no", {}),
    ("US", "Water heater bypass: no", {"winterizing_bypass": False}),
    ("FR", "Réservoir d'eau propre calorifugé : non", {"fresh_tank_insulated": False}),
    ("FR", "Réchauffage du réservoir d'eaux usées : non", {"gray_tank_heat": "none"}),
    ("DE", "Schutzgitter Abwassertank: nein", {}),
    ("US", "Gray tank\nnot included", {}),
    ("US", "Inverter: option, 2000 W", {"inverter_w": ("option", 2000)}),
    ("US", "Optional: 2000 W inverter", {"inverter_w": ("option", 2000)}),
    ("US", "0 gal gray tank", {"gray_tank_l": 0}),
    ("US", "Propane: none on board", {"propane_tank_l": 0}),
    ("DE", "Gas: gasfrei", {"propane_tank_l": 0}),
    ("US", "All-electric: no propane on board", {"propane_tank_l": 0}),
    ("US", "Heater ready for winter", {}),
    ("US", "Wired for 400 W of solar", {}),
    ("US", "Heated tanks coming soon", {}),
    ("US", "Gray tank heat pads will be available from 2028.", {}),
    ("FR", "Batterie lithium 200 Ah bientôt disponible", {}),
    ("DE", "Beheizter Abwassertank: demnächst", {}),
]


@pytest.mark.parametrize(("region", "line", "expected"), DENIED)
def test_only_what_is_denied_is_denied(states, region, line, expected):
    states(region, line, expected)


@pytest.mark.parametrize(("region", "line", "expected"), ASKED)
def test_questions_hedges_and_unknown_labels_deny_nothing(states, region, line, expected):
    states(region, line, expected)


def test_what_a_missing_thing_would_belong_to_is_not_missing(settled_of):
    rows = settled_of(
        "# Marrowfen Drift 21\n\nModelljahr 2026\n\n- Länge: 5,99 m\n- Gesamtgewicht: 3.500 kg\n- Schlafplätze: 2\n\n"
        "## Nicht vorhanden\n\n- Beheizung des Abwassertanks\n- Isolierung des Abwassertanks\n"
        "- Spülung des Fäkaltanks\n- Wechselrichter\n",
        name="blatt.md",
    )
    stated = {field: row.num if row.num is not None else row.flag for (_, field, _), row in rows.items()}
    assert stated["gray_tank_insulated"] is False
    assert stated["inverter_w"] == 0
    assert not {"gray_tank_l", "black_tank_l"} & stated.keys()


def test_a_van_called_n_has_its_tanks(facts_of):
    text = (
        "Marrowfen Drift 64 N\n\nLongueur : 5,99 m\n\nCouchages : 2\n\n"
        "Le Drift 64 N a un réservoir eau propre de 127 litres et a un réservoir eaux usées de 125 litres.\n"
    )
    sizes = {(fact.field, fact.value) for fact in facts_of(text) if fact.field in ("fresh_tank_l", "gray_tank_l")}
    assert sizes == {("fresh_tank_l", 127), ("gray_tank_l", 125)}


def test_a_denial_at_the_end_leaves_what_another_tank_has(states):
    line = "Der Drift hält den Trinkwassertank mit einer 12-V-Heizmatte frostfrei und beheizt den Abwassertank nicht."
    states("DE", line, {"fresh_tank_heat": "electric_pad", "gray_tank_heat": "none"})


def test_what_none_of_them_does_is_not_so(states):
    states("US", "Water lines run inside the cabin, none of them outdoors", {"water_lines_location": "interior"})
    states("US", "On the Drift 21 neither gray tank is heated.", {"gray_tank_heat": "none"})


@pytest.mark.parametrize(
    ("region", "line"),
    [
        ("FR", "- Réchauffage du réservoir non eau propre"),
        ("DE", "- Beheizung nein Abwassertank"),
    ],
)
def test_an_answer_amid_a_broken_label_denies_no_thing_behind_it(printed, region, line):
    assert not {field for field, value in printed(region, line).items() if field.endswith("_tank_l")}
