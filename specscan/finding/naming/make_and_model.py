"""Maker and van in one line of a form or a listing: "Make and model: Marrowfen Drift 21"."""

from __future__ import annotations

from collections.abc import Callable, Collection, Sequence

from specscan.finding.naming.maker import JOINTS
from specscan.finding.naming.place import Names, Place
from specscan.finding.naming.years import YEAR
from specscan.records.text import Passage

MOST_WORDS = 7


class MakeAndModel:
    """Reads such lines."""

    def __init__(self, labels: Collection[str], is_trade: Callable[[str], bool]):
        self.labels = {label.casefold() for label in labels}
        self.is_trade = is_trade

    def read(self, names: Names, own: Sequence[Passage]) -> bool:
        """Take maker and title from such a line, and tell whether there is one, and one only."""
        found = [(text, passage) for passage in own if (text := self._beside(passage))]
        if len({text.casefold() for text, _ in found}) != 1:
            return False
        (text, passage), *_ = found
        words = [word for word in text.split() if not YEAR.fullmatch(word.strip("(),"))]
        cut = self._cut(words)
        if not 0 < cut < len(words) <= MOST_WORDS or not words[0][0].isalpha():
            return False
        names.maker, names.title = " ".join(words[:cut]).strip(" ,"), " ".join(words[cut:]).strip(" ,/–-")
        names.maker_place = Place(passage, passage.page, names.maker)
        names.title_place = Place(passage, passage.page, names.title)
        return bool(names.title)

    def _beside(self, passage: Passage) -> str:
        """Give what stands beside the label, an empty text where there is none."""
        if passage.row is not None and passage.row.text.strip(" :").casefold() in self.labels:
            return passage.text.strip(" .")
        head, mark, rest = passage.text.partition(":")
        return rest.strip(" .") if mark and head.strip().casefold() in self.labels else ""

    def _cut(self, words: Sequence[str]) -> int:
        """Give how many words name the maker: the first, one joined to it by a sign, and what says its trade."""
        cut = 1
        while cut < len(words) - 1:
            if words[cut] in JOINTS and cut < len(words) - 2:
                cut += 2
            elif words[cut].endswith(",") or self.is_trade(words[cut].strip(",")):
                cut += 1
            else:
                break
        return cut
