"""Nicknames in quotes behind the names of vans, in headings and heads of tables: "Drift 5.9 “Shorty”" is the Drift 5.9.

They are no part of a name that its figure tells from all others.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import replace

from specscan.records.text import Head, Kind, Passage

NICKNAMED = re.compile(
    r"(?P<name>[^“”„«»\"‹›‚‘]*\d[\w.,/-]*(?: \w+){0,2})\s+[“„«\"‹‚‘]\s?[^\W\d_][^“”„«»\"]*[”“»\"›’‘]"
)
LEAST = 2  # vans with nicknames: one alone may be an edition


def without_nicknames(passages: Sequence[Passage]) -> tuple[Passage, ...]:
    """Give the passages without nicknames behind the names of two or more vans, where these differ without them."""
    heads = {text: None for passage in passages for text in _heads_of(passage)}
    found = {text: match.group("name") for text in heads if (match := NICKNAMED.fullmatch(text.strip()))}
    names = {name.casefold() for name in found.values()}
    apart = len(names) == len(found) and names.isdisjoint(text.casefold() for text in heads)
    if len(found) < LEAST or not apart:
        return tuple(passages)
    return tuple(_renamed(passage, found) if found.keys() & _heads_of(passage) else passage for passage in passages)


def _heads_of(passage: Passage) -> set[str]:
    """Give the headings and heads of a table that a passage has, and the heading that it is."""
    heads = {head.text for head in (passage.row, passage.column) if head is not None}
    return {*passage.sections, *heads, *((passage.text,) if passage.kind is Kind.HEADING else ())}


def _renamed(passage: Passage, names: Mapping[str, str]) -> Passage:
    def plain(head: Head | None) -> Head | None:
        return head and replace(head, text=names.get(head.text, head.text))

    return replace(
        passage,
        text=names.get(passage.text, passage.text) if passage.kind is Kind.HEADING else passage.text,
        sections=tuple(names.get(heading, heading) for heading in passage.sections),
        row=plain(passage.row),
        column=plain(passage.column),
    )
