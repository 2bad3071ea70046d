"""Fuel on board and days of heat, against code arithmetic, trade tables and the rules of the trade."""

import numpy as np
import pytest

from specscan.physics.fuel import days
from specscan.physics.ranges import Range
from tests.physics.conftest import BTU_H_W, GALLON_L, POUND_KG


def test_fixed_tank_is_filled_to_the_code_limit(van):
    # Row F25, OSHA 29 CFR 1910.110(b)(19): 79.8 gal of propane per 100 gal of water capacity; the trade says 80 %.
    row = van(heater_fuel="propane", propane_tank_l=100, propane_tank_l__basis="water_capacity")
    assert row["usable_fuel_l"] == pytest.approx(80.0) and row["usable_fuel_l__low"] == pytest.approx(79.8)
    assert row["usable_fuel_l__high"] == pytest.approx(80.0)


def test_usable_content_is_taken_as_it_is(van):
    row = van(heater_fuel="propane", propane_tank_l=50, propane_tank_l__basis="usable")
    assert row["usable_fuel_l__low"] == row["usable_fuel_l__high"] == pytest.approx(50)


@pytest.mark.parametrize("basis", [None, "unstated"])
def test_tank_without_basis_covers_both_readings(van, basis):
    row = van(heater_fuel="propane", propane_tank_l=50, **({"propane_tank_l__basis": basis} if basis else {}))
    assert row["usable_fuel_l__low"] == pytest.approx(39.9) and row["usable_fuel_l__high"] == pytest.approx(50)
    assert row["usable_fuel_l"] == pytest.approx(40)


@pytest.mark.parametrize(("pounds", "gallons"), [(10, 2.36), (20, 4.72), (30, 7.08), (40, 9.43)])
def test_cylinders_by_weight_are_never_reduced_again(van, pounds, gallons):
    # Row F30, read at http://www.coxontool.com/index.php/References/PropaneCylinderCapacity (4.24 lb/gal).
    # The trap below row F34: 4.72 gal is the load at the 80 % limit; taking 80 % of it again is wrong.
    row = van(heater_fuel="propane", propane_mass_kg=pounds * POUND_KG)
    assert row["usable_fuel_l__low"] / GALLON_L == pytest.approx(gallons, abs=0.05)
    assert row["usable_fuel_l"] > 0.99 * gallons * GALLON_L


def test_locker_counts_for_what_it_is_made_for_and_says_so(van):
    row = van(heater_fuel="propane", propane_mass_kg=22, propane_mass_kg__basis="locker")
    assert row["usable_fuel_l"] == van(heater_fuel="propane", propane_mass_kg=22)["usable_fuel_l"]
    assert "locker is made for" in row["usable_fuel_l__how"]


def test_tank_and_cylinders_may_be_the_same_propane(van):
    tank = dict(heater_fuel="propane", propane_tank_l=30, propane_tank_l__basis="usable")
    row = van(**tank, propane_mass_kg=12)
    cylinders = van(heater_fuel="propane", propane_mass_kg=12)
    assert row["usable_fuel_l__low"] == cylinders["usable_fuel_l__low"]
    assert row["usable_fuel_l__high"] == pytest.approx(30 + cylinders["usable_fuel_l__high"])


def test_no_fixed_tank_leaves_the_cylinders_and_no_propane_is_zero(van):
    none = dict(heater_fuel="propane", propane_tank_l=0)
    assert (
        van(**none, propane_mass_kg=12)["usable_fuel_l"]
        == van(heater_fuel="propane", propane_mass_kg=12)["usable_fuel_l"]
    )
    assert van(**none)["usable_fuel_l"] == 0


def test_diesel_heater_draws_above_the_reserve(van):
    # Common practice, no source: the pick-up stops near a quarter of the tank.
    row = van(heater_fuel="diesel", fuel_tank_l=80, engine_fuel="diesel")
    assert row["usable_fuel_l"] == pytest.approx(60)
    assert (row["usable_fuel_l__low"], row["usable_fuel_l__high"]) == pytest.approx((56, 64))


