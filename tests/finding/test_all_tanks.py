"""What is said of all tanks, none of them by its name: it holds for those that the van is said to have."""

import pytest

SHEET = """# Marrowfen Drift 19 2026

| Specification | |
|---|---|
| Sleeps | 2 |
| Battery | 200 Ah |
| {label} | {answer} |

Length: 5.99 m
Fresh water: 80 L
Gray water: {gray} L

{sentence}
"""
FIELDS = ("fresh_tank_heat", "gray_tank_heat", "black_tank_heat")


@pytest.fixture
def heat(facts_of):
    def read(sentence="", label="Solar", answer="200 W", gray="60"):
        facts = facts_of(SHEET.format(sentence=sentence, label=label, answer=answer, gray=gray), "sheet.md")
        assert not [fact for fact in facts if fact.field == "battery_heated"]
        return {fact.field: (fact.value, fact.availability) for fact in facts if fact.field in FIELDS}

    return read


def test_all_tanks_are_those_of_which_a_size_is_printed(heat):
    told = ("unspecified", "unstated")
    said = "All tanks are heated, so that the van can stand in the cold for weeks on end."
    assert heat(said) == {"fresh_tank_heat": told, "gray_tank_heat": told}


def test_a_tank_of_no_size_is_not_there_to_be_heated(heat):
    assert set(heat("All tanks are heated, so that the van can stand in the cold.", gray="0")) == {"fresh_tank_heat"}


@pytest.mark.parametrize("label, answer", [("Tanks", "heated"), ("All tanks", "heated"), ("Both tanks", "heated")])
def test_a_row_of_all_tanks_does_not_go_on_about_the_battery_above_it(heat, label, answer):
    told = ("unspecified", "standard")
    assert heat(label=label, answer=answer) == {"fresh_tank_heat": told, "gray_tank_heat": told}


def test_a_row_of_all_tanks_can_offer_and_deny(heat):
    assert heat(label="Tanks", answer="not heated")["gray_tank_heat"] == ("none", "standard")
    assert heat(label="All tanks heated", answer="optional")["gray_tank_heat"] == ("unspecified", "optional")


@pytest.mark.parametrize(
    "label, answer",
    [("Tank", "30 gal, heated"), ("Tanks", "100 L, heated"), ("Tank heating", "standard"), ("Drain", "for all tanks")],
)
def test_a_row_that_does_not_say_of_which_tank_it_speaks_states_nothing(heat, label, answer):
    assert heat(label=label, answer=answer) == {}


def test_tanks_named_in_the_sentence_are_meant_rather_than_all(facts_of):
    text = SHEET.format(sentence="", label="Fresh tank", answer="under the bed, both tanks insulated", gray="60")
    found = {fact.field for fact in facts_of(text, "sheet.md") if fact.field.endswith("tank_insulated")}
    assert found == {"fresh_tank_insulated"}


def test_a_test_with_both_tanks_full_is_still_a_test_of_the_van(facts_of):
    text = SHEET.format(
        sentence="It was tested down to −15 °C with both tanks full.", label="Solar", answer="200 W", gray=60
    )
    assert [fact.value for fact in facts_of(text, "sheet.md") if fact.field == "rated_min_temp_c"] == [-15]


@pytest.mark.parametrize("black, tanks", [("none", {"gray_tank"}), ("10 gal", {"gray_tank", "black_tank"})])
def test_the_waste_tank_or_tanks_are_those_that_the_van_has(facts_of, black, tanks):
    sheet = (
        "# Marrowfen Drift 19 2026\n\n| Specification | |\n|---|---|\n| Sleeps | 2 |\n| Gray tank | 20 gal |\n"
        f"| Black tank | {black} |\n| Waste tank or tanks, place | under floor |\n"
        "| Waste tank or tanks | warm-air duct |\n"
    )
    told = {"location": "underbody", "heat": "warm_air"}
    facts = facts_of(sheet, "sheet.md")
    found = {f.field: f.value for f in facts if f.value in told.values() and not f.rejected}
    assert found == {f"{tank}_{what}": value for tank in tanks for what, value in told.items()}


@pytest.mark.parametrize("black, tanks", [("none", {"gray_tank"}), ("10 gal", {"gray_tank", "black_tank"})])
@pytest.mark.parametrize("heat, told", [("12 V pads", "electric_pad"), ("none", "none")])
def test_waste_tanks_in_the_plural_are_both_where_there_are_two(facts_of, black, tanks, heat, told):
    sheet = (
        "# Marrowfen Drift 19 2026\n\n| Specification | |\n|---|---|\n| Sleeps | 2 |\n| Gray tank | 20 gal |\n"
        f"| Black tank | {black} |\n| Waste tanks: place | under floor |\n| Waste tanks: heat | {heat} |\n"
    )
    facts = [f for f in facts_of(sheet, "sheet.md") if not f.rejected]
    assert {f.field for f in facts if f.field.endswith("tank_heat") and f.value == told} == {f"{t}_heat" for t in tanks}
    assert {f.field for f in facts if f.value == "underbody"} == {f"{tank}_location" for tank in tanks}
    assert [f.value for f in facts if f.field == "gray_tank_l"] == pytest.approx([75.7], abs=0.1)


def test_how_much_is_in_waste_tanks_is_said_of_the_gray_one_alone(facts_of):
    sheet = "# Marrowfen Drift 19 2026\n\n| Specification | |\n|---|---|\n| Sleeps | 2 |\n| Waste tanks | 30 gal |\n"
    sheet += "| Fresh tank | 25 gal |\n| Battery | 200 Ah |\n| Length | 19 ft |\n"
    found = {f.field for f in facts_of(sheet, "sheet.md") if f.field.endswith("tank_l") and not f.rejected}
    assert found == {"fresh_tank_l", "gray_tank_l"}
