"""Tables whose rules begin at two places: long ones part the groups that the first column names, short ones the rows.

Such a table has no walls. Its columns are told by the white space that all rows and the heads above them leave.
"""

from __future__ import annotations

import itertools
from typing import NamedTuple

from specscan.reading.letters.sheet import Sheet
from specscan.reading.letters.words import Word, build_lines
from specscan.reading.tables.spans import joined
from specscan.records.text import Box

SNAP = 3.0
LEAST_RULES = 4  # long and short ones: that below the heads, two rows and the last
LEAST_LENGTH = 150.0  # points
LEAST_COLUMNS = 4  # the groups, the vans and two values
MAX_ROW = 90.0  # points from one rule to the next
STRIP = 0.45  # em of white space between columns
LEADING = 1.7  # em from one line of a row to the next
FILLED = 0.5  # of the columns: those in which a row has words
WHITE = (255, 255, 255)

Piece = tuple[str, float, float, float]  # orientation, from, to, at


class _Rule(NamedTuple):
    """A rule across the page."""

    at: float
    start: float
    stop: float


class _Stretch(NamedTuple):
    """What stands between two heights of a table, and the words of it."""

    top: float
    bottom: float
    words: list[Word]


def grouping_edges(sheet: Sheet, words: list[Word]) -> list[Piece]:
    """Give the walls of such tables, so that the name of a group stands in a cell beside all of its rows.

    Each row between two rules is one of cells, each column has a head in the shaded bar above the first rule, or
    between it and a rule above, and each group has its name. Else the white space says better what is what.
    """
    pieces: list[Piece] = []
    bars = _bars(sheet)
    for start, inner, stop, rules in _tables(_rules(sheet, bars), bars):
        top = _top_of_heads(bars, rules, start, stop)
        if top is None or _is_walled(sheet, start, stop, top, rules[-1].at):
            continue
        rows = [rule for rule in rules if rule.at > top + SNAP]
        heights = [top, *(rule.at for rule in rows)]
        held = [word for word in words if start - SNAP < word.box.middle[0] < stop + SNAP and not word.direction]
        stretches = [
            _Stretch(a, b, [word for word in held if a < word.box.middle[1] < b])
            for a, b in itertools.pairwise(heights)
        ]
        walls = _walls(stretches, start, inner, stop)
        if walls and _fits(stretches, walls) and _are_named(rows, held, start, inner):
            pieces += [("v", top, heights[-1], x) for x in walls]
            pieces.append(("h", start, stop, top))
    return pieces


def _rules(sheet: Sheet, bars: list[Box]) -> list[_Rule]:
    """Give the long rules across a page from top to bottom; those drawn cell by cell are one.

    The lower edge of a shaded bar is one too.
    """
    drawn = [_Rule((s.top + s.bottom) / 2, s.x0, s.x1) for s in sheet.strokes if s.horizontal]
    drawn += [_Rule(box.bottom, box.x0, box.x1) for box in bars]
    levels: list[tuple[float, list[tuple[float, float]]]] = []
    for rule in sorted(drawn):
        if not levels or rule.at - levels[-1][0] > SNAP / 2:
            levels.append((rule.at, []))
        levels[-1][1].append((rule.start, rule.stop))
    found = [_Rule(at, start, stop) for at, spans in levels for start, stop in joined(spans, SNAP)]
    return [rule for rule in found if rule.stop - rule.start >= LEAST_LENGTH]


def _bars(sheet: Sheet) -> list[Box]:
    """Give the shaded boxes that can be the heads of a table, or some of its cells."""
    boxes = (fill.box for fill in sheet.fills if fill.color not in (None, WHITE))
    return [box for box in boxes if SNAP < box.height <= MAX_ROW]


