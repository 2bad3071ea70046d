"""Recognised strips of text → words with their places, and which of their figures are in doubt.

The recogniser says what stands in a strip and roughly where; the ink says exactly where each sign begins and ends. Both
together part words (``17 l`` is not ``171``) and tell a letter from a digit (a plain bar is no ``1`` with a flag). A
figure is believed only where the recogniser is sure of every sign, a second reading at another size agrees, and the ink
looks like as many digits as were read.
"""

from __future__ import annotations

import re
import statistics
from dataclasses import dataclass, field, replace
from difflib import SequenceMatcher

import numpy as np

from specscan.reading.ocr_engine import Sign, Strip
from specscan.reading.ocr_picture import Mask
from specscan.reading.ocr_rules import OcrRules

# Shares of the font size, as most text faces have them; from memory.
CAP, LOWER = 0.72, 0.52
DEEP = set("gjpqyçQ,;()[]{}|/§$µ@_")
SHORT = set("acemnorsuvwxzgpqyçœæ")
TALL = set("ABCDEFGHIJKLMNOPQRSTUVWXYZbdfhkl0123456789ß")
FLOATING = set("'\"’‘“”′″°²³¹*^~-–—−=·•×+«»%®©™ª")
# Signs that two readings may tell differently without saying anything else.
SAME = str.maketrans("–—−’‘′“”″×·•", "---'''\"\"\"x..")
FIGURE = re.compile(r"\d")


@dataclass(slots=True)
class Place:
    """A sign with the extent of its ink, in pixels of the strip."""

    sign: Sign
    x0: int
    x1: int
    top: int
    bottom: int
    cut: float  # where the cell of the sign ends

    @property
    def width(self) -> int:
        return self.x1 - self.x0

    @property
    def height(self) -> int:
        return self.bottom - self.top


@dataclass(slots=True)
class StripWord:
    """A word of a strip: its text, its signs, and why its figure is in doubt (empty where it is not)."""

    text: str
    places: list[Place]
    doubt: str = ""

    @property
    def is_figure(self) -> bool:
        return bool(FIGURE.search(self.text))

    @property
    def sure(self) -> float:
        return sum(place.sign.sure for place in self.places) / len(self.places)


@dataclass(slots=True)
class ReadStrip:
    """A strip that was read: its words, font size and baseline in pixels of the strip, the thickness of its strokes."""

    words: list[StripWord]
    size: float
    base: float
    thickness: float = 0.0
    light: bool = False
    extra: list[str] = field(default_factory=list)


def locate(strip: Strip, ink: Mask) -> list[Place]:
    """Give each sign the ink that lies nearer to its middle than to those of its neighbours."""
    columns = ink.sum(axis=0)
    width = ink.shape[1]
    middles = [min(width - 1.0, sign.at * width) for sign in strip.signs]
    cuts = [0]
    for left, right in zip(middles, middles[1:], strict=False):
        cuts.append(max(cuts[-1] + 1, _cut(columns, int(left), int(right) + 1)))
    cuts.append(width)
    inked = np.flatnonzero(columns)
    if len(inked):
        cuts[0], cuts[-1] = min(int(inked[0]), cuts[1]), max(int(inked[-1]) + 1, cuts[-2])
    places = []
    for sign, middle, start, stop in zip(strip.signs, middles, cuts, cuts[1:], strict=False):
        part = ink[:, start:stop]
        xs, ys = np.flatnonzero(part.any(axis=0)), np.flatnonzero(part.any(axis=1))
        if len(xs) == 0:
            at = int(middle)
            places.append(Place(sign, at, at + 1, 0, 0, float(stop)))
            continue
        places.append(
            Place(sign, start + int(xs[0]), start + int(xs[-1]) + 1, int(ys[0]), int(ys[-1]) + 1, float(stop))
        )
    return places


def _cut(columns: np.ndarray, left: int, right: int) -> int:
    """Give the column between two signs with least ink; in the middle of the widest such stretch."""
    window = columns[left:right]
    if len(window) < 2:
        return right
    least = window == window.min()
    best, length, start = 0, 0, None
    for index, low in enumerate([*least, False]):
        if low and start is None:
            start = index
        elif not low and start is not None:
            if index - start > length:
                best, length = start, index - start
            start = None
    return left + best + length // 2


def size_and_base(places: list[Place], height: int) -> tuple[float, float]:
    """Give the font size and the baseline of a strip, in pixels, from the ink of letters whose shape is known."""
    solid = [p for p in places if p.height > 1]
    standing = [p for p in solid if p.sign.text not in DEEP and p.sign.text not in FLOATING]
    base = statistics.median(p.bottom for p in standing) if standing else 0.8 * height
    tall = [base - p.top for p in solid if p.sign.text in TALL]
    short = [base - p.top for p in solid if p.sign.text in SHORT]
    if len(tall) >= 2 or (tall and not short):
        return max(4.0, statistics.median(tall) / CAP), base
    if short:
        return max(4.0, statistics.median(short) / LOWER), base
    return max(4.0, 0.55 * height), base


