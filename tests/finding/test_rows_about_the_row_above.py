"""Rows whose label only asks where, or how warm: they speak of what the row above is about."""

import pytest

ROWS = {
    "en": ("Length", "GVWR", "Fresh tank", "Gray tank", "where and how warm", "in the cabin, unheated",
           "under the floor, 12 V pad"),
    "de": ("Länge", "Gesamtmasse", "Frischwassertank", "Abwassertank", "wo und wie beheizt", "innen, unbeheizt",
           "unterflur, 12-V-Heizmatte"),
    "fr": ("Longueur", "PTAC", "Réservoir d'eau propre", "Réservoir d'eaux grises", "où et comment chauffé",
           "à l'intérieur, non chauffé", "sous le plancher, tapis chauffant 12 V"),
}  # fmt: skip


@pytest.mark.parametrize("language", list(ROWS))
def test_where_below_a_tank_is_where_that_tank_is(settled_of, language):
    length, mass, fresh, gray, where, inside, below = ROWS[language]
    table = [("", "Drift 19", "Drift 22"), ("---",) * 3,
             (length, "5.41 m", "5.99 m"), (mass, "3500 kg", "4250 kg"),
             (fresh, "70 L", "100 L"), (where, inside, inside),
             (gray, "60 L", "90 L"), (where, below, below)]  # fmt: skip
    lines = "\n".join(f"| {' | '.join(row)} |" for row in table)
    rows = settled_of(f"Marrowfen Vans\n\n# Drift 2026\n\n{lines}\n", name="chart.md")
    told = {field: rows["Drift 19", field, "standard"].text for field in (
        "fresh_tank_location", "fresh_tank_heat", "gray_tank_location", "gray_tank_heat")}  # fmt: skip
    assert told == {
        "fresh_tank_location": "interior", "fresh_tank_heat": "none",
        "gray_tank_location": "underbody", "gray_tank_heat": "electric_pad",
    }  # fmt: skip


@pytest.mark.parametrize(("region", "line"), [
    ("AU", "Heater consumption, electric (W): 36"), ("DE", "Heizung: Verbrauch elektrisch 36 W"),
    ("FR", "Chauffage, consommation électrique : 36 W"),
])  # fmt: skip
def test_what_a_heater_draws_is_not_its_fuel(printed, region, line):
    assert printed(region, line) == {"heater_power_draw_w": 36}
