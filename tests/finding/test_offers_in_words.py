"""Tables that say in words, or by a letter among signs, on which van a thing is standard and on which an option."""

import pytest

HEAD = """# Orrimoss Pintail 2026

| | Pintail 21 | Pintail 24 | Pintail 27 |
|---|---|---|---|
| Overall length | 5.41 m | 5.99 m | 6.36 m |
| Fresh water | 90 L | 95 L | 110 L |
| Sleeps | 2 | 2 | 4 |
"""


def availability(facts, field):
    return {fact.model: str(fact.availability) for fact in facts if fact.field == field}


def test_not_applicable_denies_where_a_table_only_says_what_is_standard_and_what_an_option(facts_of):
    table = """
| | Pintail 21 | Pintail 24 | Pintail 27 |
|---|---|---|---|
| Insulated water lines | Standard | N/A | OPT |
| Heated floor | N/A | OPT | Standard |
| Winterizing kit | OPT | Standard | N/A |
"""
    facts = facts_of(HEAD + "\nWhat is on which van\n" + table, "pintail.md")
    told = {"Pintail 21": "standard", "Pintail 24": "not_available", "Pintail 27": "optional"}
    assert availability(facts, "water_lines_insulated") == told
    assert availability(facts, "heated_floor")["Pintail 21"] == "not_available"


def test_not_applicable_among_figures_says_nothing(facts_of):
    table = """
| | Pintail 21 | Pintail 24 | Pintail 27 |
|---|---|---|---|
| Winterizing kit | Standard | N/A | Optional |
| Heated water lines | Standard | N/A | Standard |
| Solar | 100 W | 200 W | 300 W |
| Inverter | 1,000 W | N/A | 2,000 W |
"""
    facts = facts_of(HEAD + "\nEquipment\n" + table, "pintail.md")
    assert "Pintail 24" not in availability(facts, "water_lines_heated")
    assert "Pintail 24" not in availability(facts, "inverter_w")


def test_a_letter_between_two_signs_of_a_legend_is_a_sign(facts_of):
    table = """
• standard equipment · O optional · — not offered

| | Pintail 21 | Pintail 24 | Pintail 27 |
|---|---|---|---|
| Composting toilet | O | • | — |
| Heated floor | — | O | • |
| Winterizing kit | O | O | O |
"""
    facts = facts_of(HEAD + "\nEquipment by model\n" + table, "pintail.md")
    told = {"Pintail 21": "optional", "Pintail 24": "standard", "Pintail 27": "not_available"}
    assert availability(facts, "toilet") == told
    assert set(availability(facts, "winterizing_bypass").values()) == {"optional"}


def test_removable_insulation_of_cab_windows_is_their_cover(facts_of):
    text = """# Orrimoss Pintail 2026

| | Pintail 21 | Pintail 24 |
|---|---|---|
| Longueur hors tout | 5,41 m | 5,99 m |
| Réservoir d'eau propre | 90 l | 95 l |
| Couchages | 2 | 4 |
| Isolation amovible des vitres de cabine | non | De série |
"""
    facts = facts_of(text, "pintail.md")
    told = {fact.model: fact.value for fact in facts if fact.field == "cab_shades_insulated"}
    assert told == {"Pintail 21": False, "Pintail 24": True}


def test_an_option_in_brackets_offers_all_of_them_and_a_sign_of_chemistry_is_no_thousand(facts_of):
    table = """
| | Pintail 21 | Pintail 24 |
|---|---|---|
| House battery | LiFePO4 150 Ah, heated | gel 315 Ah (flooded lead-acid 450 Ah, 12 V, with cover optional) |
"""
    facts = facts_of(HEAD + table, "pintail.md")
    found = {(f.model, f.field, f.value): str(f.availability) for f in facts if f.field.startswith("battery")}
    assert found["Pintail 21", "battery_ah", 150] == "standard"
    assert found["Pintail 24", "battery_ah", 315] == found["Pintail 24", "battery_chemistry", "gel"] == "standard"
    assert found["Pintail 24", "battery_ah", 450] == found["Pintail 24", "battery_chemistry", "flooded"] == "optional"


@pytest.mark.parametrize(
    ("region", "line", "expected"),
    [
        ("US", "Inverter: option (1,000 W)", {"inverter_w": ("option", 1000)}),
        ("FR", "Panneau solaire : en option (140 W)", {"solar_w": ("option", 140)}),
        ("DE", "Wechselrichter: Serie (2.000 W)", {"inverter_w": 2000}),
        ("US", "WHAT YOU ADDED\n\n- Heated floor, $2,000", {"heated_floor": ("option", True)}),
    ],
)
def test_what_stands_behind_an_option_in_brackets_or_under_what_a_customer_added_is_optional(
    printed, region, line, expected
):
    assert printed(region, line) == expected


