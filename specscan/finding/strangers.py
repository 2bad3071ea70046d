"""Sentences about a van that the document is not about: of a Drift 17 on the page of the Drift 20."""

from __future__ import annotations

import re

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.language.whole_words import with_behind
from specscan.finding.naming.cast import Cast
from specscan.finding.naming.van_mentions import VanMentions
from specscan.finding.past import going_on
from specscan.finding.things.items import Parsed
from specscan.records.text import Passage
from specscan.records.years import MODEL_YEAR

OF_ANOTHER = "said of another van of the range"
# Behind the name of a range: no year, no decimal, no figure with its unit.
CODE = rf"(?!{MODEL_YEAR}\b)(?:[A-Z]{{1,3}}[ -]?)?\d{{1,3}}[A-Z]{{0,3}}(?!\w|[.,]\d)"
BEFORE_CODE = re.compile(rf"(\D*[^\W\d]) (?={CODE})")
CODE_BEHIND = re.compile(f" {CODE}")
CARD = re.compile(
    r"([A-ZÀ-Þ][^\W\d_]+(?:\s+[A-ZÀ-Þ][^\W\d_]+)?\s+[A-Z]{0,2}\d[\w-]*(?:\s+[A-Z][\w-]*){0,2})\s*:\s+(?=\S+.*,)"
)


class Strangers:
    """Finds such sentences in documents of one cast, whose vans all have the range's name and a code."""

    def __init__(self, cast: Cast):
        self.own = [player.model.casefold() for player in cast.players]
        parts = [BEFORE_CODE.match(player.model) for player in cast.players]
        ranges = {match.group(1) if match else "" for match in parts}
        self.series = ranges.pop() if len(ranges) == 1 else ""

    def sentences(self, parsed: Parsed, passage: Passage) -> set[int]:
        """Give the numbers of the sentences of a text that speak of another van, or go on about it.

        A heading that names such a van alone, a question say, opens all that stands under it.
        """
        heading = passage.sections[-1] if passage.sections else ""
        headed = self._names_another(heading)
        if not headed and not self._names_another(parsed.text, alone=False):
            return set()
        texts = parsed.sentence_texts()
        if headed:
            return {number for number, text in texts.items() if not self._names_own(text)}
        return going_on({number for number, text in texts.items() if self._names_another(text)}, parsed)

    def _names(self, text: str) -> list[bool]:
        """Tell for each van of the range that a text names whether it is one of the cast."""
        if not self.series:
            return []
        named = with_behind(text, self.series, CODE_BEHIND)
        found = [text[start : code.end()].casefold() for start, code in named]
        return [any(own.startswith(name) for own in self.own) for name in found]

    def _names_another(self, text: str, *, alone: bool = True) -> bool:
        named = self._names(text)
        return not all(named) and not (alone and any(named))

    def _names_own(self, text: str) -> bool:
        return any(self._names(text))


def is_card_of_another(text: str, vans: VanMentions, lexicon: Lexicon) -> bool:
    """Tell whether a line gives the figures of a van that is none of the document's: "Fellow 630: 3 500 kg, …"."""
    match = CARD.match(text)
    if match is None or vans.whole(match.group(1)) is not None:
        return False
    first, _, rest = match.group(1).partition(" ")
    if rest and vans.article.search(f"{first} ") and vans.whole(rest) is not None:
        return False  # "The 590: 25 mm of foam"
    before = re.split(r"\d", match.group(1), maxsplit=1)[0]  # "Fellow 23 Shore": its last word may be anything
    words = lexicon.analyse(before).mentions
    return not any(m.concept.kind in ("thing", "alone", "aspect", "value", "word", "term") for m in words)
