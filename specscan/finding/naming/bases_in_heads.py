"""Heads of tables, and headings, that name vans with the base vehicle behind: "Drift 60 on Kelmar Drover 350"."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import Literal

from specscan.finding.language.whole_words import any_word
from specscan.finding.naming.name_forms import BASE_NAME, are_mostly_names
from specscan.records.text import Head, Kind, Passage, Piece
from specscan.rulebook.models import WordFile

LEAST = 2  # vans
Side = Literal["row", "column"]
Pair = tuple[str, str]  # a van and its base
Quotes = dict[tuple[int, str], str]  # printed words by a passage's number and what stands for them
JOIN = ": "  # between a label and what it tells


class BasesInHeads:
    """Takes base vehicles from such heads in documents of one language."""

    def __init__(self, words: WordFile, can_be_name: Callable[[str], bool]):
        self.label = words.base_label
        self.can_be_name = can_be_name
        leading, articles = any_word([*words.begins_as, *words.mounted_on]), any_word(words.drop)
        base = rf"(?:(?:{articles}) )?(?P<base>(?:{BASE_NAME.pattern}))"
        self.pair = re.compile(rf"(?P<van>.*?\w),? \(?(?i:{leading}) {base}\)?")
        self.no_base = {word.casefold() for word in words.no_base}

    def apart(self, passages: Sequence[Passage]) -> tuple[tuple[Passage, ...], Quotes]:
        """Give the passages with the names alone as heads, and a cell for each base where all heads of a side have one.

        Such a cell has the number of the first one beside it, and the place of the head. The head itself is given too,
        as what is printed in place of the cell's label and text, by that number and them.
        """
        passages = tuple(passages)
        quotes: Quotes = {}
        sides: tuple[Side, ...] = ("row", "column")
        for side in sides if self.label else ():
            passages = self._apart_in(passages, side, quotes)
        return self._apart_under(passages, quotes), quotes

    def _apart_under(self, passages: tuple[Passage, ...], quotes: Quotes) -> tuple[Passage, ...]:
        """Give the passages with the names alone as headings, and below each a line for its base, which has its number.

        So it is where two headings or more have one: "Drift 60 on Kelmar Drover 350" over the labels of that van.
        """
        headings = [p.text for p in passages if p.kind is Kind.HEADING and self.pair.fullmatch(p.text) is not None]
        pairs = self._pairs(headings) if self.label else {}
        coded = (all(re.search(r"\d", pair[n]) for pair in pairs.values()) for n in range(2))  # "A week on Lake Ost"
        pairs = pairs if any(coded) else {}
        made: list[Passage] = []
        for passage in passages if pairs else ():
            above = tuple(pairs[text][0] if text in pairs else text for text in passage.sections)
            if passage.kind is not Kind.HEADING or passage.text not in pairs:
                made.append(replace(passage, sections=above))
                continue
            van, base = pairs[passage.text]
            line, start = f"{self.label}{JOIN}{base}", passage.text.rindex(base)
            box = passage.box(start, start + len(base))
            pieces = (Piece(0, len(line), box),) if box is not None else ()
            made.append(replace(passage, text=van, sections=above))
            made.append(replace(passage, kind=Kind.LINE, text=line, sections=(*above, van), pieces=pieces, notes=()))
            quotes[passage.number, line] = passage.text
        return tuple(made) if pairs else passages

    def _apart_in(self, passages: tuple[Passage, ...], side: Side, quotes: Quotes) -> tuple[Passage, ...]:
        heads: dict[int, dict[str, None]] = defaultdict(dict)
        for passage in passages:
            head: Head | None = getattr(passage, side)
            if passage.table is not None and head is not None and head.text.strip():
                heads[passage.table][head.text] = None
        pairs = {table: found for table, texts in heads.items() if (found := self._pairs(list(texts)))}
        if not pairs:
            return passages
        made: list[Passage] = []
        told: set[tuple[int, str]] = set()
        for passage in passages:
            head = getattr(passage, side)
            pair = pairs[passage.table].get(head.text) if passage.table in pairs and head is not None else None
            if pair is None or passage.table is None:
                made.append(passage)
                continue
            van, base = pair
            if (passage.table, van) not in told:
                told.add((passage.table, van))
                made.append(self._cell(passage, head, van, base, side))
                quotes[passage.number, f"{self.label}{JOIN}{base}"] = head.text
            head = replace(head, text=van)
            made.append(replace(passage, row=head) if side == "row" else replace(passage, column=head))
        return tuple(made)

    def _pairs(self, heads: Sequence[str]) -> dict[str, Pair]:
        """Give van and base for each of the heads of a side; nothing where one has no base, or two are of one name."""
        matches = {head: match for head in heads if (match := self.pair.fullmatch(head)) is not None}
        found = {head: (match.group("van"), match.group("base")) for head, match in matches.items()}
        vans = {van.casefold() for van, _ in found.values()}
        whole = LEAST <= len(vans) == len(heads) and all(len(base.split()) > 1 for _, base in found.values())
        based = all(self.no_base.isdisjoint(base.casefold().split()) for _, base in found.values())
        named = are_mostly_names([van for van, _ in found.values()], self.can_be_name)
        return found if whole and based and named else {}

    def _cell(self, beside: Passage, head: Head, van: str, base: str, side: Side) -> Passage:
        """Give the cell of a base before the first cell of its van."""
        of_van, label = replace(head, text=van), Head(self.label, head.box)
        pieces = (Piece(0, len(base), head.box),) if head.box is not None else ()
        cell = replace(beside, kind=Kind.CELL, text=base, pieces=pieces, notes=(), doubts=())
        if side == "row":
            return replace(cell, row=of_van, column=label, column_index=-1)
        return replace(cell, row=label, column=of_van, row_index=-1)
