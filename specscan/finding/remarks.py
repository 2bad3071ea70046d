"""Remarks that say what figures mean: "Furnace figures are input", "“Rated to” is the cold in which the cabin holds".

The first kind speaks without a sign of all figures of a thing, the second explains the head of a column or row.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import NamedTuple

from specscan.finding.drafts import Draft
from specscan.finding.language.lexicon import Analysis, Lexicon
from specscan.finding.language.whole_words import any_word, holds
from specscan.finding.naming.place import begins_with
from specscan.records.text import Kind, Passage

SENTENCE = re.compile(r"(?<=[.!?;])\s+")
MOST_WORDS = 16
QUOTED = re.compile(r"[\"“”„«‹‘']\s?([^\"“”„«»‹›‘’]{3,40}?)[,.]?\s?[\"“”»›’'],?\s")
BASES = frozenset({"input", "output"})


class Remark(NamedTuple):
    """A sentence, the things of which it speaks and the words for their kind; without these all are meant."""

    text: str
    things: frozenset[str]
    kind: frozenset[str]


class Remarks:
    """The remarks of one document on whether figures are what goes in or what comes out."""

    def __init__(self, lexicon: Lexicon, passages: Iterable[Passage]):
        self.lexicon = lexicon
        words = lexicon.words
        self.means = re.compile(rf"(?:{any_word((*words.sign_means, *words.cues['is_named']))})(?!\w)", re.IGNORECASE)
        told = list(passages)
        texts = [p.text for p in told if p.table is None and p.kind is not Kind.HEADING]
        sentences = (part for text in texts if self._speaks_of_figures(text) for part in SENTENCE.split(text))
        self.remarks = [remark for text in sentences if (remark := self._read(text)) is not None]
        quoting = [part for text in texts if QUOTED.search(text) for part in SENTENCE.split(text)]
        heads = {head.text for p in told if quoting for head in (p.row, p.column) if head is not None}
        self.texts = [one.text for one in self.remarks] + [text for text in quoting if self._explains(text, heads)]

    def of(self, draft: Draft) -> str | None:
        """Give the remark on the things that a statement names, where it says nothing of the kind itself."""
        if not self.remarks:
            return None
        analysis = self.lexicon.analyse(f"{draft.label} {draft.body}")
        if _bases(analysis):
            return None
        things, words = _things(analysis), {token.norm for token in analysis.tokens}
        return next((one.text for one in self.remarks if one.things & things and one.kind <= words), None)

    def holds(self, text: str, place: int) -> bool:
        """Tell whether a place of a text lies in a remark, which tells no more than what figures mean."""
        starts = ((text.find(one), len(one)) for one in self.texts)
        return any(0 <= start <= place < start + length for start, length in starts)

    def _read(self, text: str) -> Remark | None:
        if re.search(r"\d", text) or len(text.split()) > MOST_WORDS or not self._speaks_of_figures(text):
            return None
        analysis = self.lexicon.analyse(text)
        things = _things(analysis)
        kinds = [m for m in analysis.mentions if m.concept.kind == "value"]
        words = frozenset(token.norm for m in kinds for token in analysis.tokens[m.first : m.last])
        return Remark(text, things, words) if things and len(_bases(analysis)) == 1 else None

    def _explains(self, text: str, heads: Iterable[str]) -> bool:
        """Tell whether a sentence says what the label of a column or row means, which it quotes."""
        match = QUOTED.match(text)
        if match is None or self.means.match(text, match.end()) is None:
            return False
        return any(begins_with(head.casefold(), match.group(1).casefold()) for head in heads)

    def _speaks_of_figures(self, text: str) -> bool:
        plain = text.casefold()
        return any(holds(plain, word) for word in self.lexicon.words.figure_words)


def _things(analysis: Analysis) -> frozenset[str]:
    return frozenset(m.concept.name for m in analysis.mentions if m.concept.kind == "thing")


def _bases(analysis: Analysis) -> frozenset[str]:
    """Give which of input and output a text speaks of."""
    return BASES.intersection(m.concept.name for m in analysis.mentions if m.concept.kind in ("aspect", "cue"))
