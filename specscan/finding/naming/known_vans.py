"""Vans that are known beforehand as the cast of a text that talks about them."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Mapping

from specscan.finding.naming.cast import Cast, Player
from specscan.finding.naming.place import Names

NOBODY = "\0"  # a player whom no text can name, so that even a cast of one van must be named to be meant


def known_cast(names: Mapping[str, Collection[str]]) -> Cast:
    """Give a cast of known vans.

    ``names`` gives for the id of each van the texts that name it, the full name and others. The beginnings of a name
    ("Tarn 19" of "Tarn 19 RB") name a van too, where no other begins so. A text that names several vans means all.
    """
    begun: dict[str, set[str]] = defaultdict(set)
    for van, texts in names.items():
        for text in texts:
            words = text.split()
            for end in range(1, len(words)):
                if any(c.isdigit() for word in words[:end] for c in word) or end > 1:
                    begun[" ".join(words[:end]).casefold()].add(van)
    players = []
    for van, texts in names.items():
        full = {text.casefold() for text in texts}
        others = {text.casefold() for other, given in names.items() if other != van for text in given}
        short = {start for start, vans in begun.items() if vans == {van} and start not in others}
        players.append(Player(van, None, full | short))
    return Cast(Names(), [*players, Player(NOBODY, None, {NOBODY})])
