"""Grids → which rows and columns are heads, which rows are group headings, what is a value."""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from specscan.reading.letters.taglines import part_large, part_tagline
from specscan.reading.letters.words import Line, is_bullet
from specscan.reading.tables.compose import Hints
from specscan.reading.tables.grid import Grid, GridCell
from specscan.reading.tables.head_rows import LABEL_SHARE, head_rows_of, lone_head
from specscan.reading.tables.listed_cells import with_listed_items
from specscan.reading.tables.parting import column_cells, has_digit, head_key, split_heads, split_pairs
from specscan.reading.tables.sheet_letters import without_sheet_letters
from specscan.reading.tables.subheads import (
    group_rows,
    spread_first_lines,
    spread_over_names,
    spread_over_units,
    unit_row,
    without_codes,
)

CODE = re.compile(r"\d{2,3}")  # that a van is called by
PRICE_SHARE = 0.7
HEADS_WITHIN = 2  # rows of a part of a grid
INHERIT_SHARE = 0.6  # of the heads above: a list of two columns does not go on a table of four
LONE_WORDS = 3  # of a name that stands alone over the values of a van
LONE_LABELS = 8  # below such a name


@dataclass(slots=True)
class ReadCell:
    """A value cell with its heads as cells of the grid and the group heading above it."""

    cell: GridCell
    labels: list[GridCell]
    heads: list[GridCell]
    groups: tuple[str, ...]
    row: int
    col: int
    listed: bool = False  # an item of a list, or a line under its title: neither label nor value
    title: bool = False  # the title of the rows below it
    unit: GridCell | None = None  # the unit over its column


@dataclass(slots=True)
class ReadTable:
    """A table that has been understood: its values in reading order and the heads of each column."""

    cells: list[ReadCell] = field(default_factory=list)
    lonely: list[GridCell] = field(default_factory=list)
    heads: dict[int, list[GridCell]] = field(default_factory=dict)
    units: dict[int, GridCell] = field(default_factory=dict)
    columns: list[tuple[float, float]] = field(default_factory=list)
    label_columns: int = 1
    inherited: bool = False

    @property
    def corner(self) -> str:
        """Give what heads the first column, that of the labels."""
        return " ".join(cell.plain for cell in self.heads.get(0, []))

    def texts(self) -> dict[int, str]:
        """Give the head of each column as one text."""
        return {col: " ".join(cell.plain for cell in cells) for col, cells in self.heads.items()}

    def names(self, hints: Hints) -> set[str]:
        """Give the heads of columns that may name vans: with a figure or a capital, and no label."""
        heads = (text for col, text in self.texts().items() if col > 0)
        return {head_key(head) for head in heads if _may_name(head) and not hints.is_label(head)}


def read_table(grid: Grid, hints: Hints, above: ReadTable | None, known: set[str] | None = None) -> list[ReadTable]:
    """Understand a grid; label-value-label-value grids and grids with heads half way down become several tables.

    ``above`` is the table that this one may go on with: where it has no heads of its own and its
    columns lie under those of ``above``, it takes over the heads. ``known`` holds the heads of earlier
    tables (as ``head_key`` gives them), by which a row that repeats them is known.
    """
    tables: list[ReadTable] = []
    known = known or set()
    grid = with_listed_items(without_codes(without_sheet_letters(grid), hints), hints)
    top_rows = head_rows_of(grid, hints, known)[0]
    top = ReadTable()
    _add_all_heads(top, grid, top_rows, hints)
    parts = split_heads(grid, hints, known | top.names(hints), top.texts(), len(top_rows))
    for number, part in enumerate(parts):
        if number:
            known = known | _first_heads(part)
        pairs = split_pairs(part, hints)
        tables.extend(_read(pair, hints, above if len(pairs) == 1 and not tables else None, known) for pair in pairs)
    return tables


def _first_heads(grid: Grid) -> set[str]:
    """Give the heads of a grid that was parted above them: below a heading of the group, if there is one."""
    rows = (grid.row_cells(row) for row in range(min(grid.rows, HEADS_WITHIN)))
    heads = next((cells for cells in rows if len(cells) > 1), [])
    return {head_key(cell.plain) for cell in heads}


