"""Tables that web pages make of ``div`` and ``span``: rows of parts, and labels that alternate with values."""

from __future__ import annotations

import itertools
from collections.abc import Iterable

from lxml import html

from specscan.reading.tables.compose import Hints
from specscan.reading.tables.grid import Grid, GridCell
from specscan.reading.tables.parting import has_digit
from specscan.reading.text.plain import PITCH
from specscan.reading.web.text import HEADINGS, NO_ROWS, STRONG, full_text, html_line, is_block, squash
from specscan.reading.web.visible import Visibility
from specscan.records.text import Box

LABEL_SHARE = 0.5  # of the parts before values that are known labels
VALUE_SHARE = 0.8  # of the known labels: so many values may read like labels
MIN_ALTERNATING = 6
MIN_COLUMNS, MAX_COLUMNS, LEAST_ROWS = 3, 8, 3
TITLE_WORDS = 7
COLUMN = 400.0  # points that a column of a table is given


def rows_of(seen: Visibility, element: html.HtmlElement, hints: Hints) -> Grid | None:
    """Give a grid for a container whose children are rows of the same number of short parts.

    At least three rows of two to eight leaves each, as in tables made of ``div`` and ``span``. Tiles of two parts may
    have the value above its label.
    """
    rows = [child for child in element if isinstance(child.tag, str) and seen.sees(child)]
    if len(rows) < 3 or any(row.tag in NO_ROWS for row in rows):
        return None
    parted = [_parts(seen, row) for row in rows]
    counts = [len(cells) for cells in parted if cells is not None]
    if len(counts) < len(rows):
        return None
    usual = max(set(counts), key=counts.count)
    alike = sum(count == usual for count in counts)
    if not 2 <= usual <= 8 or alike < 3 or alike < 0.7 * len(rows):
        return None
    made = [cells for cells in parted if cells is not None]
    return _div_grid(seen, _labels_first(seen, made, hints) if usual == 2 else made, usual)


def _labels_first(seen: Visibility, rows: list[list[html.HtmlElement]], hints: Hints) -> list[list[html.HtmlElement]]:
    """Give rows of two parts with the labels before the values, where these stand above them: "28 gal", "fresh water".

    So they do where the figures are among the first parts and most of the known labels among the second.
    """
    pairs = [row for row in rows if len(row) == 2]
    firsts, seconds = [row[0] for row in pairs], [row[1] for row in pairs]
    figures, others = (sum(has_digit(squash(full_text(seen, one))) for one in part) for part in (firsts, seconds))
    known = _known(seen, seconds, hints)
    if figures <= others or known < LABEL_SHARE * len(pairs) or 2 * _known(seen, firsts, hints) > known:
        return rows
    return [row[::-1] if len(row) == 2 else row for row in rows]


def list_rows(seen: Visibility, element: html.HtmlElement, hints: Hints) -> Grid | None:
    """Give a grid for a list whose items are all a label and its value, each in an element of its own."""
    items = [child for child in element if isinstance(child.tag, str) and seen.sees(child)]
    if len(items) < 2 or any(item.tag != "li" for item in items):
        return None
    parted = [_cells(seen, item) for item in items]
    rows = [cells for cells in parted if cells is not None and len(cells) == 2]
    if len(rows) < len(items) or any(squash(full_text(seen, cells[0])).endswith((".", "!", "?")) for cells in rows):
        return None
    return _div_grid(seen, rows, 2) if _are_labels(seen, [cells[0] for cells in rows], hints) else None


def described_in_columns(seen: Visibility, element: html.HtmlElement, hints: Hints) -> Grid | None:
    """Give a grid for a list of terms each of which has equally many descriptions: one for each column of a table."""
    rows: list[list[html.HtmlElement]] = []
    for child in element.iter("dt", "dd"):
        if not seen.sees(child):
            continue
        if child.tag == "dt":
            rows.append([child])
        elif not rows:
            return None
        else:
            rows[-1].append(child)
    cols = len(rows[0]) if len(rows) >= LEAST_ROWS else 0
    if not MIN_COLUMNS <= cols <= MAX_COLUMNS or any(len(row) != cols for row in rows):
        return None
    labels = [row[0] for row in rows if squash(full_text(seen, row[0]))]
    return _div_grid(seen, rows, cols) if labels and _are_labels(seen, labels, hints) else None


