"""Words and the lines that they form."""

from __future__ import annotations

import bisect
import re
import unicodedata
from collections.abc import Sequence
from dataclasses import dataclass, field

from specscan.records.text import Box, union


@dataclass(slots=True)
class Word:
    """A word as printed. ``raised`` marks a note sign set higher and smaller than its line, ``copied`` one of a heading
    that is repeated over a column which it heads too."""

    text: str
    box: Box
    size: float
    bold: bool
    color: tuple[int, int, int]
    direction: int = 0
    raised: bool = False
    base: float = 0.0
    unmapped: bool = False
    copied: bool = False


@dataclass(slots=True)
class Line:
    """Words on one baseline, from left to right."""

    words: list[Word] = field(default_factory=list)

    @property
    def box(self) -> Box:
        found = union([word.box for word in self.words])
        assert found is not None
        return found

    @property
    def size(self) -> float:
        return middle_of([word.size for word in self.words])

    @property
    def base(self) -> float:
        """Give the height of the baseline, which raised signs do not shift."""
        return middle_of([word.base or word.box.bottom for word in self.words])

    @property
    def first_base(self) -> float:
        """Give the height of the first word's baseline, by which it is told whether lines are level."""
        return self.words[0].base or self.box.bottom

    @property
    def text(self) -> str:
        return join_words(self.words)

    @property
    def bold(self) -> bool:
        letters = sum(len(word.text) for word in self.words)
        return sum(len(word.text) for word in self.words if word.bold) * 2 > letters

    @property
    def color(self) -> tuple[int, int, int]:
        return self.words[0].color


def middle_of(values: list[float]) -> float:
    """Give the median of some finite numbers; asked for so often that the library's checks would be half the work."""
    ordered = sorted(values)
    half = len(ordered) // 2
    return ordered[half] if len(ordered) % 2 else (ordered[half - 1] + ordered[half]) / 2


def join_words(words: list[Word]) -> str:
    """Give the words with single spaces; note signs are left out."""
    return " ".join(word.text for word in words if not word.raised)


def build_lines(words: list[Word]) -> list[Line]:
    """Group upright words by baseline, over the whole width; lines from top to bottom.

    Words of a smaller line that stands beside a larger one (a note sign, a caption) stay with the
    line whose baseline they share within a third of the smaller height.
    """
    lines: list[Line] = []
    bases: list[float] = []
    sizes: list[list[float]] = []  # of the words of each line, in order
    usual: list[float] = []
    for word in sorted(words, key=lambda w: (_anchor(w), w.box.x0)):
        anchor = _anchor(word)
        best, distance = None, 0.3 * word.size
        for index in range(len(lines) - 1, max(-1, len(lines) - 12), -1):
            away = abs(bases[index] - anchor)
            if away > 0.3 * word.size and away > 0.8:
                continue
            limit = 0.3 * min(word.size, usual[index])
            if away <= max(limit, 0.8) and (best is None or away < distance):
                best, distance = index, away
        if best is None:
            lines.append(Line([word]))
            bases.append(anchor)
            sizes.append([word.size])
            usual.append(word.size)
        else:
            lines[best].words.append(word)
            bisect.insort(sizes[best], word.size)
            usual[best] = middle_of(sizes[best])
    for line in lines:
        line.words.sort(key=lambda w: w.box.x0)
    order = sorted(range(len(lines)), key=lambda i: bases[i])
    return [lines[i] for i in order]


def _anchor(word: Word) -> float:
    """Give the height at which the word sits: its baseline, or its middle where it is turned."""
    if word.direction:
        return word.box.bottom - 0.2 * word.size
    return word.base if word.base else word.box.bottom


# Signs that begin an item of a list. Reading knows them as drawing, not as meaning.
DASHES = set("-–—‒−·•∙◦*+»")
CHECK_BOXES = {"[ ]", "[x]", "[X]", "[]"}
NO_BULLETS = set("°©®™№=<>±÷~|¬√^`´¨")


def is_bullet(text: str) -> bool:
    """Tell whether a word is a sign that can begin an item of a list, a drawn mark or a currency sign."""
    if text in CHECK_BOXES:
        return True
    if len(text) != 1 or text in NO_BULLETS:
        return False
    return text in DASHES or unicodedata.category(text) in ("So", "Sk", "Sm", "Sc", "Co")


LEADER = re.compile(r"[.·•…_‥\-]{3,}|[.·…]+")


def is_leader(word: Word) -> bool:
    """Tell whether the word is (part of) a row of dots that leads the eye to a value."""
    return bool(LEADER.fullmatch(word.text)) and word.text not in ("-", "--", "---")


def _without_leaders(words: list[Word]) -> tuple[list[Word], set[int]]:
    """Drop rows of leader dots; give the kept words and the places where one stood before."""
    kept: list[Word] = []
    breaks: set[int] = set()
    index = 0
    while index < len(words):
        end = index
        while end < len(words) and is_leader(words[end]):
            end += 1
        dots = sum(len(word.text) for word in words[index:end])
        if dots >= 3 or (dots == 2 and end - index == 2 and index):  # "Heated floor . . $690"
            breaks.add(len(kept))
            index = end
            continue
        kept.append(words[index])
        index += 1
    return kept, breaks


def has_leader(line: Line) -> bool:
    """Tell whether a row of dots leads from one part of a line to the next."""
    return bool(_without_leaders(line.words)[1])


def segments_of(line: Line, gap: float, walls: Sequence[float] = ()) -> list[Line]:
    """Cut a line into segments.

    A cut falls where the space between two words is wider than ``gap`` times the font size, where
    leader dots stood, and at each x of ``walls`` (vertical rules) that lies between two words.
    """
    words, breaks = _without_leaders(line.words)
    if not words:
        return []
    parts: list[Line] = [Line([words[0]])]
    listed = len(words) > 1 and is_bullet(words[0].text)
    for place, (left, right) in enumerate(zip(words, words[1:], strict=False), 1):
        wide = right.box.x0 - left.box.x1 > gap * max(left.size, right.size) and not right.raised
        walled = any(left.box.x1 - 1 <= x <= right.box.x0 + 1 for x in walls)
        if (wide or walled or place in breaks) and not (listed and place == 1 and not walled):
            parts.append(Line([right]))
        else:
            parts[-1].words.append(right)
    return parts
