"""Numbers of clauses and chapters: "3.2  Fuel tank. 590: 71 L" is text, and "3 Water" a heading, without them.

They count as numbers of clauses only where each goes on from the one before it: 1.1, 1.2, 2.1; so figures, codes of
vans and versions do not.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import replace

from specscan.reading.renamed import title_called, under_names
from specscan.records.text import Document, Kind, Passage

NUMBER = re.compile(r"\d{1,2}(?:\.\d{1,2}){0,3}\.?")
LEADING = re.compile(rf"({NUMBER.pattern})\s+(?=[^\W\d_])")
LEAST_CLAUSES = 5  # of two figures at least, 1.1
LEAST_CHAPTERS = 3
TITLE_WORDS = 6
OPEN = (Kind.HEADING, Kind.PROSE, Kind.LINE, Kind.BULLET)

Number = tuple[int, ...]


def without_clause_numbers(document: Document) -> Document:
    """Give a document without the numbers of its clauses and chapters; one that has none as it is."""
    told = [(number, passage) for passage in document.passages if (number := _number_of(passage))]
    clauses = _first_of_rows([(number, passage) for number, passage in told if len(number) > 1])
    numbered = len(clauses) >= LEAST_CLAUSES and _go_on([number for number, _ in clauses])
    heads = [(number, passage) for number, passage in told if passage.kind is Kind.HEADING and passage.row is None]
    chapters = [number for number, _ in heads if len(number) == 1]
    headed = len(chapters) >= LEAST_CHAPTERS and chapters == [(n,) for n in range(chapters[0][0], chapters[-1][0] + 1)]
    if not (numbered or headed):
        return document
    clauses_known = {number for number, _ in clauses} if numbered else set()
    known = clauses_known | {number[:1] for number in clauses_known} | (set(chapters) if headed else set())
    names = {passage.text: _plain(passage.text) for number, passage in heads if number in known}
    chapters_known = known - clauses_known
    chaptered = _with_chapters(document.passages, chapters_known, names) if numbered else document.passages
    titled: dict[Number, str] = {
        number: passage.text for number, passage in heads if len(number) == 1 and number in known
    }
    passages = tuple(_bare(_in_own(passage, titled), clauses_known, names) for passage in chaptered)
    titles = tuple(title_called(title, names) for title in document.titles)
    return replace(document, passages=passages, titles=titles)


def _number_of(passage: Passage) -> Number:
    """Give the number with which a passage begins, or that is all of the label of its row; empty where none is."""
    if passage.kind is Kind.CELL:
        alone = passage.row is not None and passage.column is not None and not passage.column.text
        match = NUMBER.fullmatch(passage.row.text.strip()) if alone and passage.row is not None else None
        text = match.group() if match is not None else ""
    else:
        match = LEADING.match(passage.text) if passage.kind in OPEN else None
        text = match.group(1) if match is not None else ""
    return tuple(int(part) for part in text.strip(".").split(".")) if text else ()


def _first_of_rows(told: Sequence[tuple[Number, Passage]]) -> list[tuple[Number, Passage]]:
    """Give each number once where the cells of a row share it."""
    return [one for place, one in enumerate(told) if not place or told[place - 1][0] != one[0]]


def _go_on(numbers: Iterable[Number]) -> bool:
    """Tell whether each number is the next one: 1.1, 1.2, 2.1, or 1.2, 1.2.1, 1.3; the first may be any."""
    last: Number = ()
    for number in numbers:
        if last:
            depth = next((n for n, pair in enumerate(zip(last, number, strict=False)) if pair[0] != pair[1]), len(last))
            before = last[depth] if depth < len(last) else 0
            grown = number[depth:]
            if not grown or (depth and grown[0] != before + 1) or grown[0] <= before or any(n != 1 for n in grown[1:]):
                return False
        last = number
    return True


def _with_chapters(passages: Iterable[Passage], chapters: set[Number], names: dict[str, str]) -> list[Passage]:
    """Give the passages with rows that are the title of a chapter, "2 | Dimensions", as headings of what follows.

    ``names`` are the headings that have such numbers: one above such a row is of the chapter before.
    """
    made: list[Passage] = []
    under: tuple[str, ...] = ()
    parents, over = under, ""  # the headings above the last such row, those over its chapter, and its title
    for passage in passages:
        if passage.kind is Kind.CELL and _number_of(passage) in chapters and len(passage.text.split()) <= TITLE_WORDS:
            under, over = passage.sections, passage.text
            parents = under[:-1] if under and under[-1] in names else under
            passage = replace(_as(passage, Kind.HEADING), sections=parents)
        elif passage.kind is Kind.HEADING:
            over = ""
        elif over and passage.sections == under:
            passage = replace(passage, sections=(*parents, over))
        made.append(passage)
    return made


def _in_own(passage: Passage, titled: dict[Number, str]) -> Passage:
    """Give a passage under its own chapter alone: "2 Water" among the rows of a table is not under "1 General".

    The number of a clause tells its chapter, of other passages the last one above counts.
    """
    own = [text for text in passage.sections if text in titled.values()]
    if not own:
        return passage
    chapter = titled.get(_number_of(passage)[:1], own[-1])
    kept = () if passage.kind is Kind.HEADING and passage.text in titled.values() else (chapter,)
    if tuple(own) == kept:
        return passage
    before = passage.sections.index(own[0])
    below = passage.sections[passage.sections.index(own[-1]) + 1 :]
    return replace(passage, sections=(*passage.sections[:before], *kept, *below))


def _as(passage: Passage, kind: Kind) -> Passage:
    return replace(passage, kind=kind, row=None, column=None, table=None, row_index=None, column_index=None)


def _plain(text: str) -> str:
    match = LEADING.match(text)
    return text[match.end() :] if match is not None else text


def _bare(passage: Passage, clauses: set[Number], names: dict[str, str]) -> Passage:
    number = _number_of(passage)
    passage = under_names(passage, names)
    if passage.kind is Kind.CELL:
        if number not in clauses:
            return passage
        return _as(passage, Kind.PROSE)
    named = passage.kind is Kind.HEADING and passage.text in names
    if not named and number not in clauses:
        return passage
    return passage.part(len(passage.text) - len(_plain(passage.text)))
