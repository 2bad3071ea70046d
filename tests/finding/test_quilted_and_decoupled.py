"""Further wordings: quilted covers, decoupled linings, cables and mats that heat, axles in pairs, "diesel-free"."""

import pytest

LINES = [
    ("US", "Quilted covers for the windshield: standard", {"cab_shades_insulated": True}),
    ("UK", "Quilted screens for the rear doors: standard", {"rear_shades_insulated": True}),
    ("DE", "Gesteppte Matten für die Fahrerhausscheiben: Serie", {"cab_shades_insulated": True}),
    ("FR", "Rideaux matelassés pour la cabine : de série", {"cab_shades_insulated": True}),
    ("UK", "Insulation: foil-faced foam board", {"insulation_material": "reflective_foil+rigid_foam"}),
    ("DE", "Entkoppelte Verkleidung: Serie", {"thermal_break": True}),
    ("DE", "Wasserleitungen mit Heizkabel: Serie", {"water_lines_heated": True}),
    ("DE", "Entleerungs- und Ausblasset für den Winter: Serie", {"winterizing_bypass": True}),
    ("US", "Electric floor mat, 12 V: standard", {"heated_floor": True}),
    ("UK", "Driven axle: front and rear", {"drive": "all"}),
    ("DE", "Antrieb: vorne und hinten", {"drive": "all"}),
    ("FR", "Roues motrices : avant et arrière", {"drive": "all"}),
    ("US", "Dump valve: exposed behind the rear axle", {"dump_valve_protection": "exposed"}),
    ("US", "Black tank: 12 gal, in the belly bay", {"black_tank_l": 45.425, "black_tank_location": "enclosed"}),
    ("US", "Heater: diesel-free hydronic, propane", {"heater_type": "hydronic", "heater_fuel": "propane"}),
    ("UK", "The Drift is fully winterised.", {"season_claim": "fully winterised"}),
]


@pytest.mark.parametrize(("region", "line", "expected"), LINES)
def test_a_line_states_this_and_nothing_else(states, region, line, expected):
    states(region, line, expected)
