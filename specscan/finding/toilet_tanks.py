"""Labels of "the toilet's holding tank": of a cassette where the van's toilet has one, else the van's black tank.

A row "Toilet: cassette" and below it "Toilet holding tank (litres): 17" is how a sheet tells kind and size.
"""

from __future__ import annotations

from collections.abc import Sequence

from specscan.finding.kit import Kit
from specscan.finding.language.whole_words import any_of
from specscan.records.text import Passage


class ToiletTanks:
    """Reads such labels of one document."""

    def __init__(self, kit: Kit, passages: Sequence[Passage]):
        self.kit = kit
        names = kit.lexicon.words.toilet_tanks
        self.names = {one.casefold(): own for one, own in names.items()}
        self.pattern = any_of(names, whole=True, any_case=True) if names else None
        used = self.pattern is not None and any(p.row is not None and self.pattern.search(p.row.text) for p in passages)
        self.own, self.others = self._kinds(passages) if used else ({}, set())

    def _kinds(self, passages: Sequence[Passage]) -> tuple[dict[str, str], set[str]]:
        """Give the heads of columns whose toilet has its own tank, with the word for it, and those of other kinds."""
        book = self.kit.lexicon.book
        owners = {name for name, thing in book.things.items() if thing.tank_names}
        specs = [book.fields[name] for thing in owners for name in book.fields_of(thing)]
        small = {(book.fields[other].vocabulary, word) for s in specs for other, words in s.only_with.items()
                 for word in words}  # fmt: skip
        own: dict[str, str] = {}
        others: set[str] = set()
        for p in passages:
            if p.row is None or not owners & {m.concept.name for m in self.kit.lexicon.analyse(p.row.text).mentions}:
                continue
            kinds = [m for m in self.kit.lexicon.analyse(p.text).mentions
                     if m.concept.kind == "value" and m.concept.name in {name for name, _ in small}]  # fmt: skip
            if not {(m.concept.name, m.concept.value) for m in kinds} <= small:
                others.add(_column(p))
            elif kinds:
                own[_column(p)] = p.text[kinds[0].start : kinds[0].end]
        return own, others

    def is_own(self, passage: Passage, label: str) -> bool:
        """Tell whether a label asks for the tank of a toilet that is known to have one of its own."""
        column = _column(passage)
        if self.pattern is None or column not in self.own or column in self.others:
            return False
        return self.pattern.search(label) is not None

    def of_own(self, passage: Passage, label: str, body: str) -> str:
        """Give a label with the name of the toilet's own tank in place of that of the van's, if it has a size."""
        if self.pattern is None or not any(map(str.isdigit, body)) or not self.is_own(passage, label):
            return label
        kind = self.own[_column(passage)]  # without it nobody would know that the toilet has such a tank
        return self.pattern.sub(lambda match: f"{self.names[match.group().casefold()]} {kind}", label)


def _column(passage: Passage) -> str:
    return passage.column.text if passage.column is not None else ""