def _parts(seen: Visibility, row: html.HtmlElement) -> list[html.HtmlElement] | None:
    """Give the parts of an element that can be a row of a table, ``None`` where it holds text or blocks of its own."""
    return _cells(seen, row) if isinstance(row.tag, str) and row.tag not in NO_ROWS else None


def _cells(seen: Visibility, row: html.HtmlElement) -> list[html.HtmlElement] | None:
    if squash(row.text or ""):
        return None
    cells = [cell for cell in row if isinstance(cell.tag, str) and seen.sees(cell)]
    for cell in cells:
        if squash(cell.tail or "") or cell.tag in HEADINGS or cell.tag == "p":
            return None
        if any(is_block(seen, inner) for inner in cell) or len(squash(full_text(seen, cell)).split()) > 14:
            return None
    return cells


def run_of_rows(
    seen: Visibility, children: list[html.HtmlElement], start: int, hints: Hints
) -> tuple[int, Grid] | None:
    """Give the end of a run of rows that stands among other children from ``start`` on, and its grid.

    Three or more rows of equally many parts, between which headings group them; rows of two parts are labels and
    values, most of the labels known. Among rows of more parts a known label may have one value for all columns, and
    a short text alone, of the kind of others or said to be a row, is a heading: the head above holds for all groups.
    """
    first = _parts(seen, children[start])
    if first is None or not 2 <= len(first) <= 8:
        return None
    rows: list[list[html.HtmlElement]] = []
    end, place, count = start, start, 0
    while place < len(children):
        child = children[place]
        if isinstance(child.tag, str) and seen.sees(child):
            alone = child.tag in HEADINGS or len(first) > 2 and _is_group(seen, child)
            parts = [child] if alone else _parts(seen, child)
            shared = parts is not None and len(parts) == 2 < len(first) and _are_labels(seen, parts[:1], hints)
            if parts is None or len(parts) not in (1, len(first)) and not shared or squash(child.tail or ""):
                break
            rows.append(parts)
            if len(parts) > 1:
                end, count, last = place + 1, count + 1, len(rows)
        place += 1
    if count < 3:
        return None
    if len(first) == 2 and not _are_labels(seen, [parts[0] for parts in rows[:last] if len(parts) > 1], hints):
        return None
    return end, _div_grid(seen, rows[:last], len(first))


def _is_group(seen: Visibility, row: html.HtmlElement) -> bool:
    """Tell whether a row is the title of those below it: a short text alone, the element marked as others are."""
    text = squash(full_text(seen, row))
    if len(row) or row.tag in (*NO_ROWS, "p") or not text[:1].isalnum() or text[-1:] in ".:?!,":
        return False
    return len(text.split()) <= TITLE_WORDS and (row.get("role") == "row" or _has_sister(row))


def _are_labels(seen: Visibility, elements: list[html.HtmlElement], hints: Hints) -> bool:
    return _known(seen, elements, hints) >= LABEL_SHARE * len(elements)


def _known(seen: Visibility, elements: list[html.HtmlElement], hints: Hints) -> int:
    """Give how many of some elements are known labels."""
    return sum(hints.is_label(squash(full_text(seen, one)).rstrip(":")) for one in elements)


def alternating(seen: Visibility, element: html.HtmlElement, hints: Hints) -> Grid | None:
    """Give a grid for a container whose children are by turns a label and its value, as in a grid of two columns."""
    parts = _parts(seen, element)
    if parts is None or len(parts) < MIN_ALTERNATING or len(parts) % 2:
        return None
    labels, values = parts[::2], parts[1::2]
    known = _known(seen, labels, hints)
    if known < LABEL_SHARE * len(labels) or _known(seen, values, hints) > VALUE_SHARE * known:
        return None
    return _div_grid(seen, [list(pair) for pair in zip(labels, values, strict=True)], 2)


