"""One page as drawn: its glyphs, strokes, filled boxes and pictures, all in points from the top left corner."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field

from specscan.records.text import Box

Turn = Callable[[float, float], tuple[float, float]]  # from the file's coordinates to those of the page as displayed


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
    glyphs: list[Glyph] = field(default_factory=list)
    strokes: list[Stroke] = field(default_factory=list)
    fills: list[Fill] = field(default_factory=list)
    pictures: list[Box] = field(default_factory=list)
    dots: list[Dot] = field(default_factory=list)
    hidden_glyphs: int = 0
    crowded: bool = False


def turned_box(turn: Turn, left: float, bottom: float, right: float, top: float) -> Box:
    """Give the box, on the page as displayed, of a rectangle in the file's coordinates."""
    x0, y0 = turn(left, bottom)
    x1, y1 = turn(right, top)
    return Box(min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1))
