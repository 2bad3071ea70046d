"""Lines that follow one another as those of one list or paragraph do."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

from specscan.reading.letters.words import Line

LIST_LEADING = 2.2  # em from one item of a plain list to the next
SIZE = 0.5  # points by which the lines of one list or paragraph differ in size


def gap_between(above: Line, below: Line) -> float:
    """Give the white space between two lines, in points."""
    return below.box.top - above.box.bottom


def runs_of(lines: Iterable[Line], joins: Callable[[list[Line], Line], bool]) -> Iterator[list[Line]]:
    """Give lines in runs; ``joins`` tells whether a line goes with the run above it."""
    run: list[Line] = []
    for line in lines:
        if run and not joins(run, line):
            yield run
            run = []
        run.append(line)
    if run:
        yield run


def flush_runs(lines: Iterable[Line]) -> Iterator[list[Line]]:
    """Give lines in runs of one size that are set flush on the left, close below one another."""

    def flush(run: list[Line], line: Line) -> bool:
        below = 0 < line.base - run[-1].base < LIST_LEADING * line.size
        return below and abs(line.box.x0 - run[0].box.x0) < 1 and abs(line.size - run[0].size) < SIZE

    return runs_of(lines, flush)
