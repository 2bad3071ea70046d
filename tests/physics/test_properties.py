"""What must hold for any van and any winter: more insulation, more cold, less knowledge and wider assumptions."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specscan.physics.assumptions import Assumptions
from specscan.physics.columns import Columns, table_of
from specscan.physics.conditions import conditions_named
from specscan.physics.derived import DERIVED, derive_numbers
from specscan.physics.ranges import Range
from specscan.physics.winter import Winter
from specscan.rulebook.book import load_rulebook
from tests.physics.conftest import RULES

BOOK = load_rulebook(RULES)
UNDER = conditions_named(RULES)
PARTS = ("low", "typical", "high")
SLACK = 1e-9
DRAWN = settings(max_examples=20, deadline=None)

HEATERS = st.sampled_from(
    [
        {"heater_fuel": "propane", "heater_input_w": 4700, "propane_tank_l": 60},
        {"heater_fuel": "propane", "heater_output_w": 4000, "propane_mass_kg": 22},
        {"heater_fuel": "diesel", "heater_output_w": 4000, "heater_consumption_l_h": 0.5, "fuel_tank_l": 90},
        {"heater_fuel": "diesel", "heater_rating_w": 2200, "fuel_tank_l": 60},
        {"heater_fuel": "gasoline", "heater_output_w": 3000, "fuel_tank_l": 75},
        {"heater_fuel": ["diesel", "propane"], "heater_output_w": 6000, "propane_mass_kg": 11, "fuel_tank_l": 90},
    ]
)
WATER = st.fixed_dictionaries(
    {"fresh_tank_l": st.floats(40, 140), "gray_tank_l": st.floats(30, 120)},
    optional={
        **{
            f"{tank}_tank_location": st.sampled_from(["interior", "underbody", "enclosed"])
            for tank in ("fresh", "gray")
        },
        **{
            f"{tank}_tank_heat": st.sampled_from(["none", "electric_pad", "hydronic", "heated_compartment"])
            for tank in ("fresh", "gray")
        },
        "gray_tank_insulated": st.booleans(),
        "water_lines_location": st.sampled_from(["interior", "enclosed", "exterior"]),
        "water_lines_insulated": st.booleans(),
        "water_lines_heated": st.booleans(),
        "toilet": st.sampled_from(["cassette", "dry", "fixed_tank"]),
        "cassette_l": st.floats(15, 22),
        "black_tank_l": st.floats(20, 60),
        "battery_ah": st.floats(80, 600),
        "battery_chemistry": st.sampled_from(["lithium", "agm"]),
        "battery_heated": st.booleans(),
        "solar_w": st.floats(0, 600),
    },
)
# Printed figures that lie within what is assumed where nothing is printed (rules/values/body.yaml).
BODY = st.fixed_dictionaries(
    {"length_mm": st.floats(5400, 7300)},
    optional={
        "insulation_r_si": st.floats(0.1, 1.6),
        "thermal_break": st.booleans(),
        "window_glazing": st.sampled_from(["single", "double"]),
        "cab_shades_insulated": st.booleans(),
        "rear_shades_insulated": st.booleans(),
        "insulated_surfaces": st.sampled_from(["walls", "ceiling+walls", "ceiling+floor+walls"]),
    },
)


@st.composite
def vans(draw):
    """Give the fields of a van whose heater, fuel and size are known, the rest as it comes."""
    return {**draw(HEATERS), **draw(WATER), **draw(BODY)}


def winter_of(*cases, outside=None, values=None, **changes):
    under = UNDER.changed(changes)
    return Winter(Columns(table_of(cases, BOOK)), values or Assumptions(BOOK), under, outside)


def never_rises(arrays, why):
    for one in arrays:
        assert (np.diff(one) <= SLACK * np.abs(one[:-1])).all(), (why, one)


BETTER = {
    "insulation_r_si": st.tuples(st.floats(0.1, 2.0), st.floats(0.1, 2.0)).map(sorted),
    "insulation_thickness_mm": st.tuples(st.floats(5, 100), st.floats(5, 100)).map(sorted),
    "thermal_break": st.just([False, True]),
    "window_glazing": st.just(["single", "mixed", "double"]),
    "cab_shades_insulated": st.just([False, True]),
    "rear_shades_insulated": st.just([False, True]),
    "insulated_surfaces": st.just(["walls", "floor+walls", "ceiling+floor+walls"]),
}


@pytest.mark.parametrize("field", BETTER)
@settings(max_examples=12, deadline=None)
@given(vans(), st.data(), st.floats(-40, 5))
def test_more_insulation_never_needs_more_fuel(field, van, data, outside):
    steps = data.draw(BETTER[field])
    rest = {name: value for name, value in van.items() if name != field}
    if field == "insulation_thickness_mm":
        rest = {**rest, "insulation_material": "rigid_foam"}
        rest.pop("insulation_r_si", None)
    found = winter_of(*({**rest, field: step} for step in steps), outside_c=outside, coldest_c=outside)
    for part in PARTS:
        never_rises([getattr(found.fuel_per_day[fuel], part) for fuel in found.fuel_per_day], field)
        never_rises([getattr(found.design_loss, part), -getattr(found.heat_days, part)], field)
        never_rises([getattr(found.lowest_outside, part), -getattr(found.held_inside, part)], field)


@DRAWN
@given(vans(), st.booleans(), st.booleans())
def test_colder_never_lasts_longer(van, shore, running):
    # The sweep is one call from -45 to 10 °C; each limit of the stay is held against its neighbour that is warmer.
    colder = np.arange(10.0, -45.5, -5.0)
    found = winter_of(van, outside=colder, shore_power=shore, running_water=running)
    for name, limit in {**found.shaped_limits, "stay": found.stay, "heating": found.heating_stay}.items():
        if np.isfinite(limit.typical).any():
            assert np.isfinite(limit.typical).all(), name
            never_rises([getattr(limit, part)[0] for part in PARTS], name)


@DRAWN
@given(vans(), st.floats(-40, 5), st.floats(0, 20), st.floats(0, 20))
def test_windier_never_lasts_longer_and_never_freezes_later(van, outside, one, other):
    calm, windy = (winter_of(van, outside_c=outside, coldest_c=outside, wind_m_s=wind) for wind in sorted((one, other)))
    for first, second in (
        (calm.heat_days, windy.heat_days), (calm.stay, windy.stay), (calm.tank_time("gray"), windy.tank_time("gray")),
    ):  # fmt: skip
        for part in PARTS:
            before, after = getattr(first, part), getattr(second, part)
            assert (np.isnan(before) | (after <= before * (1 + SLACK))).all()


def assert_encloses(wide, narrow, row_wide, row_narrow, note):
    for name in DERIVED:
        low, high = wide[f"{name}__low"].iloc[row_wide], wide[f"{name}__high"].iloc[row_wide]
        if np.isnan(low):
            continue  # not known at all: nothing is narrowed
        least, most = narrow[f"{name}__low"].iloc[row_narrow], narrow[f"{name}__high"].iloc[row_narrow]
        if np.isnan(least):
            continue
        assert low <= least + SLACK * abs(least) and high >= most - SLACK * abs(most), (name, note)


OPEN = {
    "length_mm", "insulation_r_si", "thermal_break", "window_glazing", "cab_shades_insulated", "rear_shades_insulated",
    "battery_chemistry", "battery_heated", "gray_tank_insulated", "gray_tank_heat", "fresh_tank_heat",
    "gray_tank_location", "fresh_tank_location", "water_lines_insulated", "water_lines_heated",
}  # fmt: skip


@DRAWN
@given(vans(), st.data())
def test_unknown_inputs_never_narrow_a_range(van, data):
    gone = data.draw(st.sets(st.sampled_from(sorted(OPEN & set(van))), min_size=1))
    found = derive_numbers(table_of([van, {k: v for k, v in van.items() if k not in gone}], BOOK), BOOK)
    assert_encloses(found, found, 1, 0, gone)


NAMES = sorted(name for name in BOOK.values if not name.endswith("horizon"))


@settings(max_examples=25, deadline=None)
@given(vans(), st.sets(st.sampled_from(NAMES), min_size=1, max_size=12), st.floats(0, 0.4), st.floats(0, 0.4))
def test_wider_assumption_never_gives_a_narrower_answer(van, names, down, up):
    known = Assumptions(BOOK)
    usual = {name: known[name] for name in names}
    wide = {
        name: Range.of(one.low - down * abs(one.low), one.typical, one.high + up * abs(one.high))
        for name, one in usual.items()
    }
    before, after = (computed(van, Assumptions(BOOK, fixed)) for fixed in (usual, wide))
    for name, first in before.items():
        second = after[name]
        if second.known.all() and first.known.all():
            assert second.low <= first.low + SLACK * abs(first.low), name
            assert second.high >= first.high - SLACK * abs(first.high), name


def computed(van, values):
    columns = Columns(table_of([van], BOOK))
    return {name: spec.compute(columns, values, BOOK) for name, spec in DERIVED.items()}
