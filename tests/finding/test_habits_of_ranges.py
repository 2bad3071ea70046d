"""What texts about several vans say of all of them and of one: what none has, and what one has besides."""

import pytest

from tests.finding.two_drifts import two_drifts

HEAD = two_drifts("| Overall length | 5.41 m | 5.99 m |", "| Sleeps | 2 | 3 |")
NOUNS = """# Girlitz und Rabe

Marrowfen Reisemobile, Modelljahr 2026

| | Girlitz | Rabe |
|---|---|---|
| Breite | 2,05 m | 2,10 m |
| Gesamtmasse | 3500 kg | 4100 kg |
| Länge | 5,41 m | 5,99 m |
| Schlafplätze | 2 | 3 |

"""


def by_van(facts, field):
    return {(f.model, f.value) for f in facts if f.field == field and not f.rejected}


@pytest.mark.parametrize(
    "sentence",
    [
        "No Drift carries propane. The hob is electric.",
        "Neither the Drift 19 nor the Drift 21 has propane on board.",
    ],
)
def test_what_no_van_of_the_range_has_is_absent_in_all(facts_of, sentence):
    assert by_van(facts_of(HEAD + sentence), "propane_tank_l") == {("Drift 19", 0), ("Drift 21", 0)}


@pytest.mark.parametrize(
    "sentence", ["No Drift needs propane to stay warm.", "No bench in the Drift 19 has propane bottles below it."]
)
def test_what_no_van_needs_is_not_said_to_be_absent(facts_of, sentence):
    assert by_van(facts_of(HEAD + sentence), "propane_tank_l") == set()


def test_a_part_about_one_van_leaves_the_next_sentence_to_all(facts_of):
    text = "The walls and roof of both vans are lined with wool; the Drift 21 also has it in the floor. "
    facts = facts_of(HEAD + text + "The windows are double glazed.")
    assert by_van(facts, "window_glazing") == {("Drift 19", "double"), ("Drift 21", "double")}
    text = "Both vans have wool in walls and roof; the Drift 21 has a heated floor. "
    facts = facts_of(HEAD + text + "The windows are double glazed.")
    assert by_van(facts, "window_glazing") == {("Drift 19", "double"), ("Drift 21", "double")}


def test_what_one_van_has_besides_is_its_own_and_the_rest_is_of_all(facts_of):
    facts = facts_of(NOUNS + "Gedämmt wird mit Hanf an Wänden und Dach, im Raben auch im Boden.")
    assert by_van(facts, "insulated_surfaces") == {
        ("Girlitz", "walls"), ("Girlitz", "ceiling"), ("Rabe", "walls"), ("Rabe", "ceiling"), ("Rabe", "floor"),
    }  # fmt: skip


def test_a_name_that_is_a_noun_is_declined(facts_of):
    facts = facts_of(NOUNS + "Wer weit fährt, nimmt den Raben. Er ist wintertauglich. Die Fenster sind aus Acryl.")
    assert by_van(facts, "season_claim") == {("Rabe", "wintertauglich")}


def test_what_there_is_not_may_be_told_of_each_van(facts_of):
    facts = facts_of(NOUNS + "Gas gibt es bei uns nicht, weder im Girlitz noch im Raben; gekocht wird elektrisch.")
    assert by_van(facts, "propane_tank_l") == {("Girlitz", 0), ("Rabe", 0)}


def test_surfaces_that_are_not_to_be_had_together_are_told_together(facts_of):
    rows = "| Wool insulation, walls and ceiling | S | – |\n"
    rows += "| Spray foam insulation, walls, ceiling and floor | – | S |\n"
    facts = facts_of(HEAD.rstrip() + "\n" + rows + "\nS = standard, – = not available\n")
    refused = {
        (f.model, f.value) for f in facts
        if f.field == "insulated_surfaces" and f.availability == "not_available" and not f.rejected
    }  # fmt: skip
    assert refused == {
        ("Drift 19", "walls"), ("Drift 19", "ceiling"), ("Drift 19", "floor"),
        ("Drift 21", "walls"), ("Drift 21", "ceiling"),
    }  # fmt: skip


def test_a_price_is_no_base_vehicle(facts_of):
    facts = facts_of(HEAD + "Base retail: Drift $98,700; Tern $124,300; Lark $161,900.\n")
    assert by_van(facts, "chassis") == set()


def test_what_comes_with_both_is_no_option_though_the_next_part_tells_of_one(facts_of):
    text = "Insulated shades for the cab come with both vans; insulated shades for the rear doors come with the "
    facts = facts_of(HEAD + text + "Drift 21 and are a $390 option on the Drift 19.")
    told = {(f.model, f.availability) for f in facts if f.field == "cab_shades_insulated" and not f.rejected}
    assert told == {("Drift 19", "standard"), ("Drift 21", "standard")}
