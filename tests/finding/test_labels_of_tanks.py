"""Labels that name several tanks at once: by letters, parted by other signs than slashes."""

import pytest

from tests.finding.two_drifts import two_drifts

GALLON = 3.785411784  # litres; NIST SP 811 (2008), Appendix B.8
NOTE = "F fresh, G gray, B black. Gallons are US gallons.\n"


def values(facts, *fields):
    return {(fact.model, fact.field): fact.value for fact in facts if fact.field in fields}


@pytest.mark.parametrize(
    "row", ["Fresh - gray - black (gal) | 20 - 30 - 10", "Fresh · gray · black (gal) | 20 · 30 · 10",
            "Tanks F/G/B (gal) | 20/30/10"],
)  # fmt: skip
def test_tanks_of_one_label_have_their_own_figures_whatever_sign_parts_them(facts_of, row):
    found = values(facts_of(two_drifts(f"| {row} | – |"), "leaflet.md"), "fresh_tank_l", "gray_tank_l", "black_tank_l")
    assert {field: round(value / GALLON) for (van, field), value in found.items() if van == "Drift 19"} == {
        "fresh_tank_l": 20, "gray_tank_l": 30, "black_tank_l": 10
    }  # fmt: skip


def test_letters_that_a_note_explains_name_tanks_in_labels_and_a_denied_heat_denies_no_tank(facts_of):
    rows = ["| Tank heat F / G / B | no / 12 V pad / no | no / furnace duct / furnace duct |"]
    found = values(
        facts_of(two_drifts(*rows) + NOTE, "leaflet.md"),
        "fresh_tank_l", "black_tank_l", "fresh_tank_heat", "gray_tank_heat", "black_tank_heat",
    )  # fmt: skip
    assert found == {
        ("Drift 19", "fresh_tank_heat"): "none", ("Drift 21", "fresh_tank_heat"): "none",
        ("Drift 19", "gray_tank_heat"): "electric_pad", ("Drift 21", "gray_tank_heat"): "warm_air",
        ("Drift 19", "black_tank_heat"): "none", ("Drift 21", "black_tank_heat"): "warm_air",
    }  # fmt: skip


def test_fresh_lines_are_lines_and_no_tank(facts_of):
    found = values(
        facts_of(two_drifts("| Fresh lines | cabin and underfloor | cabin |"), "leaflet.md"),
        "fresh_tank_location", "water_lines_location",
    )  # fmt: skip
    assert found == {("Drift 19", "water_lines_location"): "mixed", ("Drift 21", "water_lines_location"): "interior"}


def test_the_waste_tank_beside_the_fresh_one_is_gray_and_black_where_the_table_has_both(facts_of):
    tanks = "| Tanks, gal fresh / gray / black | 22 / 18 / 10 | 38 / 32 / 18 |"
    rows = tanks + "\n| Tank heat fresh / waste | none / 12 V pads | none / none |"
    fields = ("fresh_tank_l", "black_tank_l", "fresh_tank_heat", "gray_tank_heat", "black_tank_heat")
    found = values(facts_of(two_drifts(rows), "leaflet.md"), *fields)
    assert {(van, field): value for (van, field), value in found.items() if field.endswith("heat")} == {
        ("Drift 19", "fresh_tank_heat"): "none", ("Drift 21", "fresh_tank_heat"): "none",
        ("Drift 19", "gray_tank_heat"): "electric_pad", ("Drift 21", "gray_tank_heat"): "none",
        ("Drift 19", "black_tank_heat"): "electric_pad", ("Drift 21", "black_tank_heat"): "none",
    }  # fmt: skip
    assert found["Drift 21", "fresh_tank_l"] == pytest.approx(38 * GALLON, rel=0.001)
    assert found["Drift 19", "black_tank_l"] == pytest.approx(10 * GALLON, rel=0.001)


def test_pads_on_every_waste_tank_are_on_both(facts_of):
    text = two_drifts("| Black tank | 10 gal | 18 gal |") + "\n- 12 V heating pads on every waste tank\n"
    found = values(facts_of(text, "leaflet.md"), "gray_tank_heat", "black_tank_heat")
    assert set(found.values()) == {"electric_pad"} and len(found) == 4
