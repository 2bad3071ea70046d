"""From words to facts: what a reader of the brochure would say it states, and what it does not."""

HEAD = "Marrowfen Vans\nMarrowfen Drift 21\n2026 specifications\n\n"
TANKS = """Fresh water tank: 27 gal (102 L)
Gray water tank: 20 gal
Furnace: 16,000 BTU/h propane
Overall length: 21 ft
GVWR: 9,350 lb
Fuel tank: 24 gal
Sleeps: 2
Lithium battery: 200 Ah
"""


def values(facts, field):
    return [fact.value for fact in facts if fact.field == field]


def test_reads_tanks_in_litres_with_their_words(facts_of):
    facts = facts_of(HEAD + TANKS)
    (fresh,) = [fact for fact in facts if fact.field == "fresh_tank_l"]
    assert abs(fresh.num - 102.2) < 0.5
    assert "27 gal" in fresh.printed
    assert fresh.model.endswith("Drift 21")


def test_silence_is_not_a_no(facts_of):
    facts = facts_of(HEAD + TANKS)
    assert values(facts, "fresh_tank_heat") == []
    assert values(facts, "black_tank_l") == []


def test_not_heated_is_a_stated_none(facts_of):
    facts = facts_of(HEAD + TANKS + "Gray tank: not heated\n")
    assert values(facts, "gray_tank_heat") == ["none"]


def test_no_black_tank_is_zero(facts_of):
    facts = facts_of(HEAD + TANKS + "No black tank\n")
    assert values(facts, "black_tank_l") == [0]


def test_a_sleeping_bags_rating_is_not_the_vans(facts_of):
    facts = facts_of(HEAD + TANKS + "\nA sleeping bag rated to -20 °F makes a good extra on cold nights.\n")
    assert values(facts, "rated_min_temp_c") == []


def test_options_are_not_standard(facts_of):
    facts = facts_of(HEAD + TANKS + "\nOptions\n- Solar panels 400 W\n- Heated gray tank pad, 12 V\n")
    solar = [fact for fact in facts if fact.field == "solar_w"]
    assert [(fact.num, fact.availability) for fact in solar] == [(400, "optional")]
