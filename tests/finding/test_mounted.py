"""The base vehicle that running text only says a van stands on."""

import pytest


@pytest.mark.parametrize(
    ("region", "line", "chassis"),
    [
        ("US", "A Drift begins as a new 2026 Kelmar Drover 250, which we fetch ourselves.", "Kelmar Drover 250"),
        ("US", "Both start as a gas-engined Kelmar Drover 3500.", "Kelmar Drover 3500"),
        ("UK", "It is built, like all of ours, on the Kelmar Cargo with the 2.2 diesel.", "Kelmar Cargo"),
        ("AU", "Below it is the same Kelmar Cargo 30 with the 2.0-litre diesel engine.", "Kelmar Cargo 30"),
        ("FR", "Il est monté sur un Kelmar Cargo 35 neuf, diesel 140 ch.", "Kelmar Cargo 35"),
        ("DE", "Gebaut wird er auf dem Kelmar Lasto 3.0 mit Heckantrieb.", "Kelmar Lasto 3.0"),
        ("DE", "Basisfahrzeug ist der Kelmar Lasto.", "Kelmar Lasto"),
        ("DE", "Alle Fahrzeuge auf Kelmar Lasto. Preise in Euro.", "Kelmar Lasto"),
        ("DE", "Er misst 5,98 m, ruht auf dem Kelmar Lasto 3.5 und hat zwei Betten.", "Kelmar Lasto 3.5"),
        ("UK", "Every Drift rides on the Kelmar Drover 3500 and carries our promise.", "Kelmar Drover 3500"),
        ("US", "It stands on the Kelmar Cargo 319, and each year brings changes.", "Kelmar Cargo 319"),
        ("FR", "Il mesure 5,99 m et roule sur un Kelmar Trafic 35.", "Kelmar Trafic 35"),
    ],
)
def test_what_an_engine_or_the_drive_follows_is_the_base_vehicle(printed, region, line, chassis):
    assert printed(region, line)["chassis"] == chassis


@pytest.mark.parametrize(
    "line",
    [
        "We showed it on the Fell Moor Fair with the diesel heater running.",
        "Come and see it on the Hythe Long Quay, with coffee.",
        "Heating starts as soon as the Winter Pack is on.",
        "It rides on Marrow Tyres with a two-year warranty.",
        "Our showroom stands on Hythe Street North until May.",
    ],
)
def test_another_name_is_none(printed, line):
    assert "chassis" not in printed("UK", line)


def test_the_name_of_a_van_is_none(facts_of):
    text = (
        "# Marrow Drift\n\n| | Drift 19 | Drift 21 |\n|---|---|---|\n| Length | 19 ft | 21 ft |\n| Sleeps | 2 | 3 |\n\n"
    )
    facts = facts_of(text + "A wider bed is on the Drift 21 with the diesel engine.\n", "drift.md")
    assert not [fact for fact in facts if fact.field == "chassis"]


def test_a_base_vehicle_in_a_list_goes_on_with_what_kind_of_van_it_is(printed):
    line = "- Kelmar Drover 350 cargo van, 3.0 L turbo-diesel"
    assert printed("US", line) == {"chassis": "Kelmar Drover 350", "engine_fuel": "diesel"}


@pytest.mark.parametrize("line", ["Marrow Conversions LLC Sawpit Lane, Hythe", "Penny Lane Conversions, 4 Mill Road"])
def test_where_a_company_that_converts_vans_lives_is_no_base_vehicle(printed, line):
    assert "chassis" not in printed("US", line)


def test_what_a_van_is_a_conversion_of_is_its_base_vehicle(printed):
    assert printed("UK", "It is a conversion of the Kelmar Drover 350.")["chassis"] == "Kelmar Drover 350"
