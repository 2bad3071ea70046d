"""Tables whose columns tell of vans that no name tells apart."""

import pytest

ROWS = (
    ("Overall length", "5.90 m", "6.40 m"), ("Wheelbase", "3.45 m", "4.04 m"), ("Sleeps", "2", "4"),
    ("Fresh water tank", "90 L", "120 L"), ("Gray water tank", "60 L", "95 L"), ("Solar", "100 W", "300 W"),
    ("Inverter", "1000 W", "2000 W"), ("Water heater", "6 L", "10 L"),
)  # fmt: skip
PROSE = "The Tusk 21 carries a house battery of 200 Ah.\n\nMarrowfen Ltd, 4 Mill Lane\n"


@pytest.fixture
def read(read_file, tmp_path):
    """Give a function that reads a page with a table of two columns, of which only some rows differ."""

    def read(differing, heads=("Value", "Details")):
        rows = [(label, one, two if place < differing else one) for place, (label, one, two) in enumerate(ROWS)]
        table = "".join(f"| {' | '.join(row)} |\n" for row in (("", *heads), ("---",) * 3, *rows))
        path = tmp_path / "page.md"
        path.write_text(f"# Marrowfen Tusk 21, model year 2027\n\n{PROSE}\n{table}", encoding="utf-8")
        return read_file(path)

    return read


def test_columns_that_contradict_one_another_on_one_van_are_left_out_and_that_is_said(read):
    result = read(len(ROWS))
    assert [van.model for van in result.found.vans] == ["Tusk 21"]
    counting = {fact.field for fact in result.found.facts if not fact.rejected and fact.how != "identity"}
    assert "battery_ah" in counting  # running text speaks of this van
    assert counting.isdisjoint(("length_mm", "fresh_tank_l", "solar_w", "sleeps"))
    assert result.record.status == "partly_read"
    assert "Tusk 21" in result.record.message and "left out" in result.record.message


def test_two_values_of_a_few_fields_are_contradictions_of_the_document_and_both_kept(read):
    result = read(3)
    lengths = {fact.value for fact in result.found.facts if fact.field == "length_mm" and not fact.rejected}
    assert lengths == {5900.0, 6400.0}
    assert result.record.status == "read"


def test_columns_of_two_vans_that_are_named_contradict_nothing(read):
    result = read(len(ROWS), heads=("Tusk 21", "Tusk 24"))
    tanks = {(fact.model, fact.value) for fact in result.found.facts if fact.field == "fresh_tank_l"}
    assert tanks == {("Tusk 21", 90.0), ("Tusk 24", 120.0)}
    assert result.record.status == "read"