def test_what_is_not_offered_is_so_in_two_letters_too(states):
    states("US", "Second solar panel, 380 W in all: n/o", {"solar_w": None})


@pytest.mark.parametrize("label", ["Height, top of A/C", "Height to top of A/C", "Height to top of a/c"])
def test_a_height_to_the_top_of_what_is_on_the_roof(states, label):
    states("US", f"{label}: 9 ft 5 in", {"height_mm": 2870})


def test_the_electrics_of_a_towbar_are_no_fuel_of_the_engine(facts_of):
    table = """
## Engine and vehicle

| | Pintail 21 | Pintail 24 | Pintail 27 |
|---|---|---|---|
| Wheelbase | 3.45 m | 3.80 m | 4.03 m |
| Towbar with electrics, 13-pin | O | O | O |
"""
    assert not [fact for fact in facts_of(HEAD + table, "pintail.md") if fact.field == "engine_fuel"]


@pytest.mark.parametrize(
    ("head", "line"),
    [
        ("Longueur hors tout : 5,99 m\nPTAC : 3 500 kg\n", "Plancher chauffant électrique : non dispo."),
        ("Overall length: 21 ft\nGVWR: 9,350 lb\n", "Heated floor: not avail."),
        ("Gesamtlänge: 5,99 m\nZulässiges Gesamtgewicht: 3.500 kg\n", "Fußbodenheizung: nicht lieferb."),
    ],
)
def test_not_available_in_short_is_no_stated_absence(facts_of, head, line):
    facts = facts_of(f"Marrowfen Drift 21\n\n2026\n\n{head}\n{line}\n")
    assert {(f.value, f.availability) for f in facts if f.field == "heated_floor"} == {(True, "not_available")}


def test_what_a_list_offers_to_who_wants_more_is_an_option(facts_of):
    lines = "Length: 21 ft\nGVWR: 9,350 lb\nSolar: 370 W\n\n## If you want more\n\n- Second solar panel, 740 W in all\n"
    facts = facts_of(
        f"# Marrowfen Drift 21\n\nModel year 2026\n\n{lines}- Electric pad under the fresh tank\n", "van.md"
    )
    assert {f.value: f.availability for f in facts if f.field == "solar_w"} == {370: "standard", 740: "optional"}
    assert {f.availability for f in facts if f.field == "fresh_tank_heat"} == {"optional"}


def test_a_paragraph_of_things_with_their_prices_in_brackets_is_a_list_of_options(settled_of):
    text = (
        "Marrowfen Vans\nMarrowfen Drift 21\nModel year 2026\nLength: 21 ft\nHouse battery: 2 x 100 Ah AGM\n"
        "Drive: rear\n\nOptions on this van: lithium battery, 206 Ah, in place of the AGM pair ($2,450); second panel, "
        "200 W in all ($610); insulated rear door covers ($290); AWD ($7,900).\n"
    )
    rows = settled_of(text)
    found = {field: row.availability for (_, field, equipment), row in rows.items() if equipment == "optioned"}
    for field in ("battery_ah", "battery_chemistry", "solar_w", "rear_shades_insulated", "drive"):
        assert found[field] == "optional", field


def test_vans_and_their_prices_behind_a_colon_say_which_of_them_can_have_a_thing(facts_of):
    text = (
        "# Marrowfen 2026\n\n| | Drift Short | Drift Long | Drift Long AWD |\n|---|---|---|---|\n"
        "| Length | 5.41 m | 5.99 m | 5.99 m |\n| GVWR | 3100 kg | 3500 kg | 3500 kg |\n| Sleeps | 2 | 2 | 2 |\n\n"
        "## Extra equipment\n\n- All-wheel drive: Drift Long, $8,200\n"
        "- Lifting roof with bed, sleeps four: Drift Long, $14,900; not available on Drift Long AWD\n"
        "- Floor heat on the coolant loop: Drift Long and Drift Long AWD, $1,700\n"
        "- Insulated covers for the cab glass: Drift Short, $360; Drift Long AWD, included\n"
    )
    said = {}
    for fact in facts_of(text, "line.md"):
        if fact.availability != "standard" or fact.field == "cab_shades_insulated":
            said.setdefault(fact.field, {})[fact.model] = fact.availability
    assert said == {
        "drive": {"Drift Long": "optional"},
        "sleeps": {"Drift Long": "optional", "Drift Long AWD": "not_available"},
        "heated_floor": {"Drift Long": "optional", "Drift Long AWD": "optional"},
        "cab_shades_insulated": {"Drift Short": "optional", "Drift Long AWD": "standard"},
    }