def laid_out(seen: Visibility, element: html.HtmlElement, hints: Hints) -> Grid | None:
    """Give a grid for a container whose children are the cells of a table one after another, three columns or more.

    How many stand in a row the page's style says, or the kind of element that opens each row. Most of the first
    column are known labels.
    """
    cells = _parts(seen, element)
    if cells is None or len(cells) < LEAST_ROWS * MIN_COLUMNS:
        return None
    cols = seen.columns_of(element) or _period(cells)
    if not MIN_COLUMNS <= cols <= MAX_COLUMNS or len(cells) % cols or len(cells) < LEAST_ROWS * cols:
        return None
    labels = [cell for cell in cells[::cols] if squash(full_text(seen, cell))]
    if not labels or not _are_labels(seen, labels, hints):
        return None
    return _div_grid(seen, [cells[start : start + cols] for start in range(0, len(cells), cols)], cols)


def _period(cells: list[html.HtmlElement]) -> int:
    """Give after how many elements one of the kind of the first comes again, each time; 0 where it does not so."""
    kind = (cells[0].tag, cells[0].get("class"))
    found = [place for place, cell in enumerate(cells) if (cell.tag, cell.get("class")) == kind]
    step = found[1] if len(found) > 1 else 0
    return step if step and found == list(range(0, len(cells), step)) else 0


def card_title(seen: Visibility, element: html.HtmlElement, hints: Hints) -> html.HtmlElement | None:
    """Give the child that is the title of a card: the first short text of one of several containers of one kind.

    A card holds more below its title, and the title is no label, figure or sentence.
    """
    if not element.get("class") or element.tag in NO_ROWS or squash(element.text or ""):
        return None
    shown = (child for child in element if seen.sees(child))
    first = next((child for child in shown if squash(full_text(seen, child))), None)
    if first is None or first.tag in NO_ROWS or any(is_block(seen, child) for child in first):
        return None
    text = squash(full_text(seen, first))
    short = len(text.split()) <= TITLE_WORDS and text[:1].isalnum() and text[-1:] not in ".:?!,"
    plain = has_digit(text) or not hints.is_label(text)
    return first if short and plain and _has_sister(element) and _has_rows(seen, shown, hints) else None


def _has_sister(element: html.HtmlElement) -> bool:
    """Tell whether a container of the same kind stands beside one; most often the next is one."""
    beside = itertools.chain(element.itersiblings(element.tag), element.itersiblings(element.tag, preceding=True))
    return any(one.get("class") == element.get("class") for one in beside)


def _has_rows(seen: Visibility, shown: Iterable[html.HtmlElement], hints: Hints) -> bool:
    """Tell whether labels or a list stand below the title of a card."""
    for child in shown:
        if child.tag in ("ul", "ol", "dl", "table") or rows_of(seen, child, hints) or alternating(seen, child, hints):
            return True
        parts = _parts(seen, child)
        if parts and len(parts) == 2 and _are_labels(seen, parts[:1], hints):
            return True
    return False


def _div_grid(seen: Visibility, rows: list[list[html.HtmlElement]], cols: int) -> Grid:
    made = []
    for number, cells in enumerate(rows):
        for col, cell in enumerate(cells):
            bold = cell.tag in STRONG and col > 0
            line = html_line(full_text(seen, cell), row=number, offset=col * COLUMN, bold=bold)
            span = cols - 1 if col == 1 and len(cells) == 2 else 1
            made.append(GridCell(number, col, [line] if line.words else [], col_span=span))
    return page_grid(made, len(rows), cols)


def page_grid(cells: list[GridCell], rows: int, cols: int) -> Grid:
    """Give a grid of cells that were placed by ``html_line``, ``COLUMN`` points from one column to the next."""
    spans = [(col * COLUMN, (col + 1) * COLUMN - 10) for col in range(cols)]
    return Grid(cells, rows, cols, Box(0, 0, cols * COLUMN, rows * PITCH), "html", spans)
