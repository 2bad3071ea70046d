"""Dashes amid wide gaps in a line that stands alone part no cells: "Marrowfen Drift 57  -  panel van, one owner"."""

from __future__ import annotations

import re
from collections.abc import Sequence

SPACED = re.compile(r"(?<=\S)\s+([-–—])\s+(?=\S)")
GAP = re.compile(r"\S\s{2,}\S")


def with_close_dashes(lines: Sequence[str]) -> list[str]:
    """Give lines with one space at each side of a dash where blank lines stand around and no other gap is wide.

    In a row of a table such a dash is a cell of its own.
    """
    made = list(lines)
    for number, line in enumerate(lines):
        alone = not any(
            other.strip() for other in (*lines[max(0, number - 1) : number], *lines[number + 1 : number + 2])
        )
        close = SPACED.sub(r" \1 ", line.strip()) if alone and GAP.search(line.strip()) else ""
        if close and not GAP.search(close):
            made[number] = line[: len(line) - len(line.lstrip())] + close
    return made
