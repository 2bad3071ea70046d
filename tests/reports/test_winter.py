"""The winter behaviour of vans of a dataset: frames, verdict on the nights, questions, cautions, pictures."""

import json
import shutil

import numpy as np
import pytest

from specscan import api
from specscan.records.errors import NotFoundError, SpecscanError
from tests.scanning.made import text
from tests.winter_sheets import BROCHURE, winter_dataset


@pytest.fixture(scope="module")
def db(tmp_path_factory):
    return winter_dataset(tmp_path_factory.mktemp("winter"), "4 kW")


@pytest.fixture(scope="module")
def both(db):
    return api.winter(db)


def test_every_frame_is_about_the_vans_asked_for(db, both):
    assert both.vans["title"].tolist() == ["Marrowfen Dell 12 2026", "Marrowfen Drift 21 2026"]
    one = api.winter(db, vans=["Drift 21"])
    ids = set(one.vans["van_id"])
    for name in ("figures", "envelope", "limits", "curve", "cooling", "reached", "tanks", "glass", "draining"):
        frame = getattr(one.tables, name)
        assert set(frame["van_id"]) == ids, name
    assert {"heat_days", "stay_days", "held_inside_c"} <= set(one.tables.curve.columns)


def test_parts_of_the_envelope_add_up_to_the_loss(both):
    drift = both.vans["van_id"].iloc[1]
    lost = both.tables.envelope[both.tables.envelope["van_id"] == drift]
    figures = both.tables.figures[both.tables.figures["van_id"] == drift].set_index("figure")
    kelvin = both.conditions.inside_c - both.conditions.coldest_c
    gains = 2 * 70  # W from two people; rules/values
    assert lost["value"].sum() * kelvin - gains == pytest.approx(figures.loc["heat_loss_w", "value"], rel=1e-6)
    by_hand = lost.dropna(subset=["u_value"])
    assert (by_hand["area_m2"].astype(float) * by_hand["u_value"].astype(float)).tolist() == pytest.approx(
        by_hand["value"].tolist()
    )


def test_nights_end_before_or_not_or_nobody_knows(db):
    dell = api.winter(db, vans=["Dell 12"], changes={"running_water": False})
    assert dell.vans["lasts"].tolist() == ["unknown"]  # nothing says how much propane
    drift = api.winter(db, vans=["Drift 21"], changes={"running_water": False, "shore_power": True, "nights": 2})
    assert drift.vans["lasts"].tolist() == ["yes"]
    drift = api.winter(db, vans=["Drift 21"], changes={"running_water": False, "shore_power": True, "nights": 60})
    assert drift.vans["lasts"].tolist() == ["no"]


def test_conditions_change_the_answer_and_come_by_name(db, both):
    def days(outlook):
        figures = outlook.tables.figures
        return figures[figures["figure"] == "heat_days_at_loss"]["value"].iloc[1]

    weekend = api.winter(db, conditions="ski_weekend", changes={"vehicle_fuel_share": 1.0})
    assert days(weekend) > days(both)
    assert weekend.conditions.nights == 2
    with pytest.raises(NotFoundError, match="no conditions are called"):
        api.winter(db, conditions="summer")


def test_scan_under_other_conditions_is_what_winter_starts_from(tmp_path):
    (tmp_path / "drift.txt").write_text(BROCHURE.format(name="21", heat="4 kW"), encoding="utf-8")
    db = tmp_path / "vans.duckdb"
    api.scan([tmp_path / "drift.txt"], db, jobs=1, conditions="ski_weekend", changes={"nights": 3})
    outlook = api.winter(db)
    assert (outlook.conditions.outside_c, outlook.conditions.nights) == (-12, 3)
    settled = api.query("SELECT field, value_num, status FROM settled WHERE field = 'heat_days_at_loss'", db)
    figures = outlook.tables.figures.set_index("figure")
    assert settled["status"].unique().tolist() == ["derived"]
    assert settled["value_num"].iloc[0] == pytest.approx(figures.loc["heat_days_at_loss", "value"])


