"""Labels of a draft: repeats are one, options that repeat the standard are none, doubt is refused."""

import random

import pytest

from tests.proving_ground.ledger import Ledger
from tests.proving_ground.pages import Draft, Look, Page, Para, Piece, Said
from tests.proving_ground.truth import UnfairError, labels_of
from tests.proving_ground.vans import draw_family

FAMILY = draw_family(random.Random(3), "us", 2)


def labels(*pages):
    """Give the labels of pages that are lists of what they state of the first van."""
    made = []
    for says in pages:
        block = Para(text="x")
        block.state(0, Piece("x", tuple(says)))
        made.append(Page([block]))
    found = labels_of(Draft(made, Look(), "en"), FAMILY, paged=True)
    return [(one.field, one.value, one.availability, one.pages) for one in found]


def test_a_value_printed_twice_is_one_label_with_both_pages():
    assert labels([Said("solar_w", "200")], [Said("solar_w", "200")]) == [("solar_w", "200", "standard", ["1", "2"])]


def test_an_option_that_repeats_the_standard_is_no_label():
    standard, option = Said("toilet", "dry"), Said("toilet", "dry", "optional")
    assert labels([option, standard]) == [("toilet", "dry", "standard", ["1"])]


def test_an_option_that_differs_is_a_second_label():
    found = labels([Said("solar_w", "200"), Said("solar_w", "400", "optional")])
    assert [(value, availability) for _, value, availability, _ in found] == [("200", "standard"), ("400", "optional")]


def test_what_is_offered_and_not_offered_is_refused():
    with pytest.raises(UnfairError, match="not offered"):
        labels([Said("heated_floor", "yes"), Said("heated_floor", "yes", "not_available")])


def test_two_numbers_that_could_be_one_are_refused():
    with pytest.raises(UnfairError, match="too near"):
        labels([Said("solar_w", "200"), Said("solar_w", "205", "optional")])


def test_ledger_lets_no_second_standard_value_in():
    ledger = Ledger()
    ledger.add(0, [Said("solar_w", "200")])
    assert not ledger.fits(0, [Said("solar_w", "400")], "standard")
    assert ledger.fits(0, [Said("solar_w", "400")], "optional")
    assert ledger.fits(1, [Said("solar_w", "400")], "standard")
