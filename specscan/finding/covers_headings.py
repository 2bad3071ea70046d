"""Places of the glass under a heading of its covers: "Cab: insulated, option" under "Shades"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from specscan.finding.language.lexicon import Lexicon

LABEL = re.compile(r"\s*([^:]{2,40}?)\s*:\s+(?=\S)")
PLACES = {"cab", "rear"}  # word groups


class CoversHeadings:
    """Reads them, for documents of one language."""

    def __init__(self, lexicon: Lexicon):
        self.lexicon = lexicon

    def label(self, sections: Sequence[str], text: str) -> tuple[str, str, int] | None:
        """Give the label as printed, with what the heading adds, and where the value begins; none for other texts."""
        match = LABEL.match(text) if sections else None
        if match is None or not self._is_covers(sections[-1]):
            return None
        words = self._words(match.group(1))
        if not words & PLACES or "covers" in words:
            return None
        return match.group(1), f"{match.group(1)} {sections[-1]}", match.end()

    def _is_covers(self, heading: str) -> bool:
        """Tell whether a heading says nothing but the word for covers."""
        analysis = self.lexicon.analyse(heading)
        count = len([token for token in analysis.tokens if token.norm.isalnum()])
        return any(m.concept[:2] == ("word", "covers") and m.last - m.first >= count for m in analysis.mentions)

    def _words(self, text: str) -> set[str]:
        return {m.concept.name for m in self.lexicon.analyse(text).mentions if m.concept.kind == "word"}
