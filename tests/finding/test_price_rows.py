"""Small tables below a list that say of each van what all of the list costs, or whether it comes with it."""

import pytest

HEAD = """# Marrowfen Drift 2026

The Drift 19 and the Drift 21.

## Drift 19

- Overall length 5.90 m
- GVM 3500 kg
- Gray tank of 80 L below the floor
- 100 Ah AGM battery

## Drift 21

- Overall length 6.40 m
- GVM 4250 kg
- Gray tank of 95 L in a heated bay
- 200 Ah lithium battery

"""
PACKS = """## Rimefast

{slogan}

- 12 V pad under the gray tank
- Insulated shades for the cab

{first}
"""
ROWS = "| | |\n|---|---|\n| Drift 19 | {} |\n| Drift 21 | {} |\n"
COLUMNS = "| Price | Drift 19 | Drift 21 |\n|---|---|---|\n| Price | {} | {} |\n"


def offers(facts, field):
    return {fact.model: fact.availability for fact in facts if fact.field == field and not fact.rejected}


@pytest.mark.parametrize("slogan", ["", "Warm it without watching it."])
def test_rows_of_vans_and_prices_below_a_list_hold_for_its_items(facts_of, slogan):
    text = HEAD + PACKS.format(slogan=slogan, first=ROWS.format("$3,950", "included"))
    facts = facts_of(text)
    assert offers(facts, "gray_tank_heat")["Drift 19"] == "optional"
    assert offers(facts, "cab_shades_insulated") == {"Drift 19": "optional", "Drift 21": "standard"}


def test_columns_of_vans_with_prices_below_a_list_hold_for_its_items(facts_of):
    facts = facts_of(HEAD + PACKS.format(slogan="", first=COLUMNS.format("not offered", "$3,950")))
    assert offers(facts, "cab_shades_insulated") == {"Drift 19": "not_available", "Drift 21": "optional"}


def test_rows_with_prices_of_whole_vans_say_nothing_of_the_list_above_them(facts_of):
    facts = facts_of(HEAD + PACKS.format(slogan="", first=ROWS.format("$113,950", "$124,500")))
    assert set(offers(facts, "cab_shades_insulated").values()) == {"standard"}


def test_rows_that_tell_more_than_prices_say_nothing_of_the_list_above_them(facts_of):
    facts = facts_of(HEAD + PACKS.format(slogan="", first=ROWS.format("400 W of solar", "$950")))
    assert set(offers(facts, "cab_shades_insulated").values()) == {"standard"}


def test_a_line_amid_lists_that_says_who_has_a_thing_holds_for_the_list_below_it_alone(facts_of):
    text = (
        HEAD + "## Standard on both\n\n- Winterizing bypass\n- Insulated shades for the cab\n\n"
        "Standard on the Drift 21, not available on the Drift 19\n\n- Thermal break on every rib\n- Heated floor\n"
    )
    facts = facts_of(text)
    assert offers(facts, "cab_shades_insulated") == {"Drift 19": "standard", "Drift 21": "standard"}
    assert offers(facts, "thermal_break") == {"Drift 19": "not_available", "Drift 21": "standard"}
