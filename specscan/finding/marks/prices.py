"""Prices in cells and lines: what has one can be had for it."""

from __future__ import annotations

import functools
import re

from specscan.finding.language.whole_words import any_of
from specscan.rulebook.models import WordFile

SIGNS, CODES = r"[$€£]", r"(?:USD|CAD|AUD|EUR|GBP|CHF|Fr\.)"
# written out, behind the figure; "2.2 l diesel, Euro 6" is a class of exhaust
WORDS = r"(?:[Ee]uros?|EUROS?|[Dd]ollars)(?!\w|[\s-]?(?:\d|[VI]))"
CURRENCY = re.compile(
    rf"(?:{SIGNS}|\b{CODES}\b)\s?\d|\d[\d.,'’\s]*\s?(?:{SIGNS}|{CODES}(?!\w)|{WORDS})"
    r"|\d[.,](?:[–—]|-{1,2})(?![\d\w])"  # "890,–": no cents
)
WRITTEN = re.compile(WORDS)
UNIT = rf"(?:{SIGNS}|\b{CODES})"
AMOUNT = r"(\d[\d.,'’\u00a0\u202f ]*(?:[–—]|-{1,2})?)"
PRICE = rf"(?:{UNIT}\s?{AMOUNT}|(?<![\w.,]){AMOUNT}\s?(?:{UNIT}(?!\d)|{WORDS}))"
PRICES = re.compile(PRICE)
PRICE_BEHIND = re.compile(rf"{PRICE}\s*(?:\([^()]*\))?[\s.;]*$")
CENTS = re.compile(r"[.,](?:\d\d|[–—]|-{1,2})\s*$")
SENTENCE = re.compile(r"\S.*?(?:[.;](?=\s+[^\W\d_a-z]|\s*$)|$)")
WORDED_PRICE = re.compile(r"[^\W\d_]{4,}")  # words of a sentence, no unit and no currency
KEPT_LINES = 8_000  # short texts that were looked through for prices: labels and cells repeat
KEPT_LETTERS = 110
BRACKETED = re.compile(r"\(([^()]*)\)$")
LONGEST_OFFER = 24  # letters of a cell that says no more than whether a thing is there or what it costs


def has_price(text: str) -> bool:
    """Tell whether a text holds a price."""
    return _priced(text) if len(text) <= KEPT_LETTERS else bool(CURRENCY.search(text))


@functools.lru_cache(maxsize=KEPT_LINES)
def _priced(text: str) -> bool:
    return bool(CURRENCY.search(text))


def is_price(text: str) -> bool:
    """Tell whether a text is a price and no more: it has no word beside it."""
    return has_price(text) and not WORDED_PRICE.search(WRITTEN.sub("", text))


def price_ends(text: str) -> list[int]:
    """Give the places at which the prices of a text end."""
    return [match.end() for match in PRICES.finditer(text)] if has_price(text) else []


class PricedItems:
    """Tells of items of lists that end in what they cost: "200 W solar panel, $1,290"."""

    def __init__(self, words: WordFile, most: float):
        self.most = most
        self.other = any_of([*words.price_of_van, *words.price_from, *words.worth], whole=True)

    def is_offer(self, text: str) -> bool:
        """Tell whether an item can be had for the price at its end, which is not that of a whole van.

        What a thing is worth is no offer: "cold package worth £1,290".
        """
        match = PRICE_BEHIND.search(text) if has_price(text) else None
        if match is None or not match.start() or self.other.search(text.casefold()):
            return False
        return _amount(match) <= self.most

    def tells_van(self, text: str) -> bool:
        """Tell whether a text holds a price that can only be that of a whole van."""
        return any(_amount(match) > self.most for match in PRICES.finditer(text))


def _amount(match: re.Match[str]) -> float:
    figures = re.sub(r"\D", "", CENTS.sub("", match.group(1) or match.group(2)))
    return float(figures or 0)


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


def lists_prices(text: str) -> bool:
    """Tell whether a paragraph is a list of things each with its price in brackets: "Rear mats ($90); AWD ($7,900)."""
    things = [BRACKETED.search(part.rstrip(" .")) for part in text.split(";")]
    return len(things) > 1 and all(match is not None and is_price(match.group(1)) for match in things)
