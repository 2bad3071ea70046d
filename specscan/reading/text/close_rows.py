"""Tables pasted row by row with a single space between their cells: "Fresh water 22 gal, in cabin 30 gal, in cabin"."""

from __future__ import annotations

import itertools
import re
from typing import NamedTuple

from specscan.reading.letters.words import is_bullet
from specscan.reading.tables.compose import Hints
from specscan.reading.text.fallen_cells import Pasted

MIN_ROWS = 6
PARTED_SHARE = 0.7  # of the rows: those of which the values can be told apart
FIGURED_SHARE = 0.4  # of the rows: those whose values have the same figures and units
MAX_COLUMNS = 5
LABEL_WORDS = 6
GROUP_WORDS = 5
CORNER_WORDS = 4
CELL_LETTERS = 60
LONGEST_ROW = 400  # letters
CELL_WORDS = 12  # of a label and values
WIDE = "   "
FIGURE = re.compile(r"[^\w]?\d[\d.,/]*(?:[-–]\d[\d.,/]*)?\W?$")
FIGURES = re.compile(r"\d[\d.,/]*")
SHARED = re.compile(r"([^()\d]+?) \(([^\W\d_][\w ]*)\) (.+)")  # "Overall width (both) 6' 10\""
OPEN_ENDS = (",", "x", "×", "/", "-", "–", "+", "&", "(")  # before a figure that goes on with the value


def find_close_rows(lines: list[str], hints: Hints) -> Pasted | None:
    """Give the first such table, or ``None``.

    Its first line names the vans, all of which begin with the same word, behind words of brochures or none, and each
    line below it opens with a known label, or names a group of rows in capitals. Wrapped values stand in lines of their
    own below their label. A row of which nobody can tell where one value ends is left out; where there are many, it is
    no table.
    """
    for start, line in enumerate(lines[:-MIN_ROWS]):
        corner, heads = _headed(line.split(), hints)
        if not heads:
            continue
        rows: list[list[str]] = []
        end, count, parted, figured = start + 1, 0, 0, 0
        while (
            read := _read_below(lines, end, len(heads), hints) or _unknown(lines, end, len(heads), hints)
        ) is not None:
            rows += [read.row] if read.row else []
            count, figured = count + (not read.group), figured + read.sure
            parted += bool(read.row) and not read.group
            end = read.end
        if count >= MIN_ROWS and parted >= PARTED_SHARE * count and figured >= FIGURED_SHARE * count:
            return Pasted(start, end, [[corner, *heads], *rows], True)
    return None


class _Row(NamedTuple):
    row: list[str]  # empty where nobody can tell the values apart
    end: int  # the line below it
    sure: bool = False
    group: bool = False


def _unknown(lines: list[str], place: int, columns: int, hints: Hints) -> _Row | None:
    """Leave out a line of a label that nobody knows, if the one below it is a row: "Grab rail chrome brass"."""
    words = lines[place].split() if place < len(lines) else []
    if not 1 < len(words) <= CELL_WORDS or not words[0][:1].isupper() or words[-1].endswith((".", ":")):
        return None
    below = _read(lines, place + 1, columns, hints) if place + 1 < len(lines) and lines[place + 1].strip() else None
    return _Row([], place + 1) if below is not None and below.row and not below.group else None


def _read_below(lines: list[str], place: int, columns: int, hints: Hints) -> _Row | None:
    """Read the row at a line, or below an empty one that parts groups."""
    place += place < len(lines) and not lines[place].strip()
    return _read(lines, place, columns, hints) if place < len(lines) and lines[place].strip() else None


