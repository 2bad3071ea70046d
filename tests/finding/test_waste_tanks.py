"""Labels of "the waste tank": of both where a table names gray and black tank apart, of the gray one elsewhere."""

import pytest

SHEET = """# Marrowfen Drift

| | Drift 19 | Drift 22 |
|---|---|---|
| Length | 5.4 m | 6.0 m |
| Berths | 2 | 2 |
| GVWR | 3,300 kg | 3,500 kg |
{tanks}
| Waste tank location | Below floor | Insulated bay |
| Waste tank heat | 12 V pad, optional | Glycol loop |
"""


@pytest.mark.parametrize(
    "tanks",
    [
        "| Gray water (gal) | 20 | 24 |\n| Black water (gal) | none | 12 |",
        "| Fresh / gray / black (gal) | 20 / 20 / none | 30 / 24 / 12 |",
    ],
)
def test_the_waste_tank_is_both_where_they_are_named_apart(facts_of, tanks):
    facts = facts_of(SHEET.format(tanks=tanks), "sheet.md")
    told = {(f.model.split()[-1], f.field, f.value) for f in facts if "tank_heat" in f.field or "tank_loc" in f.field}
    assert told >= {("19", "gray_tank_location", "underbody"), ("19", "gray_tank_heat", "electric_pad")}
    assert {(field, value) for van, field, value in told if van == "22"} >= {
        ("gray_tank_heat", "hydronic"), ("black_tank_heat", "hydronic"),
        ("gray_tank_location", "enclosed"), ("black_tank_location", "enclosed"),
    }  # fmt: skip
    assert not any(van == "19" and field.startswith("black") for van, field, _ in told)
    printed = [f.printed for f in facts if f.field == "black_tank_heat"]
    assert printed and all(one.startswith("Waste tank heat: ") for one in printed)


def test_the_waste_tank_is_the_gray_one_where_no_black_one_is_named(facts_of):
    facts = facts_of(SHEET.format(tanks="| Waste water (gal) | 20 | 24 |"), "sheet.md")
    assert not any(f.field.startswith("black") for f in facts)
