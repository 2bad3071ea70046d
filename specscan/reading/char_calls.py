"""pdfium's questions about single characters, asked for many at once.

A page has a thousand characters, and pdfium answers one question about one of them a call. Here the calls are made
by ``map`` from ranges of addresses, so that no line of Python runs between them; their answers land in arrays.
"""

from __future__ import annotations

import ctypes
from collections.abc import Callable, Iterable
from itertools import repeat
from typing import Any

import numpy as np
import pypdfium2 as pdfium
import pypdfium2.raw as raw
from numpy.typing import NDArray

from specscan.reading.sheet import Flags

Chars = NDArray[np.int64]  # places of characters on the page, as pdfium counts them
Codes = NDArray[np.uint32]

SPACE = 32
SURROGATES = (0xD800, 0xE000)


def _plain(name: str, result: Any, *arguments: Any) -> Callable[..., Any]:
    """Give a function of pdfium that takes addresses as plain numbers, which costs half of what checked pointers do."""
    address = ctypes.cast(getattr(raw, name), ctypes.c_void_p).value
    assert address is not None
    return ctypes.PYFUNCTYPE(result, *arguments)(address)


_UNICODE = _plain("FPDFText_GetUnicode", ctypes.c_uint, ctypes.c_void_p, ctypes.c_int)
_GENERATED = _plain("FPDFText_IsGenerated", ctypes.c_int, ctypes.c_void_p, ctypes.c_int)
_UNMAPPED = _plain("FPDFText_HasUnicodeMapError", ctypes.c_int, ctypes.c_void_p, ctypes.c_int)
_OBJECT = _plain("FPDFText_GetTextObject", ctypes.c_void_p, ctypes.c_void_p, ctypes.c_int)
_BOX = _plain("FPDFText_GetLooseCharBox", ctypes.c_int, ctypes.c_void_p, ctypes.c_int, ctypes.c_void_p)
_ORIGIN = _plain(
    "FPDFText_GetCharOrigin", ctypes.c_int, ctypes.c_void_p, ctypes.c_int, ctypes.c_void_p, ctypes.c_void_p
)
_FONT = _plain("FPDFTextObj_GetFont", ctypes.c_void_p, ctypes.c_void_p)


class CharCalls:
    """The characters of one page; no longer to be used when its text page is closed."""

    def __init__(self, textpage: pdfium.PdfTextPage):
        self.handle = textpage.raw
        self._address = ctypes.cast(textpage.raw, ctypes.c_void_p).value
        self.count: int = max(0, raw.FPDFText_CountChars(textpage.raw))

    def codes(self) -> Codes:
        """Give the code of each character of the page; those beyond U+FFFF may come as two halves."""
        buffer = (ctypes.c_ushort * (self.count + 1))()
        length = raw.FPDFText_GetText(self.handle, 0, self.count, buffer)
        codes = np.ctypeslib.as_array(buffer)[: self.count]
        # The text leaves out what is no letter: only where it is as long as the page has characters is each one there.
        if length == self.count + 1 and not bool(((codes >= SURROGATES[0]) & (codes < SURROGATES[1])).any()):
            return codes.astype(np.uint32)
        return np.fromiter(self._ask(_UNICODE, range(self.count)), np.uint32, self.count)

    def generated(self, chars: Chars, codes: Codes) -> Flags:
        """Tell which characters pdfium put in where it sees a gap: spaces, if at all (and ends of lines)."""
        found = np.zeros(len(chars), np.bool_)
        spaces = np.flatnonzero(codes == SPACE)
        found[spaces] = np.fromiter(self._ask(_GENERATED, chars[spaces].tolist()), np.int32, len(spaces)) == 1
        return found

    def objects(self, chars: Chars) -> list[int]:
        """Give the address of the text object to which each character belongs, 0 where it belongs to none."""
        return [address or 0 for address in self._ask(_OBJECT, chars.tolist())]

    def loose_boxes(self, chars: Chars) -> tuple[NDArray[np.float64], Flags]:
        """Give the cell of each character, from baseline to baseline: left, top, right, bottom; and which have one."""
        count = len(chars)
        cells = np.zeros((count, 4), np.float32)
        first = cells.ctypes.data
        asked = self._ask(_BOX, chars.tolist(), range(first, first + 16 * count, 16))
        found = np.fromiter(asked, np.int32, count) != 0
        return cells.astype(np.float64), found

    def origins(self, chars: Chars) -> NDArray[np.float64]:
        """Give the x and y at which the pen stood for each character."""
        count = len(chars)
        points = np.zeros((count, 2), np.float64)
        first = points.ctypes.data
        places = range(first, first + 16 * count, 16), range(first + 8, first + 8 + 16 * count, 16)
        for _ in self._ask(_ORIGIN, chars.tolist(), *places):
            pass
        return points

    def unmapped(self, chars: Chars) -> Flags:
        """Tell which characters the font does not map to a letter."""
        return np.fromiter(self._ask(_UNMAPPED, chars.tolist()), np.int32, len(chars)) == 1

    def _ask(self, call: Callable[..., Any], chars: Iterable[int], *places: Iterable[int]) -> Iterable[Any]:
        return map(call, repeat(self._address), chars, *places)


def font_of(text_object: int) -> int:
    """Give the address of the font in which a text object is set, 0 where there is none."""
    return _FONT(text_object) or 0 if text_object else 0
