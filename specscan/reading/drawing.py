"""PDF pages → drawn edges, boxes, dots and pictures, by pdfium's raw interface."""

from __future__ import annotations

import ctypes
from collections.abc import Iterator

import pypdfium2 as pdfium
import pypdfium2.raw as raw

from specscan.reading.sheet import Dot, Fill, Sheet, Stroke, Turn, turned_box
from specscan.records.text import Box

LIMIT_OBJECTS = 60_000  # a page drawn with more paths than this is a picture, not a table
LIMIT_NESTING = 6
LIMIT_DOT = 9.0
LIMIT_SEGMENTS = 160  # a box with rounded corners drawn as short straight lines has about a hundred

Matrix = tuple[float, float, float, float, float, float]
IDENTITY: Matrix = (1, 0, 0, 1, 0, 0)


def collect_drawing(page: pdfium.PdfPage, sheet: Sheet, turn: Turn) -> None:
    """Add to a sheet what is drawn on the page: strokes, filled boxes, dots, pictures."""
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
    return turned_box(turn, x0, y0, x1, y1)


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
