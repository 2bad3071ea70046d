"""Grids → which rows and columns are heads, which rows are group headings, what is a value."""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from specscan.reading.compose import Hints
from specscan.reading.grid import Grid, GridCell
from specscan.reading.listed_cells import with_listed_items
from specscan.reading.parting import column_cells, has_digit, head_key, labelish, split_heads, split_pairs
from specscan.reading.subheads import group_rows, one_series, unit_row, without_codes
from specscan.reading.words import is_bullet

MEASURE = re.compile(r"\d[\d.,\s]*?\s?([^\d\s.,]{1,8})")
MAX_HEAD_ROWS = 4
LABEL_SHARE = 0.5
FIGURED = 0.25  # of the cells right below a head that hold figures: they are values
PRICE_SHARE = 0.7
INHERIT_SHARE = 0.6  # of the heads above: a list of two columns does not go on a table of four


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
    grid = with_listed_items(without_codes(grid, hints))
    top_rows = _head_rows(grid, hints, known)[0]
    top = ReadTable()
    _add_all_heads(top, grid, top_rows, hints)
    for part in split_heads(grid, hints, known | top.names(hints), top.texts(), len(top_rows)):
        pairs = split_pairs(part, hints)
        tables.extend(_read(pair, hints, above if len(pairs) == 1 and not tables else None, known) for pair in pairs)
    return tables


def _read(grid: Grid, hints: Hints, above: ReadTable | None, known: set[str]) -> ReadTable:
    table = ReadTable(columns=list(grid.columns))
    head_rows, before = _head_rows(grid, hints, known)
    table.label_columns = _label_columns(grid, head_rows, hints)
    _add_all_heads(table, grid, head_rows, hints)
    if not table.heads and above is not None and not _is_price_list(grid, hints):
        _inherit(table, grid, above)
    groups: tuple[str, ...] = ()
    for row in before:
        cells = grid.row_cells(row)
        table.lonely.extend(cells)
        if row + 1 in head_rows and _is_title(cells):
            groups = (cells[0].plain,)
    if not table.inherited and (first := " ".join(cell.plain for cell in table.heads.get(0, []))):
        groups = (*groups, first)
    for row in range(grid.rows):
        if row in head_rows or row in before:
            continue
        cells = grid.row_cells(row)
        if not cells:
            continue
        if row > 0 and _repeats_heads(cells, table):
            groups = _group_of_head(cells, table, groups)
            continue
        if len(cells) == 1 and _is_bulleted(cells[0]):
            table.cells.append(ReadCell(cells[0], [], [], groups, row, cells[0].col, listed=True))
            continue
        if _titles_list(grid, row, cells):
            groups = (cells[0].plain,)
            table.cells.extend(ReadCell(cell, [], [], groups, row, cell.col, listed=True) for cell in cells[1:])
            continue
        if _is_group_row(grid, row, cells, table):
            groups = (cells[0].plain,)
            table.cells.append(ReadCell(cells[0], [], [], (), row, cells[0].col, title=True))
            continue
        _read_row(table, grid, row, groups)
    return table


def _is_price_list(grid: Grid, hints: Hints) -> bool:
    """Tell whether a grid is a list of items with one price each, which goes on with no table of vans."""
    prices = column_cells(grid, 1)
    priced = sum(hints.is_price(cell.plain) for cell in prices)
    return grid.cols == 2 and priced >= PRICE_SHARE * max(1, len(prices))


def _is_bulleted(cell: GridCell) -> bool:
    words = cell.words
    return len(words) > 1 and is_bullet(words[0].text)


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


def _head_rows(grid: Grid, hints: Hints, known: set[str]) -> tuple[list[int], list[int]]:
    """Give the rows of heads, and the rows above them that are no part of the table (a legend)."""
    found: list[int] = []
    before: list[int] = []
    grouped = _is_grouped(grid, hints)
    over = 0
    for row in range(min(grid.rows, MAX_HEAD_ROWS + 2)):
        cells = grid.row_cells(row)
        if not cells:
            continue
        second = grid.at(row, 1)
        above_heads = not found and _stands_over_heads(grid, row, cells, hints)
        label = second is not None and labelish(second, hints) and not hints.heads_labels(second.plain)
        if grouped and label and not above_heads:
            break
        if not found and (len(cells) == 1 or _is_legend(cells)):
            before.append(row)
        elif above_heads:
            over += 1  # "Base vehicle" over groups of vans: values with a label, above the names they are of
        elif _is_head_row(grid, row, cells, hints, bool(found), len(before) + over) or _is_known(cells, known):
            found.append(row)
        else:
            break
    if not found:
        return [], []
    if len(found) + len(before) >= grid.rows and not _only_heads(grid, found):
        return found[:1], before
    return found, before


