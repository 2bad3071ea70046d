"""PDF bytes → glyphs and drawn edges, by pdfium's raw interface.

Coordinates are turned here, once: everything that leaves this module counts points from the top
left corner of the page as a viewer displays it (crop box and /Rotate applied).
"""

from __future__ import annotations

import ctypes
import math
import unicodedata
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field

import pypdfium2 as pdfium
import pypdfium2.raw as raw

from specscan.records.errors import DocumentError
from specscan.records.text import Box

Turn = Callable[[float, float], tuple[float, float]]

INVISIBLE_MODES = {raw.FPDF_TEXTRENDERMODE_INVISIBLE, raw.FPDF_TEXTRENDERMODE_CLIP}
LIMIT_OBJECTS = 60_000  # a page drawn with more paths than this is a picture, not a table
LIMIT_NESTING = 6
LINE_PER_EM = 1.2
LIMIT_DOT = 9.0
LIMIT_SEGMENTS = 160  # a box with rounded corners drawn as short straight lines has about a hundred


@dataclass(slots=True)
class Style:
    """How the glyphs of one text object are drawn."""

    font: str = ""
    bold: bool = False
    color: tuple[int, int, int] = (0, 0, 0)
    hidden: bool = False
    direction: int = 0  # 0, 90, 180 or 270 degrees, clockwise, of the reading direction
    em: float = 0.0  # font size as displayed; 0 where pdfium does not say


@dataclass(slots=True)
class Glyph:
    """One character: its cell from origin to advance, its baseline and its style.

    ``x0``, ``top``, ``x1``, ``bottom`` are on the page; ``start``, ``stop`` and ``base`` are the same
    measures along and across the reading direction, so that turned text is handled like upright text.
    """

    text: str
    box: Box
    start: float
    stop: float
    base: float
    size: float
    style: Style
    generated: bool
    unmapped: bool


@dataclass(slots=True)
class Stroke:
    """A drawn straight line or thin bar, horizontal or vertical."""

    x0: float
    top: float
    x1: float
    bottom: float

    @property
    def horizontal(self) -> bool:
        return (self.x1 - self.x0) >= (self.bottom - self.top)


@dataclass(slots=True)
class Fill:
    """A filled or framed rectangle with its colour (``None``: only framed)."""

    box: Box
    color: tuple[int, int, int] | None
    framed: bool


@dataclass(slots=True)
class Dot:
    """A small drawn circle or square: a list bullet or a mark in a table."""

    box: Box
    filled: bool
    round: bool


@dataclass(slots=True)
class Sheet:
    """One page as drawn."""

    number: int
    width: float
    height: float
    glyphs: list[Glyph] = field(default_factory=list)
    strokes: list[Stroke] = field(default_factory=list)
    fills: list[Fill] = field(default_factory=list)
    pictures: list[Box] = field(default_factory=list)
    dots: list[Dot] = field(default_factory=list)
    hidden_glyphs: int = 0
    crowded: bool = False


class PasswordNeeded(DocumentError):
    """The PDF is encrypted, and the empty password does not open it."""


def open_pdf(data: bytes) -> pdfium.PdfDocument:
    """Open a PDF from memory.

    Raises:
        PasswordNeeded: the file asks for a password.
        DocumentError: the file is damaged.
    """
    try:
        return pdfium.PdfDocument(data)
    except pdfium.PdfiumError as error:
        if "assword" in str(error):
            raise PasswordNeeded("the PDF is encrypted and asks for a password") from error
        raise DocumentError(f"pdfium cannot open the PDF ({error})") from error


def metadata(document: pdfium.PdfDocument) -> dict[str, str]:
    """Give the document's information dictionary without empty entries."""
    return {key: value.strip() for key, value in document.get_metadata_dict().items() if value.strip()}


def read_sheets(document: pdfium.PdfDocument) -> Iterator[Sheet]:
    """Give the pages one after the other; a page that pdfium cannot load is an empty sheet."""
    for index in range(len(document)):
        try:
            page = document[index]
        except pdfium.PdfiumError:
            yield Sheet(index + 1, 0.0, 0.0)
            continue
        try:
            yield _read_sheet(page, index + 1)
        finally:
            page.close()


