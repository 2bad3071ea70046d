"""Remarks without a sign that say of all figures of a thing what they mean: "Furnace figures are input"."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import NamedTuple

from specscan.finding.drafts import Draft
from specscan.finding.language.lexicon import Analysis, Lexicon
from specscan.finding.language.whole_words import holds
from specscan.records.text import Kind, Passage

SENTENCE = re.compile(r"(?<=[.!?;])\s+")
MOST_WORDS = 16
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
        texts = (p.text for p in passages if p.table is None and p.kind is not Kind.HEADING)
        sentences = (part for text in texts if self._speaks_of_figures(text) for part in SENTENCE.split(text))
        self.remarks = [remark for text in sentences if (remark := self._read(text)) is not None]

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
        starts = ((text.find(one.text), len(one.text)) for one in self.remarks)
        return any(0 <= start <= place < start + length for start, length in starts)

    def _read(self, text: str) -> Remark | None:
        if re.search(r"\d", text) or len(text.split()) > MOST_WORDS or not self._speaks_of_figures(text):
            return None
        analysis = self.lexicon.analyse(text)
        things = _things(analysis)
        kinds = [m for m in analysis.mentions if m.concept.kind == "value"]
        words = frozenset(token.norm for m in kinds for token in analysis.tokens[m.first : m.last])
        return Remark(text, things, words) if things and len(_bases(analysis)) == 1 else None

    def _speaks_of_figures(self, text: str) -> bool:
        plain = text.casefold()
        return any(holds(plain, word) for word in self.lexicon.words.figure_words)


def _things(analysis: Analysis) -> frozenset[str]:
    return frozenset(m.concept.name for m in analysis.mentions if m.concept.kind == "thing")


def _bases(analysis: Analysis) -> frozenset[str]:
    """Give which of input and output a text speaks of."""
    return BASES.intersection(m.concept.name for m in analysis.mentions if m.concept.kind in ("aspect", "cue"))
