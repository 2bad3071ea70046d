"""Tables that were pasted line by line: the same two blanks stand between all cells, whatever their lengths."""

from specscan.reading.tables.compose import Hints
from specscan.reading.text.spaced_cells import find_spaced

TABLE = """Marrowfen
Drift 2026
20 and 23 Frost

Marrowfen Vans Drift 2026 page 1 of 3

TECHNICAL DATA

DRIFT 20  DRIFT 23 FROST

VEHICLE
Engine  2.0 litre diesel  2.0 litre diesel
Driven wheels  front  all
Overall length  5.41 m  5.98 m
Wheelbase  3.45 m  4.03 m

WATER
Fresh water tank  80 l  110 l
Waste water tank  70 l
Toilet  cassette, 18 litres  dry toilet

Marrowfen Vans Drift 2026 page 2 of 3

DRIFT 20 DRIFT 23 FROST

ELECTRICAL
Solar panels  100 W  2 x 150 W
Inverter  none  1800 W

Marrowfen Vans Drift 2026 page 3 of 3

OPTIONS
- towing bracket
"""


def test_cells_parted_by_two_blanks_are_columns(found_in):
    found = found_in(TABLE)
    assert found["drive"] == {"Drift 20": {"front"}, "Drift 23 Frost": {"all"}}
    assert found["length_mm"] == {"Drift 20": {5410}, "Drift 23 Frost": {5980}}
    assert found["toilet"] == {"Drift 20": {"cassette"}, "Drift 23 Frost": {"dry"}}


def test_the_table_goes_on_below_the_repeated_head_of_the_next_page(found_in):
    found = found_in(TABLE)
    assert found["solar_w"] == {"Drift 20": {100}, "Drift 23 Frost": {300}}
    assert found["inverter_w"] == {"Drift 20": {0}, "Drift 23 Frost": {1800}}


def test_a_row_that_lacks_a_cell_is_left_out(found_in):
    assert "gray_tank_l" not in found_in(TABLE)


def test_columns_below_each_other_are_read_by_their_places():
    lines = ["Drift 20  Drift 23", *["Fresh tank  80 l  110 l"] * 6]
    assert find_spaced(lines, Hints(is_label=lambda text: text == "Fresh tank")) is None


def test_text_with_two_blanks_between_sentences_is_no_table():
    lines = ["The Drift.  A van.", "It is big.  It is warm.  We like it.", *["So.  Do you?  Yes, we do."] * 6]
    assert find_spaced(lines, Hints(is_label=lambda text: False)) is None
