"""The built-in rule sets: what each must cover, and how they speak."""

import re

import pytest

from specscan.judging.rulesets import load_rulesets
from specscan.judging.scoring import score
from specscan.rulebook.book import load_rulebook
from tests.judging.conftest import RULES

BOOK = load_rulebook(RULES)
BUILT_IN = load_rulesets(RULES / "winter", BOOK)
COVERED = [
    "fresh_tank_heat", "fresh_tank_insulated", "gray_tank_heat", "gray_tank_insulated", "black_tank_heat",
    "water_lines_location", "dump_valve_protection", "heat_days", "lowest_outside_c", "wall_r_si", "window_glazing",
    "drive",
]  # fmt: skip


COMPUTED = {
    "deep_winter_wet": {"heat_days_at_loss", "lowest_outside_c", "battery_days"},
    "deep_winter_dry": {"heat_days_at_loss", "lowest_outside_c", "battery_days"},
    "shoulder_season": {"lowest_outside_c"},
}


def words_of(ruleset):
    yield from (ruleset.title, ruleset.meaning, *ruleset.notes, *ruleset.cautions)
    for one in ruleset.criteria:
        yield from (one.title, one.question, one.source, *one.reasons)


def test_the_three_seasons_are_there():
    assert [one.name for one in BUILT_IN] == ["deep_winter_dry", "deep_winter_wet", "shoulder_season"]


@pytest.mark.parametrize("ruleset", BUILT_IN, ids=lambda one: one.name)
def test_each_covers_what_winter_asks_for_and_sums_to_100(ruleset):
    assert set(COVERED) <= set(ruleset.columns)
    assert ruleset.points_max == 100
    assert len(ruleset.cases) >= 4


@pytest.mark.parametrize("ruleset", BUILT_IN, ids=lambda one: one.name)
def test_each_rests_on_what_is_computed(ruleset):
    assert COMPUTED[ruleset.name] <= set(ruleset.columns)


@pytest.mark.parametrize("ruleset", BUILT_IN, ids=lambda one: one.name)
def test_each_says_there_is_no_standard_and_gives_the_cautions(ruleset):
    assert any("no standard definition" in note and "four-season" in note for note in ruleset.notes)
    cautions = " ".join(ruleset.cautions).lower()
    for word in ("carbon monoxide", "propane", "propylene glycol", "lithium", "local codes"):
        assert word in cautions
    assert not any(re.search(r"\bsafe(ly|ty)?\b", words, re.IGNORECASE) for words in words_of(ruleset))


@pytest.mark.parametrize("path", sorted((RULES / "winter").glob("*.yaml")), ids=lambda path: path.stem)
def test_editors_find_the_schema(path):
    first = path.read_text(encoding="utf-8").splitlines()[0]
    assert first == "# yaml-language-server: $schema=../ruleset.schema.json"
    assert (path.parent / "../ruleset.schema.json").is_file()


@pytest.mark.parametrize("ruleset", BUILT_IN, ids=lambda one: one.name)
@pytest.mark.parametrize("gone", [{"black_tank_l": 0}, {"toilet": "cassette"}, {"toilet": "dry"}])
def test_van_without_a_black_tank_is_not_punished_for_it(ruleset, gone, vans):
    rows = score(vans(gone), [ruleset], BOOK).set_index("criterion")
    if "black_tank" in rows.index:
        assert rows.loc["black_tank", "points"] == rows.loc["black_tank", "points_max"]
    else:
        assert rows.loc["toilet", "points_high"] > 0.5 * rows.loc["toilet", "points_max"]


@pytest.mark.parametrize("ruleset", BUILT_IN, ids=lambda one: one.name)
def test_better_equipment_never_scores_lower(ruleset, vans):
    steps = [
        ("fresh_tank_heat", ["none", "electric_pad", "warm_air"]),
        ("gray_tank_insulated", [False, True]),
        ("water_lines_heated", [False, True]),
        ("window_glazing", ["single", "mixed", "double"]),
        ("heat_days", [0.5, 2, 5, 9]),
        ("heat_days_at_loss", [0.5, 2, 5, 9]),
        ("lowest_outside_c", [5, -4, -8, -15, -25, -40]),
        ("battery_days", [0.5, 1.9, 2, 30]),
        ("wall_r_si", [0.1, 0.4, 0.7, 1.2]),
        ("battery_heated", [False, True]),
        ("cab_shades_insulated", [False, True]),
    ]
    base = {"fresh_tank_l": 80, "fresh_tank_location": "underbody", "burned_fuels": 1, "battery_chemistry": "lithium"}
    for field, values in steps:
        rows = score(vans(*[{**base, field: value} for value in values]), [ruleset], BOOK)
        totals = rows[rows["criterion"] == "total"]
        for bound in ("points_low", "points_high"):
            assert totals[bound].is_monotonic_increasing, (field, bound)
