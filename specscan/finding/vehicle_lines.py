"""What stands first of a van that is named before it: "Drift 21: Fenmoor Carrier 30, diesel, front-wheel drive"."""

from __future__ import annotations

import re

from specscan.finding.naming.name_forms import BASE_NAME
from specscan.finding.things.found import Found, Value, found_at
from specscan.finding.things.items import Item, Parsed
from specscan.rulebook.book import Rulebook

LEAST_WORDS = 2  # of a base vehicle's name, whose figure or code is one
BETWEEN = 4  # words at most from the name to the fuel, and from the fuel to the driven wheels: "2.2 L V6"
FUELS, DRIVES = "engine_fuels", "drives"  # vocabularies


def vehicle_line(book: Rulebook, parsed: Parsed, name: str, *, headed: bool) -> list[Found]:
    """Give the fuel that a sentence begins with before it tells the driven wheels, and the base vehicle before both.

    ``name`` is the field of base vehicles. One is told only of a van that is named before the sentence (``headed``):
    else the name may be that of another van. "Diesel, front-wheel drive" is of the engine wherever it stands.
    """
    lead = BASE_NAME.match(parsed.text)
    printed = lead.group() if lead is not None and parsed.text[lead.end() :].startswith(",") else ""
    is_name = len(printed.split()) >= LEAST_WORDS and any(map(str.isdigit, printed))
    begins = len(printed) if is_name else 0
    first = [i for i in parsed.items if i.sentence == 0 and i.start >= begins and not i.has("cue")]
    fuel = next((i for i in first if i.has("value", FUELS)), None)
    drive = next((i for i in first if _tells_drive(i) and fuel is not None and i.start >= fuel.end), None)
    if fuel is None or drive is None or (begins and not headed):
        return []
    if any(_is_other(i) for i in first if i.end <= drive.start and not _overlap(i, fuel)):
        return []  # "Diesel heater, front-wheel drive"
    ahead, behind = parsed.between(begins, fuel.start), parsed.between(fuel.end, drive.start)
    if sum(map(_is_word, ahead)) > (BETWEEN if begins else 0) or sum(map(_is_word, behind)) > BETWEEN:
        return []
    value = next(c.value for c in fuel.concepts if c.kind == "value" and c.name == FUELS)
    fields = [field for field, spec in book.fields.items() if spec.vocabulary == FUELS]
    found = [found_at(fuel, field, Value(text=value), "beside drive", book.fields[field].of[:1]) for field in fields]
    if begins:
        place = parsed.item_at(0, begins)
        found.append(found_at(place, name, Value(text=printed), "before fuel", book.fields[name].of))
    return found


def _tells_drive(item: Item) -> bool:
    return item.has("value", DRIVES) or item.has("alone", "drive")


def _is_other(item: Item) -> bool:
    """Tell whether an item names anything but the engine."""
    return any(name != "engine" for name in item.names("thing")) or item.has("alone") and not _tells_drive(item)


def _overlap(item: Item, other: Item) -> bool:
    return other.start < item.end and item.start < other.end


def _is_word(word: str) -> bool:
    return re.search(r"\w", word) is not None
