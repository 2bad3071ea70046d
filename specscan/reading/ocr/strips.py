"""Recognised strips of text → words with their places.

The recogniser says what stands in a strip and roughly where; the ink says exactly where each sign begins and ends. Both
together part words (``17 l`` is not ``171``), tell a letter from a digit, and set raised note signs apart.
"""

from __future__ import annotations

import re
import statistics
from dataclasses import dataclass, field

from specscan.reading.ocr.align import FLOATING, Place, align, first_size, size_and_base
from specscan.reading.ocr.engine import Picture, Strip
from specscan.reading.ocr.measure import darkness, fine_size, thickness
from specscan.reading.ocr.picture import Mask, strip_ink, strip_is_reversed
from specscan.reading.ocr.rules import OcrRules

FIGURE = re.compile(r"\d")
BARS_OF_RULES = set("|[]_¦")
PARTING_BARS = set("|¦")
UPRIGHT = set("1Il|i")
DUST = set(".,:;'’`·-*~^")
BRACKETED = re.compile(r"\([1Il|]\)")
DIGIT_PITCH = 0.49  # of the font size, from the middle of a digit to that of a one behind it


@dataclass(slots=True)
class StripWord:
    """A word of a strip: its text, its signs, and why its figure is in doubt (empty where it is not).

    ``raised`` are the small signs that stand high behind it.
    """

    text: str
    places: list[Place]
    raised: list[Place] = field(default_factory=list)
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
    """A strip that was read: its words, font size and baseline in pixels of the strip, the thickness of its strokes.

    ``measured`` tells that its size was measured by letters; else it is a guess by the height of its ink.
    """

    words: list[StripWord]
    size: float
    base: float
    thickness: float = 0.0
    light: bool = False
    measured: bool = True


def read_words(strip: Strip, crop: Picture, ruled: Mask, rules: OcrRules) -> ReadStrip:
    """Give the words of a strip and of its picture; ``ruled`` are the pixels that lines cover."""
    ink, light = strip_ink(crop, ruled), strip_is_reversed(crop)
    places = align(strip.signs, ink, first_size(ink))
    size, base = size_and_base(places, ink.shape[0])
    dark = darkness(crop, ink, light=light)
    fine = fine_size(places, dark)
    size = fine or size
    if FIGURE.search(strip.text):
        places = align(strip.signs, ink, size)
    places = _without_dust(places, size, rules)
    words = [_word(group, size, base, rules) for group in _parted(places, size, rules)]
    words = [word for number, word in enumerate(words) if not _is_rule(words, number, size, ink.shape[0])]
    _spell(words, size, base, rules)
    return ReadStrip(words, size, base, thickness(dark, ink), light, fine is not None)


def _is_rule(words: list[StripWord], number: int, size: float, height: int) -> bool:
    """Tell whether a word is a rule of the table beside the text; a bar between two words parts them and is text."""
    word = words[number]
    if not set(word.text) <= BARS_OF_RULES:
        return False
    ink = word.places[0]
    between = 0 < number < len(words) - 1 and word.text in PARTING_BARS
    return not (between and 0.6 * size <= ink.height <= 1.35 * size and (ink.top > 0 or ink.bottom < height))


def _word(places: list[Place], size: float, base: float, rules: OcrRules) -> StripWord:
    """Make a word of signs; small signs that stand high at its end are set apart."""
    shape = rules.shape
    count = len(places)
    while count > 1:
        place = places[count - 1]
        high = base - place.bottom > shape.raised_from * size and 1 < place.height <= shape.raised_at_most * size
        if not high or place.sign.text in FLOATING or not (place.sign.text.isalnum() or place.sign.text in "()"):
            break
        count -= 1
    core, raised = places[:count], places[count:]
    return StripWord("".join(place.sign.text for place in core), core, raised)


