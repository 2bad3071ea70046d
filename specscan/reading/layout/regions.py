"""Pages → columns of text that are read one after the other; see ``framed`` for cards and side-bars."""

from __future__ import annotations

import bisect
import re
from dataclasses import dataclass

from specscan.reading.layout.line_runs import gap_between
from specscan.reading.layout.mirrored import labels_over_values, same_beginnings, same_labels
from specscan.reading.layout.opening_legend import closing_notes, opening_legend
from specscan.reading.layout.reaching import GUTTER, begins_higher, reach
from specscan.reading.layout.seams import LARGER, Usual, flows_on, have_own_headings, with_headings
from specscan.reading.layout.strips import strips_below, strips_through
from specscan.reading.letters.words import Line, Word, is_bullet, middle_of, segments_of
from specscan.reading.tables.alignment import SEGMENT_GAP
from specscan.reading.tables.compose import Hints
from specscan.reading.tables.marks import Marks
from specscan.reading.tables.parting import has_digit
from specscan.reading.tables.spans import Spans

PROSE_WORDS = 5.5
MIN_FLOWING, FLOWING_WORDS, FLOWING_SHARE = 4, 3.5, 0.7  # lines, words of a line, of the lines behind the first
MARK = 2  # letters: the marks of several vans side by side
ACROSS = 6  # words of a sentence below columns, and lines in these
MARKED = 4  # lines, from which the first can be the heads above marks
LABELLED_SHARE = 0.35
OWN_ROWS = 4
MUCH_LARGER = 1.3  # times the size of what stands below
HEADS = 3  # parts of a row of heads
INLINE_LABEL = re.compile(r"([^:.!?]{2,60}?)\s?:\s+\S")


@dataclass(slots=True)
class Column:
    """Lines that are read as one column; ``back``: begun under the headings above the column so many before it.

    ``headed``: it and the one beside it have headings of their own, which do not govern what follows both.
    """

    lines: list[Line]
    back: int = 0
    headed: bool = False


def split_columns(lines: list[Line], marks: Marks, hints: Hints) -> list[Column]:
    """Part lines into columns of independent text, each in reading order.

    A region without such columns comes back whole.
    """
    if len(lines) < 3:
        return [Column(lines)]
    if (legend := opening_legend(lines)) is not None and len(lines) - legend[1] >= MARKED:
        notes = max(legend[1], closing_notes(lines))
        columns = [Column(lines[: legend[1]]), *split_columns(lines[legend[1] : notes], marks, hints)]
        return [*columns, Column(lines[notes:])] if notes < len(lines) else columns
    gutter = _independent_gutter(lines, marks, hints)
    bands = _bands(lines, marks)
    if gutter is not None and not _headed_below(bands, 0, len(bands), gutter, lines):
        return _parted(lines, gutter, marks, hints)
    if len(bands) == 1:
        return [Column(lines)]
    regions: list[Column] = []
    least = GUTTER * min(line.size for line in lines)  # wide, of any gutter
    edges = min(line.box.x0 for line in lines), max(line.box.x1 for line in lines)
    index = 0
    pending: list[Line] = []
    while index < len(bands):
        first = index
        found = _widest_split(bands, index, marks, hints, least, edges)
        if found is None:
            pending.extend(bands[index])
            index += 1
            continue
        if pending:
            regions.append(Column(pending))
            pending = []
        index, gutter = found
        held = [line for band in bands[first:index] for line in band]
        rest = [line for band in bands[index:] for line in band]
        more, beyond = reach(held, rest, gutter, middle_of([line.size for line in held]))
        bands[index:] = _without(bands[index:], more)
        regions.extend(_parted([*held, *rest[:more]], beyond if more else gutter, marks, hints))
    if pending:
        regions.append(Column(pending))
    return regions


def _parted(lines: list[Line], gutter: float, marks: Marks, hints: Hints) -> list[Column]:
    """Give the columns on both sides of a gutter."""
    left, right = _cut(lines, gutter)
    first = split_columns(left, marks, hints)
    headed = right if flows_on(first[-1].lines, right) else with_headings(left, right)
    second = split_columns(headed, marks, hints)
    if len(headed) > len(right):
        second[0].back = len(first)
    second[-1].headed = second[-1].headed or have_own_headings(left, right)
    return [*first, *second]


def _without(bands: list[list[Line]], count: int) -> list[list[Line]]:
    """Give bands without their first lines, so many as told."""
    kept = []
    for band in bands:
        kept.append(band[count:])
        count = max(0, count - len(band))
    return [band for band in kept if band]


