"""The reader for saved web pages: a parsed tree → the same passages as a page of a PDF."""

from __future__ import annotations

import re
from dataclasses import dataclass, field, replace

from lxml import html

from specscan.reading.assemble import Assembler
from specscan.reading.compose import Hints
from specscan.reading.flow import Item
from specscan.reading.grid import Grid, GridCell
from specscan.reading.html_tree import LIMIT_DEPTH, parse
from specscan.reading.html_visible import Visibility
from specscan.reading.plain import CHAR, EM, PITCH
from specscan.reading.words import Line, Word, is_bullet
from specscan.records.errors import DocumentError
from specscan.records.text import Box, Document, Kind, PageState, Title

INLINE = {
    "a", "abbr", "b", "bdi", "bdo", "cite", "code", "data", "del", "dfn", "em", "font", "i", "ins", "kbd",
    "label", "mark", "q", "s", "samp", "small", "span", "strong", "sub", "sup", "time", "tt", "u", "var", "wbr", "img",
}  # fmt: skip
HEADINGS = {"h1": 1, "h2": 2, "h3": 3, "h4": 4, "h5": 5, "h6": 6, "summary": 4, "caption": 5, "legend": 4}
NO_ROWS = {"li", "p", "table", "dl", "ul", "details", *HEADINGS}
STRONG = {"b", "strong", "th", "dt"}
LABEL_WORDS = 7
LIMIT_COLUMNS = 200  # of one table; no specification has more
LIMIT_CELLS = 100_000  # of one table, counting a cell once for each row and column that it spans
SUPERSCRIPTS = str.maketrans("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹")


@dataclass(slots=True)
class Reader:
    """State while walking one page."""

    assembler: Assembler
    seen: Visibility
    titles: list[Title]
    said: set[str] = field(default_factory=set)


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
        reader.titles.append(Title(_squash(title), 0, 0.0, "html"))
    body = root.find("body")
    _walk(reader, body if body is not None else root, 0)
    return Document(
        path=path,
        sha256=sha256,
        kind="html",
        passages=tuple(assembler.passages),
        titles=tuple(reader.titles),
        pages=(PageState(0, None, None, True),),
        language=(root.get("lang") or "").split("-")[0].lower(),
        message="; ".join([*said, *sorted(reader.said)]),
        metadata={"lang": root.get("lang") or ""},
    )


def _squash(text: str) -> str:
    return re.sub(r"\s+", " ", text).strip()


def _walk(reader: Reader, element: html.HtmlElement, depth: int) -> None:
    if depth > LIMIT_DEPTH or not reader.seen.sees(element):
        return
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
        rows = _rows_of(reader, element)
        if rows is not None:
            reader.assembler.begin_block()
            reader.assembler.add_grid(0, rows)
            reader.assembler.last_table = None
        else:
            _add_mixed(reader, element, depth)


def _is_block(reader: Reader, element: html.HtmlElement) -> bool:
    if not isinstance(element.tag, str):
        return False
    if element.tag not in INLINE and element.tag != "br":
        return True
    return any(_is_block(reader, child) for child in element)


def _add_mixed(reader: Reader, element: html.HtmlElement, depth: int) -> None:
    """Add the children of a container: runs of inline text become paragraphs, blocks are walked."""
    if element.tag in ("section", "article", "aside", "main", "div"):
        reader.assembler.begin_block()
    stack = list(reader.assembler.stack)
    run: list[tuple[str, bool]] = [(element.text or "", False)]
    children, end = list(element), 0
    for place, child in enumerate(children):
        if place < end:
            continue
        rows = _run_of_rows(reader, children, place)
        if rows is not None:
            _flush(reader, run)
            run = []
            end, grid = rows
            reader.assembler.begin_block()
            reader.assembler.add_grid(0, grid)
            reader.assembler.last_table = None
        elif _is_block(reader, child):
            _flush(reader, run)
            run = []
            _walk(reader, child, depth + 1)
        elif isinstance(child.tag, str) and child.tag == "br":
            _flush(reader, run)
            run = []
        elif reader.seen.sees(child):
            run.append((_inline_text(reader, child), child.tag in STRONG))
        run.append((child.tail or "", False))
    _flush(reader, run)
    if element.tag in ("aside", "article", "details"):
        reader.assembler.stack = stack


def _flush(reader: Reader, run: list[tuple[str, bool]]) -> None:
    parts = [(text, strong) for text, strong in run if text.strip()]
    if not parts:
        return
    label = _squash(parts[0][0])
    rest = _squash("".join(text for text, _ in parts[1:]))
    if parts[0][1] and rest and len(label.split()) <= LABEL_WORDS and label[-1:] not in ".!?,":
        _add_pair(reader, label.rstrip(":"), rest.lstrip(":–- "))
        return
    _add_text(reader, "".join(text for text, _ in run), Kind.PROSE)


