"""PDF bytes → the letters of each page, by pdfium's raw interface; `drawing` gives what else is drawn.

Coordinates are turned here, once: everything that leaves this module counts points from the top
left corner of the page as a viewer displays it (crop box and /Rotate applied).
"""

from __future__ import annotations

import ctypes
import math
import re
import unicodedata
from collections.abc import Callable, Iterator

import numpy as np
import pypdfium2 as pdfium
import pypdfium2.raw as raw
from numpy.typing import NDArray

from specscan.reading.letters.bulk import Addresses
from specscan.reading.letters.char_calls import SURROGATES, CharCalls, Chars, Codes, fills_of, fonts_of, modes_of
from specscan.reading.letters.drawing import collect_drawing
from specscan.reading.letters.sheet import Flags, Letters, Numbers, Sheet, Style, Turn, text_of, told
from specscan.records.errors import DocumentError
from specscan.records.text import Box

INVISIBLE_MODES = (raw.FPDF_TEXTRENDERMODE_INVISIBLE, raw.FPDF_TEXTRENDERMODE_CLIP)
PLAIN = re.compile(r"[-, ](?:regular|roman|book|normal|light|thin)$", re.IGNORECASE)
BOLD = ("bold", "black", "heavy", "semib", "cmbx")
LINE_PER_EM = 1.2
LIMIT_PIXELS = 24_000_000  # of a page that is drawn; a gigantic one is drawn smaller
# Superior figures by their ink, in em: other figures stand on the baseline and are some 0.7 high (those of old style
# 0.45 at least). A figure is 0.7 of its size.
SUPERIOR_LIFT, SUPERIOR_HEIGHT, SUPERIOR_SIZE = 0.2, 0.5, 0.6
UNKNOWN = 0xFFFD  # and the next
CODE_BITS = 21  # of any character
LOW_HALVES = 0xDC00  # of characters beyond U+FFFF

Places = NDArray[np.int64]


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


def read_sheets(document: pdfium.PdfDocument, needs_drawing: Callable[[Sheet], bool]) -> Iterator[Sheet]:
    """Give the pages one after the other; a page that pdfium cannot load is an empty sheet.

    ``needs_drawing`` is asked for each sheet that has its letters whether what else is drawn on the page is needed.
    """
    for index in range(len(document)):
        try:
            page = document[index]
        except pdfium.PdfiumError:
            yield Sheet(index + 1, 0.0, 0.0)
            continue
        try:
            yield _read_sheet(page, index + 1, needs_drawing)
        finally:
            page.close()


def _read_sheet(page: pdfium.PdfPage, number: int, needs_drawing: Callable[[Sheet], bool]) -> Sheet:
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
    _collect_letters(page, sheet, turn)
    if needs_drawing(sheet):
        collect_drawing(page, sheet, turn)
    return sheet


def _visible_box(page: pdfium.PdfPage) -> tuple[float, float, float, float]:
    """Give what of a page is seen: its media box within its crop box, which most files name once for all pages."""
    left, bottom, right, top = page.get_bbox()
    return left, bottom, right, top


def _collect_letters(page: pdfium.PdfPage, sheet: Sheet, turn: Turn) -> None:
    textpage = page.get_textpage()
    try:
        calls = CharCalls(textpage)
        if calls.count:
            sheet.letters = _letters(calls, sheet, turn)
    finally:
        textpage.close()
    _part_ligatures(sheet.letters)


def _letters(calls: CharCalls, sheet: Sheet, turn: Turn) -> Letters:
    codes, chars = _whole_codes(calls.codes())
    printed = (codes != 0) & (codes != 10) & (codes != 13)  # nor ends of lines
    codes, chars = codes[printed], chars[printed]
    generated = calls.generated(chars, codes)
    dress = _Dress(calls, turn)
    style = dress.of(chars, generated)
    rects, found = calls.loose_boxes(chars)
    x0, top = turn(rects[:, 0], rects[:, 3])
    x1, bottom = turn(rects[:, 2], rects[:, 1])
    far_x, far_y = 2 * (sheet.width + 1), 2 * (sheet.height + 1)  # twice the middle of what is still on the page
    across, down = x0 + x1, top + bottom
    inside = (across >= -2) & (across <= far_x) & (down >= -2) & (down <= far_y)
    hidden = np.array([one.hidden for one in dress.styles], np.bool_)[style] & ~generated
    seen = found & inside & ~hidden
    sheet.hidden_glyphs += int((found & ~seen).sum())
    boxes = np.column_stack([np.minimum(x0, x1), np.minimum(top, bottom), np.maximum(x0, x1), np.maximum(top, bottom)])
    chars, codes, style, boxes, generated = chars[seen], codes[seen], style[seen], boxes[seen], generated[seen]
    direction = np.array([one.direction for one in dress.styles], np.int64)[style]
    origins = _origins(calls, chars, rects[seen], style, direction, generated)
    start, stop, base, size = _along(direction, boxes, *turn(origins[:, 0], origins[:, 1]))
    em = np.array([one.em for one in dress.styles], np.float64)[style]
    unmapped = _unmapped(calls, chars, codes, np.array(dress.fonts, np.int64)[style])
    unmapped |= (codes == UNKNOWN) | (codes == UNKNOWN + 1)
    space = told(codes, str.isspace)
    # The cell of a letter taken out of a ligature is too low, so the font size goes before it.
    size = np.where(em > 0, em, size)
    _lift_superiors(calls, chars, codes, origins, base, size, direction)
    text = text_of(codes)
    return Letters(text, codes, boxes, start, stop, base, size, style, dress.styles, generated, unmapped, space)


