"""The vans of documents in which each has a maker of its own."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.naming.listing import Listed, read_described, read_made, year_of, year_of_head
from specscan.finding.naming.names import NameReader
from specscan.finding.naming.place import Place
from specscan.finding.naming.players import Player
from specscan.records.text import Passage


class SeveralMakers:
    """Finds such vans in documents of one language."""

    def __init__(self, names: NameReader, lexicon: Lexicon, bare: Callable[[str], str]):
        """``bare`` gives a head without what is no part of a name."""
        self.names, self.lexicon, self.bare = names, lexicon, bare

    def read(self, heads: Mapping[str, Place], own: list[Passage]) -> list[Player]:
        """Give the vans that heads of columns, or lines above their descriptions, name each with a maker of its own."""
        houses = self.names.houses
        if not heads:
            if described := read_described(houses.of_lines(own), own, self.names, self.lexicon):
                return [Player(one.model, one.place, {one.place.text}, one) for one in described]
            return [Player(one.model, at, {at.text}, one) for one, at in read_made(own, self.names, self.lexicon)]
        year = year_of(own, self.names)
        players: dict[tuple[str, str], Player] = {}
        for head, (maker, model) in houses.of_heads({head: self.bare(head) for head in heads}, own).items():
            told = year_of_head(head, own, self.names)
            listed = Listed(maker, model, heads[head], *(year if told[0] is None else told))
            new = Player(model, heads[head], {f"{maker} {model}"}, listed)
            players.setdefault((maker, model), new).aliases.add(head)
        return list(players.values())
