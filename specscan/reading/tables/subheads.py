"""What of a table's heads says nothing of whose a column is: codes of options, units, heads of groups of columns."""

from __future__ import annotations

import re

from specscan.reading.tables.compose import Hints
from specscan.reading.tables.grid import Grid, GridCell
from specscan.reading.tables.parting import has_digit, labelish
from specscan.records.years import MODEL_YEAR

CODE = re.compile(r"[A-Za-z]{0,4}[-./]?\d{1,6}(?:[-./]?[A-Za-z\d]{1,4})?|[A-Z]{1,3} \d{2,5}[A-Z]?")  # "K240", "W 101"
NAME_CODE = re.compile(r"(?:[A-Z]{1,3}[ -]?)?\d[\d.]*[A-Z]{0,3}(?: [A-Z]{1,3})?")  # that can be a van's: "K240 X"
NUMBER = re.compile(r"\d{1,3}(?:[.-]\d{1,3}){0,3}[.)]?")  # of a row: "7", "1.10", "2.3.1"
BOX = re.compile(r"(?:\[[ xX]?\]|[☐☑☒])\s+")  # that is ticked on the sheet of one van, before a code
TICK = re.compile(r"\[[ xX]?\]|[☐☑☒◉○◯●–—-]")  # alone in its cell, of a sheet on which a build was chosen
CHOSEN = re.compile(r"\[[ xX]?\]|[☐☑☒◉]")  # told from the signs of a legend
MIN_CODES = 3
MIN_THINGS = 3
LONG_NUMBER = 3  # figures of the number of an article
HEAD_ROWS = 3  # at the top of a table, in which the head of its codes may stand: a legend can be above it
CODED_SHARE = 0.9
LABEL_SHARE = 0.4
SERIES_LETTERS = 3
YEAR = re.compile(rf"^{MODEL_YEAR}\s+(?=\D)")


def without_codes(grid: Grid, hints: Hints) -> Grid:
    """Give a grid without the column that holds only the codes by which options are ordered, or the rows' numbers.

    Its head says so, or it stands before a column of known labels. Headings of groups that stand in it stay.
    """
    col = next((col for col in range(min(2, grid.cols - 2)) if _is_coded(grid, col, hints)), None)
    if col is None:
        return grid
    plain = {cell.row: BOX.sub("", cell.plain, count=1) for cell in grid.cells if cell.col == col}
    codes = {row: code for row, code in plain.items() if CODE.fullmatch(code)}
    codes = {row: code for row, code in codes.items() if not NUMBER.fullmatch(code)}
    kept = []
    for cell in grid.cells:
        alone = len(grid.row_cells(cell.row)) == 1
        if cell.col == col and cell.col_span == 1 and not alone and _is_code(cell, hints):
            continue
        left = cell.col - (cell.col > col)
        right = cell.col + cell.col_span - (cell.col + cell.col_span > col + 1)
        kept.append(GridCell(cell.row, left, cell.lines, cell.row_span, max(1, right - left), cell.fill))
        if cell.col == col + 1:
            kept[-1].code = codes.get(cell.row, "")
    columns = [*grid.columns[:col], *grid.columns[col + 1 :]]
    return Grid(kept, grid.rows, grid.cols - 1, grid.box, grid.found, columns)


def _is_code(cell: GridCell, hints: Hints) -> bool:
    return (
        cell.empty
        or TICK.fullmatch(cell.plain) is not None
        or _is_coded_text(cell.plain)
        or hints.heads_codes(cell.plain)
    )


def _is_coded_text(text: str) -> bool:
    """Tell whether a text is the code of an option or the number of a row."""
    text = BOX.sub("", text, count=1) if BOX.match(text) else text
    return CODE.fullmatch(text) is not None or NUMBER.fullmatch(text) is not None


def _is_coded(grid: Grid, col: int, hints: Hints) -> bool:
    cells = [
        cell
        for cell in grid.cells
        if cell.col == col and cell.col_span == 1 and not cell.empty and len(grid.row_cells(cell.row)) > 1
    ]
    if not cells or _is_ticked(grid, cells):
        return bool(cells)
    head = next((n for n, cell in enumerate(cells[:HEAD_ROWS]) if hints.heads_codes(cell.plain)), None)
    named = head is not None
    body = cells[1 if head is None else head + 1 :] if named or not _is_coded_text(cells[0].plain) else cells
    codes = [cell for cell in body if _is_coded_text(cell.plain)]
    if len(codes) < (1 if named else MIN_CODES) or len(codes) < CODED_SHARE * len(body):
        return False
    if named:
        return not _heads_things(grid, col, hints)  # "Code" over vans: "C60", "C64", beside their lengths and tanks
    if not _begins_with_code(grid, col) and _heads_properties(grid, col, hints):
        return False  # the codes are names of vans: "FWD" behind "W-45" is a value under "Drive"
    lettered = any(c.isalpha() for cell in codes for c in cell.plain)
    if len({cell.plain for cell in codes}) < len(codes) or not (lettered or _count_rows(codes) or _rise(codes)):
        return False
    beside = [grid.at(cell.row, col + 1) for cell in codes]
    return col == 0 and sum(labelish(cell, hints) for cell in beside) >= LABEL_SHARE * len(beside)


