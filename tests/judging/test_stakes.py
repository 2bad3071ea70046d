"""What an answer is worth: the shrink of the band, also for fields that matter only together."""

import pandas as pd
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specscan.judging.rulesets import load_rulesets
from specscan.judging.scoring import score
from specscan.judging.stakes import stakes
from specscan.physics import DERIVED
from specscan.physics.columns import table_of
from specscan.rulebook.book import load_rulebook
from tests.judging.conftest import RULES, criterion


@pytest.fixture
def worth(ruleset_of, vans, book):
    """Give a function that says what each missing field of one van is worth."""

    def find(criteria, **van):
        rows = stakes(vans(van), [ruleset_of(criteria)], book)
        assert (rows["ruleset"] == "trial").all() and (rows["case_id"] == "0").all()
        return rows.set_index("field")["points_at_stake"].to_dict()

    return find


def test_flag_and_choice_are_worth_what_their_best_answer_settles(worth):
    scale = criterion("x", ("battery_heated", 1)) + criterion(
        "y", ("drive = 'all'", 1), ("drive = 'front'", 0.5), weight=6
    )
    assert worth(scale) == {"battery_heated": 10, "drive": 6}


def test_answer_that_settles_only_part_is_worth_that_part(worth):
    scale = criterion("x", ("fresh_tank_insulated", 0.4), ("gray_tank_insulated", 1))
    # Open: 4, 10 or 0. "Insulated" settles it at 4; the gray tank alone leaves 4 and one of 10 and 0.
    assert worth(scale) == {"fresh_tank_insulated": 10, "gray_tank_insulated": 6}


def test_known_field_has_no_row(worth):
    scale = criterion("x", ("battery_heated and heated_floor", 1))
    assert worth(scale, battery_heated=True) == {"heated_floor": 10}


def test_field_that_cannot_matter_any_more_is_worth_nothing(worth):
    scale = criterion("x", ("battery_heated and heated_floor", 1))
    assert worth(scale, battery_heated=False) == {"heated_floor": 0}


@pytest.mark.parametrize("litres", [None, [60, 100], [60, 90, 100]])
def test_number_is_tried_on_both_sides_of_its_threshold(worth, litres):
    scale = criterion("x", ("fresh_tank_l >= 80", 1))
    assert worth(scale, **({} if litres is None else {"fresh_tank_l": litres})) == {"fresh_tank_l": 10}


def test_threshold_outside_the_printed_range_does_not_count(worth):
    scale = criterion("x", ("fresh_tank_l >= 80", 1), ("battery_heated", 0.5))
    assert worth(scale, fresh_tank_l=[90, 100]) == {"fresh_tank_l": 0, "battery_heated": 0}


def test_equality_with_a_number_is_tried(worth):
    assert worth(criterion("x", ("en_grade = 3", 1)))["en_grade"] == 10
    assert worth(criterion("x", ("gray_tank_l = 0", 1)))["gray_tank_l"] == 10


def test_vague_word_and_open_set_are_missing_in_part(worth):
    scale = criterion("x", ("fresh_tank_heat = 'hydronic'", 1)) + criterion(
        "y", ("contains(insulated_surfaces, 'floor')", 1)
    )
    assert worth(scale, fresh_tank_heat="unspecified", insulated_surfaces="walls") == {
        "fresh_tank_heat": 10,
        "insulated_surfaces": 10,
    }


def test_text_is_tried_with_the_words_it_is_compared_with(worth):
    assert worth(criterion("x", ("maker = 'Ossvane'", 1))) == {"maker": 10}


DAYS = criterion("days", ("heat_days >= 7", 1), ("heat_days >= 2", 0.5))


def test_fields_that_matter_only_together_are_not_worth_nothing(worth):
    found = worth(DAYS, heater_fuel="propane", heater_type="forced_air")
    for field in ("propane_tank_l", "propane_mass_kg", "heater_consumption_l_h", "heater_input_w", "heater_rating_w"):
        assert found[field] == 10, field
    # A propane furnace does not burn what is in the vehicle's tank.
    assert found["fuel_tank_l"] == 0


def test_last_missing_field_of_a_derived_quantity_is_worth_it_alone(worth):
    found = worth(DAYS, heater_fuel="diesel", heater_type="forced_air", fuel_tank_l=90, engine_fuel="diesel")
    assert found["heater_consumption_l_h"] == 10
    assert found["propane_mass_kg"] == found["propane_tank_l"] == 0


def test_tank_whose_basis_is_not_printed_is_missing_in_part(worth):
    scale = criterion("fuel", ("usable_fuel_l >= 45", 1))
    tank = {"heater_fuel": "propane", "propane_tank_l": 50}
    assert worth(scale, **tank)["propane_tank_l"] == 10
    assert "propane_tank_l" not in worth(scale, **tank, propane_tank_l__basis="usable")


def test_unsettled_criterion_whose_fields_settle_nothing_alone_gives_them_a_joint_stake(worth):
    # One flag alone leaves every outcome of this condition open, whatever it is.
    scale = criterion("x", ("battery_heated and not heated_floor or heated_floor and not battery_heated", 1))
    assert worth(scale) == {"battery_heated": 10, "heated_floor": 10}


def test_stakes_are_the_same_however_cases_are_batched(rulesets, vans, book):
    table = vans({}, {"heater_fuel": "propane", "propane_tank_l": 40})
    plain = stakes(table, rulesets[:1], book)
    alone = pd.concat([stakes(table.iloc[[n]], rulesets[:1], book) for n in range(2)], ignore_index=True)
    pd.testing.assert_frame_equal(plain, alone)


def test_no_cases_give_no_rows(rulesets, vans, book):
    assert stakes(vans(), rulesets, book).empty


BOOK = load_rulebook(RULES)
RULESETS = load_rulesets(RULES / "winter", BOOK)
FIELDS = {
    "heater_fuel": st.sampled_from(["propane", "diesel", "electric"]),
    "heater_output_w": st.sampled_from([2000, 4000, [3000, 5000]]),
    "propane_mass_kg": st.sampled_from([10, 22, [10, 22]]),
    "fuel_tank_l": st.sampled_from([60, 90]),
    "fresh_tank_location": st.sampled_from(["interior", "underbody"]),
    "fresh_tank_heat": st.sampled_from(["none", "unspecified", "warm_air"]),
    "insulation_r_si": st.sampled_from([0.4, 1.2, [0.4, 1.2]]),
    "toilet": st.sampled_from(["cassette", "fixed_tank"]),
    "drive": st.sampled_from(["all", "rear"]),
}


@settings(max_examples=5, deadline=None)
@given(st.fixed_dictionaries({}, optional=FIELDS))
def test_stake_lies_between_nothing_and_the_whole_band(van):
    table = table_of([van], BOOK)
    totals = score(table, RULESETS[1:2], BOOK).query("criterion == 'total'").set_index("ruleset")
    found = stakes(table, RULESETS[1:2], BOOK)
    assert (found["points_at_stake"] >= 0).all()
    width = found["ruleset"].map(totals["points_high"] - totals["points_low"])
    assert (found["points_at_stake"] <= width + 1e-6).all()
    assert set(found["field"]).isdisjoint(DERIVED)
    assert (found.groupby("ruleset")["points_at_stake"].max() > 0).all()
