"""Letters → words.

pdfium glues tight columns into one word and tears letter-spaced headings apart, so words are built
again from the letters' cells: the usual gap inside a run of letters (its tracking) is taken off before
a gap counts as a space.
"""

from __future__ import annotations

import itertools
import re
import unicodedata
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from specscan.reading.letters.sheet import Letters, Numbers, Sheet, text_of, told
from specscan.reading.letters.words import Word
from specscan.records.text import Box, union

# Shares of the font size (em), set by looking at letter-spaced and justified pages: real spaces are
# seldom under 0.2 em, kerning seldom over 0.1.
GAP_SPACE = 0.2
GAP_GENERATED = 0.12
GAP_RUN = 2.0
FEWEST_SPACED = 4  # letters with spaces between them that are one word
SPACED = 0.4  # em: a space, and no more
MOST_APART = 1.3  # em between the letters of a word: beyond it they stand in columns
SMALLEST_CAPITAL, LARGEST_CAPITAL = 0.6, 0.92  # sizes of small capitals, in those of the capital before them
DOT = ord(".")
FEWEST_DOTS = 4  # of a row that leads the eye from a label to its value
EVEN = 0.03  # em by which the steps from dot to dot of such a row differ at most
AHEAD = 0.3  # em from the start of a letter to the next, whatever part of the first lies below or above it
RAISED = 0.14
LEVEL = 0.05  # em between words that stand on one line
SMALL = 0.86
LIGATURES = {"ﬀ": "ff", "ﬁ": "fi", "ﬂ": "fl", "ﬃ": "ffi", "ﬄ": "ffl", "ﬅ": "st", "ﬆ": "st"}
WRITTEN = str.maketrans({"\u00ad": "-", "\ufffe": "-", "\u0002": "-", **LIGATURES})  # soft hyphens become hyphens
UNITS_WITH_POWER = ("m", "cm", "mm", "dm", "ft", "in")
DEGREES = ("◦", "o", "º", "°")
POWERS = {"2": "²", "3": "³"}
PRIMES = {"′": "′", "′′": "″", "″": "″"}  # of feet and inches, raised where they are set as powers
LENGTH = re.compile(r"\d[.,'’\s]?\d{3}\s?mm$")

Places = NDArray[np.int64]


def build_words(letters: Letters) -> list[Word]:
    """Give the words of a page in the order in which they are drawn."""
    return _attach_small(_join_small_capitals(_join_spaced_letters(_drop_doubles(_parted(letters)))))


def _join_spaced_letters(words: list[Word]) -> list[Word]:
    """Join a name set with spaces between its letters, "B R E N N": four or more capitals at even gaps."""
    single = "".join("A" if len(word.text) == 1 and word.text.isupper() else "-" for word in words)
    if "A" * FEWEST_SPACED not in single:
        return words
    joined: list[Word] = []
    index = 0
    while index < len(words):
        end = index + 1
        while end < len(words) and _spaced_pair(words[end - 1], words[end]):
            end += 1
        run = words[index:end]
        gaps = [right.box.x0 - left.box.x1 for left, right in zip(run, run[1:], strict=False)]
        if len(run) >= FEWEST_SPACED and max(gaps) <= 1.6 * max(min(gaps), 0.5):
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
    return single and level and not left.direction and 0 <= right.box.x0 - left.box.x1 <= MOST_APART * left.size


def _join_small_capitals(words: list[Word]) -> list[Word]:
    """Join a capital to the small capitals that go on with its word."""
    joined: list[Word] = []
    for word in words:
        if joined and _is_small_capitals(joined[-1], word):
            joined[-1] = _grown(joined[-1], word, word.text)
        else:
            joined.append(word)
    return joined


def _is_small_capitals(first: Word, rest: Word) -> bool:
    capitals = len(first.text) == 1 and first.text.isupper() and rest.text[0].isalpha() and rest.text.isupper()
    smaller = SMALLEST_CAPITAL <= rest.size / first.size < LARGEST_CAPITAL if first.size > 0 else False
    level = first.direction == rest.direction == 0 and abs(first.base - rest.base) <= 0.05 * first.size
    return capitals and smaller and level and abs(rest.box.x0 - first.box.x1) <= GAP_SPACE * first.size


def drawn_signs(sheet: Sheet, words: list[Word]) -> list[Word]:
    """Give bullets and marks that are drawn as small shapes the signs that look like them."""
    signs: list[Word] = []
    upright = [word for word in words if not word.direction]
    if not sheet.dots or not upright:
        return signs
    top, bottom = (np.array([getattr(word.box, name) for word in upright]) for name in ("top", "bottom"))
    for dot in sheet.dots:
        x, y = dot.box.middle
        level = [upright[place] for place in np.flatnonzero((top <= y) & (y <= bottom)).tolist()]
        if not level:
            continue
        right = min((w for w in level if w.box.x0 >= dot.box.x1), key=lambda w: w.box.x0, default=None)
        near = right or min(level, key=lambda w: abs(w.box.middle[0] - x), default=None)
        if near is None or any(word.box.holds(x, y) for word in level):
            continue
        text = ("●" if dot.filled else "○") if dot.round else ("■" if dot.filled else "□")
        box = Box(dot.box.x0, near.box.top, dot.box.x1, near.box.bottom)
        signs.append(Word(text, box, near.size, near.bold, near.color, base=near.base))
    return signs