def _read_sheet(page: pdfium.PdfPage, number: int) -> Sheet:
    left, bottom, right, top = _visible_box(page)
    rotation = page.get_rotation()
    turn: Turn
    if rotation == 90:
        turn = lambda x, y: (y - bottom, x - left)  # noqa: E731  (four one-line turns read best side by side)
    elif rotation == 180:
        turn = lambda x, y: (right - x, y - bottom)  # noqa: E731
    elif rotation == 270:
        turn = lambda x, y: (top - y, right - x)  # noqa: E731
    else:
        turn = lambda x, y: (x - left, top - y)  # noqa: E731
    width, height = right - left, top - bottom
    if rotation in (90, 270):
        width, height = height, width
    sheet = Sheet(number, width, height)
    _collect_glyphs(page, sheet, turn)
    _collect_drawing(page, sheet, turn)
    return sheet


def _visible_box(page: pdfium.PdfPage) -> tuple[float, float, float, float]:
    media = page.get_mediabox()
    crop = page.get_cropbox()
    left, bottom = max(media[0], crop[0]), max(media[1], crop[1])
    right, top = min(media[2], crop[2]), min(media[3], crop[3])
    if right <= left or top <= bottom:
        return media
    return left, bottom, right, top


def _box(turn: Turn, left: float, bottom: float, right: float, top: float) -> Box:
    x0, y0 = turn(left, bottom)
    x1, y1 = turn(right, top)
    return Box(min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1))


def _collect_glyphs(page: pdfium.PdfPage, sheet: Sheet, turn: Turn) -> None:
    textpage = page.get_textpage()
    handle = textpage.raw
    count = raw.FPDFText_CountChars(handle)
    styles: dict[int, Style] = {}
    rect = raw.FS_RECTF()
    x, y = ctypes.c_double(), ctypes.c_double()
    pending_high = 0
    style = Style()
    for index in range(count):
        code = raw.FPDFText_GetUnicode(handle, index)
        if 0xD800 <= code < 0xDC00:
            pending_high = code
            continue
        if 0xDC00 <= code < 0xE000 and pending_high:
            code = 0x10000 + ((pending_high - 0xD800) << 10) + (code - 0xDC00)
        pending_high = 0
        if code in (0, 10, 13):
            continue
        generated = raw.FPDFText_IsGenerated(handle, index) == 1
        if not generated:
            pointer = raw.FPDFText_GetTextObject(handle, index)
            key = ctypes.cast(pointer, ctypes.c_void_p).value or 0
            known = styles.get(key)
            if known is None:
                known = styles[key] = _style(handle, index, pointer, turn)
            style = known
        if not raw.FPDFText_GetLooseCharBox(handle, index, rect):
            continue
        raw.FPDFText_GetCharOrigin(handle, index, x, y)
        box = _box(turn, rect.left, rect.bottom, rect.right, rect.top)
        middle_x, middle_y = box.middle
        outside = not (-1 <= middle_x <= sheet.width + 1 and -1 <= middle_y <= sheet.height + 1)
        if outside or (style.hidden and not generated):
            sheet.hidden_glyphs += 1
            continue
        origin_x, origin_y = turn(x.value, y.value)
        sheet.glyphs.append(
            _glyph(
                chr(code), box, origin_x, origin_y, style, generated,
                raw.FPDFText_HasUnicodeMapError(handle, index) == 1 or code in (0xFFFD, 0xFFFE),
            )
        )  # fmt: skip
    textpage.close()
    _part_ligatures(sheet.glyphs)


def _part_ligatures(glyphs: list[Glyph]) -> None:
    """Give each letter that pdfium took out of a ligature its share of the ligature's cell."""
    index = 0
    while index < len(glyphs):
        first = glyphs[index]
        end = index + 1
        while (
            end < len(glyphs)
            and glyphs[end].box == first.box
            and glyphs[end].style is first.style
            and not unicodedata.combining(glyphs[end].text)
        ):
            end += 1
        count = end - index
        if count > 1 and first.box.width > 0:
            step = (first.stop - first.start) / count
            for place, glyph in enumerate(glyphs[index:end]):
                glyph.start = first.start + place * step if place else glyph.start
                glyph.stop = glyph.start + step
                if first.style.direction == 0:
                    glyph.box = Box(glyph.start, glyph.box.top, glyph.stop, glyph.box.bottom)
        index = end


