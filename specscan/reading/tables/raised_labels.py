"""Labels a little above their values, for a remark in small type stands below them: "Drift 54" over "rear kitchen"."""

from __future__ import annotations

from specscan.reading.letters.words import Line
from specscan.reading.tables.gutters import Parted

MIN_ROWS = 2
STEP = 0.9  # em: lines that are nearer than two of a text
SMALLER = 0.9  # times the size of the label


def join_raised(kept: list[Parted]) -> list[Parted]:
    """Put labels into the lines of their values, where rows are centred beside a label with a remark below it.

    Two rows or more must be so: a lone part at the left, the values further right and lower by less than a line, and
    below these, as near, a lone part in smaller type under the label.
    """
    found = [n for n in range(len(kept) - 2) if _is_raised(*kept[n : n + 3])]
    if len(found) < MIN_ROWS:
        return kept
    joined = {n: _join(kept[n], kept[n + 1]) for n in found}
    return [joined.get(n, parted) for n, parted in enumerate(kept) if n - 1 not in joined]


def _is_raised(label: Parted, values: Parted, remark: Parted) -> bool:
    (one, ones), (two, twos), (three, threes) = label, values, remark
    if len(ones) != 1 or len(twos) < 2 or len(threes) != 1 or three.size > SMALLER * one.size:
        return False
    aligned = abs(one.box.x0 - three.box.x0) < 1 and two.box.x0 > max(one.box.x1, three.box.x1)
    return aligned and 0 < two.base - one.base < STEP * one.size and 0 < three.base - two.base < STEP * one.size


def _join(label: Parted, values: Parted) -> Parted:
    return Line([*label[0].words, *values[0].words]), [*label[1], *values[1]]
