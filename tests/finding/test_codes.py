"""Letters in cells mean what the document's own key says, and nothing without one."""

RANGE = """Marrowfen Drift 2026

| Model | Overall length (m) | Berths | {label} |
|---|---|---|---|
| Drift 19 | 5.90 | 2 | {short} |
| Drift 21 | 6.40 | 3 | {long} |

"""
KEY = """Place: I inside the van, U under the floor. Heat: N none, P 12 V pad, A furnace air duct.
Insulated: W walls, C ceiling, F floor.
"""


def by_van(facts, field):
    return {fact.model: fact.value for fact in facts if fact.field == field}


def test_two_letters_answer_the_two_aspects_of_the_head(facts_of):
    facts = facts_of(RANGE.format(label="Gray tank place/heat", short="U/N", long="I/A") + KEY)
    assert by_van(facts, "gray_tank_location") == {"Drift 19": "underbody", "Drift 21": "interior"}
    assert by_van(facts, "gray_tank_heat") == {"Drift 19": "none", "Drift 21": "warm_air"}


def test_a_letter_that_only_one_key_has_is_read_under_a_head_the_key_does_not_name(facts_of):
    facts = facts_of(RANGE.format(label="Water lines", short="U", long="I") + KEY)
    assert by_van(facts, "water_lines_location") == {"Drift 19": "exterior", "Drift 21": "interior"}


def test_several_letters_are_a_set(facts_of):
    facts = facts_of(RANGE.format(label="Insulated areas", short="W C", long="W C F") + KEY)
    named = [(fact.model, fact.value) for fact in facts if fact.field == "insulated_surfaces"]
    short, long = "Drift 19", "Drift 21"
    assert sorted(named) == [(short, "ceiling"), (short, "walls"), (long, "ceiling"), (long, "floor"), (long, "walls")]


def test_letters_without_a_key_say_nothing(facts_of):
    facts = facts_of(RANGE.format(label="Gray tank place/heat", short="U/N", long="I/A"))
    assert by_van(facts, "gray_tank_location") == {}
    assert by_van(facts, "gray_tank_heat") == {}


def test_the_key_itself_states_nothing(facts_of):
    facts = facts_of(
        RANGE.format(label="Engine", short="G", long="D") + "Engine: G gasoline, D diesel. U.S. gallons.\n"
    )
    assert by_van(facts, "engine_fuel") == {"Drift 19": "gasoline", "Drift 21": "diesel"}
