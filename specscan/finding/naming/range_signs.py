"""Signs that a name is one of a range of vans and not the company's: codes behind it, "every Drift", "Drift family"."""

from __future__ import annotations

import re
from collections.abc import Collection, Sequence

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.language.whole_words import any_word, places, stands_before
from specscan.finding.naming.name_forms import SPOKEN_NAME, article
from specscan.finding.naming.place import begins_with
from specscan.records.text import Passage

NEAR = 30  # letters beside a name in which the words before and behind it stand
FEW_WORDS = 4  # a line of no more is no sentence


class RangeSigns:
    """Finds such signs in documents of one language."""

    def __init__(self, lexicon: Lexicon):
        words = lexicon.words
        self.lexicon = lexicon
        self.every = _small(words.every_words)
        self.articles = _small(words.articles_of_names) | self.every
        self.ranges = _small(words.range_words)
        cues = words.cues
        told = (*words.predicates, *cues["verbs"], *cues["is_named"], *cues["preposition"], *cues["carries"])
        self.told = _small(told)
        self.titled = _titled(lexicon)

    def are_seen(self, name: str, own: Sequence[Passage], heads: Collection[str]) -> bool:
        """Tell whether heads of tables go on from a name, or the text speaks of it as of a van or a range."""
        if any(begins_with(head, name) and len(head) > len(name) for head in heads):
            return True
        for passage in own:
            if name.casefold() not in passage.text.casefold():
                continue
            if any(stands_before(passage.text, name, head) for head in heads):
                return True
            if any(self._is_told(passage.text, start, start + len(name)) for start in places(passage.text, name)):
                return True
        return False

    def without_word(self, title: str) -> str:
        """Give a title without the word for ranges beside a name that no label has: "Drift" of "The Drift family".

        "Drift Family" may be a van's own name.
        """
        for pattern in self.titled:
            match = pattern.fullmatch(title.strip())
            if match is not None and any(map(self.lexicon.knows_none, match.group(1).split())):
                return match.group(1)
        return title

    def are_called(self, name: str, own: Sequence[Passage]) -> bool:
        """Tell whether a name with a word of its own is said to be a range's, though labels use the other word too:
        "Gamme LANDE HAUTE", "Long Drift range"."""
        if not any(map(self.lexicon.knows_none, name.split())):
            return False
        return any(
            self.ranges.intersection(self._words_beside(passage.text, start, start + len(name)))
            for passage in own
            if name.casefold() in passage.text.casefold()
            for start in places(passage.text.casefold(), name.casefold())
        )

    @staticmethod
    def _words_beside(text: str, start: int, end: int) -> tuple[str, str]:
        """Give the words right before and right behind a place, in small letters and without signs."""
        before, after = text[max(0, start - NEAR) : start].split(), text[end : end + NEAR].split()
        return before[-1].casefold() if before else "", after[0].strip(",.;:!?").casefold() if after else ""

    def is_sister(self, name: str, own: Sequence[Passage], heads: Collection[str]) -> bool:
        """Tell whether a name is that of one van among several, which neither go on from it nor stand behind it."""
        others = [head for head in heads if head.casefold() != name.casefold()]
        if len(others) == len(heads) or not others or all(begins_with(head, name) for head in others):
            return False
        return not any(stands_before(passage.text, name, head) for passage in own for head in others)

    def _is_told(self, text: str, start: int, end: int) -> bool:
        behind = text[end : end + NEAR]
        last, following = self._words_beside(text, start, end)
        if last in self.ranges or following in self.ranges or last in self.every:
            return True
        sentence = len(text.split()) > FEW_WORDS
        ends = not behind.strip() or not behind[:1].isspace() or following in self.told or following[:1].isdigit()
        return sentence and last in self.articles and ends


def _titled(lexicon: Lexicon) -> list[re.Pattern[str]]:
    """Give the patterns of a title that is a name and a word for ranges, which has no capital of its own."""
    words = lexicon.words
    before, ranges = article(words.articles_of_names), any_word(words.range_words)
    nouns = words.nouns_have_capitals
    behind = rf"(?:{before})?({SPOKEN_NAME})[ -](?:{ranges})"
    found = [behind, rf"{before}({SPOKEN_NAME}) (?i:{ranges})"]
    found += [rf"(?:{before})?({SPOKEN_NAME})-(?i:{ranges})"] if nouns else []
    found += [rf"(?:{before})?(?i:{ranges}) ({SPOKEN_NAME})"] if nouns or words.head == "first" else []
    return [re.compile(pattern) for pattern in found]


def _small(words: Collection[str]) -> set[str]:
    return {word.casefold() for word in words}