def _widest_split(
    bands: list[list[Line]], start: int, marks: Marks, hints: Hints, least: float, edges: tuple[float, float]
) -> tuple[int, float] | None:
    """Give the end of the longest row of bands from ``start`` that one gutter parts and where it is, or ``None``."""
    for end, strips in strips_below(bands, start, least, edges):
        lines = [line for band in bands[start:end] for line in band]
        gutter = _independent_gutter(lines, marks, hints, strips)
        if gutter is None:
            continue
        first_left, first_right = _cut(bands[start], gutter)
        last_left, last_right = _cut(bands[end - 1], gutter)
        if end < len(bands) and _ends_titled(bands, start, end, gutter, lines):
            continue  # a heading under the columns, and a line below it, belong to what follows
        if end == len(bands) and _headed_below(bands, start, end, gutter, lines):
            continue
        if end < len(bands) and _heads_next(bands[end - 1], bands[end], marks):
            continue
        higher = first_right and (is_bullet(first_right[0].words[0].text) or _stands_higher(bands, start, end, gutter))
        if first_right and (first_left or higher) and (last_left or last_right):
            return end, gutter
    return None


def _stands_higher(bands: list[list[Line]], start: int, end: int, gutter: float) -> bool:
    """Tell whether running text at the right begins above that at the left."""
    left, right = _cut([line for band in bands[start:end] for line in band], gutter)
    above = bands[start - 1][-1].box.bottom if start else 0.0
    return is_prose(right) and begins_higher(left, right, above)


def _ends_titled(bands: list[list[Line]], start: int, end: int, gutter: float, lines: list[Line]) -> bool:
    """Tell whether a heading opens one of the last bands, which stand on one side of a gutter alone."""
    usual = Usual.of(lines)
    for place in range(end - 1, start, -1):
        if all(_cut(bands[place], gutter)):
            return False
        if _begins_titled(bands, place, usual):
            return True
    return False


def _headed_below(bands: list[list[Line]], start: int, end: int, gutter: float, lines: list[Line]) -> bool:
    """Tell whether the last bands are no more of the left column: a heading opens them right where both columns end."""
    usual = Usual.of(lines)
    for place in range(end - 1, start, -1):
        if _cut(bands[place], gutter)[1]:
            return False
        if _begins_titled(bands, place, usual) and _cut(bands[place - 1], gutter)[1]:
            return True
    return False


def _heads_next(band: list[Line], following: list[Line], marks: Marks) -> bool:
    """Tell whether a band is the row of heads of a table that follows: one bold line in three parts or more."""
    parted = len(band) == 1 and len(segments_of(band[0], SEGMENT_GAP, marks.walls_at(band[0]))) >= HEADS
    return parted and band[0].bold and not following[0].bold


def _begins_titled(bands: list[list[Line]], place: int, usual: Usual) -> bool:
    """Tell whether a band begins with a line that stands out among most, or is one line bolder than that above it."""
    band, above = bands[place], bands[place - 1][-1]
    return usual.stands_out(band[0]) or (len(band) == 1 and band[0].bold and not above.bold)


def _bands(lines: list[Line], marks: Marks) -> list[list[Line]]:
    """Cut where the white space between two lines is wider than usual, but never inside or right below a head bar."""
    gaps = [gap_between(above, below) for above, below in zip(lines, lines[1:], strict=False)]
    usual = middle_of([max(gap, 0) for gap in gaps])
    em = middle_of([line.size for line in lines])
    limit = max(0.3 * em, 1.2 * usual)
    bands = [[lines[0]]]
    several = [len(segments_of(line, SEGMENT_GAP)) > 1 for line in lines]
    for index, (gap, line) in enumerate(zip(gaps, lines[1:], strict=True), 1):
        # Where a run of parted lines begins or ends, columns may begin or end.
        turns = several[index] != several[index - 1] and len(lines) <= 90
        above = lines[index - 1]
        # The rule below a title in much larger type can be drawn as a bar behind it: that heads no table.
        titled = above.size > MUCH_LARGER * line.size and not several[index - 1]
        under = marks.under_bar(above, line) and not titled
        together = marks.share_bar(above, line) or under or marks.share_rows(above, line)
        if (gap > limit or turns or _crosses(line, bands[-1])) and not together:
            bands.append([line])
        else:
            bands[-1].append(line)
    return bands


def _crosses(line: Line, band: list[Line]) -> bool:
    """Tell whether a sentence reaches from lines at the left over to others that stand at the right: none of them."""
    if len(line.words) < ACROSS or len(band) < ACROSS or len(segments_of(line, SEGMENT_GAP)) > 1:
        return False
    left = min((one.box.x1 for one in band if one.box.x0 < line.box.x0 + line.size), default=line.box.x1)
    right = max(part.box.x0 for one in band for part in segments_of(one, SEGMENT_GAP))
    return line.box.x0 < left < right < line.box.x1 - line.size


def _cut(lines: list[Line], x: float) -> tuple[list[Line], list[Line]]:
    left, right = [], []
    for line in lines:
        west, east = line.sides(x)
        if west is not None:
            left.append(west)
        if east is not None:
            right.append(east)
    return left, right


