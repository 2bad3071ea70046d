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
