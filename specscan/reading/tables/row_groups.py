"""Rows of unruled tables: which lines go on with the cells of the line above."""

from __future__ import annotations

import itertools
import re

from specscan.reading.letters.words import Line, middle_of
from specscan.reading.tables.bands import Placed, are_rows, hangs, holds_rows
from specscan.reading.tables.compose import Hints
from specscan.reading.tables.gutters import Parted, em_of, touched_by
from specscan.reading.tables.widening import Columns

# All in em (the font size of the lines at hand).
LEADING = 1.35
LEADING_WIDE = 1.55
PITCH_LOOSE = 1.45
HANGING = 1.9  # from a line of a listed item to the next
TIGHT = 1.1  # times the least step from line to line: no room between rows
TIGHT_SHARE = 0.8  # of the rows, at least, that begin without room above them
LEAST_MARKS = 2  # side by side
SPACE = 0.2  # em between words
ALIKE = 1.05  # times the least step from line to line: one as small
APART = 1.2  # times the least step: one from row to row
LEAST_BLOCKS = 3  # heads and two rows
SHOUTED = 4  # letters of a word that names a group and no unit
CLAUSE = re.compile(r"(\d{1,2})\.(\d{1,2})\.?")
CLAUSE_ABOVE = re.compile(r"(\d{1,2})(?:\.(\d{1,2}))?\.?(?=\s|$)")
HEAD_LINES = 3  # in which the head of a column of codes may stand
GROUP_SHARE = 0.5  # rows that name their group, at most; and second cells that are known labels, at least


def rows_of(picked: list[Parted], columns: Columns, floors: list[float], hints: Hints) -> list[list[list[Line]]]:
    """Group lines into rows of the table; each row is a list of lines of segments.

    ``floors`` are the heights of rules and edges of shaded rows.
    """
    em = em_of([line for line, _ in picked])
    multi = [line for line, segments in picked if len(segments) > 1]
    pitches = [below.base - above.base for above, below in zip(multi, multi[1:], strict=False)]
    pitch = middle_of(pitches) if pitches else 2 * em
    ruled = len(floors) >= 3
    several = _holding_rows(picked, columns, floors, hints)
    grouped = is_grouped(picked, columns, hints)
    tight = _is_tight(picked, em)
    widths = _widths(picked, columns)
    coded = any(hints.heads_codes(segments[0].text) for _, segments in picked[:HEAD_LINES] if len(segments) > 1)
    # Wrapped cells may be set wider than usual, but closer than one row to the next.
    near = max(LEADING * em, min(LEADING_WIDE * em, 0.92 * pitch))
    close = max(near, min(LEADING_WIDE * em, TIGHT * pitch)) if tight else near  # where rows are as close as lines
    blocks = [] if ruled else _blocks(picked, columns, hints)
    if blocks:
        return [[segments for _, segments in row] for row in blocks]
    rows: list[list[Parted]] = []
    for line, segments in picked:
        between = ruled and id(line) not in several  # rules part the rows, and only they
        loose = (pitch > PITCH_LOOSE * em and not tight) or between
        unlabelled = all(touched_by(segment.box, columns)[0] > 0 for segment in segments)
        reach = max(near, HANGING * line.size) if between and unlabelled else near
        reach = max(reach, close) if unlabelled else reach
        if (
            rows
            and not _parted(rows[-1][-1][0], line, floors)
            and not _begins_group(rows, line, segments, columns, widths)
            and not _resumes(rows[-1], segments, columns)
            and not _begins_clause(rows[-1][0][1][0].text, segments[0].text)
            and not are_rows(_placed(rows[-1][0][1], columns), _placed(segments, columns))
            and not (coded and _is_below_code(rows[-1][-1][1], segments, columns, hints))
            and not (len(segments) > 2 and all(hints.is_unit_system(segment.text) for segment in segments))
            and (
                _continues(rows[-1], line, segments, columns, hints, reach, loose, grouped, amid=between and unlabelled)
                or (tight and _is_wrapped(rows[-1], line, segments, columns, widths, near))
            )
        ):
            rows[-1].append((line, segments))
        else:
            rows.append([(line, segments)])
    return [[segments for _, segments in row] for row in rows]


