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
Addresses = NDArray[np.uint64]  # of text objects and fonts in memory

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
_BOX = _plain("FPDFText_GetLooseCharBox", ctypes.c_int, ctypes.c_void_p, ctypes.c_int, ctypes.c_void_p)
_ORIGIN = _plain(
    "FPDFText_GetCharOrigin", ctypes.c_int, ctypes.c_void_p, ctypes.c_int, ctypes.c_void_p, ctypes.c_void_p
)
_MATRIX = _plain("FPDFText_GetMatrix", ctypes.c_int, ctypes.c_void_p, ctypes.c_int, ctypes.c_void_p)
_SIZE = _plain("FPDFText_GetFontSize", ctypes.c_double, ctypes.c_void_p, ctypes.c_int)
# An address is given as a number of 64 bits, which unlike a pointer is 0 and not None where there is nothing.
_OBJECT = _plain("FPDFText_GetTextObject", ctypes.c_size_t, ctypes.c_void_p, ctypes.c_int)
_FONT = _plain("FPDFTextObj_GetFont", ctypes.c_size_t, ctypes.c_void_p)
_MODE = _plain("FPDFTextObj_GetTextRenderMode", ctypes.c_int, ctypes.c_void_p)
_COLOR = _plain("FPDFPageObj_GetFillColor", ctypes.c_int, *[ctypes.c_void_p] * 5)


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
        return self._numbers(_UNMAPPED, chars, np.int32) == 1

    def matrices(self, chars: Chars) -> NDArray[np.float64]:
        """Give the matrix by which each character is drawn, a row of a to f; not numbers where it has none."""
        count = len(chars)
        found = np.zeros((count, 6), np.float32)
        first = found.ctypes.data
        known = np.fromiter(self._ask(_MATRIX, chars.tolist(), range(first, first + 24 * count, 24)), np.int32, count)
        found[known == 0] = np.nan
        return found.astype(np.float64)

    def font_sizes(self, chars: Chars) -> list[float]:
        """Give the size of each character's font as the file has it."""
        return list(self._ask(_SIZE, chars.tolist()))

    def _numbers(self, call: Callable[..., Any], chars: Chars, kind: type[np.generic]) -> NDArray[Any]:
        return np.fromiter(self._ask(call, chars.tolist()), kind, len(chars))

    def _ask(self, call: Callable[..., Any], chars: Iterable[int], *places: Iterable[int]) -> Iterable[Any]:
        return map(call, repeat(self._address), chars, *places)


def fonts_of(objects: Addresses) -> Addresses:
    """Give the addresses of the fonts in which text objects are set, 0 where there is none."""
    return np.array([_FONT(address) if address else 0 for address in objects.tolist()], np.uint64)


def modes_of(objects: Addresses) -> NDArray[np.int32]:
    """Give how text objects are drawn (ISO 32000-1, table 106), -1 where there is no object."""
    return np.array([_MODE(address) if address else -1 for address in objects.tolist()], np.int32)


def colors_of(objects: Addresses) -> NDArray[np.uint32]:
    """Give the red, green, blue and opacity in which objects are filled, a row each; black where none is known."""
    channels = np.tile(np.array([0, 0, 0, 255], np.uint32), (len(objects), 1))
    first = channels.ctypes.data
    for place, address in enumerate(objects.tolist()):
        at = first + 16 * place
        if address and not _COLOR(address, at, at + 4, at + 8, at + 12):
            channels[place] = 0, 0, 0, 255
    return channels