def _independent_gutter(lines: list[Line], marks: Marks, hints: Hints, strips: Spans | None = None) -> float | None:
    """Give the x of a white gutter whose two sides are no rows of each other, or ``None``.

    ``strips`` are the white strips through the lines, where they are known.
    """
    strips = strips_through(lines) if strips is None else strips
    em = middle_of([line.size for line in lines])
    gutters = sorted((gutter for gutter in strips if gutter[1] - gutter[0] >= GUTTER * em), key=_widest)
    first, last = lines[0].box.middle[1], lines[-1].box.middle[1]
    for left, right in gutters:
        # A rule or the edge of a shaded row that runs through makes the sides rows of one table.
        long = marks.floors_over(right - left + 2 * em)
        if any(first < y < last and x0 < left - em and x1 > right + em for y, x0, x1 in long):
            continue
        middle = (left + right) / 2
        west, east = _cut(lines, middle)
        if len(west) < 2 or len(east) < 2:
            continue
        if _independent(west, east, marks, hints):
            return middle
    return None


def _widest(gutter: tuple[float, float]) -> float:
    return gutter[0] - gutter[1]


def _independent(west: list[Line], east: list[Line], marks: Marks, hints: Hints) -> bool:
    overlap = min(west[-1].box.bottom, east[-1].box.bottom) - max(west[0].box.top, east[0].box.top)
    if overlap <= 0:
        return False
    if _is_list(east) and _is_list(west):
        return True
    if is_prose(west) and not _only_labels(east) or is_prose(east) and is_prose(west):
        return True
    if _flows(west) and _flows(east) or _are_headed_prose(west, east):
        return True
    if _headed_lists(west, east, hints) or _labelled_lists(west, hints) and _labelled_lists(east, hints):
        return True
    if labels_over_values(west, east, hints) or same_beginnings(west, east, hints):
        return True
    if same_labels(west, east) or _is_list(east) and _labelled_lists(west, hints):
        return True
    lonely_east, lonely_west = _unmatched(east, west), _unmatched(west, east)
    if min(len(west), len(east)) >= 4 and lonely_east > 0.4 and lonely_west > 0.4:
        return True
    own = _own_labels(west, marks, hints) and _own_labels(east, marks, hints)
    return own or (_is_own_table(west, marks, hints) and _is_own_table(east, marks, hints))


def _is_own_table(lines: list[Line], marks: Marks, hints: Hints) -> bool:
    """Tell whether the lines are a table of their own: several values a row, behind known labels in one left edge."""
    rows = [segments_of(line, SEGMENT_GAP, marks.walls_at(line)) for line in lines]
    rows = [row for row in rows if len(row) >= 3]
    if len(rows) < OWN_ROWS or len(rows) < 0.5 * len(lines):
        return False
    labels = [row[0] for row in rows if hints.is_label(row[0].text) and not has_digit(row[0].text)]
    left = min(row[0].box.x0 for row in rows)
    level = sum(abs(row[0].box.x0 - left) < 0.5 * row[0].size for row in rows)
    return len(labels) >= 0.5 * len(rows) and level >= 0.8 * len(rows)


def _headed_lists(west: list[Line], east: list[Line], hints: Hints) -> bool:
    """Tell whether two lists stand side by side, each under a heading such as "options".

    A heading has no figure and looks like the one beside it: "200 Ah in all, opt." is a value of the row at its left.
    """
    if len(east) < 3 or is_bullet(east[0].words[0].text) or not _all_head_lists(east[0], hints):
        return False
    if west[0].bold != east[0].bold:
        return False
    level = abs(west[0].box.top - east[0].box.top) < west[0].size
    left_heads = _all_head_lists(west[0], hints) or west[0].text.isupper() or west[0].bold
    rest = [line for line in east[1:] if len(line.text) > 3]
    parts = sum(len(segments_of(line, SEGMENT_GAP)) for line in rest)  # "opt.   N/A" are answers of two vans
    worded = sum(len(line.words) for line in rest) >= 1.6 * parts and len(rest) >= 0.8 * (len(east) - 1)
    return level and left_heads and worded and not hints.is_label(west[0].text)


def _all_head_lists(line: Line, hints: Hints) -> bool:
    """Tell whether all parts of a line are headings of lists, as where two stand beside a third."""
    parts = segments_of(line, SEGMENT_GAP)
    return all(hints.heads_list(part.text) and not has_digit(part.text) for part in parts)


def _labelled_lists(lines: list[Line], hints: Hints) -> bool:
    """Tell whether lines are a list of "label: value" of their own, as where each column is the sheet of one van."""
    matches = [INLINE_LABEL.match(line.text) for line in lines]
    labelled = sum(match is not None and hints.is_label(match.group(1)) for match in matches)
    return labelled >= 3 and labelled >= LABELLED_SHARE * len(lines)


