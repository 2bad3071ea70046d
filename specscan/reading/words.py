"""Glyphs → words and lines of text.

pdfium glues tight columns into one word and tears letter-spaced headings apart, so words are built
again from the glyphs' cells: the usual gap inside a run of glyphs (its tracking) is taken off before
a gap counts as a space.
"""

from __future__ import annotations

import bisect
import itertools
import re
import unicodedata
from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from specscan.reading.sheet import Glyph, Sheet
from specscan.records.text import Box, union

# Shares of the font size (em), set by looking at letter-spaced and justified pages: real spaces are
# seldom under 0.2 em, kerning seldom over 0.1.
GAP_SPACE = 0.2
GAP_GENERATED = 0.12
GAP_RUN = 2.0
RAISED = 0.14
SMALL = 0.86
SOFT_HYPHENS = {"\u00ad", "\ufffe", "\u0002"}
LIGATURES = {"ﬀ": "ff", "ﬁ": "fi", "ﬂ": "fl", "ﬃ": "ffi", "ﬄ": "ffl", "ﬅ": "st", "ﬆ": "st"}
UNITS_WITH_POWER = ("m", "cm", "mm", "dm", "ft", "in")
DEGREES = ("◦", "o", "º", "°")
POWERS = {"2": "²", "3": "³"}


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


def build_words(sheet: Sheet) -> list[Word]:
    """Give the words of a sheet in the order in which they are drawn."""
    words: list[Word] = []
    for run in _runs(sheet.glyphs):
        words.extend(_split(run))
    words = _join_spaced_letters(_drop_doubles(words))
    return [*_attach_small(words), *_drawn_signs(sheet, words)]


def _join_spaced_letters(words: list[Word]) -> list[Word]:
    """Join a name set with spaces between its letters, "B R E N N": four or more capitals at even gaps."""
    joined: list[Word] = []
    index = 0
    while index < len(words):
        end = index + 1
        while end < len(words) and _spaced_pair(words[end - 1], words[end]):
            end += 1
        run = words[index:end]
        gaps = [right.box.x0 - left.box.x1 for left, right in zip(run, run[1:], strict=False)]
        if len(run) >= 4 and max(gaps) <= 1.6 * max(min(gaps), 0.5):
            box = union([word.box for word in run])
            assert box is not None
            joined.append(replace(run[0], text="".join(word.text for word in run), box=box))
        else:
            joined.extend(run)
        index = end
    return joined


def _spaced_pair(left: Word, right: Word) -> bool:
    single = all(len(w.text) == 1 and w.text.isalpha() and w.text.isupper() for w in (left, right))
    level = abs(left.base - right.base) < 0.5 and abs(left.size - right.size) < 0.5
    return single and level and not left.direction and 0 <= right.box.x0 - left.box.x1 <= 1.3 * left.size


def _drawn_signs(sheet: Sheet, words: list[Word]) -> list[Word]:
    """Give bullets and marks that are drawn as small shapes the signs that look like them."""
    signs = []
    for dot in sheet.dots:
        x, y = dot.box.middle
        level = [word for word in words if not word.direction and word.box.top <= y <= word.box.bottom]
        right = min((w for w in level if w.box.x0 >= dot.box.x1), key=lambda w: w.box.x0, default=None)
        near = right or min(level, key=lambda w: abs(w.box.middle[0] - x), default=None)
        if near is None or any(word.box.holds(x, y) for word in level):
            continue
        text = ("●" if dot.filled else "○") if dot.round else ("■" if dot.filled else "□")
        box = Box(dot.box.x0, near.box.top, dot.box.x1, near.box.bottom)
        signs.append(Word(text, box, near.size, near.bold, near.color, base=near.base))
    return signs


def _runs(glyphs: list[Glyph]) -> list[list[Glyph]]:
    """Cut the stream where the baseline, the size or the direction changes or the pen jumps."""
    runs: list[list[Glyph]] = []
    current: list[Glyph] = []
    for glyph in glyphs:
        if current:
            last = current[-1]
            same = (
                glyph.style.direction == last.style.direction
                and abs(glyph.base - last.base) <= 0.05 * last.size + 0.3
                and abs(glyph.size - last.size) <= 0.12 * last.size
                and -0.6 * last.size <= glyph.start - last.stop <= GAP_RUN * last.size
            )
            if not (same or glyph.generated):
                runs.append(current)
                current = []
        if glyph.generated and not current:
            continue
        current.append(glyph)
    if current:
        runs.append(current)
    return runs


