"""A text and its mentions and quantities → items in chunks, ready to be bound to each other."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, field

from specscan.finding.lexicon import Analysis, Concept, Lexicon
from specscan.finding.quantities import Quantity

CLAUSE_SIGNS = {";", "|", "•", "·", "‖"}
CHUNK_SIGNS = {",", ":", "+", "–", "—"}
OPENING, CLOSING = {"(", "["}, {")", "]"}
SLASH = re.compile(r"\s/\s(?=[^\W\d_])")
DASH = re.compile(r"\s[-–—]\s")


@dataclass(slots=True)
class Item:
    """Something in a text that means something: concepts mentioned by the same words, or a quantity.

    ``chunk`` counts the parts between commas and brackets, ``clause`` those between semicolons and
    sentence ends, ``depth`` the brackets around it. ``sentence`` counts sentences.
    """

    start: int
    end: int
    concepts: list[Concept] = field(default_factory=list)
    quantity: Quantity | None = None
    vans: frozenset[str] = frozenset()
    chunk: int = 0
    clause: int = 0
    sentence: int = 0
    depth: int = 0
    first: int = 0
    last: int = 0

    def names(self, kind: str) -> list[str]:
        """Give the names of the concepts of a kind."""
        return [concept.name for concept in self.concepts if concept.kind == kind]

    def has(self, kind: str, *names: str) -> bool:
        """Tell whether a concept of a kind (and one of the names, if given) is mentioned."""
        return any(c.kind == kind and (not names or c.name in names) for c in self.concepts)


@dataclass(slots=True)
class Parsed:
    """A text with its items in order."""

    text: str
    items: list[Item]
    analysis: Analysis
    bounds: list[tuple[int, int, int, int, int]]  # start, chunk, clause, sentence, depth from there on

    def cues(self, *names: str) -> list[Item]:
        """Give the items that are cues of these names."""
        return [item for item in self.items if item.has("cue", *names)]

    def between(self, left: int, right: int) -> list[str]:
        """Give the folded words between two places of the text."""
        return [t.norm for t in self.analysis.tokens if left <= t.start and t.end <= right]

    def opens_sentence(self, item: Item) -> bool:
        """Tell whether a sentence begins with the words of an item."""
        tokens = self.analysis.tokens
        start = next((b[0] for b in self.bounds if b[3] == item.sentence), 0)
        first = next((t for t in tokens if t.start >= start and t.norm[0].isalnum()), None)
        return first is not None and first.start == item.start

    def item_at(self, start: int, end: int) -> Item:
        """Give an item of nothing but its place, for words that are no term of the lexicon."""
        item = Item(start, end)
        _place(item, self.bounds)
        return item

    def chunk_span(self, chunk: int) -> tuple[int, int]:
        """Give the characters of a chunk."""
        start = next((b[0] for b in self.bounds if b[1] == chunk), 0)
        end = next((b[0] for b in self.bounds if b[1] > chunk), len(self.text))
        return start, end


def parse(
    text: str,
    lexicon: Lexicon,
    quantities: list[Quantity],
    vans: Iterable[tuple[int, int, frozenset[str]]] = (),
) -> Parsed:
    """Give the items of a text; ``vans`` are places where vans of the document are named."""
    analysis = lexicon.analyse(text)
    named = list(vans)
    taken = [(a, b) for a, b, _ in named]
    bounds = _bounds(text, quantities, set(lexicon.words.abbreviations))
    items: dict[tuple[int, int], Item] = {}
    for mention in analysis.mentions:
        if any(a <= mention.start and mention.end <= b for a, b in taken):
            continue
        key = (mention.first, mention.last)
        item = items.setdefault(key, Item(mention.start, mention.end, first=mention.first, last=mention.last))
        item.concepts.append(mention.concept)
    found = list(items.values())
    for quantity in quantities:
        if any(a <= quantity.start and quantity.end <= b for a, b in taken):
            continue
        if quantity.bare and quantity.worded and any(_means(i) and i.start <= quantity.start < i.end for i in found):
            continue
        found.append(_placed_quantity(quantity, analysis))
    for start, end, names in named:
        found.append(Item(start, end, vans=names))
    found.sort(key=lambda item: (item.start, -item.end))
    for item in found:
        _place(item, bounds)
    return Parsed(text, found, analysis, bounds)


def _means(item: Item) -> bool:
    return any(concept.kind in ("thing", "value", "alone", "term", "word") for concept in item.concepts)


def _placed_quantity(quantity: Quantity, analysis: Analysis) -> Item:
    inside = [i for i, t in enumerate(analysis.tokens) if quantity.start <= t.start < quantity.end]
    first = inside[0] if inside else sum(t.start < quantity.start for t in analysis.tokens)
    last = inside[-1] + 1 if inside else first
    return Item(quantity.start, quantity.end, quantity=quantity, first=first, last=last)


def _bounds(text: str, quantities: list[Quantity], short: set[str]) -> list[tuple[int, int, int, int, int]]:
    """Cut a text into sentences, clauses and chunks; signs inside quantities do not count."""
    inside = [(q.start, q.end) for q in quantities]
    chunk = clause = sentence = depth = 0
    bounds = [(0, 0, 0, 0, 0)]
    slashes = {match.start() + 1 for match in SLASH.finditer(text)}
    dashes = {match.start() + 1 for match in DASH.finditer(text)}
    for place, letter in enumerate(text):
        if any(a <= place < b for a, b in inside):
            continue
        after = text[place + 1 : place + 2]
        if letter in OPENING:
            depth += 1
            chunk += 1
        elif letter in CLOSING:
            depth = max(0, depth - 1)
            chunk += 1
        elif letter in CLAUSE_SIGNS:
            clause += 1
            chunk += 1
        elif letter in ".!?" and (not after or after.isspace()) and _ends_sentence(text, place, short):
            sentence += 1
            clause += 1
            chunk += 1
        elif (letter in CHUNK_SIGNS and (not after or after.isspace())) or place in dashes or place in slashes:
            if letter == "," and re.match(r"\d", after):
                continue
            chunk += 1
        else:
            continue
        bounds.append((place, chunk, clause, sentence, depth))
    return bounds


def _ends_sentence(text: str, place: int, short: set[str]) -> bool:
    rest = text[place + 1 :].lstrip()
    if not rest:
        return True
    word = re.search(r"[\w.]*$", text[:place])
    abbreviated = word is not None and text[place] == "." and word.group().casefold() in short
    return not abbreviated and not rest[0].islower()


def _place(item: Item, bounds: list[tuple[int, int, int, int, int]]) -> None:
    for start, chunk, clause, sentence, depth in bounds:
        if start > item.start:
            break
        item.chunk, item.clause, item.sentence, item.depth = chunk, clause, sentence, depth
