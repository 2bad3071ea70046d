"""Formulas of heat against published rows: walls, windows, films, air, fuels. Each check names row and source."""

import numpy as np
import pytest

from specscan.physics import conduction, convection, glazing
from tests.physics.conftest import BTU_H_W, GALLON_L

BTU_H_FT2_F = 5.678263341  # row U13, W/(m²·K)
FT3_M3 = 0.028316846592  # row U10
FILMS = 1 / 8.29 + 1 / 34.0  # row W05

# (row, source, value of the formula, value in the row, tolerance: absolute unless "rel")
CENGEL_SINGLE = conduction.transmittance(1 / 10, 0.008 / 0.78, 1 / 40)
CENGEL_DOUBLE = conduction.transmittance(1 / 10, 0.004 / 0.78, 0.01 / 0.026, 0.004 / 0.78, 1 / 40)
H06_FLOW = conduction.flow_through(conduction.transmittance(1 / 6, 0.25 / 0.80, 1 / 22), 1, 34)
H07 = (0.13, conduction.resistance_of(0.001, 50), conduction.resistance_of(0.038, 0.029), 0.006 / 0.13, 0.04)
RIB = conduction.transmittance(0.13, 0.001 / 50, 0.04)
COLD = convection.air_at(-10)

CHECKS = [
    ("H01", "Çengel Ex. 3-1", conduction.flow_through(1 / conduction.resistance_of(0.3, 0.9), 15, 14), 630, 1e-9),
    ("H02", "Çengel Ex. 3-2, heat", conduction.flow_through(CENGEL_SINGLE, 1.2, 30), 266.16, 0.5),
    ("H02", "Çengel Ex. 3-2, inner surface", conduction.inner_surface(20, -10, CENGEL_SINGLE, 0.1), -2.18, 0.05),
    ("H03", "Çengel Ex. 3-3, heat", conduction.flow_through(CENGEL_DOUBLE, 1.2, 30), 69.25, 0.1),
    ("H03", "Çengel Ex. 3-3, inner surface", conduction.inner_surface(20, -10, CENGEL_DOUBLE, 0.1), 14.23, 0.05),
    ("H04", "Çengel Ex. 3-15", conduction.flow_through(conduction.transmittance(2.3, FILMS), 126, 18), 925.7, 0.93),
    ("H05", "Young & Freedman 17.109", conduction.transmittance(0.15, 0.0042 / 0.80)
     / conduction.transmittance(0.15, 2 * 0.0042 / 0.80, 0.007 / 0.024), 2.913, 0.05),
    ("H06", "exam problem, flux", H06_FLOW, 64.81, 0.05),
    ("H06", "exam problem, inner face", 22 - H06_FLOW / 6, 11.20, 0.05),
    ("H06", "exam problem, outer face", -12 + H06_FLOW / 22, -9.05, 0.05),
    ("H07", "ISO 6946 layers, resistance", sum(H07), 1.5265, 0.0005),
    ("H07", "ISO 6946 layers, U", conduction.transmittance(*H07), 0.6551, 0.0005),
    ("H08", "parallel paths, rib", RIB, 5.8817, 0.001),
    ("H08", "parallel paths, mean", conduction.bridged(conduction.transmittance(*H07), RIB, 0.10), 1.1777, 0.001),
    ("W07", "EN 673 films", glazing.pane_u(0.004, 1.0), 5.75, 0.1),
    ("W09", "US handbook, single", 1 / 0.85 * BTU_H_FT2_F, 6.68, 0.01),
    ("W12", "cover on single glass", conduction.covered(5.75, 0.35), 1.909, 0.005),
    ("W13", "cover on double glass", conduction.covered(2.80, 0.35), 1.414, 0.005),
    ("A12", "CoolProp, viscosity at -10 °C", COLD.viscosity, 1.2451e-5, 1.2451e-7),
    ("A12", "CoolProp, conductivity at -10 °C", COLD.conductivity, 0.02359, 0.0002359),
    ("A12", "CoolProp, Prandtl number at -10 °C", COLD.prandtl, 0.7124, 0.007124),
    ("A11", "CoolProp, density at 20 °C", convection.air_at(20).density, 1.2046, 0.0036),
    ("A14", "US heating text", conduction.ventilation_flow(0.018, 0.8, 30 * 50 * 8) * 60, 10368, 1e-6),
    ("A15", "textbook", 0.075 * 0.24, 0.018, 1e-12),
    ("A16", "CIBSE 0.33", conduction.ventilation_flow(0.33 * 3600, 1 / 3600, 13) * 35, 150.15, 1e-9),
    ("A16", "CoolProp 0.3367", conduction.ventilation_flow(0.3367 * 3600, 1 / 3600, 13) * 35, 153.2, 0.05),
    ("G20", "Çengel Ex. 7-5, Nu", convection.cylinder_nusselt(42194, 0.7202), 124.45, 1.2),
    ("G20", "Çengel Ex. 7-5, film", convection.cylinder_nusselt(42194, 0.7202) * 0.02808 / 0.1, 34.95, 0.35),
    ("G21", "Çengel solutions 7-100", convection.cylinder_nusselt(32540, 0.7336), 107.0, 0.2),
    ("G22", "Incropera Ex. 7.4, ht 1.2.0", convection.cylinder_nusselt(6071, 0.7), 40.637, 0.0041),
    ("G23", "Çengel Ex. 7-2(a)", convection.plate_mixed(1.8838e6, 0.7154), 2686.4, 5.4),
    ("G24", "Çengel Ex. 7-2(b)", convection.plate_laminar(4.7096e5, 0.7154), 407.5, 0.8),
    ("G25", "Baehr & Stephan, ht 1.2.0", convection.plate_laminar(1e5, 0.7), 186.4379, 2e-4),
    ("G26", "VDI Heat Atlas, ht 1.2.0", convection.plate_turbulent(1e5, 0.7), 309.62, 4e-3),
    ("G28", "smooth plate at 6.7 m/s", convection.plate_film(6.7056, 6, -10), 17.9, 0.54),
    ("D04", "single glass, 0 °C", conduction.inner_surface(20, 0, 5.75, 0.13), 5.05, 0.01),
    ("D04", "single glass, -10 °C", conduction.inner_surface(20, -10, 5.75, 0.13), -2.43, 0.01),
    ("D05", "double, 0 °C", conduction.inner_surface(20, 0, 2.8, 0.13), 12.72, 0.01),
    ("D05", "double, -10 °C", conduction.inner_surface(20, -10, 2.8, 0.13), 9.08, 0.01),
    ("D05", "double, -20 °C", conduction.inner_surface(20, -20, 2.8, 0.13), 5.44, 0.01),
    ("D07", "factor for U 5.75", conduction.inner_surface(1, 0, 5.75, 0.13), 0.2525, 0.001),
    ("D07", "factor for U 1.2", conduction.inner_surface(1, 0, 1.2, 0.13), 0.844, 0.001),
    ("R01", "16,000 over EIA's 91,452", 16000 / 91452, 0.17496, 0.001),
    ("R17", "12,800 Btu/h over three", 12800 / 3 * BTU_H_W, 1250.4, 0.5),
]  # fmt: skip


