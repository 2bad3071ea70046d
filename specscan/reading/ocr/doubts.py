"""Which recognised figures are in doubt.

A figure is believed only where the recogniser is sure of every sign, a second reading at another size agrees, and the
ink looks like as many digits as were read.
"""

from __future__ import annotations

import re
import statistics
from difflib import SequenceMatcher

from specscan.reading.ocr.engine import Strip
from specscan.reading.ocr.rules import OcrRules
from specscan.reading.ocr.strips import BARS_OF_RULES, ReadStrip, StripWord

GROUPED = re.compile(r"(?<![\d.,])[1-9]\d{0,2}([.,])\d{3}(?![.,]?\d)")
ROMAN = re.compile(r"[IVX]{2,}")
NARROW_SPACE = "\u202f"  # parts thousands in every language
QUOTES = set("'\"’‘“”′″")
# Signs that two readings may tell differently without saying anything else; between letters, bars are alike too.
SAME = str.maketrans({**dict(zip("–—−’‘′·•×", "---'''..x", strict=True)), "“": "''", "”": "''", "″": "''", '"': "''"})
BARS = str.maketrans("I|1", "lll")


def doubt_figures(read: ReadStrip, rules: OcrRules, second: Strip | None) -> None:
    """Note on each word with digits why its figure is in doubt; ``second`` is another reading of the same strip."""
    words = read.words
    for index, word in enumerate(words):
        if ROMAN.fullmatch(word.text) and any(place.height <= 1 or place.shared for place in word.places):
            word.doubt = word.doubt or "there is no ink for one of its signs"
        if word.is_figure and not word.doubt:
            following = words[index + 1] if index + 1 < len(words) else None
            reason = _unsure(word, following, rules) or _odd_shape(word, read, rules)
            word.doubt = reason or _mark(word, following, read, rules)
    if second is not None:
        _compare(words, second)


def _unsure(word: StripWord, following: StripWord | None, rules: OcrRules) -> str:
    """Give what the recogniser is not sure of in a figure or in the unit behind it."""
    certainty = rules.certainty
    for index, place in enumerate(word.places):
        sign = place.sign
        if sign.text.isdecimal() or sign.text in ".,":
            least = certainty.digit
        else:
            least = certainty.quote if sign.text in QUOTES else certainty.unit
        if sign.sure < least:
            return f"the sign {sign.text!r} is not sure"
        if index and sign.missed_point > certainty.missed_point:
            return "a decimal point may stand in it"
        if index and sign.missed_digit > certainty.missed_digit:
            return "a digit may be missing in it"
    if any(re.search(pattern, word.text) for pattern in rules.impossible):
        return "letters and digits are mixed in it"
    if following is not None and not word.raised:
        if following.places[0].sign.missed_digit > certainty.missed_digit:
            return "a digit may be missing behind it"
        if not following.is_figure and following.sure < certainty.unit:
            return "the unit behind it is not sure"
    return ""


def _odd_shape(word: StripWord, read: ReadStrip, rules: OcrRules) -> str:
    """Tell whether the ink looks like something else than the digits that were read."""
    shape, size = rules.shape, read.size
    digits = [place for place in word.places if place.sign.text.isdecimal()]
    own = [place for place in digits if not place.shared]
    if any(place.height <= 1 for place in digits):
        return "there is no ink for one of its digits"
    stray = [place.stray for place in word.places if place.stray_bottom > read.base - shape.raised_from * size]
    if any(width > shape.stray_at_most * size for width in stray):
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


def _mark(word: StripWord, following: StripWord | None, read: ReadStrip, rules: OcrRules) -> str:
    """Settle whether the mark before three digits is a point or a comma, by its tail; give why where nothing tells.

    Before a unit of which nobody prints three decimals it parts thousands, whichever of the two it is: it is then
    written as a narrow space, which says so in any language.
    """
    match = GROUPED.search(word.text)
    if match is None or len(word.text) != len(word.places):
        return ""
    place = word.places[match.start(1)]
    tail = (place.bottom - read.base) / read.size
    clear = tail <= rules.shape.point_tail if match.group(1) == "." else tail >= rules.shape.comma_tail
    if place.sign.which >= rules.certainty.digit and clear and place.height > 1:
        return ""
    unit = word.text[match.end() :].strip("().,;:") or (following.text.strip("().,;:") if following else "")
    if unit in rules.whole_units:
        word.text = word.text[: match.start(1)] + NARROW_SPACE + word.text[match.end(1) :]
        return ""
    return "its mark may be a point or a comma"


def _compare(words: list[StripWord], second: Strip) -> None:
    """Doubt the figures that a second reading tells otherwise, or the units behind them."""
    signs = [(sign, index) for index, word in enumerate(words) for place in word.places
             for sign in place.sign.text.translate(SAME)]  # fmt: skip
    owners = [index for _, index in signs]
    first, other = "".join(sign for sign, _ in signs), second.text.translate(SAME)
    raised = "".join(place.sign.text for word in words for place in word.raised)
    for kind, start, stop, from_, to in SequenceMatcher(None, first, other, autojunk=False).get_opcodes():
        told, left = other[from_:to], first[start:stop]
        if kind == "equal" or (kind == "insert" and raised and told in raised):
            continue
        if set(told + left) <= BARS_OF_RULES or _as_square(first[start - 1 : start], left, told):
            continue
        touched = set(owners[start:stop] or owners[max(0, start - 1) : start + 1])
        same = left.translate(BARS) == told.translate(BARS)
        if same and not any(sign.isdecimal() for sign in left + told):
            continue
        marks = {left, told} == {".", ","}  # told apart by its tail
        for index in touched:
            word = words[index]
            figure = word if word.is_figure else words[index - 1] if index else word
            if marks or not figure.is_figure or (same and not word.is_figure):
                continue
            figure.doubt = figure.doubt or "two readings differ"


def _as_square(before: str, left: str, told: str) -> bool:
    """Tell whether readings differ only in how they write the square of a metre."""
    return before == "m" and {left, told} == {"2", "²"}