def _read(grid: Grid, hints: Hints, above: ReadTable | None, known: set[str]) -> ReadTable:
    table = ReadTable(columns=list(grid.columns))
    head_rows, before = head_rows_of(grid, hints, known)
    table.label_columns = _label_columns(grid, head_rows, hints)
    _add_all_heads(table, grid, head_rows, hints)
    over = lone_head(grid) if grid.found != "text" else ""
    if over and not head_rows and (_names_van(over, hints) or _is_called_so(over, grid, hints)):
        _add_heads(table, grid, 0)  # "Drift 19" over the values of one van, beside a table of its sisters
        head_rows, before, over = [0], [row for row in before if row], ""
    if not head_rows and above is not None and _has_corner_of(grid, above):
        _add_heads(table, grid, 0)
        head_rows, before = [0], []
    if not table.heads and above is not None and not _is_price_list(grid, hints):
        _inherit(table, grid, above)
    groups: tuple[str, ...] = ()
    for row in before:
        cells = grid.row_cells(row)
        table.lonely.extend(cells)
        if row + 1 in head_rows and _is_title(cells):
            groups = (cells[0].plain,)
    if not table.inherited and table.corner:
        groups = (*groups, table.corner)
    for row in range(grid.rows):
        if row in head_rows or row in before:
            continue
        cells = grid.row_cells(row)
        if not cells:
            continue
        if row > 0 and _repeats_heads(cells, table):
            groups = _group_of_head(cells, table, groups)
            continue
        if _explains_signs(cells, hints):
            words = [word for cell in cells for line in cell.lines for word in line.words]
            table.lonely.append(GridCell(row, 0, [Line(words)]))
            continue
        if len(cells) == 1 and _is_bulleted(cells[0]):
            table.cells.append(ReadCell(cells[0], [], [], groups, row, cells[0].col, listed=True))
            continue
        if _titles_list(grid, row, cells):
            groups = (cells[0].plain,)
            table.cells.extend(ReadCell(cell, [], [], groups, row, cell.col, listed=True) for cell in cells[1:])
            continue
        if _is_group_row(grid, row, cells, table):
            title, tagline = _with_tagline_apart(cells[0])
            groups = (title.plain,)
            table.cells.append(ReadCell(title, [], [], (), row, title.col, title=True))
            if tagline is not None and not title.words[0].copied:
                table.cells.append(ReadCell(tagline, [], [], groups, row, title.col, listed=True))
            continue
        _read_row(table, grid, row, groups)
    if over:
        for read in table.cells:
            read.groups = read.groups if read.title else (*read.groups, over)
    return table


def _has_corner_of(grid: Grid, above: ReadTable) -> bool:
    """Tell whether a grid begins with the corner of the table above and other heads: "Drift models", "7.2"."""
    first, others = grid.at(0, 0), [cell for cell in grid.row_cells(0) if cell.col > 0]
    if first is None or not others or not above.corner or first.plain != above.corner:
        return False
    heads = {cell.plain for col, cells in above.heads.items() if col > 0 for cell in cells}
    return heads.isdisjoint(cell.plain for cell in others)


def _is_price_list(grid: Grid, hints: Hints) -> bool:
    """Tell whether a grid is a list of items with one price each, which goes on with no table of vans."""
    prices = column_cells(grid, 1)
    priced = sum(hints.is_price(cell.plain) for cell in prices)
    return grid.cols == 2 and priced >= PRICE_SHARE * max(1, len(prices))


def _is_bulleted(cell: GridCell) -> bool:
    words = cell.words
    return len(words) > 1 and is_bullet(words[0].text)


def _explains_signs(cells: list[GridCell], hints: Hints) -> bool:
    """Tell whether a row is a legend set in columns: in each a sign with what it says of a thing's being offered."""
    if len(cells) < 2 or not all(_is_bulleted(cell) for cell in cells):
        return False
    said = [" ".join(word.text for word in cell.words[1:]) for cell in cells]
    return len({cell.words[0].text for cell in cells}) == len(cells) and all(map(hints.heads_list, said))


