"""PDF bytes → the glyphs of each page, by pdfium's raw interface; `drawing` gives what else is drawn.

Coordinates are turned here, once: everything that leaves this module counts points from the top
left corner of the page as a viewer displays it (crop box and /Rotate applied).
"""

from __future__ import annotations

import ctypes
import math
import unicodedata
from collections.abc import Iterator

import pypdfium2 as pdfium
import pypdfium2.raw as raw

from specscan.reading.drawing import collect_drawing
from specscan.reading.sheet import Glyph, Sheet, Style, Turn
from specscan.records.errors import DocumentError
from specscan.records.text import Box

INVISIBLE_MODES = {raw.FPDF_TEXTRENDERMODE_INVISIBLE, raw.FPDF_TEXTRENDERMODE_CLIP}
LINE_PER_EM = 1.2
LIMIT_PIXELS = 24_000_000  # of a page that is drawn; a gigantic one is drawn smaller


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
    collect_drawing(page, sheet, turn)
    return sheet


def _visible_box(page: pdfium.PdfPage) -> tuple[float, float, float, float]:
    media = page.get_mediabox()
    crop = page.get_cropbox()
    left, bottom = max(media[0], crop[0]), max(media[1], crop[1])
    right, top = min(media[2], crop[2]), min(media[3], crop[3])
    if right <= left or top <= bottom:
        return media
    return left, bottom, right, top


def _collect_glyphs(page: pdfium.PdfPage, sheet: Sheet, turn: Turn) -> None:
    textpage = page.get_textpage()
    handle = textpage.raw
    count = raw.FPDFText_CountChars(handle)
    styles: dict[int, Style] = {}
    rect = raw.FS_RECTF()
    x, y = ctypes.c_double(), ctypes.c_double()
    far_x, far_y = 2 * (sheet.width + 1), 2 * (sheet.height + 1)  # twice the middle of what is still on the page
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
            key = ctypes.c_void_p.from_buffer(pointer).value or 0
            known = styles.get(key)
            if known is None:
                known = styles[key] = _style(handle, index, pointer, turn)
            style = known
        if not raw.FPDFText_GetLooseCharBox(handle, index, rect):
            continue
        raw.FPDFText_GetCharOrigin(handle, index, x, y)
        x0, top = turn(rect.left, rect.bottom)
        x1, bottom = turn(rect.right, rect.top)
        inside = -2 <= x0 + x1 <= far_x and -2 <= top + bottom <= far_y
        if not inside or (style.hidden and not generated):
            sheet.hidden_glyphs += 1
            continue
        box = Box(
            x0 if x0 <= x1 else x1, top if top <= bottom else bottom,
            x1 if x1 >= x0 else x0, bottom if bottom >= top else top,
        )  # fmt: skip
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


def render_gray(document: pdfium.PdfDocument, page_number: int, scale: float = 1.0) -> tuple[int, int, bytes, float]:
    """Draw a page in shades of gray: width, height, one byte a pixel, row after row, and the scale it was drawn at.

    That is ``scale``, or less where the page would take more than ``LIMIT_PIXELS``.
    """
    page = document[page_number - 1]
    width_points, height_points = page.get_size()
    scale = min(scale, (LIMIT_PIXELS / max(1.0, width_points * height_points)) ** 0.5)
    bitmap = page.render(scale=scale, grayscale=True)
    array = bitmap.to_numpy()
    height, width = array.shape[:2]
    return width, height, array.reshape(height, -1)[:, :width].tobytes(), scale
