"""PDF pages → drawn edges, boxes, dots and pictures, by pdfium's raw interface.

A floorplan has thousands of paths, so each question is asked of all of them at once, and of fewer from one to the next.
"""

from __future__ import annotations

import ctypes
from dataclasses import dataclass, field
from itertools import repeat

import numpy as np
import pypdfium2 as pdfium
import pypdfium2.raw as raw
from numpy.typing import NDArray

from specscan.reading.letters.bulk import ADDRESS, address_of, colors, numbers, plain, written
from specscan.reading.letters.dashes import dashed_rules
from specscan.reading.letters.sheet import Dot, Fill, Flags, Numbers, Sheet, Stroke, Turn
from specscan.records.text import Box

LIMIT_OBJECTS = 60_000  # a page drawn with more paths than this is a picture, not a table
LIMIT_NESTING = 6
LIMIT_DOT = 9.0
LIMIT_SEGMENTS = 160  # a box with rounded corners drawn as short straight lines has about a hundred
THIN = 2.5
SHORT = 4.0  # points: nothing shorter is a rule or the edge of a box
WHITE = (255, 255, 255)

Matrix = tuple[float, float, float, float, float, float]
IDENTITY: Matrix = (1, 0, 0, 1, 0, 0)
Places = NDArray[np.int64]

_OBJECT = plain("FPDFPage_GetObject", ADDRESS, ADDRESS, ctypes.c_int)
_PART = plain("FPDFFormObj_GetObject", ADDRESS, ADDRESS, ctypes.c_ulong)
_PARTS = plain("FPDFFormObj_CountObjects", ctypes.c_int, ADDRESS)
_TYPE = plain("FPDFPageObj_GetType", ctypes.c_int, ADDRESS)
_MATRIX = plain("FPDFPageObj_GetMatrix", ctypes.c_int, ADDRESS, ADDRESS)
_BOUNDS = plain("FPDFPageObj_GetBounds", ctypes.c_int, *[ADDRESS] * 5)
_MODE = plain("FPDFPath_GetDrawMode", ctypes.c_int, *[ADDRESS] * 3)
_SEGMENTS = plain("FPDFPath_CountSegments", ctypes.c_int, ADDRESS)
_SEGMENT = plain("FPDFPath_GetPathSegment", ADDRESS, ADDRESS, ctypes.c_int)
_POINT = plain("FPDFPathSegment_GetPoint", ctypes.c_int, *[ADDRESS] * 3)
_KIND = plain("FPDFPathSegment_GetType", ctypes.c_int, ADDRESS)


@dataclass(slots=True)
class _Objects:
    """The objects of a page in the order in which they are drawn, those of forms among them."""

    addresses: list[int] = field(default_factory=list)
    kinds: list[int] = field(default_factory=list)
    outer: list[int] = field(default_factory=list)  # the place in ``matrices`` of the form in which each stands
    matrices: list[Matrix] = field(default_factory=lambda: [IDENTITY])

    def add(self, addresses: list[int], outer: int, depth: int) -> None:
        """Add objects of one page or form."""
        kinds = numbers(_TYPE, len(addresses), np.int32, addresses).tolist()
        if raw.FPDF_PAGEOBJ_FORM not in kinds:
            self.addresses += addresses
            self.kinds += kinds
            self.outer += [outer] * len(addresses)
            return
        for address, kind in zip(addresses, kinds, strict=True):
            if kind != raw.FPDF_PAGEOBJ_FORM:
                self.addresses.append(address)
                self.kinds.append(kind)
                self.outer.append(outer)
            elif depth < LIMIT_NESTING and len(self.addresses) <= LIMIT_OBJECTS:
                own = written(_MATRIX, np.float32, 6, 1, [address], row=True)[0][0].tolist()
                self.matrices.append(_multiply((own[0], own[1], own[2], own[3], own[4], own[5]), self.matrices[outer]))
                count = max(0, _PARTS(address))
                self.add(list(map(_PART, repeat(address), range(count))), len(self.matrices) - 1, depth + 1)


