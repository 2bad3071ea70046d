"""Running text: what it carries, whom it speaks of, and what a later paragraph goes on about."""

SHEET = """
| Model | Overall length | Wheelbase | Berths | {tank} |
|---|---|---|---|---|
| Drift 19 | 5.90 m | 3.45 m | 2 | 80 |
| Drift 21 | 6.40 m | 4.04 m | 3 | 100 |
"""
EN = "Marrowfen Drift 2026\n" + SHEET.format(tank="Fresh water (L)")


def by_van(facts, field):
    return {(fact.model, fact.value) for fact in facts if fact.field == field}


def test_litres_of_water_that_a_van_carries_are_its_fresh_water(facts_of):
    facts = facts_of(
        EN + "\nThe Drift 21 carries one hundred and twenty litres of water and is in no hurry to spend it.\n"
    )
    assert by_van(facts, "fresh_tank_l") == {("Drift 19", 80), ("Drift 21", 100), ("Drift 21", 120)}


def test_litres_of_water_that_a_shower_uses_are_not(facts_of):
    facts = facts_of(
        EN + "\nOn the Drift 21 a shower needs 20 litres of water, and a careful one needs a good deal less.\n"
    )
    assert by_van(facts, "fresh_tank_l") == {("Drift 19", 80), ("Drift 21", 100)}


def test_a_paragraph_that_begins_with_it_goes_on_about_the_van_before(facts_of):
    text = (
        "\nThe Drift 19 is a van for summer. The Drift 21 is our van for winter, and never came home early.\n"
        "\nIt was held at −22 °C in the climate chamber at Orsenby for a Sunday, with full tanks and a cat on board.\n"
    )
    assert by_van(facts_of(EN + text), "rated_min_temp_c") == {("Drift 21", -22)}
