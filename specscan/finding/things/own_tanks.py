"""Tanks of the thing named before them: that of a "cassette toilet with 17 l waste tank" is no gray tank."""

from __future__ import annotations

from specscan.finding.language.lexicon import expanded
from specscan.finding.things.items import Item, Parsed
from specscan.rulebook.book import Rulebook

KIND_WORDS = 2  # before a toilet, at the head of an item of a list
Named = list[tuple[Item, list[str]]]  # words and the things that they name


class OwnTanks:
    """Finds such tanks, for one language; ``company`` are words like "with", ``coordination`` join like things."""

    def __init__(self, book: Rulebook, company: set[str], coordination: set[str]):
        self.book = book
        self.company = company
        self.coordination = coordination

    def put(self, named: Named, parsed: Parsed, split: int) -> Named:
        """Give the named things in order, those that own a tank put for the name of it."""
        found: Named = []
        owned: tuple[Item, list[str]] | None = None  # the last such tank, of which another word may be part
        for item, things in named:
            owner = found[-1] if found and self._owns(*found[-1], item, things, parsed, split) else None
            if owner is None and owned is not None and item.start < owned[0].end:
                owner = owned
            owned = (item, owner[1]) if owner is not None else None
            found.append((item, owner[1] if owner is not None else things))
        return found

    def _owns(self, owner: Item, own: list[str], item: Item, things: list[str], parsed: Parsed, split: int) -> bool:
        names = {name for thing in own if thing in self.book.things for name in self.book.things[thing].tank_names}
        meant = expanded(self.book, things)
        if not names or not meant or not names.issuperset(meant) or owner.sentence != item.sentence:
            return False
        between = parsed.between(owner.end, item.start)
        told_apart = owner.start < split <= item.start or not split and owner.first <= KIND_WORDS
        labelled = told_apart and self._is_only_volume(item, parsed, own) and not self._is_gray(item, parsed, own)
        joined = {word for word in self.coordination if word.isalpha() or not labelled}  # a comma parts kind and size
        if not (labelled or self.company.intersection(between)) or joined.intersection(between):
            return False
        kinds = self._kinds(own)
        end = item.start if labelled else owner.end
        told = [i for i in parsed.items if i.sentence == item.sentence and i.start <= end]
        return any((c.name, c.value) in kinds for i in told for c in i.concepts if c.kind == "value")

    def _is_only_volume(self, item: Item, parsed: Parsed, own: list[str]) -> bool:
        """Tell whether a statement has one volume, by a tank, and a small one: "Toilet: portable, 10 l tank"."""
        volumes = [i for i in parsed.items if i.quantity is not None and i.quantity.dimension == "volume"]
        most = max((self.book.things[thing].tank_most for thing in own if thing in self.book.things), default=0.0)
        if len(volumes) != 1 or volumes[0].sentence != item.sentence:
            return False
        return volumes[0].quantity is not None and volumes[0].quantity.high <= most

    def _is_gray(self, item: Item, parsed: Parsed, own: list[str]) -> bool:
        """Tell whether the name of a tank says itself that it is no toilet's: "gray tank", but not "waste tank"."""
        words = parsed.text[item.start : item.end].casefold().split()
        others = tuple(
            start for one in own if one in self.book.things for starts in self.book.things[one].tank_not.values()
            for start in starts
        )  # fmt: skip
        return any(word.startswith(others) for word in words)

    def _kinds(self, things: list[str]) -> set[tuple[str, str]]:
        """Give vocabulary and word of the kinds that have a tank of their own: a cassette, a portable toilet."""
        specs = [self.book.fields[name] for thing in things for name in self.book.fields_of(thing)]
        return {
            (self.book.fields[other].vocabulary, word)
            for spec in specs
            for other, words in spec.only_with.items()
            for word in words
        }
