"""The reader for saved web pages: a parsed tree → the same passages as a page of a PDF."""

from __future__ import annotations

import re
from dataclasses import dataclass, field, replace

from lxml import html

from specscan.reading.layout.assemble import Assembler
from specscan.reading.layout.item import Item
from specscan.reading.letters.words import Line, is_bullet
from specscan.reading.tables.compose import Hints
from specscan.reading.tables.grid import Grid, GridCell
from specscan.reading.tables.parting import column_cells
from specscan.reading.text.plain import EM, PITCH
from specscan.reading.web.lone_heads import lone_heads
from specscan.reading.web.rows import (
    COLUMN,
    alternating,
    card_title,
    described_in_columns,
    laid_out,
    list_rows,
    page_grid,
    rows_of,
    run_of_rows,
)
from specscan.reading.web.text import (
    HEADINGS,
    JOINED,
    STRONG,
    all_strong,
    full_text,
    html_line,
    inline_text,
    is_block,
    set_apart,
    squash,
)
from specscan.reading.web.tree import LIMIT_DEPTH, parse
from specscan.reading.web.visible import Visibility
from specscan.records.errors import DocumentError
from specscan.records.text import Box, Document, Kind, PageState, Title

LABEL_WORDS = 7
FEWEST_COMPARED = 3  # columns of a table that can go on with another: labels and two vans
LABEL_SHARE = 0.4  # of its labels: those that are known
DASH = re.compile(r"[-–—]\s*(?=[^\s\d])")  # behind a colon: before a figure it is a minus
JOINT = re.compile(r"[-–—](?!\d)\s*(?=\S)")  # without a colon: "Length – 6.4 m"
CARD_LEVEL = 5  # of the title of a card, among headings
OPENER_LEVEL = 4  # of the head of an accordion, and of a tab
LIMIT_COLUMNS = 200  # of one table; no specification has more
LIMIT_CELLS = 100_000  # of one table, counting a cell once for each row and column that it spans


@dataclass(slots=True)
class Reader:
    """State while walking one page."""

    assembler: Assembler
    seen: Visibility
    titles: list[Title]
    said: set[str] = field(default_factory=set)
    read: int = 0  # passages up to the end of the last table


def read_html(data: bytes, path: str, sha256: str, hints: Hints) -> Document:
    """Read a saved web page.

    Raises:
        DocumentError: the file is empty or no HTML can be parsed out of it.
    """
    if not data.strip():
        raise DocumentError("the file is empty")
    root, said = parse(data)
    assembler = Assembler(hints, places=False)
    reader = Reader(assembler, Visibility(root), [])
    title = root.findtext(".//title")
    if title and title.strip():
        reader.titles.append(Title(squash(title), 0, 0.0, "html"))
    body = root.find("body")
    _walk(reader, body if body is not None else root, 0)
    return Document(
        path=path,
        sha256=sha256,
        kind="html",
        passages=tuple(assembler.passages),
        titles=(*reader.titles, *assembler.corners),
        pages=(PageState(0, None, None, True),),
        language=(root.get("lang") or "").split("-")[0].lower(),
        message="; ".join([*said, *sorted(reader.said)]),
        metadata={"lang": root.get("lang") or ""},
    )


def _walk(reader: Reader, element: html.HtmlElement, depth: int) -> None:
    if depth > LIMIT_DEPTH or not reader.seen.sees(element):
        return
    title = reader.seen.openers.titles.get(element)
    if title and not squash(full_text(reader.seen, element)).startswith(title):
        _add_panel(reader, element, depth, title)
        return
    _walk_seen(reader, element, depth)


def _add_panel(reader: Reader, element: html.HtmlElement, depth: int, title: str) -> None:
    """Add a panel below the words of the tab that shows it."""
    stack = list(reader.assembler.stack)
    _add_title(reader, title, OPENER_LEVEL)
    _walk_seen(reader, element, depth)
    reader.assembler.stack = stack


def _walk_seen(reader: Reader, element: html.HtmlElement, depth: int) -> None:
    tag = element.tag
    if tag in HEADINGS:
        _add_heading(reader, element, HEADINGS[tag])
    elif tag == "table":
        _add_table(reader, element, depth)
    elif tag == "dl":
        _add_pairs(reader, element)
    elif tag == "li":
        _add_list_item(reader, element, depth)
    elif tag == "pre":
        _add_text(reader, element.text_content(), Kind.PROSE)
    else:
        hints = reader.assembler.hints
        rows = list_rows(reader.seen, element, hints) if tag in ("ul", "ol") else rows_of(reader.seen, element, hints)
        rows = rows or laid_out(reader.seen, element, hints) or alternating(reader.seen, element, hints)
        if rows is not None:
            _add_grid(reader, rows)
        else:
            _add_mixed(reader, element, depth)


