"""Which rows of a grid are heads: by weight and shade, by what they say, and by the cells below them."""

from __future__ import annotations

import re

from specscan.reading.letters.words import is_bullet
from specscan.reading.tables.compose import Hints
from specscan.reading.tables.grid import Grid, GridCell, by_row
from specscan.reading.tables.parting import column_cells, has_digit, head_key, labelish
from specscan.reading.tables.subheads import one_series

MEASURE = re.compile(r"\d[\d.,\s]*?\s?([^\d\s.,]{1,8})")
PLAN = re.compile(r"\d{2,3}[A-Z]{1,2}")  # "20W": a floorplan as well as watts
SYMBOL = re.compile(r"[^\w\s]{1,2} [^\W\d_]{2}")  # a sign and what it says: "— not offered"
SIGN = re.compile(rf"{SYMBOL.pattern}|[A-Z] [^\W\d_]{{2}}")  # "O option" as well
CODED = re.compile(r"(?:[A-ZÀ-Þ][\w-]* )?(?:\d{2,4}|\d[.,]\d)[A-Z]{0,2}(?: [A-ZÀ-Þ][\w’'-]*){0,2}")
MAX_HEAD_ROWS = 4
IDENTITY_ROWS = 3
LABEL_SHARE = 0.5
LIKE_HEAD = 0.3  # of the labels below: other sections, each with its heads
FIGURED = 0.25  # of the cells right below a head that hold figures: they are values


def head_rows_of(grid: Grid, hints: Hints, known: set[str]) -> tuple[list[int], list[int]]:
    """Give the rows of heads, and the rows above them that are no part of the table (a legend)."""
    found: list[int] = []
    before: list[int] = []
    grouped = _is_grouped(grid, hints)
    over = 0
    if _names_in_rows(grid, hints):
        return [], []
    for row in range(min(grid.rows, MAX_HEAD_ROWS + 2)):
        cells = grid.row_cells(row)
        if not cells:
            over += not found  # a blank row, as spreadsheets have, parts titles from heads
            continue
        second = grid.at(row, 1)
        legend = _is_legend(cells)
        above_heads = not found and not legend and _stands_over_heads(grid, row, cells, hints)
        label = second is not None and labelish(second, hints) and not hints.heads_labels(second.plain)
        if grouped and label and not above_heads:
            break
        if not found and (len(cells) == 1 or legend or _stands_apart(grid, row, cells, hints)):
            before.append(row)
        elif above_heads:
            over += 1  # "Base vehicle" over groups of vans: values with a label, above the names they are of
        elif _is_head_row(grid, row, cells, hints, bool(found), len(before) + over) or _is_known(cells, known, hints):
            found.append(row)
        else:
            break
    if not found:
        return [], []
    if len(found) + len(before) >= grid.rows and not _only_heads(grid, found):
        return found[:1], before
    return found, before


def _names_in_rows(grid: Grid, hints: Hints) -> bool:
    """Tell whether maker, range and model have a row each at the top, all with labels: none of them heads columns."""
    firsts = [cell.plain if (cell := grid.at(row, 0)) is not None else "" for row in range(IDENTITY_ROWS)]
    told = all(hints.heads_labels(first) or hints.names_range(first) for first in firsts[1:])
    return grid.cols > 2 and told and hints.names_maker(firsts[0])


def lone_head(grid: Grid) -> str:
    """Give the cell set apart that stands alone over the only column of values, as where a table is of one van."""
    cells = grid.row_cells(0)
    alone = grid.cols == 2 and grid.rows > 1 and len(cells) == 1 and cells[0].col == 1
    return cells[0].plain if alone and _stands_out(grid, 0, cells) else ""


def _stands_over_heads(grid: Grid, row: int, cells: list[GridCell], hints: Hints) -> bool:
    """Tell whether a row of a label and its values stands right above the row that names the vans."""
    at = cells[0].col  # behind a column of groups the labels stand in the second
    below = grid.row_cells(row + 1)
    first = next((cell for cell in below if cell.col == at), None)
    others = [cell for cell in below if cell.col > at]
    named = first is None or hints.heads_labels(first.plain)
    label = labelish(cells[0], hints) and not hints.heads_labels(cells[0].plain)
    if not (at <= 1 and label and named and len(others) > 1):
        return False
    set_apart = _stands_out(grid, row + 1, others)
    return set_apart or one_series(others) or _are_own_names(others, hints)


def _are_own_names(cells: list[GridCell], hints: Hints) -> bool:
    """Tell whether cells are different names, each of a word or two of which one is no word of brochures."""
    texts = [cell.plain for cell in cells]
    if len(set(texts)) < len(texts):
        return False
    words = [text.split() for text in texts]
    short = all(1 <= len(parts) <= 2 and all(part[0].isupper() and part.isalpha() for part in parts) for parts in words)
    return short and not any(all(map(hints.knows_word, parts)) for parts in words)


def _is_grouped(grid: Grid, hints: Hints) -> bool:
    """Tell whether the labels stand in the second column, and the first only names groups of rows now and then."""
    labels = sum(labelish(cell, hints) for cell in column_cells(grid, 1))
    return grid.cols >= 3 and labels >= LABEL_SHARE * grid.rows and len(column_cells(grid, 0)) < 0.5 * grid.rows