def _glyph(text: str, box: Box, x: float, y: float, style: Style, generated: bool, unmapped: bool) -> Glyph:
    if style.direction == 90:  # reads downwards
        start, stop, base, across = box.top, box.bottom, -x, box.width
    elif style.direction == 270:  # reads upwards
        start, stop, base, across = -box.bottom, -box.top, x, box.width
    elif style.direction == 180:
        start, stop, base, across = -box.x1, -box.x0, -y, box.height
    else:
        start, stop, base, across = box.x0, box.x1, y, box.height
    # The cell of a letter taken out of a ligature is too low, so the font size goes before it.
    size = style.em or across / LINE_PER_EM
    return Glyph(text, box, start, stop, base, size, style, generated, unmapped)


def _style(handle: object, index: int, pointer: object, turn: Turn) -> Style:
    style = Style()
    if pointer:
        channels = [ctypes.c_uint() for _ in range(4)]
        if raw.FPDFPageObj_GetFillColor(pointer, *channels):
            style.color = (channels[0].value, channels[1].value, channels[2].value)
            style.hidden = channels[3].value == 0
        if raw.FPDFTextObj_GetTextRenderMode(pointer) in INVISIBLE_MODES:
            style.hidden = True
    buffer = ctypes.create_string_buffer(128)
    flags = ctypes.c_int()
    length = raw.FPDFText_GetFontInfo(handle, index, buffer, 128, flags)
    style.font = buffer.raw[: max(0, min(length, 128) - 1)].decode("utf-8", "replace")
    name = style.font.casefold()
    weight = raw.FPDFText_GetFontWeight(handle, index)
    style.bold = weight >= 600 or any(word in name for word in ("bold", "black", "heavy", "semib", "cmbx"))
    matrix = raw.FS_MATRIX()
    if raw.FPDFText_GetMatrix(handle, index, matrix):
        x0, y0 = turn(0, 0)
        x1, y1 = turn(matrix.a, matrix.b)
        angle = math.degrees(math.atan2(y1 - y0, x1 - x0)) % 360
        style.direction = round(angle / 90) * 90 % 360
        style.em = raw.FPDFText_GetFontSize(handle, index) * math.hypot(matrix.c, matrix.d)
        if not 0.5 <= style.em <= 2000:
            style.em = 0.0
    return style


def _collect_drawing(page: pdfium.PdfPage, sheet: Sheet, turn: Turn) -> None:
    seen = 0
    for pointer, matrix, kind in _objects(page):
        seen += 1
        if seen > LIMIT_OBJECTS:
            sheet.crowded = True
            return
        if kind == raw.FPDF_PAGEOBJ_IMAGE:
            box = _object_box(pointer, matrix, turn)
            if box is not None:
                sheet.pictures.append(box)
        elif kind == raw.FPDF_PAGEOBJ_PATH:
            _collect_path(pointer, matrix, sheet, turn)


Matrix = tuple[float, float, float, float, float, float]
IDENTITY: Matrix = (1, 0, 0, 1, 0, 0)


def _objects(page: pdfium.PdfPage) -> Iterator[tuple[object, Matrix, int]]:
    count = raw.FPDFPage_CountObjects(page.raw)
    for index in range(count):
        yield from _nested(raw.FPDFPage_GetObject(page.raw, index), IDENTITY, 0)


def _nested(pointer: object, outer: Matrix, depth: int) -> Iterator[tuple[object, Matrix, int]]:
    kind = raw.FPDFPageObj_GetType(pointer)
    if kind != raw.FPDF_PAGEOBJ_FORM:
        yield pointer, outer, kind
        return
    if depth >= LIMIT_NESTING:
        return
    own = raw.FS_MATRIX()
    raw.FPDFPageObj_GetMatrix(pointer, own)
    inner = _multiply((own.a, own.b, own.c, own.d, own.e, own.f), outer)
    for index in range(raw.FPDFFormObj_CountObjects(pointer)):
        yield from _nested(raw.FPDFFormObj_GetObject(pointer, index), inner, depth + 1)


def _multiply(one: Matrix, two: Matrix) -> Matrix:
    a, b, c, d, e, f = one
    p, q, r, s, t, u = two
    return (
        a * p + b * r, a * q + b * s, c * p + d * r, c * q + d * s, e * p + f * r + t, e * q + f * s + u,
    )  # fmt: skip


def _apply(matrix: Matrix, x: float, y: float) -> tuple[float, float]:
    a, b, c, d, e, f = matrix
    return a * x + c * y + e, b * x + d * y + f


