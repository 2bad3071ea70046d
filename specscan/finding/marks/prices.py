"""Prices in cells and lines: what has one can be had for it."""

from __future__ import annotations

import functools
import re

CURRENCY = re.compile(
    r"(?:[$€£]|\b(?:USD|CAD|AUD|EUR|GBP|CHF|Fr\.)\b)\s?\d|\d[\d.,'’\s]*\s?(?:[$€£]|(?:USD|CAD|AUD|EUR|GBP|CHF|Fr\.)(?!\w))"
    r"|\d[.,](?:[–—]|-{1,2})(?![\d\w])"  # "890,–": no cents
)
SENTENCE = re.compile(r"\S.*?(?:[.;](?=\s+[^\W\d_a-z]|\s*$)|$)")
WORDED_PRICE = re.compile(r"[^\W\d_]{4,}")  # words of a sentence, no unit and no currency
KEPT_LINES = 8_000  # short texts that were looked through for prices: labels and cells repeat
KEPT_LETTERS = 110
LONGEST_OFFER = 24  # letters of a cell that says no more than whether a thing is there or what it costs


def has_price(text: str) -> bool:
    """Tell whether a text holds a price."""
    return _priced(text) if len(text) <= KEPT_LETTERS else bool(CURRENCY.search(text))


@functools.lru_cache(maxsize=KEPT_LINES)
def _priced(text: str) -> bool:
    return bool(CURRENCY.search(text))


def is_price(text: str) -> bool:
    """Tell whether a text is a price and no more: it has no word beside it."""
    return has_price(text) and not WORDED_PRICE.search(text)


def priced_sentences(text: str) -> list[tuple[int, str]]:
    """Give the parts, each with its start, of a paragraph that lists things with their prices.

    "Third berth (190): $650. Bike rack (all): $480." A first part without a price may be its title. Nothing is given
    where a part tells more than its price behind the colon.
    """
    found = []
    for number, match in enumerate(SENTENCE.finditer(text)):
        part = match.group().rstrip(" .;")
        thing, _, price = part.rpartition(":")
        if thing and is_price(price):
            found.append((match.start(), part))
        elif number:
            return []
    return found if len(found) >= 2 else []
