"""Columns of prices and codes beside the vans, and a price that is the whole van's."""

import pytest

MARKED = """Marrowfen Drift 2026

F fitted  A accessory, at extra cost
X not available for this model

| Equipment | Drift 19 | Drift 21 | {price} |
|---|---|---|---|
| Overall length | 5.90 m | 6.40 m | |
| GVM | 3500 kg | 4250 kg | |
| Fresh water tank | 90 L | 120 L | |
| Grey tank heating pad, 12 V | X | A | $420 |
| Insulated grey tank | A | F | $260 |
| Heated floor | F | X | |
"""


def offers(facts, field):
    return {fact.model: fact.availability for fact in facts if fact.field == field and not fact.rejected}


@pytest.mark.parametrize("price", ["RRP", "Euro", "€", "$", "Price"])
def test_a_column_of_prices_is_no_van_and_says_nothing_of_one(facts_of, price):
    facts = facts_of(MARKED.format(price=price))
    assert offers(facts, "gray_tank_heat") == {"Drift 19": "not_available", "Drift 21": "optional"}
    assert {fact.model for fact in facts} == {"Drift 19", "Drift 21"}


def test_letters_of_a_legend_that_goes_on_below_are_known_an_a_among_them(facts_of):
    facts = facts_of(MARKED.format(price="RRP"))
    assert offers(facts, "gray_tank_insulated") == {"Drift 19": "optional", "Drift 21": "standard"}
    assert offers(facts, "heated_floor") == {"Drift 19": "standard", "Drift 21": "not_available"}


CODED = """Marrowfen Drift 2026

| Equipment | Drift 19 | Drift 21 |
|---|---|---|
| Overall length | 5.90 m | 6.40 m |
| GVWR | 3500 kg | 4250 kg |
| Fresh water tank | 90 L | 120 L |
| Insulated gray tank | {code} | {code} |
| Wall insulation R-value | R-5 | R-11 |
"""


@pytest.mark.parametrize("code", ["W1", "K", "QX-7"])
def test_a_code_that_nothing_explains_does_not_make_a_thing_standard(facts_of, code):
    facts = facts_of(CODED.format(code=code))
    assert not offers(facts, "gray_tank_insulated")
    assert set(offers(facts, "insulation_r_si")) == {"Drift 19", "Drift 21"}


def test_the_price_of_a_used_van_makes_none_of_its_equipment_optional(facts_of):
    facts = facts_of(
        "# Marrowfen Drift 21\n\n£49,995 was £51,995\n\nModel year: 2021\n\n## Specification\n\n"
        "Overall length: 6.40 m\n\nMTPLM: 3500 kg\n\nFresh water: 100 litres\n\nGrey tank: 70 litres, insulated\n"
    )
    assert set(offers(facts, "fresh_tank_l").values()) == {"standard"}
    assert set(offers(facts, "gray_tank_insulated").values()) == {"standard"}
