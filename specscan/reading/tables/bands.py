"""What stands between two rules of a table: one row with wrapped cells, or a group of rows."""

from __future__ import annotations

from specscan.reading.letters.words import Line, is_bullet
from specscan.reading.tables.compose import Hints

SURE_LABELS = 2  # known labels with values beside them: a wrapped label has one
MANY_LINES = 4  # no label is wrapped so often, if values stand beside each of its lines
MANY_FIGURES = 4
VALUED_SHARE = 0.6
CODED_COLUMNS = 4  # filled in each row that begins with a code
CODED_FIGURES = 2  # of them that hold figures in each
ALIGNED = 0.3  # em
INDENT = 3.0  # em at most, from where a cell begins to where its further lines do
STEP = 1.45  # em, from line to line of a cell
ROOM = 2.0  # em at most, that the line above leaves free

Placed = tuple[int, Line]  # column, segment


def holds_rows(lines: list[list[Placed]], hints: Hints) -> bool:
    """Tell whether lines between two rules are rows of their own.

    ``lines`` are the printed lines, each as its segments with their columns. They are rows where several begin with
    a known label and have a value beside it, where there are more of them than a wrapped label has, or where most
    begin with a name and have a figure in each of many columns: no row breaks in all its cells before figures.
    """
    if len(lines) < 2:
        return False
    valued = [_text(line, 0) for line in lines if any(col > 0 for col, _ in line) and _text(line, 0)]
    begun = [label for label in valued if not label[:1].islower()]
    sure = sum(map(hints.is_label, begun))
    if len(begun) < len(valued) and sure < MANY_LINES:
        sure, begun = 0, []  # one at least goes on with the label above it
    labelled = sum(bool(_text(line, 0)) for line in lines)
    if sure >= SURE_LABELS and sure >= 0.5 * labelled:
        return True
    full = [line for line in lines if any(col > 0 for col, _ in line) and _text(line, 0)]
    if len(full) > 1 and all(are_rows(full[0], line) for line in full[1:]):
        return True
    if len(full) == len(lines) and len(begun) == len(valued) and _are_coded(lines):
        return True
    return labelled >= MANY_LINES and len(valued) >= VALUED_SHARE * labelled and len(begun) == len(valued)


def are_rows(above: list[Placed], line: list[Placed]) -> bool:
    """Tell whether two lines each begin with a name and have figures in the same columns, which are many."""
    named = all(_text(one, 0)[:1].isupper() for one in (above, line))
    return named and len(figured := _figured(line)) >= MANY_FIGURES and figured == _figured(above)


def _are_coded(lines: list[list[Placed]]) -> bool:
    """Tell whether lines begin with codes of one form, each its own, and fill the same columns, two with figures.

    "M10 | Drift 541 | 2 | 58.990" above "M20 | Drift 600 | 2 | 63.490": no cell breaks so in all columns.
    """
    codes = [_text(line, 0) for line in lines]
    forms = {"".join("9" if c.isdigit() else "A" if c.isalpha() else c for c in code) for code in codes}
    coded = len(forms) == 1 and any(map(str.isdigit, codes[0])) and len(set(codes)) == len(codes)
    filled = [{col for col, _ in line} for line in lines]
    alike = len(filled[0]) >= CODED_COLUMNS and all(one == filled[0] for one in filled)
    return coded and alike and len(set.intersection(*map(_figured, lines))) >= CODED_FIGURES


def _figured(line: list[Placed]) -> set[int]:
    """Give the columns behind the first in which what a line has begins with a figure."""
    columns = {col for col, _ in line if col > 0}
    return {col for col in columns if _text(line, col)[:1].isdigit()}


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


def fills_last_cell(line: Line, above: Line, parts: list[Line]) -> bool:
    """Tell whether a long line goes on with the text of a row of two cells, a clause's: it begins where that text does.

    ``above`` is the line above it, which is full, ``parts`` are those of the last line with a label.
    """
    if len(parts) != 2:
        return False
    inside = -ALIGNED * line.size <= line.box.x0 - parts[1].box.x0 <= INDENT * line.size
    near = 0 < line.base - above.base <= STEP * line.size
    return inside and near and above.box.x1 >= line.box.x1 - ROOM * line.size