def _titles_list(grid: Grid, row: int, cells: list[GridCell]) -> bool:
    """Tell whether a row with its prices is the title of the list below it: bullets without values of their own."""
    below = grid.row_cells(row + 1)
    bulleted = len(below) == 1 and below[0].col == cells[0].col and _is_bulleted(below[0])
    return bulleted and len(cells) >= 2 and cells[0].col == 0 and not _is_bulleted(cells[0])


def _is_title(cells: list[GridCell]) -> bool:
    """Tell whether the only cell right above the heads is the title of what follows, not a legend or note."""
    text = cells[0].plain if len(cells) == 1 else ""
    wordy = bool(text) and text[0].isalpha() and len(text.split()) <= 6
    return wordy and cells[0].col == 0 and cells[0].bold and not set(text) & set("=:;,.")


def _may_name(head: str) -> bool:
    named = has_digit(head) or head[:1].isupper()
    return named and any(letter.isalpha() for letter in head) and len(head.split()) <= 6


def _names_van(head: str, hints: Hints) -> bool:
    """Tell whether a lone head names a van: with a figure, and no label.

    "Drift 640 Shore" opens with a word that is in none, "20 Shore" with a code; "640" is a code, "2 x" none.
    """
    first, *others = head.split()
    if CODE.fullmatch(head):
        return True
    if not has_digit(head) or not _may_name(head):
        return False
    if not hints.is_label(head):
        return True
    coded = first.isdigit() and bool(others) and not hints.is_unit(others[0])
    return coded or first.isalpha() and not hints.knows_word(first)


def _is_called_so(head: str, grid: Grid, hints: Hints) -> bool:
    """Tell whether a lone head can be a van's name without a figure: of words of which one is in no brochure's labels.

    Below it much is told, as of a van: "Long Hearth" over the values of one, beside the table of its sisters.
    """
    words = head.split()
    if not (1 <= len(words) <= LONE_WORDS and all(word[0].isupper() and word.isalpha() for word in words)):
        return False
    labels = sum(hints.is_label(cell.plain) for cell in column_cells(grid, 0))
    return labels >= LONE_LABELS and not all(map(hints.knows_word, words))


def _label_columns(grid: Grid, head_rows: list[int], hints: Hints) -> int:
    """Give how many columns on the left are labels: two where the first one groups the second."""
    if grid.cols < 3:
        return 1
    body = [row for row in range(grid.rows) if row not in head_rows]
    first = [grid.at(row, 0) for row in body]
    grouping = sum(cell is None or cell.empty or cell.row_span > 1 for cell in first)
    named = {id(cell) for cell in first if cell is not None and not cell.empty}
    second = [cell for cell in (grid.at(row, 1) for row in body) if cell is not None and not cell.empty]
    heads = [cell for row in head_rows if (cell := grid.at(row, 1)) is not None and not cell.empty]
    headed = any(not hints.heads_labels(cell.plain) for cell in heads)
    known = sum(hints.is_label(cell.plain) for cell in second) >= LABEL_SHARE * len(second)
    if not named or (headed and not known) or len(second) <= 0.7 * len(body):
        return 1  # "Drift 19" over the second column; that of a range may stand over labels
    wordy = sum(not has_digit(cell.plain) for cell in second) > 0.8 * len(second)
    return 2 if grouping >= 0.3 * max(1, len(body)) and (wordy or known) else 1


def _add_all_heads(table: ReadTable, grid: Grid, rows: list[int], hints: Hints) -> None:
    """Give each column its heads; a row of units and the heads of mere groups of columns are none."""
    spread_over_units(grid, rows, hints)
    spread_over_names(grid, rows)
    units = unit_row(grid, rows, hints)
    if units is not None:
        cells = [cell for cell in grid.row_cells(units) if cell.col > 0 and not hints.is_unit_system(cell.plain)]
        table.units = {col: cell for cell in cells for col in range(cell.col, cell.col + cell.col_span)}
        rows = [row for row in rows if row != units]
    groups = group_rows(grid, rows)
    for row in rows:
        if row not in groups:
            _add_heads(table, grid, row)
    table.heads = spread_first_lines(table.heads)


