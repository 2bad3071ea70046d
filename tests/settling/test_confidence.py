"""How sure a statement is follows from counts that anyone can read, and from what makes it doubtful."""

import shutil

import pytest

from specscan.records.errors import RuleError
from specscan.settling.confidence import Counted, load_confidences
from specscan.settling.one_document import consolidate
from specscan.settling.preferences import load_preferences
from tests.settling.made import fact


@pytest.fixture(scope="module")
def preferences(book):
    return load_preferences(book)


@pytest.fixture
def weighed(book, preferences):
    return lambda *facts: consolidate(facts, book, preferences)


def test_the_gravest_ground_decides(weighed, preferences):
    table = preferences.confidences
    plain, spoken = weighed(fact("solar_w", 100.0), fact("inverter_w", 2000.0, how="prose", grounds=("running_text",)))
    assert plain.confidence == round(table.forms["table_cell"].share, 3)
    assert spoken.confidence == round(table.grounds["running_text"].share, 3) < plain.confidence


def test_several_grounds_weigh_more_than_one(weighed):
    one, two = weighed(
        fact("solar_w", 100.0, grounds=("running_text",)),
        fact("inverter_w", 2000.0, grounds=("running_text", "implied")),
    )
    assert two.confidence < one.confidence


def test_statements_of_one_document_that_contradict_each_other_are_both_in_doubt(weighed):
    found = weighed(fact("fresh_tank_l", 100.0), fact("fresh_tank_l", 120.0, passage=2), fact("solar_w", 100.0))
    assert [("disagreement" in one.grounds, one.confidence < 0.9) for one in found] == [
        (True, True), (True, True), (False, False),
    ]  # fmt: skip


def test_an_option_that_differs_from_the_standard_contradicts_nothing(weighed):
    found = weighed(fact("solar_w", 100.0), fact("solar_w", 400.0, availability="optional", passage=2))
    assert all(one.grounds == () for one in found)


def test_what_a_person_states_stays_certain(weighed):
    found = weighed(fact("solar_w", 100.0, confidence=1.0), fact("solar_w", 400.0, passage=2))
    assert found[0].confidence == 1.0 and found[1].confidence < 0.9


@pytest.mark.parametrize(
    ("right", "of", "share"),
    [(0, 0, 0.8), (98, 99, 0.988), (9, 9, 0.98)],  # (right + 0.8) / (of + 1), worked by hand
)
def test_few_statements_prove_little(right, of, share):
    assert Counted(right=right, of=of).share == pytest.approx(share)


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("  implied:", "  guessed:", "guessed"),
        ("  table_cell: {", "  table_cell: {rite: 1, ", "unknown key"),
        ("  picture: {right: ", "  picture: {right: 9", "right of"),
    ],
)
def test_a_wrong_table_is_refused_with_its_line(book, tmp_path, old, new, said):
    folder = tmp_path / "rules"
    shutil.copytree(book.folder, folder)
    text = (folder / "confidence.yaml").read_text(encoding="utf-8")
    assert text.count(old) == 1
    (folder / "confidence.yaml").write_text(text.replace(old, new), encoding="utf-8")
    with pytest.raises(RuleError) as error:
        load_confidences(folder)
    assert said in str(error.value) and "confidence.yaml:" in str(error.value)
