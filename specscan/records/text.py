"""What reading gives: documents of pages of passages, each of which knows its place on the page."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from enum import Enum
from typing import Literal


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle in points; the origin is the top left corner of the page as displayed."""

    x0: float
    top: float
    x1: float
    bottom: float

    @property
    def width(self) -> float:
        return self.x1 - self.x0

    @property
    def height(self) -> float:
        return self.bottom - self.top

    @property
    def middle(self) -> tuple[float, float]:
        return (self.x0 + self.x1) / 2, (self.top + self.bottom) / 2

    def holds(self, x: float, y: float, slack: float = 0.0) -> bool:
        """Tell whether the point lies inside, with ``slack`` points around."""
        return self.x0 - slack <= x <= self.x1 + slack and self.top - slack <= y <= self.bottom + slack

    def overlap_x(self, other: Box) -> float:
        """Give the width that both share, negative where a gap lies between them."""
        return min(self.x1, other.x1) - max(self.x0, other.x0)

    def overlap_y(self, other: Box) -> float:
        """Give the height that both share, negative where a gap lies between them."""
        return min(self.bottom, other.bottom) - max(self.top, other.top)


def union(boxes: list[Box]) -> Box | None:
    """Give the smallest box around all, or ``None`` for no boxes."""
    if not boxes:
        return None
    first = boxes[0]
    if len(boxes) == 1:
        return first
    x0, top, x1, bottom = first.x0, first.top, first.x1, first.bottom
    for box in boxes:
        if box.x0 < x0:
            x0 = box.x0
        if box.top < top:
            top = box.top
        if box.x1 > x1:
            x1 = box.x1
        if box.bottom > bottom:
            bottom = box.bottom
    return Box(x0, top, x1, bottom)


@dataclass(frozen=True, slots=True)
class Piece:
    """Characters ``start`` to ``end`` of a passage and the box in which they are printed."""

    start: int
    end: int
    box: Box


class Kind(Enum):
    """How a passage stands on the page."""

    CELL = "cell"
    BULLET = "bullet"
    LINE = "line"
    PROSE = "prose"
    HEADING = "heading"
    FOOTNOTE = "footnote"


Source = Literal["text", "ocr"]
SIGN_JOINT = "\u2009"  # between the signs of several vans before one item


@dataclass(frozen=True, slots=True)
class Head:
    """One of the heads that govern a cell: its text, its place and the notes it refers to."""

    text: str
    box: Box | None = None
    notes: tuple[str, ...] = ()
    codes: tuple[str, ...] = ()  # by which the option of a row is ordered


@dataclass(frozen=True, slots=True)
class Passage:
    """A piece of text as a person would read it: a cell, a bullet, a line, a paragraph.

    ``sections`` holds the headings above it, outermost first. A cell has ``row`` and ``column``
    (its row label and column head, empty texts where there is none) and its place in the table.
    ``mark`` is the sign before a bullet. ``notes`` are the note signs (``1``, ``*``) it carries.
    ``doubts`` are the places, in it and in its row label and column head, of figures not read with certainty.
    """

    number: int
    page: int
    kind: Kind
    text: str
    pieces: tuple[Piece, ...] = ()
    sections: tuple[str, ...] = ()
    row: Head | None = None
    column: Head | None = None
    table: int | None = None
    row_index: int | None = None
    column_index: int | None = None
    mark: str = ""
    notes: tuple[str, ...] = ()
    source: Source = "text"
    block: int = 0
    doubts: tuple[Box, ...] = ()

    @property
    def several_marks(self) -> list[str]:
        """Give the signs before an item where it has one for each of several vans, else none."""
        return self.mark.split(SIGN_JOINT) if SIGN_JOINT in self.mark else []

    def box(self, start: int = 0, end: int | None = None) -> Box | None:
        """Give the box of characters ``start`` to ``end``; ``None`` where the text has no places.

        Characters inside one printed word are placed by even division of the word's width.
        """
        stop = len(self.text) if end is None else end
        found = []
        for piece in self.pieces:
            if piece.end <= start or piece.start >= stop:
                continue
            length = max(1, piece.end - piece.start)
            left = max(start, piece.start) - piece.start
            right = min(stop, piece.end) - piece.start
            step = piece.box.width / length
            found.append(Box(piece.box.x0 + left * step, piece.box.top, piece.box.x0 + right * step, piece.box.bottom))
        return union(found)

    def part(self, start: int, end: int | None = None) -> Passage:
        """Give the passage with characters ``start`` to ``end`` of its text alone, without blanks at the end."""
        text = self.text[start:end].rstrip()
        pieces = (
            Piece(max(0, piece.start - start), min(len(text), piece.end - start), piece.box)
            for piece in self.pieces
            if piece.end > start and piece.start < start + len(text)
        )
        return replace(self, text=text, pieces=tuple(pieces))


@dataclass(frozen=True, slots=True)
class Title:
    """A candidate for the name of the document or the van: where it stands and how prominent."""

    text: str
    page: int
    size: float
    origin: Literal["page", "metadata", "file", "html", "corner"]  # the corner of a table, over its labels
    table: int | None = None  # of a corner: its table


@dataclass(frozen=True, slots=True)
class PageState:
    """Whether a page gave usable text, and if not, why."""

    number: int
    width: float | None
    height: float | None
    usable: bool
    why: str = ""


class Status(Enum):
    """What became of a document."""

    READ = "read"
    PARTLY_READ = "partly_read"
    UNREADABLE = "unreadable"
    NO_VAN_FOUND = "no_van_found"


@dataclass(frozen=True, slots=True)
class Document:
    """A file that was read: its passages in reading order, its titles and the state of each page."""

    path: str
    sha256: str
    kind: str
    passages: tuple[Passage, ...] = ()
    titles: tuple[Title, ...] = ()
    pages: tuple[PageState, ...] = ()
    language: str = ""
    message: str = ""
    metadata: dict[str, str] = field(default_factory=dict)

    @property
    def unread_pages(self) -> list[PageState]:
        """Give the pages that yielded no usable text."""
        return [page for page in self.pages if not page.usable]