def _inline_text(reader: Reader, element: html.HtmlElement) -> str:
    """Give the text of an inline element; note signs in ``sup`` keep their form, ``sub`` joins."""
    if not isinstance(element.tag, str) or not reader.seen.sees(element):
        return ""
    if element.tag == "br":
        return " "
    if element.tag == "img":
        return ""
    inner = element.text or ""
    for child in element:
        inner += _inline_text(reader, child) + (child.tail or "")
    if element.tag == "sup" and re.fullmatch(r"\s*\(?\d\)?\s*", inner):
        return inner.strip(" ()").translate(SUPERSCRIPTS)
    return inner


def _full_text(reader: Reader, element: html.HtmlElement) -> str:
    text = element.text or ""
    for child in element:
        if isinstance(child.tag, str) and reader.seen.sees(child):
            inline = child.tag in INLINE
            inner = _inline_text(reader, child) if inline else _full_text(reader, child)
            below = child.tag == "small" and text[-1:].isalnum() and inner[:1].isalpha()  # by style
            text += f" {inner} " if below or not inline else inner
        elif isinstance(child.tag, str) and child.tag == "br":
            text += " "
        text += child.tail or ""
    return text


def _line(text: str, *, size: float = EM, bold: bool = False, row: int = 0, offset: float = 0.0) -> Line:
    words = []
    at = 0
    for part in _squash(text).split(" "):
        if not part:
            continue
        box = Box(offset + at * CHAR, row * PITCH, offset + (at + len(part)) * CHAR, row * PITCH + EM)
        words.append(Word(part, box, size, bold, (0, 0, 0), base=row * PITCH + 8))
        at += len(part) + 1
    return Line(words)


def _add_heading(reader: Reader, element: html.HtmlElement, level: int) -> None:
    text = _squash(_full_text(reader, element))
    if not text:
        return
    size = EM * (2.6 - 0.2 * level)
    reader.assembler.add_item(0, Item(Kind.HEADING, [_line(text, size=size, bold=True)], level=size, strong=True))
    if level <= 2:
        reader.titles.append(Title(text, 0, size, "page"))


def _add_text(reader: Reader, text: str, kind: Kind) -> None:
    line = _line(text)
    if not line.words:
        return
    first = line.words[0]
    if len(line.words) > 1 and is_bullet(first.text) and first.text != "-":
        item = Item(Kind.BULLET, [Line(line.words[1:])], mark=first.text)
    elif re.fullmatch(r"\*{1,3}|†|‡|[¹²³⁴⁵⁶⁷⁸⁹]", first.text) and len(line.words) > 1:
        item = Item(Kind.FOOTNOTE, [Line(line.words[1:])], sign=first.text)
    elif match := re.match(r"([¹²³⁴⁵⁶⁷⁸⁹]|[*†‡]{1,3})(?=\w)", first.text):
        rest = replace(first, text=first.text[match.end() :])
        item = Item(Kind.FOOTNOTE, [Line([rest, *line.words[1:]])], sign=match.group(1))
    else:
        item = Item(kind, [line])
    reader.assembler.add_item(0, item)


def _add_pair(reader: Reader, label: str, value: str) -> None:
    cells = [
        GridCell(0, 0, [_line(label)]),
        GridCell(0, 1, [_line(value, offset=400)]),
    ]
    grid = Grid(cells, 1, 2, Box(0, 0, 800, PITCH), "text", [(0.0, 390.0), (400.0, 800.0)])
    reader.assembler.last_table = None
    reader.assembler.add_grid(0, grid)


def _add_list_item(reader: Reader, element: html.HtmlElement, depth: int) -> None:
    blocks = [child for child in element if _is_block(reader, child) and reader.seen.sees(child)]
    if blocks and any(child.tag in ("ul", "ol", "table", "dl") for child in blocks):
        lead = _squash(element.text or "")
        for child in element:
            if child in blocks:
                continue
            lead += " " + _inline_text(reader, child) + (child.tail or "")
        if lead.strip():
            _add_text(reader, lead, Kind.BULLET)
        for child in blocks:
            _walk(reader, child, depth + 1)
        return
    strong = next((child for child in element if isinstance(child.tag, str)), None)
    if strong is not None and strong.tag in STRONG | {"span"} and not _squash(element.text or ""):
        label = _squash(_inline_text(reader, strong))
        rest = _squash(_full_text(reader, element))[len(label) :].strip()
        listed = strong.tag in STRONG or rest.startswith(":") or label.endswith(":")
        if label and rest and listed and len(label.split()) <= LABEL_WORDS and label[-1] not in ".!?,":
            _add_pair(reader, label.rstrip(":"), rest.lstrip(":–- "))
            return
    _add_text(reader, _full_text(reader, element), Kind.BULLET)


