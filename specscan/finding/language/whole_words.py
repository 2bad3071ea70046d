"""Words and names as wholes in texts, found without making a pattern for each.

Making a pattern takes as long as reading a page's statements, and names differ from document to document. A word is
whole where no letter, digit or underscore stands right beside it, as ``(?<!\\w)`` and ``(?!\\w)`` say in patterns.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence

# letters that count as others where case does not, though they are no capitals of these
ALIKE = str.maketrans({"ı": "i", "İ": "i", "ſ": "s", "\u212a": "k", "\u00b5": "\u03bc"})
STRANGE = re.compile("[" + "".join(map(chr, ALIKE)) + "]")


def lowered(text: str) -> str:
    """Give a text in small letters, each at its place."""
    return text.lower() if text.isascii() or not STRANGE.search(text) else text.translate(ALIKE).lower()


def any_word(words: Iterable[str]) -> str:
    """Give the text of a pattern for any of some words, the longest first; it fits nothing where there are none."""
    return "|".join(map(re.escape, sorted(words, key=len, reverse=True))) or "(?!)"


def any_of(words: Iterable[str], *, whole: bool, any_case: bool = False) -> re.Pattern[str]:
    """Give a pattern that finds any of some words, ``whole`` or their beginnings too, in the letters given or in
    ``any_case``; none where there are none."""
    end = r"(?!\w)" if whole else ""
    return re.compile(rf"(?<!\w)(?:{any_word(words)}){end}", re.IGNORECASE if any_case else 0)


def is_of_word(letter: str) -> bool:
    """Tell whether a letter (or none, an empty text) belongs to a word."""
    return letter.isalnum() or letter == "_"


def stands_at(text: str, word: str, place: int) -> bool:
    """Tell whether a word stands in a text from a place on, and ends there; what is before it is not looked at."""
    end = place + len(word)
    return text.startswith(word, place) and not is_of_word(text[end : end + 1])


def places(text: str, word: str) -> Iterator[int]:
    """Give where a word begins that stands whole in a text, not counting those that overlap the one before.

    An empty word stands nowhere.
    """
    start = text.find(word) if word else -1
    while start >= 0:
        end = start + len(word)
        if (start and is_of_word(text[start - 1])) or is_of_word(text[end : end + 1]):
            end = start + 1
        else:
            yield start
        start = text.find(word, end)


def holds(text: str, word: str) -> bool:
    """Tell whether a word stands whole in a text."""
    return next(places(text, word), None) is not None


def count(text: str, word: str) -> int:
    """Give how often a word stands whole in a text."""
    return sum(1 for _ in places(text, word))


def may_hold(text: str, word: str) -> bool:
    """Tell whether a text can hold a word in whatever case: false where it surely does not."""
    return lowered(word) in lowered(text)


def stands_before(text: str, first: str, second: str) -> bool:
    """Tell whether two words stand side by side in a text, in whatever case and with any spaces between them."""
    low, first, second = lowered(text), lowered(first), lowered(second)
    for start in places(low, first):
        end = place = start + len(first)
        while low[place : place + 1].isspace():
            place += 1
        after = place + len(second)
        if place > end and low.startswith(second, place) and not is_of_word(low[after : after + 1]):
            return True
    return False


def without_name(text: str, name: str) -> str:
    """Give a text with a space in place of a name, wherever it stands whole and in whatever case."""
    if not name or not may_hold(text, name):
        return text
    return _cut_out(text, lowered(text), lowered(name), " ")


def without_names(text: str, names: Iterable[str], gap: str = " ") -> str:
    """Give a text with a gap in place of names, one after the other, wherever they stand whole and in whatever case.

    ``names`` are in small letters.
    """
    low = lowered(text)
    for name in names:
        if name in low:
            text = _cut_out(text, low, name, gap)
            low = lowered(text)
    return text


def _cut_out(text: str, low: str, name: str, gap: str) -> str:
    """Give a text, which is ``low`` in small letters, with a gap in place of a name that is in small letters too."""
    kept, end = [], 0
    for start in places(low, name):
        kept.append(text[end:start])
        end = start + len(name)
    return gap.join([*kept, text[end:]])


def with_behind(text: str, name: str, behind: re.Pattern[str]) -> Iterator[tuple[int, re.Match[str]]]:
    """Give where a name begins, as it is written, that no letter stands before, and what a pattern fits behind it."""
    start = text.find(name)
    while start >= 0:
        match = None if start and is_of_word(text[start - 1]) else behind.match(text, start + len(name))
        if match is not None:
            yield start, match
        start = text.find(name, start + 1 if match is None else max(match.end(), start + 1))


def without_first(text: str, first: str) -> str:
    """Give a text without the word that it begins with, if that is one, in whatever case, and the spaces behind it."""
    if not lowered(text).startswith(lowered(first)):
        return text
    rest = text[len(first) :]
    return rest.lstrip() if rest[:1].isspace() else text


class Names:
    """Finds names in texts, the longest first, in whatever case and with any spaces between their words.

    A name that goes on with a hyphen or as a number with a point or comma is another one: "540" is not in "540-D".
    """

    def __init__(self, names: Sequence[str]):
        """Take the names, in small letters."""
        self.words = [(name, name.split(" ")) for name in sorted(names, key=len, reverse=True)]
        self.first = list(dict.fromkeys(words[0] for _, words in self.words))

    def find(self, text: str) -> list[tuple[int, int]]:
        """Give start and end of each, in order, without overlaps."""
        return self.find_lowered(lowered(text))

    def find_lowered(self, low: str) -> list[tuple[int, int]]:
        """Give the same for a text that is in small letters, as ``lowered`` gives it."""
        starts = {start for first in self.first if first in low for start in _all(low, first)}
        found: list[tuple[int, int]] = []
        last = 0
        for start in sorted(starts):
            if start < last or (start and (is_of_word(low[start - 1]) or low[start - 1] in ".,-")):
                continue
            end = self._end(low, start)
            if end > start:
                found.append((start, end))
                last = end
        return found

    def _end(self, low: str, start: int) -> int:
        """Give where the longest name ends that begins at a place, or the place itself where none does."""
        for name, words in self.words:
            if low.startswith(words[0], start):
                end = start + len(name) if low.startswith(name, start) else _spaced(low, start, words)
                if end > start and not _goes_on(low, end):
                    return end
        return start


def _all(text: str, word: str) -> Iterator[int]:
    start = text.find(word)
    while start >= 0:
        yield start
        start = text.find(word, start + 1)


def _spaced(low: str, start: int, words: Sequence[str]) -> int:
    """Give where words that begin at a place end, with any spaces between them; the place itself where they do not."""
    if len(words) < 2:
        return start
    end = start
    for number, word in enumerate(words):
        place = end
        while number and low[place : place + 1].isspace():
            place += 1
        if (number and place == end) or not low.startswith(word, place):
            return start
        end = place + len(word)
    return end


def _goes_on(low: str, end: int) -> bool:
    letter, after = low[end : end + 1], low[end + 1 : end + 2]
    return (
        is_of_word(letter)
        or (letter == "-" and is_of_word(after))
        or (letter in (".", ",") and re.match(r"\d", after) is not None)
    )