def _blocks(picked: list[Parted], columns: Columns, hints: Hints) -> list[list[Parted]]:
    """Give rows of wrapped cells, labels too, told by their steps: rows stand further apart than the lines of one.

    Steps must be of two kinds, the first line of each row full, and each other line go on with some of the cells of the
    one above; what stands in its first column is no known label. Else none are given.
    """
    steps = [below[0].base - above[0].base for above, below in itertools.pairwise(picked)]
    least = min(steps, default=0.0)
    if least <= 0 or any(ALIKE * least < step < APART * least for step in steps):
        return []
    rows = [[picked[0]]]
    for step, parted in zip(steps, picked[1:], strict=True):
        if step <= ALIKE * least:
            rows[-1].append(parted)
        else:
            rows.append([parted])
    wraps = False
    for row in rows:
        filled = [{n for part in parts for n in touched_by(part.box, columns)} for _, parts in row]
        if len(filled[0]) < len(columns) or not all(below < above for above, below in itertools.pairwise(filled)):
            return []
        labels = [parts[0].text for (_, parts), held in zip(row, filled, strict=True) if 0 in held]
        if any(hints.is_label(label) for label in labels[1:]):
            return []
        wraps = wraps or len(labels) > 1
    return rows if wraps and len(rows) >= LEAST_BLOCKS else []


def _holding_rows(picked: list[Parted], columns: Columns, floors: list[float], hints: Hints) -> set[int]:
    """Give the ids of lines between two rules that part groups of rows, not the rows."""
    bands: dict[int, list[Parted]] = {}
    for line, segments in picked:
        band = sum(y < line.box.middle[1] for y in floors)
        bands.setdefault(band, []).append((line, segments))
    found: set[int] = set()
    for members in bands.values():
        parts = [_placed(segments, columns) for _, segments in members]
        if holds_rows(parts, hints):
            found.update(id(line) for line, _ in members)
    return found


def _placed(segments: list[Line], columns: Columns) -> list[Placed]:
    return [(touched_by(segment.box, columns)[0], segment) for segment in segments]


def _parted(above: Line, below: Line, floors: list[float]) -> bool:
    """Tell whether a rule or the edge of a shaded row runs between two lines."""
    upper, lower = above.box.middle[1], below.box.middle[1]
    return any(upper < y < lower for y in floors)


def _continues(
    row: list[Parted],
    line: Line,
    segments: list[Line],
    columns: Columns,
    hints: Hints,
    near: float,
    loose: bool,
    grouped: bool,
    *,
    amid: bool,
) -> bool:
    """Tell whether a line goes on with a row; one ``amid`` two rules without a label has it above or around it."""
    step = line.base - _above(row, segments, columns, grouped).base
    if step > near and (step > HANGING * line.size or not _hangs(row, segments, columns)):
        return False
    if len(row) == 1 and not amid and _is_heading_line(row[0][1], segments, columns):
        return False
    if _has_marks_of_its_own(row[-1][1], segments, columns):
        return False
    if loose:
        return True
    if len(row) == 1 and len(above_parts := row[0][1]) == 1 and len(segments) > 1 and segments[0].text[:1].islower():
        return touched_by(above_parts[0].box, columns)[0] == 0  # the label goes on, and its value stands at its end
    label_column = 1 if grouped else 0
    places = [touched_by(segment.box, columns) for segment in segments]
    labels = [segment for segment, touched in zip(segments, places, strict=True) if label_column in touched]
    filled = {index for touched in places for index in touched if index >= label_column}
    if not labels:
        return True
    if filled == {label_column}:
        own = [segment.text for segment in row[-1][1] if label_column in touched_by(segment.box, columns)]
        if not own:
            return labels[0].text[:1].islower()
        return labels[0].text[:1].islower() or own[-1].endswith((",", "-", "/", "(", "–")) or hints.leaves_open(own[-1])
    return False


