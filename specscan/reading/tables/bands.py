"""What stands between two rules of a table: one row with wrapped cells, or a group of rows."""

from __future__ import annotations

from specscan.reading.letters.words import Line, is_bullet
from specscan.reading.tables.compose import Hints

SURE_LABELS = 2  # known labels with values beside them: a wrapped label has one
MANY_LINES = 4  # no label is wrapped so often, if values stand beside each of its lines
VALUED_SHARE = 0.6
ALIGNED = 0.3  # em

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


def hangs(above: list[Placed], segments: list[Placed]) -> bool:
    """Tell whether a line goes on with an item of a list in a cell: it begins where the words of the item do.

    ``above`` are the segments of the row so far, ``segments`` those of the line, each with its column.
    """
    for col, segment in segments:
        bulleted = [s for c, s in above if c == col and len(s.words) > 1 and is_bullet(s.words[0].text)]
        if bulleted and abs(segment.box.x0 - bulleted[-1].words[1].box.x0) <= ALIGNED * segment.size:
            return True
    return False
