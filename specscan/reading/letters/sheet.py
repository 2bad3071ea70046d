"""One page as drawn: its letters, strokes, filled boxes and pictures, all in points from the top left corner."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace
from functools import cache
from typing import Any, Self

import numpy as np
from numpy.typing import NDArray

from specscan.records.text import Box

Numbers = NDArray[np.float64]
Flags = NDArray[np.bool_]

# From the file's coordinates to those of the page as displayed; for numbers or for arrays of them.
Turn = Callable[[Any, Any], tuple[Any, Any]]


@dataclass(slots=True)
class Style:
    """How the glyphs of one text object are drawn."""

    font: str = ""
    bold: bool = False
    color: tuple[int, int, int] = (0, 0, 0)
    hidden: bool = False
    direction: int = 0  # 0, 90, 180 or 270 degrees, clockwise, of the reading direction
    em: float = 0.0  # font size as displayed; 0 where pdfium does not say


@dataclass(slots=True)
class Glyph:
    """One character: its cell from origin to advance, its baseline and its style.

    ``x0``, ``top``, ``x1``, ``bottom`` are on the page; ``start``, ``stop`` and ``base`` are the same
    measures along and across the reading direction, so that turned text is handled like upright text.
    """

    text: str
    box: Box
    start: float
    stop: float
    base: float
    size: float
    style: Style
    generated: bool
    unmapped: bool


@dataclass(slots=True)
class Letters:
    """The characters of a page in the order in which they are drawn: one array for each measure of ``Glyph``.

    Columns, because a page has a thousand characters and an object for each would be most of the work of reading it.
    ``boxes`` has a row of x0, top, x1, bottom for each character, ``style`` the place of its style in ``styles``;
    ``space`` tells white space.
    """

    text: str
    codes: NDArray[np.uint32]  # of ``text``
    boxes: Numbers
    start: Numbers
    stop: Numbers
    base: Numbers
    size: Numbers
    style: NDArray[np.int64]
    styles: list[Style]
    generated: Flags
    unmapped: Flags
    space: Flags

    @classmethod
    def of(cls, glyphs: Sequence[Glyph] = ()) -> Self:
        """Give characters that were made one by one; a glyph of several letters gives each its share of its cell."""
        parts = [part for glyph in glyphs for part in _parts(glyph)]
        styles = {id(glyph.style): glyph.style for glyph in parts}
        index = {key: place for place, key in enumerate(styles)}
        boxes = [(glyph.box.x0, glyph.box.top, glyph.box.x1, glyph.box.bottom) for glyph in parts]
        codes = np.array([ord(glyph.text) for glyph in parts], np.uint32)
        return cls(
            text="".join(glyph.text for glyph in parts),
            codes=codes,
            boxes=np.array(boxes, np.float64).reshape(-1, 4),
            start=np.array([glyph.start for glyph in parts], np.float64),
            stop=np.array([glyph.stop for glyph in parts], np.float64),
            base=np.array([glyph.base for glyph in parts], np.float64),
            size=np.array([glyph.size for glyph in parts], np.float64),
            style=np.array([index[id(glyph.style)] for glyph in parts], np.int64),
            styles=list(styles.values()),
            generated=np.array([glyph.generated for glyph in parts], np.bool_),
            unmapped=np.array([glyph.unmapped for glyph in parts], np.bool_),
            space=told(codes, str.isspace),
        )

    def __len__(self) -> int:
        return len(self.codes)

    @property
    def solid(self) -> Flags:
        """Tell which characters are printed: not white space, and not put in by pdfium where it sees a gap."""
        return ~(self.generated | self.space)

    def only(self, kept: Flags) -> Letters:
        """Give the characters for which ``kept`` is true."""
        codes = self.codes[kept]
        return Letters(
            text_of(codes), codes, self.boxes[kept], self.start[kept], self.stop[kept], self.base[kept],
            self.size[kept], self.style[kept], self.styles, self.generated[kept], self.unmapped[kept],
            self.space[kept],
        )  # fmt: skip


def _parts(glyph: Glyph) -> list[Glyph]:
    count = len(glyph.text)
    if count == 1:
        return [glyph]
    step = (glyph.stop - glyph.start) / max(1, count)
    return [
        replace(glyph, text=letter, start=glyph.start + place * step, stop=glyph.start + (place + 1) * step)
        for place, letter in enumerate(glyph.text)
    ]


def text_of(codes: NDArray[np.uint32]) -> str:
    """Give the text that character codes spell; lone halves of characters stay as they are."""
    return codes.astype("<u4").tobytes().decode("utf-32-le", "surrogatepass")


COMMON = 0x3001  # codes below it are looked up in a table: Latin, Greek, Cyrillic, signs, all white space


@cache
def _table(test: Callable[[str], bool]) -> Flags:
    return np.array([test(chr(code)) for code in range(COMMON)], np.bool_)


def told(codes: NDArray[np.uint32], test: Callable[[str], bool]) -> Flags:
    """Tell for which characters a test of a letter, such as ``str.isalnum``, holds."""
    found: Flags = _table(test)[np.minimum(codes, COMMON - 1)]
    for place in np.flatnonzero(codes >= COMMON).tolist():
        found[place] = test(chr(int(codes[place])))
    return found


@dataclass(slots=True)
class Stroke:
    """A drawn straight line or thin bar, horizontal or vertical."""

    x0: float
    top: float
    x1: float
    bottom: float

    @property
    def horizontal(self) -> bool:
        return (self.x1 - self.x0) >= (self.bottom - self.top)


@dataclass(slots=True)
class Fill:
    """A filled or framed rectangle with its colour (``None``: only framed)."""

    box: Box
    color: tuple[int, int, int] | None
    framed: bool


@dataclass(slots=True)
class Dot:
    """A small drawn circle or square: a list bullet or a mark in a table."""

    box: Box
    filled: bool
    round: bool


@dataclass(slots=True)
class Sheet:
    """One page as drawn."""

    number: int
    width: float
    height: float
    letters: Letters = field(default_factory=Letters.of)
    strokes: list[Stroke] = field(default_factory=list)
    fills: list[Fill] = field(default_factory=list)
    pictures: list[Box] = field(default_factory=list)
    dots: list[Dot] = field(default_factory=list)
    hidden_glyphs: int = 0
    crowded: bool = False
