"""Whose a statement is: vans that lead headings of their own rank, price lines that wrap, "A and B only"."""

TABLE = """Marrowfen Drift 2026

| Dimensions | Drift 19 | Drift 21 | Drift 23 |
|---|---|---|---|
| Overall length | 5.90 m | 6.40 m | 6.95 m |
| Wheelbase | 3.45 m | 4.04 m | 4.04 m |
| Sleeps | 2 | 3 | 4 |
| GVWR | 3500 kg | 4250 kg | 4400 kg |
"""

LED = """# Marrowfen Drift 2026

## Drift 19

## Dimensions

- Overall length: 5.90 m
- Wheelbase: 3.45 m
- Sleeps: 2

## Water

- Fresh water tank: 90 L
- Gray water tank: 70 L

## Drift 21

## Dimensions

- Overall length: 6.40 m
- Wheelbase: 4.04 m
- Sleeps: 3

## Water

- Fresh water tank: 120 L
- Gray water tank: 100 L
"""


def by_van(facts, field):
    return {fact.model: fact.value for fact in facts if fact.field == field}


def offers(facts, field):
    return {fact.model: fact.availability for fact in facts if fact.field == field}


def test_a_name_set_like_the_headings_of_its_groups_owns_what_stands_under_them(facts_of):
    facts = facts_of(LED, "range.md")
    assert by_van(facts, "sleeps") == {"Drift 19": 2, "Drift 21": 3}
    assert by_van(facts, "gray_tank_l") == {"Drift 19": 70, "Drift 21": 100}


def test_a_heading_that_no_sister_has_ends_what_is_said_of_a_van(facts_of):
    facts = facts_of(LED + "\n## In every van\n\n- Solar panels, 200 W\n", "range.md")
    assert by_van(facts, "gray_tank_l") == {"Drift 19": 70, "Drift 21": 100}
    assert {model for model, value in by_van(facts, "solar_w").items() if value == 200} == {"Drift 19", "Drift 21"}


def test_prices_of_a_package_that_wrap_say_of_each_van_how_it_comes(facts_of):
    package = (
        "\n## Winter package\n\nDrift 19: $1,250 · Drift 21: $1,250 · Drift 23:\n\nincluded\n\n"
        "- 12 V heating pad for gray water tank\n"
    )
    facts = facts_of(TABLE + package, "range.md")
    fits = {"Drift 19": "optional", "Drift 21": "optional", "Drift 23": "standard"}
    assert offers(facts, "gray_tank_heat") == fits


def test_a_bold_line_below_the_price_says_for_which_van_a_package_is_not_made(facts_of):
    package = "\n## Winter package\n\nDrift 21: $8,700\n\nDrift 23: standard\n\n{}\n\n- Heated floor\n"
    for line in ("### Not available on Drift 19", "Not available on Drift 19"):
        facts = facts_of(TABLE + package.format(line), "range.md")
        fits = {"Drift 19": "not_available", "Drift 21": "optional", "Drift 23": "standard"}
        assert offers(facts, "heated_floor") == fits


def test_only_restricts_to_all_vans_that_are_listed_before_it(facts_of):
    facts = facts_of(TABLE + "\n## Equipment\n\n- Electric floor heating (Drift 21 and Drift 23 only)\n", "range.md")
    assert by_van(facts, "heated_floor") == {"Drift 21": True, "Drift 23": True}


def test_only_behind_vans_without_brackets_restricts_to_all_of_them(facts_of):
    facts = facts_of(TABLE + "\n## Equipment\n\n- Electric floor heating, Drift 21 and Drift 23 only\n", "range.md")
    assert by_van(facts, "heated_floor") == {"Drift 21": True, "Drift 23": True}


NUMBERED = """Marrowfen Tarn 2026

| Dimensions | 20 | 25 | 30 |
|---|---|---|---|
| Overall length | 5.90 m | 6.40 m | 6.95 m |
| Wheelbase | 3.45 m | 4.04 m | 4.04 m |
| Sleeps | 2 | 3 | 4 |
| GVWR | 3500 kg | 4250 kg | 4400 kg |

"""


def test_bare_numbers_before_only_name_vans(facts_of):
    facts = facts_of(NUMBERED + "- Electric floor heating, 25, 30 only\n", "range.md")
    assert {model[-2:] for model in by_van(facts, "heated_floor")} == {"25", "30"}


def test_bare_numbers_behind_the_word_for_only_name_vans_in_french(facts_of):
    french = NUMBERED.replace("Overall length", "Longueur hors tout").replace("Wheelbase", "Empattement")
    french = french.replace("Sleeps", "Places de couchage").replace("GVWR", "PTAC")
    facts = facts_of(french + "- Plancher chauffant électrique, uniquement 25 et 30\n", "gamme.md")
    assert {model[-2:] for model in by_van(facts, "heated_floor")} == {"25", "30"}
