"""Values of several vans between strokes, in an order that the document tells: "24 gal / 33 gal"."""

from __future__ import annotations

import functools
import itertools
import re
from collections.abc import Iterable, Sequence

from specscan.finding.drafts import Reading
from specscan.finding.kit import Kit
from specscan.finding.language.whole_words import any_word
from specscan.finding.naming.van_mentions import VanMentions
from specscan.finding.things.found import Found
from specscan.finding.things.in_order import run_of
from specscan.finding.things.items import Item, Parsed
from specscan.records.text import Kind, Passage

STROKE = re.compile(r"\s*/\s*")
APART = re.compile(r"\s+/\s+|(?<=\d)/(?=\d)")
SENTENCE_END = re.compile(r"(?<=[.!?])\s+")
LONGEST = 240  # letters of a sentence that tells the order
SLOT_WORDS = 5  # of each value of a body that holds nothing but these
SAME = 0.03  # by which one amount in two units may differ
Order = tuple[frozenset[str], ...]


class InTurn:
    """Tells whose such values of one document are."""

    def __init__(self, kit: Kit, vans: VanMentions, passages: Sequence[Passage]):
        self.kit, self.vans, self.passages = kit, vans, passages
        self.heads: dict[str, Order | None] = {}

    @functools.cached_property
    def order(self) -> Order | None:
        """The order that a sentence of the document tells; it is looked for once something stands between strokes."""
        told = (self._told(text) for passage in self.passages for text in _sentences(passage))
        return next((order for order in told if order is not None), None)

    def van_of(self, found: Found, reading: Reading) -> frozenset[str] | None:
        """Give the van of a value that stands between strokes with those of others, ``None`` for all others."""
        column = reading.draft.passage.column
        if self.vans.single or found.item is None or "/" not in reading.parsed.text:
            return None
        order = (self._headed(column.text) if column is not None else None) or self.order
        if order is None:
            return None
        parsed = reading.parsed
        run = run_of(found.item, parsed, _joined)
        if len(run) > 1:
            if any(_is_same(one, two) for one, two in itertools.pairwise(run)):
                return None
            place = next(n for n, one in enumerate(run) if one is found.item)
            return order[place] if len(run) == len(order) else None
        slots = [*APART.finditer(parsed.text, reading.split)]
        values = [part.strip() for part in APART.split(parsed.text[reading.split :])]
        if len(values) != len(order) or any(not 1 <= len(value.split()) <= SLOT_WORDS for value in values):
            return None
        within = any(i.start <= slot.start() and slot.end() <= i.end for slot in slots for i in parsed.items)
        if found.start < reading.split or within or any("," in value for value in values):
            return None  # a stroke within an item parts one amount in two units
        return order[sum(slot.end() <= found.start for slot in slots)]

    def _told(self, text: str) -> Order | None:
        """Give the order that a sentence tells: "the Alder first and the Gorse second, with a slash between"."""
        words = self.kit.lexicon.words
        if not _find((*words.stroke_words, *words.values_in_turn), text):
            return None
        named = self.vans.find(text)
        vans = list(dict.fromkeys(vans for _, _, vans in named))
        if any(len(one) > 1 for one in vans) or any(not q.bare for q in self.kit.quantities.find(text)):
            return None
        first, second = _find(words.comes_first, text), _find(words.comes_second, text)
        if len(vans) == 1 and len(self.vans.everyone) == 2 and (first or second):
            other = self.vans.everyone - vans[0]
            return (vans[0], other) if first and not second else (other, vans[0]) if second and not first else None
        between = [text[a[1] : b[0]] for a, b in itertools.pairwise(named)]
        if len(vans) < 2 or len(vans) < len(named):
            return None
        if first and second:
            return tuple(vans if first.start() < second.start() else vans[::-1])
        return tuple(vans) if all(STROKE.fullmatch(gap) for gap in between) else None

    def _headed(self, head: str) -> Order | None:
        """Give the vans that the head of a column names between strokes: "Alder / Gorse"."""
        if head not in self.heads:
            named = [self.vans.whole(part) for part in STROKE.split(head)]
            known = [vans for vans in named if vans and len(vans) == 1]
            self.heads[head] = tuple(known) if len(set(known)) == len(named) > 1 else None
        return self.heads[head]


def _find(phrases: Iterable[str], text: str) -> re.Match[str] | None:
    """Give where one of some phrases stands in a text."""
    return _pattern(tuple(phrases)).search(text)


@functools.lru_cache(maxsize=16)
def _pattern(phrases: tuple[str, ...]) -> re.Pattern[str]:
    return re.compile(rf"(?<!\w)(?:{any_word(phrases)})(?!\w)", re.IGNORECASE)


def _sentences(passage: Passage) -> list[str]:
    if passage.kind is Kind.CELL or len(passage.text) < 8:
        return []
    return [text for text in SENTENCE_END.split(passage.text) if len(text) <= LONGEST]


def _is_same(one: Item, two: Item) -> bool:
    """Tell whether two figures are one amount in two units: "5.99 m / 19 ft 8 in"."""
    a, b = one.quantity, two.quantity
    if a is None or b is None or a.bare or b.bare or a.printed_unit == b.printed_unit:
        return False
    return abs(a.high - b.high) <= SAME * max(abs(a.high), abs(b.high))


def _joined(one: Item, two: Item, parsed: Parsed) -> bool:
    return STROKE.fullmatch(parsed.text, one.end, two.start) is not None