def _read(lines: list[str], place: int, columns: int, hints: Hints) -> _Row | None:
    """Read the row that begins with a line, of one line or of a label and values in lines of their own."""
    line = lines[place].strip()
    if WIDE in line or len(line) > LONGEST_ROW or is_bullet(line.split()[0]):
        return None  # a table with room between its cells, running text, a list
    if _names_group(line):
        return _Row([line, *[""] * columns], place + 1, group=True)
    shared = SHARED.fullmatch(line)
    if shared is not None and hints.means_all(shared.group(2)) and hints.is_label(shared.group(1)):
        return _Row([shared.group(1), *[shared.group(3)] * columns], place + 1)
    if row := _repeated(line.split(), columns, hints):
        return _Row(row, place + 1)
    labels = _labels(line, hints)
    row, sure = _row(line.split(), labels, columns)
    if not sure and (known := _by_meaning(line.split(), columns, hints)):
        return _Row(known, place + 1)
    if not row and hints.is_label(line) and not any(map(str.isdigit, line)):
        cells, end = _stacked(lines, place + 1, columns, hints)
        if cells:
            return _Row([line, *cells], end)
        below = lines[place + 1].strip() if place + 1 < len(lines) else ""
        if _row(below.split(), _labels(below, hints), columns)[0]:
            return _Row([line, *[""] * columns], place + 1, group=True)
    if not row:
        row = _figured(line.split(), columns, hints)  # of a label that nobody knows as well
        sure = bool(row)
    return _Row(row, place + 1, sure) if labels or row or _is_unclear(line.split(), hints) else None


def _names_group(line: str) -> bool:
    words = re.findall(r"[^\W\d_]+", line)
    return line.isupper() and not any(map(str.isdigit, line)) and len(words) <= GROUP_WORDS and len("".join(words)) > 3


def _stacked(lines: list[str], place: int, columns: int, hints: Hints) -> tuple[list[str], int]:
    """Give so many values that stand below one another, and the line below them; none where rows stand there.

    What stands in brackets, and goes on in them, is of the value above it.
    """
    cells: list[str] = []
    while place < len(lines) and (line := lines[place].strip()):
        goes_on = bool(cells) and (line.startswith("(") or cells[-1].count("(") > cells[-1].count(")"))
        if goes_on:
            cells[-1] += f" {line}"
        elif len(cells) == columns:
            break
        elif len(line) > CELL_LETTERS or _names_group(line) or _labels(line, hints):
            return [], place
        else:
            cells.append(line)
        place += 1
    return (cells, place) if len(cells) == columns else ([], place)


def _repeated(words: list[str], columns: int, hints: Hints) -> list[str]:
    """Give the row of a known label and the same words for each van: "Windows dual-pane dual-pane"."""
    for count in range(min(LABEL_WORDS, len(words) - columns), 0, -1):
        size, rest = (len(words) - count) // columns, words[count:]
        if rest == rest[:size] * columns and hints.is_label(" ".join(words[:count])):
            return [" ".join(words[:count]), *[" ".join(rest[:size])] * columns]
    return []


def _by_meaning(words: list[str], columns: int, hints: Hints) -> list[str]:
    """Give the row of a known label and as many known values of one kind: "Gray tank location under floor enclosed"."""
    for count in range(1, min(LABEL_WORDS, len(words) - columns) + 1):
        label = " ".join(words[:count])
        if not label[:1].isupper() or any(map(str.isdigit, label)) or not hints.is_label(label):
            continue
        if starts := hints.value_starts(" ".join(words[count:]), columns):
            places = [0, *(count + start for start in starts), len(words)]
            return [" ".join(words[a:b]) for a, b in itertools.pairwise(places)]
    return []


def _is_unclear(words: list[str], hints: Hints) -> bool:
    """Tell whether a line is a row of which nobody can tell the values apart: it opens with a known label."""
    if not words[0][:1].isupper() or words[-1].endswith((".", ":", ";")):
        return False
    return any(hints.is_label(" ".join(words[:count])) for count in range(1, min(LABEL_WORDS, len(words))))


def _figured(words: list[str], columns: int, hints: Hints) -> list[str]:
    """Give the row of a line whose values begin with the first figure and have the same figures and units each.

    One of them may say that there is none: "Black none 11 gal".
    """
    valued = [place for place, word in enumerate(words) if any(map(str.isdigit, word)) or hints.means_none(word)]
    begun = valued[0] if valued else 0
    if not 0 < begun <= LABEL_WORDS or not words[0][:1].isupper() or words[-1].endswith("."):
        return []
    values, sure = _parted(words[begun:], columns)
    if not sure and len(valued) == columns and any(map(hints.means_none, words)):
        values = [" ".join(words[a:b]) for a, b in zip(valued, [*valued[1:], len(words)], strict=True)]
        sure = all(hints.means_none(value) or value[0].isdigit() for value in values)
    return [" ".join(words[:begun]), *values] if sure else []