def test_questions_name_alternatives_once_and_what_they_make_known(both):
    dell = both.questions[both.questions["van_id"] == both.vans["van_id"].iloc[0]].set_index("field")
    assert dell.loc["propane_mass_kg", "makes_known"]
    assert "propane_mass_kg" in (dell.loc["propane_tank_l", "instead_of"], "propane_mass_kg")
    assert (dell["instead_of"] != "").sum() > 0
    assert dell["question"].str.startswith(("Ask", "Look", "Measure")).all()


def test_cautions_follow_what_is_on_board(db):
    diesel = " ".join(api.winter(db, vans=["Drift 21"]).cautions)
    gas = " ".join(api.winter(db, vans=["Dell 12"]).cautions)
    assert "Carbon monoxide" in diesel and "Lithium" in diesel and "Propane:" not in diesel
    assert "Propane:" in gas
    for words in (diesel, gas):
        assert "local codes" in words and "ethylene glycol is poisonous" in words


def test_all_of_it_goes_into_json_without_figures_that_json_has_not(both):
    told = json.loads(json.dumps(both.as_dict(), allow_nan=False))
    assert {"conditions", "vans", "figures", "envelope", "limits", "curve", "cooling", "questions"} <= set(told)
    unknown = [row for row in told["figures"] if row["figure"] == "stay_days"][0]
    assert unknown["value"] is None and unknown["needs"]


@pytest.mark.parametrize(("ending", "starts"), [(".png", b"\x89PNG"), (".svg", b"<?xml")])
def test_picture_is_drawn(both, tmp_path, ending, starts):
    pytest.importorskip("matplotlib")
    path = api.plot_winter(both, tmp_path / f"winter{ending}")
    data = path.read_bytes()
    assert data.startswith(starts) and len(data) > 10_000


def test_picture_names_the_van_without_a_curve_and_both_titles(both, tmp_path):
    pytest.importorskip("matplotlib")
    import matplotlib as mpl

    with mpl.rc_context({"svg.fonttype": "none"}):
        words = api.plot_winter(both, tmp_path / "winter.svg").read_text(encoding="utf-8")
    assert "Days of heat from the fuel on board" in words and "Inside after the heating stops" in words
    assert "no curve" in words and words.count("Marrowfen Dell 12 2026") == 2  # in the legend and in the note


@pytest.mark.parametrize("name", ["winter.pdf", "winter"])
def test_picture_of_another_kind_is_refused(both, tmp_path, name):
    with pytest.raises(SpecscanError, match="ends in .png or .svg"):
        api.plot_winter(both, tmp_path / name)


def test_curve_never_lasts_longer_where_it_is_colder(both):
    for _, own in both.tables.curve.groupby("van_id"):
        days = own.sort_values("outside_c")["heat_days"].dropna().to_numpy()
        assert (np.diff(days) >= -1e-9).all()


def test_reports_go_by_the_rules_of_the_last_scan_unless_others_are_named(tmp_path):
    own = api.copy_rules(tmp_path / "rules")
    body = own / "values" / "living.yaml"
    body.write_text(
        body.read_text(encoding="utf-8").replace(
            "water_per_person: {low: 5, typical: 10, high: 20", "water_per_person: {low: 25, typical: 25, high: 25"
        ),
        encoding="utf-8",
    )
    (tmp_path / "a.txt").write_text(text(fresh=100))
    api.scan([tmp_path / "a.txt"], tmp_path / "a.duckdb", rules=own, jobs=1)

    def days(**rules):
        figures = api.winter(tmp_path / "a.duckdb", **rules).tables.figures.set_index("figure")
        return figures.loc["fresh_water_days", "value"]

    assert (days(), days(rules=api.rules_folder())) == pytest.approx((2.0, 5.0))
    assert "What ends the stay, in days" in api.report(tmp_path / "a.duckdb", tmp_path / "a.html").html
    other = api.report(tmp_path / "a.duckdb", tmp_path / "b.html", rules=api.rules_folder()).html
    assert "curves and limits of winter are left out for that reason" in other
    shutil.rmtree(own)
    assert days() == pytest.approx(5.0)  # its folder is gone: the built-in ones
