"""Which ink belongs to which recognised sign: the recogniser says roughly where a sign stands, the ink exactly.

A strip's ink falls into runs of inked columns with white between them. Signs and runs are brought together in order at
least cost (dynamic programming): a run may hold several signs that touch, a sign may be broken into several runs, a run
may belong to no sign at all. The last is what gives away a digit that the recogniser passed over.
"""

from __future__ import annotations

import statistics
from dataclasses import dataclass, field
from itertools import accumulate

import numpy as np

from specscan.reading.ocr.engine import Sign
from specscan.reading.ocr.picture import Mask

# Shapes of signs in most text faces, as shares of the font size (em); from memory.
CAP, LOWER = 0.72, 0.52
DEEP = set("gjpqyçQ,;()[]{}|/§$µ@_")
SHORT = set("acemnorsuvwxzgpqyçœæ")
TALL = set("ABCDEFGHIJKLMNOPQRSTUVWXYZbdfhkl0123456789ß")
FLOATING = set("'\"’‘“”′″°²³¹*^~-–—−=·•×+«»%®©™")
WIDTHS = {0.15: ".,:;'’′|!·", 0.2: "iljI°()[]/\\-", 0.32: "ftr1\"”“″*²³¹", 0.68: "ABCDEFGHKLNOPQRSTUVXYZ½¼¾&€–×±<>=+−",
          0.82: "mwMW%@—™©®œæŒÆ"}  # fmt: skip
WIDTH = {sign: width for width, signs in WIDTHS.items() for sign in signs}
OTHER = 0.47

MOST_SIGNS, MOST_RUNS = 6, 3  # in one run; of one sign
UNCLAIMED, UNINKED, BROKEN, AWAY = 1.6, 1.2, 0.35, 0.5  # costs: in em of ink, per sign, per break, per em of distance


@dataclass(slots=True)
class Place:
    """A sign with the extent of its ink, in pixels of the strip.

    ``shared`` tells that its ink touches its neighbours'; ``stray`` how wide the ink beside it is that belongs to no
    sign, and ``stray_bottom`` how far down that reaches.
    """

    sign: Sign
    x0: float
    x1: float
    top: int = 0
    bottom: int = 0
    shared: bool = False
    stray: float = 0.0
    stray_bottom: int = 0

    @property
    def width(self) -> float:
        return self.x1 - self.x0

    @property
    def height(self) -> int:
        return self.bottom - self.top


@dataclass(slots=True)
class _Strip:
    runs: list[tuple[int, int]]
    middles: list[float]
    widths: list[float]
    em: float
    width_sums: list[float] = field(default_factory=list)  # of the first n signs
    middle_sums: list[float] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.width_sums = [0.0, *accumulate(self.widths)]
        self.middle_sums = [0.0, *accumulate(self.middles)]


def ink_runs(ink: Mask) -> list[tuple[int, int]]:
    """Give the stretches of columns that hold ink: first column, and the one behind the last."""
    inked = np.concatenate([[False], ink.any(axis=0), [False]])
    edges = np.flatnonzero(inked[1:] != inked[:-1])
    return list(zip(edges[::2].tolist(), edges[1::2].tolist(), strict=True))


def align(signs: list[Sign], ink: Mask, em: float) -> list[Place]:
    """Give each sign its ink; ``em`` is the font size in pixels."""
    runs = ink_runs(ink)
    if not signs:
        return []
    middles = [sign.at * ink.shape[1] for sign in signs]
    widths = [WIDTH.get(sign.text, OTHER) * em for sign in signs]
    inked, expected = sum(b - a for a, b in runs), sum(widths)
    stretch = min(1.5, max(0.6, inked / expected)) if expected else 1.0
    strip = _Strip(runs, middles, [width * stretch for width in widths], em)
    return _places(signs, strip, _steps(strip), ink)


