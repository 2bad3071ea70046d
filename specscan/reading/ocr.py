"""Pages without a usable text layer → the sheet that a text layer would have given, by optical character recognition.

A page is drawn, turned upright and set straight; lines of text are found and read; the words stand on the sheet as
glyphs at their places, so that everything behind ``glyphs`` works as on any other page. Figures in doubt are noted by
place.
"""

from __future__ import annotations

import math
import statistics
from collections.abc import Callable
from dataclasses import dataclass, field, replace

import numpy as np
import pypdfium2 as pdfium
from numpy.typing import NDArray

from specscan.reading.glyphs import Glyph, Sheet, Style, render_gray
from specscan.reading.ocr_engine import COMMAND, Engine, Picture, Strip, engine_for, ocr_version
from specscan.reading.ocr_picture import (
    POINTS,
    Frame,
    Mask,
    dark_ink,
    find_dots,
    find_rules,
    refined_skew,
    scaled,
    skew_of,
    straight_corners,
    straightened,
    strip_ink,
    strip_is_reversed,
    turned,
)
from specscan.reading.ocr_rules import OcrRules
from specscan.reading.ocr_strips import FIGURE, ReadStrip, StripWord, read_words
from specscan.records.text import Box, Passage, union

SIDE_LEAST, SIDE_MOST = 1600, 4200  # pixels of the longer side: small scans are drawn larger, posters smaller
TALL = 1.5  # height over width from which on a strip may be turned text
ASCENT, DESCENT = 0.93, 0.23  # em above and below the baseline that a glyph's cell takes
SAME_SIZE = 0.09
BOLD = 1.25  # times the usual thickness of strokes
EDGE = 0.8  # pixels of a stroke's thickness that are blur
PEERS = 6  # words of one size that show its usual thickness
TURNS = (0, 90, 270)


@dataclass(frozen=True, slots=True)
class Doubt:
    """A figure that was not read with certainty, where, and why."""

    box: Box
    text: str
    why: str


@dataclass(slots=True)
class Scan:
    """A page read from its picture: its sheet, how that lies on the page, what is in doubt, how sure the rest is."""

    sheet: Sheet
    frame: Frame
    doubts: list[Doubt] = field(default_factory=list)
    sure: float = 0.0

    def placed(self, passage: Passage) -> Passage:
        """Give a passage of this page with its boxes on the page as displayed, and its doubtful characters named."""
        heads = {
            name: head
            for name in ("row", "column")
            if (head := getattr(passage, name)) is not None and head.box is not None
        }
        places = [*(piece.box for piece in passage.pieces), *(head.box for head in heads.values())]
        doubts = tuple(
            self.frame.back(doubt.box)
            for doubt in self.doubts
            if any(place.holds(*doubt.box.middle) for place in places)
        )
        pieces = tuple(replace(piece, box=self.frame.back(piece.box)) for piece in passage.pieces)
        moved = {name: replace(head, box=self.frame.back(head.box)) for name, head in heads.items()}
        return replace(passage, pieces=pieces, doubts=doubts, **moved)


@dataclass(slots=True)
class Line:
    """A strip of text on the straight page, in pixels; ``turn`` is by how much it is turned to be upright."""

    x0: int
    top: int
    x1: int
    bottom: int
    turn: int = 0
    read: ReadStrip | None = None


class OcrReader:
    """Reads pages as pictures. Loading the recogniser waits until the first page."""

    def __init__(self, rules: OcrRules, begins_page: Callable[[], None] = lambda: None):
        """``begins_page`` is called before each page, so that whoever waits knows that it takes longer."""
        self.rules = rules
        self.begins_page = begins_page

    @property
    def available(self) -> bool:
        """Tell whether the ``ocr`` extra is installed."""
        return bool(ocr_version())

    @property
    def command(self) -> str:
        """Give the command that installs what reads pictures."""
        return COMMAND

    def read(self, document: pdfium.PdfDocument, sheet: Sheet) -> Scan:
        """Read the page of ``sheet`` from its picture.

        Raises:
            DocumentError: the recogniser cannot be loaded.
        """
        self.begins_page()
        engine = engine_for(self.rules.characters, self.rules.picture.threads)
        longest = max(sheet.width, sheet.height, 1.0) / POINTS
        dpi = min(max(float(self.rules.picture.dpi), SIDE_LEAST / longest), SIDE_MOST / longest)
        width, height, pixels = render_gray(document, sheet.number, dpi / POINTS)
        picture = np.frombuffer(pixels, np.uint8).reshape(height, width)
        return _PageReader(engine, self.rules, dpi).read(picture, sheet.number)


