"""Headings that name a van and the one on which it builds: "Frost adds to the Trail", "Frost: all of Trail, plus"."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from specscan.finding.language.whole_words import any_word
from specscan.finding.naming.van_mentions import VanMentions
from specscan.records.text import Kind, Passage


class BuiltOn:
    """Tells which van a heading is about, where it names another on which that one builds."""

    def __init__(self, vans: VanMentions, all_of: Iterable[str]):
        """``all_of`` are the words before the name of the van on which another builds."""
        self.vans = vans
        self.between = re.compile(rf"\W+(?:{any_word(all_of)})(?:\s+\w{{2,4}})?\s+", re.IGNORECASE)

    def of(self, heading: str) -> tuple[str, str] | None:
        """Give the van that a heading is about and the one on which it builds, or ``None``."""
        named = [] if self.vans.single else sorted(self.vans.find(heading))
        if len(named) != 2 or heading[: named[0][0]].strip():
            return None
        (_, end, first), (start, _, second) = named
        if len(first) != 1 or len(second) != 1 or first == second or not self.between.fullmatch(heading, end, start):
            return None
        return next(iter(first)), next(iter(second))

    def bases(self, passages: Sequence[Passage]) -> dict[str, str]:
        """Give for a van the one on which it builds, as headings say."""
        found = (self.of(passage.text) for passage in passages if passage.kind is Kind.HEADING)
        return dict(pair for pair in found if pair is not None)

    def told_of(self, passages: Sequence[Passage], models: Iterable[str]) -> dict[str, frozenset[int]]:
        """Give for each van the numbers of the passages right below headings that name it, but those of tables."""
        told: dict[str, set[int]] = {model: set() for model in models}
        for passage in passages:
            if passage.sections and passage.kind is not Kind.CELL:
                about = self.of(heading := passage.sections[-1])
                named = frozenset(about[:1]) if about is not None else self.vans.in_list(heading)
                if len(named) == 1:
                    told[next(iter(named))].add(passage.number)
        return {model: frozenset(numbers) for model, numbers in told.items()}
