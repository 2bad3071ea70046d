"""Rows of tables in which one value holds for all vans, because the document says that a single figure does."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Sequence

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.language.whole_words import any_word
from specscan.finding.naming.van_mentions import VanMentions
from specscan.records.text import Kind, Passage

SENTENCE = re.compile(r"[^.!?]+")


def shared_cells(passages: Sequence[Passage], vans: VanMentions, lexicon: Lexicon) -> dict[int, frozenset[str]]:
    """Give the cells that stand alone in their row, by number, each with the vans over the columns of its table.

    Nothing is given where the document does not say so: "A single figure is true for both."
    """
    if vans.single or not _says_so(passages, lexicon):
        return {}
    rows: dict[tuple[int | None, int | None], list[int]] = defaultdict(list)
    headed: dict[int | None, set[str]] = defaultdict(set)
    for passage in passages:
        if passage.kind is not Kind.CELL or passage.column is None:
            continue
        named = vans.whole(passage.column.text.strip(" :"))
        if named is not None:
            headed[passage.table] |= named
            rows[passage.table, passage.row_index].append(passage.number)
    return {cells[0]: frozenset(headed[table]) for (table, _), cells in rows.items() if len(cells) == 1}


def _says_so(passages: Sequence[Passage], lexicon: Lexicon) -> bool:
    words = lexicon.words
    if not words.lone_figure:
        return False
    figure = re.compile(rf"(?<!\w)(?:{any_word(words.lone_figure)})(?!\w)", re.IGNORECASE)
    everyone = re.compile(rf"(?<!\w)(?:{any_word(words.every_words)})(?!\w)", re.IGNORECASE)
    return any(
        figure.search(sentence) and everyone.search(sentence)
        for passage in passages
        if passage.kind is not Kind.CELL
        for sentence in SENTENCE.findall(passage.text)
    )
