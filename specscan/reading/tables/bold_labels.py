"""Labels in bold letters, each before its value in thin ones on the same line, with no colon: "**Length** 5.98 m"."""

from __future__ import annotations

import itertools

from specscan.reading.letters.words import Line, segments_of
from specscan.reading.tables.alignment import SEGMENT_GAP
from specscan.reading.tables.compose import Hints
from specscan.reading.tables.grid import Grid
from specscan.reading.tables.pairs import pair_grid

MOST_WORDS = 5  # of a label
STEP = 3.0  # em from one pair to the next
WRAP = 1.4  # em from one line of a value to the next
SAME_SIZE = 0.5  # points
ALIGNED = 0.2  # em between the left edges of the labels
MIN_PAIRS = 4
LABEL_SHARE = 0.5  # of the labels must be known as such

_Pair = tuple[list[Line], list[Line]]


def part_bold_labels(lines: list[Line], hints: Hints) -> list[list[Line] | Grid]:
    """Part the lines of a column at runs of such lines; each run becomes a grid of two columns.

    A thin line close below one goes on with its value. The run is one of four pairs or more, most of whose labels are
    known; bold words that begin paragraphs seldom are.
    """
    parts: list[list[Line] | Grid] = []
    rest: list[Line] = []
    at = 0
    while at < len(lines):
        run, end = _run_at(lines, at)
        known = sum(hints.is_label(label[0].text) for label, _ in run)
        if len(run) >= MIN_PAIRS and known >= LABEL_SHARE * len(run):
            parts += [rest, pair_grid(run)] if rest else [pair_grid(run)]
            rest = []
        else:
            rest += lines[at:end]
        at = end
    return [*parts, rest] if rest else parts


def _run_at(lines: list[Line], at: int) -> tuple[list[_Pair], int]:
    """Give the pairs that begin with a line, and where what follows them begins."""
    run: list[_Pair] = []
    place = at
    for place in range(at, len(lines)):
        line = lines[place]
        last = run[-1][1][-1] if run else None
        if last is not None and 0 < line.base - last.base <= WRAP * line.size and not line.words[0].bold:
            run[-1][1].append(line)
            continue
        pair = _pair_of(line)
        if pair is None or (last is not None and not _is_next(run[-1][0][0], last, line)):
            return run, max(place, at + 1)
        run.append(pair)
    return run, place + 1


def _pair_of(line: Line) -> _Pair | None:
    """Part a line behind its bold words; ``None`` where it has none, no others, or a colon or gap between them."""
    bold = list(itertools.takewhile(lambda word: word.bold, line.words))
    thin = line.words[len(bold) :]
    if not 0 < len(bold) <= MOST_WORDS or not thin or any(word.bold for word in thin):
        return None
    if bold[-1].text[-1] in ":.,;–—-" or not bold[0].text[:1].isalpha() or len(segments_of(line, SEGMENT_GAP)) > 1:
        return None
    return [Line(bold)], [Line(thin)]


def _is_next(label: Line, last: Line, line: Line) -> bool:
    """Tell whether a line stands below the pair before it as the next one of a list does."""
    near = 0 < line.base - last.base <= STEP * line.size
    return near and abs(line.box.x0 - label.box.x0) <= ALIGNED * line.size and abs(line.size - label.size) < SAME_SIZE
