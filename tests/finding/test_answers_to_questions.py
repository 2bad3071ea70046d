"""Questions above their answers; vans of earlier years; what is in the same place as another."""

from tests.finding.conftest import HEADS


def stated(examiner, text):
    document = examiner.examine("x.txt", ("\n".join(HEADS["US"].values()) + "\n\n" + text).encode(), "text")
    heads = ("maker", "model", "model_year", "length_mm", "gvwr_kg", "wheelbase_mm", "width_mm")
    return {
        (fact.field, round(fact.value) if isinstance(fact.value, float) else fact.value)
        for fact in document.found.facts
        if not fact.rejected and fact.field not in heads
    }


def ask(question, answer):
    return f"What it is like\n\n{question}\n{answer}\n\nAnd so on\nThat is all there is to say about it.\n"


def test_a_no_is_said_of_what_the_question_names(examiner):
    assert stated(examiner, ask("Is there a black tank?", "No. It would not fit.")) == {("black_tank_l", 0)}
    assert stated(examiner, ask("No propane at all?", "None. The stove is electric.")) == {("propane_tank_l", 0)}
    assert stated(examiner, ask("Is the gray tank heated?", "No. Drain it before the frost comes.")) == {
        ("gray_tank_heat", "none")
    }


def test_a_no_to_what_nobody_knows_states_nothing(examiner):
    assert stated(examiner, ask("Can the black tank freeze if I forget it?", "No. It is dry.")) == set()


def test_an_answer_without_a_verb_is_the_value_of_what_is_asked_for(examiner):
    assert stated(examiner, ask("And the windows?", "Acrylic, double. They open wide.")) == {
        ("window_glazing", "double")
    }
    assert stated(examiner, ask("How many can sleep?", "Three. A dog makes four.")) == {("sleeps", 3)}
    assert stated(examiner, ask("What is it built on?", "A Fenmoor Carrier 30. Diesel. We like it well.")) == {
        ("chassis", "Fenmoor Carrier 30"),
        ("engine_fuel", "diesel"),
    }


def test_it_in_an_answer_is_what_the_question_names(examiner):
    found = stated(examiner, ask("How long does the battery last?", "It is a lithium bank of 280 Ah and warms itself."))
    assert found == {("battery_chemistry", "lithium"), ("battery_ah", 280), ("battery_heated", True)}


def test_a_claim_that_is_asked_for_is_made_or_denied(examiner):
    yes, no = "Yes. We are sure of that.", "No. We are sure of that."
    assert stated(examiner, ask("Is it a four-season van?", yes)) == {("season_claim", "four-season")}
    assert stated(examiner, ask("Is it a four-season van?", no)) == set()


def test_what_an_earlier_van_had_is_not_what_this_one_has(examiner):
    text = (
        "We built a longer one until 2023. It had 40 gallons of fresh water. We now carry 31 gallons of fresh water.\n"
    )
    assert stated(examiner, text) == {("fresh_tank_l", 117)}
    assert (
        stated(examiner, "The 2024 van had 90 gallons of fresh water, and it was too heavy for most of us.\n") == set()
    )


def test_a_tank_and_the_valve_with_it_are_in_the_same_place(examiner):
    text = "The gray tank, 27 gallons, is in a heated bay with the dump valve, and it has never been cold in there.\n"
    assert stated(examiner, text) == {
        ("gray_tank_l", 102),
        ("gray_tank_heat", "heated_compartment"),
        ("gray_tank_location", "enclosed"),
        ("dump_valve_protection", "heated_compartment"),
    }


def test_a_table_of_questions_and_answers_names_no_van(vans_of):
    asked = {"Fresh tank?": "95 litres", "What heats it?": "Diesel air heater", "Battery?": "110 Ah AGM"}
    rows = "".join(f"| {question} | {answer} |\n" for question, answer in asked.items())
    head = "Marrowfen Campers\n=================\n\n# Drift 59\n\nModel year 2026\n\nLength: 5.95 m\n\n"
    assert vans_of(f"{head}| Question | Answer |\n|:--|:--|\n{rows}") == {("Marrowfen Campers", "Drift 59", 2026)}


def test_a_line_that_is_a_question_states_nothing(examiner):
    assert stated(examiner, "- Is there a colour that is not grey?\n- Is the fresh tank heated by a pad?\n") == set()


def test_a_question_in_a_list_is_answered_right_below_it(examiner):
    mail = "- Is there a black tank?\n\nNo. It would not fit.\n\n- And the windows?\n\nAcrylic, double.\n"
    assert stated(examiner, mail) == {("black_tank_l", 0), ("window_glazing", "double")}
