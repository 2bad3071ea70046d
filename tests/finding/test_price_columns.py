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


OFFERED = """Marrowfen Drift 2026

F fitted  A accessory, at extra cost

| Equipment | Drift 19 | Drift 21 | Drift 23 | RRP |
|---|---|---|---|---|
| Overall length | 5.90 m | 6.40 m | 6.90 m | |
| GVM | 3500 kg | 4250 kg | 4250 kg | |
| Lithium battery, 200 Ah in all | A | F | F (400 Ah) | $2,150 |
| Grey tank heating pad, 12 V | A | not offered | not offered | $420 |
"""


def test_a_sign_with_a_figure_of_its_own_gives_that_van_the_figure_in_place_of_the_labels(facts_of):
    facts = facts_of(OFFERED)
    amounts = {(f.model, f.value, f.availability) for f in facts if f.field == "battery_ah" and not f.rejected}
    assert amounts == {
        ("Drift 19", 200, "optional"),
        ("Drift 21", 200, "standard"),
        ("Drift 23", 400, "standard"),
    }
    words = {f.printed for f in facts if f.field == "battery_ah" and f.model == "Drift 23"}
    assert words == {"Lithium battery, 200 Ah in all: F (400 Ah)"}


def test_a_price_beside_vans_of_which_words_say_whether_they_have_it_says_nothing_of_them(facts_of):
    pads = {(f.model, f.availability) for f in facts_of(OFFERED) if f.field == "gray_tank_heat"}
    assert pads == {("Drift 19", "optional"), ("Drift 21", "not_available"), ("Drift 23", "not_available")}


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


def test_a_line_that_says_from_what_the_prices_of_vans_start_makes_nothing_an_option(facts_of):
    vans = "".join(f"## Drift {code}\n\n- Length: {length}\n- Sleeps: 2\n- Solar: 100 W\n\n" for code, length in
                   (("19", "5.90 m"), ("21", "6.40 m")))  # fmt: skip
    facts = facts_of(f"# Marrowfen Drift 2026\n\n{vans}Drift prices from £64,300 (19) and £68,900 (21).\n")
    assert set(offers(facts, "length_mm").values()) == {"standard"}


def test_what_is_listed_under_add_it_to_a_van_is_an_option_of_it(facts_of):
    text = MARKED.format(price="RRP") + "\n## Add it to a Drift 19\n\n- 3,000 W inverter\n"
    assert offers(facts_of(text), "inverter_w") == {"Drift 19": "optional"}


PACKS = """# Marrowfen Drift 2026

Drift 19 and Drift 21

| | Drift 19 | Drift 21 |
|---|---|---|
| Overall length | 5.90 m | 6.40 m |
| GVM | 3500 kg | 4250 kg |
| Fresh water tank | 90 L | 120 L |

## Packs and prices

Winter pack Drift 19: $1,290 Drift 21: standard

- Grey tank insulated
- Heated floor

Sun pack Drift 19: not available Drift 21: $900

- 200 W solar panel

Delivered with every van

- Water lines insulated
"""


def test_a_line_that_names_a_pack_with_a_price_for_each_van_holds_for_the_list_below_it_alone(facts_of):
    facts = facts_of(PACKS)
    assert offers(facts, "gray_tank_insulated") == {"Drift 19": "optional", "Drift 21": "standard"}
    assert offers(facts, "heated_floor") == {"Drift 19": "optional", "Drift 21": "standard"}
    assert offers(facts, "solar_w") == {"Drift 19": "not_available", "Drift 21": "optional"}
    assert offers(facts, "water_lines_insulated") == {"Drift 19": "standard", "Drift 21": "standard"}


HEAD = """# Marrowfen Drift 2026

| | Drift 19 | Drift 21 |
|---|---|---|
| Overall length | 5.90 m | 6.40 m |
| GVM | 3500 kg | 4250 kg |
| Fresh water tank | 90 L | 120 L |

"""


@pytest.mark.parametrize(
    ("line", "expected"),
    [
        ("Floor heating, electric, $1,190", "optional"),
        ("Floor heating, electric (either van) 1 190 € (fitted at the works)", "optional"),
        ("Floor heating, electric, worth $1,190", "standard"),
    ],
)
def test_an_item_of_a_list_that_ends_in_its_price_can_be_had_for_it(facts_of, line, expected):
    facts = facts_of(f"{HEAD}For the cold\n\n- {line}\n- Roof rails, $340\n")
    assert offers(facts, "heated_floor") == {"Drift 19": expected, "Drift 21": expected}


def test_an_extra_that_one_van_has_as_delivered_is_to_be_had_on_the_other(facts_of):
    facts = facts_of(
        f"{HEAD}## Extras\n\n- Floor heating, $1,190; standard on the Drift 21\n- Winch for Drift 21, $900\n"
    )
    assert offers(facts, "heated_floor") == {"Drift 19": "optional", "Drift 21": "standard"}


def test_the_price_of_the_van_makes_no_option_of_what_it_has(facts_of):
    facts = facts_of("# Marrowfen Drift 21\n\nLength: 6.36 m\n\nFloor heating, 200 W solar, $124,900\n\nSleeps: 2\n")
    assert set(offers(facts, "heated_floor").values()) == {"standard"}
