"""Words and the lines that they form."""

from __future__ import annotations

import bisect
import operator
import re
import unicodedata
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from specscan.records.text import SIGN_JOINT, Box, union


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


class Line:
    """Words on one baseline, from left to right.

    Neither a line nor its words change once it is made, so what is asked of it again and again is worked out once.
    """

    __slots__ = ("_base", "_bold", "_box", "_parts", "_sides", "_size", "_text", "words")

    def __init__(self, words: Iterable[Word] = ()):
        self.words = tuple(words)
        self._box: Box | None = None
        self._size: float | None = None
        self._base: float | None = None
        self._text: str | None = None
        self._bold: bool | None = None
        self._parts: dict[tuple[float, ...], list[Line]] = {}
        self._sides: dict[tuple[bool, ...], tuple[Line, Line]] = {}

    def __eq__(self, other: object) -> bool:
        return self.words == other.words if isinstance(other, Line) else NotImplemented

    __hash__ = None  # type: ignore[assignment]  # equal lines are not the same line: callers go by id

    def __repr__(self) -> str:
        return f"Line({list(self.words)!r})"

    @property
    def box(self) -> Box:
        if self._box is None:
            self._box = union([word.box for word in self.words])
            assert self._box is not None
        return self._box

    @property
    def size(self) -> float:
        if self._size is None:
            self._size = middle_of([word.size for word in self.words])
        return self._size

    @property
    def base(self) -> float:
        """Give the height of the baseline, which raised signs do not shift."""
        if self._base is None:
            self._base = middle_of([word.base or word.box.bottom for word in self.words])
        return self._base

    @property
    def first_base(self) -> float:
        """Give the height of the first word's baseline, by which it is told whether lines are level."""
        return self.words[0].base or self.box.bottom

    @property
    def text(self) -> str:
        if self._text is None:
            self._text = join_words(self.words)
        return self._text

    @property
    def bold(self) -> bool:
        if self._bold is None:
            letters = sum(len(word.text) for word in self.words)
            self._bold = sum(len(word.text) for word in self.words if word.bold) * 2 > letters
        return self._bold

    @property
    def color(self) -> tuple[int, int, int]:
        return self.words[0].color

    def sides(self, x: float) -> tuple[Line | None, Line | None]:
        """Give the words whose middles lie left of ``x``, and the others, each as a line or ``None``."""
        if self.box.x1 <= x:
            return self, None
        if self.box.x0 >= x:
            return None, self
        west = tuple(word.box.x0 + word.box.x1 < 2 * x for word in self.words)
        if all(west):
            return self, None
        if not any(west):
            return None, self
        found = self._sides.get(west)
        if found is None:
            placed = list(zip(self.words, west, strict=True))
            found = Line(word for word, left in placed if left), Line(word for word, left in placed if not left)
            self._sides[west] = found
        return found


def middle_of(values: list[float]) -> float:
    """Give the median of some finite numbers; asked for so often that the library's checks would be half the work."""
    ordered = sorted(values)
    half = len(ordered) // 2
    return ordered[half] if len(ordered) % 2 else (ordered[half - 1] + ordered[half]) / 2


def join_words(words: Sequence[Word]) -> str:
    """Give the words with single spaces; note signs are left out."""
    return " ".join(word.text for word in words if not word.raised)


LEFT_EDGE = operator.attrgetter("box.x0")


