"""Values of one label that semicolons part, each of its van; sentences behind a label that vans or offers head."""

import pytest

HEADS = {
    "en": """Marrowfen Drift 19 and Drift 21, 2026

Overall length: 5.41 m (Drift 19); 5.99 m (Drift 21).
Wheelbase: 3.45 m (Drift 19); 4.04 m (Drift 21).
GVWR: 3500 kg (Drift 19); 4250 kg (Drift 21).
""",
    "de": """Marrowfen Drift 19 und Drift 21, 2026

Gesamtlänge: 5,41 m (Drift 19); 5,99 m (Drift 21).
Radstand: 3,45 m (Drift 19); 4,04 m (Drift 21).
Gesamtmasse: 3500 kg (Drift 19); 4250 kg (Drift 21).
""",
    "fr": """Marrowfen Drift 19 et Drift 21, 2026

Longueur : 5,41 m (Drift 19) ; 5,99 m (Drift 21).
Empattement : 3,45 m (Drift 19) ; 4,04 m (Drift 21).
PTAC : 3500 kg (Drift 19) ; 4250 kg (Drift 21).
""",
}
LINES = {
    "Base vehicle: Ombrek Ferryman 25 (Drift 19); Ombrek Ferryman 35 (Drift 21).": (
        "en",
        "chassis",
        {("19", "Ombrek Ferryman 25", "standard"), ("21", "Ombrek Ferryman 35", "standard")},
    ),
    "Gray tank insulation: 25 mm foam jacket on the tank (Drift 21); not available on Drift 19.": (
        "en",
        "gray_tank_insulated",
        {("19", True, "not_available"), ("21", True, "standard")},
    ),
    "Abwassertankisolierung: Schaummantel, 25 mm (Drift 21); nicht lieferbar für Drift 19.": (
        "de",
        "gray_tank_insulated",
        {("19", True, "not_available"), ("21", True, "standard")},
    ),
    "Thermal break between ribs and lining: Drift 19: no; Drift 21: yes.": (
        "en",
        "thermal_break",
        {("19", False, "standard"), ("21", True, "standard")},
    ),
    "Insulated rear door shades: Drift 19: optional; Drift 21: supplied.": (
        "en",
        "rear_shades_insulated",
        {("19", True, "optional"), ("21", True, "standard")},
    ),
    "Fußbodenheizung: Drift 19: keine; Drift 21: Serie.": (
        "de",
        "heated_floor",
        {("19", False, "standard"), ("21", True, "standard")},
    ),
    "Plancher chauffant : Drift 19 : en option ; Drift 21 : de série.": (
        "fr",
        "heated_floor",
        {("19", True, "optional"), ("21", True, "standard")},
    ),
    "Thermal break between ribs and lining: Drift 21 only; not available on Drift 19.": (
        "en",
        "thermal_break",
        {("19", True, "not_available"), ("21", True, "standard")},
    ),
    "Inverter: OPTION, 1500 W (Drift 19); 3000 W standard (Drift 21).": (
        "en",
        "inverter_w",
        {("19", 1500, "optional"), ("21", 3000, "standard")},
    ),
    "Solar array: 200 W (Drift 19); 400 W (Drift 21). OPTION, Drift 19: 400 W.": (
        "en",
        "solar_w",
        {("19", 200, "standard"), ("19", 400, "optional"), ("21", 400, "standard")},
    ),
    "Solaranlage: 200 W (Drift 19); 400 W (Drift 21). Option, Drift 19: 400 W.": (
        "de",
        "solar_w",
        {("19", 200, "standard"), ("19", 400, "optional"), ("21", 400, "standard")},
    ),
    "Panneaux solaires : 200 W (Drift 19) ; 400 W (Drift 21). En option, Drift 19 : 400 W.": (
        "fr",
        "solar_w",
        {("19", 200, "standard"), ("19", 400, "optional"), ("21", 400, "standard")},
    ),
    "Gray tank heating, Drift 21: electric pad, 12 V. Drift 19: not heated; electric pad is an OPTION.": (
        "en",
        "gray_tank_heat",
        {("19", "none", "standard"), ("19", "electric_pad", "optional"), ("21", "electric_pad", "standard")},
    ),
}


@pytest.mark.parametrize("line", LINES)
def test_each_clause_is_of_its_van(facts_of, line):
    language, field, told = LINES[line]
    facts = facts_of(f"{HEADS[language]}{line}\n")
    assert {(fact.model[-2:], fact.value, fact.availability) for fact in facts if fact.field == field} == told
