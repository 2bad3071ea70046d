"""Numbered captions around a drawing, "7  HOUSE BATTERY" over some short lines: each is read by itself."""

from __future__ import annotations

import re
from collections import defaultdict

from specscan.reading.layout.item import Item
from specscan.reading.letters.words import Line, Word, build_lines, segments_of
from specscan.reading.tables.alignment import SEGMENT_GAP
from specscan.records.text import Kind

NUMBERED = re.compile(r"(\d{1,2})[.)]?")
LEAST = 5  # captions of a drawing
MOST_WORDS, MOST_LINES = 5, 8  # of a caption, and below it
FLUSH = 2.0  # points by which lines below each other may begin apart
LEADING = 2.0  # times the size of its letters, from one line to the next
LARGER = 1.1  # times the size of the lines below
BESIDE = 0.15  # of the lines, beside which something else may stand

Callout = tuple[Line, list[Line]]  # the caption without its number, and the lines below it


def part_callouts(words: list[Word]) -> tuple[list[Word], list[Callout]]:
    """Give the words of a page that are no call-outs of a drawing, and those by their numbers.

    Captions are told by their numbers, which count from 1 without a gap, and by standing in columns of their own with
    nothing beside their lines: what is numbered down a page is its chapters.
    """
    if not _are_counted(words):
        return words, []  # nearly all pages, which need not be put into lines for this
    parts = [part for line in build_lines(words) for part in segments_of(line, SEGMENT_GAP)]
    styles: dict[tuple[float, bool], list[tuple[int, Line]]] = defaultdict(list)
    for part in parts:
        number = NUMBERED.fullmatch(part.words[0].text)
        if number is not None and 1 < len(part.words) <= MOST_WORDS + 1 and not _has_figure(part.words[1:]):
            styles[round(part.size, 1), part.bold].append((int(number.group(1)), part))
    for captions in styles.values():
        captions.sort(key=lambda pair: pair[0])
        if len(captions) < LEAST or [number for number, _ in captions] != list(range(1, len(captions) + 1)):
            continue
        found = [(caption, _below(caption, parts)) for _, caption in captions]
        if all(below for _, below in found) and _stand_around(found, parts):
            taken = {id(word) for caption, below in found for line in (caption, *below) for word in line.words}
            rest = [word for word in words if id(word) not in taken]
            return rest, [(Line(caption.words[1:]), below) for caption, below in found]
    return words, []


def items_of_callout(callout: Callout) -> list[Item]:
    """Give a call-out as a heading over the items of a list; a line in small letters goes on with the one above."""
    caption, below = callout
    items = [Item(Kind.HEADING, [caption], level=caption.size, strong=caption.bold)]
    for line in below:
        last = items[-1]
        open_end = last.kind is Kind.BULLET and last.lines[-1].text.endswith((":", ",", "-", "–"))
        if last.kind is Kind.BULLET and (open_end or line.text[:1].islower()):
            last.lines.append(line)
        else:
            items.append(Item(Kind.BULLET, [line], level=line.box.x0))
    return items


def _are_counted(words: list[Word]) -> bool:
    """Tell whether the numbers of the fewest captions stand among some words."""
    numbers = {int(match.group(1)) for word in words if (match := NUMBERED.fullmatch(word.text)) is not None}
    return numbers.issuperset(range(1, LEAST + 1))


def _has_figure(words: tuple[Word, ...]) -> bool:
    return any(letter.isdigit() for word in words for letter in word.text) or not words[0].text[:1].isalpha()


def _below(caption: Line, parts: list[Line]) -> list[Line]:
    """Give the lines right below a caption, which are smaller or thinner and begin where it does."""
    found: list[Line] = []
    for part in parts:
        last = found[-1] if found else caption
        down = part.base - last.base
        if not 0 < down <= LEADING * caption.size or abs(part.box.x0 - caption.box.x0) > FLUSH:
            continue
        if not (caption.bold and not part.bold or caption.size >= LARGER * part.size):
            break
        found.append(part)
    return found if len(found) <= MOST_LINES else []


def _stand_around(found: list[Callout], parts: list[Line]) -> bool:
    """Tell whether captions stand in columns, some beside each other, and hardly anything else beside their lines."""
    lefts = sorted(caption.box.x0 for caption, _ in found)
    columns = 1 + sum(right - left > FLUSH for left, right in zip(lefts, lefts[1:], strict=False))
    own = [line for caption, below in found for line in (caption, *below)]
    members = {id(line) for line in own}
    others = [part for part in parts if id(part) not in members]
    beside = sum(any(abs(part.base - line.base) < 1 for part in others) for line in own)
    return columns > 1 and beside <= BESIDE * len(own)