class _PageReader:
    def __init__(self, engine: Engine, rules: OcrRules, dpi: float):
        self.engine, self.rules, self.dpi = engine, rules, dpi
        self.scale = POINTS / dpi

    def read(self, picture: Picture, number: int) -> Scan:
        corners = self._find(picture)
        first = 90 if _lies_on_side(corners) else 0
        scan = self._read_turned(picture, number, first, corners if not first else None)
        if scan.sure < self.rules.picture.turned_below and len(corners):
            other = self._read_turned(picture, number, first + 180)
            scan = max(scan, other, key=lambda one: one.sure)
        return scan

    def _read_turned(
        self, picture: Picture, number: int, turn: int, corners: NDArray[np.float32] | None = None
    ) -> Scan:
        """Read the page as it looks when turned clockwise by ``turn`` degrees."""
        picture = turned(picture, turn)
        corners = self._find(picture) if corners is None else corners
        height, width = picture.shape
        skew = refined_skew(dark_ink(picture, self.dpi), skew_of(corners))
        picture = straightened(picture, skew)
        lines = self._lines(straight_corners(corners, skew, width, height), width, height)
        ink = dark_ink(picture, self.dpi)
        s = self.scale
        texts = [Box(line.x0 * s, line.top * s, line.x1 * s, line.bottom * s) for line in lines]
        strokes, ruled = find_rules(ink, texts, self.dpi)
        self._read_lines(lines, picture, ruled)
        frame = Frame(width * s, height * s, turn, skew)
        scan = Scan(Sheet(number, frame.width, frame.height, strokes=strokes), frame)
        self._fill(scan, lines)
        scan.sheet.dots = find_dots(ink & ~ruled, [glyph.box for glyph in scan.sheet.glyphs], self.dpi)
        return scan

    def _find(self, picture: Picture) -> NDArray[np.float32]:
        factor = min(1.0, self.rules.picture.find_dpi / self.rules.picture.dpi)
        return self.engine.find(scaled(picture, factor)) / factor

    def _lines(self, corners: NDArray[np.float32], width: int, height: int) -> list[Line]:
        lines = []
        for quad in corners:
            x0, x1 = (quad[0, 0] + quad[3, 0]) / 2, (quad[1, 0] + quad[2, 0]) / 2
            top, bottom = (quad[0, 1] + quad[1, 1]) / 2, (quad[3, 1] + quad[2, 1]) / 2
            line = Line(max(0, int(x0)), max(0, int(top)), min(width, int(x1) + 1), min(height, int(bottom) + 1))
            if line.x1 - line.x0 >= 3 and line.bottom - line.top >= 3:
                lines.append(line)
        return lines

    def _cut(self, picture: Picture, line: Line, turn: int) -> Picture:
        return turned(picture[line.top : line.bottom, line.x0 : line.x1], turn)

    def _read_lines(self, lines: list[Line], picture: Picture, ruled: Mask) -> None:
        """Read every strip, those with figures twice."""
        crops = [self._cut(picture, line, 0) for line in lines]
        strips = self.engine.read(crops)
        for index, line in enumerate(lines):
            if line.bottom - line.top >= TALL * (line.x1 - line.x0):
                strips[index], line.turn = self._turned_strip(crops[index], strips[index])
                crops[index] = turned(crops[index], line.turn)
        factor = self.rules.picture.second_dpi / self.rules.picture.dpi
        again = [i for i, strip in enumerate(strips) if FIGURE.search(strip.text)]
        seconds = dict(zip(again, self.engine.read([scaled(crops[i], factor) for i in again]), strict=True))
        for index, (line, strip) in enumerate(zip(lines, strips, strict=True)):
            if not strip.signs or strip.sure < self.rules.certainty.word:
                continue
            covered = turned(ruled[line.top : line.bottom, line.x0 : line.x1].view(np.uint8), line.turn).astype(bool)
            line.read = self._read(strip, crops[index], covered, seconds.get(index))

    def _read(self, strip: Strip, crop: Picture, ruled: Mask, second: Strip | None) -> ReadStrip:
        ink = strip_ink(crop, ruled)
        read = read_words(strip, ink, self.rules, second)
        read.light = strip_is_reversed(crop)
        return read

    def _turned_strip(self, crop: Picture, upright: Strip) -> tuple[Strip, int]:
        """Give the best reading of a strip that is taller than wide, and the turn that it needs."""
        tries = [upright, *self.engine.read([turned(crop, degrees) for degrees in TURNS[1:]])]
        # A single narrow digit is tall too: text that is turned has several signs.
        sure = [strip.sure * (1.0 if len(strip.signs) > 1 or not index else 0.5) for index, strip in enumerate(tries)]
        best = max(range(len(tries)), key=lambda index: sure[index])
        return tries[best], TURNS[best]

    # onto the sheet

    def _fill(self, scan: Scan, lines: list[Line]) -> None:
        read = [(line, line.read) for line in lines if line.read is not None]
        if not read:
            return
        sizes = _settled_sizes([one.size for _, one in read], [len(one.words) for _, one in read])
        bold = _bold([one for _, one in read], sizes)
        certain = []
        for (line, one), size, heavy in zip(read, sizes, bold, strict=True):
            style = Style(
                font="ocr",
                bold=heavy,
                color=(255, 255, 255) if one.light else (0, 0, 0),
                direction=(360 - line.turn) % 360,
                em=size * self.scale,
            )
            for word in one.words:
                glyphs = self._glyphs(line, one, word, style)
                scan.sheet.glyphs.extend(glyphs)
                scan.sheet.glyphs.append(replace(glyphs[-1], text=" ", start=glyphs[-1].stop, stop=glyphs[-1].stop))
                certain.extend([word.sure] * len(glyphs))
                box = union([glyph.box for glyph in glyphs])
                if word.doubt and box is not None:
                    scan.doubts.append(Doubt(box, word.text, word.doubt))
        scan.sure = statistics.mean(certain) if certain else 0.0

    def _glyphs(self, line: Line, read: ReadStrip, word: StripWord, style: Style) -> list[Glyph]:
        """Spread the characters of a word over its box."""
        start, stop = word.places[0].x0, word.places[-1].x1
        if len(word.text) == len(word.places):
            between = [(a.x1 + b.x0) / 2 for a, b in zip(word.places, word.places[1:], strict=False)]
            bounds = [start, *between, stop]
        else:
            bounds = [start + (stop - start) * index / len(word.text) for index in range(len(word.text) + 1)]
        em = style.em / self.scale
        return [
            self._glyph(line, sign, left, right, read.base, em, style)
            for sign, left, right in zip(word.text, bounds, bounds[1:], strict=False)
        ]

    def _glyph(self, line: Line, sign: str, left: float, right: float, base: float, em: float, style: Style) -> Glyph:
        top, bottom = base - ASCENT * em, base + DESCENT * em
        s = self.scale
        if line.turn == 270:  # it was turned counterclockwise to be read: it reads downwards
            box = Box((line.x1 - bottom) * s, (line.top + left) * s, (line.x1 - top) * s, (line.top + right) * s)
            start, stop, across = box.top, box.bottom, -(line.x1 - base) * s
        elif line.turn == 90:
            box = Box((line.x0 + top) * s, (line.bottom - right) * s, (line.x0 + bottom) * s, (line.bottom - left) * s)
            start, stop, across = -box.bottom, -box.top, (line.x0 + base) * s
        else:
            box = Box((line.x0 + left) * s, (line.top + top) * s, (line.x0 + right) * s, (line.top + bottom) * s)
            start, stop, across = box.x0, box.x1, (line.top + base) * s
        return Glyph(sign, box, start, stop, across, style.em, style, False, False)


def _lies_on_side(corners: NDArray[np.float32]) -> bool:
    """Tell whether more of the text runs up or down the page than across."""
    across = np.linalg.norm(corners[:, 1] - corners[:, 0], axis=1)
    down = np.linalg.norm(corners[:, 3] - corners[:, 0], axis=1)
    return bool(down[down > TALL * across].sum() > across[across > TALL * down].sum())


def _settled_sizes(sizes: list[float], weights: list[int]) -> list[float]:
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


def _bold(read: list[ReadStrip], sizes: list[float]) -> list[bool]:
    """Tell which strips are set bold: with thicker strokes than most words of their size on the page."""
    slender = [max(0.1, one.thickness - EDGE) / one.size for one in read]
    usual = {}
    for size in set(sizes):
        peers = [s for s, one, own in zip(slender, read, sizes, strict=True) if own == size for _ in one.words]
        usual[size] = statistics.median(peers) if len(peers) >= PEERS else math.inf
    return [
        s > BOLD * usual[size] and sum(letter.isalpha() for word in one.words for letter in word.text) >= 3
        for s, one, size in zip(slender, read, sizes, strict=True)
    ]