def _tables(rules: list[_Rule], bars: list[Box]) -> list[tuple[float, float, float, list[_Rule]]]:
    """Give the rules of each such table with where the long ones begin, where the short ones do, and where all end."""
    barred = [box.bottom for box in bars]
    found = []
    for ends in dict.fromkeys(round(rule.stop) for rule in rules):
        alike = [rule for rule in rules if abs(rule.stop - ends) <= SNAP]
        for part in _apart(alike, barred):
            start = min(rule.start for rule in part)
            inner = min((rule.start for rule in part if rule.start > start + SNAP), default=start)
            own = [rule for rule in part if min(rule.start - start, abs(rule.start - inner)) <= SNAP]
            long = [place for place, rule in enumerate(own) if rule.start - start <= SNAP]
            own = own[long[0] : long[-1] + 1]
            if len(own) >= LEAST_RULES and len(own) > len(long) > 1:
                found.append((start, inner, float(ends), own))
    return found


def _apart(rules: list[_Rule], barred: list[float]) -> list[list[_Rule]]:
    """Part rules into those of tables below one another: a bar opens one, and so does a wide stretch without rules."""
    parts = [rules[:1]]
    for above, below in itertools.pairwise(rules):
        opens = any(abs(below.at - bottom) <= SNAP for bottom in barred)
        if opens or below.at - above.at > MAX_ROW:
            parts.append([])
        parts[-1].append(below)
    return parts


def _top_of_heads(bars: list[Box], rules: list[_Rule], start: float, stop: float) -> float | None:
    """Give the upper edge of the heads: of the bar that ends at the first rule, else the first of two long rules."""
    first = rules[0]
    over = [box for box in bars if abs(box.bottom - first.at) <= SNAP]
    spans = joined([(box.x0, box.x1) for box in over], SNAP)
    if any(a <= start + SNAP and b >= stop - SNAP for a, b in spans):
        return min(box.top for box in over)
    return first.at if abs(rules[1].start - first.start) <= SNAP and len(rules) > LEAST_RULES else None


def _is_walled(sheet: Sheet, start: float, stop: float, top: float, bottom: float) -> bool:
    """Tell whether rules down the page part columns of a table, as far as these go: then nothing is to be told."""
    return any(
        not stroke.horizontal and start + SNAP < stroke.x0 < stop - SNAP
        and top - SNAP < (stroke.top + stroke.bottom) / 2 < bottom + SNAP
        for stroke in sheet.strokes
    )  # fmt: skip


def _walls(stretches: list[_Stretch], start: float, inner: float, stop: float) -> list[float]:
    """Give the walls of a table in the white strips that no word reaches over, none where they do not fit its rules."""
    words = [word for stretch in stretches for word in stretch.words]
    if not words:
        return []
    size = max(word.size for word in words)
    spans = joined([(word.box.x0, word.box.x1) for word in words], STRIP * size)
    walls = [start, *((a[1] + b[0]) / 2 for a, b in itertools.pairwise(spans)), stop]
    if len(spans) < LEAST_COLUMNS or not spans[0][1] <= inner <= spans[1][0] + SNAP:
        return []
    walls[1] = inner
    return walls


def _fits(stretches: list[_Stretch], walls: list[float]) -> bool:
    """Tell whether each stretch between rules is one row, and each column but the first has a head."""
    for place, stretch in enumerate(stretches):
        lines = build_lines(stretch.words)
        filled = {sum(x < word.box.middle[0] for x in walls) - 1 for word in stretch.words}
        behind = filled - {0}
        if any(b.base - a.base > LEADING * b.size for a, b in itertools.pairwise(lines)):
            return False
        if len(behind) < (len(walls) - 2) * (1 if place == 0 else FILLED):
            return False
    return True


def _are_named(rows: list[_Rule], words: list[Word], start: float, inner: float) -> bool:
    """Tell whether a name stands in the first column between each two long rules below the heads."""
    long = [rule.at for rule in rows if abs(rule.start - start) <= SNAP]
    first = [word.box.middle[1] for word in words if word.box.middle[0] < inner]
    return len(long) > 1 and all(any(a < y < b for y in first) for a, b in itertools.pairwise(long))
