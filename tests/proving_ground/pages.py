"""A brochure before it is rendered: pages of blocks, and what each block states."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Said:
    """What words state: a value of a field, with its availability, the way the figure is printed and special habits."""

    field: str
    value: str
    availability: str = "standard"
    habit: str = ""
    traits: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Piece:
    """Words and what they state."""

    text: str
    says: tuple[Said, ...] = ()


@dataclass(frozen=True, slots=True)
class Claim:
    """A statement about one van (its place in the family), with the words that a reader finds on the page."""

    van: int
    said: Said
    words: str


@dataclass(frozen=True, slots=True)
class Cell:
    """A cell of a grid; ``span`` columns wide."""

    text: str
    span: int = 1


@dataclass(slots=True)
class Block:
    """Something on a page. ``layout`` is its row in the report, ``traits`` further rows that it counts for."""

    layout: str = "chatter"
    traits: tuple[str, ...] = ()
    claims: list[Claim] = field(default_factory=list)

    def texts(self) -> Iterator[str]:
        """Give all words of the block."""
        return iter(())

    def state(self, van: int, piece: Piece, extra: Iterable[str] = ()) -> None:
        """Note that the piece's words, printed in this block, are said of a van."""
        for said in piece.says:
            more = Said(said.field, said.value, said.availability, said.habit, (*said.traits, *extra))
            self.claims.append(Claim(van, more, piece.text))


@dataclass(slots=True)
class Title(Block):
    """The names at the top: a large line, and smaller ones under it."""

    lines: list[str] = field(default_factory=list)

    def texts(self) -> Iterator[str]:
        return iter(self.lines)


@dataclass(slots=True)
class Heading(Block):
    """A heading; level 1 or 2."""

    text: str = ""
    level: int = 1

    def texts(self) -> Iterator[str]:
        yield self.text


@dataclass(slots=True)
class Para(Block):
    """A paragraph; ``small`` for small print."""

    text: str = ""
    small: bool = False

    def texts(self) -> Iterator[str]:
        yield self.text


@dataclass(slots=True)
class Grid(Block):
    """A table. ``heads`` are rows of cells over the body; a body row of one cell over all columns is a group row."""

    heads: list[list[Cell]] = field(default_factory=list)
    rows: list[list[Cell]] = field(default_factory=list)
    ruled: bool = True
    zebra: bool = False
    rotated: bool = False
    small: bool = False
    columns: int = 0

    def texts(self) -> Iterator[str]:
        for row in (*self.heads, *self.rows):
            yield from (cell.text for cell in row)


@dataclass(slots=True)
class Pairs(Block):
    """A list of labels and values; a pair without a label is a heading. ``style``: leaders, colon, tabs or ruled."""

    rows: list[tuple[str, str]] = field(default_factory=list)
    style: str = "colon"

    def texts(self) -> Iterator[str]:
        for label, value in self.rows:
            yield f"{label} {value}"


@dataclass(slots=True)
class Bullets(Block):
    """Items with a sign before each, in columns; an item without a sign is a heading."""

    items: list[tuple[str, str]] = field(default_factory=list)
    columns: int = 1

    def texts(self) -> Iterator[str]:
        for sign, text in self.items:
            yield f"{sign} {text}"


@dataclass(frozen=True, slots=True)
class Card:
    """A package: its name, a line of prices, and what is in it."""

    title: str
    price: str
    items: tuple[str, ...]


@dataclass(slots=True)
class Cards(Block):
    """Packages side by side, two in a row."""

    cards: list[Card] = field(default_factory=list)

    def texts(self) -> Iterator[str]:
        for card in self.cards:
            yield from (card.title, card.price, *card.items)


@dataclass(slots=True)
class Beside(Block):
    """Blocks side by side that are not rows of each other; ``narrow`` is the share of the left side."""

    left: list[Block] = field(default_factory=list)
    right: list[Block] = field(default_factory=list)
    narrow: float = 0.5

    def texts(self) -> Iterator[str]:
        for block in (*self.left, *self.right):
            yield from block.texts()


@dataclass(slots=True)
class Aside(Block):
    """What a saved page carries besides its matter: menus, hidden text, scripts; only web pages print any of it."""

    nav: list[str] = field(default_factory=list)
    hidden: str = ""
    script: str = ""
    cookie: str = ""


@dataclass(slots=True)
class Page:
    """One page: its blocks, and the lines at its upper and lower edge."""

    blocks: list[Block] = field(default_factory=list)
    running_head: str = ""
    foot: str = ""

    def all_blocks(self) -> Iterator[Block]:
        """Give the blocks, those that stand side by side one after the other."""
        for block in self.blocks:
            yield block
            if isinstance(block, Beside):
                yield from block.left
                yield from block.right


@dataclass(slots=True)
class Look:
    """How a document is set: type, size, colors, paper."""

    font: str = "Helvetica"
    size: float = 9.0
    landscape: bool = False
    letter: bool = True
    accent: str = "#1f3d4d"
    margin: float = 50.0
    spaced: bool = False


@dataclass(slots=True)
class Draft:
    """A brochure ready for rendering."""

    pages: list[Page]
    look: Look
    language: str
    title: str = ""
