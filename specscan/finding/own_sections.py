"""Parts of running text that are each about one van, though no heading names it: "The short cart", "The long cart"."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.naming.van_mentions import VanMentions
from specscan.records.text import Kind, Passage

LEAST_NAMED = 2  # times that a part names its van
LEAST_THINGS = 5  # told in each part
LEAST_SHARED = 4  # of them in its sister as well: parts on water and on heat share none
SPOKEN = (Kind.PROSE, Kind.LINE, Kind.BULLET)


@dataclass(slots=True)
class _Part:
    named: list[frozenset[str]] = field(default_factory=list)
    numbers: list[int] = field(default_factory=list)
    things: set[str] = field(default_factory=set)

    def van(self) -> frozenset[str]:
        """Give the van that is the only one of which the part speaks, an empty set where there is none."""
        alone = len(set(self.named)) == 1 and len(self.named) >= LEAST_NAMED and len(self.things) >= LEAST_THINGS
        return self.named[0] if alone and len(self.named[0]) == 1 else frozenset()


def vans_of_sections(
    passages: Sequence[Passage], vans: VanMentions, everyone: frozenset[str], lexicon: Lexicon
) -> dict[int, frozenset[str]]:
    """Give by the numbers of passages the van of the part of the text that they stand in.

    Each van must have one part that names it, more than once, and no other, and the parts tell of the same
    things; what they say of all vans names none.
    """
    if len(everyone) < 2:
        return {}
    for depth in (1, 2, 3):
        parts: dict[tuple[str, ...], _Part] = {}
        for passage in passages:
            if passage.kind not in SPOKEN or passage.table is not None or len(passage.sections) < depth:
                continue
            part = parts.setdefault(passage.sections[:depth], _Part())
            part.named += [named for _, _, named in vans.find(passage.text) if named != everyone]
            part.numbers.append(passage.number)
            part.things |= lexicon.things_told(passage)
        own = [(van, part) for part in parts.values() if (van := part.van())]
        shared = set.intersection(*(part.things for _, part in own)) if own else set()
        if len(own) == len(everyone) == len({van for van, _ in own}) and len(shared) >= LEAST_SHARED:
            return {number: van for van, part in own for number in part.numbers}
    return {}
