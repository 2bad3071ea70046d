"""Signs of notes that stand apart from their words: "BTU/h (a)" over a column, "(a) Input" below the table.

A figure or letter in brackets may be anything, as the seats in "Belts (4)", and an asterisk the bullet of a list: they
are signs where one line of the same page begins with them, and that line then is their note.
"""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from collections.abc import Collection, Iterable, Sequence
from dataclasses import replace

from specscan.reading.tables.compose import clean_sign
from specscan.records.text import Head, Kind, Passage

SIGN = r"\(([a-e]|[1-9])\)"
BEGINS = re.compile(rf"{SIGN}\s+(?=\S)")
ENDS = re.compile(rf"(?<=\S)(?:\s*{SIGN}|\s+([*†‡§]{{1,3}}))$")
NOTES = (Kind.PROSE, Kind.LINE, Kind.FOOTNOTE)
RAISED_IN_UNIT = re.compile(r"(?<=m) (?=K/W\b)")  # "0.9 m K/W": a raised 2 was taken for a sign
POWER = re.compile(r"(?<=\d )(?:in|ft|cm|mm|m)([²³])$")


def with_apart_signs(passages: Sequence[Passage]) -> tuple[Passage, ...]:
    """Give the passages with the signs that cells and notes tell from other figures as signs of notes."""
    return with_signs_of_units(_with_signs([_with_power(passage) for passage in passages]))


def _with_power(passage: Passage) -> Passage:
    """Give a passage with the square of its unit, whose raised figure was taken for the sign of a note."""
    if "2" not in passage.notes or RAISED_IN_UNIT.search(passage.text) is None:
        return passage
    notes = tuple(sign for sign in passage.notes if sign != "2")
    return replace(passage, text=RAISED_IN_UNIT.sub("²", passage.text), notes=notes)


def with_signs_of_units(passages: Sequence[Passage]) -> tuple[Passage, ...]:
    """Give the passages with a raised figure behind a unit as a sign where a note of the page has no other user.

    "Foam on walls, 1 in³" above "³ Drift: 1.5 in" is no volume.
    """
    noted = {(p.page, sign) for p in passages if p.kind is Kind.FOOTNOTE for sign in p.notes[:1]}
    if not noted:
        return tuple(passages)
    used = {(p.page, sign) for p in passages if p.kind is not Kind.FOOTNOTE for sign in _signs(p)}
    made: list[Passage] = []
    for passage in passages:
        match = POWER.search(passage.text)
        sign = "" if match is None else clean_sign(match.group(1))
        if match is not None and (passage.page, sign) in noted - used:
            passage = replace(passage.part(0, match.start(1)), notes=(*passage.notes, sign))
        made.append(passage)
    return tuple(made)


def _signs(passage: Passage) -> Iterable[str]:
    heads = [head for head in (passage.row, passage.column) if head is not None]
    return (*passage.notes, *(sign for head in heads for sign in head.notes))


def _with_signs(passages: Sequence[Passage]) -> tuple[Passage, ...]:
    """Give the passages with such signs as signs, and the lines that begin with them as their notes."""
    begun: dict[int, set[str]] = defaultdict(set)
    used: dict[int, set[str]] = defaultdict(set)
    bullets: dict[int, Counter[str]] = defaultdict(Counter)
    for passage in passages:
        if passage.table is None and passage.kind in NOTES and (match := BEGINS.match(passage.text)) is not None:
            begun[passage.page].add(match.group(1))
        elif passage.kind is Kind.BULLET and passage.mark:
            bullets[passage.page][passage.mark] += 1
        elif passage.table is not None:
            texts = (passage.text, *(head.text for head in (passage.row, passage.column) if head is not None))
            used[passage.page].update(sign for text in texts if (sign := _ending(text)[0]))
    for page, marks in bullets.items():
        begun[page].update(mark for mark, number in marks.items() if number == 1)
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
        elif passage.kind is Kind.BULLET and passage.mark in known:
            made.append(replace(passage, kind=Kind.FOOTNOTE, notes=(passage.mark, *passage.notes), mark=""))
        else:
            made.append(passage)
    return tuple(replace(passage, number=number) for number, passage in enumerate(made, passages[0].number))


def _ending(text: str) -> tuple[str, int]:
    """Give the sign that stands apart at the end of a text and where it begins, an empty text where there is none."""
    match = ENDS.search(text)
    return ("", len(text)) if match is None else (match.group(1) or match.group(2), match.start())


def _user(cell: Passage, known: Collection[str]) -> Passage:
    sign, start = _ending(cell.text)
    if sign in known:
        cell = replace(cell.part(0, start), notes=(*cell.notes, sign))
    return replace(cell, row=_bare(cell.row, known), column=_bare(cell.column, known))


def _bare(head: Head | None, known: Collection[str]) -> Head | None:
    if head is None:
        return None
    sign, start = _ending(head.text)
    return replace(head, text=head.text[:start], notes=(*head.notes, sign)) if sign in known else head


def _notes(passage: Passage, known: Collection[str]) -> list[Passage]:
    """Give the notes of a passage, which may hold several: "(a) Input. (b) Without driver."."""
    starts = [match for match in re.finditer(rf"(?:^|(?<=\s)){SIGN}\s+(?=\S)", passage.text) if match.group(1) in known]
    ends = [*(match.start() for match in starts[1:]), len(passage.text)]
    return [
        replace(passage.part(match.end(), end), kind=Kind.FOOTNOTE, notes=(match.group(1), *passage.notes))
        for match, end in zip(starts, ends, strict=True)
    ]
