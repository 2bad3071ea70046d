"""Names in a row of their own above the parts of a comparison: "Drift 19 | Drift 21", then headings and rows."""

from __future__ import annotations

from lxml import html

from specscan.reading.tables.compose import Hints
from specscan.reading.tables.grid import GridCell
from specscan.reading.tables.heads import ReadTable
from specscan.reading.tables.parting import has_digit
from specscan.reading.web.rows import COLUMN, MAX_COLUMNS, MIN_COLUMNS, TITLE_WORDS, page_grid, rows_of, run_of_rows
from specscan.reading.web.text import HEADINGS, full_text, html_line, is_block, squash
from specscan.reading.web.visible import Visibility

ROWS, CELLS = ("table", "thead", "tbody", "tr"), ("td", "th")
NO_HEADS = ("li", "p", "dl", "ul", "ol", "details", "select", "nav", *ROWS, *HEADINGS)
DEEP = 6  # elements within each other in which the first row is looked for


def lone_heads(seen: Visibility, children: list[html.HtmlElement], place: int, hints: Hints) -> ReadTable | None:
    """Give the heads of the tables that follow, where an element holds one for each of their columns and nothing else.

    Its first part, over the labels, is empty or says what the table is ("Model"); what follows are headings and then
    rows of as many parts.
    """
    element = children[place]
    if (
        not isinstance(element.tag, str)
        or element.tag in NO_HEADS
        or squash((element.text or "") + (element.tail or ""))
    ):
        return None
    cells = [cell for cell in element if isinstance(cell.tag, str) and seen.sees(cell)]
    if not MIN_COLUMNS <= len(cells) <= MAX_COLUMNS or any(squash(cell.tail or "") for cell in cells):
        return None
    texts = [squash(full_text(seen, cell)) for cell in cells]
    if texts[0] and not hints.heads_labels(texts[0]) or not all(_may_head(text, hints) for text in texts[1:]):
        return None
    if len(set(texts[1:])) < len(texts) - 1 or any(is_block(seen, inner) for cell in cells for inner in cell):
        return None
    if _columns_below(seen, children[place + 1 :], hints, DEEP) != len(cells):
        return None
    heads = {
        col: [GridCell(0, col, [html_line(text, offset=col * COLUMN, bold=True)])]
        for col, text in enumerate(texts)
        if text
    }
    return ReadTable(heads=heads, columns=list(page_grid([], 1, len(cells)).columns))


def _may_head(text: str, hints: Hints) -> bool:
    """Tell whether a text may name a van over its column: short, with a capital or a figure, and no label."""
    named = text[:1].isupper() or has_digit(text)
    return named and len(text.split()) <= TITLE_WORDS and text[-1] not in ".:?!," and not hints.is_label(text)


def _columns_below(seen: Visibility, elements: list[html.HtmlElement], hints: Hints, deep: int) -> int | None:
    """Give how many columns the rows have that stand first in some elements, below headings alone; 0 without such."""
    for place, child in enumerate(elements):
        if not isinstance(child.tag, str) or not seen.sees(child):
            continue
        if child.tag in HEADINGS or child in seen.openers.heads:
            continue
        if child.tag == "table":
            row = child.find(".//tr")
            return sum(cell.tag in CELLS for cell in row) if row is not None else 0
        if squash(child.text or ""):
            return 0
        run = run_of_rows(seen, elements, place, hints)
        grid = run[1] if run is not None else rows_of(seen, child, hints)
        if grid is not None:
            return grid.cols
        if deep == 0 or not len(child):
            return 0
        inner = _columns_below(seen, list(child), hints, deep - 1)
        if inner is not None:
            return inner
    return None
