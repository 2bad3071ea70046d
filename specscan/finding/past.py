"""Sentences about the van of an earlier model year: "the 2023 van had 80 l", "We built it until 2024. It was long"."""

from __future__ import annotations

import re
from collections.abc import Iterable

from specscan.finding.language.whole_words import any_word
from specscan.finding.things.items import Parsed
from specscan.rulebook.models import WordFile

OF_THE_PAST = "said of the van of an earlier model year"
CENTURY = 2000


class Past:
    """Finds such sentences, in documents whose vans are of a model ``year`` (0: none is known)."""

    def __init__(self, words: WordFile, year_of_vans: int, names: Iterable[str] = ()):
        """``names`` are those of the vans: behind an earlier year they name another."""
        self.first = year_of_vans
        short = any_word(word.upper() for word in words.model_year if len(word) <= 3)
        vans = any_word([*words.vans, *words.model_words, *words.past_vans])
        until = any_word(words.until)
        van = rf"(?:(?i:{vans})|{any_word({name.split()[0] for name in names if name})})"
        year = r"(?:19|20)\d\d"
        self.pattern = re.compile(
            rf"(?<!\w)(?:(?:{short})[ \u00a0]?['’]?(?P<short>\d\d)(?!\d)|(?P<van>{year})\s+{van}(?!\w)"
            rf"|(?i:{until})\s+(?P<until>{year})(?!\d))"
        )

    def sentences(self, parsed: Parsed) -> set[int]:
        """Give the numbers of the sentences of a text that speak of an earlier van."""
        if not self.first:
            return set()
        found = {
            max(b[3] for b in parsed.bounds if b[0] <= match.start())
            for match in self.pattern.finditer(parsed.text)
            if self._year(match) < self.first
        }
        return going_on(found, parsed)

    @staticmethod
    def _year(match: re.Match[str]) -> int:
        short = match.group("short")
        return CENTURY + int(short) if short else int(match.group("van") or match.group("until"))


def going_on(sentences: set[int], parsed: Parsed) -> set[int]:
    """Give some sentences of a text with those that follow one of them and begin with a pronoun."""
    found = set(sentences)
    if found:
        last = max(b[3] for b in parsed.bounds)
        opened = {cue.sentence for cue in parsed.cues("pronoun") if parsed.opens_sentence(cue)}
        for number in range(min(found) + 1, last + 1):
            if number - 1 in found and number in opened:
                found.add(number)
    return found
