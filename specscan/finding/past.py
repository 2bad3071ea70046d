"""Sentences about the van of an earlier model year: "the 2023 van had 80 l", "We built it until 2024. It was long"."""

from __future__ import annotations

import functools
import re
from collections.abc import Iterable

from specscan.finding.language.whole_words import any_word, stands_at
from specscan.finding.things.items import Parsed
from specscan.records.years import MODEL_YEAR
from specscan.rulebook.models import WordFile

OF_THE_PAST = "said of the van of an earlier model year"
CENTURY = 2000
KEPT_PATTERNS = 10  # of each language one


@functools.lru_cache(maxsize=KEPT_PATTERNS)
def _years(model_year: tuple[str, ...], until: tuple[str, ...]) -> re.Pattern[str]:
    """Give the pattern of a year that may be an earlier van's: "MY23", "until 2023", or one ``before`` another word."""
    short, year = any_word(word.upper() for word in model_year if len(word) <= 3), MODEL_YEAR
    return re.compile(
        rf"(?<!\w)(?:(?:{short})[ \u00a0]?['’]?(?P<short>\d\d)(?!\d)|(?P<before>{year})\s+"
        rf"|(?i:{any_word(until)})\s+(?P<until>{year})(?!\d))"
    )


@functools.lru_cache(maxsize=KEPT_PATTERNS)
def _vans(words: tuple[str, ...]) -> re.Pattern[str]:
    """Give the pattern of any word for a van."""
    return re.compile(rf"(?:{any_word(words)})(?!\w)", re.IGNORECASE)


class Past:
    """Finds such sentences, in documents whose vans are of a model ``year`` (0: none is known)."""

    def __init__(self, words: WordFile, year_of_vans: int, names: Iterable[str] = ()):
        """``names`` are those of the vans: behind an earlier year they name another."""
        self.first = year_of_vans
        self.years = _years(tuple(words.model_year), tuple(words.until))
        self.van = _vans((*words.vans, *words.model_words, *words.past_vans))
        self.names = {name.split()[0] for name in names if name}

    def sentences(self, parsed: Parsed) -> set[int]:
        """Give the numbers of the sentences of a text that speak of an earlier van."""
        if not self.first:
            return set()
        found = {
            max(b[3] for b in parsed.bounds if b[0] <= match.start())
            for match in self.years.finditer(parsed.text)
            if self._year(match) < self.first
        }
        return going_on(found, parsed)

    def _year(self, match: re.Match[str]) -> int:
        """Give the year; of one behind which no van is named that of the vans, for it says nothing of another."""
        short, until, text, end = match.group("short"), match.group("until"), match.string, match.end()
        if short or until:
            return CENTURY + int(short) if short else int(until)
        of_van = self.van.match(text, end) or any(stands_at(text, name, end) for name in self.names)
        return int(match.group("before")) if of_van else self.first


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
