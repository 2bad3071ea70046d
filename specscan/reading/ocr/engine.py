"""The recogniser of the ``ocr`` extra: pictures of text → signs with how sure it is of each.

Models and character list lie inside the installed package ``rapidocr``; nothing is fetched. What is used of the
package is its two networks: one finds lines of text on a page, one gives for every column of a strip of text how likely
each sign stands there. The second is read here and not by the package, because doubt lies in what is second best.
"""

from __future__ import annotations

import importlib.util
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from functools import lru_cache
from importlib.metadata import PackageNotFoundError, version
from typing import Any

import numpy as np
from numpy.typing import NDArray

from specscan.records.errors import DocumentError

NEEDED = ("rapidocr", "onnxruntime", "cv2")
COMMAND = "pip install 'specscan[ocr]'"
STRIP_HEIGHT = 48  # pixels; the size for which the recogniser's network is made
STRIDE = 8  # pixels of the strip that one column of its answer stands for
BATCH = 6
WIDEST = 60.0  # width over height of a strip; longer ones are read as if they were this long

Picture = NDArray[np.uint8]
BLANK = 0


@dataclass(slots=True)
class Sign:
    """One recognised character, how likely it is, and its middle as a share of the strip's width.

    ``space_before`` is the likelihood of a space between the sign before and this one; ``missed_point`` and
    ``missed_digit`` that of a point or comma, and of another digit, there. A point and a comma are told apart by the
    smallest of shapes: for them ``sure`` is the likelihood of either, and ``which`` the share of the one that was read.
    """

    text: str
    sure: float
    at: float
    space_before: float = 0.0
    missed_point: float = 0.0
    missed_digit: float = 0.0
    which: float = 1.0


@dataclass(slots=True)
class Strip:
    """The signs of one strip of text without its spaces."""

    signs: list[Sign] = field(default_factory=list)

    @property
    def text(self) -> str:
        """Give the signs without spaces."""
        return "".join(sign.text for sign in self.signs)

    @property
    def sure(self) -> float:
        """Give the mean likelihood of the signs, 0 for an empty strip."""
        return sum(sign.sure for sign in self.signs) / len(self.signs) if self.signs else 0.0


@lru_cache(maxsize=1)
def ocr_version() -> str:
    """Give name and version of the installed recogniser; empty where the ``ocr`` extra is not installed."""
    if any(importlib.util.find_spec(name) is None for name in NEEDED):
        return ""
    try:
        return f"rapidocr {version('rapidocr')}"
    except PackageNotFoundError:
        return ""


