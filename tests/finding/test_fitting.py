"""For which vans an option is: a column of its own says so, a number at the end of the item, or "both"."""

import pytest

VANS = """# Marrowfen Drift 2026

| | Drift 5 | Drift 7 | Drift 7 Frost |
|---|---|---|---|
| Length | 5.4 m | 6.0 m | 6.0 m |
| Berths | 2 | 2 | 2 |
| Wheelbase | 3,450 mm | 4,035 mm | 4,035 mm |
| Waste water | 60 l | 80 l | 80 l |

## Extras at extra cost

"""
EXTRAS = """| Extra | Price | {head} |
|---|---|---|
| Solar panel, 115 W | £640 | 5 |
| 12 V heater for the waste tank | £265 | 5 and 7 |
| Inverter, 1,200 W | £420 | Drift 7 Frost |
| Tow bar | £870 | {everyone} |
| Rising roof with bed, sleeps 4 | £5,400 | {everyone} |
"""


def options(facts, field):
    return {(fact.model, fact.availability, fact.value) for fact in facts if fact.field == field and fact.found_by}


@pytest.mark.parametrize(("head", "everyone"), [("Fits", "All"), ("For models", "All models"), ("Suits", "all")])
def test_each_option_is_only_for_the_vans_named_in_its_row(facts_of, head, everyone):
    facts = facts_of(VANS + EXTRAS.format(head=head, everyone=everyone), "extras.md")
    assert options(facts, "solar_w") == {("Drift 5", "optional", 115)}
    assert {van for van, _, _ in options(facts, "gray_tank_heat")} == {"Drift 5", "Drift 7"}
    assert options(facts, "inverter_w") == {("Drift 7 Frost", "optional", 1200)}
    assert {van for van, kind, _ in options(facts, "sleeps") if kind == "optional"} == {
        "Drift 5", "Drift 7", "Drift 7 Frost"
    }  # fmt: skip


def test_a_column_that_names_no_vans_throughout_is_no_such_column(facts_of):
    table = EXTRAS.format(head="Fits", everyone="roofs only")
    assert {van for van, _, _ in options(facts_of(VANS + table, "extras.md"), "solar_w")} > {"Drift 5"}


NUMBERED = """# Marrowfen Drift 2026

| | Drift 19 | Drift 22 |
|---|---|---|
| Length | 5.9 m | 6.4 m |
| Berths | 2 | 2 |
| Wheelbase | 3,450 mm | 4,035 mm |

## Options

- Solar, 380 W in all, 19
- Inverter 3,000 W, 19 and 22
- Insulated rear door covers, 22
"""


def test_a_number_that_ends_an_item_of_a_list_names_the_van(facts_of):
    facts = facts_of(NUMBERED, "options.md")
    assert options(facts, "solar_w") == {("Drift 19", "optional", 380)}
    assert {van for van, _, _ in options(facts, "inverter_w")} == {"Drift 19", "Drift 22"}
    assert {van for van, _, _ in options(facts, "rear_shades_insulated")} == {"Drift 22"}


def test_both_means_the_two_vans_spoken_of(facts_of):
    text = VANS.replace(
        "## Extras at extra cost", "We took the Drift 5 and the Drift 7 Frost into a cold hall. In both, "
    )
    facts = facts_of(text.rstrip() + " the dump valves sit in a heated bay.\n", "leaflet.md")
    assert {fact.model for fact in facts if fact.field == "dump_valve_protection"} == {"Drift 5", "Drift 7 Frost"}


PACKAGES = """
| Package | Contents | Drift 5 | Drift 7 | Drift 7 Frost |
|---|---|---|---|---|
| November | 12 V heater for the waste tank, insulated waste tank | £410 | £410 | included |
| Far | Solar 320 W in all, inverter 1,800 W | not available | £2,150 | included |
"""


def test_what_a_package_holds_is_to_be_had_as_the_cells_beside_it_say(facts_of):
    facts = facts_of(VANS + PACKAGES, "packages.md")
    assert options(facts, "inverter_w") == {
        ("Drift 5", "not_available", 1800), ("Drift 7", "optional", 1800), ("Drift 7 Frost", "standard", 1800)
    }  # fmt: skip
    heated = {(van, kind) for van, kind, _ in options(facts, "gray_tank_heat")}
    assert heated == {("Drift 5", "optional"), ("Drift 7", "optional"), ("Drift 7 Frost", "standard")}


SIGNS = """# Marrowfen Tarn 2026

| | S2 | S4 | X4 |
|---|---|---|---|
| Length | 5.41 m | 5.99 m | 6.36 m |
| MTPLM | 3300 kg | 3500 kg | 3500 kg |
| Sleeps | 2 | 4 | 4 |

## Equipment

| | S2 | S4 | X4 |
|---|---|---|---|
| **Windows and blinds** | | | |
| Insulated thermal screens for the cab | O | S | S |
| Insulated covers for the rear doors | – | O | S |

S standard   O extra cost option   – not available
"""


def test_signs_that_are_letters_of_vans_too_are_signs(facts_of):
    facts = facts_of(SIGNS, "guide.md")
    said = {van[-2:]: how for van, how, _ in options(facts, "rear_shades_insulated")}
    assert said == {"S2": "not_available", "S4": "optional", "X4": "standard"}