@pytest.mark.parametrize(("row", "source", "got", "want", "within"), CHECKS, ids=[f"{c[0]} {c[1]}" for c in CHECKS])
def test_formula_gives_the_published_value(row, source, got, want, within):
    assert float(got) == pytest.approx(want, abs=within), (row, source)


@pytest.mark.parametrize(
    ("gap", "glass", "acrylic"),
    [(6, 3.28, 3.10), (8, 3.08, 2.95), (10, 2.95, 2.84), (12, 2.85, 2.76), (13, 2.81, 2.73), (16, 2.73, 2.67)],
)
def test_double_glazing_follows_en_673(gap, glass, acrylic):
    # Rows W08, computed by EN 673's formula with constants from memory, not verified; within 0.1.
    assert glazing.double_u(gap / 1000, 0.004, 1.0, 0.837) == pytest.approx(glass, abs=0.1)
    assert glazing.double_u(gap / 1000, 0.003, 0.18, 0.90) == pytest.approx(acrylic, abs=0.1)


@pytest.mark.parametrize(
    ("wind", "mixed", "turbulent", "pipe"),
    [(5, 13.51, 14.91, 56.2), (10, 25.79, 25.74, 82.6), (26.8224, 60.46, 56.05, 148.1), (30, 66.41, 61.23, 158.7)],
)
def test_wind_along_a_van_and_across_a_pipe(wind, mixed, turbulent, pipe):
    # Rows G27, ht 1.2.0 with CoolProp 8.0.0 at -10 °C, within 3 %.
    assert convection.plate_film(wind, 6, -10) == pytest.approx(mixed, rel=0.03)
    rough = convection.plate_turbulent(wind * 6 / COLD.viscosity, COLD.prandtl) * COLD.conductivity / 6
    assert rough == pytest.approx(turbulent, rel=0.03)
    assert convection.pipe_film(wind, 0.020, -10) == pytest.approx(pipe, rel=0.03)


def test_outside_film_by_wind_is_near_the_handbooks_and_not_the_smooth_plate():
    # Row W06 (from memory, not verified) beside W05 and G28: 34.0 W/(m²·K) at 24 km/h.
    assert convection.outside_film(6.7, 4.6) == pytest.approx(34.0, rel=0.05)


def test_one_layer_turns_turbulent_where_the_other_is_left():
    # Çengel ch. 7: transition at Re 5·10⁵.
    speeds = convection.TRANSITION * COLD.viscosity / 6 * np.array([0.9, 1.1])
    low, high = convection.plate_film(speeds, 6, -10) * 6 / COLD.conductivity
    assert low == pytest.approx(convection.plate_laminar(0.9 * convection.TRANSITION, COLD.prandtl))
    assert high == pytest.approx(convection.plate_mixed(1.1 * convection.TRANSITION, COLD.prandtl))


def test_air_agrees_with_coolprop_from_minus_40_to_20():
    coolprop = pytest.importorskip("CoolProp.CoolProp")
    for celsius in (-40, -20, 0, 20):
        air = convection.air_at(celsius)
        for name, value in (("D", air.density), ("L", air.conductivity), ("PRANDTL", air.prandtl)):
            assert value == pytest.approx(coolprop.PropsSI(name, "T", celsius + 273.15, "P", 101325, "Air"), rel=0.01)


def test_correlations_agree_with_ht():
    cylinder = pytest.importorskip("ht.conv_external")
    for reynolds in (3e2, 6e3, 9e4):
        assert convection.cylinder_nusselt(reynolds, 0.71) == pytest.approx(
            cylinder.Nu_cylinder_Churchill_Bernstein(reynolds, 0.71), rel=1e-6
        )


def test_fuel_rows_by_arithmetic(values):
    # Rows R01, R02, R07 to R10 (EIA's 91,452 Btu/US gal; 91,500 in R07 and R08).
    heat = float(values["propane_higher_heating_value"].typical)
    gallon_h = 16000 * BTU_H_W / heat * 3600 * 1000 / GALLON_L
    assert gallon_h == pytest.approx(0.17496, abs=0.001)
    assert 8 * gallon_h == pytest.approx(1.3996, abs=0.01)
    assert 30000 * BTU_H_W / heat * 4 * 3600 * 1000 / GALLON_L == pytest.approx(1.32, abs=0.02)
