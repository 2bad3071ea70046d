"""Several figures of one label that are printed in two units."""

import pytest


@pytest.mark.parametrize("body", [
    "31 / 24 / 13 gal (117 / 91 / 49 L)", "31/24/13 gal (117/91/49 L)", "31 / 24 / 13 gal, 117 / 91 / 49 L",
    "117 / 91 / 49 L (31 / 24 / 13 gal)",
])  # fmt: skip
def test_a_second_list_in_another_unit_only_repeats(states, body):
    expected = {"fresh_tank_l": 117.3, "gray_tank_l": 91, "black_tank_l": 49.1}
    states("US", f"Fresh / gray / black: {body}", expected)


@pytest.mark.parametrize(("region", "line"), [
    ("UK", "L x W x H: 6.36 x 2.05 x 2.72 m (20 ft 10 in x 6 ft 9 in x 8 ft 11 in)"),
    ("UK", "Length × width × height: 6.36 × 2.05 × 2.72 m / 20'10\" × 6'9\" × 8'11\""),
    ("UK", "Length / width / height: 6360 / 2050 / 2720 mm (20'10\" / 6'9\" / 8'11\")"),
    ("DE", "Länge / Breite / Höhe: 6,36 / 2,05 / 2,72 m (20'10\" / 6'9\" / 8'11\")"),
])  # fmt: skip
def test_so_do_outside_dimensions(states, region, line):
    states(region, line, {"length_mm": 6360, "width_mm": 2050, "height_mm": 2720})


def test_a_bracket_with_other_amounts_is_no_repetition(printed):
    assert printed("US", "Fresh / gray: 31 / 24 gal (27 / 20 L)").get("fresh_tank_l") != pytest.approx(117.3, rel=0.01)