def _is_ticked(grid: Grid, cells: list[GridCell]) -> bool:
    """Tell whether a first column only says what was chosen of things whose rows tell how they can be had.

    "☐ | Gray tank heating pad | Option, +$420".
    """
    ticks = all(cell.col == 0 and TICK.fullmatch(cell.plain) for cell in cells)
    told = ticks and all(len(grid.row_cells(cell.row)) == len(grid.row_cells(cells[0].row)) > 2 for cell in cells)
    return told and any(CHOSEN.fullmatch(cell.plain) for cell in cells)


def _begins_with_code(grid: Grid, col: int) -> bool:
    """Tell whether the first row of several cells has a code itself, with letters: it is no row of heads."""
    first = next((cells for cells in map(grid.row_cells, range(grid.rows)) if len(cells) > 1), [])
    codes = [cell.plain for cell in first if cell.col == col]
    return any(_is_coded_text(code) and any(map(str.isalpha, BOX.sub("", code))) for code in codes)


def _heads_properties(grid: Grid, col: int, hints: Hints) -> bool:
    """Tell whether the first row of several cells has known labels over most columns behind one."""
    heads = _heads_behind(grid, col)
    return sum(map(hints.is_label, heads)) > LABEL_SHARE * len(heads)


def _heads_things(grid: Grid, col: int, hints: Hints) -> bool:
    """Tell whether the first row names different things of a van over most columns behind one, as no list of options.

    Over these stand a description, a price and what fits which van.
    """
    heads = _heads_behind(grid, col)
    things = sum(map(hints.names_thing, heads))
    return things >= MIN_THINGS and things > LABEL_SHARE * len(heads)


def _heads_behind(grid: Grid, col: int) -> list[str]:
    first = next((cells for cells in map(grid.row_cells, range(grid.rows)) if len(cells) > 1), [])
    return [cell.plain for cell in first if cell.col > col]


def _count_rows(cells: list[GridCell]) -> bool:
    """Tell whether cells number the rows: each number is one of those that can stand behind the one above it."""
    if not all(NUMBER.fullmatch(cell.plain) for cell in cells):
        return False
    numbers = [tuple(map(int, re.findall(r"\d+", cell.plain))) for cell in cells]
    return all(map(_follows, numbers, numbers[1:]))


def _rise(cells: list[GridCell]) -> bool:
    """Tell whether cells are numbers of three figures or more, as many in each, that rise: "1101", "1104", "2001"."""
    texts = [cell.plain for cell in cells]
    alike = len({len(text) for text in texts}) == 1 and len(texts[0]) >= LONG_NUMBER
    return alike and all(map(str.isdecimal, texts)) and texts == sorted(texts)


def _follows(above: tuple[int, ...], below: tuple[int, ...]) -> bool:
    """Tell whether a number can stand right below another: 1.9 and 1.10, 3.8 and 4.1, 2 and 2.1."""
    shared = next((n for n, (one, other) in enumerate(zip(above, below, strict=False)) if one != other), len(above))
    counted = below[shared:] if shared == len(above) else (below[shared] - above[shared], *below[shared + 1 :])
    return len(below) > shared and all(number == 1 for number in counted)


def unit_row(grid: Grid, rows: list[int], hints: Hints) -> int | None:
    """Give the lowest of the head rows where it holds only units, or "metric" and "US", each pair under one head."""
    if len(rows) < 2:
        return None
    row = rows[-1]
    cells = [cell for cell in grid.row_cells(row) if cell.col > 0]
    if len(cells) < 2 or not all(is_measure(cell.plain, hints) for cell in cells):
        return None
    over = [grid.at(rows[-2], cell.col) for cell in cells]
    named = [cell for cell in over if cell is not None and not cell.empty]
    return row if len({id(cell) for cell in named}) < len(cells) and len(named) == len(cells) else None


