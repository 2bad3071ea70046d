"""Words that say what no field holds ("fully winterized plumbing"), by the kinds of ``rules/claims.yaml``."""

from __future__ import annotations

import itertools
from bisect import bisect_left
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from specscan.finding.language.fold import expand
from specscan.finding.language.lexicon import Lexicon
from specscan.finding.things.items import Parsed
from specscan.records.text import Kind, Passage
from specscan.rulebook.models import Terms

APART = (";", "•", "|")
DENYING = ("negation", "none", "no")  # undo what they stand before
UNDOING = ("hedge", "not_for", "not_fitted", "not_available")  # undo a whole clause
Norms = tuple[str, ...]
ByFirst = Mapping[str, Sequence[Norms]]  # some terms as folded words, by the first of them
SENTENCE_WORDS = 8
MAX_TIMES = 6  # as often as a term is looked at in one sentence: a claim is short, and lists are endless


@dataclass(frozen=True, slots=True)
class Said:
    """A kind said in characters ``start`` to ``end`` of a text; ``denied`` where the words say that it is not so."""

    kind: str
    start: int
    end: int
    sentence: int
    denied: bool = False
    figure: float | None = None


class SayingFinder:
    """Finds the kinds of claims in parsed statements of one language."""

    def __init__(self, lexicon: Lexicon):
        self.lexicon = lexicon
        self.kinds = lexicon.book.claims.kinds
        self.groups: dict[str, list[ByFirst]] = {}
        self.undone: dict[str, ByFirst] = {}
        cues = lexicon.words.cues
        self.denying, self.undoing = (
            self._norms({lexicon.language: [word for name in names for word in cues.get(name, [])]})
            for names in (DENYING, UNDOING)
        )
        self.starts: dict[str, set[str]] = defaultdict(set)  # first word of a term of the first group → kinds
        for name, kind in self.kinds.items():
            self.groups[name] = [self._norms(terms) for terms in kind.words]
            self.undone[name] = self._norms(kind.not_words)
            for first in self.groups[name][0]:
                self.starts[first].add(name)

    def _norms(self, terms: Terms) -> ByFirst:
        words = [*terms.get(self.lexicon.language, []), *terms.get("any", [])]
        found: dict[str, list[Norms]] = defaultdict(list)
        for norms in {tuple(self.lexicon.folder.norms(text)) for word in words for text in expand(word)}:
            if norms:
                found[norms[0]].append(norms)
        return dict(found)

    def find(self, parsed: Parsed, *, denials: bool) -> list[Said]:
        """Give what is said, once for each sentence and kind.

        Denials and hedges ("not heated", "prepared for") undo it, or are given as ``denied`` where asked for.
        """
        norms = [token.norm for token in parsed.analysis.tokens]
        names = set().union(*(self.starts[word] for word in set(norms) if word in self.starts))
        found: list[Said] = []
        if not names:
            return found
        sentences = list(self._sentences(parsed))
        for name in sorted(names):
            for sentence, (first, last) in enumerate(sentences):
                said = self._in_sentence(name, parsed, norms, sentence, first, last, denials=denials)
                if said is not None:
                    found.append(said)
        return found

    @staticmethod
    def _sentences(parsed: Parsed) -> Iterator[tuple[int, int]]:
        """Give first and last (behind) word of each sentence."""
        tokens = parsed.analysis.tokens
        starts = [parsed.bounds[0][0]]
        starts += [two[0] for one, two in itertools.pairwise(parsed.bounds) if two[3] > one[3]]
        words = [bisect_left(tokens, start, key=lambda token: token.start) for start in starts]
        for first, last in itertools.pairwise([*words, len(tokens)]):
            yield (first, last) if first < last else (0, 0)

    def _in_sentence(
        self, name: str, parsed: Parsed, norms: list[str], sentence: int, first: int, last: int, *, denials: bool
    ) -> Said | None:
        kind = self.kinds[name]
        groups = self.groups[name]
        if any(group.keys().isdisjoint(norms[first:last]) for group in groups):
            return None
        places = [self._places(group, norms, first, last) for group in groups]
        held = [m for m in parsed.analysis.mentions if m.concept.name in kind.not_things]
        places[0] = [(a, b) for a, b in places[0] if not any(m.first < b and a < m.last for m in held)]
        if not all(places):
            return None
        span = _nearest(places, kind.within)
        if span is None:
            return None
        tokens = parsed.analysis.tokens
        start, end = tokens[span[0]].start, tokens[span[1] - 1].end
        low, high = (0, len(parsed.text)) if denials else self._clause(parsed, start, end)
        if any(sign in parsed.text[start:end] for sign in APART):
            return None
        if any(low <= tokens[a].start < high for a, _ in self._places(self.undone[name], norms, first, last)):
            return None
        figure = _figure(parsed, sentence, kind.figure) if kind.figure else None
        if kind.figure and figure is None:
            return None
        inside = [place for group in places for place in group]
        denied = not kind.denies and self._is_undone(parsed, low, high, high if denials else end, inside)
        if denied and not denials:
            return None
        return Said(name, start, end, sentence, denied, figure)

    @staticmethod
    def _places(terms: ByFirst, norms: list[str], first: int, last: int) -> list[tuple[int, int]]:
        found = [
            (place, place + len(term))
            for place in range(first, last)
            if norms[place] in terms
            for term in terms[norms[place]]
            if tuple(norms[place : min(last, place + len(term))]) == term
        ]
        return sorted(found)[:MAX_TIMES]

    @staticmethod
    def _clause(parsed: Parsed, start: int, end: int) -> tuple[int, int]:
        """Give the characters of the clauses in which a span stands."""
        cuts = [two[0] for one, two in itertools.pairwise(parsed.bounds) if two[2] > one[2]]
        return max((cut for cut in cuts if cut <= start), default=0), min(
            (cut for cut in cuts if cut >= end), default=len(parsed.text)
        )

    def _is_undone(self, parsed: Parsed, low: int, high: int, before: int, said: list[tuple[int, int]]) -> bool:
        """Tell whether a hedge stands in a clause, or a denial ahead of ``before``, be they part of longer terms.

        A word of the claim itself ("never freeze") denies nothing.
        """
        tokens = parsed.analysis.tokens
        own = {place for first, last in said for place in range(first, last)}
        inside = [n for n, token in enumerate(tokens) if low <= token.start < high]
        if not inside:
            return False
        norms, first, last = [token.norm for token in tokens], inside[0], inside[-1] + 1
        denials = [a for a, _ in self._places(self.denying, norms, first, last) if tokens[a].start < before]
        return bool(self._places(self.undoing, norms, first, last)) or any(a not in own for a in denials)


