"""Of which vans running text speaks, from sentence to sentence and over to the next paragraph."""

from __future__ import annotations

import re

from specscan.finding.drafts import Reading
from specscan.finding.kit import Kit
from specscan.finding.language.whole_words import holds
from specscan.finding.marks.scope import means_all
from specscan.finding.marks.whose import OPENS
from specscan.finding.naming.van_mentions import VanMentions
from specscan.finding.things.found import How
from specscan.finding.things.items import Item, Parsed
from specscan.finding.things.sisters import MEANING
from specscan.records.text import Passage

NEAR_SPEAKER = 3  # words behind "We" among which a pronoun means the van
REFERRING = 24  # letters at the start of a paragraph in which a pronoun refers to the one above


class Topics:
    """Follows the subject through one document, whose readings come in order."""

    def __init__(self, kit: Kit, vans: VanMentions, everyone: frozenset[str]):
        self.kit, self.vans, self.everyone = kit, vans, everyone
        self.last: tuple[Passage | None, frozenset[str] | None] = (None, None)
        self.sure: dict[int, frozenset[str]] = {}  # of the statement read last: sentences that hold below any heading

    def read(self, reading: Reading) -> dict[int, frozenset[str]]:
        """Give for each sentence of running text the vans that an earlier sentence set as its subject."""
        topics: dict[int, frozenset[str]] = {}
        self.sure = {}
        if self.vans.single:
            return topics
        if reading.draft.how is How.PAIR and reading.draft.passage is self.last[0]:
            return self._of_label(reading)
        if reading.draft.how is not How.PROSE:
            return topics
        current = self._topic_before(reading)
        last_named: frozenset[str] | None = None
        opened: frozenset[str] | None = None
        subjects: dict[int, frozenset[str]] = {}  # of each sentence, the vans that it names
        last = max((i.sentence for i in reading.parsed.items), default=0)
        for number in range(last + 1):
            items = [i for i in reading.parsed.items if i.sentence == number]
            if any(i.has("cue", "all_vans", "two_vans") and means_all(i, reading.parsed) for i in items):
                meant = any(i.has("cue", "all_vans") for i in items) or current is None or len(current) != 2
                current = None if meant else current  # "both" of the two vans named before
            added = [i.vans for i in items if i.vans and self._is_added(i, items, reading.parsed)]
            named = [i.vans for i in items if i.vans] if not added else []
            named = named or [v for v in [self._of_two(items, reading.parsed.text)] if v]
            start = next((b[0] for b in reading.parsed.bounds if b[3] == number), 0)
            before = [i for i in reading.parsed.items if i.sentence == number - 1]
            meant_last = self._opens_with_pronoun(items, reading.parsed.text[start:]) or self._is_latter(items, before)
            if named and meant_last and self._are_denied(items):
                named = []  # "It has stood at −20 °C, and we would not say that of the 21"
            if last_named is not None and not named and meant_last:
                current = last_named
            elif not named and self._opens_with_both(items, reading.parsed.text, start):
                first, second = subjects.get(number - 2), subjects.get(number - 1)
                current = first | second if first and second else current
            last_named = added[-1] if added else named[-1] if named else last_named
            if named:
                current = named[-1] if len(named) == 1 else frozenset().union(*named)
                subjects[number] = current
            if current is not None:
                topics[number] = current
            if not named and opened and any(i.has("cue", "refers_back") for i in items):
                self.sure[number] = opened  # "The Drift 24 is the winter van. We had it tested."
            if named and self._begins_with_all(items, reading.parsed):
                current = None
            opened = self._opening(items, reading.parsed.text) if named else opened
        self.last = (reading.draft.passage, current)
        return topics

    @staticmethod
    def _is_added(van: Item, items: list[Item], parsed: Parsed) -> bool:
        """Tell whether a sentence tells of a van what it has besides: "Walls and roof, on the 21 the floor too"."""
        also = any(cue.chunk == van.chunk for cue in parsed.cues("also"))
        return also and any(i.chunk < van.chunk and any(c.kind in MEANING for c in i.concepts) for i in items)

    @staticmethod
    def _are_denied(items: list[Item]) -> bool:
        """Tell whether a sentence names vans only in parts that deny something of them."""
        denials = [cue for cue in items if cue.has("cue", "negation")]
        return all(any(c.chunk == i.chunk and c.start < i.start for c in denials) for i in items if i.vans)

    @staticmethod
    def _begins_with_all(items: list[Item], parsed: Parsed) -> bool:
        """Tell whether a sentence tells of all vans first and of one only in a later part: "Both …; the 21 has …"."""
        first = min(i.start for i in items if i.vans) if any(i.vans for i in items) else 0
        return any(
            cue.start < first and cue.clause != i.clause
            for cue in items if cue.has("cue", "all_vans", "two_vans") and means_all(cue, parsed)
            for i in items if i.vans
        )  # fmt: skip

    def _of_label(self, reading: Reading) -> dict[int, frozenset[str]]:
        """Give the subject of a sentence "Waste tank: 60 l" in a paragraph: the van of which the text before it was."""
        _, current = self.last
        items = reading.parsed.items
        if current is None or any(i.vans or i.has("cue", "all_vans", "two_vans") for i in items):
            return {}
        return dict.fromkeys({0, *(i.sentence for i in items)}, current)

    def _of_two(self, items: list[Item], text: str) -> frozenset[str] | None:
        """Give the van of two that "the longer one" or "the small one" means, by the figures in their names."""
        definite = set(self.kit.lexicon.words.cues.get("definite", []))
        sizes = [
            i for i in items if i.has("cue", "larger_one", "smaller_one")
            and (text[: i.start].split() or [""])[-1].casefold() in definite
        ]  # fmt: skip
        if not sizes or len(self.everyone) != 2:
            return None
        figures = {model: re.findall(r"\d+(?:\.\d+)?", model) for model in self.everyone}
        if not all(figures.values()):
            return None
        ordered = sorted(self.everyone, key=lambda model: float(figures[model][0]))
        if figures[ordered[0]][0] == figures[ordered[1]][0]:
            return None
        return frozenset({ordered[-1] if sizes[0].has("cue", "larger_one") else ordered[0]})

    @staticmethod
    def _opening(items: list[Item], text: str) -> frozenset[str] | None:
        """Give the van with which a sentence begins, if it names no other."""
        named = [i for i in items if i.vans]
        return named[0].vans if len(named) == 1 and OPENS.search(text, 0, named[0].start) else None

    @staticmethod
    def _opens_with_both(items: list[Item], text: str, start: int) -> bool:
        """Tell whether a sentence begins with "both": "The Drift is small. The Gorse is large. Both have …"."""
        opening = [i for i in items if i.has("cue", "two_vans") and not text[start : i.start].strip(" .!?")]
        return bool(opening)

    def _opens_with_pronoun(self, items: list[Item], text: str) -> bool:
        """Tell whether a sentence, with which a text goes on, begins with a pronoun, meaning the van named last.

        "A is small, B large. It …", "We had it tested".
        """
        told = [i for i in items if not i.has("cue", "coordination")]
        if told and told[0].has("cue", "refers_back"):
            return True
        speaker, _, rest = text.lstrip(" .!?").casefold().partition(" ")
        words = self.kit.lexicon.words.cues
        near = " ".join(rest.split()[:NEAR_SPEAKER])
        return speaker in words.get("speaker", []) and any(holds(near, word) for word in words.get("refers_back", []))

    @staticmethod
    def _is_latter(items: list[Item], before: list[Item]) -> bool:
        """Tell whether a sentence begins with "the latter", where the one before names no thing behind its last van."""
        told = [i for i in items if not i.has("cue", "coordination")]
        if not told or not told[0].has("cue", "latter"):
            return False
        last = max((n for n, i in enumerate(before) if i.vans), default=len(before))
        return last < len(before) and not any(i.has("thing") or i.has("short") for i in before[last + 1 :])

    def _topic_before(self, reading: Reading) -> frozenset[str] | None:
        """Give the vans of which the paragraph above spoke last, where this one begins "We left it …"."""
        above, vans = self.last
        passage = reading.draft.passage
        if above is passage:
            return vans
        if above is None or above.sections != passage.sections:
            return None
        if above.block != passage.block and passage.number != above.number + 1:
            return None  # but at the head of the next column a text goes on
        start = passage.text.casefold()[:REFERRING]
        words = self.kit.lexicon.words.cues.get("refers_back", [])
        return vans if any(holds(start, word) for word in words) else None