def _parted(places: list[Place], size: float, rules: OcrRules) -> list[list[Place]]:
    """Part the signs of a strip where a space stands, by the recogniser's word and the white between them."""
    spacing = rules.spacing
    gaps = [right.x0 - left.x1 for left, right in zip(places, places[1:], strict=False)]
    # In letter-spaced headings every gap is wide: what two thirds of the gaps exceed is no space.
    usual = sorted(gaps)[len(gaps) // 3] if len(gaps) >= 4 else 0.0
    tracking = max(0.0, usual - 0.12 * size)
    unit = _unit_behind(places, size, rules)
    touching = sum(place.shared for place in places) > spacing.many_touch * len(places)
    words: list[list[Place]] = [[places[0]]] if places else []
    for before, place, gap in zip(places, places[1:], gaps, strict=False):
        white, likely = (gap - tracking) / size, place.sign.space_before
        if before.sign.text in ".," and place.sign.text.isdecimal() and likely <= 0.5:
            white = 0.0  # a mark inside a figure has much white beside it where all signs are equally wide
        kinds = {(one.sign.text.isalpha(), one.sign.text.isdecimal()) for one in (before, place)}
        if kinds == {(True, False), (False, True)} and white > spacing.perhaps_parted:  # "Drift 2026", "700 Ridge"
            parted = True
        elif touching or before.shared or place.shared:  # where signs touch, where each of them ends is a guess
            parted = likely > 0.5 or (white > spacing.surely_parted and likely > spacing.likely_space)
        else:
            parted = (
                white > spacing.surely_parted
                or (white > spacing.perhaps_parted and likely > spacing.likely_space)
                or (likely > 0.5 and white > 0.08 and not tracking)
            )
        if parted or place is unit:
            words.append([place])
        else:
            words[-1].append(place)
    return words


def _without_dust(places: list[Place], size: float, rules: OcrRules) -> list[Place]:
    """Give signs without small ones that were hardly recognised, in the white between a word and a word or figure."""
    kept = []
    for number, place in enumerate(places):
        beside = places[max(0, number - 1) : number + 2]
        digits = sum(one.sign.text.isdecimal() for one in beside)
        inside = len(beside) == 3 and beside[2].x0 - beside[0].x1 > rules.spacing.perhaps_parted * size
        unsure = place.sign.text in DUST and place.sign.sure < rules.certainty.unit
        if not (unsure and inside and digits < 2):
            kept.append(place)
    return kept


def _unit_behind(places: list[Place], size: float, rules: OcrRules) -> Place | None:
    """Give an upright stroke that stands too far behind the last digit of a strip to be a digit: ``139 l``.

    A one has more white on its left than other digits, so the distances of the middles tell, not the white alone.
    """
    digits = [place.sign.text.isdecimal() for place in places]
    if len(places) < 2 or not digits[-2] or places[-1].sign.text not in UPRIGHT:
        return None
    last, before = places[-1], places[-2]
    first = len(places) - 2
    while first and digits[first - 1]:
        first -= 1
    middles = [(place.x0 + place.x1) / 2 for place in places[first:-1]]
    steps = [right - left for left, right in zip(middles, middles[1:], strict=False)]
    usual = max(statistics.median(steps), 0.5 * size) if steps else DIGIT_PITCH * size
    pitch = (last.x0 + last.x1) / 2 - middles[-1]
    apart = last.x0 - before.x1 > rules.spacing.unit_apart * size and not last.shared
    return last if apart and pitch > rules.spacing.unit_pitch * usual else None


def _spell(words: list[StripWord], size: float, base: float, rules: OcrRules) -> None:
    """Mend what is never a word, and the letter l that was read as a digit or a capital."""
    for index, word in enumerate(words):
        for mend in rules.mends:
            word.text = re.sub(mend.pattern, mend.meant, word.text)
        after = words[index + 1] if index + 1 < len(words) else None
        if after is not None and after.text.isalpha() and after.text.islower():
            word.text = rules.before_small.get(word.text, word.text)
        if word.text == "." and base - word.places[0].bottom > rules.shape.raised_from * size:
            word.text = "·"
        core = word.text.strip("(),;:.")
        mended = rules.bars.get(core)
        if core in rules.spellings:
            word.text = word.text.replace(core, rules.spellings[core])
        elif mended is not None and not word.raised and len(word.text) == len(word.places):
            before = words[index - 1] if index else None
            bar = word.places[word.text.index(core)]
            is_bar = bar.width <= rules.shape.bar_at_most * size
            stands = abs(bar.bottom - base) <= 0.08 * size and bar.height >= 0.6 * size
            if stands and _is_unit(word, before, after, rules, is_bar):
                word.text = word.text.replace(core, mended, 1)
            elif core[0].isdecimal() and after is not None and re.match(r"\d+[.,]", after.text):
                after.doubt = "the sign before it may be a digit or the letter l"


def _is_unit(word: StripWord, before: StripWord | None, after: StripWord | None, rules: OcrRules, is_bar: bool) -> bool:
    """Tell whether a lone upright stroke stands where the unit litre stands and no digit does.

    That is behind a figure and not before one, or at the end behind a comma or a word for "in". A closing bracket
    alone behind it makes it a note sign.
    """
    if after is None and BRACKETED.fullmatch(word.text) and (is_bar or "1" not in word.text):
        return True
    if before is None or (word.text.endswith(")") and "(" not in word.text + before.text):
        return False
    if before.text[-1].isdecimal() and not before.raised:
        return is_bar or after is None or not after.text[0].isdecimal()
    behind = before.text.casefold() in rules.before_units
    comma = before.text.endswith(",") and (is_bar or not word.text[0].isdecimal())
    return after is None and (behind or comma)
