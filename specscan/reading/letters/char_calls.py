"""The characters of a page as pdfium knows them: codes, cells, origins, matrices, text objects, fonts."""

from __future__ import annotations

import ctypes
from itertools import repeat
from typing import Any

import numpy as np
import pypdfium2 as pdfium
import pypdfium2.raw as raw
from numpy.typing import NDArray

from specscan.reading.letters.bulk import ADDRESS, Addresses, Call, address_of, colors, numbers, plain, written
from specscan.reading.letters.sheet import Flags

Chars = NDArray[np.int64]  # places of characters on the page, as pdfium counts them
Codes = NDArray[np.uint32]

SPACE = 32
SURROGATES = (0xD800, 0xE000)

_UNICODE = plain("FPDFText_GetUnicode", ctypes.c_uint, ADDRESS, ctypes.c_int)
_GENERATED = plain("FPDFText_IsGenerated", ctypes.c_int, ADDRESS, ctypes.c_int)
_UNMAPPED = plain("FPDFText_HasUnicodeMapError", ctypes.c_int, ADDRESS, ctypes.c_int)
_OBJECT = plain("FPDFText_GetTextObject", ADDRESS, ADDRESS, ctypes.c_int)
_BOX = plain("FPDFText_GetLooseCharBox", ctypes.c_int, ADDRESS, ctypes.c_int, ADDRESS)
_INK = plain("FPDFText_GetCharBox", ctypes.c_int, ADDRESS, ctypes.c_int, ADDRESS, ADDRESS, ADDRESS, ADDRESS)
_ORIGIN = plain("FPDFText_GetCharOrigin", ctypes.c_int, ADDRESS, ctypes.c_int, ADDRESS, ADDRESS)
_MATRIX = plain("FPDFText_GetMatrix", ctypes.c_int, ADDRESS, ctypes.c_int, ADDRESS)
_SIZE = plain("FPDFText_GetFontSize", ctypes.c_double, ADDRESS, ctypes.c_int)
_FONT = plain("FPDFTextObj_GetFont", ADDRESS, ADDRESS)
_MODE = plain("FPDFTextObj_GetTextRenderMode", ctypes.c_int, ADDRESS)


class CharCalls:
    """The characters of one page; no longer to be used when its text page is closed."""

    def __init__(self, textpage: pdfium.PdfTextPage):
        self.handle = textpage.raw
        self._address = address_of(textpage.raw)
        self.count: int = max(0, raw.FPDFText_CountChars(textpage.raw))

    def codes(self) -> Codes:
        """Give the code of each character of the page; those beyond U+FFFF may come as two halves."""
        buffer = (ctypes.c_ushort * (self.count + 1))()
        length = raw.FPDFText_GetText(self.handle, 0, self.count, buffer)
        codes = np.ctypeslib.as_array(buffer)[: self.count]
        # The text leaves out what is no letter: only where it is as long as the page has characters is each one there.
        if length == self.count + 1 and not bool(((codes >= SURROGATES[0]) & (codes < SURROGATES[1])).any()):
            return codes.astype(np.uint32)
        return self._numbers(_UNICODE, np.arange(self.count), np.uint32)

    def generated(self, chars: Chars, codes: Codes) -> Flags:
        """Tell which characters pdfium put in where it sees a gap: spaces, if at all (and ends of lines)."""
        found = np.zeros(len(chars), np.bool_)
        spaces = np.flatnonzero(codes == SPACE)
        found[spaces] = self._numbers(_GENERATED, chars[spaces], np.int32) == 1
        return found

    def objects(self, chars: Chars) -> Addresses:
        """Give the address of the text object to which each character belongs, 0 where it belongs to none."""
        return self._numbers(_OBJECT, chars, np.uint64)

    def loose_boxes(self, chars: Chars) -> tuple[NDArray[np.float64], Flags]:
        """Give the cell of each character, from baseline to baseline: left, top, right, bottom; and which have one."""
        cells, found = self._written(_BOX, chars, np.float32, 4, row=True)
        return cells.astype(np.float64), found

    def ink_heights(self, chars: Chars) -> NDArray[np.float64]:
        """Give the y at which the ink of each character ends below and above, as the page is drawn."""
        return self._written(_INK, chars, np.float64, 4, row=False)[0][:, 2:]

    def origins(self, chars: Chars) -> NDArray[np.float64]:
        """Give the x and y at which the pen stood for each character."""
        return self._written(_ORIGIN, chars, np.float64, 2, row=False)[0]

    def unmapped(self, chars: Chars) -> Flags:
        """Tell which characters the font does not map to a letter."""
        return self._numbers(_UNMAPPED, chars, np.int32) == 1

    def matrices(self, chars: Chars) -> NDArray[np.float64]:
        """Give the matrix by which each character is drawn, a row of a to f; not numbers where it has none."""
        found, known = self._written(_MATRIX, chars, np.float32, 6, row=True)
        found[~known] = np.nan
        return found.astype(np.float64)

    def font_sizes(self, chars: Chars) -> list[float]:
        """Give the size of each character's font as the file has it."""
        return self._numbers(_SIZE, chars, np.float64).tolist()

    def _numbers(self, call: Call, chars: Chars, kind: Any) -> NDArray[Any]:
        return numbers(call, len(chars), kind, repeat(self._address), chars.tolist())

    def _written(
        self, call: Call, chars: Chars, kind: Any, width: int, *, row: bool
    ) -> tuple[NDArray[Any], NDArray[np.bool_]]:
        return written(call, kind, width, len(chars), repeat(self._address), chars.tolist(), row=row)


def fonts_of(objects: Addresses) -> Addresses:
    """Give the addresses of the fonts in which text objects are set, 0 where there is none."""
    return numbers(_FONT, len(objects), np.uint64, objects.tolist())


def modes_of(objects: Addresses) -> NDArray[np.int32]:
    """Give how text objects are drawn (ISO 32000-1, table 106), -1 where there is no object."""
    return numbers(_MODE, len(objects), np.int32, objects.tolist())


def fills_of(objects: Addresses) -> NDArray[np.uint32]:
    """Give the red, green, blue and opacity in which objects are filled, a row each; black where none is known."""
    found, known = colors(objects.tolist(), fill=True)
    found[~known, 3] = 255
    return found
