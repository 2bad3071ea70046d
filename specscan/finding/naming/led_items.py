"""Vans each of which begins an item that tells of it: "Drift 21 FT: 2.28 m tall, rear-wheel drive, diesel heater".

A full stop may stand behind the name as well: "Drift II. Length 5.41 m. Two berths."
"""

from __future__ import annotations

import itertools
import re
from collections.abc import Callable, Sequence

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.naming.chapters import NAME
from specscan.finding.naming.place import begins_with
from specscan.records.text import Kind, Passage

LEAD = re.compile(rf"({NAME.pattern}?)(?:\s*:|\s+[–—-]|(?<=\w)\.)\s+\S")
KINDS = (Kind.BULLET, Kind.PROSE, Kind.LINE)
MIN_THINGS = 3  # different things told in each item
MIN_ITEMS = 2


def read_led(
    own: Sequence[Passage], title: str, lexicon: Lexicon, can_be_name: Callable[[str], bool]
) -> list[tuple[str, Passage]]:
    """Give the names that lead two or more items one after another, each with the item.

    Each goes on from the document's ``title``, or all tell some of the same things: "Kitchen: …", "Winter pack: …" are
    items of one van.
    """
    for _, group in itertools.groupby(own, key=lambda p: (p.kind, p.sections, p.table is None)):
        items = list(group)
        found = [(match.group(1), p) for p in items if (match := LEAD.match(p.text)) is not None]
        if len(found) < MIN_ITEMS or items[0].kind not in KINDS or items[0].table is not None:
            continue
        found = [(name, p) for name, p in found if _can_lead(name, title, can_be_name)]
        things = [lexicon.things_told(passage) for _, passage in found]
        told = len(found) >= MIN_ITEMS and all(len(some) >= MIN_THINGS for some in things)
        titled = all(begins_with(name, title) for name, _ in found)
        alike = len(found) == len(items) and len(set.intersection(*map(set, things))) >= MIN_THINGS if told else False
        if told and (titled or alike) and len({name.casefold() for name, _ in found}) == len(found):
            return found
    return []


def _can_lead(name: str, title: str, can_be_name: Callable[[str], bool]) -> bool:
    """Tell whether a name goes on from the title with more, or can be a van's by itself."""
    return name.casefold() != title.casefold() and (begins_with(name, title) or can_be_name(name))