def _above(row: list[Parted], segments: list[Line], columns: Columns, grouped: bool) -> Line:
    """Give the line of a row that another one must be near to go on with it: the last one.

    The name of a group can wrap beside its rows, at heights of its own, and says nothing of the label below it.
    """
    if grouped and all(touched_by(segment.box, columns)[0] > 0 for segment in segments):
        beside = [one for one, parts in row if any(touched_by(part.box, columns) != [0] for part in parts)]
        return beside[-1] if beside else row[-1][0]
    return row[-1][0]


def _begins_group(
    rows: list[list[Parted]], line: Line, segments: list[Line], columns: Columns, widths: dict[int, float]
) -> bool:
    """Tell whether a bold line in the column of labels names a group of rows, and goes on with no label above it.

    The label above has values beside it, had room for the first word, and is not bold itself, or is the corner of heads
    that all are. So does a shouted word below a label with a figure: "DRIFT" below "T19".
    """
    parts = rows[-1][-1][1]
    if len(segments) > 1 or len(parts) < 2 or not line.text[:1].isupper():
        return False
    if _is_shouted(line.text) and any(map(str.isdigit, parts[0].text)):
        return all(touched_by(part.box, columns)[0] == 0 for part in (segments[0], parts[0]))
    if not line.bold:
        return False
    label = parts[0]
    if touched_by(segments[0].box, columns)[0] != 0 or touched_by(label.box, columns) != [0]:
        return False
    room = widths.get(0, 0.0) - label.box.width > line.words[0].box.width + SPACE * line.size
    heads = len(rows) == 1 and all(part.bold for part in parts)
    return room and (heads or not label.bold)


def _resumes(row: list[Parted], segments: list[Line], columns: Columns) -> bool:
    """Tell whether a line fills all columns, as the first of a row does, where the line between left some blank.

    Cells have no gaps between their lines: it begins another row.
    """
    filled = [{col for part in parts for col in touched_by(part.box, columns)} for _, parts in row]
    again = len(segments) == len(columns) == len({col for part in segments for col in touched_by(part.box, columns)})
    return again and len(filled[0]) == len(columns) > len(filled[-1])


def _begins_clause(above: str, below: str) -> bool:
    """Tell whether a line has the number alone of the clause that follows the one, or the chapter, above it.

    "2.1" below "2 Dimensions" or 1.4, "2.2" below 2.1: no title of a chapter goes on with the clause.
    """
    number, before = CLAUSE.fullmatch(below.strip()), CLAUSE_ABOVE.match(above)
    if number is None or before is None:
        return False
    chapter, clause = int(number.group(1)), int(number.group(2))
    last, ended = int(before.group(1)), int(before.group(2) or 0)
    return (chapter, clause) in ((last, ended + 1), (last + 1, 1))


def _is_below_code(above: list[Line], segments: list[Line], columns: Columns, hints: Hints) -> bool:
    """Tell whether a line is a word alone below the code of an option: it names a group, as no code goes on."""
    if len(segments) > 1 or len(above) < 2 or any(map(str.isdigit, segments[0].text)):
        return False
    under = touched_by(segments[0].box, columns)[0] == 0 and touched_by(above[0].box, columns) == [0]
    return under and (any(map(str.isdigit, above[0].text)) or hints.heads_codes(above[0].text))


def _is_shouted(text: str) -> bool:
    return text.isupper() and sum(map(str.isalpha, text)) >= SHOUTED and not any(map(str.isdigit, text))