def _add_mixed(reader: Reader, element: html.HtmlElement, depth: int) -> None:
    """Add the children of a container: runs of inline text become paragraphs, blocks are walked."""
    if element.tag in ("section", "article", "aside", "main", "div"):
        reader.assembler.begin_block()
    stack = list(reader.assembler.stack)
    run: list[tuple[str, bool]] = [(element.text or "", False)]
    children, end = list(element), 0
    titled = card_title(reader.seen, element, reader.assembler.hints)
    beside = False  # right behind an inline element, with no text between
    for place, child in enumerate(children):
        if place < end:
            continue
        if child is titled:
            _flush(reader, run)
            _add_heading(reader, child, CARD_LEVEL)
            continue
        if child in reader.seen.openers.heads:
            _flush(reader, run)
            _add_heading(reader, child, OPENER_LEVEL)
            continue
        rows = run_of_rows(reader.seen, children, place, reader.assembler.hints)
        heads = None if rows else lone_heads(reader.seen, children, place, reader.assembler.hints)
        if heads is not None:
            _flush(reader, run)
            reader.assembler.last_table, reader.read = heads, len(reader.assembler.passages)
        elif rows is not None:
            _flush(reader, run)
            end, grid = rows
            _add_grid(reader, grid)
        elif is_block(reader.seen, child):
            _flush(reader, run)
            _walk(reader, child, depth + 1)
        elif isinstance(child.tag, str) and child.tag == "br":
            _flush(reader, run)
        elif reader.seen.sees(child):
            inner = inline_text(reader.seen, child)
            if beside and child.tag not in JOINED and set_apart(run[-2][0], inner):
                inner = f" {inner}"
            run.append((inner, child.tag in STRONG))
        beside = isinstance(child.tag, str) and child.tag not in (*JOINED, "br") and not child.tail and len(run) > 1
        run.append((child.tail or "", False))
    _flush(reader, run)
    if element in reader.seen.openers.boxes or element.tag in ("aside", "article", "details"):
        reader.assembler.stack = stack


def _add_grid(reader: Reader, grid: Grid) -> None:
    """Add a table as a block of its own; it may go on with the table above it."""
    assembler = reader.assembler
    if not _goes_on(reader, grid):
        assembler.last_table = None
    assembler.begin_block()
    assembler.add_grid(0, grid)
    reader.read = len(assembler.passages)


def _goes_on(reader: Reader, grid: Grid) -> bool:
    """Tell whether a table may stand under the heads of the one above it: only a heading or caption is between.

    So a page parts the rows of one comparison, the vans named over the first part alone.
    """
    assembler = reader.assembler
    above = assembler.last_table
    if above is None or not FEWEST_COMPARED <= grid.cols == len(above.columns):
        return False
    between = assembler.passages[reader.read :]
    labels = [cell.plain for cell in column_cells(grid, 0)]
    known = sum(map(assembler.hints.is_label, labels)) >= LABEL_SHARE * len(labels)
    only_headings = all(passage.kind is Kind.HEADING for passage in between)
    if not above.cells:
        return only_headings  # heads alone: rows of as many columns were seen to follow them
    return known and bool(between) and only_headings


def _flush(reader: Reader, run: list[tuple[str, bool]]) -> None:
    """Add a run of inline text, which is empty then."""
    parts, whole = [(text, strong) for text, strong in run if text.strip()], "".join(text for text, _ in run)
    run.clear()
    if not parts:
        return
    label = squash(parts[0][0])
    rest = squash("".join(text for text, _ in parts[1:]))
    if parts[0][1] and rest[:1].isupper() and label.endswith(".") and len(label.split()) <= LABEL_WORDS:
        _add_title(reader, label, CARD_LEVEL)  # "<b>Drift 19.</b> The little one."
        _add_text(reader, rest, Kind.PROSE)
        return
    if parts[0][1] and rest and len(label.split()) <= LABEL_WORDS and label[-1:] not in ".!?,":
        _add_joined(reader, label, rest)
        return
    _add_text(reader, whole, Kind.PROSE)


def _add_heading(reader: Reader, element: html.HtmlElement, level: int) -> None:
    text = squash(full_text(reader.seen, element))
    if text:
        _add_title(reader, text, level)


def _add_title(reader: Reader, text: str, level: int) -> None:
    size = EM * (2.6 - 0.2 * level)
    reader.assembler.add_item(0, Item(Kind.HEADING, [html_line(text, size=size, bold=True)], level=size, strong=True))
    if level <= 2:
        reader.titles.append(Title(text, 0, size, "page"))


def _add_text(reader: Reader, text: str, kind: Kind) -> None:
    line = html_line(text)
    if not line.words:
        return
    first = line.words[0]
    if len(line.words) > 1 and is_bullet(first.text) and first.text != "-":
        item = Item(Kind.BULLET, [Line(line.words[1:])], mark=first.text)
    elif re.fullmatch(r"\*{1,3}|†|‡|[¹²³⁴⁵⁶⁷⁸⁹]|\[\d\]", first.text) and len(line.words) > 1:
        item = Item(Kind.FOOTNOTE, [Line(line.words[1:])], sign=first.text)
    elif match := re.match(r"([¹²³⁴⁵⁶⁷⁸⁹]|[*†‡]{1,3})(?=\w)", first.text):
        rest = replace(first, text=first.text[match.end() :])
        item = Item(Kind.FOOTNOTE, [Line([rest, *line.words[1:]])], sign=match.group(1))
    else:
        item = Item(kind, [line])
    reader.assembler.add_item(0, item)


