"""Signs of notes in brackets that stand apart from their words: "BTU/h (a)" over a column, "(a) Input" below the table.

A figure or letter in brackets may be anything, as the seats in "Belts (4)": it is a sign where a line of the same page
begins with it, and that line then is its note.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Collection, Sequence
from dataclasses import replace

from specscan.records.text import Head, Kind, Passage, Piece

SIGN = r"\(([a-e]|[1-9])\)"
BEGINS = re.compile(rf"{SIGN}\s+(?=\S)")
ENDS = re.compile(rf"(?<=\S)\s*{SIGN}$")
NOTES = (Kind.PROSE, Kind.LINE, Kind.FOOTNOTE)


def with_apart_signs(passages: Sequence[Passage]) -> tuple[Passage, ...]:
    """Give the passages with such signs as signs, and the lines that begin with them as their notes."""
    begun: dict[int, set[str]] = defaultdict(set)
    used: dict[int, set[str]] = defaultdict(set)
    for passage in passages:
        if passage.table is None and passage.kind in NOTES and (match := BEGINS.match(passage.text)) is not None:
            begun[passage.page].add(match.group(1))
        elif passage.table is not None:
            texts = (passage.text, *(head.text for head in (passage.row, passage.column) if head is not None))
            used[passage.page].update(match.group(1) for text in texts if (match := ENDS.search(text)) is not None)
    signs = {page: some & used[page] for page, some in begun.items() if some & used[page]}
    if not signs:
        return tuple(passages)
    made: list[Passage] = []
    for passage in passages:
        known = signs.get(passage.page, set())
        if passage.table is not None and known:
            made.append(_user(passage, known))
        elif known and passage.kind in NOTES and (match := BEGINS.match(passage.text)) and match.group(1) in known:
            made.extend(_notes(passage, known))
        else:
            made.append(passage)
    return tuple(replace(passage, number=number) for number, passage in enumerate(made, passages[0].number))


def _user(cell: Passage, known: Collection[str]) -> Passage:
    match = ENDS.search(cell.text)
    if match is not None and match.group(1) in known:
        cell = replace(_part(cell, 0, match.start()), notes=(*cell.notes, match.group(1)))
    return replace(cell, row=_bare(cell.row, known), column=_bare(cell.column, known))


def _bare(head: Head | None, known: Collection[str]) -> Head | None:
    match = ENDS.search(head.text) if head is not None else None
    if head is None or match is None or match.group(1) not in known:
        return head
    return replace(head, text=head.text[: match.start()], notes=(*head.notes, match.group(1)))


def _notes(passage: Passage, known: Collection[str]) -> list[Passage]:
    """Give the notes of a passage, which may hold several: "(a) Input. (b) Without driver."."""
    starts = [match for match in re.finditer(rf"(?:^|(?<=\s)){SIGN}\s+(?=\S)", passage.text) if match.group(1) in known]
    ends = [*(match.start() for match in starts[1:]), len(passage.text)]
    return [
        replace(_part(passage, match.end(), end), kind=Kind.FOOTNOTE, notes=(match.group(1), *passage.notes))
        for match, end in zip(starts, ends, strict=True)
    ]


def _part(passage: Passage, start: int, end: int) -> Passage:
    text = passage.text[start:end].rstrip()
    pieces = (
        Piece(max(0, piece.start - start), min(len(text), piece.end - start), piece.box)
        for piece in passage.pieces
        if piece.end > start and piece.start < start + len(text)
    )
    return replace(passage, text=text, pieces=tuple(pieces))