def _has_marks_of_its_own(above: list[Line], segments: list[Line], columns: Columns) -> bool:
    """Tell whether a line with a label has marks right below filled cells: no cell breaks before a mark alone."""
    held = {touched_by(part.box, columns)[0] for part in above}
    places = {touched_by(part.box, columns)[0]: part for part in segments}
    marks = [place for place, part in places.items() if place and not any(map(str.isalnum, part.text))]
    return 0 in places and len(marks) >= LEAST_MARKS and held.issuperset(marks)


def _is_tight(picked: list[Parted], em: float) -> bool:
    """Tell whether rows follow each other as closely as the lines of a wrapped cell do."""
    steps = [below[0].base - above[0].base for above, below in itertools.pairwise(picked)]
    steps = [step for step in steps if step > 0.5 * em]
    begun = [
        below[0].base - above[0].base for above, below in itertools.pairwise(picked)
        if len(below[1]) > 1 and not (len(above[1]) == 1 and above[0].bold)
    ]  # fmt: skip
    if not steps or not begun:
        return False
    return sum(step <= TIGHT * min(steps) for step in begun) >= TIGHT_SHARE * len(begun)


def _widths(picked: list[Parted], columns: Columns) -> dict[int, float]:
    """Give the width of the longest segment in each column that takes this column alone."""
    widths: dict[int, float] = {}
    for _, segments in picked:
        for segment in segments:
            touched = touched_by(segment.box, columns)
            if len(touched) == 1:
                widths[touched[0]] = max(widths.get(touched[0], 0.0), segment.box.width)
    return widths


def _is_wrapped(
    row: list[Parted], line: Line, segments: list[Line], columns: Columns, widths: dict[int, float], near: float
) -> bool:
    """Tell whether each part of a line stands below one, of the same look, that had no room left for its first word.

    Where values stand beside it, its label begins with a small letter, as no label of a row does.
    """
    above, parts = row[-1]
    if line.base - above.base > near or (len(segments) > 1 and not segments[0].text[:1].islower()):
        return False
    if len(segments) > 1 and row[0][1][0].text[:1].islower():
        return False
    held = {touched_by(part.box, columns)[0]: part for part in parts}
    for segment in segments:
        upper = held.get(touched_by(segment.box, columns)[0])
        if upper is None or upper.bold != segment.bold or upper.color != segment.color:
            return False
        word = segment.words[0].box.width + SPACE * segment.size
        if upper.box.width + word < widths.get(touched_by(segment.box, columns)[0], 0.0):
            return False
    return True


def _hangs(row: list[Parted], segments: list[Line], columns: Columns) -> bool:
    above = [(touched_by(part.box, columns)[0], part) for _, parts in row for part in parts]
    return hangs(above, _placed(segments, columns))


def is_grouped(picked: list[Parted], columns: Columns, hints: Hints) -> bool:
    """Tell whether the first column only names groups of rows, and the labels of the rows stand in the second.

    ``picked`` are the lines of a table with their segments, ``columns`` its columns.
    """
    if len(columns) < 3:
        return False
    first, second = [], []
    for _, segments in picked:
        parts = {touched_by(segment.box, columns)[0]: segment.text for segment in segments}
        if len(parts) > 1 and max(parts) > 1:
            first.append(parts.get(0, ""))
            second.append(parts.get(1, ""))
    named, labels = [text for text in first if text], [text for text in second if text]
    rare = 1 <= len(named) <= GROUP_SHARE * len(first)
    known = sum(hints.is_label(text) for text in labels)
    return rare and len(labels) >= 0.7 * len(second) and known >= GROUP_SHARE * len(labels)


def _is_heading_line(above: list[Line], segments: list[Line], columns: Columns) -> bool:
    """Tell whether the line above holds only a label, set apart by weight or colour: a group heading."""
    if len(above) != 1 or touched_by(above[0].box, columns) != [0]:
        return False
    one, two = above[0], segments[0]
    return one.bold != two.bold or one.color != two.color or (one.text.isupper() and not two.text.isupper())
