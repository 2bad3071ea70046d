"""A sign in brackets that stands apart from its word refers to the line that begins with it, where there is one."""

import pytest

from specscan.reading.read import read_document
from specscan.reading.tables.compose import Hints

TABLE = (
    "# Marrowfen Drift 2026\n\n| | Drift 19 | Drift 21 |\n|---|---|---|\n| Length | 5.41 m | 5.99 m |\n"
    "| Furnace | LP furnace, forced air | Diesel hydronic |\n| Furnace rating {sign} | 12,000 BTU/h | 17,000 BTU/h |\n"
    "| Belts (4) | yes | yes |\n| Fresh water | 80 L | 95 L |\n| Solar | 100 W | 200 W |\n\n{note}\n"
)


@pytest.mark.parametrize("sign", ["(a)", "(1)"])
@pytest.mark.parametrize(
    "said",
    [
        "LP furnaces: input. Diesel heaters: output.",
        "Output for the diesel heaters; for the LP furnace the input is given.",
    ],
)
def test_a_note_of_kinds_makes_no_van_have_the_heaters_of_all(facts_of, sign, said):
    facts = facts_of(TABLE.format(sign=sign, note=f"{sign} {said}"), "page.md")
    fuels = {(fact.model, fact.value) for fact in facts if fact.field == "heater_fuel"}
    assert fuels == {("Drift 19", "propane"), ("Drift 21", "diesel")}
    assert {fact.value for fact in facts if fact.field == "heater_type" and fact.model == "Drift 19"} == {"forced_air"}


def test_a_figure_in_brackets_without_a_note_stays():
    document = read_document(TABLE.format(sign="(a)", note="(a) Input.").encode(), "page.md", "text", Hints())
    labels = {passage.row.text for passage in document.passages if passage.row is not None}
    assert {"Belts (4)", "Furnace rating"} <= labels


STARRED = (
    "# Marrowfen Drift 2026\n\n## Heat, plumbing and insulation\n\n"
    "| Model | Length (ft) | Sleeps | Furnace | BTU/h * | Holds to °F |\n|---|---|---|---|---|---|\n"
    "| Drift 19 | 19 | 2 | LP furnace, forced air | 12,000 | 20 |\n"
    "| Drift 21 | 21 | 3 | Hydronic, diesel fired | 17,000 | 0 |\n\n"
    "* LP furnace figures are input. The hydronic figure is heat output. {more}\n"
)


def figures(facts, *fields):
    """Give what is stated by van and field."""
    return {(f.model, f.field): f.value for f in facts if f.field in fields and not f.rejected}


def test_an_asterisk_that_stands_apart_over_a_column_refers_to_the_one_line_that_begins_with_it(facts_of):
    found = figures(facts_of(STARRED.format(more=""), "page.md"), "heater_input_w", "heater_output_w", "heater_type")
    assert round(found.pop(("Drift 19", "heater_input_w"))) == 3517
    assert round(found.pop(("Drift 21", "heater_output_w"))) == 4982
    assert found == {("Drift 19", "heater_type"): "forced_air", ("Drift 21", "heater_type"): "hydronic"}


@pytest.mark.parametrize("label", ['"Holds to"', "“Holds to °F”"])
def test_what_a_note_says_that_a_label_means_is_no_statement(facts_of, label):
    more = f"{label} is the outside temperature at which the cabin stays warm with the waste tanks half full."
    assert not figures(facts_of(STARRED.format(more=more), "page.md"), "gray_tank_location")