def _add_heads(table: ReadTable, grid: Grid, row: int) -> None:
    for cell in grid.row_cells(row):
        for col in range(cell.col, cell.col + cell.col_span):
            kept = table.heads.setdefault(col, [])
            if cell not in kept:
                kept.append(cell)


def _inherit(table: ReadTable, grid: Grid, above: ReadTable) -> None:
    """Take over the heads of the table above where the columns lie under each other."""
    if not above.heads or not above.columns or not grid.columns:
        return
    taken = _heads_above(grid, above)
    if not taken and len(grid.columns) == len(above.columns) > 2 and table.label_columns == above.label_columns:
        taken = dict(above.heads)  # the same columns, set anew to the widths of what this page holds
    if not taken:
        return
    table.heads = taken
    table.units = above.units if len(grid.columns) == len(above.columns) else {}
    table.inherited = bool(taken)


def _heads_above(grid: Grid, above: ReadTable) -> dict[int, list[GridCell]]:
    """Give the heads of the columns of the table above under which those of a grid lie, or none."""
    taken: dict[int, list[GridCell]] = {}
    used: set[int] = set()
    for col, (x0, x1) in enumerate(grid.columns):
        best, shared = None, 0.0
        for other, (a, b) in enumerate(above.columns):
            width = min(x1, b) - max(x0, a)
            if width > shared:
                best, shared = other, width
        if (
            best is None
            or best in used
            or shared < 0.25 * min(x1 - x0, above.columns[best][1] - above.columns[best][0])
        ):
            return {}
        used.add(best)
        if best in above.heads:
            taken[col] = above.heads[best]
    if len({id(heads[0]) for heads in taken.values()}) < INHERIT_SHARE * len({id(h[0]) for h in above.heads.values()}):
        return {}
    return taken


def _repeats_heads(cells: list[GridCell], table: ReadTable) -> bool:
    others = [cell for cell in cells if cell.col > 0]
    if len(others) < 2 or not table.heads:
        return False
    return all(
        cell.plain and cell.plain == " ".join(head.plain for head in table.heads.get(cell.col, [])) for cell in others
    )


def _group_of_head(cells: list[GridCell], table: ReadTable, groups: tuple[str, ...]) -> tuple[str, ...]:
    first = next((cell for cell in cells if cell.col == 0), None)
    head = " ".join(cell.plain for cell in table.heads.get(0, []))
    if first is None or first.plain == head:
        return groups
    return (first.plain,)


def _with_tagline_apart(cell: GridCell) -> tuple[GridCell, GridCell | None]:
    """Give the title of rows and the tagline that stands behind or below it in small letters, if one does."""
    parts = [[part] for part in part_tagline(cell.lines[0]) or ()] if len(cell.lines) == 1 else part_large(cell.lines)
    if not parts:
        return cell, None
    title, tagline = (GridCell(cell.row, cell.col, part, cell.row_span, cell.col_span, cell.fill) for part in parts)
    return title, tagline


def _is_group_row(grid: Grid, row: int, cells: list[GridCell], table: ReadTable) -> bool:
    if len(cells) != 1 or len(_with_tagline_apart(cells[0])[0].plain) > 70:
        return False
    cell = cells[0]
    if cell.col != 0:
        return False
    if grid.at(row, 0) is cell and cell.row_span > 1 and table.label_columns > 1:
        return False
    return cell.col_span >= grid.cols or cell.col_span == 1 or grid.found == "aligned"  # there it runs over the next


def _read_row(table: ReadTable, grid: Grid, row: int, groups: tuple[str, ...]) -> None:
    labels = []
    for col in range(table.label_columns):
        cell = grid.at(row, col)
        if cell is not None and not cell.empty and cell not in labels:
            labels.append(cell)
    values = [cell for cell in grid.covering(row) if not cell.empty and cell not in labels]
    if not values:
        table.lonely.extend(labels)
        return
    for cell in values:
        for col in range(cell.col, cell.col + cell.col_span):
            heads, unit = table.heads.get(col, []), table.units.get(col)
            table.cells.append(ReadCell(cell, labels, heads, groups, row, col, unit=unit))