def _parted(letters: Letters) -> list[Word]:
    """Give the words as the gaps between their letters part them, in the order in which they are drawn."""
    first = next((place for place, generated in enumerate(letters.generated.tolist()) if not generated), len(letters))
    solid = np.flatnonzero(letters.solid)
    if not len(solid):
        return []
    run = _runs(letters, first)
    size = letters.size[first:][np.flatnonzero(np.diff(run[first:], prepend=-1))]  # of each run, by its first letter
    spaces = np.cumsum(letters.space & ~letters.generated)[solid]
    generated = np.cumsum(letters.generated)[solid]
    own, em = run[solid], size[run[solid]]
    gap = letters.start[solid][1:] - letters.stop[solid][:-1] - _tracking(letters, run, size, first)[own][1:]
    begins = np.ones(len(solid), np.bool_)
    begins[1:] = (own[1:] != own[:-1]) | (spaces[1:] != spaces[:-1]) | (gap > GAP_SPACE * em[1:])
    begins[1:] |= (generated[1:] != generated[:-1]) & (gap > GAP_GENERATED * em[1:])
    led = _led(letters, solid, own, em)
    begins[1:] |= led[1:] != led[:-1]
    return _words(letters, solid, np.flatnonzero(begins))


def _led(letters: Letters, solid: Places, own: Places, em: Numbers) -> NDArray[np.bool_]:
    """Tell of each letter whether it is a dot of a row at even steps, be it ever so near to the words on its sides.

    Such rows are set on a grid, whatever stands at their ends: "Fuel tank. . . . .24.5 gal".
    """
    led = np.zeros(len(solid), np.bool_)
    dots = letters.codes[solid] == DOT
    if dots.sum() < FEWEST_DOTS:
        return led
    step = np.diff(letters.start[solid])
    pair = dots[1:] & dots[:-1] & (own[1:] == own[:-1])
    even = pair[1:] & pair[:-1] & (np.abs(np.diff(step)) <= EVEN * em[2:])
    first = np.flatnonzero(
        np.logical_and.reduce([even[n : len(even) - FEWEST_DOTS + 3 + n] for n in range(FEWEST_DOTS - 2)])
    )
    for place in range(FEWEST_DOTS):
        led[first + place] = True
    return led


def _runs(letters: Letters, first: int) -> Places:
    """Give the number of the run of each letter, from the ``first`` that is drawn on.

    A run ends where the baseline, the size or the direction changes or the pen jumps.
    """
    direction = np.array([style.direction for style in letters.styles], np.int64)[letters.style]
    last, step = letters.size[:-1], letters.start[1:] - letters.stop[:-1]
    ahead = letters.start[1:] - letters.start[:-1]  # the tail of a "Q" may reach below two letters
    same = (
        (direction[1:] == direction[:-1])
        & (np.abs(letters.base[1:] - letters.base[:-1]) <= 0.05 * last + 0.3)
        & (np.abs(letters.size[1:] - last) <= 0.12 * last)
        & ((step >= -0.6 * last) | (ahead >= AHEAD * last))
        & (step <= GAP_RUN * last)
    )
    cuts = np.zeros(len(letters), np.int64)
    cuts[1:] = ~(same | letters.generated[1:])
    cuts[: first + 1] = 0
    return np.cumsum(cuts)


