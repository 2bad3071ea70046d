"""Rule set files: every mistake is named with file and line, and nothing wrong is loaded."""

import json

import pytest

from specscan.judging.rulesets import check_ruleset_file, load_ruleset, load_rulesets, ruleset_schema, schema_text
from specscan.records.errors import RuleError
from specscan.rulebook.book import load_rulebook
from tests.judging.conftest import HEAD, RULES, criterion

GOOD = criterion("size", ("fresh_tank_l >= 80", 1), ("fresh_tank_l >= 40", 0.5))
CASE = "cases:\n  - case: big\n    van: {fresh_tank_l: 90}\n    expect: {size: 10, total: 10}\n"


def mistakes_of(text, book, tmp_path, name="trial"):
    path = tmp_path / f"{name}.yaml"
    path.write_text(text, encoding="utf-8")
    found = check_ruleset_file(path, book)
    assert all(one.startswith(f"{path}:") for one in found)
    return [one.removeprefix(f"{path}:") for one in found]


def test_good_file_is_loaded_whole(ruleset_of):
    one = ruleset_of(GOOD, CASE)
    size = one.criteria[0]
    assert (one.name, one.points_max, one.columns) == ("trial", 10, ("fresh_tank_l",))
    assert (size.points, size.reasons) == ((10, 5, 0), ("step 0", "step 1", "none of them"))
    assert one.cases[0].expect == {"size": 10, "total": 10}


@pytest.mark.parametrize(
    ("old", "new", "reason"),
    [
        ("weight: 10", "weight: heavy", "criteria.size.weight"),
        ("weight: 10", "weight: 0", "greater than 0"),
        ("weight: 10", "weihgt: 10", "unknown key"),
        ("award: 0.5", "award: 1.5", "less than or equal to 1"),
        ("award: 0.5", "award: -0.1", "greater than or equal to 0"),
        ("award: 0.5", "award: yes", "criteria.size.scale.1.award"),
        ("because: step 1", "because: ''", "criteria.size.scale.1.because"),
        ("because: step 1", "reason: step 1", "unknown key"),
        ("fresh_tank_l >= 40", "fresh_tank_ltr >= 40", "unknown column 'fresh_tank_ltr': did you mean fresh_tank_l"),
        ("fresh_tank_l >= 40", "fresh_tank_heat = 'steam'", "never 'steam'"),
        ("fresh_tank_l >= 40", "fresh_tank_l >=", "no SQL expression"),
        ("fresh_tank_l >= 40", "fresh_tank_l is null", "not known into something known"),
        ("fresh_tank_l >= 40", "getenv('HOME') = 'x'", "not allowed"),
        ("source: none", "", "criteria.size.source: missing"),
        ("title: size", "title: ' '", "criteria.size.title"),
        ("van: {fresh_tank_l: 90}", "van: {fresh_tank_ltr: 90}", "no such field"),
        ("van: {fresh_tank_l: 90}", "van: {fresh_tank_l: big}", "is no number"),
        ("expect: {size: 10,", "expect: {sise: 10,", "no such criterion"),
        ("expect: {size: 10,", "expect: {size: [10, 5],", "runs backwards"),
        ("expect: {size: 10,", "expect: {size: lots,", "cases.0.expect.size"),
        ("name: trial", "name: trail", "is not the file's name"),
        ("name: trial", "name: Trial Set", "name"),
    ],
)
def test_each_mistake_is_named_with_its_line(book, tmp_path, old, new, reason):
    good = HEAD + GOOD + CASE
    found = mistakes_of(good.replace(old, new, 1), book, tmp_path)
    line = good.count("\n", 0, good.index(old)) + 1
    if not new:  # a key that is missing has no line: that of its criterion is named
        line = good.count("\n", 0, good.index("size:")) + 1
    assert any(reason in one and one.startswith(f"{line}:") for one in found), found


def test_empty_scale_is_refused(book, tmp_path):
    start, rest = GOOD.split("    scale:\n")
    text = HEAD + start + "    scale: []\n" + rest[rest.index("    else:") :]
    assert any("criteria.size.scale" in one for one in mistakes_of(text, book, tmp_path))


def test_doubled_key_is_refused_with_its_line(book, tmp_path):
    text = HEAD + GOOD + GOOD
    found = mistakes_of(text, book, tmp_path)
    assert any("stands twice" in one for one in found)


def test_the_name_of_the_sum_is_taken(book, tmp_path):
    assert any("name of the sum" in one for one in mistakes_of(HEAD + criterion("total", ("true", 1)), book, tmp_path))


def test_all_mistakes_of_a_file_come_at_once(book, tmp_path):
    text = HEAD + criterion("one", ("nothing > 1", 1), ("heater_fuel = 'peat'", 1)) + criterion("two", ("drive", 1))
    assert len(mistakes_of(text, book, tmp_path)) == 3


@pytest.mark.parametrize("text", ["", "- a\n- b\n", "just words", "a: [1"])
def test_file_that_is_no_rule_set_is_refused(book, tmp_path, text):
    assert mistakes_of(text, book, tmp_path)


def test_mistakes_of_all_files_of_a_folder_come_together(book, tmp_path):
    (tmp_path / "one.yaml").write_text("name: two\n", encoding="utf-8")
    (tmp_path / "two.yaml").write_text("name: one\n", encoding="utf-8")
    with pytest.raises(RuleError) as error:
        load_rulesets(tmp_path, book)
    assert {path for path in ("one.yaml", "two.yaml") if any(path in one for one in error.value.mistakes)} == {
        "one.yaml",
        "two.yaml",
    }


def test_missing_file_is_named(book, tmp_path):
    with pytest.raises(RuleError, match="nowhere.yaml"):
        load_ruleset(tmp_path / "nowhere.yaml", book)


def test_condition_over_too_many_columns_is_refused(book, tmp_path):
    parts = [f"{name} > 1" for name, spec in book.fields.items() if spec.type in ("number", "integer")]
    parts += [name for name, spec in book.fields.items() if spec.type == "flag"]
    text = HEAD + criterion("wide", (" or ".join(parts[:31]), 1))
    assert not mistakes_of(HEAD + criterion("wide", (" or ".join(parts[:30]), 1)), book, tmp_path)
    assert any("30 are allowed" in one for one in mistakes_of(text, book, tmp_path))


def test_shipped_schema_is_current():
    assert (RULES / "ruleset.schema.json").read_text(encoding="utf-8") == schema_text()


def test_schema_names_what_a_file_may_hold():
    schema = ruleset_schema()
    assert set(schema["required"]) == {"name", "title", "meaning", "criteria"}
    criterion_part = schema["$defs"]["CriterionPart"]
    assert set(criterion_part["required"]) == {"title", "question", "weight", "source", "scale", "else"}
    assert criterion_part["additionalProperties"] is False
    json.dumps(schema)


def test_rulebook_with_rule_sets_loads_and_its_digest_knows_them(tmp_path):
    import shutil

    shutil.copytree(RULES, tmp_path / "rules")
    before = load_rulebook(tmp_path / "rules").digest
    path = tmp_path / "rules" / "winter" / "shoulder_season.yaml"
    path.write_text(path.read_text(encoding="utf-8").replace("weight: 10", "weight: 11", 1), encoding="utf-8")
    assert load_rulebook(tmp_path / "rules").digest != before