def build_lines(words: list[Word]) -> list[Line]:
    """Group upright words by baseline, over the whole width; lines from top to bottom.

    Words of a smaller line that stands beside a larger one (a note sign, a caption) stay with the
    line whose baseline they share within a third of the smaller height.
    """
    if len(words) < 2:
        return [Line(words)] if words else []
    lines: list[list[Word]] = []
    bases: list[float] = []  # in order, as the words come in the order of their anchors
    sizes: list[list[float]] = []  # of the words of each line, in order
    usual: list[float] = []
    for anchor, _, _, word in sorted((_anchor(word), word.box.x0, place, word) for place, word in enumerate(words)):
        best = None
        reach = max(0.3 * word.size, 0.8)
        for index in range(len(lines) - 1, max(-1, len(lines) - 12), -1):
            away = anchor - bases[index]
            if away > reach:
                break
            if away <= max(0.3 * min(word.size, usual[index]), 0.8):
                best = index
                break
        if best is None:
            lines.append([word])
            bases.append(anchor)
            sizes.append([word.size])
            usual.append(word.size)
        else:
            lines[best].append(word)
            bisect.insort(sizes[best], word.size)
            if word.size != usual[best]:  # else it stays in the middle
                usual[best] = middle_of(sizes[best])
    order = sorted(range(len(lines)), key=lambda i: bases[i])
    return [Line(sorted(lines[i], key=LEFT_EDGE)) for i in order]


def _anchor(word: Word) -> float:
    """Give the height at which the word sits: its baseline, or its middle where it is turned."""
    if word.direction:
        return word.box.bottom - 0.2 * word.size
    return word.base if word.base else word.box.bottom


# Signs that begin an item of a list. Reading knows them as drawing, not as meaning.
DASHES = set("-–—‒−·•∙◦*+»")
CHECK_BOX = re.compile(r"\[(?:[ xX]|[EINOPRSTZ]|[^\w\s\[\]])?\]|[☐☑☒]")  # "[-]", "[S]" too; "[W]" is a unit
ITEM_GAP = 5.0  # em from the sign to its item, at most: signs of several vans stand further apart
NO_BULLETS = set("°©®™№=<>±÷~|¬√^`´¨")


def is_bullet(text: str) -> bool:
    """Tell whether a word is a sign that can begin an item of a list, a drawn mark or a currency sign."""
    if CHECK_BOX.fullmatch(text):
        return True
    if len(text) != 1 or text in NO_BULLETS:
        return SIGN_JOINT in text
    return text in DASHES or unicodedata.category(text) in ("So", "Sk", "Sm", "Sc", "Co")


LEADER_SIGNS = frozenset(".·•…_‥-")
LEADER = re.compile(r"[.·•…_‥\-]{3,}|[.·…]+")


def is_leader(word: Word) -> bool:
    """Tell whether the word is (part of) a row of dots that leads the eye to a value."""
    text = word.text
    return text[:1] in LEADER_SIGNS and bool(LEADER.fullmatch(text)) and text not in ("-", "--", "---")


def _without_leaders(words: Sequence[Word]) -> tuple[list[Word], set[int]]:
    """Drop rows of leader dots; give the kept words and the places where one stood before."""
    if not any(word.text[:1] in LEADER_SIGNS and is_leader(word) for word in words):
        return list(words), set()
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
    leader dots stood, and at each x of ``walls`` (vertical rules) that lies between two words. What is given is kept
    with the line: do not change it.
    """
    key = (gap, *walls)
    parts = line._parts.get(key)
    if parts is None:
        parts = line._parts[key] = _cut(line, gap, walls)
    return parts


def _cut(line: Line, gap: float, walls: Sequence[float]) -> list[Line]:
    words, breaks = _without_leaders(line.words)
    if not words:
        return []
    if len(words) == 1 and len(line.words) == 1:
        return [line]
    parts = [[words[0]]]
    listed = len(words) > 1 and is_bullet(words[0].text)
    for place, (left, right) in enumerate(zip(words, words[1:], strict=False), 1):
        wide = right.box.x0 - left.box.x1 > gap * max(left.size, right.size) and not right.raised
        walled = bool(walls) and any(left.box.x1 - 1 <= x <= right.box.x0 + 1 for x in walls)
        item = listed and place == 1 and right.box.x0 - left.box.x1 <= ITEM_GAP * max(left.size, right.size)
        if (wide or walled or place in breaks) and not (item and not walled):
            parts.append([right])
        else:
            parts[-1].append(right)
    if len(parts) == 1 and len(words) == len(line.words):
        return [line]  # most lines: what is known of one need not be worked out again
    return [Line(part) for part in parts]
