"""What a van has in place of the others' things, behind its name: "Ridge instead: 320 Ah lithium"."""

from __future__ import annotations

import re

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.language.whole_words import any_word
from specscan.finding.naming.van_mentions import VanMentions


class Instead:
    """Reads such heads in texts of one language."""

    def __init__(self, lexicon: Lexicon):
        words = any_word(lexicon.words.cues.get("comes_instead", []))
        self._words = re.compile(rf"^\s*(?:{words})\s+|[\s,]+(?:{words})\s*$", re.IGNORECASE)
        self._heads = re.compile(rf"(?:^|(?<=[.;]))\s*([^.;:]{{0,60}}(?<!\w)(?:{words})[^.;:]{{0,60}}):", re.IGNORECASE)

    def without(self, head: str) -> str:
        """Give a head without the words for "instead" at its beginning or end."""
        return self._words.sub("", head)

    def told(self, text: str, vans: VanMentions) -> dict[str, int]:
        """Give for the vans of which a text says so where it does."""
        heads = [(match.start(), vans.whole(self.without(match.group(1)))) for match in self._heads.finditer(text)]
        return {van: start for start, headed in reversed(heads) for van in headed or ()}