def _object_box(pointer: object, matrix: Matrix, turn: Turn) -> Box | None:
    left, bottom, right, top = (ctypes.c_float() for _ in range(4))
    if not raw.FPDFPageObj_GetBounds(pointer, left, bottom, right, top):
        return None
    x0, y0 = _apply(matrix, left.value, bottom.value)
    x1, y1 = _apply(matrix, right.value, top.value)
    return _box(turn, x0, y0, x1, y1)


def _collect_path(pointer: object, matrix: Matrix, sheet: Sheet, turn: Turn) -> None:
    fill_mode, stroke = ctypes.c_int(), ctypes.c_int()
    raw.FPDFPath_GetDrawMode(pointer, fill_mode, stroke)
    filled, stroked = bool(fill_mode.value), bool(stroke.value)
    if not filled and not stroked:
        return
    box = _object_box(pointer, matrix, turn)
    if box is None or box.x1 < 0 or box.bottom < 0 or box.x0 > sheet.width or box.top > sheet.height:
        return
    segments = raw.FPDFPath_CountSegments(pointer)
    thin = min(box.width, box.height) <= 2.5 and not 2 <= min(box.width, box.height) >= 0.7 * max(box.width, box.height)
    if thin:
        if max(box.width, box.height) >= 4:
            sheet.strokes.append(Stroke(box.x0, box.top, box.x1, box.bottom))
        return
    if segments > LIMIT_SEGMENTS:
        return
    if max(box.width, box.height) <= LIMIT_DOT and abs(box.width - box.height) <= 1.2:
        white = filled and _color(pointer, fill=True) == (255, 255, 255)
        sheet.dots.append(Dot(box, filled and not white, segments > 6))
        return
    points = _points(pointer, segments, matrix, turn)
    if not _is_rectangle(points, box):
        if stroked:
            _straight_strokes(points, sheet)
        return
    color = _color(pointer, fill=True) if filled else None
    edge = _color(pointer, fill=False) if stroked else None
    sheet.fills.append(Fill(box, color, framed=edge is not None and edge != (255, 255, 255)))


def _points(pointer: object, segments: int, matrix: Matrix, turn: Turn) -> list[tuple[float, float, int]]:
    x, y = ctypes.c_float(), ctypes.c_float()
    own = raw.FS_MATRIX()
    raw.FPDFPageObj_GetMatrix(pointer, own)
    full = _multiply((own.a, own.b, own.c, own.d, own.e, own.f), matrix)
    points = []
    for index in range(segments):
        segment = raw.FPDFPath_GetPathSegment(pointer, index)
        raw.FPDFPathSegment_GetPoint(segment, x, y)
        px, py = turn(*_apply(full, x.value, y.value))
        points.append((px, py, raw.FPDFPathSegment_GetType(segment)))
    return points


def _is_rectangle(points: list[tuple[float, float, int]], box: Box) -> bool:
    """Tell whether the path goes round its box, rounded corners allowed."""
    if len(points) < 4:
        return False
    slack = max(1.5, 0.12 * min(box.width, box.height))
    return all(
        min(abs(x - box.x0), abs(x - box.x1)) <= slack or min(abs(y - box.top), abs(y - box.bottom)) <= slack
        for x, y, _ in points
    )


def _straight_strokes(points: list[tuple[float, float, int]], sheet: Sheet) -> None:
    for (x0, y0, _), (x1, y1, kind) in zip(points, points[1:], strict=False):
        if kind != raw.FPDF_SEGMENT_LINETO:
            continue
        if abs(y1 - y0) <= 0.5 < abs(x1 - x0) or abs(x1 - x0) <= 0.5 < abs(y1 - y0):
            sheet.strokes.append(Stroke(min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1)))


def _color(pointer: object, *, fill: bool) -> tuple[int, int, int] | None:
    channels = [ctypes.c_uint() for _ in range(4)]
    get = raw.FPDFPageObj_GetFillColor if fill else raw.FPDFPageObj_GetStrokeColor
    if not get(pointer, *channels) or channels[3].value == 0:
        return None
    return channels[0].value, channels[1].value, channels[2].value


def render_gray(document: pdfium.PdfDocument, page_number: int, scale: float = 1.0) -> tuple[int, int, bytes]:
    """Draw a page in shades of gray: width, height and one byte a pixel, row after row."""
    bitmap = document[page_number - 1].render(scale=scale, grayscale=True)
    array = bitmap.to_numpy()
    height, width = array.shape[:2]
    return width, height, array.reshape(height, -1)[:, :width].tobytes()
