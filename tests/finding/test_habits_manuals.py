"""What owner's manuals say beside data: how far to fill, what a mat takes, what must be done in frost."""

import pytest

HEAD = {
    "en": "# Marrowfen Tusk\n\nOwner's manual, model year 2027\n\n- Length: 5.99 m\n- GVWR: 3500 kg\n- Sleeps: 2\n\n",
    "fr": "# Marrowfen Tusk\n\nNotice d’utilisation, modèle 2027\n\n- Longueur : 5,99 m\n- PTAC : 3 500 kg\n"
    "- Couchages : 2\n\n",
}


@pytest.mark.parametrize(
    ("language", "text", "field", "values"),
    [
        ("fr", "Le réservoir d’eau propre contient 95 litres ; pour rouler, ne le remplissez qu’à 20 litres.",
         "fresh_tank_l", {95}),
        ("en", "The fresh water tank holds 95 litres; for the road fill it only to 20 litres.", "fresh_tank_l", {95}),
        ("fr", "Le chauffage est au gaz. La résistance de 12 V du réservoir d’eaux usées se commande au panneau. "
         "Elle consomme 60 W.", "heater_power_draw_w", set()),
        ("fr", "Extrait : eau, chauffage, énergie", "heater_type", set()),
        ("fr", "Le coffre reçoit deux bouteilles de 6 kg.", "propane_mass_kg", {12}),
        ("fr", "Le Tusk est un véhicule toutes saisons, mais un réservoir non chauffé doit être vidé.", "season_claim",
         {"toutes saisons"}),
        ("fr", "Nous avons prévu le véhicule pour des températures extérieures jusqu’à −10 °C.", "rated_min_temp_c",
         {-10}),
        ("fr", "Les conduites passent elles aussi à l’intérieur.", "water_lines_location", {"interior"}),
        ("en", "- Berths: 2 (3 with the child bed)", "sleeps", {2, 3}),
    ],
)  # fmt: skip
def test_what_a_manual_says_beside_its_data(facts_of, language, text, field, values):
    facts = facts_of(f"{HEAD[language]}{text}\n", "manual.md")
    assert {fact.value for fact in facts if fact.field == field and not fact.rejected} == values