def _only_heads(grid: Grid, rows: list[int]) -> bool:
    """Tell whether a grid is the drawn head of a table whose rows have no walls: bold or shaded cells, no labels."""
    cells = [cell for row in rows for cell in grid.row_cells(row)]
    return len(rows) > 1 and all(cell.col > 0 and (cell.bold or cell.fill is not None) for cell in cells)


def _is_legend(cells: list[GridCell]) -> bool:
    """Tell whether a row explains signs: "● = standard", or in several cells "S standard", "O option".

    Symbols do beside a title as well: "Equipment", "● standard  ○ option", "– not offered".
    """
    signs = len(cells) > 1 and all(SIGN.match(cell.plain) for cell in cells)
    titled = len(cells) > 1 and cells[0].col == 0 and all(SYMBOL.match(cell.plain) for cell in cells[1:])
    return signs or titled or all("=" in cell.plain or is_bullet(cell.plain[:1]) for cell in cells)


def _stands_apart(grid: Grid, row: int, cells: list[GridCell], hints: Hints) -> bool:
    """Tell whether a row of words right above the heads, with fewer cells than these, is no part of the table.

    The heads leave the corner open, as where a legend is set between the title and "Drift 5.4", "Drift 6.0".
    """
    below = grid.row_cells(row + 1)
    if cells[0].col > 0 or len(below) <= len(cells) or not below or below[0].col == 0:
        return False
    named = labelish(cells[0], hints) or hints.heads_labels(cells[0].plain)
    return not named and all(len(cell.plain.split()) > 1 and cell.col_span == 1 for cell in cells)


def _is_head_row(grid: Grid, row: int, cells: list[GridCell], hints: Hints, after_head: bool, skipped: int) -> bool:
    others = [cell for cell in cells if cell.col > 0]
    first = next((cell for cell in cells if cell.col == 0), None)
    if len(others) > 2:  # the head of a column of units names no van: "Unit", "Drift 19", "Drift 21"
        others = [cell for cell in others if not hints.heads_units(cell.plain)]
    if not others:
        return False
    if len(others) > 1 and all(_is_measure(cell, hints) for cell in others):
        plans = first is None and all(PLAN.fullmatch(cell.plain) for cell in others)
        return row == skipped and plans and _stands_out(grid, row, others)
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
    # "Tarn 21 Shore" and "17 Shore" are no labels of shore power
    named = labels < LABEL_SHARE * len(others) or one_series(others) or all(c.plain[:1].isdigit() for c in others)
    if (
        hints.heads_labels(first.plain)
        and grid.cols == 2
        and row == 0
        and first.bold
        and _stands_out(grid, row, others)
    ):
        return True  # the table of one van among several
    if hints.heads_labels(first.plain) and named and len(others) > 1:
        if row == skipped or after_head:
            return True  # "Models", "Layout" in the corner: the names of vans stand beside it
    repeated = len({cell.plain for cell in others}) < len(others)  # "Heat source: furnace, furnace" is a row of values
    if labelish(first, hints) and (labels < 0.8 * len(others) or repeated):
        if after_head and repeated:
            return False  # "Driven wheels: FWD, FWD" in a shaded row right below the vans
        figured = any(map(has_digit, (c.plain for c in others)))
        return _stands_out(grid, row, others) and (not figured or _are_codes_in_bar(grid, first, others, hints))
    if after_head:
        return False
    if row == 0 and one_series(others):
        return True
    if len(others) == 1 and grid.cols >= 3:
        return _stands_out(grid, row, others)  # else one value for all: "Propane capacity", "none on board"
    label = labelish(first, hints) and not hints.heads_labels(first.plain)  # its values are words: "Heater type"
    unlike = grid.cols >= 3 and not label and _unlike_body(grid, row, others)
    return unlike or _stands_out(grid, row, others)


def _are_codes_in_bar(grid: Grid, first: GridCell, others: list[GridCell], hints: Hints) -> bool:
    """Tell whether a row set apart with its label, the name of a section, holds the codes of vans: "170", "170 Frost".

    One of them at least is more than a number, or all of them come again over another section.
    """
    texts = [cell.plain for cell in others]
    if len(set(texts)) < len(texts) or not all(map(CODED.fullmatch, texts)):
        return False
    below = (
        [cell.plain for cell in cells if cell.col > 0] for row, cells in by_row(grid.cells).items() if row > first.row
    )
    if any(_is_measure(cell, hints) for cell in others) or (all(map(str.isdigit, texts)) and texts not in below):
        return False
    labels = [cell for cell in column_cells(grid, 0) if cell.row > first.row]
    alike = sum((cell.bold, cell.color, cell.fill) == (first.bold, first.color, first.fill) for cell in labels)
    return alike < LIKE_HEAD * len(labels)


def _is_measure(cell: GridCell, hints: Hints) -> bool:
    """Tell whether a cell is a figure with its unit, which heads no column."""
    match = MEASURE.fullmatch(cell.plain)
    return match is not None and hints.is_unit(match.group(1))


def _is_known(cells: list[GridCell], known: set[str], hints: Hints) -> bool:
    """Tell whether all cells but the first headed columns of earlier tables; units may stand over more columns."""
    keys = [head_key(cell.plain) for cell in cells if cell.col > 0 and not hints.is_unit(cell.plain)]
    return len(keys) >= 2 and len(set(keys)) > 1 and known.issuperset(keys)


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
