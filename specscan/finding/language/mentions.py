"""Mentions of concepts in a text, and which of overlapping ones is meant."""

from __future__ import annotations

import functools
import itertools
from collections import defaultdict
from typing import NamedTuple

from specscan.rulebook.book import Rulebook

NAMING = ("thing", "short", "alone")  # kinds of words that name what is spoken of
ALIKE = {"term": ("denied",), "denied": ("term",)}  # "not insulated" swallows "insulated" of the same field
# Kinds that say nothing of what a longer term means, and so neither swallow a shorter one nor save it.
SILENT = ("distant", "short", "beside", "section", "plural")


class Concept(NamedTuple):
    """What a term stands for.

    ``kind`` is thing, plural, short, beside, section, alone, aspect, value, term, denied, masked, distant, word, cue.
    ``name`` is the thing, aspect, vocabulary, field, word group or cue; ``value`` the word of a vocabulary.
    """

    kind: str
    name: str
    value: str = ""


class Mention(NamedTuple):
    """A concept mentioned in characters ``start`` to ``end``; ``first`` and ``last`` count folded words."""

    concept: Concept
    start: int
    end: int
    first: int
    last: int


made_mention = functools.partial(tuple.__new__, Mention)
"""Makes a mention of a tuple of its parts without a call in Python."""


class Overlaps:
    """Knows which senses a longer mention hides."""

    def __init__(self, book: Rulebook):
        self.book = book
        self.owners = _owners(book)
        self.inside = {spec.vocabulary for spec in book.fields.values() if spec.inside}

    def without_hidden(self, found: list[Mention]) -> list[Mention]:
        """Drop what a longer mention swallows; a span of several senses swallows only what none of them needs."""
        # Of two that overlap, as "chauffage des eaux" and "eaux grises", the longer goes first, then the thing.
        found.sort(key=lambda m: (m.first - m.last, m.concept.kind not in ("thing", "alone"), m.first))
        places = sorted({(m.first, m.last) for m in found})
        if all(one[1] <= two[0] for one, two in itertools.pairwise(places)):
            return sorted(found, key=lambda m: (m.first, -m.last))  # none overlaps another: the usual case
        spans: dict[tuple[int, int], list[Mention]] = {}
        over: dict[int, list[tuple[int, int]]] = defaultdict(list)  # the spans that hold a word
        for mention in found:
            key = (mention.first, mention.last)
            words = range(mention.first, mention.last)
            near = {span for word in words if word in over for span in over[word]} - {key}
            if any(self._swallows(spans[span], mention) for span in near):
                continue
            if key not in spans:
                spans[key] = []
                for word in words:
                    over[word].append(key)
            spans[key].append(mention)
        return sorted((m for mentions in spans.values() for m in mentions), key=lambda m: (m.first, -m.last))

    def _swallows(self, others: list[Mention], mention: Mention) -> bool:
        voices = [other for other in others if other.concept.kind not in SILENT]
        kin = [
            o
            for o in voices
            if o.concept.name == mention.concept.name
            and o.concept.kind in (*ALIKE.get(mention.concept.kind, ()), mention.concept.kind, "masked")
        ]
        if any(self._hides(other, mention) for other in kin):
            return True
        return bool(voices) and all(self._hides(other, mention) for other in voices)

    def _hides(self, outer: Mention, inner: Mention) -> bool:
        a, b = outer.concept, inner.concept
        if b.kind == "distant":
            return False
        if a.kind == "word" or b.kind == "word":
            return a.kind == b.kind and a.name == b.name
        if a.kind == "cue" and b.kind != "cue":
            return False
        if a.kind == b.kind == "value" and a.name != b.name:
            return b.name not in self.inside or not (self.owners[a] & self.owners[b])
        if a.kind in ("thing", "alone"):
            if b.kind in ("value", "term", "denied", "aspect", "masked"):
                return not (self._things(a) & self.owners[b])
            return True
        if b.kind in ("thing", "alone"):
            return not (self.owners[a] & self._things(b))
        if a.kind in ("term", "denied", "masked") and b.kind == "value":
            return not (self.owners[a] & self.owners[b]) or a.kind == "masked"
        if a.kind == "value" and b.kind in ("term", "denied", "masked"):
            return not (self.owners[a] & self.owners[b])
        if a.kind in ("term", "denied", "masked") and b.kind in ("term", "denied", "masked"):
            return a.name == b.name
        return True

    def _things(self, concept: Concept) -> set[str]:
        if concept.kind == "alone":
            return set(self.book.fields[concept.name].of)
        thing = self.book.things.get(concept.name)
        return {concept.name, *(thing.stands_for if thing else [])}


def _owners(book: Rulebook) -> dict[Concept, set[str]]:
    """Give for each value, term and aspect the things whose statements can hold it."""
    owners: dict[Concept, set[str]] = defaultdict(set)
    for name, spec in book.fields.items():
        things = set(spec.of)
        for kind in ("term", "denied", "masked"):
            owners[Concept(kind, name)] |= things
        if spec.aspect:
            owners[Concept("aspect", spec.aspect)] |= things
        for value in book.vocabularies.get(spec.vocabulary, {}):
            owners[Concept("value", spec.vocabulary, value)] |= things
    return owners