def _is_list(lines: list[Line]) -> bool:
    starts = [is_bullet(line.words[0].text) and len(line.words) > 1 for line in lines]
    return sum(starts) >= 2 and sum(starts) >= 0.3 * len(lines)


def is_prose(lines: list[Line]) -> bool:
    """Tell whether the lines are running text: long lines that mostly fill their column."""
    if len(lines) < 3:
        return False
    counts = [sum(map(_is_said, line.words)) for line in lines]
    if sum(counts) < PROSE_WORDS * len(counts):
        return False
    right = max(line.box.x1 for line in lines)
    left = min(line.box.x0 for line in lines)
    full = sum(line.box.x1 > right - 0.22 * (right - left) for line in lines)
    whole = sum(len(segments_of(line, SEGMENT_GAP)) == 1 for line in lines)
    return full >= 0.5 * len(lines) and whole >= 0.7 * len(lines)


def _is_said(word: Word) -> bool:
    """Tell whether a word is one, and no dot of a row that leads from a label to its value."""
    return any(letter.isalnum() for letter in word.text)


def _flows(lines: list[Line]) -> bool:
    """Tell whether lines are sentences in a narrow column: below their heading most go on in small letters."""
    text = [line for line in lines if not line.bold]
    going_on = sum(line.text[:1].islower() for line in text[1:])
    worded = sum(len(line.words) for line in text) >= FLOWING_WORDS * len(text)
    return len(text) >= MIN_FLOWING and worded and going_on >= FLOWING_SHARE * (len(text) - 1)


def _are_headed_prose(west: list[Line], east: list[Line]) -> bool:
    """Tell whether both sides open with a heading, level with each other, over a few lines of running text.

    So stand cards of vans side by side: name, price, two or three lines that say whom the van is for.
    """
    return have_own_headings(west, east) and have_own_headings(east, west) and _is_headed(west) and _is_headed(east)


def _is_headed(lines: list[Line]) -> bool:
    usual = min(line.size for line in lines)
    text = [line for line in lines if not line.bold and line.size <= LARGER * usual]
    whole = all(len(segments_of(line, SEGMENT_GAP)) == 1 for line in lines)
    worded = sum(len(line.words) for line in text) >= FLOWING_WORDS * len(text)
    goes_on = any(line.text[:1].islower() for line in text[1:])
    return whole and worded and goes_on and any(len(line.words) >= PROSE_WORDS for line in text)


def _only_labels(lines: list[Line]) -> bool:
    """Tell whether the lines are so short that they are values of what stands beside them, as prices are.

    Above marks may stand the names of the vans whose marks they are.
    """
    below = lines[1:] if len(lines) >= MARKED else lines
    marks = all(len(word.text) <= MARK for line in below for word in line.words)
    return marks or all(len(line.words) <= (2 if line.text[:1].isalpha() else 4) for line in lines)


def _unmatched(lines: list[Line], others: list[Line]) -> float:
    """Give the share of lines, within the height of the others, that none of their words is level with.

    A line of two columns may hold words of two heights, where those of the columns differ by little.
    """
    top, bottom = others[0].box.top - 1, others[-1].box.bottom + 1
    inside = [line for line in lines if top <= line.box.middle[1] <= bottom]
    if not inside:
        return 0.0
    bases = sorted({word.base or word.box.bottom for other in others for word in other.words})
    lonely = sum(_distance(line.first_base, bases) > 0.15 * line.size for line in inside)
    return lonely / len(inside)


def _distance(value: float, others: list[float]) -> float:
    """Give how far the nearest of some numbers in order is from a number."""
    place = bisect.bisect_left(others, value)
    return min(abs(value - other) for other in others[max(0, place - 1) : place + 1])


def _own_labels(lines: list[Line], marks: Marks, hints: Hints) -> bool:
    """Tell whether the lines are a list of labels and values of their own.

    Most lines have two segments, the first without digits, the second mostly with. Where both are the same they are
    the values of two columns, for no value repeats its label; and without any known label they are words in two
    columns of values.
    """
    pairs = [segments_of(line, SEGMENT_GAP, marks.walls_at(line)) for line in lines]
    pairs = [pair for pair in pairs if len(pair) == 2]
    if len(pairs) < 3 or len(pairs) < 0.5 * len(lines):
        return False
    wordy = sum(not has_digit(pair[0].text) and pair[0].text != pair[1].text for pair in pairs)
    valued = sum(has_digit(pair[1].text) for pair in pairs)
    known = any(hints.is_label(pair[0].text) for pair in pairs)
    return wordy >= 0.7 * len(pairs) and valued >= 0.4 * len(pairs) and known
