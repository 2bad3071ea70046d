"""What the rows above a row speak of, for labels that go on about it: "Tank heating" below "Gray water"."""

from __future__ import annotations

import functools
import re

from specscan.finding.kit import Kit
from specscan.finding.language.lexicon import referred, refers
from specscan.finding.language.whole_words import any_of


class RowsAbove:
    """The things of the rows read so far in one place of a document."""

    def __init__(self, kit: Kit):
        self.kit = kit
        self.asking = _asking(tuple(kit.lexicon.words.row_questions))
        self.place: tuple[object, ...] = ()
        self.things: list[str] = []
        self.named: list[tuple[str, list[str]]] = []  # rows right above each other that name their things themselves

    def enter(self, place: tuple[object, ...]) -> None:
        """Begin anew where the next statement stands in another block, table or section."""
        if place != self.place:
            self.place, self.things, self.named = place, [], []

    def add(self, label: str, things: list[str]) -> None:
        """Remember what a row speaks of; one of nothing known leaves the rows above it in force."""
        self.things = things or self.things
        if self._referring(label):
            self.named = []
        elif not things:
            return
        elif not self.named or self.named[-1][0] != label:  # the cells of a row share its label
            self.named.append((label, things))

    def meant(self, label: str) -> list[str]:
        """Give the things of the row above of which a row can speak: "Tank" is not the battery above it.

        Nor, below rows of fresh, gray and black water, is it the last of them: of which it is nobody knows.
        """
        book, names = self.kit.lexicon.book, self._referring(label)
        if not names:
            return self.things
        told = referred(book, names, self.things)
        others = [thing for _, things in self.named[-2:-1] for thing in referred(book, names, things)]
        return [] if set(others) - set(told) else told

    def refers_by_pronoun(self, label: str) -> bool:
        """Tell whether a label names nothing itself and means what the row above is about: "where it sits", "where"."""
        analysis = self.kit.lexicon.analyse(label)
        named = any(mention.concept.kind == "thing" for mention in analysis.mentions)
        if named or not self.things:
            return False
        return bool(self.kit.lexicon.cues(analysis, "pronoun")) or self.asking.match(label) is not None

    def _referring(self, label: str) -> list[str]:
        """Give the words of a label that refer to things named elsewhere: "tank" of "tank heating"."""
        book, mentions = self.kit.lexicon.book, self.kit.lexicon.analyse(label).mentions
        names = [m.concept.name for m in mentions if m.concept.kind == "thing"]
        return [name for name in names if refers(book, [name])]


@functools.lru_cache(maxsize=8)
def _asking(words: tuple[str, ...]) -> re.Pattern[str]:
    """Give what finds one of some words that ask at the beginning of a label: "where", "how"."""
    return any_of(words, whole=True, any_case=True)
