"""Titles that share their line with a tagline in smaller, lighter letters: "DRIFT 19  two seats, two beds"."""

from __future__ import annotations

import itertools
import re
from collections.abc import Sequence

from specscan.reading.letters.words import Line, Word, segments_of

SMALLER = 0.85  # times the size of the title, at most
SAME_SIZE = 0.05  # of the size: words of one title
MOST_WORDS = 6
LEAST_WORDS, SMALL_SHARE = 3, 0.5  # of a tagline; of its words: those that begin with a small letter
FAR_LARGER, LEAST_BESIDE = 1.6, 2  # times all beside it: a title; words that say what paper it is, at its right
CODE = re.compile(r"[A-Z]{1,3}[ -]?\d")  # of a van: "KD19", "KD 19 S"
AT_OTHER_SIDE = 4.0  # times the size of a title, between it and a word at the other side of the page
LEAST_LETTERS = 3  # of one word of a title: "5.4 m" is a figure on display
GAP = 0.8  # em between columns
MOST_BESIDE = 5  # words behind a title that say whose it is
STOPS = (".", ":", ",", ";")  # "Heat:" opens a paragraph


def part_tagline(line: Line) -> tuple[Line, Line] | None:
    """Give the title and the tagline of a line that has both, else ``None``.

    The title is set bold and larger than all behind it, which is not bold.
    """
    first = line.words[0]
    count = next((n for n, word in enumerate(line.words) if not _is_alike(word, first)), len(line.words))
    title, rest = line.words[:count], line.words[count:]
    if not rest or not 0 < count <= MOST_WORDS or not first.text[:1].isalpha():
        return None
    worded = any(sum(map(str.isalpha, word.text)) >= LEAST_LETTERS for word in title)
    if not worded and CODE.match(" ".join(word.text for word in title)) is None:
        return None
    if title[-1].text.endswith(STOPS) or any(word.bold or word.size > SMALLER * first.size for word in rest):
        return None
    tagline = Line(rest)
    return (Line(title), tagline) if _is_phrase(tagline) or _says_what_paper(title[-1], tagline) else None


def is_led_by_title(line: Line, least: float) -> bool:
    """Tell whether a line is a title of at least a size and, in smaller letters, whose it is: "Drift 19 by Marrowfen".

    Neither part is more than half of the line, whose own size and weight then say nothing.
    """
    first = line.words[0]
    title = list(itertools.takewhile(lambda word: _is_alike(word, first), line.words))
    rest = line.words[len(title) :]
    if not 0 < len(title) <= MOST_WORDS or not 1 < len(rest) <= MOST_BESIDE or first.size < least:
        return False
    smaller = not any(word.bold or word.size >= (1 - SAME_SIZE) * first.size for word in rest)
    named = rest[0].text.islower() and rest[-1].text[:1].isupper() and rest[0].text.isalpha()
    figures = any(map(str.isdigit, "".join(word.text for word in rest)))
    return smaller and named and not figures and not rest[-1].text.endswith(STOPS) and len(segments_of(line, GAP)) == 1


def part_large(lines: Sequence[Line]) -> tuple[list[Line], list[Line]] | tuple[()]:
    """Give the lines of a title and those in smaller letters right below it, nothing where there are no two sizes."""
    small = [line.size <= SMALLER * lines[0].size for line in lines]
    count = small.index(True) if any(small) else 0
    return (list(lines[:count]), list(lines[count:])) if count and all(small[count:]) else ()


def _is_phrase(rest: Line) -> bool:
    """Tell whether words say something in one piece: they are neither heads of columns nor a further part of a name,
    "Shore 2027" in lighter letters."""
    small = sum(word.text[:1].islower() for word in rest.words)
    worded = len(rest.words) >= LEAST_WORDS and small >= SMALL_SHARE * len(rest.words)
    return worded and len(segments_of(rest, GAP)) == 1


def _says_what_paper(title: Word, rest: Line) -> bool:
    """Tell whether words apart from a far larger title, as a company's name is, are one phrase: "Order guide"."""
    gap = rest.box.x0 - title.box.x1
    apart = gap > GAP * title.size
    words = sum(word.text.isalpha() and len(word.text) >= LEAST_LETTERS for word in rest.words)
    worded = words >= (1 if gap > AT_OTHER_SIDE * title.size else LEAST_BESIDE)
    far_larger = all(title.size >= FAR_LARGER * word.size for word in rest.words)
    return apart and worded and far_larger and len(segments_of(rest, GAP)) == 1


def _is_alike(word: Word, first: Word) -> bool:
    return word.bold and abs(word.size - first.size) <= SAME_SIZE * first.size