def _add_pairs(reader: Reader, element: html.HtmlElement) -> None:
    labels: list[str] = []
    for child in element.iter("dt", "dd"):
        if not reader.seen.sees(child):
            continue
        text = _squash(_full_text(reader, child))
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
    reader.assembler.begin_block()
    reader.assembler.last_table = None
    reader.assembler.add_grid(0, grid)
    reader.assembler.last_table = None


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
            bold = in_head or (cell.tag == "th" and (col > 0 or alone == 1))
            line = _line(_full_text(reader, cell), bold=bold, row=rows, offset=col * 400.0)
            cells.append(GridCell(rows, col, [line] if line.words else [], tall, wide))
            col += wide
        rows += 1
    cols = max((x + 1 for _, x in taken), default=0)
    if rows < 1 or cols < 2 or not any(cell.col > 0 and not cell.empty for cell in cells):
        return None
    spans = [(col * 400.0, (col + 1) * 400.0 - 10) for col in range(cols)]
    return Grid(cells, rows, cols, Box(0, 0, cols * 400.0, rows * PITCH), "html", spans)


def _span(cell: html.HtmlElement, name: str) -> int:
    text = cell.get(name) or "1"
    return min(60, max(1, int(text))) if text.isdigit() else 1


def _rows_of(reader: Reader, element: html.HtmlElement) -> Grid | None:
    """Give a grid for a container whose children are rows of the same number of short parts.

    At least three rows of two to eight leaves each, as in tables made of ``div`` and ``span``.
    """
    rows = [child for child in element if isinstance(child.tag, str) and reader.seen.sees(child)]
    if len(rows) < 3 or any(row.tag in NO_ROWS for row in rows):
        return None
    parted = [_parts(reader, row) for row in rows]
    counts = [len(cells) for cells in parted if cells is not None]
    if len(counts) < len(rows):
        return None
    usual = max(set(counts), key=counts.count)
    alike = sum(count == usual for count in counts)
    if not 2 <= usual <= 8 or alike < 3 or alike < 0.7 * len(rows):
        return None
    return _div_grid(reader, [cells for cells in parted if cells is not None], usual)


def _parts(reader: Reader, row: html.HtmlElement) -> list[html.HtmlElement] | None:
    """Give the parts of an element that can be a row of a table, ``None`` where it holds text or blocks of its own."""
    if not isinstance(row.tag, str) or row.tag in NO_ROWS or _squash(row.text or ""):
        return None
    cells = [cell for cell in row if isinstance(cell.tag, str) and reader.seen.sees(cell)]
    for cell in cells:
        if _squash(cell.tail or "") or cell.tag in HEADINGS or cell.tag == "p":
            return None
        if any(_is_block(reader, inner) for inner in cell) or len(_squash(_full_text(reader, cell)).split()) > 14:
            return None
    return cells


def _run_of_rows(reader: Reader, children: list[html.HtmlElement], start: int) -> tuple[int, Grid] | None:
    """Give the end of a run of rows that stands among other children from ``start`` on, and its grid.

    Three or more rows of equally many parts, between which headings group them.
    """
    first = _parts(reader, children[start])
    if first is None or not 3 <= len(first) <= 8:
        return None
    rows: list[list[html.HtmlElement]] = []
    end, place, count = start, start, 0
    while place < len(children):
        child = children[place]
        if isinstance(child.tag, str) and reader.seen.sees(child):
            parts = [child] if child.tag in HEADINGS else _parts(reader, child)
            if parts is None or len(parts) not in (1, len(first)) or _squash(child.tail or ""):
                break
            rows.append(parts)
            if len(parts) > 1:
                end, count, last = place + 1, count + 1, len(rows)
        place += 1
    return (end, _div_grid(reader, rows[:last], len(first))) if count >= 3 else None


def _div_grid(reader: Reader, rows: list[list[html.HtmlElement]], cols: int) -> Grid:
    made = []
    for number, cells in enumerate(rows):
        for col, cell in enumerate(cells):
            bold = cell.tag in STRONG and col > 0
            line = _line(_full_text(reader, cell), row=number, offset=col * 400.0, bold=bold)
            made.append(GridCell(number, col, [line] if line.words else []))
    spans = [(col * 400.0, (col + 1) * 400.0 - 10) for col in range(cols)]
    return Grid(made, len(rows), cols, Box(0, 0, cols * 400.0, len(rows) * PITCH), "html", spans)
