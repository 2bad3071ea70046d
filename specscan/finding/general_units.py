"""The units that a document states once for all bare figures: "All capacities in U.S. gallons, weights in pounds"."""

from __future__ import annotations

import functools
import re
from collections.abc import Iterable

from specscan.finding.kit import Kit
from specscan.finding.language.units import Unit
from specscan.finding.language.whole_words import any_word, may_hold
from specscan.records.text import Passage

KEPT_PATTERNS = 100  # of each language one for each thing that is measured
LONGEST = 400  # letters of a passage that can hold such a note
BARE = re.compile(r"[\d\s.,'’½¼¾+-]+")


@functools.lru_cache(maxsize=KEPT_PATTERNS)
def _measured_in(words: tuple[str, ...], openers: tuple[str, ...]) -> re.Pattern[str]:
    """Give a pattern of one of the words for what is measured, one such as "in", and what may be a unit."""
    return re.compile(
        rf"(?<!\w)(?:{any_word(words)})(?:\s+\w+){{0,2}}?\s+(?:{any_word(openers)})\s+([^\s,;()]+(?: [^\s,;()]+)?)",
        re.IGNORECASE,
    )


class GeneralUnits:
    """Gives the unit of bare figures of one document."""

    def __init__(self, kit: Kit, passages: Iterable[Passage]):
        self.kit = kit
        openers = tuple(kit.lexicon.words.cues.get("in_unit", []))
        self.units: dict[str, Unit] = {}
        texts = [p.text for p in passages if len(p.text) <= LONGEST and any(may_hold(p.text, one) for one in openers)]
        for dimension, words in kit.lexicon.words.measured.items():
            pattern = _measured_in(tuple(words), openers)
            for text in texts:
                match = pattern.search(text)
                unit = self._unit(match.group(1), dimension) if match is not None else None
                if unit is not None:
                    self.units.setdefault(dimension, unit)

    def _unit(self, text: str, dimension: str) -> Unit | None:
        for spelling in (text, text.split()[0]):
            unit = self.kit.units.named(spelling.rstrip(".:*"))
            if unit is not None and unit.dimension == dimension:
                return unit
        return None

    def of(self, label: str, body: str) -> Unit | None:
        """Give the unit of a bare figure by what its label names; ``None`` where the document states none for it."""
        if not self.units or not BARE.fullmatch(body):
            return None
        book = self.kit.lexicon.book
        mentions = self.kit.lexicon.analyse(label).mentions
        things = {m.concept.name for m in mentions if m.concept.kind in ("thing", "short")}
        asked = {book.fields[field].dimension for thing in things for field in book.fields_of(thing)}
        found = [unit for dimension, unit in self.units.items() if dimension in asked]
        return found[0] if len(found) == 1 else None