def collect_drawing(page: pdfium.PdfPage, sheet: Sheet, turn: Turn) -> None:
    """Add to a sheet what is drawn on the page: strokes, filled boxes, dots, pictures."""
    objects = _Objects()
    count = max(0, raw.FPDFPage_CountObjects(page.raw))
    objects.add(list(map(_OBJECT, repeat(address_of(page.raw)), range(count))), 0, 0)
    sheet.crowded = len(objects.addresses) > LIMIT_OBJECTS
    kinds = np.array(objects.kinds[:LIMIT_OBJECTS], np.int32)
    drawn = np.flatnonzero((kinds == raw.FPDF_PAGEOBJ_IMAGE) | (kinds == raw.FPDF_PAGEOBJ_PATH))
    if not len(drawn):
        return
    addresses = [objects.addresses[place] for place in drawn.tolist()]
    matrices = np.array(objects.matrices, np.float64)[np.array(objects.outer, np.int64)[drawn]]
    boxes, found = _boxes(addresses, matrices, turn)
    pictures = kinds[drawn] == raw.FPDF_PAGEOBJ_IMAGE
    sheet.pictures += [Box(*box) for box in boxes[pictures & found].tolist()]
    modes = written(_MODE, np.int32, 2, len(addresses), addresses)[0] != 0
    x0, top, x1, bottom = boxes.T
    away = (x1 < 0) | (bottom < 0) | (x0 > sheet.width) | (top > sheet.height)
    _Paths(addresses, matrices, boxes, modes[:, 0], modes[:, 1], turn).put_on(sheet, ~pictures & found & ~away)


def _multiply(one: Matrix, two: Matrix) -> Matrix:
    a, b, c, d, e, f = one
    p, q, r, s, t, u = two
    return (
        a * p + b * r, a * q + b * s, c * p + d * r, c * q + d * s, e * p + f * r + t, e * q + f * s + u,
    )  # fmt: skip


def _apply(matrices: Numbers, x: Numbers, y: Numbers) -> tuple[Numbers, Numbers]:
    a, b, c, d, e, f = matrices.T
    return a * x + c * y + e, b * x + d * y + f


def _boxes(addresses: list[int], matrices: Numbers, turn: Turn) -> tuple[Numbers, Flags]:
    """Give the boxes of objects on the page as displayed, a row of x0, top, x1, bottom each, and which have one."""
    bounds, found = written(_BOUNDS, np.float32, 4, len(addresses), addresses)
    left, low, right, high = bounds.astype(np.float64).T
    (x0, y0), (x1, y1) = turn(*_apply(matrices, left, low)), turn(*_apply(matrices, right, high))
    return np.column_stack([np.minimum(x0, x1), np.minimum(y0, y1), np.maximum(x0, x1), np.maximum(y0, y1)]), found