def _add_joined(reader: Reader, label: str, rest: str) -> None:
    """Add a label and what stands behind it as a pair, without the colon or dash between them."""
    colon = label.endswith(":") or rest.startswith(":")
    value = rest.lstrip(": ")
    joint = (DASH if colon else JOINT).match(value)
    _add_pair(reader, label.rstrip(":"), value[joint.end() :] if joint else value)


def _add_pair(reader: Reader, label: str, value: str) -> None:
    cells = [
        GridCell(0, 0, [html_line(label)]),
        GridCell(0, 1, [html_line(value, offset=400)]),
    ]
    grid = Grid(cells, 1, 2, Box(0, 0, 800, PITCH), "text", [(0.0, 390.0), (400.0, 800.0)])
    reader.assembler.last_table = None
    reader.assembler.add_grid(0, grid)


def _add_list_item(reader: Reader, element: html.HtmlElement, depth: int) -> None:
    blocks = [child for child in element if is_block(reader.seen, child) and reader.seen.sees(child)]
    if blocks and any(child.tag in ("ul", "ol", "table", "dl") for child in blocks):
        lead = squash(element.text or "")
        for child in element:
            if child in blocks:
                continue
            lead += " " + inline_text(reader.seen, child) + (child.tail or "")
        if lead.strip():
            _add_text(reader, lead, Kind.BULLET)
        for child in blocks:
            _walk(reader, child, depth + 1)
        return
    strong = next((child for child in element if isinstance(child.tag, str)), None)
    if strong is not None and strong.tag in STRONG | {"span"} and not squash(element.text or ""):
        label = squash(inline_text(reader.seen, strong))
        rest = squash(full_text(reader.seen, element))[len(label) :].strip()
        listed = strong.tag in STRONG or rest.startswith(":") or label.endswith(":")
        if label and rest and listed and len(label.split()) <= LABEL_WORDS and label[-1] not in ".!?,":
            _add_joined(reader, label, rest)
            return
    _add_text(reader, full_text(reader.seen, element), Kind.BULLET)


def _add_pairs(reader: Reader, element: html.HtmlElement) -> None:
    grid = described_in_columns(reader.seen, element, reader.assembler.hints)
    if grid is not None:
        _add_grid(reader, grid)
        return
    labels: list[str] = []
    for child in element.iter("dt", "dd"):
        if not reader.seen.sees(child):
            continue
        text = squash(full_text(reader.seen, child))
        if child.tag == "dt":
            labels = [text]
        elif text and labels:
            _add_pair(reader, labels[-1], text)


def _add_table(reader: Reader, element: html.HtmlElement, depth: int) -> None:
    caption = element.find("caption")
    if caption is not None:
        _walk(reader, caption, depth + 1)
    grid = _table_grid(reader, element)
    if grid is None:
        for cell in element.iter("td", "th"):
            _add_mixed(reader, cell, depth + 1)
        return
    _add_grid(reader, grid)


def _table_grid(reader: Reader, element: html.HtmlElement) -> Grid | None:
    taken: dict[tuple[int, int], bool] = {}
    cells: list[GridCell] = []
    rows = 0
    for row in element.iter("tr"):
        if not reader.seen.sees(row) or next(row.iterancestors("table")) is not element:
            continue
        col = 0
        in_head = any(parent.tag == "thead" for parent in row.iterancestors())
        alone = sum(child.tag in ("td", "th") for child in row)
        strong = {cell for cell in row if cell.tag in ("td", "th") and all_strong(reader.seen, cell)}
        heavy_row = all(child.tag == "td" and child in strong for child in row if squash(child.text_content()))
        for cell in row:
            if cell.tag not in ("td", "th") or not reader.seen.sees(cell):
                continue
            while taken.get((rows, col)):
                col += 1
            tall, wide = _span(cell, "rowspan"), _span(cell, "colspan")
            if col + wide > LIMIT_COLUMNS or len(taken) + tall * wide > LIMIT_CELLS:
                reader.said.add(f"cells beyond {LIMIT_COLUMNS} columns or {LIMIT_CELLS} in a table were not read")
                break
            for y in range(rows, rows + tall):
                for x in range(col, col + wide):
                    taken[(y, x)] = True
            heavy = cell.tag == "th" or cell in strong
            bold = in_head or heavy_row or (heavy and (col > 0 or alone == 1))
            line = html_line(full_text(reader.seen, cell), bold=bold, row=rows, offset=col * COLUMN)
            cells.append(GridCell(rows, col, [line] if line.words else [], tall, wide))
            col += wide
        rows += 1
    cols = max((x + 1 for _, x in taken), default=0)
    if rows < 1 or cols < 2 or not any(cell.col > 0 and not cell.empty for cell in cells):
        return None
    return page_grid(cells, rows, cols)


def _span(cell: html.HtmlElement, name: str) -> int:
    text = cell.get(name) or "1"
    return min(60, max(1, int(text))) if text.isdigit() else 1
