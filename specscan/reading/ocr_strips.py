"""Recognised strips of text → words with their places, and which of their figures are in doubt.

The recogniser says what stands in a strip and roughly where; the ink says exactly where each sign begins and ends. Both
together part words (``17 l`` is not ``171``) and tell a letter from a digit (a plain bar is no ``1`` with a flag). A
figure is believed only where the recogniser is sure of every sign, a second reading at another size agrees, and the ink
looks like as many digits as were read.
"""

from __future__ import annotations

import re
import statistics
from dataclasses import dataclass
from difflib import SequenceMatcher

import numpy as np

from specscan.reading.ocr_align import Place, align, first_size, size_and_base
from specscan.reading.ocr_engine import Strip
from specscan.reading.ocr_picture import Mask
from specscan.reading.ocr_rules import OcrRules

FIGURE = re.compile(r"\d")
GROUPED = re.compile(r"(?<![\d.,])[1-9]\d{0,2}([.,])\d{3}(?![\d.,]\d|\d)")
NARROW_SPACE = "\u202f"  # parts thousands in every language
# Signs that two readings may tell differently without saying anything else; between letters, bars are alike too.
SAME = str.maketrans("–—−’‘′“”″×·•", "---'''\"\"\"x..")
BARS = str.maketrans("I|1", "lll")


@dataclass(slots=True)
class StripWord:
    """A word of a strip: its text, its signs, and why its figure is in doubt (empty where it is not)."""

    text: str
    places: list[Place]
    doubt: str = ""

    @property
    def is_figure(self) -> bool:
        """Tell whether digits stand in it."""
        return bool(FIGURE.search(self.text))

    @property
    def sure(self) -> float:
        """Give the mean likelihood of its signs."""
        return sum(place.sign.sure for place in self.places) / len(self.places)


@dataclass(slots=True)
class ReadStrip:
    """A strip that was read: its words, font size and baseline in pixels of the strip, the thickness of its strokes."""

    words: list[StripWord]
    size: float
    base: float
    thickness: float = 0.0
    light: bool = False


def read_words(strip: Strip, ink: Mask, rules: OcrRules, second: Strip | None = None) -> ReadStrip:
    """Give the words of a strip; ``second`` is another reading of the same strip, which must agree on the figures."""
    places = align(strip.signs, ink, first_size(ink))
    size, base = size_and_base(places, ink.shape[0])
    places = align(strip.signs, ink, size)
    words = [StripWord("".join(place.sign.text for place in group), group) for group in _parted(places, size, rules)]
    _spell(words, size, rules)
    for index, word in enumerate(words):
        if word.is_figure:
            following = words[index + 1] if index + 1 < len(words) else None
            reason = _unsure(word, following, rules) or _odd_shape(word, size, rules)
            word.doubt = word.doubt or reason or _mark(word, following, size, base, rules)
    if second is not None:
        _compare(words, second)
    return ReadStrip(words, size, base, _thickness(ink))


