"""What the tests of physics share: the built-in rules and one van as a table."""

from pathlib import Path

import pytest

from specscan.physics import derive
from specscan.physics.assumptions import Assumptions
from specscan.physics.columns import table_of
from specscan.rulebook.book import load_rulebook

RULES = Path(__file__).parent.parent.parent / "rules"
# NIST SP 811 (2008) App. B, rows U01, U04 and U06 of the reference values.
GALLON_L = 3.785411784
BTU_H_W = 0.2930710702
POUND_KG = 0.45359237


@pytest.fixture(scope="session")
def book():
    return load_rulebook(RULES)


@pytest.fixture(scope="session")
def values(book):
    return Assumptions(book)


@pytest.fixture(scope="session")
def van(book):
    """Give a function that derives the quantities of one van from its fields, as one row."""

    def derived(**fields):
        return derive(table_of([fields], book), book).iloc[0]

    return derived
