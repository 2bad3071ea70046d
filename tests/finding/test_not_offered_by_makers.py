"""What a maker is said not to offer, in a list behind a colon, cannot be had."""

import pytest

TEXTS = {
    "en": (
        "# Marrowfen Drift 21\n\nOverall length: 5.99 m\n\nGVWR: 4250 kg\n\nWheelbase: 4.04 m\n\n",
        "Marrowfen does not offer: double glazing, an electric heating mat for the gray tank, underfloor heating.",
    ),
    "de": (
        "# Marrowfen Drift 21\n\nGesamtlänge: 5,99 m\n\nGesamtmasse: 4250 kg\n\nRadstand: 4,04 m\n\n",
        "Marrowfen bietet nicht an: Doppelverglasung, Fußbodenheizung, elektrische Heizmatte am Abwassertank.",
    ),
    "fr": (
        "# Marrowfen Drift 21\n\nLongueur : 5,99 m\n\nPTAC : 4250 kg\n\nEmpattement : 4,04 m\n\n",
        "Marrowfen ne propose pas : double vitrage, plancher chauffant, tapis chauffant électrique des eaux usées.",
    ),
}


@pytest.mark.parametrize("language", TEXTS)
def test_what_a_maker_does_not_offer_cannot_be_had(facts_of, language):
    facts = facts_of("".join(TEXTS[language]), "page.md")
    told = {(f.field, f.availability) for f in facts if f.field in ("window_glazing", "heated_floor", "gray_tank_heat")}
    assert told == {(name, "not_available") for name in ("window_glazing", "heated_floor", "gray_tank_heat")}