def _parted(places: list[Place], size: float, rules: OcrRules) -> list[list[Place]]:
    """Part the signs of a strip where a space stands, by the recogniser's word and the white between them."""
    spacing = rules.spacing
    gaps = [right.x0 - left.x1 for left, right in zip(places, places[1:], strict=False)]
    # In letter-spaced headings every gap is wide: what two thirds of the gaps exceed is no space.
    usual = sorted(gaps)[len(gaps) // 3] if len(gaps) >= 4 else 0.0
    tracking = max(0.0, usual - 0.12 * size)
    words: list[list[Place]] = [[places[0]]] if places else []
    for before, place, gap in zip(places, places[1:], gaps, strict=False):
        white, likely = (gap - tracking) / size, place.sign.space_before
        if before.sign.text in ".," and place.sign.text.isdecimal() and likely <= 0.5:
            white = 0.0  # a mark inside a figure has much white beside it where all signs are equally wide
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


def _spell(words: list[StripWord], size: float, rules: OcrRules) -> None:
    """Mend what is never a word, and the letter l read as a digit behind a figure."""
    before: StripWord | None = None
    for word in words:
        core = word.text.strip("(),;:.")
        mended = rules.bars_behind_figures.get(core)
        if core in rules.spellings:
            word.text = word.text.replace(core, rules.spellings[core])
        elif mended is not None and before is not None and before.text[-1].isdecimal():
            bar = word.places[word.text.index(core)]
            if bar.width <= rules.shape.bar_at_most * size:
                word.text = word.text.replace(core, mended, 1)
            elif core[0].isdecimal():
                word.doubt = before.doubt = "the sign behind it may be a digit or the letter l"
        before = word


def _unsure(word: StripWord, following: StripWord | None, rules: OcrRules) -> str:
    """Give what the recogniser is not sure of in a figure or in the unit behind it."""
    certainty = rules.certainty
    for index, place in enumerate(word.places):
        sign = place.sign
        if sign.sure < (certainty.unit if sign.text.isalpha() else certainty.digit):
            return f"the sign {sign.text!r} is not sure"
        if index and sign.missed_point > certainty.missed_point:
            return "a decimal point may stand in it"
        if index and sign.missed_digit > certainty.missed_digit:
            return "a digit may be missing in it"
    if any(re.search(pattern, word.text) for pattern in rules.impossible):
        return "letters and digits are mixed in it"
    if following is not None:
        if following.places[0].sign.missed_digit > certainty.missed_digit:
            return "a digit may be missing behind it"
        if not following.is_figure and following.sure < certainty.unit:
            return "the unit behind it is not sure"
    return ""


def _odd_shape(word: StripWord, size: float, rules: OcrRules) -> str:
    """Tell whether the ink looks like something else than the digits that were read."""
    shape = rules.shape
    digits = [place for place in word.places if place.sign.text.isdecimal()]
    own = [place for place in digits if not place.shared]
    if any(place.height <= 1 for place in digits):
        return "there is no ink for one of its digits"
    if any(place.odd > shape.stray_at_most for place in word.places):
        return "more ink stands there than the digits read"
    widest = shape.digit_at_most * size
    wide = [place.width for place in own if place.sign.text != "1"]
    if wide:
        widest = min(widest, shape.widest_digit * statistics.median(wide))
    if any(place.width > widest for place in own):
        return "more ink stands there than the digits read"
    heights = [place.height for place in own]
    if len(heights) > 1 and max(heights) - min(heights) > max(2.0, shape.uneven_digits * max(heights)):
        return "its digits are of different heights"
    return ""


def _mark(word: StripWord, following: StripWord | None, size: float, base: float, rules: OcrRules) -> str:
    """Settle whether the mark before three digits is a point or a comma, by its tail; give why where nothing tells.

    Before a unit of which nobody prints three decimals it parts thousands, whichever of the two it is: it is then
    written as a narrow space, which says so in any language.
    """
    match = GROUPED.search(word.text)
    if match is None or len(word.text) != len(word.places):
        return ""
    place = word.places[match.start(1)]
    tail = (place.bottom - base) / size
    read, which = match.group(1), place.sign.which
    clear = tail <= rules.shape.point_tail if read == "." else tail >= rules.shape.comma_tail
    if which >= rules.certainty.digit and clear and place.height > 1:
        return ""
    unit = word.text[match.end() :].strip("().,;:") or (following.text.strip("().,;:") if following else "")
    if unit in rules.whole_units:
        word.text = word.text[: match.start(1)] + NARROW_SPACE + word.text[match.end(1) :]
        return ""
    return "its mark may be a point or a comma"


def _compare(words: list[StripWord], second: Strip) -> None:
    """Doubt the figures that a second reading tells otherwise, or the units behind them."""
    owners = [index for index, word in enumerate(words) for _ in word.places]
    first = "".join(place.sign.text for word in words for place in word.places).translate(SAME)
    other = second.text.translate(SAME)
    for kind, start, stop, from_, to in SequenceMatcher(None, first, other, autojunk=False).get_opcodes():
        if kind == "equal":
            continue
        touched = set(owners[start:stop] or owners[max(0, start - 1) : start + 1])
        same = first[start:stop].translate(BARS) == other[from_:to].translate(BARS)
        marks = {first[start:stop], other[from_:to]} == {".", ","}  # told apart by its tail
        for index in touched:
            word = words[index]
            figure = word if word.is_figure else words[index - 1] if index else word
            if marks or not figure.is_figure or (same and not word.is_figure):
                continue
            figure.doubt = figure.doubt or "two readings differ"


def _thickness(ink: Mask) -> float:
    """Give the mean thickness of strokes in pixels: twice the area over the length of the outline."""
    import cv2

    area = int(ink.sum())
    if not area:
        return 0.0
    inner = cv2.erode(ink.astype(np.uint8), np.ones((3, 3), np.uint8))
    return 2.0 * area / max(1, area - int(inner.sum()))
