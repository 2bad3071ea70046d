"""A text and its mentions and quantities → items in chunks, ready to be bound to each other."""

from __future__ import annotations

import itertools
import re
from bisect import bisect_left, bisect_right
from collections.abc import Iterable
from dataclasses import dataclass, field

from specscan.finding.language.lexicon import Analysis, Lexicon, Stops
from specscan.finding.language.mentions import Concept, Mention
from specscan.finding.language.quantity import Quantity
from specscan.finding.things.sisters import SisterSentences

TELLING = frozenset({"value", "term", "denied"})  # kinds of words that state something
NAMING = frozenset({"thing", "short", "beside"})  # kinds of words that only name something
SUBJECTS = frozenset({"thing", "alone"})  # kinds of words of which a statement can be
CLAUSE_SIGNS = {";", "|", "•", "·", "‖"}
CHUNK_SIGNS = {",", ":", "+", "–", "—"}
OPENING, CLOSING = {"(", "["}, {")", "]"}
SLASH = re.compile(r"\s/\s(?=[^\W\d_])")
DASH = re.compile(r"\s[-–—]\s")
UNIT_BEHIND = re.compile(r"\d[\s-]?[^\W\d_]+(?:/[^\W\d_]+)?$")
MAX_UNIT = 16
NEXT = re.compile(r"\S")
SIGNS = re.compile("[" + re.escape("".join(sorted({*CLAUSE_SIGNS, *CHUNK_SIGNS, *OPENING, *CLOSING, *".!?"}))) + "]")


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
    by_kind: dict[str, list[str]] = field(default_factory=dict)  # the names of the concepts

    def add(self, concept: Concept) -> None:
        """Take in a concept that the words mention."""
        self.concepts.append(concept)
        self.by_kind.setdefault(concept.kind, []).append(concept.name)

    def names(self, kind: str) -> list[str]:
        """Give the names of the concepts of a kind."""
        return list(self.by_kind.get(kind, ()))

    @property
    def tells(self) -> bool:
        """Tell whether the words state something of a thing."""
        return not TELLING.isdisjoint(self.by_kind)

    def has(self, kind: str, *names: str) -> bool:
        """Tell whether a concept of a kind (and one of the names, if given) is mentioned."""
        held = self.by_kind.get(kind)
        return held is not None and (not names or any(map(held.__contains__, names)))


