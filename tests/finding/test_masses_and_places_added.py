"""Figures that tell what was weighed, places that are added one by one, and signs beside prices."""

import pytest

ROWS = ("Overall length", "Gross weight", "Wheelbase", "Fuel tank")
VANS = """# Marrowfen Drift 2026

|  | Drift 21 | Drift 24 |
|---|---|---|
| Overall length | 5.9 m | 6.4 m |
| Gross weight | 3300 kg | 3500 kg |
| Wheelbase | 3450 mm | 4035 mm |
| Fuel tank | 75 l | 90 l |
"""


@pytest.mark.parametrize(
    ("region", "line", "untold"),
    [
        ("US", "Weights used: gasoline 6.1 lbs./gal., water 8.3 lbs./gal., LP gas 4.2 lbs./gal.", "propane_mass_kg"),
        ("DE", "Mit Fahrer (75 kg), 90 % Kraftstoff, 20 l Frischwasser und einer Gasflasche gewogen.", "fresh_tank_l"),
        ("UK", "- In running order: driver, 20 litres fresh water, full gas bottle", "fresh_tank_l"),
        ("FR", "Avec conducteur (75 kg), 20 l d’eau propre et carburant à 90 %.", "fresh_tank_l"),
        ("US", "- Insect screen and shade cassettes at all windows", "toilet"),
        ("UK", "- Roller blinds in slim cassettes", "toilet"),
    ],
)
def test_what_is_weighed_or_rolls_up_is_no_equipment(printed, region, line, untold):
    assert untold not in printed(region, f"\n{line}\n")


@pytest.mark.parametrize(
    ("rows", "label", "answers"),
    [
        (ROWS, "Jump cushion (sleeps a third person)", "Not available | Option"),
        (ROWS, "Cross bed (3rd berth)", "Not available | Option"),
        (("Gesamtlänge", "Zulässiges Gesamtgewicht", "Radstand", "Kraftstofftank"), "Querbett vorn (3. Schlafplatz)",
         "nicht lieferbar | Option"),
        (("Longueur hors tout", "Masse maximale", "Empattement", "Réservoir de carburant"), "Lit avant (3e couchage)",
         "non disponible | en option"),
    ],
)  # fmt: skip
def test_a_further_place_is_counted_to(facts_of, rows, label, answers):
    text = f"{VANS}| {label} | {answers} |\n"
    for own, here in zip(ROWS, rows, strict=True):
        text = text.replace(own, here)
    told = {
        (fact.model, fact.availability, fact.value) for fact in facts_of(text, "drift.md") if fact.field == "sleeps"
    }
    assert told == {("Drift 21", "not_available", 3), ("Drift 24", "optional", 3)}


def test_a_letter_behind_two_signs_is_explained_too(facts_of):
    text = (
        f"{VANS}\n| Equipment | Drift 21 | Drift 24 |\n|---|---|---|\n| Solar panel 110 W | X | £560 |\n"
        "| Inverter 1500 W | £480 | ✓ |\n| Insulated waste tank | X | ✓ |\n\n"
        "✓ standard    £ option at extra cost, with VAT    X not to be had on this van\n"
    )
    told = {(fact.model, fact.field): fact.availability for fact in facts_of(text, "drift.md")}
    assert told["Drift 21", "solar_w"] == told["Drift 21", "gray_tank_insulated"] == "not_available"
    assert told["Drift 24", "solar_w"] == "optional"


def test_an_option_whose_label_has_the_figure_is_not_standard_too(facts_of):
    text = (
        f"{VANS}| Pop-top with bed (sleeps 4) | Option | 4,900 |\n| Power pack 200 Ah, inverter 1500 W | Option | – |\n"
    )
    told = [
        (fact.field, fact.availability, fact.value) for fact in facts_of(text, "drift.md") if fact.model == "Drift 21"
    ]
    assert [one for one in told if one[0] == "sleeps"] == [("sleeps", "optional", 4)]
    assert [one for one in told if one[0] == "inverter_w"] == [("inverter_w", "optional", 1500)]


def test_a_dash_for_no_entry_denies_nothing(facts_of):
    text = f"{VANS}| Hot water | – | 10 l |\n\nA dash means that the line has no entry for that van.\n"
    told = {fact.model for fact in facts_of(text, "drift.md") if fact.field == "water_heater_l"}
    assert told == {"Drift 24"}


@pytest.mark.parametrize(
    ("region", "line", "field", "value"),
    [
        ("US", "- Fresh water: 38 gal, of which 5 gal in reserve", "fresh_tank_l", 144),
        ("DE", "- Frischwasser: 140 l, davon 20 l als Reserve", "fresh_tank_l", 140),
        ("US", "- Furnace draw, high fan: 34 W", "heater_power_draw_w", 34),
        ("DE", "- Isolierblenden für die Hecktüren", "rear_shades_insulated", True),
        ("DE", "- Isolierung der Wände: 20 mm Schaumstoffmatte", "insulation_material", "foam_sheet"),
        ("US", "The 3.5 L V6 runs on regular gasoline.", "engine_fuel", "gasoline"),
    ],
)
def test_ordinary_wordings_of_vans(printed, region, line, field, value):
    told = printed(region, f"\n{line}\n")[field]
    assert (round(told) if isinstance(told, float) else told) == value


def test_what_can_be_ordered_at_the_factory_is_no_standard_equipment(facts_of):
    text = (
        "# Marrowfen Drift 21\n\nModelljahr 2026\n\nGesamtlänge: 5,99 m\n\n## Wahlausstattung ab Werk\n\n"
        "Drift 21: Solarmodul 120 W (590 €) · Wechselrichter 1500 W (720 €)\n"
    )
    offers = {fact.availability for fact in facts_of(text, "drift.md") if fact.field in ("solar_w", "inverter_w")}
    assert offers == {"optional"}