def part_words(places: list[Place], size: float, rules: OcrRules) -> list[list[Place]]:
    """Part the signs of a strip where a space stands, by the recogniser's word and the white between them."""
    spacing = rules.spacing
    gaps = [right.x0 - left.x1 for left, right in zip(places, places[1:], strict=False)]
    # In letter-spaced headings every gap is wide: what two thirds of the gaps exceed is no space.
    usual = sorted(gaps)[len(gaps) // 3] if len(gaps) >= 4 else 0
    tracking = max(0.0, usual - 0.12 * size)
    words: list[list[Place]] = [[places[0]]] if places else []
    for place, gap in zip(places[1:], gaps, strict=True):
        white, likely = (gap - tracking) / size, place.sign.space_before
        parted = (
            white > spacing.surely_parted
            or (white > spacing.perhaps_parted and likely > spacing.likely_space)
            or (likely > 0.5 and white > 0.08 and not tracking)
        )
        if parted:
            words.append([place])
        else:
            words[-1].append(place)
    return words


def read_words(strip: Strip, ink: Mask, rules: OcrRules) -> ReadStrip:
    """Give the words of a strip with their doubts, as far as one reading tells them."""
    places = locate(strip, ink)
    size, base = size_and_base(places, ink.shape[0])
    words = []
    for group in part_words(places, size, rules):
        word = StripWord("".join(place.sign.text for place in group), group)
        words.append(word)
    _spell(words, size, rules)
    for index, word in enumerate(words):
        if word.is_figure:
            word.doubt = word.doubt or _doubt(word, words[index + 1 :], size, rules)
    return ReadStrip(words, size, base, _thickness(ink))


def _spell(words: list[StripWord], size: float, rules: OcrRules) -> None:
    """Mend what is never a word, and the letter l read as a digit behind a figure."""
    for before, word in zip([None, *words], words, strict=False):
        core = word.text.strip("(),;:")
        if core in rules.spellings:
            word.text = word.text.replace(core, rules.spellings[core])
            continue
        mended = rules.bars_behind_figures.get(core)
        if mended is None or before is None or not before.text[-1:].isdecimal():
            continue
        bar = word.places[word.text.index(core)]
        if bar.width <= rules.shape.bar_at_most * size:
            word.text = word.text.replace(core, mended, 1)
        else:
            word.doubt = before.doubt = "a sign behind it may be a digit or the letter l"


def _doubt(word: StripWord, following: list[StripWord], size: float, rules: OcrRules) -> str:
    """Give why the figure in a word is not read with certainty; empty where one reading leaves no doubt."""
    certainty = rules.certainty
    for index, place in enumerate(word.places):
        sign = place.sign
        if sign.sure < (certainty.digit if not sign.text.isalpha() else certainty.unit):
            return f"the sign {sign.text!r} is not sure"
        if index and sign.missed_point > certainty.missed_point:
            return "a decimal point may stand in it"
        if index and sign.missed_digit > certainty.missed_digit:
            return "a digit may be missing in it"
    if following and following[0].places[0].sign.missed_digit > certainty.missed_digit:
        return "a digit may be missing behind it"
    if any(re.search(pattern, word.text) for pattern in rules.impossible):
        return "letters and digits are mixed in it"
    if following and not following[0].is_figure and following[0].sure < certainty.unit:
        return "the unit behind it is not sure"
    return _odd_shape(word, size, rules)


def _odd_shape(word: StripWord, size: float, rules: OcrRules) -> str:
    """Tell whether the ink looks like something else than the digits that were read."""
    shape = rules.shape
    digits = [place for place in word.places if place.sign.text.isdecimal()]
    if any(place.width > shape.digit_at_most * size for place in digits):
        return "more ink stands there than the digits read"
    heights = [place.height for place in digits if place.height > 1]
    if len(heights) > 1 and max(heights) - min(heights) > max(2.0, shape.uneven_digits * max(heights)):
        return "its digits are of different heights"
    return ""


def compare(words: list[StripWord], second: Strip, rules: OcrRules) -> None:
    """Mark the figures (and the units behind them) that a second reading of the strip tells otherwise."""
    first = "".join(place.sign.text for word in words for place in word.places)
    owners = [word for word in words for _ in word.places]
    matcher = SequenceMatcher(None, first.translate(SAME), second.text.translate(SAME), autojunk=False)
    for kind, start, stop, other, until in matcher.get_opcodes():
        if kind == "equal":
            continue
        touched = owners[max(0, start - 1) : stop + 1] if kind == "insert" else owners[start:stop]
        added = second.text[other:until]
        for index, word in enumerate(words):
            unit_of_figure = index > 0 and words[index - 1].is_figure
            if any(word is one for one in touched) and (word.is_figure or unit_of_figure or FIGURE.search(added)):
                marked = word if word.is_figure or not unit_of_figure else words[index - 1]
                marked.doubt = marked.doubt or "two readings differ"


def look_into(places: list[Place], ink: Mask, size: float, rules: OcrRules) -> str:
    """Tell whether a digit's ink falls apart into two: then a sign beside it was passed over."""
    for place in places:
        if not place.sign.text.isdecimal() or place.width < 3:
            continue
        blank = ink[:, place.x0 : place.x1].sum(axis=0) == 0
        longest = run = 0
        for empty in blank.tolist():
            run = run + 1 if empty else 0
            longest = max(longest, run)
        if longest > max(1.0, rules.shape.hole_at_most * size):
            return "more ink stands there than the digits read"
    return ""


def _thickness(ink: Mask) -> float:
    """Give the mean thickness of strokes in pixels: twice the area over the length of the outline."""
    import cv2

    area = int(ink.sum())
    if not area:
        return 0.0
    inner = cv2.erode(ink.astype(np.uint8), np.ones((3, 3), np.uint8))
    outline = area - int(inner.sum())
    return 2.0 * area / max(1, outline)


def with_doubt(word: StripWord, reason: str) -> StripWord:
    """Give the word with a doubt, unless it has one."""
    return word if word.doubt or not reason else replace(word, doubt=reason)