@dataclass(slots=True)
class _Paths:
    """Paths: where they lie, and whether they are filled and stroked."""

    addresses: list[int]
    matrices: Numbers
    boxes: Numbers
    filled: Flags
    stroked: Flags
    turn: Turn

    def put_on(self, sheet: Sheet, wanted: Flags) -> None:
        """Add what the wanted ones draw to a sheet."""
        width, height = self.boxes[:, 2] - self.boxes[:, 0], self.boxes[:, 3] - self.boxes[:, 1]
        short, long = np.minimum(width, height), np.maximum(width, height)
        visible = wanted & (self.filled | self.stroked)
        wanted = visible & (long >= 2)
        thin = (short <= THIN) & ~((short >= 2) & (short >= 0.7 * long))
        dots = wanted & ~thin & (long <= LIMIT_DOT) & (np.abs(width - height) <= 1.2)
        shapes = wanted & ~thin & ~dots & (long >= SHORT)
        segments = np.zeros(len(wanted), np.int64)
        asked = np.flatnonzero(dots | shapes)
        segments[asked] = numbers(_SEGMENTS, len(asked), np.int64, self._at(asked))
        few = segments <= LIMIT_SEGMENTS
        self._add_dots(sheet, np.flatnonzero(dots & few), segments)
        bars = np.flatnonzero(wanted & thin & (long >= SHORT))
        strokes = [(int(place), Stroke(*box)) for place, box in zip(bars, self.boxes[bars].tolist(), strict=True)]
        strokes += self._shapes(sheet, np.flatnonzero(shapes & few), segments)
        strokes.sort(key=lambda one: one[0])
        sheet.strokes += [stroke for _, stroke in strokes]
        sheet.strokes += dashed_rules(self.boxes[visible & (long < SHORT) & (short <= THIN)])

    def _at(self, places: Places) -> list[int]:
        return [self.addresses[place] for place in places.tolist()]

    def _colors(self, places: Places, wanted: Flags, *, fill: bool) -> list[tuple[int, int, int] | None]:
        """Give the colours of paths, ``None`` where it is not wanted, not known or clear."""
        found, known = colors(self._at(places), fill=fill)
        shown = wanted[places] & known & (found[:, 3] > 0)
        return [
            (red, green, blue) if show else None
            for (red, green, blue, _), show in zip(found.tolist(), shown.tolist(), strict=True)
        ]

    def _add_dots(self, sheet: Sheet, places: Places, segments: Places) -> None:
        shades = self._colors(places, self.filled, fill=True)
        for place, box, shade in zip(places.tolist(), self.boxes[places].tolist(), shades, strict=True):
            filled = bool(self.filled[place]) and shade != WHITE
            sheet.dots.append(Dot(Box(*box), filled, bool(segments[place] > 6)))

    def _shapes(self, sheet: Sheet, places: Places, segments: Places) -> list[tuple[int, Stroke]]:
        """Add the boxes among shapes to a sheet; give the straight strokes of the others, each with its place."""
        if not len(places):
            return []
        counts = segments[places]
        owner = np.repeat(np.arange(len(places)), counts)
        x, y, parts = self._points(places, counts, owner)
        boxes = self.boxes[places]
        own = boxes[owner]
        slack = np.maximum(1.5, 0.12 * np.minimum(boxes[:, 2] - boxes[:, 0], boxes[:, 3] - boxes[:, 1]))[owner]
        at_edge = (np.minimum(np.abs(x - own[:, 0]), np.abs(x - own[:, 2])) <= slack) | (
            np.minimum(np.abs(y - own[:, 1]), np.abs(y - own[:, 3])) <= slack
        )
        inner = np.bincount(owner[~at_edge], minlength=len(places))
        rectangle = (inner == 0) & (counts >= 4)
        framed = places[rectangle]
        shades = self._colors(framed, self.filled, fill=True), self._colors(framed, self.stroked, fill=False)
        for box, color, edge in zip(boxes[rectangle].tolist(), *shades, strict=True):
            sheet.fills.append(Fill(Box(*box), color, framed=edge is not None and edge != WHITE))
        across, down = np.abs(x[1:] - x[:-1]), np.abs(y[1:] - y[:-1])
        level = (down <= 0.5) & (across > 0.5) | (across <= 0.5) & (down > 0.5)
        plain = (self.stroked[places] & ~rectangle)[owner[1:]]
        found = np.flatnonzero(level & (owner[1:] == owner[:-1]) & plain & (np.maximum(across, down) >= SHORT))
        kinds = numbers(_KIND, len(found), np.int32, [parts[place] for place in (found + 1).tolist()])
        found = found[kinds == raw.FPDF_SEGMENT_LINETO]
        ends = np.column_stack([
            np.minimum(x[found], x[found + 1]), np.minimum(y[found], y[found + 1]),
            np.maximum(x[found], x[found + 1]), np.maximum(y[found], y[found + 1]),
        ])  # fmt: skip
        return [(place, Stroke(*end)) for place, end in zip(places[owner[found]].tolist(), ends.tolist(), strict=True)]

    def _points(self, places: Places, counts: Places, owner: Places) -> tuple[Numbers, Numbers, list[int]]:
        """Give the points of paths on the page as displayed, one path after the other, and the segments to them."""
        total = len(owner)
        number = np.arange(total) - np.repeat(np.cumsum(counts) - counts, counts)
        parts = list(map(_SEGMENT, self._at(places[owner]), number.tolist()))
        points = written(_POINT, np.float32, 2, total, parts)[0].astype(np.float64)
        own = written(_MATRIX, np.float32, 6, len(places), self._at(places), row=True)[0].astype(np.float64)
        px, py = _apply(own[owner], points[:, 0], points[:, 1])
        x, y = self.turn(*_apply(self.matrices[places[owner]], px, py))
        return x, y, parts