def _tracking(letters: Letters, run: Places, sizes: Numbers, first: int) -> Numbers:
    """Give the letter-spacing of each run: a gap that four fifths of its pairs of letters reach.

    In two or three pairs of capitals, all of them. Marks in narrow columns, "X   O   O", are no word.
    """
    drawn = first + np.flatnonzero(~letters.generated[first:])
    letter = told(letters.codes[drawn], str.isalnum)
    pairs = np.flatnonzero(letter[1:] & letter[:-1] & (run[drawn][1:] == run[drawn][:-1]))
    gaps = letters.start[drawn[pairs + 1]] - letters.stop[drawn[pairs]]
    own = run[drawn[pairs]]
    order = np.lexsort((gaps, own))
    counts = np.bincount(own, minlength=len(sizes))
    begins = np.cumsum(counts) - counts
    tracking = np.zeros(len(sizes), np.float64)
    many = np.flatnonzero(counts >= 4)
    tracking[many] = np.maximum(0.0, gaps[order[begins[many] + counts[many] // 5]])
    few = np.flatnonzero((counts == 2) | (counts == 3))
    if len(few):
        starts, ends = np.searchsorted(run[drawn], few), np.searchsorted(run[drawn], few, side="right")
        for one, start, end in zip(few.tolist(), starts.tolist(), ends.tolist(), strict=True):
            held = [letters.text[place] for place in drawn[start:end].tolist()]
            least = float(gaps[order[begins[one]]])
            if least > 0.06 * sizes[one] and all(text.isalpha() and text.isupper() for text in held):
                tracking[one] = least
    return np.where(tracking <= MOST_APART * sizes, tracking, 0.0)


def _words(letters: Letters, solid: Places, begins: Places) -> list[Word]:
    """Give the words that begin at the places ``begins`` of the letters at the places ``solid``."""
    firsts, boxes = solid[begins], letters.boxes[solid]
    made = zip(
        begins.tolist(),
        [*begins[1:].tolist(), len(solid)],
        np.minimum.reduceat(boxes[:, :2], begins).tolist(),
        np.maximum.reduceat(boxes[:, 2:], begins).tolist(),
        letters.size[firsts].tolist(),
        letters.base[firsts].tolist(),
        letters.style[firsts].tolist(),
        np.logical_or.reduceat(letters.unmapped[solid], begins).tolist(),
        strict=True,
    )
    signs = text_of(letters.codes[solid])
    words = []
    for begin, end, (x0, top), (x1, bottom), size, base, place, unmapped in made:
        text, style = signs[begin:end], letters.styles[place]
        if not (text.isascii() and text.isprintable()):
            text = unicodedata.normalize("NFC", text.translate(WRITTEN))
        box = Box(x0, top, x1, bottom)
        words.append(Word(text, box, size, style.bold, style.color, style.direction, False, base, unmapped))
    return words


def _drop_doubles(words: list[Word]) -> list[Word]:
    """Drop words drawn twice at (nearly) the same place: a poor man's bold."""
    seen: dict[str, dict[tuple[int, int], Word]] = {}
    kept = []
    for word in words:
        x, y = round(word.box.x0 / 2), round(word.box.top / 2)
        alike = seen.get(word.text)
        if alike is None:
            seen[word.text] = {(x, y): word}
        elif (twin := _near(alike, x, y)) is not None:
            twin.bold = True
            continue
        else:
            alike[(x, y)] = word
        kept.append(word)
    return kept


def _near(words: dict[tuple[int, int], Word], x: int, y: int) -> Word | None:
    for place in (
        (x - 1, y - 1), (x - 1, y), (x - 1, y + 1), (x, y - 1), (x, y), (x, y + 1), (x + 1, y - 1), (x + 1, y),
        (x + 1, y + 1),
    ):  # fmt: skip
        if place in words:
            return words[place]
    return None


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
            and word.size < SMALL * base.size
            and word.direction == base.direction == 0
            and len(word.text) <= 4
            and -0.2 * base.size <= word.box.x0 - base.box.x1 <= _reach(word, base, following) * base.size
            and word.box.overlap_y(base.box) > 0
        )
        lift = base.base - word.base if base is not None else 0.0
        if not near or base is None or (_is_level(lift, base) and word.box.x0 - base.box.x1 > GAP_SPACE * word.size):
            kept.append(word)  # "Drift" in large letters, then " 54" in smaller ones: a space of theirs
            continue
        if lift > RAISED * base.size:
            if word.text in DEGREES and word.text != "o" or word.text == "o" and base.text[-1:].isdigit():
                kept[-1] = _grown(base, word, "°")
            elif word.text in PRIMES and base.text[-1:].isdigit():
                kept[-1] = _grown(base, word, PRIMES[word.text])
            elif word.text in POWERS and base.text.casefold().endswith(UNITS_WITH_POWER) and not _is_length(kept):
                kept[-1] = _grown(base, word, POWERS[word.text])
            else:
                kept.append(replace(word, raised=True, base=base.base))
        else:
            kept[-1] = _grown(base, word, word.text)
    return kept


def _is_level(lift: float, base: Word) -> bool:
    """Tell whether a small word stands on the line of the one before it, neither raised nor lowered."""
    return abs(lift) <= LEVEL * base.size


def _is_length(words: list[Word]) -> bool:
    """Tell whether the last word is a length: of 1,000 mm and more what stands above is a note sign and no power.

    Areas in square millimetres are sections of cables, of two or three figures.
    """
    return LENGTH.search(" ".join(word.text for word in words[-3:])) is not None


def _reach(word: Word, base: Word, following: Word | None) -> float:
    """Give how far, in em, a small word may stand from the one it belongs to: a raised sign has a space before it."""
    fraction = following is not None and following.text[:1] in ("/", "⁄")
    if word.text.isdecimal() and base.base - word.base > RAISED * base.size and not fraction:
        return SPACED
    return 0.6 if word.text in DEGREES else 0.14


def _leads(word: Word, following: Word) -> bool:
    """Tell whether the word is a note sign set before the text of a footnote."""
    return (
        word.size < SMALL * following.size
        and word.direction == following.direction == 0
        and len(word.text) <= 2
        and word.text not in DEGREES
        and word.text not in PRIMES
        and following.base - word.base > RAISED * following.size
        and -0.1 * following.size <= following.box.x0 - word.box.x1 <= 0.8 * following.size
    )


def _grown(base: Word, more: Word, text: str) -> Word:
    box = union([base.box, more.box])
    assert box is not None
    return replace(base, text=base.text + text, box=box)
