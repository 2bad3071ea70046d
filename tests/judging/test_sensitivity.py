"""How the order of vans moves with the weights."""

import json

import numpy as np
import pytest
from click.testing import CliRunner

from specscan import api
from specscan.cli.main import main
from specscan.judging.sensitivity import ranked, sweep
from specscan.records.errors import SpecscanError

WEIGHTS = np.array([60.0, 40.0])


def run(low, high=None, **more):
    low = np.array(low, dtype=float)
    high = low if high is None else np.array(high, dtype=float)
    return sweep(low, high, WEIGHTS, **{"draws": 500, "spread": 2.0, "seed": 1, **more})


def test_a_van_that_is_better_in_everything_is_ahead_whatever_the_weights():
    found = run([[60, 40], [30, 20]])
    assert (found.ranks == [1, 2]).all()
    assert found.above[0, 1] == 1 and found.above[1, 0] == 0


def test_vans_that_trade_one_criterion_for_another_change_places():
    """All of the first criterion against all of the second: 60 to 40 as stated, even at a factor of 1.5 between them.

    ln a - ln b of two even draws between ±ln 2 is triangular: P(a/b < 2/3) = (2 ln 2 - ln 1.5)² / (2 (2 ln 2)²).
    """
    found = run([[60, 0], [0, 40]], draws=20_000)
    behind = (found.ranks[:, 0] == 2).mean()
    assert behind == pytest.approx(0.250, abs=0.01)
    assert found.above[0, 1] == pytest.approx(1 - behind, abs=0.01)


def test_the_sum_of_the_weights_stays_so_that_points_remain_out_of_the_same():
    found = run([[60, 40], [0, 0]])
    assert found.low[:, 0] == pytest.approx(100)


def test_open_questions_leave_places_open_whatever_the_draw():
    found = run([[10, 10], [20, 20]], [[60, 40], [30, 30]])
    assert (found.best == 1).all() and (found.worst == 2).all()
    assert (found.above == 0).all()


def test_the_same_seed_gives_the_same_sweep_and_another_one_another():
    vans = [[60, 0], [0, 40], [30, 20]]
    one, same, other = run(vans), run(vans), run(vans, seed=2)
    assert (one.ranks == same.ranks).all() and (one.low != other.low).any()


def test_equal_vans_share_a_place():
    assert ranked(np.array([[50.0, 50.0, 20.0]]), np.array([[50.0, 50.0, 20.0]])).ranks.tolist() == [[1, 1, 3]]


def test_the_stated_ranks_are_those_of_the_scores_and_shares_add_up(demo_db):
    found = api.sensitivity(demo_db, draws=200)
    totals = api.query(
        "SELECT points_low, points_high FROM scores WHERE criterion = 'total' AND ruleset = 'deep_winter_wet' "
        "AND equipment = 'standard'", demo_db,
    )  # fmt: skip
    assert sorted(found.vans["points_low"]) == pytest.approx(sorted(totals["points_low"]))
    middle = (found.vans["points_low"] + found.vans["points_high"]) / 2
    assert (middle.diff().dropna() < 1e-6).all() and found.vans["rank"].iloc[0] == 1
    assert found.shares.sum(axis=1).to_numpy() == pytest.approx(1)
    assert len(found.orders) > 10 and found.orders["share"].between(0, 1).all()


def test_the_command_says_that_overlapping_bands_have_no_order(demo_db):
    said = CliRunner().invoke(main, ["sensitivity", "--draws", "50", "--db", str(demo_db)])
    assert said.exit_code == 0, said.output
    assert "Where bands overlap, neither van is the better one." in said.output
    data = json.loads(CliRunner().invoke(main, ["sensitivity", "--draws", "50", "--json", "--db", str(demo_db)]).output)
    assert len(data["vans"]) == len(data["shares"]) > 20
    with pytest.raises(SpecscanError, match="spread is above 1"):
        api.sensitivity(demo_db, spread=1.0)
