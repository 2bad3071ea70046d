"""Recognised strips → glyphs on a sheet, as a text layer would have them: size, weight, baseline, raised signs."""

from __future__ import annotations

import math
import statistics
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from itertools import accumulate

from specscan.reading.letters.sheet import Glyph, Letters, Sheet, Style
from specscan.reading.ocr.align import Place
from specscan.reading.ocr.leaders import leader_glyphs
from specscan.reading.ocr.picture import ASCENT, DESCENT, POINTS
from specscan.reading.ocr.signs import sign_glyphs
from specscan.reading.ocr.strips import ReadStrip, StripWord
from specscan.records.text import Box, union

SAME_SIZE = 0.04  # share: sizes that differ by less are one; nearly three times the spread of what is measured
SAME_ROW = 0.16  # em: strips whose baselines differ by less stand in one row
BOLD = 1.17  # times the thickness of strokes that a quarter of the words have at most
HALF_WAY = 0.6  # of the way to what the heavier words of the page have
SHORT_BOLD = 1.3  # BOLD for codes and words of two letters, which measure less well
PEERS = 6  # words that show the usual thickness of strokes
RAISED = 0.62  # font size of a raised sign, as a share of its line's


@dataclass(frozen=True, slots=True)
class Doubt:
    """A figure that was not read with certainty, where, and why."""

    box: Box
    text: str
    why: str


@dataclass(slots=True)
class Line:
    """A strip of text on the straight page, in pixels; ``turn`` is by how much it is turned to be upright."""

    x0: int
    top: int
    x1: int
    bottom: int
    turn: int = 0
    read: ReadStrip | None = None


@dataclass(frozen=True, slots=True)
class Spelled:
    """A word as it was read: how likely its least likely sign is, and its first and behind its last glyph."""

    text: str
    sure: float
    first: int
    last: int


@dataclass(slots=True)
class Printed:
    """What was put on a sheet: its glyphs and words, the figures in doubt, the mean likelihood of the signs."""

    glyphs: list[Glyph] = field(default_factory=list)
    words: list[Spelled] = field(default_factory=list)
    doubts: list[Doubt] = field(default_factory=list)
    sure: float = 0.0


def put_on(
    sheet: Sheet, lines: list[Line], leaders: Sequence[Box], signs: Sequence[tuple[Box, str]], dpi: float
) -> Printed:
    """Add the words of lines, rows of leader dots and signs (pixels) to a sheet, and give what was put there."""
    read = [(line, line.read) for line in lines if line.read is not None and line.read.words]
    if not read:
        return Printed()
    scale = POINTS / dpi
    sizes = settled_sizes(_guessed(read), [len(one.words) for _, one in read])
    bold = _bold([one for _, one in read], sizes)
    _settle_bases(read, sizes)
    printed = Printed()
    certain: list[float] = []
    placed = printed.glyphs
    for (line, one), size, heavy in zip(read, sizes, bold, strict=True):
        style = Style(
            font="ocr",
            bold=heavy,
            color=(255, 255, 255) if one.light else (0, 0, 0),
            direction=(360 - line.turn) % 360,
            em=size * scale,
        )
        for word in one.words:
            glyphs = _glyphs(line, one, word, style, scale)
            least = min(place.sign.sure for place in word.places)
            printed.words.append(Spelled(word.text, least, len(placed), len(placed) + len(word.text)))
            placed.extend(glyphs)
            placed.append(replace(glyphs[-1], text=" ", start=glyphs[-1].stop))
            certain.extend([word.sure] * len(glyphs))
            box = union([glyph.box for glyph in glyphs])
            if word.doubt and box is not None:
                printed.doubts.append(Doubt(box, word.text, word.doubt))
    level = [
        (Box(line.x0, line.top, line.x1, line.bottom), line.top + one.base, size)
        for (line, one), size in zip(read, sizes, strict=True)
        if not line.turn
    ]
    placed += leader_glyphs(leaders, level, scale)
    placed += sign_glyphs(signs, level, scale)
    sheet.letters = Letters.of(placed)
    printed.sure = statistics.mean(certain)
    return printed


def _glyphs(line: Line, read: ReadStrip, word: StripWord, style: Style, scale: float) -> list[Glyph]:
    """Spread the characters of a word over its box; raised signs behind it stand on their own."""
    em = style.em / scale
    glyphs = [
        _glyph(line, sign, left, right, read.base, em, style, scale)
        for sign, left, right in zip(word.text, *_bounds(word.text, word.places), strict=True)
    ]
    if word.raised:
        small = replace(style, em=RAISED * style.em)
        text = "".join(place.sign.text for place in word.raised)
        base = statistics.median(place.bottom for place in word.raised)
        glyphs += [
            _glyph(line, sign, left, right, base, RAISED * em, small, scale)
            for sign, left, right in zip(text, *_bounds(text, word.raised), strict=True)
        ]
    return glyphs


