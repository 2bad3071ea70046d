"""Availability told of each van in one sentence: "standard on the 21 and 23 and an option ($420) on the 19"."""

from __future__ import annotations

import itertools

from specscan.finding.marks.availability import in_phrase
from specscan.finding.marks.legend import AVAILABILITIES, said_by
from specscan.finding.marks.prices import has_price
from specscan.finding.things.found import Availability
from specscan.finding.things.items import Item, Parsed


def said_of_each(item: Item | None, parsed: Parsed) -> dict[str, Availability]:
    """Give what a sentence says of each van behind an item, where vans and availabilities take turns; else nothing.

    An item that is an availability itself answers a label, and is the first of them.
    """
    if item is None or parsed.by_cue.keys().isdisjoint(AVAILABILITIES):
        return {}
    begin = item.start if _is_availability(item) else item.end
    behind = [i for i in parsed.items if i.sentence == item.sentence and i.start >= begin]
    cues = [i for i in behind if _is_availability(i) and not in_phrase(i, parsed)]
    vans = [i for i in behind if i.vans]
    named = sum(bool(i.vans) for i in parsed.items if i.sentence == item.sentence)
    if len(cues) < 2 or len(vans) < 2 or named > len(vans):
        return {}
    turns = [
        (is_cue, [*run])
        for is_cue, run in itertools.groupby(sorted([*cues, *vans], key=lambda i: i.start), key=lambda i: not i.vans)
    ]
    first, last = turns[0][1][0], turns[-1][1][-1]
    if len(turns) != 2 * len(cues) or any(_tells(i, parsed) for i in behind if first.start <= i.start <= last.end):
        return {}
    told: dict[str, Availability] = {}
    for one, two in zip(turns[::2], turns[1::2], strict=True):
        cue, members = (one[1], two[1]) if one[0] else (two[1], one[1])
        said = said_by(cue)
        for van in frozenset().union(*(member.vans for member in members)):
            if said is None or van in told:
                return {}
            told[van] = said
    return told


def _is_availability(item: Item) -> bool:
    return item.has("cue", *AVAILABILITIES)


def _tells(item: Item, parsed: Parsed) -> bool:
    """Tell whether an item says something of its own, as a figure does that is no price."""
    if item.vans or _is_availability(item):
        return False
    figure = item.quantity is not None and not has_price(parsed.text[max(0, item.start - 4) : item.end + 4])
    return figure or item.tells