def _steps(strip: _Strip) -> list[tuple[int, int, int, int]]:
    """Give the cheapest steps: runs from, runs to, signs from, signs to."""
    runs, signs = len(strip.runs), len(strip.middles)
    table: list[dict[int, tuple[float, int, int]]] = [{} for _ in range(runs + 1)]
    table[0][0] = (0.0, 0, 0)

    def offer(to_run: int, to_sign: int, cost: float, run: int, sign: int) -> None:
        known = table[to_run].get(to_sign)
        if known is None or cost < known[0]:
            table[to_run][to_sign] = (cost, run, sign)

    for run in range(runs + 1):
        for sign in range(signs + 1):
            if sign not in table[run]:
                continue
            cost = table[run][sign][0]
            if sign < signs:
                offer(run, sign + 1, cost + UNINKED, run, sign)
            if run == runs:
                continue
            x0, x1 = strip.runs[run]
            offer(run + 1, sign, cost + 0.1 + UNCLAIMED * (x1 - x0) / strip.em, run, sign)
            if sign < signs and strip.middles[sign] - x1 > 4 * strip.em:
                continue
            for more in range(1, min(MOST_SIGNS, signs - sign) + 1):
                if strip.middles[sign + more - 1] - x1 > 2 * strip.em:
                    break
                offer(run + 1, sign + more, cost + _together(strip, run, sign, more), run, sign)
            if sign < signs:
                for more in range(2, min(MOST_RUNS, runs - run) + 1):
                    offer(run + more, sign + 1, cost + _broken(strip, run, sign, more), run, sign)
    steps = []
    run, sign = runs, signs
    while (run, sign) != (0, 0):
        _, before_run, before_sign = table[run][sign]
        steps.append((before_run, run, before_sign, sign))
        run, sign = before_run, before_sign
    return steps[::-1]


def _together(strip: _Strip, run: int, sign: int, count: int) -> float:
    """Give the cost of ``count`` signs in one run: how far its width and middle are from what is expected."""
    x0, x1 = strip.runs[run]
    total = strip.width_sums[sign + count] - strip.width_sums[sign]
    middle = (strip.middle_sums[sign + count] - strip.middle_sums[sign]) / count
    away = AWAY * count * abs((x0 + x1) / 2 - middle)
    return (abs(x1 - x0 - total) + away) / strip.em + 0.05 * (count - 1)


def _broken(strip: _Strip, run: int, sign: int, count: int) -> float:
    x0, x1 = strip.runs[run][0], strip.runs[run + count - 1][1]
    away = AWAY * abs((x0 + x1) / 2 - strip.middles[sign]) / strip.em
    return abs((x1 - x0) - strip.widths[sign]) / strip.em + away + BROKEN * (count - 1)


def _places(signs: list[Sign], strip: _Strip, steps: list[tuple[int, int, int, int]], ink: Mask) -> list[Place]:
    places: list[Place] = []
    unclaimed: list[tuple[int, int, int]] = []  # number of signs before it, first and last column
    for run, to_run, sign, to_sign in steps:
        if run == to_run:  # a sign without ink: it stands where the recogniser says
            at = strip.middles[sign]
            places.append(Place(signs[sign], at, at + 1))
        elif sign == to_sign:
            unclaimed.append((len(places), *strip.runs[run]))
        elif to_sign - sign == 1:
            x0, x1 = strip.runs[run][0], strip.runs[to_run - 1][1]
            places.append(Place(signs[sign], x0, x1, *_rows(ink, x0, x1)))
        else:
            x0, x1 = strip.runs[run]
            total, at = sum(strip.widths[sign:to_sign]), float(x0)
            for index in range(sign, to_sign):
                part = (x1 - x0) * strip.widths[index] / total
                places.append(Place(signs[index], at, at + part, *_rows(ink, int(at), int(at + part) + 1), shared=True))
                at += part
    for number, x0, x1 in unclaimed:
        beside = [p for p in places[max(0, number - 1) : number + 1] if x0 - p.x1 < strip.em and p.x0 - x1 < strip.em]
        for place in beside:
            if x1 - x0 > place.stray:
                place.stray, place.stray_bottom = x1 - x0, _rows(ink, x0, x1)[1]
    return places


def _rows(ink: Mask, x0: int, x1: int) -> tuple[int, int]:
    rows = np.flatnonzero(ink[:, x0:x1].any(axis=1))
    return (int(rows[0]), int(rows[-1]) + 1) if len(rows) else (0, 0)


def first_size(ink: Mask) -> float:
    """Give a first guess of the font size in pixels, from the height of the ink."""
    tall = np.flatnonzero(ink.any(axis=1))
    return max(4.0, 0.95 * (int(tall[-1]) - int(tall[0]) + 1)) if len(tall) else max(4.0, 0.6 * ink.shape[0])


def size_and_base(places: list[Place], height: int) -> tuple[float, float]:
    """Give the font size and the baseline of a strip, in pixels, from the ink of letters whose shape is known."""
    solid = [p for p in places if p.height > 1]
    standing = [p for p in solid if p.sign.text not in DEEP and p.sign.text not in FLOATING]
    base = statistics.median(p.bottom for p in standing) if standing else 0.8 * height
    tall = [base - p.top for p in solid if p.sign.text in TALL]
    short = [base - p.top for p in solid if p.sign.text in SHORT and not p.shared]
    if len(tall) >= 2 or (tall and not short):
        return max(4.0, statistics.median(tall) / CAP), base
    if short:
        return max(4.0, statistics.median(short) / LOWER), base
    return max(4.0, 0.55 * height), base
