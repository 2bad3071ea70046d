"""Labels of "the waste tank" in documents that name the gray and the black tank apart: they ask for both.

"Gray water", "Black water" and then "Waste tank heating" is how North American sheets save a row. Where no black tank
is named, the waste tank is the gray one.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from specscan.finding.kit import Kit
from specscan.finding.language.whole_words import any_word
from specscan.finding.toilet_tanks import ToiletTanks
from specscan.records.text import Passage

TANKS = {"gray_tank", "black_tank"}


class WasteLabels:
    """Reads such labels of one document."""

    def __init__(self, kit: Kit, passages: Sequence[Passage], toilets: ToiletTanks):
        several = kit.lexicon.words.waste_tanks
        short = any_word(one for one in several if " " not in one)  # "Tank heat, fresh / waste", but not "Waste water"
        named = any_word(one for one in several if " " in one)
        whole = rf"(?<!\w)(?:(?:{named})(?!\w)|(?:{short})(?=\W*$))"
        self.pattern = re.compile(whole, re.IGNORECASE) if several else None
        self.several = {one.casefold(): many for one, many in several.items()}
        self.apart = self.pattern is not None and self._names_both(kit, passages, toilets)

    def _names_both(self, kit: Kit, passages: Sequence[Passage], toilets: ToiletTanks) -> bool:
        assert self.pattern is not None
        heads = {
            head.text for p in passages for head in (p.row, p.column)
            if head is not None and not toilets.is_own(p, head.text)
        }  # fmt: skip
        if not any(map(self.pattern.search, heads)):
            return False
        named = {
            m.concept.name
            for head in heads if not self.pattern.search(head)
            for m in kit.lexicon.analyse(head).mentions if m.concept.kind in ("thing", "short")
        }  # fmt: skip
        return named >= TANKS

    def of_both(self, label: str) -> str:
        """Give a label with the word for all waste tanks in place of the one for a waste tank."""
        if not self.apart or self.pattern is None:
            return label
        return self.pattern.sub(lambda match: self.several[match.group().casefold()], label)
