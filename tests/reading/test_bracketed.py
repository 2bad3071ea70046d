"""Labels in square brackets, as dealers type them, and names parted from prices by two hyphens."""

import pytest

from specscan.reading.text.bracketed import with_labels_out_of_brackets

LISTING = """>> 2022 Marrowfen Drift 6.1 QT -- $98,700 + taxes
   (in service June 2022, 51,300 km, previous owner, no accidents)

We say:
Marrowfen called the Drift a year-round van. Last owner kept it garaged, one owner, service history.

[Chassis]  Bruska 3500, 3.0 L diesel, rear drive
[L x W x H]  6.10 m x 2.05 m x 2.75 m
[GVWR]  4,100 kg    [Fuel]  85 L    [WB]  3,600 mm
[Tanks]  fresh 90 L / grey 70 L
         fresh is indoors; grey has a 12 V heat pad and hangs below the
         floor
[Furnace]  diesel, 14,000 BTU/h output
[Inverter]  1,200 W
[x] 40 other photographs
"""


@pytest.fixture
def read(read_file, tmp_path):
    """Give a function that reads a text."""

    def read(text):
        path = tmp_path / "listing.txt"
        path.write_text(text, encoding="utf-8")
        return read_file(path).found

    return read


def values(found):
    return {(fact.field, fact.value) for fact in found.facts if not fact.rejected}


def test_labels_in_brackets_stand_before_their_values(read):
    told = values(read(LISTING))
    assert {("length_mm", 6100), ("width_mm", 2050), ("height_mm", 2750), ("gvwr_kg", 4100)} <= told
    assert {("fuel_tank_l", 85), ("wheelbase_mm", 3600), ("chassis", "Bruska 3500"), ("inverter_w", 1200)} <= told


def test_a_line_below_a_full_one_goes_on_with_it_and_one_below_a_short_one_does_not(read):
    told = values(read(LISTING))
    assert {("fresh_tank_location", "interior"), ("gray_tank_heat", "electric_pad")} <= told
    assert {("gray_tank_location", "underbody"), ("fresh_tank_l", 90), ("gray_tank_l", 70)} <= told
    assert not {("gray_tank_location", "interior"), ("fresh_tank_heat", "electric_pad")} & told


def test_remarks_in_brackets_are_no_labels():
    lines = ["[photo]  van at the lake", "[see below]  tyres", "[new]  awning", "[Fuel]  full"]
    assert with_labels_out_of_brackets(lines, {"Fuel"}.__contains__) == lines


def test_two_hyphens_part_a_name_from_its_price(read):
    assert [(van.maker, van.model) for van in read(LISTING).vans] == [("Marrowfen", "Drift 6.1 QT")]
