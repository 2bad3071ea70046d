"""Lines that come back in the margins of pages, and such as only count the pages."""

from __future__ import annotations

import math
import re
from collections import Counter

from specscan.reading.letters.sheet import Sheet
from specscan.reading.letters.words import Line, segments_of
from specscan.reading.tables.compose import Hints

MARGIN = 0.12
PART_GAP = 2.0  # em between the name of a guide and that of its chapter in one running line
PART_PAGES = 3  # on which such a name comes back
APART = 2.0  # em from such a line to the text of the page
HEAD_REACH = 2.4  # em from the heads of columns to the row below them
SAME_HEIGHT = 4.0  # points between lines that stand side by side
_Key = tuple[str, int]  # a line's text without figures, and its height on the page


def running_lines(sheets: list[Sheet], lines_of: dict[int, list[Line]], sizes: dict[int, float]) -> set[str]:
    """Give the texts of small lines that stand in the margin of several pages at the same height.

    ``sizes`` are the font sizes of the body text of pages.

    Nothing but other such lines stands between them and the edge of the page: what a heading of the page stands
    above, the heads of a table say, is none. Beside the name of a guide, which comes back, its chapter may stand.
    """
    seen: Counter[_Key] = Counter()
    parts_seen: Counter[_Key] = Counter()
    parts_of: dict[_Key, set[_Key]] = {}
    texts: dict[_Key, set[str]] = {}
    margins: list[list[tuple[float, _Key]]] = []  # of each page, the distance of each line from its edge
    for sheet in sheets:
        lines = lines_of[sheet.number]
        top: list[tuple[float, _Key]] = []
        foot: list[tuple[float, _Key]] = []
        for line in lines:
            y = line.box.middle[1]
            if MARGIN * sheet.height <= y <= (1 - MARGIN) * sheet.height:
                continue
            key = _key(line.text, y)
            if y < MARGIN * sheet.height:
                top.append((y, key))
            else:
                foot.append((sheet.height - y, key))
            if len(segments_of(line, 1.0)) <= 3 and not _heads_table(line, lines):
                # A line as large as a heading must come back on three pages to count as running.
                seen[key] += 2 if line.size > 1.2 * sizes[sheet.number] else 3
                texts.setdefault(key, set()).add(line.text)
                small = line.size <= 1.2 * sizes[sheet.number]
                if small and len(parts := segments_of(line, PART_GAP)) > 1 and _stands_apart(line, lines):
                    parts_of[key] = {_key(part.text, y) for part in parts}
                    parts_seen.update(parts_of[key])
        margins += [top, foot]
    running = {key for key, count in seen.items() if count >= 6}
    running |= {key for key, parts in parts_of.items() if any(parts_seen[part] >= PART_PAGES for part in parts)}
    beyond = Counter(key for margin in margins for key in _behind_others(margin, running))
    inner = {key for key, count in beyond.items() if 2 * count > len(texts[key])}
    return {text for key in running - inner for text in texts[key]}


def runs(height: float, running: set[str], line: Line) -> bool:
    """Tell whether a line of a page of a height is a running one: where all of it is a figure, only in the margin.

    "2" at the foot of the second page is its number, amid the page the value of a label above or beside it.
    """
    y = line.box.middle[1]
    margin = not MARGIN * height <= y <= (1 - MARGIN) * height
    return line.text in running and (margin or not line.text.isdigit())


def _stands_apart(line: Line, lines: list[Line]) -> bool:
    """Tell whether no line is close above or below, as that of a table's row is."""
    y = line.box.middle[1]
    return all(abs(other.box.middle[1] - y) > APART * line.size for other in lines if other is not line)


def _key(text: str, height: float) -> _Key:
    return (re.sub(r"\d+", "#", "".join(text.split())), round(height / 4))


def _behind_others(margin: list[tuple[float, _Key]], running: set[_Key]) -> set[_Key]:
    """Give the lines of a margin that seem to run, between which and the edge stands one that does not."""
    others = [at for at, key in margin if key not in running]
    nearest = min(others, default=math.inf)
    return {key for at, key in margin if key in running and at > nearest + SAME_HEIGHT}


def _heads_table(line: Line, lines: list[Line]) -> bool:
    """Tell whether a line heads the columns of a table: each of its parts stands over a part of a row close below.

    The heading of a group of rows may come between.
    """
    parts = [part.box for part in segments_of(line, 1.0)]
    if len(parts) < 2:
        return False
    above = line
    for other in lines[lines.index(line) + 1 :][:2]:
        apart = other.box.middle[1] - above.box.middle[1]
        if not 0 < apart <= HEAD_REACH * line.size or other.size > 1.15 * line.size:
            return False
        cells = [part.box for part in segments_of(other, 1.0)]
        if len(cells) >= len(parts) and all(any(cell.overlap_x(part) > 0 for cell in cells) for part in parts):
            return True
        above = other
    return False


def page_numbers(lines_of: dict[int, list[Line]], total: int, hints: Hints) -> set[str]:
    """Give the first and last lines of pages that only say which page it is, "2 / 3" or "Page 2", wherever they stand.

    Below a short page the foot of the page can stand high: "1 / 3" would pass for two things listed, "Seite 2" for a
    side of the van.
    """
    found = set()
    for number, lines in lines_of.items():
        for line in {id(one): one for one in (*lines[:1], *lines[-1:])}.values():
            said = re.findall(r"\d+", line.text) if hints.is_page_foot(line.text) else []
            named = said == [str(number)] and any(map(str.isalpha, line.text))
            if named or said == [str(number), str(total)]:
                found.add(line.text)
    return found
