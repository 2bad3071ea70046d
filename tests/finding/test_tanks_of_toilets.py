"""The tank that a list names behind a toilet with a tank of its own, if it is small, and a tank of another name."""

import pytest

GALLON = 3.785411784  # NIST SP 811 (2008), Appendix B

LINES = [
    ("UK", "Cassette toilet, 17.5 litre waste tank", {"toilet": "cassette", "cassette_l": 17.5}),
    ("UK", "Cassette toilet, waste holding tank 17.5 litres", {"toilet": "cassette", "cassette_l": 17.5}),
    ("US", "Swivel cassette toilet (4.5 gal waste tank)", {"toilet": "cassette", "cassette_l": 4.5 * GALLON}),
    ("US", "Portable toilet, 5 gal holding tank", {"toilet": "portable", "cassette_l": 5 * GALLON}),
    ("DE", "Kassettentoilette, 17,5 l Fäkalienbehälter", {"toilet": "cassette", "cassette_l": 17.5}),
    ("DE", "Kassettentoilette mit 17,5 l Fäkalienbehälter", {"toilet": "cassette", "cassette_l": 17.5}),
    ("DE", "Kassettentoilette (Fäkalienbehälter 17,5 l)", {"toilet": "cassette", "cassette_l": 17.5}),
    ("UK", "Cassette toilet, 70 litre waste tank", {"toilet": "cassette", "gray_tank_l": 70}),
]


def test_a_word_for_what_is_included_is_no_part_of_the_base_vehicle(states):
    states("FR", "Porteur : Inclus Gervan Fourgon 35, boîte manuelle", {"chassis": "Gervan Fourgon 35"})


@pytest.mark.parametrize(("region", "line", "expected"), LINES)
def test_a_small_tank_behind_a_cassette_toilet_is_its_cassette(states, region, line, expected):
    states(region, line, expected)