def spread_over_units(grid: Grid, rows: list[int], hints: Hints) -> None:
    """Let each name above "US" and "metric" head all of these up to the next name, where the same ones come under each.

    Without rules a name stands above the first of its columns only.
    """
    if len(rows) < 2:
        return
    lower = [cell for cell in grid.row_cells(rows[-1]) if cell.col > 0]
    upper = [cell for cell in grid.row_cells(rows[-2]) if cell.col > 0]
    if not upper or len(upper) >= len(lower) or not all(is_measure(cell.plain, hints) for cell in lower):
        return
    ends = [*(cell.col for cell in upper[1:]), grid.cols]
    under = [[cell for cell in lower if one.col <= cell.col < end] for one, end in zip(upper, ends, strict=True)]
    alike = len({tuple(cell.plain.casefold() for cell in cells) for cells in under}) == 1
    if (
        alike
        and sum(map(len, under)) == len(lower)
        and all(c[0].col == u.col for c, u in zip(under, upper, strict=True))
    ):
        for cell, end in zip(upper, ends, strict=True):
            cell.col_span = end - cell.col


def spread_first_lines(heads: dict[int, list[GridCell]]) -> dict[int, list[GridCell]]:
    """Do the same where ranges and codes were read as one row of heads, "Drift" as the first line of "Drift 19"."""
    columns = sorted(col for col in heads if col > 0)
    cells = [heads[col][0] for col in columns if len(heads[col]) == 1 and len(heads[col][0].lines) in (1, 2)]
    over = [cell for cell in cells if len(cell.lines) == 2 and not has_digit(cell.lines[0].text)]
    if not 1 < len(over) < len(cells) == len(columns) or cells[0] is not over[0] or any(c.col_span > 1 for c in cells):
        return heads
    lines = [cell.lines[-1] for cell in cells]
    level = max(line.base for line in lines) - min(line.base for line in lines)
    if level > lines[0].size or not all(NAME_CODE.fullmatch(line.text) for line in lines):
        return heads
    found, above = dict(heads), over[0]
    for col, cell in zip(columns, cells, strict=True):
        above = cell if cell in over else above
        own = GridCell(cell.row, cell.col, cell.lines[-1:], cell.row_span, 1, cell.fill)
        found[col] = [GridCell(above.row, above.col, above.lines[:1], 1, 1, above.fill), own]
    return found


def spread_over_names(grid: Grid, rows: list[int]) -> None:
    """Let each name of a range head all of the columns up to the next range, where codes or the same trims come below.

    "Drift" stands above "19" only, and is that of "21" beside it too.
    """
    if len(rows) < 2:
        return
    lower = [cell for cell in grid.row_cells(rows[-1]) if cell.col > 0]
    upper = [cell for cell in grid.row_cells(rows[-2]) if cell.col > 0]
    columns = {cell.col for cell in lower}
    if not 1 < len({cell.plain for cell in upper}) == len(upper) < len(lower) or upper[0].col != lower[0].col:
        return
    if any(cell.col_span > 1 or cell.col not in columns or has_digit(cell.plain) for cell in upper):
        return
    ends = [*(cell.col for cell in upper[1:]), grid.cols]
    under = [[c.plain for c in lower if one.col <= c.col < end] for one, end in zip(upper, ends, strict=True)]
    coded = all(NAME_CODE.fullmatch(cell.plain) for cell in lower)
    again = len({cell.plain for cell in lower}) < len(lower) and all(len(set(some)) == len(some) for some in under)
    if coded or again:
        for cell, end in zip(upper, ends, strict=True):
            cell.col_span = end - cell.col


def is_measure(text: str, hints: Hints) -> bool:
    """Tell whether a head is a unit or the name of a system of units."""
    return hints.is_unit(text) or hints.is_unit_system(text)


def group_rows(grid: Grid, rows: list[int]) -> list[int]:
    """Give the head rows that only group the heads below them, where those are whole names: "Drift 19", "Drift 21"."""
    if len(rows) < 2:
        return []
    lower = [cell for cell in grid.row_cells(rows[-1]) if cell.col > 0]
    above = [cell for row in rows[:-1] for cell in grid.row_cells(row) if cell.col > 0]
    spans = all(cell.col_span > 1 for cell in above)
    return rows[:-1] if spans and one_series(lower) and not any(has_digit(cell.plain) for cell in above) else []


def one_series(cells: list[GridCell]) -> bool:
    """Tell whether cells are names of one series, as "Tarn 19" and "2027 Tarn 21": one word, other codes."""
    words = [YEAR.sub("", cell.plain).split() for cell in cells]
    if len(words) < 2 or any(len(parts) < 2 or len(parts) > 4 for parts in words):
        return False
    firsts = {parts[0] for parts in words}
    rests = {" ".join(parts[1:]) for parts in words}
    return len(firsts) == 1 and len(rests) == len(words) and next(iter(firsts)).isalpha() and all(map(has_digit, rests))