def _stands_over_heads(grid: Grid, row: int, cells: list[GridCell], hints: Hints) -> bool:
    """Tell whether a row of a label and its values stands right above the row that names the vans."""
    at = cells[0].col  # behind a column of groups the labels stand in the second
    below = grid.row_cells(row + 1)
    first = next((cell for cell in below if cell.col == at), None)
    others = [cell for cell in below if cell.col > at]
    named = first is None or hints.heads_labels(first.plain)
    label = labelish(cells[0], hints) and not hints.heads_labels(cells[0].plain)
    return at <= 1 and label and named and len(others) > 1 and one_series(others)


def _is_grouped(grid: Grid, hints: Hints) -> bool:
    """Tell whether the labels stand in the second column, and the first only names groups of rows now and then."""
    labels = sum(labelish(cell, hints) for cell in column_cells(grid, 1))
    return grid.cols >= 3 and labels >= LABEL_SHARE * grid.rows and len(column_cells(grid, 0)) < 0.5 * grid.rows


def _only_heads(grid: Grid, rows: list[int]) -> bool:
    """Tell whether a grid is the drawn head of a table whose rows have no walls: bold cells and no labels."""
    cells = [cell for row in rows for cell in grid.row_cells(row)]
    return len(rows) > 1 and all(cell.col > 0 and cell.bold for cell in cells)


def _is_legend(cells: list[GridCell]) -> bool:
    return all("=" in cell.plain or is_bullet(cell.plain[:1]) for cell in cells)


def _is_head_row(grid: Grid, row: int, cells: list[GridCell], hints: Hints, after_head: bool, skipped: int) -> bool:
    others = [cell for cell in cells if cell.col > 0]
    first = next((cell for cell in cells if cell.col == 0), None)
    if not others or (len(others) > 1 and all(_is_measure(cell, hints) for cell in others)):
        return False
    over = grid.at(row, 0)
    if after_head and over is not None and not over.empty and over.row_span > 1 and over.row > skipped:
        return False  # a cell over several rows groups the labels beside it
    if after_head and first is not None and sum(has_digit(cell.plain) for cell in others) >= FIGURED * len(others):
        return False  # the first row of values: "Tarn 19", "2 x 100 Ah, heated", "6 kW"
    labels = sum(labelish(cell, hints) for cell in others)
    if grid.cols >= 3 and labels >= max(2, LABEL_SHARE * len(others)) and not labelish(first, hints):
        return True
    if first is None:
        return (row == skipped and len(others) > 1) or row == 0 or after_head
    named = labels < LABEL_SHARE * len(others) or one_series(others)  # "Tarn 21 Shore" is no label of shore power
    if hints.heads_labels(first.plain) and named and len(others) > 1:
        if row == skipped or after_head:
            return True  # "Models", "Layout" in the corner: the names of vans stand beside it
    if labelish(first, hints) and labels < 0.8 * len(others):
        return _stands_out(grid, row, others) and not any(map(has_digit, (c.plain for c in others)))
    if after_head:
        return False
    if row == 0 and one_series(others):
        return True
    return _stands_out(grid, row, others) or (grid.cols >= 3 and _unlike_body(grid, row, others))


def _is_measure(cell: GridCell, hints: Hints) -> bool:
    """Tell whether a cell is a figure with its unit, which heads no column."""
    match = MEASURE.fullmatch(cell.plain)
    return match is not None and hints.is_unit(match.group(1))


def _may_name(head: str) -> bool:
    named = has_digit(head) or head[:1].isupper()
    return named and any(letter.isalpha() for letter in head) and len(head.split()) <= 6