def _lift_superiors(
    calls: CharCalls, chars: Chars, codes: Codes, origins: Numbers, base: Numbers, size: Numbers, direction: Places
) -> None:
    """Give figures that a font draws small and high the baseline and the size that they look to have.

    Note signs set in a font's own superior figures stand on the baseline of their line in its full size, and the file
    calls them plain figures: "2.790 mm2" and "24" where the page shows a sign behind "2.790 mm" and "2".
    """
    figures = np.flatnonzero(told(codes, str.isdecimal) & (direction == 0) & (size > 0))
    low, high = calls.ink_heights(chars[figures]).T
    em = size[figures]
    lift = low - origins[figures, 1]
    raised = (lift > SUPERIOR_LIFT * em) & (high - low < SUPERIOR_HEIGHT * em)
    place = figures[raised]
    base[place] -= lift[raised]
    size[place] = np.maximum(em[raised] * SUPERIOR_SIZE, 1)


def _whole_codes(codes: Codes) -> tuple[Codes, Chars]:
    """Give the codes with halves of one character put together, and the places of the characters on the page."""
    chars = np.arange(len(codes))
    if not bool(((codes >= SURROGATES[0]) & (codes < SURROGATES[1])).any()):
        return codes, chars
    kept: list[tuple[int, int]] = []
    high = 0
    for place, code in enumerate(codes.tolist()):
        if SURROGATES[0] <= code < LOW_HALVES:
            high = code
            continue
        low = high and LOW_HALVES <= code < SURROGATES[1]
        kept.append((0x10000 + ((high - SURROGATES[0]) << 10) + (code - LOW_HALVES) if low else code, place))
        high = 0
    return np.array([code for code, _ in kept], np.uint32), np.array([place for _, place in kept], np.int64)


def _origins(
    calls: CharCalls, chars: Chars, rects: Numbers, style: Places, direction: Places, generated: Flags
) -> Numbers:
    """Give where the pen stood for each character, across the reading direction; along it nobody asks.

    The characters of one text object stand on one baseline where their cells reach from the same top to the same
    bottom: then it is asked for once.
    """
    origins = np.zeros((len(chars), 2), np.float64)
    if not len(chars):
        return origins
    begins = np.ones(len(chars), np.bool_)
    begins[1:] = (
        (style[1:] != style[:-1]) | generated[1:] | generated[:-1]
        | (rects[1:, 1] != rects[:-1, 1]) | (rects[1:, 3] != rects[:-1, 3]) | (direction[1:] % 180 != 0)
    )  # fmt: skip
    first = np.flatnonzero(begins)
    origins[first] = calls.origins(chars[first])
    return origins[first[np.cumsum(begins) - 1]]


def _unmapped(calls: CharCalls, chars: Chars, codes: Codes, fonts: Places) -> Flags:
    """Tell which characters the fonts of a page do not map to letters.

    Asked once for each letter of each font, and for all characters of the page where that finds one.
    """
    keys = fonts << CODE_BITS | codes.astype(np.int64)
    _, first = np.unique(keys, return_index=True)
    return calls.unmapped(chars) if calls.unmapped(chars[first]).any() else np.zeros(len(chars), np.bool_)


def _along(direction: Places, boxes: Numbers, x: Numbers, y: Numbers) -> tuple[Numbers, Numbers, Numbers, Numbers]:
    """Give start, stop and baseline of characters along their reading direction, and their size by their cells."""
    x0, top, x1, bottom = boxes.T
    start, stop, base, across = x0.copy(), x1.copy(), y.copy(), bottom - top
    for turned, values in (
        (90, (top, bottom, -x, x1 - x0)),  # reads downwards
        (180, (-x1, -x0, -y, bottom - top)),
        (270, (-bottom, -top, x, x1 - x0)),  # reads upwards
    ):
        which = direction == turned
        if which.any():
            for kept, value in zip((start, stop, base, across), values, strict=True):
                kept[which] = value[which]
    return start, stop, base, across / LINE_PER_EM


