"""What stands between two rules of a table: one row with wrapped cells, or a group of rows."""

from __future__ import annotations

from specscan.reading.compose import Hints
from specscan.reading.words import Line

SURE_LABELS = 2  # known labels with values beside them: a wrapped label has one
MANY_LINES = 4  # no label is wrapped so often, if values stand beside each of its lines
VALUED_SHARE = 0.6

Placed = tuple[int, Line]  # column, segment


def holds_rows(lines: list[list[Placed]], hints: Hints) -> bool:
    """Tell whether lines between two rules are rows of their own.

    ``lines`` are the printed lines, each as its segments with their columns. They are rows where several begin with
    a known label and have a value beside it, or where there are more of them than a wrapped label has.
    """
    if len(lines) < 2:
        return False
    valued = [_text(line, 0) for line in lines if any(col > 0 for col, _ in line) and _text(line, 0)]
    begun = [label for label in valued if not label[:1].islower()]
    if len(begun) < len(valued):
        begun = []  # one at least goes on with the label above it
    sure = sum(hints.is_label(label) for label in begun)
    labelled = sum(bool(_text(line, 0)) for line in lines)
    if sure >= SURE_LABELS and sure >= 0.5 * labelled:
        return True
    return labelled >= MANY_LINES and len(valued) >= VALUED_SHARE * labelled and len(begun) == len(valued)


def _text(line: list[Placed], col: int) -> str:
    return " ".join(segment.text for column, segment in line if column == col)
