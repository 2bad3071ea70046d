"""Thermal resistance of the walls' insulation, against a layered wall worked by hand and published limits."""

import numpy as np
import pytest

from specscan.physics.ranges import Range
from specscan.physics.wall import layer


def test_layer_of_a_worked_wall():
    # Row H07 (ISO 6946): 38 mm at 0.029 W/(m·K) between 1 mm steel and 6 mm plywood, films 0.13 and 0.04: R 1.5265.
    insulation = float(layer(Range.of(0.038), Range.of(0.029)).typical)
    assert 0.13 + 0.001 / 50 + insulation + 0.006 / 0.13 + 0.04 == pytest.approx(1.5265, abs=0.0005)


def test_printed_resistance_comes_first(van):
    row = van(insulation_r_si=1.2, insulation_material="cork", insulation_thickness_mm=20)
    assert row["wall_r_si__low"] == row["wall_r_si__high"] == 1.2


def test_material_and_thickness_give_a_range(van):
    # Row K08: sheep wool declared at 0.039 W/(m·K): 50 mm are 1.28 m²·K/W.
    row = van(insulation_material="sheep_wool", insulation_thickness_mm=50)
    assert row["wall_r_si"] == pytest.approx(0.050 / 0.039)
    assert row["wall_r_si__low"] < row["wall_r_si"] < row["wall_r_si__high"]
    assert "50 mm of sheep_wool" in row["wall_r_si__how"]


def test_rigid_foam_covers_the_worked_wall(van):
    row = van(insulation_material="rigid_foam", insulation_thickness_mm=38)
    assert row["wall_r_si__low"] <= 0.038 / 0.029 <= row["wall_r_si__high"]  # row H07


def test_several_materials_range_over_all_of_them(van):
    both = van(insulation_material=["cork", "spray_foam"], insulation_thickness_mm=40)
    each = [van(insulation_material=one, insulation_thickness_mm=40) for one in ("cork", "spray_foam")]
    assert both["wall_r_si__low"] == min(one["wall_r_si__low"] for one in each)
    assert both["wall_r_si__high"] == max(one["wall_r_si__high"] for one in each)


def test_foil_alone_counts_for_little_and_never_for_its_thickness(van):
    # Rows K11 and K12, Natural Resources Canada: at most R 3 (0.53 m²·K/W) beside an air space.
    thin, thick = (van(insulation_material="reflective_foil", insulation_thickness_mm=mm) for mm in (5, 50))
    assert thin["wall_r_si__high"] == thick["wall_r_si__high"] == pytest.approx(0.53)


def test_foil_beside_a_layer_adds_no_more_than_its_own(van):
    wool, foiled = (
        van(insulation_material=material, insulation_thickness_mm=40)
        for material in ("sheep_wool", ["sheep_wool", "reflective_foil"])
    )
    assert foiled["wall_r_si__low"] == wool["wall_r_si__low"]
    assert foiled["wall_r_si__high"] == pytest.approx(wool["wall_r_si__high"] + 0.53)


@pytest.mark.parametrize("given", [{"insulation_material": "cork"}, {"insulation_thickness_mm": 40}, {}])
def test_half_of_what_is_needed_gives_nothing(van, given):
    row = van(**given)
    assert np.isnan(row["wall_r_si"]) and row["wall_r_si__how"] is None
