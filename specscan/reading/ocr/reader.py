"""Pages without a usable text layer → the sheet that a text layer would have given, by optical character recognition.

A page is drawn, turned upright and set straight; lines of text are found and read; the words stand on the sheet as
glyphs at their places, so that everything behind ``glyphs`` works as on any other page. Figures in doubt are noted by
place.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field, replace

import numpy as np
import pypdfium2 as pdfium
from numpy.typing import NDArray

from specscan.reading.letters.glyphs import render_gray
from specscan.reading.letters.sheet import Sheet
from specscan.reading.ocr.doubts import doubt_figures
from specscan.reading.ocr.drawn import find_dots, find_fills, find_rules, without_dark_bars
from specscan.reading.ocr.engine import COMMAND, Engine, Picture, Strip, engine_for, ocr_version
from specscan.reading.ocr.gaps import completed
from specscan.reading.ocr.leaders import find_leaders, without
from specscan.reading.ocr.picture import (
    POINTS,
    Frame,
    Mask,
    dark_ink,
    refined_skew,
    scaled,
    skew_of,
    straight_corners,
    straightened,
    turned,
)
from specscan.reading.ocr.rules import OcrRules
from specscan.reading.ocr.sheet import Doubt, Line, Printed, put_on
from specscan.reading.ocr.signs import find_signs
from specscan.reading.ocr.strips import FIGURE, ReadStrip, read_words
from specscan.records.errors import DocumentError
from specscan.records.text import Box, Passage

SIDE_LEAST, SIDE_MOST = 1600, 4200  # pixels of the longer side: small scans are drawn larger, posters smaller
TALL = 1.5  # height over width from which on a strip may be turned text
TURNS = (0, 90, 270)


@dataclass(slots=True)
class Scan:
    """A page read from its picture: its sheet, how that lies on the page, what is in doubt, how sure the rest is."""

    sheet: Sheet
    frame: Frame
    printed: Printed = field(default_factory=Printed)

    @property
    def doubts(self) -> list[Doubt]:
        """Give the figures that were not read with certainty."""
        return self.printed.doubts

    @property
    def sure(self) -> float:
        """Give the mean likelihood of the signs."""
        return self.printed.sure

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


LARGEST_PAGE = 14_400  # points (ISO 32000-1, Annex C)


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
            DocumentError: the recogniser cannot be loaded, or fails on this page.
        """
        if max(sheet.width, sheet.height) > LARGEST_PAGE:
            raise DocumentError(f"it is larger than {LARGEST_PAGE} points a side, more than PDF allows")
        self.begins_page()
        engine = engine_for(self.rules.characters, tuple(self.rules.same_as.items()), self.rules.picture.threads)
        longest = max(sheet.width, sheet.height, 1.0) / POINTS
        dpi = min(max(float(self.rules.picture.dpi), SIDE_LEAST / longest), SIDE_MOST / longest)
        width, height, pixels, scale = render_gray(document, sheet.number, dpi / POINTS)
        picture = np.frombuffer(pixels, np.uint8).reshape(height, width)
        try:
            return _PageReader(engine, self.rules, scale * POINTS).read(picture, sheet.number)
        except DocumentError:
            raise
        except Exception as error:  # the libraries that look at pictures fail in many ways; the other pages stand
            raise DocumentError(f"the recogniser fails on its picture ({type(error).__name__})") from error


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
        fills = find_fills(picture, self.dpi)
        ink = without_dark_bars(dark_ink(picture, self.dpi), fills, self.dpi)
        s = self.scale
        texts = [Box(line.x0 * s, line.top * s, line.x1 * s, line.bottom * s) for line in lines]
        strokes, ruled = find_rules(picture, ink, texts, self.dpi)
        bare = ink & ~ruled
        leaders = find_leaders(bare, self.dpi)
        signs = find_signs(picture, bare, self.dpi)
        cleared = without([*leaders, *(box for box, _ in signs)], picture, self.dpi)
        self._read_lines(lines, cleared, ruled)
        frame = Frame(width * s, height * s, turn, skew)
        sheet = Sheet(number, frame.width, frame.height, strokes=strokes, fills=fills)
        printed = put_on(sheet, lines, leaders, signs, self.dpi)
        letters = [Box(*box) for box in sheet.letters.boxes.tolist()]
        sheet.strokes = completed(strokes, picture, letters, self.dpi)
        sheet.dots = find_dots(bare, letters, self.dpi)
        return Scan(sheet, frame, printed)

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
        read = read_words(strip, crop, ruled, self.rules)
        doubt_figures(read, self.rules, second)
        return read

    def _turned_strip(self, crop: Picture, upright: Strip) -> tuple[Strip, int]:
        """Give the best reading of a strip that is taller than wide, and the turn that it needs."""
        tries = [upright, *self.engine.read([turned(crop, degrees) for degrees in TURNS[1:]])]
        # A single narrow digit is tall too: text that is turned has several signs.
        sure = [strip.sure * (1.0 if len(strip.signs) > 1 or not index else 0.5) for index, strip in enumerate(tries)]
        best = max(range(len(tries)), key=lambda index: sure[index])
        return tries[best], TURNS[best]


def _lies_on_side(corners: NDArray[np.float32]) -> bool:
    """Tell whether more of the text runs up or down the page than across."""
    across = np.linalg.norm(corners[:, 1] - corners[:, 0], axis=1)
    down = np.linalg.norm(corners[:, 3] - corners[:, 0], axis=1)
    return bool(down[down > TALL * across].sum() > across[across > TALL * down].sum())