def _is_known(cells: list[GridCell], known: set[str]) -> bool:
    """Tell whether all cells but the first headed columns of earlier tables."""
    others = [cell for cell in cells if cell.col > 0]
    return len(others) >= 2 and all(head_key(cell.plain) in known for cell in others)


def _stands_out(grid: Grid, row: int, cells: list[GridCell]) -> bool:
    """Tell whether the cells are set apart from those below them by weight, colour, size or shade."""
    below = [cell for cell in grid.cells if cell.row > row and cell.col > 0 and not cell.empty]
    if not below:
        return False
    bold_below = sum(cell.bold for cell in below) / len(below)
    if all(cell.bold for cell in cells) and bold_below < 0.3:
        return True
    colors = [cell.color for cell in below]
    usual = max(set(colors), key=colors.count)
    if all(cell.color != usual for cell in cells) and colors.count(usual) > 0.6 * len(colors):
        return True
    sizes = sorted(cell.size for cell in below)
    if all(cell.size > 1.15 * sizes[len(sizes) // 2] for cell in cells):
        return True
    letters = [c for cell in cells for c in cell.plain if c.isalpha()]
    shouted = len(letters) >= 4 and all(letter.isupper() for letter in letters)
    if shouted and sum(cell.plain.isupper() for cell in below) < 0.3 * len(below):
        return True
    fills = [cell.fill for cell in below]
    common = max(set(fills), key=fills.count)
    return all(cell.fill not in (None, common) for cell in cells) and fills.count(common) > 0.6 * len(fills)


def _unlike_body(grid: Grid, row: int, cells: list[GridCell]) -> bool:
    """Tell whether the cells have no figures where the columns below mostly do."""
    if any(has_digit(cell.plain) for cell in cells):
        return False
    figured = 0
    for cell in cells:
        below = [c for c in column_cells(grid, cell.col) if c.row > row]
        figured += len(below) >= 2 and sum(has_digit(c.plain) for c in below) > 0.7 * len(below)
    return figured >= 0.7 * len(cells)


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
    if not named or headed or len(second) <= 0.7 * len(body):
        return 1
    wordy = sum(not has_digit(cell.plain) for cell in second) > 0.8 * len(second)
    known = sum(hints.is_label(cell.plain) for cell in second) >= LABEL_SHARE * len(second)
    return 2 if grouping >= 0.3 * max(1, len(body)) and (wordy or known) else 1


def _add_all_heads(table: ReadTable, grid: Grid, rows: list[int], hints: Hints) -> None:
    """Give each column its heads; a row of units and the heads of mere groups of columns are none."""
    units = unit_row(grid, rows, hints)
    if units is not None:
        cells = [cell for cell in grid.row_cells(units) if cell.col > 0 and not hints.is_unit_system(cell.plain)]
        table.units = {col: cell for cell in cells for col in range(cell.col, cell.col + cell.col_span)}
        rows = [row for row in rows if row != units]
    groups = group_rows(grid, rows)
    for row in rows:
        if row not in groups:
            _add_heads(table, grid, row)


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


def _is_group_row(grid: Grid, row: int, cells: list[GridCell], table: ReadTable) -> bool:
    if len(cells) != 1 or len(cells[0].plain) > 70:
        return False
    cell = cells[0]
    if cell.col != 0:
        return False
    if grid.at(row, 0) is cell and cell.row_span > 1 and table.label_columns > 1:
        return False
    return cell.col_span >= grid.cols or cell.col_span == 1


def _read_row(table: ReadTable, grid: Grid, row: int, groups: tuple[str, ...]) -> None:
    labels = []
    for col in range(table.label_columns):
        cell = grid.at(row, col)
        if cell is not None and not cell.empty and cell not in labels:
            labels.append(cell)
    values = [
        cell
        for cell in grid.cells
        if cell.row <= row < cell.row + cell.row_span and not cell.empty and cell not in labels
    ]
    if not values:
        table.lonely.extend(labels)
        return
    for cell in values:
        for col in range(cell.col, cell.col + cell.col_span):
            heads, unit = table.heads.get(col, []), table.units.get(col)
            table.cells.append(ReadCell(cell, labels, heads, groups, row, col, unit=unit))
