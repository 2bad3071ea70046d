"""A letter whose writer calls a van by its name once, and its maker before it."""

LETTER = """Gorse Corner, in Advent

Dear Wilmet,

You asked about our van. Ours is a Marrowfen, the Drift 21, model year 2024. I copied this from the maker's sheet, so
blame Marrowfen for mistakes.

It is built on the Bruska 2500 with a gasoline engine and rear-wheel drive. It is 19 feet 11 inches long, 6 feet 9
inches wide and 9 feet 4 inches high. The wheelbase is 148 inches, the GVWR is 9,050 pounds, and it sleeps two.

The fresh water tank holds 25 gallons. The gray tank holds 18 gallons and hangs under the floor.

Heat comes from a propane furnace, 16,000 BTU/h input. There is 200 watts of solar and a 1,000-watt inverter.

The walls have an inch of cotton batts. The windows in the living area are dual pane.

Love,
Perpetua
"""


def test_the_van_and_its_maker_are_those_of_the_sentence_and_not_the_person_written_to(vans_of):
    assert vans_of(LETTER, "letter.txt") == {("Marrowfen", "Drift 21", 2024)}
