"""pdfium's functions, called for many things at once.

pdfium answers one question about one character or path a call. Here the calls are made by ``map`` from lists and
ranges of addresses, so that no line of Python runs between them; their answers land in arrays.
"""

from __future__ import annotations

import ctypes
from collections.abc import Callable, Iterable
from typing import Any

import numpy as np
import pypdfium2.raw as raw
from numpy.typing import NDArray

# In the address space of pdfium; unlike a pointer of ctypes, a number is 0 and not None where there is nothing.
ADDRESS = ctypes.c_size_t
Addresses = NDArray[np.uint64]
Call = Callable[..., Any]


def plain(name: str, result: Any, *arguments: Any) -> Call:
    """Give a function of pdfium that takes addresses as plain numbers, which costs half of what checked pointers do."""
    address = ctypes.cast(getattr(raw, name), ctypes.c_void_p).value
    assert address is not None
    return ctypes.PYFUNCTYPE(result, *arguments)(address)


def address_of(pointer: Any) -> int:
    """Give the address to which a pointer of ctypes points, 0 for none."""
    return ctypes.cast(pointer, ctypes.c_void_p).value or 0


def numbers(call: Call, count: int, kind: Any, *arguments: Iterable[int]) -> NDArray[Any]:
    """Give what a function answers to each of ``count`` sets of arguments, as an array of a kind of numbers."""
    return np.fromiter(map(call, *arguments), kind, count)


def written(
    call: Call, kind: Any, width: int, count: int, *arguments: Iterable[int], row: bool = False
) -> tuple[NDArray[Any], NDArray[np.bool_]]:
    """Give what a function writes for each of ``count`` sets of arguments, ``width`` numbers each, and which it knew.

    The function takes, behind the arguments, an address for each number, or with ``row`` one for all of them.
    What it does not know is 0.
    """
    found = np.zeros((count, width), kind)
    first, step, size = found.ctypes.data, found.itemsize, found.itemsize * width
    places = [range(first + at, first + at + size * count, size) for at in range(0, step if row else size, step)]
    known = np.fromiter(map(call, *arguments, *places), np.int32, count) != 0
    found[~known] = 0
    return found, known


_FILL_COLOR = plain("FPDFPageObj_GetFillColor", ctypes.c_int, *[ADDRESS] * 5)
_STROKE_COLOR = plain("FPDFPageObj_GetStrokeColor", ctypes.c_int, *[ADDRESS] * 5)


def colors(objects: list[int], *, fill: bool) -> tuple[NDArray[np.uint32], NDArray[np.bool_]]:
    """Give the red, green, blue and opacity in which objects are filled or stroked, a row each, and which have one."""
    return written(_FILL_COLOR if fill else _STROKE_COLOR, np.uint32, 4, len(objects), objects)
