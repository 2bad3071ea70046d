"""Labels set over their values: "Sleeps" over "3", "Inverter" over "3,000 W", one below the other.

The labels are headings, or lines of text that differ from their values in weight or colour, which no passage tells.
"""

from __future__ import annotations

import itertools
from collections.abc import Sequence

from specscan.finding.language.lexicon import Lexicon
from specscan.records.text import Kind, Passage

MIN_PAIRS = 4  # from which such headings are labels of a list: one alone may be that of a chapter
MAX_WORDS = 16
MAX_LABEL_WORDS = 5
ENDS = (". ", "! ", "? ")  # of sentences: a text of several is no value
MOST_ODD = 0.2  # of the lines of such a list, those that are neither label nor value nor both in one
LEAST_FIGURED = 0.5  # of the values, those with a figure: lines of equipment have few


def stacked_labels(passages: Sequence[Passage], lexicon: Lexicon) -> dict[int, str]:
    """Give the labels of passages, by number, which are all that stands under a known label.

    A label that is a line of text like its value has an empty text itself: it says nothing alone.
    """
    found: dict[tuple[str, ...], dict[int, str]] = {}
    for above, value, below in zip(passages, passages[1:], [*passages[2:], None], strict=False):
        if above.kind is not Kind.HEADING or value.kind not in (Kind.PROSE, Kind.LINE) or value.table is not None:
            continue
        alone = below is None or below.kind is Kind.HEADING or below.sections[: len(value.sections)] != value.sections
        if alone and value.sections[-1:] == (above.text,) and _are_pair(above.text, value.text, lexicon):
            found.setdefault(value.sections[:-1], {})[value.number] = above.text
    labels = {number: label for pairs in found.values() if len(pairs) >= MIN_PAIRS for number, label in pairs.items()}
    runs = itertools.groupby(passages, key=lambda one: (one.kind, one.table, one.page, one.block, one.sections))
    for (kind, table, *_), run in runs:
        if kind in (Kind.PROSE, Kind.LINE) and table is None:
            labels.update(_in_turn(list(run), lexicon))
    return labels


def _in_turn(lines: Sequence[Passage], lexicon: Lexicon) -> dict[int, str]:
    """Give the labels of a run of lines that are labels and values by turns; both may stand in one line."""
    if len(lines) < 2 * MIN_PAIRS or any(":" in line.text for line in lines):
        return {}
    found: dict[int, str] = {}
    figured = odd = at = 0
    while at < len(lines):
        label, value = lines[at], lines[at + 1] if at + 1 < len(lines) else None
        if value is not None and _are_pair(label.text, value.text, lexicon) and not _begins_label(value.text, lexicon):
            found |= {label.number: "", value.number: label.text}
            figured += any(map(str.isdigit, value.text))
            at += 2
        else:
            odd += not _begins_label(label.text, lexicon)
            at += 1
    pairs = len(found) // 2
    sure = pairs >= MIN_PAIRS and figured >= LEAST_FIGURED * pairs and odd <= MOST_ODD * len(lines)
    return found if sure else {}


def _begins_label(text: str, lexicon: Lexicon) -> bool:
    """Tell whether a known label stands at the beginning of a text, or is all of it; "90 l" is a figure."""
    words = text.split()
    return not text[:1].isdigit() and any(
        lexicon.knows_label(" ".join(words[:length])) for length in range(1, MAX_LABEL_WORDS + 1)
    )


def _are_pair(label: str, value: str, lexicon: Lexicon) -> bool:
    """Tell whether a heading can be the label of a short text."""
    short = len(value.split()) <= MAX_WORDS and not any(end in value for end in ENDS)
    return short and len(label.split()) <= MAX_LABEL_WORDS and lexicon.knows_label(label)
