"""What comes at a price without the word option: upgrades, headings in the plural, totals behind "soit"."""

import pytest

from tests.finding.conftest import HEADS

CASES = [
    ("US", "Inverter upgrade: 2,000 W", {"inverter_w": ("option", 2000)}),
    ("US", "Solar upgrade: 380 W", {"solar_w": ("option", 380)}),
    ("DE", "Weitere Optionen\n\n- Wechselrichter 1.800 W", {"inverter_w": ("option", 1800)}),
    ("FR", "Options\n\n- Seconde batterie, soit 220 Ah, 1 350 €", {"battery_ah": ("option", 220)}),
]


@pytest.mark.parametrize(("region", "line", "stated"), CASES)
def test_upgrades_are_had_as_options(printed, region, line, stated):
    assert printed(region, line) == stated


WITHHELD = [
    ("US", "Inverter upgrade, 2,000 W: not available"),
    ("US", "Solar upgrade to 380 W: not available"),
    ("US", "Lithium upgrade, 200 Ah: not offered"),
    ("FR", "Seconde batterie en option, soit 220 Ah : non proposé"),
]


@pytest.mark.parametrize(("region", "line"), WITHHELD)
def test_an_option_that_is_not_available_is_not_to_be_had(printed, region, line):
    assert not any(printed(region, line).values())


def test_a_french_heater_is_told_by_what_it_warms(printed):
    assert printed("FR", "Chauffage : à eau, gazole") == {"heater_type": "hydronic", "heater_fuel": "diesel"}
    assert printed("FR", "Chauffage : à air, gazole") == {"heater_type": "forced_air", "heater_fuel": "diesel"}


@pytest.mark.parametrize("offer", ["All-wheel drive: not available", "All-wheel drive: optional, $9,400"])
def test_the_wheels_driven_as_delivered_stay_beside_others_that_are_offered(settled_of, offer):
    text = HEADS["US"].values()
    base = "The van is built on the long Quarnell Porter with a diesel engine and front-wheel drive.\n"
    rows = settled_of("\n".join(text) + "\n\n" + base + "\n\n- Solar: 200 W\n- " + offer + "\n")
    driven = {row.text for (_, field, equipment), row in rows.items() if (field, equipment) == ("drive", "standard")}
    assert driven == {"front"}


def test_gasoil_is_what_a_french_heater_burns(states):
    states("FR", "Chauffage : air pulsé, gasoil", {"heater_type": "forced_air", "heater_fuel": "diesel"})
