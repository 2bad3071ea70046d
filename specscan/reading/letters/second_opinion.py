"""The slow reader: pdfplumber's full parse as glyphs and edges, for what pdfium refuses or reads as garbage."""

from __future__ import annotations

import contextlib
import io
import logging
import math
from collections.abc import Iterator, Sequence
from typing import Any

import pdfplumber
from pdfplumber.page import Page
from pdfplumber.utils.exceptions import PdfminerException

from specscan.reading.letters.sheet import Fill, Glyph, Letters, Sheet, Stroke, Style
from specscan.records.errors import DocumentError
from specscan.records.text import Box

DESCENT = 0.2  # share of the font size that lies below the baseline, where the font does not say
THIN = 2.5
LONGEST_REASON = 150  # characters; some errors quote the whole file
LIMIT_CHARS = 60_000
BOLD = ("bold", "black", "heavy", "semib", "cmbx")


def read_sheets_slowly(data: bytes, numbers: Sequence[int] | None = None) -> Iterator[Sheet]:
    """Give the pages of a PDF (those of ``numbers``, 1-based, or all) as pdfplumber reads them.

    Raises:
        DocumentError: pdfplumber cannot open the file either.
    """
    logging.getLogger("pdfminer").setLevel(logging.ERROR)  # it complains about each odd object of a damaged file
    try:
        document = pdfplumber.open(io.BytesIO(data))
    except (PdfminerException, Exception) as error:
        raise DocumentError(f"pdfplumber cannot open it either ({_reason(error)})") from error
    try:
        try:
            pages = document.pages
        except Exception as error:  # pdfminer parses the tree of pages only now
            raise DocumentError(f"pdfplumber cannot read its pages ({_reason(error)})") from error
        for page in pages:
            if numbers is not None and page.page_number not in numbers:
                continue
            try:
                yield _sheet(page)
            except Exception:  # a page that pdfminer cannot parse is an empty one
                yield Sheet(page.page_number, float(page.width or 0), float(page.height or 0))
            finally:
                page.close()
    finally:
        with contextlib.suppress(Exception):  # closing parses the tree of pages once more
            document.close()


def _reason(error: BaseException) -> str:
    inner = error.args[0] if error.args and isinstance(error.args[0], BaseException) else error
    return f"{type(inner).__name__}: {inner}".removesuffix(": ")[:LONGEST_REASON]


def _sheet(page: Page) -> Sheet:
    x0, top, x1, bottom = _visible(page)
    sheet = Sheet(page.page_number, x1 - x0, bottom - top)
    styles: dict[tuple[object, ...], Style] = {}
    glyphs: list[Glyph] = []
    for char in page.chars[:LIMIT_CHARS]:
        box = Box(char["x0"] - x0, char["top"] - top, char["x1"] - x0, char["bottom"] - top)
        middle_x, middle_y = box.middle
        if not (-1 <= middle_x <= sheet.width + 1 and -1 <= middle_y <= sheet.height + 1):
            sheet.hidden_glyphs += 1
            continue
        glyphs.append(_glyph(char, box, _style(char, styles)))
    sheet.letters = Letters.of(glyphs)
    for edge in (*page.lines, *page.rects):
        box = Box(edge["x0"] - x0, edge["top"] - top, edge["x1"] - x0, edge["bottom"] - top)
        if min(box.width, box.height) <= THIN:
            if max(box.width, box.height) >= 4:
                sheet.strokes.append(Stroke(box.x0, box.top, box.x1, box.bottom))
        elif edge["object_type"] == "rect":
            color = _rgb(edge.get("non_stroking_color")) if edge.get("fill") else None
            sheet.fills.append(Fill(box, color, framed=bool(edge.get("stroke"))))
    for image in page.images:
        sheet.pictures.append(Box(image["x0"] - x0, image["top"] - top, image["x1"] - x0, image["bottom"] - top))
    return sheet


def _visible(page: Page) -> tuple[float, float, float, float]:
    x0, top, x1, bottom = page.bbox
    a, b, c, d = page.cropbox or page.bbox
    left, high, right, low = max(x0, a), max(top, b), min(x1, c), min(bottom, d)
    return (left, high, right, low) if right > left and low > high else (x0, top, x1, bottom)


def _style(char: dict[str, Any], styles: dict[tuple[object, ...], Style]) -> Style:
    a, b, c, d, *_ = char["matrix"]
    color = _rgb(char.get("non_stroking_color"))
    key = (char["fontname"], char["size"], a, b, c, d, color)
    if key not in styles:
        name = str(char["fontname"])
        direction = round(math.degrees(math.atan2(-b, a)) / 90) * 90 % 360
        bold = any(word in name.casefold() for word in BOLD)
        styles[key] = Style(name, bold, color or (0, 0, 0), False, direction, float(char["size"]))
    return styles[key]


def _glyph(char: dict[str, Any], box: Box, style: Style) -> Glyph:
    size = float(char["size"])
    if style.direction == 90:
        start, stop, base = box.top, box.bottom, -(box.x0 + DESCENT * size)
    elif style.direction == 270:
        start, stop, base = -box.bottom, -box.top, box.x1 - DESCENT * size
    elif style.direction == 180:
        start, stop, base = -box.x1, -box.x0, -(box.top + DESCENT * size)
    else:
        start, stop, base = box.x0, box.x1, box.bottom - DESCENT * size
    text = str(char["text"])
    unmapped = text.startswith("(cid:") or not text
    return Glyph("\ufffd" if unmapped else text, box, start, stop, base, size, style, False, unmapped)


def _rgb(color: Any) -> tuple[int, int, int] | None:
    """Give a colour of pdfminer's (gray, RGB or CMYK, parts of 1) in bytes; ``None`` for a pattern."""
    parts = color if isinstance(color, tuple | list) else (color,)
    if not parts or not all(isinstance(part, int | float) for part in parts):
        return None
    if len(parts) == 1:
        parts = (parts[0],) * 3
    elif len(parts) == 4:
        cyan, magenta, yellow, black = parts
        parts = tuple(1 - min(1, ink + black) for ink in (cyan, magenta, yellow))
    if len(parts) != 3:
        return None
    red, green, blue = (round(255 * min(1, max(0, part))) for part in parts)
    return red, green, blue