@pytest.mark.parametrize(("fuel", "engine"), [("diesel", "gasoline"), ("gasoline", "diesel"), ("diesel", "electric")])
def test_heater_cannot_draw_another_fuel_from_the_vehicle(van, fuel, engine):
    row = van(heater_fuel=fuel, engine_fuel=engine, fuel_tank_l=80, heater_consumption_l_h=0.3)
    assert np.isnan(row["usable_fuel_l"]) and np.isnan(row["heat_days"])
    assert engine in row["heat_days__how"]


def test_propane_heater_does_not_burn_the_vehicles_fuel(van):
    assert np.isnan(van(heater_fuel="propane", fuel_tank_l=90)["usable_fuel_l"])


def test_unknown_fuel_gives_no_supply(van):
    row = van(fuel_tank_l=90, propane_mass_kg=20)
    assert np.isnan(row["usable_fuel_l"]) and row["usable_fuel_l__how"] is None


def test_one_third_of_the_time_is_eight_hours_and_1_4_gallons_a_day(van):
    # Row R02: 8 h × 0.17496 gal/h = 1.3996 US gal a day (abs 0.01).
    row = van(
        heater_fuel="propane",
        heater_input_w=16000 * BTU_H_W,
        propane_tank_l=14 * GALLON_L,
        propane_tank_l__basis="usable",
    )
    assert 14 / row["heat_days"] == pytest.approx(1.3996, abs=0.001)
    assert "8 (6 to 12) hours a day" in row["heat_days__how"]


def test_twelve_gallons_at_1_28_a_day_last_9_4_days():
    # Common practice, no source (issue 4): 0.16 gal/h × 8 h = 1.28 gal a day; 12 gal last 9.4 days.
    lasts = days(Range.of([12 * GALLON_L * 1e-3]), Range.of([0.16 * GALLON_L * 1e-3 / 3600]), Range.of(1 / 3))
    assert lasts.typical[0] == pytest.approx(9.375, abs=1e-9)
    assert round(float(lasts.typical[0]), 1) == 9.4


def test_thirty_pounds_at_42000_btu_last_15_4_hours(van):
    # Row R09, a trailer heating guide: 646,440 Btu over 42,000 Btu/h = 15.39 h without a pause; that guide reckons
    # 21,548 Btu/lb (row F04), this program EIA's heat per gallon and a density, so 1 % apart.
    row = van(heater_fuel="propane", heater_input_w=42_000 * BTU_H_W, propane_mass_kg=30 * POUND_KG)
    hours = row["usable_fuel_l"] / row["heater_fuel_l_h"]
    assert hours == pytest.approx(15.39, rel=0.01)


def test_electric_heat_has_no_days_of_fuel_and_says_why(van):
    row = van(heater_fuel="electric", heater_output_w=1500, propane_mass_kg=20, fuel_tank_l=90)
    assert np.isnan(row["heat_days"]) and "burns no fuel" in row["heat_days__how"]


def test_days_can_be_redone_by_hand_from_the_sentence(van):
    row = van(heater_fuel="propane", heater_consumption_l_h=0.5, propane_tank_l=40, propane_tank_l__basis="usable")
    # 40 l over 0.5 l/h × 8 h = 10 days; × 6 h and × 12 h bound it.
    assert (row["heat_days__low"], row["heat_days"], row["heat_days__high"]) == pytest.approx((40 / 6, 10, 40 / 3))
    for part in ("40 l of usable fuel", "0.5 l/h", "8 (6 to 12) hours", "10 (6.67 to 13.3) days"):
        assert part in row["heat_days__how"]


def test_sentence_on_two_fuels_gives_them_as_alternatives(van):
    how = van(heater_fuel=["diesel", "propane"], fuel_tank_l=80, propane_mass_kg=11)["usable_fuel_l__how"]
    assert "11 kg of propane" in how and " or a full diesel tank of 80 l" in how and "printed twice" not in how


def test_sentence_on_tank_and_cylinders_names_the_doubt(van):
    row = van(heater_fuel="propane", propane_tank_l=30, propane_mass_kg=11)
    assert "same propane printed twice" in row["usable_fuel_l__how"]
    none = van(heater_fuel="propane", propane_tank_l=0, propane_mass_kg=11)
    assert none["usable_fuel_l__how"].startswith("Cylinders with 11 kg")
