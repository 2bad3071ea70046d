"""Units that a sentence leaves out because it has just said them: "22 gallons of fresh and 18 of gray"."""

from __future__ import annotations

from specscan.finding.language.mentions import NAMING
from specscan.finding.language.quantities import QuantityReader
from specscan.finding.things.in_order import fill_run
from specscan.finding.things.items import Item, Parsed
from specscan.rulebook.book import Rulebook

VAN_REACH = 3  # words between a figure and the name of its van: "in both", "on the two"
REACH = 16  # folded words from the figure with its unit to the one without
DIMENSIONS = ("volume", "charge", "power", "mass", "current", "energy")


def fill_units(parsed: Parsed, book: Rulebook, reader: QuantityReader) -> None:
    """Give a bare figure the unit of the one before it, where both are said of like things or of sister vans.

    "22 gallons of fresh and 18 of gray": both figures stand right before the name of a thing that has such a
    quantity. "The 19 carries 20 gallons, the 21 carries 30": both stand behind a van, the second ends its part. Where
    sister vans are told apart, what is said of the second counts as a sentence of its own.
    """
    told: Item | None = None
    for item in parsed.items:
        if item.quantity is None:
            continue
        if not item.quantity.bare:
            told = item
            continue
        if item.quantity.worded and item.quantity.high == 1:
            continue  # an article
        ahead = fill_run(item, parsed)
        if ahead is not None and ahead.quantity is not None and ahead.quantity.dimension in DIMENSIONS:
            item.quantity = reader.with_unit(item.quantity, ahead.quantity.printed_unit) or item.quantity
            continue
        if told is None or item.sentence - told.sentence > 1 or item.first - told.last > REACH:
            continue
        assert told.quantity is not None
        if told.quantity.dimension not in DIMENSIONS:
            continue
        same = told.sentence == item.sentence
        like = same and _of_like_thing(item, told.quantity.dimension, parsed, book)
        if like or _of_sister_van(item, told, parsed) or (same and _before_sister_van(item, told, parsed)):
            filled = reader.with_unit(item.quantity, told.quantity.printed_unit)
            item.quantity = filled or item.quantity


def _of_like_thing(item: Item, dimension: str, parsed: Parsed, book: Rulebook) -> bool:
    """Tell whether the name of a thing that can have the dimension stands right behind, and no other figure."""
    for other in parsed.items:
        if not 0 <= other.first - item.last <= 1 or other.start < item.end or other.chunk != item.chunk:
            continue
        things = [name for kind in NAMING[:2] for name in other.names(kind)]
        things += [thing for name in other.names("alone") for thing in book.fields[name].of]
        if any(book.fields[f].dimension == dimension for thing in things for f in book.fields_of(thing)):
            return True
    return False


def _before_sister_van(item: Item, told: Item, parsed: Parsed) -> bool:
    """Tell whether each figure stands before a van of its own: "60 litres in the 19 and 90 in both Coasts"."""
    vans = []
    for figure in (told, item):
        near = (m for m in parsed.items if m.vans and m.chunk == figure.chunk and m.start > figure.end)
        behind = [m for m in near if len(parsed.text[figure.end : m.start].split()) <= VAN_REACH]
        vans.append(behind[0].vans if behind else frozenset())
    return bool(vans[0] and vans[1]) and vans[0].isdisjoint(vans[1])


def _of_sister_van(item: Item, told: Item, parsed: Parsed) -> bool:
    """Tell whether both figures stand behind a van, at once or after the same words, and the second ends its part."""
    behind = []
    for one in (told, item):
        vans = [i for i in parsed.items if i.vans and i.chunk == one.chunk and i.end <= one.start]
        if not vans:
            return False
        behind.append(parsed.between(vans[-1].end, one.start))
    _, end = parsed.chunk_span(item.chunk)
    rest = any(word[0].isalnum() for word in parsed.between(item.end, end))
    return not rest and (all(len(words) <= 2 for words in behind) or behind[0] == behind[1])