def is_sentence(passage: Passage) -> bool:
    """Tell whether a passage is running text, though a colon in it may make it look like a label and its value."""
    if passage.kind is Kind.CELL:
        return False
    ended = passage.text.rstrip().endswith((".", "!")) and len(passage.text.split()) >= SENTENCE_WORDS
    return passage.kind is Kind.PROSE or ended


def _nearest(places: list[list[tuple[int, int]]], within: int) -> tuple[int, int] | None:
    """Give first and last word (behind) of the closest places of all groups that do not overlap."""
    best: tuple[int, int] | None = None
    for chosen in itertools.product(*places):
        ordered = sorted(chosen)
        if any(two[0] < one[1] for one, two in itertools.pairwise(ordered)):
            continue
        if any(two[0] - one[1] > within for one, two in itertools.pairwise(ordered)):
            continue
        span = (ordered[0][0], max(end for _, end in ordered))
        if best is None or span[1] - span[0] < best[1] - best[0]:
            best = span
    return best


def _figure(parsed: Parsed, sentence: int, units: Mapping[str, float]) -> float | None:
    """Give the figure that a sentence names with one of the units, the lower end of a range, times the unit's worth."""
    for item in parsed.items:
        quantity = item.quantity
        if quantity is not None and item.sentence == sentence and quantity.printed_unit.casefold() in units:
            return quantity.low * units[quantity.printed_unit.casefold()]
    return None