@dataclass(slots=True)
class Parsed:
    """A text with its items in order."""

    text: str
    items: list[Item]
    analysis: Analysis
    bounds: list[tuple[int, int, int, int, int]]  # start, chunk, clause, sentence, depth from there on
    by_cue: dict[str, list[Item]] = field(default_factory=dict)  # the items that are cues of each name
    kinds: frozenset[str] = frozenset()  # of the concepts of all items

    def cues(self, *names: str) -> list[Item]:
        """Give the items that are cues of these names, in order. What is given may be shared: do not change it."""
        if self.by_cue.keys().isdisjoint(names):
            return []
        if len(names) == 1:
            return self.by_cue[names[0]]
        return [item for item in self.items if item.has("cue", *names)]

    def between(self, left: int, right: int) -> list[str]:
        """Give the folded words between two places of the text."""
        tokens = self.analysis.tokens
        first = bisect_left(tokens, left, key=lambda token: token.start)
        found = []
        for token in itertools.islice(tokens, first, None):
            if token.end > right:
                break
            found.append(token.norm)
        return found

    def goes_on(self, clause: int) -> bool:
        """Tell whether a clause goes on about the one before: "a battery (option); it has its own heater"."""
        start = next((bound[0] for bound in self.bounds if bound[2] == clause), 0)
        return any(
            cue.clause == clause and not any(letter.isalnum() for letter in self.text[start : cue.start])
            for cue in self.cues("pronoun")
        )

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

    def sentence_texts(self) -> dict[int, str]:
        """Give the text of each sentence by its number."""
        starts: dict[int, int] = {}
        for start, _, _, number, _ in self.bounds:
            starts.setdefault(number, start)
        ends = [*list(starts.values())[1:], len(self.text)]
        return {number: self.text[start:end] for (number, start), end in zip(starts.items(), ends, strict=True)}

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
    analysis: Analysis | None = None,
    sisters: SisterSentences | None = None,
) -> Parsed:
    """Give the items of a text; ``vans`` are places where vans of the document are named.

    Where such a place says of none that it is named, its figure is no value all the same.

    With ``sisters`` what is said of each of several vans in one sentence counts as a sentence of its own.
    """
    analysis = analysis or lexicon.analyse(text)
    places = list(vans)
    named = [place for place in places if place[2]]
    taken = [(a, b) for a, b, _ in named]
    figures = [(a, b) for a, b, _ in places]
    things = [m.start for m in analysis.mentions if m.concept.kind in SUBJECTS or lexicon.brings_in(m.concept)]
    own: set[int] = set()
    if sisters is not None and (len(named) > 1 or (named and (";" in text or "," in text))):
        own = sisters.begin(text, named, analysis.mentions)
    whole = [(m.start, m.end) for m in analysis.mentions if m.concept.kind == "value" and "," in text[m.start : m.end]]
    whole += [(q.start - _counted(text, q), q.end) for q in quantities]
    bounds = _bounds(text, _merged(whole), lexicon.stops, _statements(text, lexicon, things), own)
    items: dict[tuple[int, int], Item] = {}
    for mention in analysis.mentions:
        if any(a <= mention.start and mention.end <= b for a, b in taken) or _is_letter(mention, text):
            continue
        key = (mention.first, mention.last)
        item = items.get(key)
        if item is None:
            item = items[key] = Item(mention.start, mention.end, first=mention.first, last=mention.last)
        item.add(mention.concept)
    found = [item for item in items.values() if not (quantities and _is_unit(item, quantities, text))]
    for quantity in quantities:
        if any(a <= quantity.start and quantity.end <= b for a, b in figures):
            continue
        if quantity.bare and quantity.worded and any(_holds(i, quantity) for i in found):
            continue
        found.append(_placed_quantity(quantity, analysis))
    for start, end, names in named:
        found.append(Item(start, end, vans=names))
    found.sort(key=lambda item: (item.start, -item.end))
    for item in found:
        _place(item, bounds)
    cues: dict[str, list[Item]] = {}
    for item in found:
        for name in item.by_kind.get("cue", ()):
            cues.setdefault(name, []).append(item)
    return Parsed(text, found, analysis, bounds, cues, frozenset(kind for item in found for kind in item.by_kind))


def _is_letter(mention: Mention, text: str) -> bool:
    """Tell whether a denial is one letter without its apostrophe: the "N" of "Le Drift 25 N chauffe la cuve"."""
    denial = mention.concept.kind == "cue" and mention.concept.name == "negation"
    return denial and mention.end - mention.start == 1 and text[mention.end : mention.end + 1].isspace()


def _is_unit(item: Item, quantities: list[Quantity], text: str) -> bool:
    """Tell whether a name is only the unit of a figure, as "Grad" of "20 Grad" is no thermal grade, or its joint."""
    if any(q.start < item.start and item.end < q.end and q.low < q.high for q in quantities):
        return True  # "bis" of "2 bis 3"
    return item.by_kind.keys() <= NAMING and any(
        not q.bare and q.start < item.start and item.end <= q.end and not re.search(r"\d", text[item.start : q.end])
        for q in quantities
    )


def _holds(item: Item, quantity: Quantity) -> bool:
    """Tell whether a figure in words is part of words that mean something else: "all four wheels", not "four"."""
    more = item.end - item.start > quantity.end - quantity.start
    return more and _means(item) and item.start <= quantity.start < item.end


def _means(item: Item) -> bool:
    return any(concept.kind in ("thing", "value", "alone", "term", "word") for concept in item.concepts)


