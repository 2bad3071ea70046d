"""Full stops and small letters that stand for bullets in typed lists."""

import pytest


@pytest.mark.parametrize("sign", [".", "o"])
def test_items_of_a_typed_list_stand_each_for_itself(read_file, tmp_path, sign):
    items = (
        "Fresh water 30 gal",
        "Solar 200 W",
        "Gray tank under the floor, insulated",
        "Inverter 2,000 W",
        "Sleeps two",
    )
    head = "MARROWFEN DRIFT 21\n\nModel year 2026\n\nOverall length: 21 ft\nGVWR: 9,350 lb\n\nTHE VAN\n"
    path = tmp_path / "drift.txt"
    path.write_text(head + "".join(f" {sign} {item}\n" for item in items), encoding="utf-8")
    facts = {fact.field: (fact.value, fact.printed) for fact in read_file(path).found.facts if not fact.rejected}
    assert facts["solar_w"] == (200, "Solar 200 W")
    assert facts["inverter_w"] == (2000, "Inverter 2,000 W")
    assert facts["gray_tank_insulated"][0] is True
