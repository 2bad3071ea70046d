"""Short forms as words: in cells those that a document explains, "in = input rating"; in labels tanks, "F / G / B"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.marks.legend import AVAILABILITIES
from specscan.records.text import Kind, Passage

ENTRY = re.compile(
    r"(?:^|(?<=[;:,.*†(] )|(?<=[*†(]))([^\W\d_]{1,4}(?:/[^\W\d_]{1,3})?)\s*=\s*([^;:=.,()]{3,50})(?=[;:.,)]|$)"
)
# A run of initials, each with its word: "F fresh, G gray, B black".
INITIAL = r"(?P<{0}>[A-Z])(?:\s*[=:–—-]\s*|\s+)(?i:(?P={0}))[^\W\d_]{{2,20}}"
INITIALS = re.compile(rf"(?<![\w/]){INITIAL.format('one')}\s*[,;·|]\s*{INITIAL.format('two')}")
TOLD = re.compile(r"(?<![\w/])([A-Z])(?:\s*[=:–—-]\s*|\s+)([^\W\d_]{3,21})(?!\w)")
RUN = re.compile(r"(?<![\w/])[A-Z]{1,2}(?:\s*/\s*[A-Z]{1,2}){1,2}(?![\w/])")
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
        self.letters = _initials(passages, lexicon)
        self.runs = {run.casefold(): words for run, words in lexicon.words.tank_letters.items()}
        forms = "|".join(map(re.escape, sorted(self.words, key=len, reverse=True)))
        self.form = re.compile(rf"(?<![\w/])(?:{forms or '(?!)'})(?![\w/])")

    def spelled(self, body: str) -> str:
        """Give a cell with words for its short forms, an empty text where it has none."""
        if not self.words or len(body) > LONGEST_CELL:
            return ""
        changed = self.form.sub(lambda match: self.words[match.group()], body)
        return changed if changed != body else ""

    def in_label(self, label: str) -> str:
        """Give a label with the names of tanks for their letters: "Tank heat F / G / B"."""
        return RUN.sub(lambda match: self._tanks(match.group()), label) if "/" in label else label

    def _tanks(self, run: str) -> str:
        parts = [part.strip() for part in run.split("/")]
        if all(part in self.letters for part in parts):
            return " / ".join(self.letters[part] for part in parts)
        return self.runs.get("/".join(parts).casefold(), run)


def _initials(passages: Sequence[Passage], lexicon: Lexicon) -> dict[str, str]:
    """Give the letters that a document explains, side by side, by words for things that begin with them."""
    found: dict[str, str] = {}
    for passage in passages:
        if passage.kind is not Kind.HEADING and INITIALS.search(passage.text):
            for letter, word in TOLD.findall(passage.text):
                kinds = {m.concept.kind for m in lexicon.analyse(word).mentions}
                if word[0].casefold() == letter.casefold() and kinds & {"thing", "short"}:
                    found.setdefault(letter, word)
    return found
