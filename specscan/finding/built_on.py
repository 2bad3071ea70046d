"""Headings that name a van and the one on which it builds: "Frost adds to the Trail", "Frost: all of Trail, plus".

Below a heading that names the van alone, a line may name the other: "Everything in the Trail, with these changes:".
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Sequence

from specscan.finding.language.whole_words import any_word
from specscan.finding.naming.van_mentions import VanMentions
from specscan.records.text import Kind, Passage

BEHIND_BASE = re.compile(r"\s*[,;:.+&–—-]")  # what parts the name of the other van from what there is beyond it

About = Callable[[Passage], frozenset[str] | None]


class BuiltOn:
    """Tells which van a heading is about, where it names another on which that one builds."""

    def __init__(self, vans: VanMentions, all_of: Iterable[str]):
        """``all_of`` are the words before the name of the van on which another builds."""
        self.vans = vans
        self.between = re.compile(rf"\W+(?:{any_word(all_of)})(?:\s+\w{{2,4}})?\s+", re.IGNORECASE)
        self.opening = re.compile(rf"(?:{any_word(all_of)})(?:\s+\w{{2,4}})?\s+", re.IGNORECASE)

    def of(self, heading: str) -> tuple[str, str] | None:
        """Give the van that a heading is about and the one on which it builds, or ``None``."""
        named = [] if self.vans.single else sorted(self.vans.find(heading))
        if len(named) != 2 or heading[: named[0][0]].strip():
            return None
        (_, end, first), (start, _, second) = named
        if len(first) != 1 or len(second) != 1 or first == second or not self.between.fullmatch(heading, end, start):
            return None
        return next(iter(first)), next(iter(second))

    def bases(self, passages: Sequence[Passage], about: About) -> dict[str, str]:
        """Give for a van the one on which it builds, as headings say, or lines below headings that name it.

        ``about`` gives the vans that the headings above a passage name.
        """
        headed = (self.of(passage.text) for passage in passages if passage.kind is Kind.HEADING)
        found = dict(pair for pair in headed if pair is not None)
        for passage in passages:
            if passage.kind not in (Kind.HEADING, Kind.CELL) and (base := self._opens_with(passage.text)) is not None:
                named = about(passage) or frozenset()
                if len(named) == 1 and base not in named:
                    found.setdefault(next(iter(named)), base)
        return found

    def _opens_with(self, text: str) -> str | None:
        """Give the one van all of which a line says that another has: "Everything in the Trail, with:"."""
        named = self.vans.find(text) if self.opening.match(text) else ()
        if not named or not self.opening.fullmatch(text, 0, named[0][0]) or len(named[0][2]) != 1:
            return None
        goes_on = BEHIND_BASE.match(text, named[0][1]) or text.rstrip().endswith(":")
        return next(iter(named[0][2])) if goes_on else None

    def told_of(self, passages: Sequence[Passage], models: Iterable[str], about: About) -> dict[str, frozenset[int]]:
        """Give for each van the numbers of the passages below headings that name it, but those of tables."""
        told: dict[str, set[int]] = {model: set() for model in models}
        for passage in passages:
            named = about(passage) if passage.sections and passage.kind is not Kind.CELL else None
            if named is not None and len(named) == 1:
                told[next(iter(named))].add(passage.number)
        return {model: frozenset(numbers) for model, numbers in told.items()}
