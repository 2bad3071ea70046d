"""Short forms that a document explains, "in = input rating; out = output", as words in the cells that use them."""

from __future__ import annotations

import re
from collections.abc import Sequence

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.marks.legend import AVAILABILITIES
from specscan.records.text import Kind, Passage

ENTRY = re.compile(
    r"(?:^|(?<=[;,.*†(] )|(?<=[*†(]))([^\W\d_]{1,4}(?:/[^\W\d_]{1,3})?)\s*=\s*([^;:=.,()]{3,50})(?=[;:.,)]|$)"
)
LONGEST_CELL = 40  # letters: what is longer is written in words
TELLING = ("value", "thing", "term", "word")
TELLING_CUES = ("input", "output", "each", "total", "usable", "water_capacity")


class Glossary:
    """The short forms of one document; those that say what is standard or an option are left to its legend."""

    def __init__(self, passages: Sequence[Passage], lexicon: Lexicon):
        self.words: dict[str, str] = {}
        for passage in passages:
            if passage.kind is Kind.HEADING or "=" not in passage.text:
                continue
            for match in ENTRY.finditer(passage.text):
                analysis = lexicon.analyse(match.group(2))
                told = any(m.concept.kind in TELLING for m in analysis.mentions) or lexicon.cues(
                    analysis, *TELLING_CUES
                )
                if told and not lexicon.cues(analysis, *AVAILABILITIES):
                    self.words.setdefault(match.group(1), match.group(2).strip())
        forms = "|".join(map(re.escape, sorted(self.words, key=len, reverse=True)))
        self.form = re.compile(rf"(?<![\w/])(?:{forms or '(?!)'})(?![\w/])")

    def spelled(self, body: str) -> str:
        """Give a cell with words for its short forms, an empty text where it has none."""
        if not self.words or len(body) > LONGEST_CELL:
            return ""
        changed = self.form.sub(lambda match: self.words[match.group()], body)
        return changed if changed != body else ""
