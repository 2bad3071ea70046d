"""What one sentence of running text says of the availability of a thing on each of several vans."""

import pytest

from tests.finding.two_drifts import two_drifts

BELOW = " The beds are long and the doors are wide, and nobody has yet asked for a shorter one or one that is lower."


@pytest.mark.parametrize(
    ("said", "first", "second"),
    [
        ("A heated floor is optional on the Drift 21 and not available on the Drift 19.", "not_available", "optional"),
        ("A heated floor is standard on the Drift 21 and an option ($420) on the Drift 19.", "optional", "standard"),
        ("A heated floor comes with the Drift 19 and is an option on the Drift 21.", "standard", "optional"),
    ],
)
def test_vans_and_availabilities_in_turn_give_each_van_its_own(facts_of, said, first, second):
    facts = facts_of(two_drifts("| Overall length | 5.41 m | 5.99 m |", "| Sleeps | 2 | 4 |") + said + BELOW, "a.md")
    found = {fact.model: fact.availability for fact in facts if fact.field == "heated_floor"}
    assert found == {"Drift 19": first, "Drift 21": second}
