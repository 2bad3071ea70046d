"""A letter that answers question by question: what it quotes is not the writer's."""

LETTER = """From: Sales office, Marrowfen Vans
Subject: Re: Drift 21, some questions

Dear Ro,

thank you for asking about the 2026 Drift 21. It is 21 ft 2 in long and has a GVWR of 9,900 lb.

> 1. Water? Our van of old had 12 gallons fresh and 9 gray
> and froze at 25 F.

Fresh water: 34 gal. It sleeps two.

> 2. And heat? We had a diesel heater.

A propane furnace with 16,000 BTU/h output.
"""

FORWARDED = """Subject: Fwd: Drift 21

See below. What do you think?

> Dear Ro,
> the 2026 Drift 21 by Marrowfen Vans is 21 ft 2 in long and has a GVWR of 9,900 lb.
> Fresh water: 34 gal. It sleeps two.
> Gray water: 24 gal.
> A propane furnace with 16,000 BTU/h output.
> Shall we build you one?
> Wheelbase: 159 in
"""


def values(facts, field):
    return {round(fact.value) if isinstance(fact.value, float) else fact.value for fact in facts if fact.field == field}


def test_figures_of_quoted_questions_are_not_of_the_van(facts_of):
    facts = facts_of(LETTER)
    assert values(facts, "fresh_tank_l") == {129}  # 34 gal × 3.785 (NIST SP 811)
    assert values(facts, "gray_tank_l") == set()
    assert values(facts, "heater_fuel") == {"propane"}


def test_a_letter_that_is_quoted_as_a_whole_is_read(facts_of):
    facts = facts_of(FORWARDED)
    assert values(facts, "fresh_tank_l") == {129}
    assert values(facts, "gray_tank_l") == {91}


def test_what_was_left_out_is_told(read_file, tmp_path):
    path = tmp_path / "letter.txt"
    path.write_text(LETTER, encoding="utf-8")
    assert "quoted questions were not read" in read_file(path).record.message


def test_the_letter_that_asked_may_follow_once_more_behind_all_answers(facts_of):
    again = "\n> On 2 Nov, the Holts wrote:\n> > Dear people, our Drift of old had 9 gallons of gray water.\n"
    facts = facts_of(LETTER + again)
    assert values(facts, "fresh_tank_l") == {129}
    assert values(facts, "gray_tank_l") == set()
