"""Blocks in reading order → passages with their headings, row labels and column heads."""

from __future__ import annotations

import itertools
from dataclasses import dataclass, field, replace

from specscan.reading.layout.item import Item
from specscan.reading.layout.seams import is_copy
from specscan.reading.letters.words import Line, is_bullet
from specscan.reading.tables.compose import Hints, clean_sign, compose
from specscan.reading.tables.grid import Grid, GridCell
from specscan.reading.tables.heads import ReadCell, ReadTable, read_table
from specscan.records.text import Box, Head, Kind, Passage, Source, Title, union

LABEL_WORDS = 8
ALIKE = 0.11  # points by which the levels of headings of one rank may differ
BOLDER = 0.05  # points that bold letters count as larger
LARGER = 1.2  # times the size of the rows of a table: a title between them that can be a heading's sister
INDENT = 4.0  # points by which an item must stand further in than the one it belongs to


@dataclass(slots=True)
class Heading:
    """A heading on the stack: its text and how prominent it is; ``copied`` from another column, which it heads too."""

    text: str
    level: float
    copied: bool = False
    strong: bool = False


def _level(size: float, *, bold: bool) -> float:
    """Give the rank of a heading by its type: of two in one size the bold one stands above the other."""
    return size + (BOLDER if bold else 0.0)


def _are_beside(one: tuple[Box, list[Heading]], two: tuple[Box, list[Heading]]) -> bool:
    """Tell whether two headings, given with what governs below them, head columns side by side."""
    box, other = one[0], two[0]
    level = abs(box.top - other.top) < box.height
    return level and box.overlap_x(other) <= 0 and abs(one[1][-1].level - two[1][-1].level) < ALIKE


def _shared(stacks: list[list[Heading]]) -> list[Heading]:
    """Give the headings that govern all of some columns."""
    found = []
    for headings in zip(*stacks, strict=False):
        if any(heading is not headings[0] and heading.text != headings[0].text for heading in headings):
            break
        found.append(headings[0])
    return found


