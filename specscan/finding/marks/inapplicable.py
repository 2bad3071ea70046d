"""Signs by which a document says that a thing has no meaning for a van: "X not needed", "entf. entfällt"."""

from __future__ import annotations

import re

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.language.whole_words import any_word
from specscan.finding.marks.legend import Legend
from specscan.records.text import Passage

LONGEST_SIGN = 6
MOST_BETWEEN = 4  # words before those that say so: "that the line does not apply"


def read_inapplicable(legend: Legend, passages: list[Passage], lexicon: Lexicon) -> None:
    """Note such signs of the lines that explain signs: a cell with one states nothing."""
    phrases = lexicon.words.sign_inapplicable
    if not phrases:
        return
    _read_said(legend, passages, lexicon)
    if not legend.signs:
        return
    sign = rf"(?:^|(?<=[\s;,(|]))(\S{{1,{LONGEST_SIGN}}}?)\s*[=:–—-]?\s*(?<=[\s=:–—-])"
    pattern = re.compile(rf"{sign}(?i:{any_word(phrases)})(?!\w)")
    for passage in passages:
        if passage.number not in legend.passages and passage.number not in legend.goes_on:
            continue
        for match in pattern.finditer(passage.text):
            if match.group(1) not in legend.signs:
                legend.inapplicable.add(match.group(1))


def _read_said(legend: Legend, passages: list[Passage], lexicon: Lexicon) -> None:
    """Note signs of this kind of which a sentence says so: "n/a means that the line does not apply"."""
    words, known = lexicon.words, tuple(lexicon.book.general.inapplicable)
    if not words.sign_means:
        return
    said = rf"(?i:{any_word(words.sign_means)}):?\s+(?:[^\s.;:]+\s+){{0,{MOST_BETWEEN}}}?"
    pattern = re.compile(
        rf"(?<!\w)((?i:{any_word(known)}))[”“»\"]?\s+{said}(?i:{any_word(words.sign_inapplicable)})(?!\w)"
    )
    for passage in passages:
        legend.inapplicable.update(match.group(1) for match in pattern.finditer(passage.text))