class Engine:
    """The two networks, loaded once for a process."""

    def __init__(self, characters: str, same_as: tuple[tuple[str, str], ...], threads: int):
        """Load the networks; of all signs that they know, only those in ``characters`` are read.

        ``same_as`` are signs that the network has besides, each with the one, or the several, that it stands for.

        Raises:
            DocumentError: the extra is not installed, or its models cannot be loaded.
        """
        if not ocr_version():
            raise DocumentError(f"reading pictures needs the ocr extra: {COMMAND}")
        try:
            from rapidocr import RapidOCR

            engine: Any = RapidOCR(
                params={
                    "Global.log_level": "critical",
                    "Global.use_cls": False,
                    "Global.max_side_len": 4000,
                    "EngineConfig.onnxruntime.intra_op_num_threads": threads,
                    "EngineConfig.onnxruntime.inter_op_num_threads": 1,
                }
            )
            engine(np.full((64, 256, 3), 255, np.uint8))  # loads the network that finds
            engine.recognize_txt([np.full((STRIP_HEIGHT, 96, 3), 255, np.uint8)])
            self._finder: Any = engine
            self._network: Any = engine.text_rec.session
            known: list[str] = engine.text_rec.postprocess_op.character
        except DocumentError:
            raise
        except Exception as error:
            raise DocumentError(f"the recogniser cannot be loaded ({type(error).__name__}: {error})") from error
        joint = {sign: meant for sign, meant in same_as if len(meant) > 1}
        wanted = set(characters) - {" "} | joint.keys()
        kept = [i for i, sign in enumerate(known) if i == BLANK or sign in wanted or sign == " "]
        self._kept = np.array(kept)
        self._signs = ["", *(joint.get(known[i], known[i]) for i in kept[1:])]
        places = {known[i]: place for place, i in enumerate(kept)}
        self._other = [
            (known.index(sign), places[meant]) for sign, meant in same_as if meant in places and sign in known
        ]
        self._space = self._signs.index(" ")
        self._points = [i for i, sign in enumerate(self._signs) if sign in (".", ",")]
        self._digits = [i for i, sign in enumerate(self._signs) if sign.isdecimal()]

    def find(self, picture: Picture) -> NDArray[np.float32]:
        """Give the corners of the lines of text on a picture in shades of gray, shape (lines, 4, 2), in pixels.

        Corners go round from the upper left one, clockwise.

        Raises:
            DocumentError: the recogniser fails on the picture.
        """
        with _failures_named():
            found = self._finder(np.repeat(picture[:, :, None], 3, axis=2), use_det=True, use_rec=False, use_cls=False)
        boxes = getattr(found, "boxes", None)
        if boxes is None or len(boxes) == 0:
            return np.zeros((0, 4, 2), np.float32)
        return np.asarray(boxes, np.float32)

    def read(self, strips: list[Picture]) -> list[Strip]:
        """Read strips of text, each an upright picture in shades of gray; one answer each, in their order.

        Raises:
            DocumentError: the recogniser fails on a strip.
        """
        answers: list[Strip] = [Strip() for _ in strips]
        usable = [i for i, strip in enumerate(strips) if min(strip.shape[:2]) >= 2]
        usable.sort(key=lambda i: strips[i].shape[1] / strips[i].shape[0])
        for start in range(0, len(usable), BATCH):
            numbers = usable[start : start + BATCH]
            scaled = [_scaled(strips[i]) for i in numbers]
            widest = max(320, *(one.shape[1] for one in scaled))
            batch = np.zeros((len(numbers), 3, STRIP_HEIGHT, widest), np.float32)
            for place, one in enumerate(scaled):
                batch[place, :, :, : one.shape[1]] = (one.astype(np.float32) / 127.5 - 1.0)[None]
            with _failures_named():
                answer = self._network(batch)
            likely = answer[:, :, self._kept]
            for other, place in self._other:
                likely[:, :, place] += answer[:, :, other]
            for number, one, columns in zip(numbers, scaled, likely, strict=True):
                answers[number] = self._decoded(columns, one.shape[1])
        return answers

    def _decoded(self, columns: NDArray[np.float32], width: int) -> Strip:
        """Join the columns of one answer to signs: the same sign in adjoining columns is one."""
        strip = Strip()
        last, previous, held = -1, BLANK, 0
        for column, index in enumerate(columns.argmax(axis=1).tolist()):
            if index not in (BLANK, self._space):
                likely = float(columns[column, index])
                if index == previous:
                    for sign in strip.signs[-held:]:
                        sign.sure = max(sign.sure, likely)
                else:
                    first, *others = self._signs[index]
                    held = 1 + len(others)
                    sign = Sign(first, likely, (column + 0.5) * STRIDE / width)
                    if index in self._points:
                        sign.sure = float(columns[column, self._points].sum())
                        sign.which = likely / sign.sure
                    if strip.signs and column > last + 1:
                        self._look_between(sign, strip.signs[-1], columns[last + 1 : column])
                    strip.signs += [sign, *(Sign(more, likely, sign.at) for more in others)]
                last = column
            previous = index
        return strip

    def _look_between(self, sign: Sign, before: Sign, between: NDArray[np.float32]) -> None:
        """Note what may stand between two signs and was not read, the tails of these two aside."""
        sign.space_before = float(between[:, self._space].max())
        points = [i for i in self._points if self._signs[i] not in (sign.text, before.text)]
        digits = [i for i in self._digits if self._signs[i] not in (sign.text, before.text)]
        sign.missed_point = float(between[:, points].max()) if points else 0.0
        sign.missed_digit = float(between[:, digits].max())


@contextmanager
def _failures_named() -> Iterator[None]:
    """Turn whatever the recogniser raises on one picture into an error that costs only this page."""
    try:
        yield
    except Exception as error:
        said = str(error).strip().splitlines()
        raise DocumentError(f"the recogniser failed ({type(error).__name__}: {said[-1] if said else ''})") from error


def _scaled(strip: Picture) -> Picture:
    import cv2

    height, width = strip.shape[:2]
    target = max(STRIDE, round(STRIP_HEIGHT * min(width / height, WIDEST)))
    how = cv2.INTER_AREA if height > STRIP_HEIGHT else cv2.INTER_CUBIC
    return np.asarray(cv2.resize(strip, (target, STRIP_HEIGHT), interpolation=how), np.uint8)


@lru_cache(maxsize=1)
def engine_for(characters: str, same_as: tuple[tuple[str, str], ...], threads: int) -> Engine:
    """Give the recogniser, loaded at the first call in this process."""
    return Engine(characters, same_as, threads)
