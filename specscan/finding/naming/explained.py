"""Vans whose short names a line explains: "M is the Drift M, L is the Drift L 4x4.", "M = Drift M; L = Drift L 4x4"."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence

from specscan.finding.language.whole_words import any_word, holds
from specscan.finding.naming.name_forms import SPOKEN_NAME, article
from specscan.finding.naming.place import begins_with, without_start
from specscan.finding.naming.roster import Roster
from specscan.records.text import Passage
from specscan.rulebook.models import WordFile

FIRST = 30  # passages in which a text explains how it calls its vans
LEAST_USES = 2  # of each short name in the rest of the text
SHORT = r"[A-Z][A-Z\d]{0,3}|\d{2,3}"


class ExplainedNames:
    """Finds such vans in documents of one language."""

    def __init__(self, words: WordFile):
        the = article(words.articles_of_names)
        says = rf"\s*[=:]\s*|\s+(?:{any_word(words.cues['is_named'])})\s+"
        self.pair = re.compile(rf"(?<![\w’'-])({SHORT})(?:{says})(?:{the})?({SPOKEN_NAME})(?![\w’'])")

    def read(self, own: Sequence[Passage], can_be_name: Callable[[str], bool]) -> tuple[Roster, tuple[str, ...]] | None:
        """Give the vans that one line explains, all of one range, and their short names in its order.

        Each has its short name in it as a word, and the rest of the text uses that.
        """
        for passage in own[:FIRST]:
            pairs = {short: name.rstrip(".") for short, name in self.pair.findall(passage.text)}
            if len(pairs) < 2 or not all(short in name.split()[1:] for short, name in pairs.items()):
                continue
            names = list(pairs.values())
            series = _shared(names)
            others = [one.text for one in own if one is not passage]
            used = all(sum(holds(text, short) for text in others) >= LEAST_USES for short in pairs)
            apart = len({name.casefold() for name in names}) == len(names) and can_be_name(series)
            if series and used and apart and all(begins_with(name, series) for name in names):
                codes = tuple(without_start(name, series) for name in names)
                return Roster(series, codes, passage), tuple(pairs)
        return None


def _shared(names: Sequence[str]) -> str:
    """Give the words, without figures, with which all names begin and that leave some of each."""
    words = [name.split() for name in names]
    shared: list[str] = []
    for same in zip(*(one[:-1] for one in words), strict=False):
        if len(set(same)) > 1 or re.search(r"\d", same[0]):
            break
        shared.append(same[0])
    return " ".join(shared)