def _placed_quantity(quantity: Quantity, analysis: Analysis) -> Item:
    first = bisect_left(analysis.tokens, quantity.start, key=lambda token: token.start)
    last = bisect_left(analysis.tokens, quantity.end, lo=first, key=lambda token: token.start)
    return Item(quantity.start, quantity.end, quantity=quantity, first=first, last=last)


def _statements(text: str, lexicon: Lexicon, things: list[int]) -> set[int]:
    """Give the places at which another statement about the same subject begins: ", has a fresh tank of 90 l".

    A thing is named behind the verb: "is insulated and is heated" goes on about its own.
    """
    if lexicon.next_statement is None or not things:
        return set()
    found = [match.start() for match in lexicon.next_statement.finditer(text)]
    ends = [*found[1:], len(text)][: len(found)]
    return {
        place for place, end in zip(found, ends, strict=True)
        if any(place < start < end for start in things)
    }  # fmt: skip


def _bounds(
    text: str, inside: list[tuple[int, int]], stops: Stops, begun: set[int], own: set[int]
) -> list[tuple[int, int, int, int, int]]:
    """Cut a text into sentences, clauses and chunks; signs ``inside`` quantities and other words do not count.

    ``begun`` are places at which another clause begins without a sign, ``own`` those at which another van's words do.
    """
    chunk = clause = sentence = depth = 0
    bounds = [(0, 0, 0, 0, 0)]
    slashes = {match.start() + 1 for match in SLASH.finditer(text)} if "/" in text else set()
    dashes = {match.start() + 1 for match in DASH.finditer(text)}
    for place in sorted({*slashes, *dashes, *begun, *own, *(match.start() for match in SIGNS.finditer(text))}):
        while inside and inside[-1][1] <= place:
            inside.pop()
        letter, after = text[place], text[place + 1 : place + 2]
        if inside and inside[-1][0] <= place and not (letter == "." and place + 1 == inside[-1][1]):
            continue  # but the point of a unit can end its sentence: "stands 109 in. The 21 …"
        if place in own:
            sentence += 1
            clause += 1
            chunk += 1
        elif place in begun:
            clause += 1
            chunk += 1
        elif letter in OPENING:
            depth += 1
            chunk += 1
        elif letter in CLOSING:
            depth = max(0, depth - 1)
            chunk += 1
        elif letter in CLAUSE_SIGNS:
            clause += 1
            chunk += 1
        elif letter in ".!?" and (not after or after.isspace()) and _ends_sentence(text, place, stops):
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


def _counted(text: str, quantity: Quantity) -> bool:
    """Tell whether a quantity begins with a number in brackets, whose first bracket stands before it: "(2) 220 W"."""
    words = text[quantity.start : quantity.end]
    return text[: quantity.start].endswith("(") and words.count(")") > words.count("(")


def _merged(spans: list[tuple[int, int]]) -> list[tuple[int, int]]:
    """Give spans without overlaps, the last in the text first."""
    merged: list[tuple[int, int]] = []
    for start, end in sorted(spans):
        if merged and start <= merged[-1][1]:
            merged[-1] = (merged[-1][0], max(end, merged[-1][1]))
        else:
            merged.append((start, end))
    return merged[::-1]


def _ends_sentence(text: str, place: int, stops: Stops) -> bool:
    following = NEXT.search(text, place + 1)
    if following is None:
        return True
    start = place
    while start and (text[start - 1].isalnum() or text[start - 1] in "_."):
        start -= 1
    abbreviated = text[place] == "." and text[start:place].casefold() in stops.short
    if abbreviated and UNIT_BEHIND.search(text, max(0, place - MAX_UNIT), place) and following.group().isupper():
        return True  # "18,000 BTU/hr. It burns"
    if abbreviated and stops.opening.match(text, following.start()):
        return True  # "9 pi de haut. Le 21"
    return not abbreviated and not following.group().islower()


def _place(item: Item, bounds: list[tuple[int, int, int, int, int]]) -> None:
    at = max(0, bisect_right(bounds, item.start, key=lambda bound: bound[0]) - 1)
    _, item.chunk, item.clause, item.sentence, item.depth = bounds[at]