def _bounds(text: str, places: list[Place]) -> tuple[list[float], list[float]]:
    """Give where the cell of each character begins and ends."""
    start, stop = places[0].x0, max(places[-1].x1, places[0].x0 + 1)
    if len(text) == len(places):
        between = [(a.x1 + b.x0) / 2 for a, b in zip(places, places[1:], strict=False)]
    else:
        between = [start + (stop - start) * index / len(text) for index in range(1, len(text))]
    edges = list(accumulate([start, *between, stop], max))  # a sign without ink may seem to stand before its neighbour
    return edges[:-1], edges[1:]


def _glyph(
    line: Line, sign: str, left: float, right: float, base: float, em: float, style: Style, scale: float
) -> Glyph:
    top, bottom = base - ASCENT * em, base + DESCENT * em
    if line.turn == 270:  # it was turned counterclockwise to be read: it reads downwards
        edges = line.x1 - bottom, line.top + left, line.x1 - top, line.top + right
        start, stop, across = edges[1], edges[3], base - line.x1
    elif line.turn == 90:
        edges = line.x0 + top, line.bottom - right, line.x0 + bottom, line.bottom - left
        start, stop, across = -edges[3], -edges[1], line.x0 + base
    else:
        edges = line.x0 + left, line.top + top, line.x0 + right, line.top + bottom
        start, stop, across = edges[0], edges[2], line.top + base
    box = Box(*(edge * scale for edge in edges))
    return Glyph(sign, box, start * scale, stop * scale, across * scale, style.em, style, False, False)


def settled_sizes(sizes: list[float], weights: list[int]) -> list[float]:
    """Give nearly equal font sizes one value, so that measuring does not make headings of plain lines.

    The size around which most words lie takes all that are nearly equal to it, then the next of the rest.
    """
    settled = list(sizes)
    left = set(range(len(sizes)))
    while left:
        near = {i: [j for j in left if abs(sizes[j] - sizes[i]) <= SAME_SIZE * sizes[i]] for i in left}
        middle = max(left, key=lambda i: sum(weights[j] for j in near[i]))
        group = near[middle]
        mean = sum(sizes[j] * weights[j] for j in group) / sum(weights[j] for j in group)
        for j in group:
            settled[j] = mean
        left.difference_update(group)
    return settled


def _guessed(read: list[tuple[Line, ReadStrip]]) -> list[float]:
    """Give the size of each strip; where nothing in it could be measured, a dash say, that of the text in its row."""
    known = [(line.top + one.base, one.size) for line, one in read if one.measured and not line.turn]
    sizes = []
    for line, one in read:
        size = one.size
        if known and not one.measured and not line.turn:
            middle = (line.top + line.bottom) / 2
            base, near = min(known, key=lambda row: abs(row[0] - 0.36 * row[1] - middle))
            size = near if abs(base - 0.36 * near - middle) < 0.5 * near else size
        sizes.append(size)
    return sizes


def _settle_bases(read: list[tuple[Line, ReadStrip]], sizes: list[float]) -> None:
    """Put strips side by side whose baselines nearly agree on one: parts of a row were found and measured apart."""
    strips = zip(read, sizes, strict=True)
    level = [(line.top + one.base, size, line, one) for (line, one), size in strips if not line.turn]
    level.sort(key=lambda row: row[0])
    row: list[tuple[float, float, Line, ReadStrip]] = []
    for strip in [*level, None]:
        if row and (strip is None or strip[0] - row[0][0] > SAME_ROW * row[0][1]):
            base = statistics.median(own for own, _, _, _ in row)
            for _, _, line, one in row:
                one.base = base - line.top
            row = []
        if strip is not None:
            row.append(strip)


def _bold(read: list[ReadStrip], sizes: list[float]) -> list[bool]:
    """Tell which strips are set bold: with thicker strokes than the thinner words of the page, whatever their size.

    A table may have more words in its heads than in its cells: a quarter is thought to be plain.
    """
    slender = [max(0.01, one.thickness) / size for one, size in zip(read, sizes, strict=True)]
    peers = [s for s, one in zip(slender, read, strict=True) if not one.light for _ in one.words]
    usual = statistics.quantiles(peers, n=4)[0] if len(peers) >= PEERS else math.inf
    heavy = [s / usual for s in slender if s > BOLD * usual]
    least = max(BOLD, 1 + HALF_WAY * (statistics.median(heavy) - 1)) if heavy else BOLD
    signs = [[sign for word in one.words for sign in word.text if sign.isalnum()] for one in read]
    return [
        s > (least if sum(sign.isalpha() for sign in own) >= 3 else max(least, SHORT_BOLD)) * usual and len(own) >= 2
        for s, own in zip(slender, signs, strict=True)
    ]