@dataclass(slots=True)
class Assembler:
    """Collects the passages of a document; keeps the stack of headings and the last table."""

    hints: Hints
    passages: list[Passage] = field(default_factory=list)
    stack: list[Heading] = field(default_factory=list)
    headings: list[tuple[int, Box, list[Heading]]] = field(default_factory=list)  # page, box, and what governs below
    begun: list[list[Heading]] = field(default_factory=list)  # what governed each region when it was begun
    headed: bool = False  # whether the headings of the last region are those of one column of several
    items: list[Heading] = field(default_factory=list)  # the items of lists under which deeper ones stand
    last_table: ReadTable | None = None
    known_heads: set[str] = field(default_factory=set)
    row_above: tuple[str, str] = ("", "")  # the group and the label of the last row that says what it is of
    tables: int = 0
    block: int = 0
    corners: list[Title] = field(default_factory=list)  # what stands over the labels of tables
    source: Source = "text"
    places: bool = True  # whether words have places on a page; text and HTML have none

    def sections(self, groups: tuple[str, ...] = ()) -> tuple[str, ...]:
        """Give the headings that govern what comes next, outermost first."""
        return (*(heading.text for heading in self.stack), *groups)

    def begin_block(self, back: int = 0, *, headed: bool = False) -> None:
        """Begin a new region of the page: text in it does not go on from the one before.

        ``back``: it stands under the headings above the region that was begun so many before it; ``headed``: its own
        headings do not govern what follows it.
        """
        self.block += 1
        self.items = []
        if back:
            self.stack = list(self.begun[-back])
        elif self.headed:
            own = (heading for heading in self.stack if not heading.copied and heading not in self.begun[-1])
            first = next(own, None)
            self.stack = self.stack if first is None else self.stack[: self.stack.index(first)]
        self.headed = headed
        self.begun.append(list(self.stack))

    def above(self, page: int, box: Box) -> list[Heading]:
        """Give the headings that govern a card: the nearest above it, or of those beside it the most prominent.

        A card stands apart from the text that is read before it; what was the last heading there says nothing of it.
        """
        higher = [(where, stack) for number, where, stack in self.headings if number == page and where.top < box.top]
        over = [one for one in higher if one[0].overlap_x(box) > 0]
        if over:
            nearest = max(over, key=lambda one: one[0].top)
            beside = [one for one in over if _are_beside(one, nearest)]
            return _shared([nearest[1], *(stack for _, stack in beside)])
        if not higher:
            return list(self.stack)
        return list(max(higher, key=lambda one: (one[1][-1].level, one[0].top))[1])

    def add_item(self, page: int, item: Item) -> None:
        """Add a heading, paragraph, list item or footnote; who signs a letter, line by line."""
        if item.kind is Kind.PROSE and len(item.lines) > 1 and self.hints.ends_letter(item.lines[0].text):
            for line in item.lines:
                self.add_item(page, replace(item, lines=[line]))
            return
        composed = compose(item.lines, self.hints)
        if not composed.text:
            return
        if item.kind is Kind.HEADING:
            level = _level(item.level, bold=item.strong)
            self._push(Heading(composed.text, level, is_copy(item.lines[0].words), item.strong))
        sections = self.sections(self._parents(item, composed.text))
        if item.kind is Kind.HEADING:
            if is_copy(item.lines[0].words):
                return
            sections = sections[:-1]
            if self.places and (box := union([piece.box for piece in composed.pieces])) is not None:
                self.headings.append((page, box, list(self.stack)))
        notes = composed.notes
        if item.kind is Kind.FOOTNOTE:
            notes = (clean_sign(item.sign), *notes)
        self._add(
            page=page, kind=item.kind, text=composed.text, pieces=composed.pieces,
            sections=sections, mark=item.mark, notes=notes,
        )  # fmt: skip

    def _parents(self, item: Item, text: str) -> tuple[str, ...]:
        """Give the items of a list under which an item is indented, outermost first."""
        if item.kind is not Kind.BULLET:
            self.items = []
            return ()
        while self.items and self.items[-1].level >= item.level - INDENT:
            self.items.pop()
        parents = tuple(parent.text for parent in self.items)
        self.items.append(Heading(text, item.level))
        return parents

    def add_grid(self, page: int, grid: Grid) -> None:
        """Add the values of a table, each with its heads.

        Parts that stand side by side begin under the same heading, whatever titles stand between rows further down.
        """
        above = list(self.stack)
        for table in read_table(grid, self.hints, self.last_table, self.known_heads):
            self.stack = list(above)
            self.tables += 1
            for lonely in table.lonely:
                self._add_cell_text(page, lonely)
            for place, cell in enumerate(table.cells):
                sister = self._sister(cell.cell, table.cells[:place]) if cell.title else None
                if sister is not None:
                    self._close(sister)
                self._add_read_cell(page, cell)
                if sister is not None:
                    self.stack.append(sister)
            over_labels = [cell for col in range(table.label_columns) for cell in table.heads.get(col, [])]
            corner = " ".join(cell.plain for cell in over_labels)
            if corner and not table.inherited:
                self.corners.append(Title(corner, page, 0.0, "corner", self.tables))
            self.last_table = table
            self.known_heads |= table.names(self.hints)

    def _push(self, heading: Heading) -> None:
        self._close(heading)
        self.stack.append(heading)

    def _close(self, heading: Heading) -> None:
        """Leave the headings that one ends: those of its rank and below."""
        while self.stack and self.stack[-1].level <= heading.level + self._slack(heading):
            self.stack.pop()

    def _slack(self, heading: Heading) -> float:
        """Give by how much a heading may be smaller than one that it ends: hardly, but where both are as bold."""
        return ALIKE if heading.strong == self.stack[-1].strong else 0.01

    def _sister(self, title: GridCell, before: list[ReadCell]) -> Heading | None:
        """Give a title between rows as a heading of the rank of that above them: "Drift Two" after "Drift One".

        It is as large, far larger than the rows, and those stand under that heading alone.
        """
        first = list(itertools.takewhile(lambda cell: not cell.title, before))
        rows = [cell.cell for cell in before if not cell.title]
        if not (first and self.stack) or any(cell.groups for cell in first):
            return None
        line, above = title.lines[0], self.stack[-1]
        same = abs(_level(line.size, bold=line.bold) - above.level) < ALIKE
        larger = line.size >= LARGER * max(one.size for cell in rows for one in cell.lines)
        return Heading(title.plain, above.level, strong=above.strong) if same and larger else None

    def _head(self, cells: list[GridCell]) -> Head:
        lines = [line for cell in cells for line in cell.lines]
        if lines and len(lines[0].words) > 1 and is_bullet(lines[0].words[0].text) and cells[0].col == 0:
            lines = [Line(lines[0].words[1:]), *lines[1:]]  # the bullet of a priced list is no part of its label
        composed = compose(lines, self.hints)
        box = union([piece.box for piece in composed.pieces]) if self.places else None
        return Head(composed.text, box, composed.notes, tuple(cell.code for cell in cells if cell.code))

    def _label(self, cells: list[GridCell], unit: GridCell | None) -> Head:
        """Give the label of a row, with the unit that stands over the column where the label names none itself."""
        head = self._head(cells)
        if unit is None or not head.text or head.text.endswith(")"):
            return head
        return Head(f"{head.text} ({unit.plain.strip(' ()')})", head.box, head.notes, head.codes)

    def _add_listed(self, page: int, cell: ReadCell) -> None:
        """Add an item of a list that stands among the rows of a table, or a line under the title of one."""
        lines = cell.cell.lines
        words = lines[0].words
        bulleted = len(words) > 1 and is_bullet(words[0].text)
        mark = words[0].text if bulleted else ""
        composed = compose([Line(words[1:]), *lines[1:]] if bulleted else lines, self.hints)
        self._add(
            page=page, kind=Kind.BULLET if bulleted else Kind.LINE, text=composed.text, pieces=composed.pieces,
            sections=self.sections(cell.groups), mark=mark, notes=composed.notes,
        )  # fmt: skip

    def _add_read_cell(self, page: int, cell: ReadCell) -> None:
        if cell.title:
            if not is_copy(cell.cell.lines[0].words):
                self._add_cell_text(page, cell.cell, Kind.HEADING)
            return
        if cell.listed:
            self._add_listed(page, cell)
            return
        lines: list[Line] = cell.cell.lines
        composed = compose(lines, self.hints)
        group = self._head(cell.labels[:-1])
        label = self._label(cell.labels[-1:], cell.unit)
        grouped = group.text and self.hints.names_thing(group.text) and not self.hints.names_thing(label.text)
        if grouped and not self._speaks_of_above(group.text, label.text):
            label = Head(
                f"{group.text}, {label.text}", label.box, (*group.notes, *label.notes), label.codes
            )  # "Gray" and "Where"
        else:
            self.row_above = (group.text, label.text) if label.text[:1].isupper() else self.row_above
        over, heads = self._parted_heads(cell.heads, label)
        self._add(
            page=page, kind=Kind.CELL, text=composed.text, pieces=composed.pieces,
            sections=self.sections((*self._below(cell.groups), *(text for text in (group.text, over) if text))),
            notes=composed.notes, row=label, column=self._head(heads),
            table=self.tables, row_index=cell.row, column_index=cell.col,
        )  # fmt: skip

    def _speaks_of_above(self, group: str, label: str) -> bool:
        """Tell whether a label goes on about the row above rather than its group: "where it sits" below "Gray tank".

        It begins small, as the first label of the group does not.
        """
        over, above = self.row_above
        return over == group and label[:1].islower() and " " in label and self.hints.names_thing(above)

    def _below(self, groups: tuple[str, ...]) -> tuple[str, ...]:
        """Give the groups of a cell without the one that is a heading of its own."""
        return tuple(text for text in groups if not self.stack or text != self.stack[-1].text)

    def _parted_heads(self, heads: list[GridCell], label: Head) -> tuple[str, list[GridCell]]:
        """Give the heading of a group of columns, where one stands over heads that say all by themselves, and the rest.

        Such columns are labels, and the rows are vans: "Plumbing" over "Gray tank" and "Supply lines". A heading with
        a unit, "Weights (lb)", belongs to each of its columns.
        """
        coded = label.text[:1].isdigit()  # "210 AWD" is no label, though it names the drive
        if len(heads) < 2 or heads[0].col_span < 2 or not coded and self.hints.is_label(label.text):
            return "", heads
        over, own = heads[0].plain, " ".join(cell.plain for cell in heads[1:])
        whole = self.hints.is_label(own) and self.hints.names_thing(own) and "(" not in over
        return (over, heads[1:]) if whole else ("", heads)

    def _add_cell_text(self, page: int, cell: GridCell, kind: Kind = Kind.LINE) -> None:
        composed = compose(cell.lines, self.hints)
        self._add(
            page=page, kind=kind, text=composed.text, pieces=composed.pieces,
            sections=self.sections(), notes=composed.notes,
        )  # fmt: skip

    def _add(self, **fields: object) -> None:
        if not fields["text"]:
            return
        if not self.places:
            fields["pieces"] = ()
        passage = Passage(number=len(self.passages), block=self.block, source=self.source, **fields)  # type: ignore[arg-type]
        self.passages.append(passage)