def _part_ligatures(letters: Letters) -> None:
    """Give each letter that pdfium took out of a ligature its share of the ligature's cell."""
    boxes, style = letters.boxes, letters.style
    same = (boxes[1:] == boxes[:-1]).all(axis=1) & (style[1:] == style[:-1])
    joined = {place for place in (np.flatnonzero(same) + 1).tolist() if not unicodedata.combining(letters.text[place])}
    for first in sorted(place - 1 for place in joined if place - 1 not in joined):
        end = first + 1
        while end in joined:
            end += 1
        x0, top, x1, bottom = boxes[first].tolist()
        if x1 - x0 <= 0:
            continue
        start = float(letters.start[first])
        step = (float(letters.stop[first]) - start) / (end - first)
        upright = letters.styles[style[first]].direction == 0
        for place in range(first, end):
            begin = start + (place - first) * step if place > first else start
            letters.start[place], letters.stop[place] = begin, begin + step
            if upright:
                boxes[place] = begin, top, begin + step, bottom


class _Dress:
    """The styles of the text objects of a page, and their fonts."""

    def __init__(self, calls: CharCalls, turn: Turn):
        self.calls = calls
        self.turn = turn
        self.styles: list[Style] = [Style()]  # that of what pdfium puts in before the first letter
        self.fonts: list[int] = [0]  # the number of the font of each style

    def of(self, chars: Chars, generated: Flags) -> Places:
        """Give the place in ``styles`` of each character's style; one put in by pdfium has that of the one before."""
        drawn = np.flatnonzero(~generated)
        objects, first, own = np.unique(self.calls.objects(chars[drawn]), return_index=True, return_inverse=True)
        self._add(objects, chars[drawn[first]])
        before = np.searchsorted(drawn, np.arange(len(chars)), side="right")
        return np.concatenate([[0], own + 1])[before]

    def _add(self, objects: Addresses, chars: Chars) -> None:
        """Add the styles of text objects; ``chars`` are the first characters of each."""
        fonts, first, own = np.unique(fonts_of(objects), return_index=True, return_inverse=True)
        named = [_font(self.calls.handle, char) for char in chars[first].tolist()]
        self.fonts += (own + 1).tolist()
        colors = fills_of(objects)
        hidden = (colors[:, 3] == 0) | np.isin(modes_of(objects), INVISIBLE_MODES)
        rows = zip(
            own.tolist(), map(tuple, colors[:, :3].tolist()), hidden.tolist(),
            map(tuple, self.calls.matrices(chars)[:, :4].tolist()), self.calls.font_sizes(chars), strict=True,
        )  # fmt: skip
        made: dict[tuple[object, ...], Style] = {}  # most objects of a page look like another
        for row in rows:
            if row not in made:
                font, (red, green, blue), unseen, matrix, size = row
                name, bold = named[font]
                made[row] = self._style(Style(name, bold, (red, green, blue), unseen), matrix, size)
            self.styles.append(made[row])

    def _style(self, style: Style, matrix: tuple[float, ...], size: float) -> Style:
        """Give a style with the direction and size that a matrix gives it."""
        a, b, c, d = matrix
        if not math.isnan(a):
            x0, y0 = self.turn(0, 0)
            x1, y1 = self.turn(a, b)
            angle = math.degrees(math.atan2(y1 - y0, x1 - x0)) % 360
            style.direction = round(angle / 90) * 90 % 360
            em = size * math.hypot(c, d)
            style.em = em if 0.5 <= em <= 2000 else 0.0
        return style


def _font(handle: object, char: int) -> tuple[str, bool]:
    """Give the name of a character's font, and whether it is bold."""
    buffer = ctypes.create_string_buffer(128)
    length = raw.FPDFText_GetFontInfo(handle, char, buffer, 128, ctypes.c_int())
    name = buffer.raw[: max(0, min(length, 128) - 1)].decode("utf-8", "replace")
    if any(word in name.casefold() for word in BOLD):
        return name, True
    # pdfium guesses the weight from the stems that the font is said to have: sturdy regular letters come out as bold.
    return name, PLAIN.search(name) is None and raw.FPDFText_GetFontWeight(handle, char) >= 600


def render_gray(
    document: pdfium.PdfDocument, page_number: int, scale: float = 1.0, part: Box | None = None
) -> tuple[int, int, bytes, float]:
    """Draw a page in shades of gray: width, height, one byte a pixel, row after row, and the scale it was drawn at.

    That is ``scale``, or less where the page would take more than ``LIMIT_PIXELS``. With ``part``, whose edges are
    whole points, only that part of the page is drawn.
    """
    page = document[page_number - 1]
    width_points, height_points = page.get_size()
    scale = min(scale, (LIMIT_PIXELS / max(1.0, width_points * height_points)) ** 0.5)
    cut = (0.0, 0.0, 0.0, 0.0)
    if part is not None:
        cut = (part.x0, height_points - part.bottom, width_points - part.x1, part.top)
    bitmap = page.render(scale=scale, grayscale=True, crop=cut)
    array = bitmap.to_numpy()
    height, width = array.shape[:2]
    return width, height, array.reshape(height, -1)[:, :width].tobytes(), scale
