"""Paragraphs that list what can be had, each thing with its price: "Third berth: $650. Bike rack: $480."

Vans may stand before their things, and semicolons between these: "Drift 19: gray tank pad, $310. Drift 21: 300 Ah
lithium battery, $2,940; rear shades, $420. Heated floor: standard on both."
"""

from __future__ import annotations

from dataclasses import dataclass

from specscan.finding.language.whole_words import any_of
from specscan.finding.marks.prices import PricedItems, has_price, priced_sentences
from specscan.finding.openings import HEAD, Openings
from specscan.rulebook.models import WordFile

LEAST = 2  # things with their prices
LONGEST_TITLE = 30  # letters of a first sentence that is only the title: "Factory options."


@dataclass(frozen=True, slots=True)
class PricedPart:
    """Characters from ``start`` of a paragraph: a thing that is ``offered`` at a price, or another sentence."""

    start: int
    text: str
    vans: frozenset[str] | None
    offered: bool


class PricedParagraphs:
    """Finds the things and prices of paragraphs of one document."""

    def __init__(self, openings: Openings, priced: PricedItems, words: WordFile):
        self.openings, self.priced = openings, priced
        self.optional = any_of(words.cues.get("optional", []), whole=True)

    def parts(self, text: str) -> list[PricedPart]:
        """Give the parts of a paragraph in order; none where it does not list things with their prices.

        Each sentence with a price lists such things, or the first is a title that says "options".
        """
        if not has_price(text):
            return []
        listed = priced_sentences(text)
        if listed:
            return [PricedPart(start, part, None, True) for start, part in listed]
        sentences = self.openings.sentences(text)
        titled = len(sentences) > 1 and self._is_title(text[slice(*sentences[0])])
        found: list[PricedPart] = []
        for start, end in sentences[titled:]:
            head = HEAD.match(text, start, end)
            vans = self.openings.vans_headed(head.group(1)) if head is not None else None
            begin = head.end() if head is not None and vans is not None else start
            things = self._things(text, begin, end)
            if not things and not titled and has_price(text[start:end]):
                return []
            found += [PricedPart(place, thing, vans, True) for place, thing in things]
            if not things:
                found.append(PricedPart(start, text[start:end].strip(), None, False))
        return found if sum(part.offered for part in found) >= LEAST else []

    def _is_title(self, sentence: str) -> bool:
        return len(sentence) <= LONGEST_TITLE and self.optional.search(sentence.casefold()) is not None

    def _things(self, text: str, start: int, end: int) -> list[tuple[int, str]]:
        """Give what semicolons part, each with its place, if all of it ends in its price."""
        found: list[tuple[int, str]] = []
        for part in text[start:end].split(";"):
            thing = part.strip(" .")
            if not self.priced.is_offer(thing):
                return []
            found.append((start + part.index(thing), thing))
            start += len(part) + 1
        return found
