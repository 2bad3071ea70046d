"""Labels in thin letters, each over its value in bold ones: a list whose values are no headings of what follows."""

from __future__ import annotations

import itertools
from collections.abc import Sequence

from specscan.reading.layout.line_runs import flush_runs
from specscan.reading.letters.words import Line

MIN_PAIRS = 4
MOST_LINES = 2  # of a value
FIGURED = 0.5  # of the values, those with a figure; of the labels at most half as many have one


def bold_values(lines: Sequence[Line]) -> set[int]:
    """Give the ids of lines that are thin labels and bold values by turns, flush on the left.

    Bold headings over single lines look alike but for their figures, which headings seldom have.
    """
    found: set[int] = set()
    for run in flush_runs(lines):
        parts = [list(part) for _, part in itertools.groupby(run, key=lambda line: line.bold)]
        parts = parts[parts[0][0].bold :]
        pairs = list(zip(parts[::2], parts[1::2], strict=False))
        good = [len(label) == 1 and len(value) <= MOST_LINES for label, value in pairs]
        figured = [sum(map(_has_figure, part)) for part in ([v[0] for _, v in pairs], [k[0] for k, _ in pairs])]
        if all(good) and len(pairs) >= MIN_PAIRS and max(FIGURED * len(pairs), 2 * figured[1]) <= figured[0]:
            found |= {id(line) for pair in pairs for part in pair for line in part}
    return found


def _has_figure(line: Line) -> bool:
    return any(map(str.isdigit, line.text))
