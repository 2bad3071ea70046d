"""The company's word before the names of all its vans: "Marrowfen Drift 54" of Marrowfen Campervans."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence

from specscan.finding.language.whole_words import holds
from specscan.finding.naming.full_names import is_series_word
from specscan.finding.naming.place import Names, begins_with, without_start
from specscan.finding.naming.players import Player

TWO_NAMES = re.compile(r"\s+[&+]\s+")
FEW = 2  # vans


def take_called_without(names: Names, players: Sequence[Player], written: str) -> None:
    """Take for the maker the word before all names without which what is ``written`` in a letter speaks of each van.

    "Marrowfen Drift 5.9" and "Marrowfen Drift 6.3" are offered, "the Drift 5.9" can be had at once. A company that the
    letter itself speaks of stays the maker.
    """
    parts = [player.model.split(" ", 1) for player in players]
    words = {part[0] for part in parts}
    if len(players) < FEW or len(words) > 1 or not all(len(part) > 1 for part in parts):
        return
    if names.maker and holds(written, names.maker.casefold()):
        return
    house = words.pop()
    if all(_is_said_alone(part[1], house, written) for part in parts):
        names.maker, names.maker_place = house, players[0].place


def _is_said_alone(rest: str, house: str, written: str) -> bool:
    first, _, more = rest.partition(" ")
    said = rf"(?<!\w)(?<!{re.escape(house.casefold())} ){re.escape(rest.casefold())}(?!\w)"
    return bool(more) and is_series_word(first) and re.search(said, written) is not None


def without_house(
    names: Names,
    players: Sequence[Player],
    mapping: Mapping[str, frozenset[str]],
    stem_of: Callable[[str], str],
    can_be_name: Callable[[str], bool],
) -> dict[str, frozenset[str]]:
    """Take the company's word from before the names of all ``players``, and give the vans of the heads anew.

    "Marrowfen Drift 54" and "Marrowfen Gorse" of Marrowfen Campervans are the Drift 54 and the Gorse; before mere
    codes and common words it is part of the name. ``stem_of`` gives a company's name without its words for the trade.
    A company that is made of the names of two vans is none: the name before theirs is.
    """
    both = TWO_NAMES.split(names.maker)
    if len(both) > 1 and all(any(f" {p.model}".endswith(f" {one}") for p in players) for one in both):
        names.maker, names.maker_place = names.series, names.title_place  # "Drift & Gorse" are the vans
    stem = stem_of(names.maker)
    rests = {player.model: without_start(player.model, stem) for player in players}
    cut = all(begins_with(model, stem) and rest and rest != model for model, rest in rests.items())
    named = cut and all(is_series_word(rest.split()[0]) for rest in rests.values())
    own = named and all(map(can_be_name, rests.values()))
    if not stem or not own or len(set(rests.values())) < max(2, len(players)):
        return dict(mapping)
    for player in players:
        player.aliases.add(player.model)
        player.model = rests[player.model]
    if names.series.casefold() == stem.casefold():
        names.title = names.series = ""
    return {head: frozenset(rests[model] for model in models) for head, models in mapping.items()}