def _headed(words: list[str], hints: Hints) -> tuple[str, list[str]]:
    """Give what stands over the labels, if anything, and the names behind it: "Water" of "Water Drift 19 Drift 22"."""
    for place in range(min(CORNER_WORDS + 1, len(words))):
        corner = words[:place]
        plain = all(hints.knows_word(word.strip("():,").casefold()) or word.startswith("(") for word in corner)
        if plain and words[place] not in corner and (heads := _heads(words[place:], hints)):
            return " ".join(corner), heads
    return "", []


def _heads(words: list[str], hints: Hints) -> list[str]:
    """Give the names in a line of nothing but names that begin with the same word, each of which goes on."""
    if not words or WIDE in " ".join(words) or not words[0][:1].isupper():
        return []
    starts = [place for place, word in enumerate(words) if word == words[0]]
    names = [" ".join(words[a:b]) for a, b in zip(starts, [*starts[1:], len(words)], strict=True)]
    several = 2 <= len(names) <= MAX_COLUMNS and len({*names}) == len(names)
    plain = all(
        len(name.split()) <= 4 and all(word[0].isupper() or word[0].isdigit() for word in name.split())
        for name in names
    )
    return names if several and plain and not hints.is_label(words[0]) else []


def _labels(line: str, hints: Hints) -> list[int]:
    """Give of how many words the known labels are that open a line, most first."""
    words = line.split()
    if WIDE in line.strip() or line.strip().endswith("."):
        return []
    return [
        count
        for count in range(min(LABEL_WORDS, len(words) - 1), 0, -1)
        if _begins(words, count)
        and not any(map(str.isdigit, "".join(words[:count])))
        and hints.is_label(" ".join(words[:count]))
    ]


def _row(words: list[str], labels: list[int], columns: int) -> tuple[list[str], bool]:
    """Give the label and the values of a row, and whether their figures and units say so; none where nobody can tell.

    Of several labels the longest counts behind which there are as many values as columns.
    """
    found = []
    for count in labels:
        values, sure = _parted(words[count:], columns)
        if values:
            found.append(([" ".join(words[:count]), *values], sure))
    return next((one for one in found if one[1]), found[0] if found else ([], False))


def _begins(words: list[str], place: int) -> bool:
    """Tell whether a value can begin with a word: one with a capital or a figure."""
    first = words[place][0]
    return (first.isupper() or words[place].lstrip("(±~<>≈-–")[:1].isdigit()) and not (
        place and words[place - 1].endswith(OPEN_ENDS)
    )


def _parted(words: list[str], count: int) -> tuple[list[str], bool]:
    """Give words as so many values, none where they cannot be told apart; and whether figures and units say so."""
    if len(words) % count == 0:
        size = len(words) // count
        parts = [words[place : place + size] for place in range(0, len(words), size)]
        if size and len({tuple(map(_form, part)) for part in parts}) == 1:
            return [" ".join(part) for part in parts], True
    ends = [n for n in range(1, len(words)) if words[n] == words[-1] and FIGURE.match(words[n - 1])]
    plain = all(FIGURE.match(word) or word == words[-1] or word in OPEN_ENDS for word in words)
    if plain and len(ends) == count and not FIGURE.match(words[-1]):  # "180 W 2 x 180 W"
        return [" ".join(words[a + 1 : b + 1]) for a, b in itertools.pairwise([-1, *ends])], True
    starts = [place for place in range(1, len(words)) if _begins(words, place)]
    if len(starts) != count - 1:
        return [], False
    parts = [words[a:b] for a, b in zip([0, *starts], [*starts, len(words)], strict=True)]
    bare = [len(part) == 1 and FIGURE.match(part[0]) is not None for part in parts]
    lower = any(word[:1].islower() for word in words)
    alike = len({part[-1].split("-")[-1] for part in parts}) == 1  # "Rear-wheel All-wheel", "Single pane Dual pane"
    coded = all(len(part) == 1 and part[0].isupper() for part in parts)  # "RWD AWD"
    return ([" ".join(part) for part in parts], False) if not any(bare) and (lower or alike or coded) else ([], False)


def _form(word: str) -> str:
    """Give a word with its figures made alike: "19'" and "22'" are, and so are "R-5" and "R-12"."""
    return "0" if FIGURE.match(word) else FIGURES.sub("0", word)
