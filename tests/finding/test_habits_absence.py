"""Nothing is said to be absent that the document does not say is absent: no "no", "none" or 0 of its own."""

import pytest

ABSENT = [
    ("DE", "Entleeren Sie einen unbeheizten Abwassertank vor dem Frost.", {}),
    ("US", "Drain an unheated gray tank before it freezes.", {}),
    ("FR", "Videz un réservoir d’eaux grises non chauffé avant le gel.", {}),
    ("US", "No black tank on board", {"black_tank_l": 0}),
    ("US", "There is no inverter.", {"inverter_w": 0}),
    ("US", "AC inverter, W: not fitted", {"inverter_w": 0}),
    ("AU", "DC-AC inverter: none", {"inverter_w": 0}),
    ("US", "No heated floor", {"heated_floor": False}),
    ("US", "Thermal break at the ribs: none", {"thermal_break": False}),
    ("US", "Gray tank heating system: none", {"gray_tank_heat": "none"}),
    ("DE", "Wasserleitungen beheizt: nein", {"water_lines_heated": False}),
    ("DE", "Thermische Trennung der Holme: nein", {"thermal_break": False}),
    ("FR", "Cordon chauffant sur les conduites d’eau : non", {"water_lines_heated": False}),
    ("FR", "Tuyaux d’eau isolés : non", {"water_lines_insulated": False}),
    ("FR", "Pas de toilettes à bord", {"toilet": "none"}),
    ("US", "An inverter is not included.", {"inverter_w": 0}),
    ("US", "Insulated cab shades are not included.", {"cab_shades_insulated": False}),
    ("US", "There is no heating of the water lines.", {"water_lines_heated": False}),
    ("DE", "Die Kocher sind elektrisch. Einen Wechselrichter gibt es nicht.", {"inverter_w": 0}),
    ("DE", "Ein Fäkaltank ist nicht eingebaut.", {"black_tank_l": 0}),
    ("DE", "Eine Fußbodenheizung gibt es nicht.", {"heated_floor": False}),
    ("DE", "Isolierte Wasserleitungen gibt es nicht.", {"water_lines_insulated": False}),
    ("DE", "Der Grauwassertank hat keine Heizung.", {"gray_tank_heat": "none"}),
    ("FR", "Aucun panneau solaire n'est monté.", {"solar_w": 0}),
    ("FR", "La cuve d'eaux usées n'a pas de chauffage.", {"gray_tank_heat": "none"}),
    ("FR", "Isolation amovible des vitres de cabine : non", {"cab_shades_insulated": False}),
    ("FR", "SANS : plancher chauffant, convertisseur, porte-vélos", {"heated_floor": False, "inverter_w": 0}),
    ("FR", "Ce qu'il n'y a pas : panneaux solaires et store", {"solar_w": 0}),
    ("UK", "What it lacks: a heated floor, an awning", {"heated_floor": False}),
    ("US", "NO: inverter / solar panels / roof rack", {"inverter_w": 0, "solar_w": 0}),
    ("US", "Missing: awning, black tank. Everything else works.", {"black_tank_l": 0}),
    ("DE", "Was er nicht hat: Fußbodenheizung, Markise oder Wechselrichter", {"heated_floor": False, "inverter_w": 0}),
    ("DE", "OHNE: Fäkaltank, Markise", {"black_tank_l": 0}),
    ("UK", "NOT FITTED\n\nheated floor, inverter, awning", {"heated_floor": False, "inverter_w": 0}),
]
OF_SOMETHING_ELSE = [
    ("US", "No inverter remote."),
    ("US", "Inverter remote: no"),
    ("US", "Additional solar: none"),
    ("US", "Shore power adapter: none"),
    ("US", "Gray tank heating unit: none"),
    ("US", "No better solar in its class."),
    ("US", "No solar panel is as quiet."),
    ("US", "You need no propane for the cooktop."),
    ("US", "Camp without propane refills for a week."),
    ("US", "Without shore power the fridge runs on the battery."),
    ("US", "There is no need for underfloor heating."),
    ("US", "Water heater bypass valve label: none"),
    ("UK", "Mains lead: none"),
    ("UK", "Waste tank heater control: none"),
    ("DE", "Toilettenlüfter: nein"),
    ("DE", "Kein Wechselrichter der Klasse ist leiser."),
    ("DE", "Ohne Landstrom läuft der Kühlschrank über die Batterie."),
    ("DE", "Kein Gasflaschenwechsel im Winter."),
    ("DE", "Einen besseren Wechselrichter gibt es nicht."),
    ("DE", "Einen Wechselrichter gibt es nicht ohne Aufpreis."),
    ("DE", "Ein zweiter Wechselrichter ist nicht eingebaut."),
    ("FR", "Pas de panneau solaire plus léger."),
    ("FR", "Sans prise extérieure, le frigo marche sur batterie."),
    ("FR", "Ventilateur de toilettes : non"),
    ("FR", "Manque : la notice du convertisseur, une clé"),
    ("US", "Missing: the inverter manual, one solar panel clamp"),
    ("US", "Without: how the inverter is used when nobody is there."),
]


@pytest.mark.parametrize("region, line, expected", ABSENT, ids=[line for _, line, _ in ABSENT])
def test_what_is_said_to_be_absent_is_absent(states, region, line, expected):
    states(region, line, expected)


@pytest.mark.parametrize("region, line", OF_SOMETHING_ELSE, ids=[line for _, line in OF_SOMETHING_ELSE])
def test_what_is_denied_of_something_else_says_nothing(states, region, line):
    states(region, line, {})


@pytest.mark.parametrize(
    ("region", "heading", "line"),
    [
        ("US", "Not in our program", "- Heated floor"),
        ("UK", "What we do not build", "- Heated floor"),
        ("US", "You cannot have", "- Heated floor"),
        ("DE", "Nicht im Angebot", "- Fußbodenheizung"),
        ("DE", "Was wir nicht bauen", "- Fußbodenheizung"),
        ("FR", "Pas au catalogue", "- Plancher chauffant"),
        ("FR", "Ce que nous ne faisons pas", "- Plancher chauffant"),
    ],
)
def test_what_a_heading_says_is_not_made_is_not_to_be_had(printed, region, heading, line):
    assert printed(region, line)["heated_floor"] is True
    assert printed(region, f"## {heading}\n\n{line}")["heated_floor"] is False


@pytest.mark.parametrize(
    ("region", "wall", "floor"),
    [
        ("US", "| Wall insulation | 1 in stone wool |", "| Floor | not insulated |"),
        ("DE", "| Wanddämmung | 20 mm Steinwolle |", "| Boden | ungedämmt |"),
        ("FR", "| Isolation des parois | 20 mm laine de roche |", "| Plancher | non isolé |"),
    ],
)
def test_a_surface_said_not_to_be_insulated_below_one_that_is_is_not(printed, region, wall, floor):
    assert printed(region, f"| | |\n|---|---|\n{wall}\n{floor}\n")["insulated_surfaces"] == "walls"
