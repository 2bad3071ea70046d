"""Headings in two languages, "Toilette / Toilet": what stands below them goes on from the one of the document's own."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import replace

from specscan.finding.language.lexicon import Lexicon
from specscan.records.text import Kind, Passage

JOINT = re.compile(r"\s+[/|·]\s+")
Others = Callable[[], Sequence[Lexicon]]  # those of other languages, which take time to make
KINDS = ("thing", "short", "section")


def without_second_labels(passages: Sequence[Passage], own: Lexicon, others: Others) -> tuple[Passage, ...]:
    """Give the passages with headings that name the same thing in two languages in the document's own alone."""
    headings = dict.fromkeys(p.text for p in passages if p.kind is Kind.HEADING)
    plain = {text: one for text in headings if (one := _own_half(text, own, others))}
    if not plain:
        return tuple(passages)
    return tuple(_renamed(passage, plain) for passage in passages)


def _own_half(text: str, own: Lexicon, others: Others) -> str:
    """Give the half of a heading that names a thing in the document's language, where the other half does in another.

    "Batterie / House battery" is one thing, "Toilet / Shower" are two.
    """
    halves = JOINT.split(text)
    if len(halves) != 2:
        return ""
    for one, other in (halves, halves[::-1]):
        things = _things(one, own)
        if (
            things
            and any(things & _things(other, lexicon) for lexicon in others())
            and not _things(other, own) - things
        ):
            return one.strip()
    return ""


def _things(text: str, lexicon: Lexicon) -> set[str]:
    return {m.concept.name for m in lexicon.analyse(text).mentions if m.concept.kind in KINDS}


def _renamed(passage: Passage, plain: dict[str, str]) -> Passage:
    if not plain.keys().isdisjoint(passage.sections):
        passage = replace(passage, sections=tuple(plain.get(heading, heading) for heading in passage.sections))
    if passage.kind is Kind.HEADING and passage.text in plain:
        start = passage.text.index(plain[passage.text])
        return passage.part(start, start + len(plain[passage.text]))
    return passage
