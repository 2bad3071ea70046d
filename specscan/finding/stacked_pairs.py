"""Labels set as headings over their values: "Sleeps" over "3", "Inverter" over "3,000 W", one below the other."""

from __future__ import annotations

from collections.abc import Sequence

from specscan.finding.language.lexicon import Lexicon
from specscan.records.text import Kind, Passage

MIN_PAIRS = 4  # from which such headings are labels of a list: one alone may be that of a chapter
MAX_WORDS = 16
MAX_LABEL_WORDS = 5
ENDS = (". ", "! ", "? ")  # of sentences: a text of several is no value


def stacked_labels(passages: Sequence[Passage], lexicon: Lexicon) -> dict[int, str]:
    """Give the labels of passages, by number, which are all that stands under a heading that is a known label."""
    found: dict[tuple[str, ...], dict[int, str]] = {}
    for above, value, below in zip(passages, passages[1:], [*passages[2:], None], strict=False):
        if above.kind is not Kind.HEADING or value.kind not in (Kind.PROSE, Kind.LINE) or value.table is not None:
            continue
        alone = below is None or below.kind is Kind.HEADING or below.sections[: len(value.sections)] != value.sections
        if alone and value.sections[-1:] == (above.text,) and _are_pair(above.text, value.text, lexicon):
            found.setdefault(value.sections[:-1], {})[value.number] = above.text
    return {number: label for pairs in found.values() if len(pairs) >= MIN_PAIRS for number, label in pairs.items()}


def _are_pair(label: str, value: str, lexicon: Lexicon) -> bool:
    """Tell whether a heading can be the label of a short text."""
    short = len(value.split()) <= MAX_WORDS and not any(end in value for end in ENDS)
    return short and len(label.split()) <= MAX_LABEL_WORDS and lexicon.knows_label(label)