def _split(run: list[Glyph]) -> list[Word]:
    size = next(glyph.size for glyph in run if not glyph.generated)
    tracking = _tracking([glyph for glyph in run if not glyph.generated], size)
    words: list[list[Glyph]] = [[]]
    spaced = False
    last: Glyph | None = None
    for glyph in run:
        if glyph.generated:
            spaced = True
            continue
        if glyph.text.isspace():
            words.append([])
            last, spaced = None, False
            continue
        if last is not None:
            gap = glyph.start - last.stop - tracking
            if gap > GAP_SPACE * size or (spaced and gap > GAP_GENERATED * size):
                words.append([])
        words[-1].append(glyph)
        last, spaced = glyph, False
    return [_word(glyphs) for glyphs in words if glyphs]


def _tracking(solid: list[Glyph], size: float) -> float:
    """Give the letter-spacing of a run: a gap that four fifths of its pairs of letters reach.

    In two or three pairs of capitals, all of them.
    """
    gaps = [
        right.start - left.stop
        for left, right in zip(solid, solid[1:], strict=False)
        if left.text.isalnum() and right.text.isalnum()
    ]
    if len(gaps) >= 4:
        return max(0.0, sorted(gaps)[len(gaps) // 5])
    letters = [glyph.text for glyph in solid if glyph.text.isalpha()]
    if len(gaps) >= 2 and len(letters) == len(solid) and all(letter.isupper() for letter in letters):
        least = min(gaps)
        return least if least > 0.06 * size else 0.0
    return 0.0


def _word(glyphs: list[Glyph]) -> Word:
    text = "".join("-" if glyph.text in SOFT_HYPHENS else glyph.text for glyph in glyphs)
    text = "".join(LIGATURES.get(letter, letter) for letter in text)
    box = union([glyph.box for glyph in glyphs])
    assert box is not None
    style = glyphs[0].style
    return Word(
        text=unicodedata.normalize("NFC", text),
        box=box,
        size=glyphs[0].size,
        bold=style.bold,
        color=style.color,
        direction=style.direction,
        base=glyphs[0].base,
        unmapped=any(glyph.unmapped for glyph in glyphs),
    )


def _drop_doubles(words: list[Word]) -> list[Word]:
    """Drop words drawn twice at (nearly) the same place: a poor man's bold."""
    seen: dict[tuple[str, int, int], Word] = {}
    kept = []
    for word in words:
        keys = [
            (word.text, round(word.box.x0 / 2) + dx, round(word.box.top / 2) + dy)
            for dx in (-1, 0, 1)
            for dy in (-1, 0, 1)
        ]
        twin = next((seen[key] for key in keys if key in seen), None)
        if twin is not None:
            twin.bold = True
            continue
        seen[(word.text, round(word.box.x0 / 2), round(word.box.top / 2))] = word
        kept.append(word)
    return kept


def _attach_small(words: list[Word]) -> list[Word]:
    """Join subscripts and powers to their base word; mark other raised small words as note signs."""
    kept: list[Word] = []
    for word, following in itertools.zip_longest(words, words[1:]):
        if following is not None and _leads(word, following):
            kept.append(replace(word, raised=True, base=following.base))
            continue
        base = kept[-1] if kept else None
        if base is not None and base.raised and len(kept) > 1:
            base = kept[-2]
        near = (
            base is not None
            and word.direction == base.direction == 0
            and word.size < SMALL * base.size
            and len(word.text) <= 4
            and -0.2 * base.size <= word.box.x0 - base.box.x1 <= (0.4 if word.text in DEGREES else 0.14) * base.size
            and word.box.overlap_y(base.box) > 0
        )
        if not near or base is None:
            kept.append(word)
            continue
        lift = base.base - word.base
        if lift > RAISED * base.size:
            if word.text in DEGREES and word.text != "o" or word.text == "o" and base.text[-1:].isdigit():
                kept[-1] = _grown(base, word, "°")
            elif word.text in POWERS and base.text.casefold().endswith(UNITS_WITH_POWER):
                kept[-1] = _grown(base, word, POWERS[word.text])
            else:
                kept.append(replace(word, raised=True, base=base.base))
        else:
            kept[-1] = _grown(base, word, word.text)
    return kept


def _leads(word: Word, following: Word) -> bool:
    """Tell whether the word is a note sign set before the text of a footnote."""
    return (
        word.direction == following.direction == 0
        and len(word.text) <= 2
        and word.text not in DEGREES
        and word.size < SMALL * following.size
        and following.base - word.base > RAISED * following.size
        and -0.1 * following.size <= following.box.x0 - word.box.x1 <= 0.8 * following.size
    )


def _grown(base: Word, more: Word, text: str) -> Word:
    box = union([base.box, more.box])
    assert box is not None
    return replace(base, text=base.text + text, box=box)


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
